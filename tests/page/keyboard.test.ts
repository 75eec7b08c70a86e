import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { contentOf, field, inBrowser, openDemo, TYPED_HAND } from './browser.ts';

const focused = (page: Page) =>
  page.evaluate(
    () => document.activeElement?.getAttribute('name') ?? document.activeElement?.id ?? document.activeElement?.textContent ?? '',
  );

/** Presses Tab until the focus is on the element with this name or id; gives up after as many stops as the page can have. */
async function tabTo(page: Page, wanted: string): Promise<void> {
  for (let stop = 0; stop < 200; stop++) {
    if ((await focused(page)) === wanted) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${wanted}; it is at ${await focused(page)}`);
}

describe('by the keyboard alone', () => {
  inBrowser('from the first field of the empty page to the PDF to print and the DXF, fields in the order of measuring', async (open) => {
    const { page } = await open();
    const { code = '', 'target.pipExtensionDeficit': deficit = '', ...digits } = TYPED_HAND;
    await tabTo(page, 'code');
    await page.keyboard.type(code.toLowerCase());
    await tabTo(page, 'side');
    await page.keyboard.press('Space');
    const order: string[] = [];
    await page.keyboard.press('Tab');
    for (const where of Object.keys(digits)) {
      for (let stop = 0; stop < 3 && (await focused(page)) !== where; stop++) await page.keyboard.press('Tab');
      order.push(await focused(page));
      await page.keyboard.type(digits[where] ?? '');
    }
    expect(order).toEqual(Object.keys(digits));
    await tabTo(page, 'target.digit');
    // The first arrow from an unchosen group chooses; index, long, ring.
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, 'target.pipExtensionDeficit');
    await page.keyboard.type(deficit);
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.activeElement?.id === 'pattern-heading');
    await tabTo(page, 'save-pdf');
    const [pdf] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect((await contentOf(pdf)).subarray(0, 5).toString()).toBe('%PDF-');
    await tabTo(page, 'save-dxf');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toBe('DEMO-01-ring-lowered-in-three_mm.dxf');
    expect((await contentOf(download)).toString()).toContain('$INSUNITS');
    // The code was typed in small letters and is written in capitals.
    expect(await field(page, 'code').inputValue()).toBe('DEMO-01');
  });

  inBrowser(
    'the section view: arrows choose a digit and change its place, a block against the rules keeps the last pattern',
    async (open) => {
      const { page } = await open();
      await openDemo(page);
      const band = () => page.locator('.section:not(.small) .section-strip').getAttribute('d');
      const lowered = await band();
      await page.locator('#section-long').focus();
      await page.keyboard.press('ArrowRight');
      expect(await focused(page)).toBe('section-ring');
      await page.keyboard.press('ArrowUp');
      await page.locator('.own .error').waitFor();
      expect(await page.locator('.own .error').allInnerTexts()).toEqual([
        expect.stringContaining('At least one digit must be raised or lowered'),
      ]);
      await page.locator('.kept').waitFor();
      expect(await band()).toBe(lowered);
      await page.keyboard.press('ArrowUp');
      await page.locator('.kept').waitFor({ state: 'detached' });
      expect(await page.locator('#section-ring').getAttribute('aria-label')).toBe('Ring finger, raised');
      expect(await band()).not.toBe(lowered);
      expect(await focused(page)).toBe('section-ring');
    },
  );

  inBrowser('the differential: slider and field move each other and the digits', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const ring = () => page.locator('#section-ring').evaluate((button) => Number.parseFloat((button as HTMLElement).style.top));
    const before = await ring();
    await page.getByLabel('MP differential, slider').focus();
    await page.keyboard.press('ArrowRight');
    await page.waitForFunction(() => (document.getElementById('field-differential') as HTMLInputElement).value === '21');
    await field(page, 'differential').fill('30');
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>('.differential input[type="range"]')?.value === '30');
    expect(await ring()).toBeGreaterThan(before);
  });

  inBrowser('the moulded view turns by arrows and comes back by Home; plus, minus and 0 zoom the pattern', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const picture = () => page.locator('svg.moulded').getAttribute('viewBox');
    const front = await picture();
    await page.getByRole('button', { name: 'Turn right' }).focus();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(picture).not.toBe(front);
    await page.keyboard.press('Home');
    await expect.poll(picture).toBe(front);
    const width = () => page.locator('#pattern-picture').evaluate((svg) => svg.getBoundingClientRect().width);
    const fit = await width();
    await page.locator('.shown > section.scroll').focus();
    await page.keyboard.press('+');
    await expect.poll(width).toBeCloseTo(1.25 * fit, 0);
    await page.keyboard.press('0');
    await expect.poll(width).toBeCloseTo(fit, 0);
  });
});
