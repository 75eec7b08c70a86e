import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { choose, contentOf, field, inBrowser, openDemo, show } from './browser.ts';

const focused = (page: Page) =>
  page.evaluate(
    () => document.activeElement?.getAttribute('name') ?? document.activeElement?.id ?? document.activeElement?.textContent ?? '',
  );

/** Presses Tab until the focus is on the element with this name or id, and counts; gives up after as many stops as the page can have. */
async function tabTo(page: Page, wanted: string): Promise<number> {
  for (let stop = 0; stop < 60; stop++) {
    if ((await focused(page)) === wanted) return stop;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${wanted}; it is at ${await focused(page)}`);
}

/** As measured: all widths, all circumferences, the palm, then the backs. */
const MEASURES = ['17.5', '16.5', '14.5', '57', '53', '47', '27', '25', '19', '48', '45', '36'];

describe('by the keyboard alone', () => {
  inBrowser(
    'from the empty page to the PDF in at most 20 Tabs, Enter going on from measure to measure, and on to the DXF',
    async (open) => {
      const { page } = await open({ viewport: { width: 1280, height: 660 } });
      let tabs = await tabTo(page, 'skip-finger');
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'target.digit');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      tabs += await tabTo(page, 'side');
      await page.keyboard.press('Space');
      tabs += await tabTo(page, 'motion.active.lacks');
      await page.keyboard.type('25');
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'motion.active.bends');
      await page.keyboard.type('100');
      await page.keyboard.press('Enter');
      // A lack of 10 or more asks for the passive motion; it is left open.
      await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'motion.passive.lacks');
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.activeElement?.id === 'stop-none');
      await page.keyboard.press('Enter');
      tabs += await tabTo(page, 'digits.long.width');
      const order: string[] = [];
      for (const text of MEASURES) {
        order.push(await focused(page));
        await page.keyboard.type(text);
        const before = await focused(page);
        await page.keyboard.press('Enter');
        await page.waitForFunction((left) => (document.activeElement?.getAttribute('name') ?? document.activeElement?.id) !== left, before);
      }
      const rows = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
      expect(order).toEqual(rows.flatMap((id) => ['long', 'ring', 'little'].map((digit) => `digits.${digit}.${id}`)));
      expect(await focused(page)).toBe('print');
      const [pdf] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      expect((await contentOf(pdf)).subarray(0, 5).toString()).toBe('%PDF-');
      expect(pdf.suggestedFilename()).toBe('NO-CODE-0-ring-lowered-in-three_mm.pdf');
      expect(tabs).toBeLessThanOrEqual(20);
      await tabTo(page, 'open-files');
      await page.keyboard.press('Enter');
      await tabTo(page, 'code');
      await page.keyboard.type('demo-01');
      await tabTo(page, 'save-dxf');
      const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      // The code was typed in small letters and is written in capitals.
      expect(download.suggestedFilename()).toBe('DEMO-01-ring-lowered-in-three_mm.dxf');
      expect((await contentOf(download)).toString()).toContain('$INSUNITS');
      // Escape gives the middle column back and the focus to the button that took it.
      await page.keyboard.press('Escape');
      await expect.poll(() => focused(page)).toBe('open-files');
    },
  );

  inBrowser('the moulded view turns by arrows and comes back by Home; plus, minus and 0 enlarge the flat piece', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    const picture = () => page.locator('svg.moulded').getAttribute('viewBox');
    const front = await picture();
    await page.getByRole('button', { name: 'Turn right' }).focus();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(picture).not.toBe(front);
    await page.keyboard.press('Home');
    await expect.poll(picture).toBe(front);
    const box = await page.locator('svg.moulded').boundingBox();
    await page.mouse.move((box?.x ?? 0) + 60, (box?.y ?? 0) + 60);
    await page.mouse.down();
    await page.mouse.move((box?.x ?? 0) + 140, (box?.y ?? 0) + 60, { steps: 3 });
    await page.mouse.up();
    await expect.poll(picture).not.toBe(front);
    await page.getByRole('button', { name: 'Front view' }).click();
    await expect.poll(picture).toBe(front);
    await show(page, 'flat');
    const width = () => page.locator('#pattern-picture').evaluate((svg) => svg.getBoundingClientRect().width);
    const fit = await width();
    await page.locator('section.flat').focus();
    await page.keyboard.press('+');
    await expect.poll(width).toBeCloseTo(1.25 * fit, 0);
    await page.keyboard.press('0');
    await expect.poll(width).toBeCloseTo(fit, 0);
  });

  inBrowser('the hand turns once when the focus goes to a measure of the back', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const heading = page.locator('#measure .heading-row');
    await field(page, 'digits.ring.palmarRoom').focus();
    expect(await heading.textContent()).toContain('palm up');
    const nails = () => page.locator('.hand-picture .nail').count();
    expect(await nails()).toBe(0);
    await field(page, 'digits.ring.dorsalLength').focus();
    await expect.poll(() => heading.textContent()).toContain('back up');
    await expect.poll(nails).toBeGreaterThan(0);
    expect(await page.locator('.hand-picture .place').count()).toBe(1);
    expect(await focused(page)).toBe('digits.ring.dorsalLength');
  });
});

describe('on touch, where a keypad of digits has no Enter', () => {
  inBrowser('a Next button beside the fields, above the keyboard, goes on as Enter does and ends at Print', async (open) => {
    // The lower half of a tablet upright is what its keyboard takes at most.
    const { page } = await open({ viewport: { width: 820, height: 1180 }, hasTouch: true });
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('25');
    await field(page, 'motion.active.bends').fill('100');
    await page.locator('#sentence').waitFor();
    const next = page.locator('#next-place');
    const { y = 1e9, height = 0 } = (await next.boundingBox()) ?? {};
    expect(y + height).toBeLessThan(1180 / 2);
    expect(height).toBeGreaterThanOrEqual(44);
    await field(page, 'digits.long.width').tap();
    const order: string[] = [];
    for (const text of MEASURES) {
      const before = await focused(page);
      order.push(before);
      await page.keyboard.type(text);
      await next.tap();
      // The button itself has the focus for a moment.
      await expect.poll(async () => [before, 'next-place'].includes(await focused(page))).toBe(false);
    }
    const rows = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
    expect(order).toEqual(rows.flatMap((id) => ['long', 'ring', 'little'].map((digit) => `digits.${digit}.${id}`)));
    expect(await focused(page)).toBe('print');
    expect(await page.evaluate(() => scrollY)).toBe(0);
  });

  inBrowser('it leads through the measures of the palm too, as Enter does, on a phone as well', async (open) => {
    const { page } = await open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await choose(page, 'target.digit', 'long');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('30');
    await field(page, 'motion.active.bends').fill('60');
    await page.locator('#turn-measure').tap();
    await choose(page, 'middle', 'palm');
    const palm = ['handBreadth', 'handCircumference', 'metacarpalLength', 'mpDepth', 'mpDorsalRadius', 'thumbWebSetback'];
    await field(page, 'handBreadth').tap();
    for (const [k, after] of [...palm.slice(1), 'bar-print'].entries()) {
      if (k % 2 === 0) await page.locator('#next-place').tap();
      else await page.keyboard.press('Enter');
      await expect.poll(() => focused(page)).toBe(after);
    }
  });

  inBrowser('it is not there for a mouse, nor on a phone, which goes on row by row', async (open) => {
    const { page } = await open();
    expect(await page.locator('#next-place').isVisible()).toBe(false);
    const phone = (await open({ viewport: { width: 390, height: 844 }, hasTouch: true })).page;
    await phone.locator('#turn-measure').click();
    expect(await phone.locator('#next-place').isVisible()).toBe(false);
    expect(await phone.locator('#row-next').isVisible()).toBe(true);
  });

  inBrowser('on a phone Print stands once, in the bar, and "2 Measure" there leads to the heading of its turn', async (open) => {
    const { page } = await open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    await field(page, 'motion.active.lacks').fill('25');
    await field(page, 'motion.active.bends').fill('100');
    await page.locator('#bar-measure').click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('measure-heading');
    expect(await page.getByRole('button', { name: 'Print the pattern' }).count()).toBe(1);
    for (const turn of ['finger', 'make'] as const) {
      await page.locator(`#turn-${turn}`).click();
      // While a finger is not measured the bar of the first turn leads to the measures.
      const print = page.getByRole('button', { name: 'Print the pattern' });
      expect([turn, await print.count()]).toEqual([turn, turn === 'finger' ? 0 : 1]);
      if (turn === 'make') expect(await print.evaluate((button) => button.closest('.bottom-bar') !== null)).toBe(true);
    }
    // By Tab from the heading it is reached once, after what the turn holds.
    await page.locator('#make-heading').focus();
    await tabTo(page, 'bar-print');
  });
});
