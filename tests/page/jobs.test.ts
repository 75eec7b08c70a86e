import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { BY_NIGHT } from '../by-night.ts';
import { choose, drawnAnew, field, inBrowser, LOCALES, noStopSign } from './browser.ts';
import { CountedHands, JOBS, WINDOWS } from './jobs.ts';

/** scripts/count-jobs.mjs prints what all of them cost. */
const MOST_CLICKS = 8;
/** The three turns of a phone are pressed as well, the choice of units stands in its menu, and a visit has parts; the first job has no more than elsewhere. */
const MOST_CLICKS_PHONE = 10;
const MOST_TABS = 20;
/** Without Enter between the measures. */
const MOST_TABS_ALONE = 40;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** The bar with the result and its button is in the window, whole, and says the result as soon as there is one. */
async function resultInView(page: Page): Promise<void> {
  const seen = await page.evaluate(() => {
    const bar = document.querySelector('.bottom-bar');
    const { top, bottom, height } = bar?.getBoundingClientRect() ?? new DOMRect();
    const says = bar?.querySelector('strong')?.textContent ?? '';
    const typed = (end: string) =>
      document.querySelector<HTMLInputElement>(`input[name="motion.active.${end}"], input[name="visit.${end}"]`)?.value ?? '';
    // An end without a deficit says nothing until the other is typed.
    const isKnown = !['', '0'].includes(typed('lacks')) || typed('bends') !== '';
    return { whole: height > 0 && top >= 0 && bottom <= innerHeight + 1, says: isKnown ? /\d/.test(says) : says !== '' };
  });
  expect(seen).toEqual({ whole: true, says: true });
}

describe('the counted jobs, from an empty page to the saved file', () => {
  const all = WINDOWS.flatMap((window) => LOCALES.map((locale) => ({ window, locale })));
  // By day the design where the screen is lowest, a plate and the visit on a phone with its keyboard up, which has the least room for each.
  const byDay = (name: string) => [{ window: /visit|both/.test(name) ? WINDOWS[5] : WINDOWS[2], locale: 'de-DE' }];
  const jobs = BY_NIGHT ? JOBS : JOBS.filter(({ name }) => /three fingers|both|visit/.test(name));
  for (const { name, run } of jobs) {
    for (const { window, locale } of BY_NIGHT ? all : byDay(name)) {
      const [width, height] = window;
      if (width < 600 && name.includes('keys')) continue;
      const place = `${width} x ${height}, ${locale}`;
      inBrowser(`${name}, ${place}: at most ${MOST_CLICKS} clicks, or ${MOST_TABS} Tabs, and nothing scrolled`, async (open) => {
        const { page, context } = await open({ locale, viewport: { width, height } });
        const hands = new CountedHands(page, width < 600 ? resultInView : undefined);
        expect(await run(hands)).toMatch(/\.(pdf|json)$/);
        const { clicks, tabs, scrolled } = hands.cost();
        expect([locale, width, height, scrolled]).toEqual([locale, width, height, 0]);
        expect(clicks).toBeLessThanOrEqual(width < 600 && !name.startsWith('ring lacks') ? MOST_CLICKS_PHONE : MOST_CLICKS);
        expect(tabs).toBeLessThanOrEqual(name.includes('Tab alone') ? MOST_TABS_ALONE : MOST_TABS);
        await context.close();
      });
    }
  }

  inBrowser('on a phone the result stays in view throughout and nothing is scrolled, with the keyboard up as well', async (open) => {
    const [first] = JOBS;
    const sizes = BY_NIGHT ? [844, 450] : [450];
    for (const height of sizes) {
      const { page, context } = await open({ ...PHONE, viewport: { width: 390, height } });
      const hands = new CountedHands(page, resultInView);
      expect(await first?.run(hands)).toMatch(/\.pdf$/);
      expect([height, hands.cost().scrolled]).toEqual([height, 0]);
      await context.close();
    }
  });

  inBrowser('with the keyboard up the button to the next row stands above it in every row, for a strip and for a plate', async (open) => {
    for (const [digit, lacks, bends] of [
      ['ring', '25', '100'],
      ['long', '30', '70'],
    ] as const) {
      const { page, context } = await open({ ...PHONE, locale: 'de-DE', viewport: { width: 390, height: 450 } });
      await choose(page, 'target.digit', digit);
      await field(page, 'motion.active.lacks').fill(lacks);
      await field(page, 'motion.active.bends').fill(bends);
      await noStopSign(page);
      await page.locator('#bar-measure').click();
      const next = page.locator('#row-next');
      for (let row = 1; (await next.count()) > 0; row++) {
        await page.locator('.grid tr.current input').first().focus();
        await drawnAnew(page);
        const under = await next.evaluate((button) => {
          const bar = document.querySelector('.bottom-bar')?.getBoundingClientRect().top ?? 0;
          return [Math.max(0, Math.round(button.getBoundingClientRect().bottom - bar)), scrollY];
        });
        expect([digit, row, ...under]).toEqual([digit, row, 0, 0]);
        await next.click();
        await drawnAnew(page);
      }
      await context.close();
    }
  });
});
