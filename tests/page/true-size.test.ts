import { describe, expect } from 'vitest';
import { inBrowser, openDemo, openPanel, show } from './browser.ts';

describe('true size', () => {
  inBrowser('after the card was laid on the screen, one millimetre of the pattern is one of the card', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await show(page, 'flat');
    await openPanel(page, 'files');
    for (let k = 0; k < 5; k++) await page.getByRole('button', { name: 'Card outline larger' }).click();
    await page.getByRole('button', { name: 'The card fits' }).click();
    await page.getByRole('button', { name: 'Actual size' }).click();
    const sizes = await page.evaluate(() => {
      const widthOf = (selector: string) => document.querySelector(selector)?.getBoundingClientRect().width ?? 0;
      const box = (document.getElementById('pattern-picture') as unknown as SVGSVGElement).viewBox.baseVal;
      return { card: widthOf('#card rect'), pattern: widthOf('#pattern-picture'), millimetres: box.width };
    });
    // ISO/IEC 7810, ID-1: 85.60 mm wide. The browser rounds a box to 1/64 px.
    expect(sizes.pattern / sizes.millimetres).toBeCloseTo(sizes.card / 85.6, 3);
    // Five steps of 0.02 px per mm over the CSS inch of 96 px.
    expect(sizes.card / 85.6).toBeCloseTo(96 / 25.4 + 0.1, 2);
  });

  inBrowser('is not taken to hold when the zoom of the page changed since', async (open) => {
    const { page, context } = await open({});
    await openPanel(page, 'files');
    await page.getByRole('button', { name: 'The card fits' }).click();
    await page.getByText('The screen is set:').first().waitFor();
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setDeviceMetricsOverride', { width: 1152, height: 720, deviceScaleFactor: 1.25, mobile: false });
    await page.getByText('The page zoom changed since the screen was set.').waitFor();
  });
});
