import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, BrowserContextOptions, Download, Page } from 'playwright-core';
import { afterAll, expect, it, type TestContext } from 'vitest';
import { openBrowser } from '../../scripts/browser.mjs';
import { needsReader } from '../readers.ts';

/** The page as the build before all tests left it. */
export const PAGE_FILE = fileURLToPath(new URL('../../dist/knucklewright.html', import.meta.url));
export const PAGE_ADDRESS = pathToFileURL(PAGE_FILE).href;

/** One test, on a machine that is busy with other things, ms; nothing in the page is timed here (scripts/bench-page.mjs does that). */
const SLOWEST = 120_000;
let browser: Browser | null = null;
afterAll(async () => browser?.close());

/** A page that was opened, what it asked for, and what it did that it should not. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  /** Uncaught errors and everything the browser wrote to the console as an error, breaches of the page's policy among them. */
  readonly errors: string[];
}

/**
 * A test in the real browser: `open` gives the page in a fresh profile with the network off. At the end no page may have had an error.
 * Without a browser the test is skipped with the reason; in CI it fails.
 */
export function inBrowser(
  name: string,
  run: (open: (options?: BrowserContextOptions, address?: string) => Promise<Visit>, test: TestContext) => Promise<void>,
) {
  it(
    name,
    async (test) => {
      needsReader(test, 'chromium');
      browser ??= await openBrowser('--enable-precise-memory-info');
      const visits: Visit[] = [];
      const started = browser;
      try {
        await run(async (options = {}, address = PAGE_ADDRESS) => {
          const context = await started.newContext({ offline: true, locale: 'en-GB', viewport: { width: 1440, height: 900 }, ...options });
          const page = await context.newPage();
          const requests: string[] = [];
          const errors: string[] = [];
          page.on('request', (request) => requests.push(request.url()));
          page.on('pageerror', (error) => errors.push(String(error)));
          page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
          page.on('dialog', (dialog) => void dialog.accept());
          const visit = { page, context, requests, errors };
          visits.push(visit);
          await page.goto(address);
          await begun(page);
          return visit;
        }, test);
        expect(visits.flatMap((visit) => visit.errors)).toEqual([]);
      } finally {
        for (const { context } of visits) await context.close();
      }
    },
    SLOWEST,
  );
}

/** The page unpacks its script itself, so that it can be empty when the browser calls it loaded. */
export async function begun(page: Page): Promise<void> {
  await page.locator('main').first().waitFor({ state: 'attached' });
}

/** Loads the page anew, as a user does who comes back. */
export async function reload(page: Page): Promise<void> {
  await page.reload();
  await begun(page);
}

/** The demonstration hand, as it is typed. */
export const TYPED_HAND: Readonly<Record<string, string>> = {
  'digits.index.width': '17.5',
  'digits.index.circumference': '57',
  'digits.index.palmarRoom': '25',
  'digits.index.dorsalLength': '44',
  'digits.long.width': '17.5',
  'digits.long.circumference': '57',
  'digits.long.palmarRoom': '27',
  'digits.long.dorsalLength': '48',
  'digits.ring.width': '16.5',
  'digits.ring.circumference': '53',
  'digits.ring.palmarRoom': '25',
  'digits.ring.dorsalLength': '45',
  'digits.little.width': '14.5',
  'digits.little.circumference': '47',
  'digits.little.palmarRoom': '19',
  'digits.little.dorsalLength': '36',
  'motion.active.lacks': '25',
  'motion.active.bends': '100',
};

export const DEMO_FILE = fileURLToPath(new URL('../../fixtures/demo-hand.json', import.meta.url));
/** The one that lacks both motions, so that the page draws a plate. */
export const PLATE_DEMO_FILE = fileURLToPath(new URL('../../fixtures/demo-hand-plate.json', import.meta.url));
export const COMMAND = fileURLToPath(new URL('../../dist/knucklewright.js', import.meta.url));

/** The element of an entry, by its path. */
export function field(page: Page, where: string) {
  return page.locator(`[id="field-${where.replaceAll('.', '-')}"]`);
}

/** Types the demonstration hand, with the changes given, by way of the turns. The index finger is not asked for by the suggestion; it is typed before. */
export async function fillHand(page: Page, changes: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const [where, text] of Object.entries({ ...TYPED_HAND, ...changes })) await field(page, where).fill(text);
  await choose(page, 'side', 'left');
  await choose(page, 'target.digit', 'ring');
}

/** Presses a radio that fills its label. */
export async function choose(page: Page, name: string, value: string): Promise<void> {
  await page.locator(`input[name="${name}"][value="${value}"]`).check();
}

/** Opens a panel of the middle column. */
export async function openPanel(page: Page, name: string): Promise<void> {
  const button = page.locator(`#open-${name}`);
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
  await page.locator(`#panel-${name}`).waitFor();
}

export async function closePanel(page: Page): Promise<void> {
  await page.locator('#panel-close').click();
}

/** Shows one of the three pictures of the result. */
export async function show(page: Page, picture: 'hand' | 'section' | 'flat'): Promise<void> {
  await choose(page, 'picture', picture);
}

export async function noStopSign(page: Page): Promise<void> {
  await page.locator('#stop-none').click();
}

/** Opens the demonstration hand's file, or another, in the page and waits for its pattern. */
export async function openDemo(page: Page, file = DEMO_FILE): Promise<void> {
  await page.locator('#open-file').setInputFiles(file);
  await page.locator('#sentence, .bottom-bar').first().waitFor();
}

/** The flat outline as the page draws it. */
export async function outlineOf(page: Page): Promise<string | null> {
  await show(page, 'flat');
  return page.locator('#pattern-picture .layer-CUT').first().getAttribute('d');
}

/** What a download would leave on the disk. */
export async function contentOf(download: Download): Promise<Buffer> {
  return readFileSync(await download.path());
}

/** Saves by a button of the page. */
export async function saved(page: Page, button: string): Promise<{ readonly name: string; readonly content: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  return { name: download.suggestedFilename(), content: await contentOf(download) };
}
