import { describe, expect } from 'vitest';
import { field, fillHand, inBrowser, openDemo, TYPED_HAND } from './browser.ts';

describe('typed measurements', () => {
  inBrowser('with commas, units, fractions and ring sizes are understood and shown back', async (open) => {
    const { page } = await open();
    await fillHand(page, {
      'digits.index.width': '17,5',
      'digits.long.width': '1.75 cm',
      'digits.ring.width': '21/32 in',
      'digits.ring.circumference': 'ring 53',
      'digits.little.circumference': 'US 4',
    });
    const back = (where: string) => page.locator(`[id="field-${where.replaceAll('.', '-')}-back"]`).textContent();
    expect(await back('digits.index.width')).toBe('= 17.5 mm');
    expect(await back('digits.long.width')).toBe('= 17.5 mm');
    // 21/32 in is 16.66875 mm; the inch is 25.4 mm exactly.
    expect(await back('digits.ring.width')).toBe('= 16.67 mm');
    // ISO 8653: the number is the inner circumference in mm.
    expect(await back('digits.ring.circumference')).toBe('= 53 mm (ring size)');
    // US n: 0.458 + 0.032 n inches of diameter (customary): n = 4 gives 46.76 mm round.
    expect(await back('digits.little.circumference')).toBe('= 46.76 mm (ring size)');
    await page.locator('#pattern-picture').waitFor();
  });

  inBrowser('keep their meaning when unit, sign or language changes, and so does the pattern', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const outline = () => page.locator('#pattern-picture .layer-CUT').getAttribute('d');
    const before = await outline();
    await page.locator('#unit').selectOption('in');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('0.689');
    await page.locator('#unit').selectOption('mm');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('17.5');
    expect(await outline()).toBe(before);
    await page.locator('#language').selectOption('de');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('17,5');
    await expect.poll(() => page.locator('[id="field-digits-index-width-back"]').textContent()).toBe('= 17,5 mm');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    expect(await outline()).toBe(before);
  });

  inBrowser('that are wrong are marked when the field is left, and the preview keeps the last good pattern and says so', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const outline = () => page.locator('#pattern-picture .layer-CUT').getAttribute('d');
    const good = await outline();
    await field(page, 'digits.ring.width').fill('160');
    await page.locator('.kept').waitFor();
    expect(await outline()).toBe(good);
    expect(await field(page, 'digits.ring.width').getAttribute('aria-invalid')).toBe(null);
    await page.keyboard.press('Tab');
    const error = page.locator('[id="field-digits-ring-width-error"]');
    await error.waitFor();
    expect(await error.textContent()).toContain('8 to 35 mm is allowed');
    expect(await field(page, 'digits.ring.width').getAttribute('aria-describedby')).toContain('field-digits-ring-width-error');
    await field(page, 'digits.ring.width').fill('17');
    await page.locator('.kept').waitFor({ state: 'detached' });
    expect(await outline()).not.toBe(good);
  });

  inBrowser('that are missing are listed in a summary that takes the focus and leads to each field', async (open) => {
    const { page } = await open();
    await page.locator('#draw').click();
    await page.waitForFunction(() => document.activeElement?.id === 'errors');
    const links = page.locator('#errors a');
    expect(await links.allInnerTexts()).toEqual([
      'Case code is missing. Fill it in.',
      'Which hand is missing. Fill it in.',
      'At least three neighbouring fingers are needed. Measure width and circumference of each.',
    ]);
    const reached: string[] = [];
    for (const link of await links.all()) {
      await link.focus();
      await page.keyboard.press('Enter');
      reached.push(await page.evaluate(() => document.activeElement?.getAttribute('name') ?? ''));
    }
    expect(reached).toEqual(['code', 'side', 'digits.index.width']);
  });

  inBrowser(
    'for a PIP joint that lacks both motions give a plate at the angle of the plan; another is typed, a wrong one refused',
    async (open) => {
      const { page } = await open();
      await fillHand(page, { ...TYPED_HAND, 'target.pipExtensionDeficit': '20', 'target.pipFlexionDeficit': '40' });
      // Plate model: 45 + 45 (20 - 40) / 60 = 30 degrees, range 0 to 45.
      await page.getByText('A plate holds the MP joint: 30 degrees of flexion to begin with, range 0 to 45 degrees.').waitFor();
      expect(await page.locator('input[name="block"][value="plate"]').isChecked()).toBe(true);
      await page.getByRole('heading', { name: 'MP plate, dorsal, 30 degrees' }).waitFor();
      await field(page, 'plate.angle').fill('50');
      await page.getByRole('heading', { name: 'MP plate, dorsal, 50 degrees' }).waitFor();
      await field(page, 'plate.angle').fill('95');
      await page.keyboard.press('Tab');
      await page.locator('#field-plate-angle-error').waitFor();
      expect(await page.locator('.kept').count()).toBe(1);
    },
  );
});
