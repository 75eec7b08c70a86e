import { describe, expect } from 'vitest';
import { headWords } from '../../src/page/sections/head/head-words.ts';
import { choose, field, fillHand, inBrowser, openDemo, openPanel, outlineOf, TYPED_HAND } from './browser.ts';

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
    expect(await back('digits.long.width')).toBe('= 17.5 mm');
    // 21/32 in is 16.66875 mm; the inch is 25.4 mm exactly.
    expect(await back('digits.ring.width')).toBe('= 16.67 mm');
    // ISO 8653: the number is the inner circumference in mm.
    expect(await back('digits.ring.circumference')).toBe('= 53 mm');
    // US n: 0.458 + 0.032 n inches of diameter (customary): n = 4 gives 46.76 mm round.
    expect(await back('digits.little.circumference')).toBe('= 46.76 mm');
    await page.locator('#sentence').waitFor();
  });

  inBrowser('keep their meaning when unit, sign or language changes, and so does the pattern', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    const outline = () => outlineOf(page);
    const before = await outline();
    await page.locator('#unit').selectOption('in');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('0.689');
    await page.locator('#unit').selectOption('mm');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('17.5');
    expect(await outline()).toBe(before);
    await page.locator('#language').selectOption('de');
    await expect.poll(() => field(page, 'digits.index.width').inputValue()).toBe('17,5');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    expect(await outline()).toBe(before);
  });

  inBrowser('that are wrong are marked when the field is left, and the preview keeps the last good pattern and says so', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const outline = () => outlineOf(page);
    const good = await outline();
    await field(page, 'digits.ring.width').fill('160');
    await page.locator('.kept').waitFor();
    expect(await outline()).toBe(good);
    expect(await field(page, 'digits.ring.width').getAttribute('aria-invalid')).toBe(null);
    await field(page, 'digits.ring.width').focus();
    await page.keyboard.press('Tab');
    // The error stands where the how-to line stood.
    const error = page.locator('#how-line.error');
    await error.waitFor();
    expect(await error.textContent()).toContain('8 to 35 mm is allowed');
    expect(await field(page, 'digits.ring.width').getAttribute('aria-describedby')).toContain('how-line');
    await field(page, 'digits.ring.width').fill('17');
    await page.locator('.kept').waitFor({ state: 'detached' });
    expect(await outline()).not.toBe(good);
  });

  inBrowser('that are missing are named beside Print, which leads to the first of them', async (open) => {
    const { page } = await open();
    const leadsTo = async (id: string) => {
      await page.locator('#print').click();
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe(id);
    };
    await leadsTo('field-target-digit');
    await page.locator('input[name="target.digit"][value="ring"]').check();
    await leadsTo('field-side');
    await page.locator('input[name="side"][value="left"]').check();
    await leadsTo('field-motion-active-lacks');
    await field(page, 'motion.active.lacks').fill('25');
    await leadsTo('field-digits-long-width');
    expect(await page.locator('#print-line').textContent()).toContain('Long finger: width and 5 more');
  });

  inBrowser(
    'for a PIP joint that lacks both motions give a plate at the angle of the plan; another is typed, a wrong one refused',
    async (open) => {
      const { page } = await open();
      await fillHand(page, { ...TYPED_HAND, 'motion.active.lacks': '20', 'motion.active.bends': '60' });
      expect(await page.locator('input[name="block"][value="plate"]').isChecked()).toBe(true);
      // Plate model: 45 + 45 (20 - 40) / 60 = 30 degrees, range 0 to 45.
      await page.locator('#sentence').getByText('MP held at 30°').waitFor();
      await openPanel(page, 'ways');
      await page.getByText('30 degrees of flexion to begin with, range 0 to 45 degrees.').waitFor();
      await field(page, 'plate.angle').fill('50');
      await page.locator('#sentence').getByText('MP held at 50°').waitFor();
      await field(page, 'plate.angle').fill('95');
      await page.keyboard.press('Tab');
      await page.locator('#field-plate-angle-error').waitFor();
      expect(await page.locator('.kept').count()).toBe(1);
    },
  );

  inBrowser('in neutral-zero notation are both numbers; a sign is asked about; beyond straight is shown back', async (open) => {
    const { page } = await open();
    const lacks = field(page, 'motion.active.lacks');
    const shown = page.locator('#finger .neutral');
    await lacks.pressSequentially('0-25-85');
    await page.keyboard.press('Tab');
    expect(await lacks.inputValue()).toBe('25');
    expect(await field(page, 'motion.active.bends').inputValue()).toBe('85');
    expect(await shown.textContent()).toBe('0-25-85');
    await lacks.fill('-10');
    await page.keyboard.press('Tab');
    await page.locator('#motion-line.error').getByText('a sign is used for both').waitFor();
    // AO neutral-zero: 10 beyond straight, flexion 85 is 10-0-85.
    await lacks.fill('hyper 10');
    await expect.poll(() => shown.textContent()).toBe('10-0-85');
  });

  inBrowser(
    "of the paper strip: the band is the reading's; what skin and air cannot make, and what is off the scale, is refused",
    async (open) => {
      const { page } = await open();
      await openDemo(page);
      const read = async (mm: string) => {
        await openPanel(page, 'options');
        await field(page, 'paperReading').fill(mm);
        await page.keyboard.press('Tab');
      };
      const figures = async () => {
        await openPanel(page, 'figures');
        return (await page.locator('#panel-figures').textContent()) ?? '';
      };
      expect(await figures()).toMatch(/95 % band of the length\d/);
      await read('4');
      const [, low, high] = /95 % band of the length, of the paper reading([\d.]+) to ([\d.]+) mm/.exec(await figures()) ?? [];
      expect(Math.abs(Number(high) - Number(low) - 2 * 1.96)).toBeLessThan(0.11);
      await read('-15');
      const error = page.locator('#field-paperReading-error');
      await error.getByText(/outside what skin and air can make.* The nearest that can be is -\d+ mm\./).waitFor();
      const nearest = /(-\d+) mm/.exec((await error.textContent()) ?? '')?.[1] ?? '';
      await read(nearest);
      await error.waitFor({ state: 'detached' });
      await read('16');
      await error.getByText('-15 to 15 mm').waitFor();
    },
  );

  inBrowser('between the fingers stand the webs: estimated, measured, and refused in the line how to measure', async (open) => {
    const { page } = await open();
    await fillHand(page);
    const web = (name: string) => field(page, `webSetback.${name}`);
    await page.locator('#sentence').getByText('long, ring, little').waitFor();
    // Between the index finger, which is left out, and the long finger there is none to measure.
    expect(await web('index-long').count()).toBe(0);
    expect(await web('ring-little').getAttribute('placeholder')).toMatch(/^≈ 1\d$/);
    const [long, ring, between] = await Promise.all(
      [field(page, 'digits.long.width'), field(page, 'digits.ring.width'), web('long-ring')].map(async (one) => {
        const { x = 0, width = 0 } = (await one.boundingBox()) ?? {};
        return x + width / 2;
      }),
    );
    expect(Math.abs((between ?? 0) - ((long ?? 0) + (ring ?? 0)) / 2)).toBeLessThan(8);
    const outline = await outlineOf(page);
    await web('ring-little').fill('3');
    await page.keyboard.press('Tab');
    await expect.poll(() => page.locator('#pattern-picture .layer-CUT').first().getAttribute('d')).not.toBe(outline);
    await web('ring-little').fill('300');
    await page.keyboard.press('Tab');
    await page
      .locator('#how-line.error')
      .getByText(/Web setback, ring – little is “300”; 0 to 30 mm/)
      .waitFor();
  });

  inBrowser('what only a strip follows is not asked for a plate, nor the other way round; what was typed stays', async (open) => {
    const { page } = await open();
    const rows = () => page.locator('.grid tbody tr').evaluateAll((all) => all.map((row) => row.className.replace(/^row-| current/g, '')));
    const always = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
    await openDemo(page);
    expect(await rows()).toEqual([...always, 'pipCircumference', 'rootCircumference', 'webSetback']);
    for (const web of ['index-long', 'long-ring', 'ring-little']) await field(page, `webSetback.${web}`).fill('');
    await field(page, 'motion.active.bends').fill('60');
    await page.locator('#sentence').getByText('plate').waitFor();
    await expect.poll(rows).toEqual([...always, 'mpSetback']);
    await field(page, 'digits.ring.mpSetback').fill('5');
    await field(page, 'motion.active.bends').fill('100');
    await expect.poll(rows).toEqual([...always, 'pipCircumference', 'rootCircumference', 'mpSetback', 'webSetback']);
  });

  inBrowser("whose hand it is stands beside the measures: a child's is estimated from nothing, also on a phone", async (open) => {
    const { page } = await open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('25');
    await field(page, 'motion.active.bends').fill('100');
    await page.locator('#turn-measure').click();
    const width = field(page, 'digits.ring.width');
    expect(await width.getAttribute('placeholder')).toMatch(/^≈/);
    await choose(page, 'sizeGroup', 'child');
    await page.getByText('Of a child nothing is estimated.').waitFor();
    await expect.poll(async () => (await width.getAttribute('placeholder')) ?? '').toBe('');
    expect(await page.evaluate(() => scrollY)).toBe(0);
    // The last row is that of the webs, between the names of the fingers.
    for (let row = 1; row < 7; row++) await page.locator('#row-next').click();
    const { width: wide = 0, height = 0 } = (await field(page, 'webSetback.long-ring').boundingBox()) ?? {};
    expect([wide > 60, height >= 44]).toEqual([true, true]);
  });

  inBrowser(
    'a reading of the paper strip goes when another arrangement is chosen, and comes back with the one it was read in',
    async (open) => {
      const { page } = await open();
      await openDemo(page);
      await openPanel(page, 'options');
      await field(page, 'paperReading').fill('1');
      await page.keyboard.press('Tab');
      await page.locator('input[name="block"]:not(:checked):not([value="plate"])').first().check();
      await expect.poll(() => field(page, 'paperReading').inputValue()).toBe('');
      // It is said, and goes on being said with the result, which follows a second after the choice is left.
      await page.keyboard.press('Tab');
      const emptied = headWords.en.readingEmptied;
      await expect.poll(() => page.locator('footer .status').textContent()).toMatch(new RegExp(`^${emptied} Drawn: `));
      await page.locator('#undo').click();
      await expect.poll(() => field(page, 'paperReading').inputValue()).toBe('1');
    },
  );

  inBrowser(
    'what a rule needs stands in turn 1 beside the active motion, goes on standing when it was typed, and nowhere twice',
    async (open) => {
      const { page } = await open();
      const asked = () =>
        page.locator('#finger input[name^="motion."]').evaluateAll((all) => all.map((input) => input.getAttribute('name')));
      const active = ['motion.active.lacks', 'motion.active.bends'];
      await choose(page, 'target.digit', 'ring');
      await choose(page, 'side', 'left');
      await field(page, 'motion.active.lacks').fill('9');
      await field(page, 'motion.active.bends').fill('100');
      await page.keyboard.press('Tab');
      expect(await asked()).toEqual(active);
      // Half a number asks for nothing; it does once it is left.
      await field(page, 'motion.active.lacks').fill('25');
      expect(await asked()).toEqual(active);
      await page.keyboard.press('Tab');
      await expect.poll(asked).toEqual([...active, 'motion.passive.lacks']);
      await openPanel(page, 'more');
      expect(await page.locator('[id="field-motion-passive-lacks"]').count()).toBe(1);
      await openPanel(page, 'look');
      const look = page.locator('.looks li').filter({ hasText: 'Measure passive PIP extension' });
      await look.getByRole('button', { name: 'Go to the field' }).click();
      await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('motion.passive.lacks');
      await page.keyboard.type('10');
      await page.keyboard.press('Tab');
      expect(await asked()).toEqual([...active, 'motion.passive.lacks']);
      expect(await page.locator('#open-more').textContent()).toContain('nothing said');
      await field(page, 'motion.passive.lacks').fill('ten');
      await page.keyboard.press('Tab');
      await page.locator('#motion-line.error').getByText('type degrees').waitFor();
      // A plate lies over the MP joint as well.
      await field(page, 'motion.passive.lacks').fill('10');
      await field(page, 'motion.active.bends').fill('60');
      await page.keyboard.press('Tab');
      const both = ['motion.passive.lacks', 'motion.passive.bends', 'motion.mpPassive.lacks', 'motion.mpPassive.bends'];
      await expect.poll(asked).toEqual([...active, ...both]);
    },
  );
});
