import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { BY_NIGHT } from '../by-night.ts';
import { CASE_FILE, closePanel, DEMO_FILE, field, inBrowser, LOCALES, MP_HELD, openDemo, openFile, openPanel, show } from './browser.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA and its good practices, in the page or in a part of it: rule and element. */
async function findings(page: Page, part = ':root'): Promise<readonly string[]> {
  // A function, not an element: the page's policy lets no other script in.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(async (within) => {
    const axe = (
      window as unknown as {
        axe: {
          run: (
            c: Document | string,
            o: object,
          ) => Promise<{ violations: { id: string; nodes: { target: unknown[]; failureSummary: string }[] }[] }>;
        };
      }
    ).axe;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await axe.run(within === ':root' ? document : within, { runOnly: { type: 'tag', values: tags } });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${String(n.target)}: ${n.failureSummary}`));
  }, part);
}

/** Each begins at the page of a new patient. */
const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  empty: async () => {},
  valid: async (page) => openDemo(page),
  flat: async (page) => {
    await openDemo(page);
    if (await page.locator('#turn-make').isVisible()) await page.locator('#turn-make').click();
    await show(page, 'flat');
  },
  plate: async (page) => {
    await openDemo(page);
    await field(page, 'motion.active.bends').fill('60');
    await page.locator('#sentence, .bottom-bar').getByText(MP_HELD).first().waitFor();
  },
  case: async (page) => {
    await openFile(page, CASE_FILE);
    await page.locator('#case-heading').waitFor();
  },
  // On a narrow screen the motion, and what follows, are parts of a visit of their own.
  motion: async (page) => partOfVisit(page, 'motion'),
  advice: async (page) => partOfVisit(page, 'next'),
  invalid: async (page) => {
    await openDemo(page);
    await field(page, 'motion.active.lacks').fill('no number');
    await page.locator('#print, #bar-print').first().click();
    await page.locator('#panel-look').waitFor();
  },
};

async function partOfVisit(page: Page, part: string): Promise<void> {
  await STATES.case?.(page);
  await page.locator('#nothing-wrong').click();
  await page.keyboard.type('6');
  if (await page.locator('#menu').isVisible()) await page.locator(`#visit-${part}`).click();
}

async function newPatient(page: Page): Promise<void> {
  const button = page.locator('#new-patient');
  const isInMenu = !(await button.isVisible());
  if (isInMenu) await page.locator('#menu').click();
  await button.click();
}

/** Every panel, opened from the first turn or the last. */
const PANELS = ['more', 'stop', 'ways', 'options', 'files', 'figures', 'look', 'about'] as const;

const LOOKS: Readonly<Record<string, BrowserContextOptions>> = {
  light: { colorScheme: 'light' },
  narrow: { viewport: { width: 320, height: 700 } },
  dark: { colorScheme: 'dark' },
  'forced-colours': { forcedColors: 'active' },
  'text of 200 %': { viewport: { width: 1280, height: 660 } },
  'text of 200 % at 640 px': { viewport: { width: 640, height: 900 } },
};

/** The page's own size of letters is 15 px. */
async function enlarge(page: Page, look: string): Promise<void> {
  if (look.includes('200 %')) await page.evaluate(() => (document.documentElement.style.fontSize = '30px'));
}

/** Brings the page to where the button of a panel is, on a narrow screen. */
async function reach(page: Page, panel: (typeof PANELS)[number]): Promise<void> {
  if (await page.locator('#menu').isVisible()) {
    const turn = ['more', 'stop', 'ways'].includes(panel) ? '#turn-finger' : '#turn-make';
    if (panel === 'options') await page.locator('#menu').click();
    else await page.locator(turn).click();
  }
  // Its button is at the end of another panel.
  if (panel === 'about') await openPanel(page, 'files');
  await openPanel(page, panel);
}

/** By day each look and each state once; by night all of them in all languages. */
const BY_DAY: readonly (readonly [keyof typeof LOOKS, readonly string[]])[] = [
  ['light', ['empty', 'case']],
  ['narrow', ['valid']],
  ['dark', ['invalid', 'plate']],
  ['forced-colours', ['flat']],
];

describe('axe finds nothing', () => {
  const chosen = BY_NIGHT ? Object.keys(LOOKS).map((look) => [look, Object.keys(STATES)] as const) : BY_DAY;
  for (const [look, states] of chosen) {
    for (const locale of BY_NIGHT ? LOCALES : ['en-GB']) {
      inBrowser(`on the ${states.join(', ')} page, ${look}, ${locale}`, async (open) => {
        const { page } = await open({ ...LOOKS[look], locale });
        await enlarge(page, look);
        for (const state of states) {
          await newPatient(page);
          await STATES[state]?.(page);
          expect([state, await findings(page)]).toEqual([state, []]);
        }
      });
    }
  }
  for (const look of BY_NIGHT ? Object.keys(LOOKS) : ['light']) {
    for (const locale of BY_NIGHT ? LOCALES : ['en-GB']) {
      inBrowser(`in every panel, ${look}, ${locale}`, async (open) => {
        const { page } = await open({ ...LOOKS[look], locale });
        await enlarge(page, look);
        await openFile(page, DEMO_FILE);
        for (const panel of PANELS) {
          await reach(page, panel);
          // By day what stands beside the panels is looked at without them, above.
          expect([panel, await findings(page, BY_NIGHT ? ':root' : `#panel-${panel}`)]).toEqual([panel, []]);
          await closePanel(page);
        }
      });
    }
  }

  inBrowser('in German with text of 200 %', async (open) => {
    const { page } = await open({ locale: 'de-DE', viewport: { width: 640, height: 900 } });
    await openDemo(page);
    await page.evaluate(() => (document.documentElement.style.fontSize = '30px'));
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    expect(await findings(page)).toEqual([]);
  });
});
