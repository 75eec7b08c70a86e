import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { BY_NIGHT } from '../by-night.ts';
import { inBrowser } from './browser.ts';
import { CountedHands, JOBS, WINDOWS } from './jobs.ts';

/** scripts/count-jobs.mjs prints what all of them cost. */
const MOST_CLICKS = 8;
/** The three turns of a phone are pressed as well, the choice of units stands in its menu, and a visit has parts; the first job has no more than elsewhere. */
const MOST_CLICKS_PHONE = 10;
const MOST_TABS = 20;
/** Without Enter between the measures. */
const MOST_TABS_ALONE = 40;
const LANGUAGES = ['en-GB', 'es-ES', 'de-DE'];
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** The bar with the result and its button is in the window, whole, and says the result as soon as there is one. */
async function resultInView(page: Page): Promise<void> {
  const seen = await page.evaluate(() => {
    const bar = document.querySelector('.bottom-bar');
    const { top, bottom, height } = bar?.getBoundingClientRect() ?? new DOMRect();
    const says = bar?.querySelector('strong')?.textContent ?? '';
    const motion = document.querySelector<HTMLInputElement>('input[name="motion.active.lacks"], input[name="visit.lacks"]')?.value ?? '';
    return { whole: height > 0 && top >= 0 && bottom <= innerHeight + 1, says: motion === '' ? says !== '' : /\d/.test(says) };
  });
  expect(seen).toEqual({ whole: true, says: true });
}

describe('the counted jobs, from an empty page to the saved file', () => {
  const all = WINDOWS.flatMap((window) => LANGUAGES.map((locale) => ({ window, locale })));
  // By day the design where the screen is lowest, and the visit on a phone, which has the least room for each.
  const byDay = (name: string) => [{ window: name.includes('visit') ? WINDOWS[4] : WINDOWS[2], locale: 'de-DE' }];
  const jobs = BY_NIGHT ? JOBS : JOBS.filter(({ name }) => /three fingers|visit/.test(name));
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
        // With the keyboard of a phone up a field may have to be scrolled to.
        if (height >= 490) expect([locale, width, scrolled]).toEqual([locale, width, 0]);
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
});
