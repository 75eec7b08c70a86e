import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, BrowserContextOptions, Download, Page } from 'playwright-core';
import { expect, it, type TestContext } from 'vitest';
import { openBrowser } from '../../scripts/browser.mjs';
import { needsReader } from '../readers.ts';

/** The page as the build before all tests left it. */
export const PAGE_FILE = fileURLToPath(new URL('../../dist/knucklewright.html', import.meta.url));
export const PAGE_ADDRESS = pathToFileURL(PAGE_FILE).href;

/** One test, on a machine that is busy with other things, ms; nothing in the page is timed here (scripts/bench-page.mjs does that). */
const SLOWEST = 120_000;
/** One for all files of a worker, which ends with it: the driver closes its browsers when the process is told to end. */
let browser: Browser | null = null;

/** A page that was opened, what it asked for, and what it did that it should not. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  /** Uncaught errors and everything the browser wrote to the console as an error, breaches of the page's policy among them. */
  readonly errors: string[];
}

/** A page that a test left as it could be used again, and what it showed when it was loaded. */
interface Spare {
  readonly visit: Visit;
  readonly atFirst: string;
}
let spare: Spare | null = null;

/**
 * A test in the real browser with the network off. `open` with options, `{}` among them, gives the page newly loaded in a fresh profile. Without any it may
 * give the page that the test before left, where a new patient makes it again what it was when it was loaded: loading, and working out the first hand in code
 * that never ran, take two thirds of a short test. A test that changes what a new patient leaves (paper, what is kept, the page itself) passes `{}`. At the end no page may have had an error. Without a browser the test is skipped with the reason; in CI it fails.
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
      const started = browser;
      const visits: Visit[] = [];
      let again: Spare | null = null;
      try {
        await run(async (options, address) => {
          if (options === undefined) {
            const from = (await usedAgain()) ?? (await newSpare(started));
            again = from;
            visits.push(from.visit);
            return from.visit;
          }
          const visit = await visitTo(started, options, address);
          visits.push(visit);
          return visit;
        }, test);
        expect(visits.flatMap((visit) => visit.errors)).toEqual([]);
        spare = again ?? spare;
      } finally {
        for (const visit of visits) if (visit !== spare?.visit) await visit.context.close();
      }
    },
    SLOWEST,
  );
}

async function visitTo(started: Browser, options: BrowserContextOptions, address = PAGE_ADDRESS): Promise<Visit> {
  const context = await started.newContext({ offline: true, locale: 'en-GB', viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const requests: string[] = [];
  const errors: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('dialog', (dialog) => void dialog.accept());
  await page.goto(address);
  await begun(page);
  return { page, context, requests, errors };
}

async function newSpare(started: Browser): Promise<Spare> {
  const visit = await visitTo(started, {});
  return { visit, atFirst: await allShown(visit.page) };
}

/** The spare page with a new patient; null where there is none, or where it does not become what it was, which closes it. */
async function usedAgain(): Promise<Spare | null> {
  const from = spare;
  spare = null;
  if (from === null) return null;
  const { page, context } = from.visit;
  page.removeAllListeners('download');
  await page.locator('#new-patient').click();
  if ((await allShown(page)) === from.atFirst) return from;
  await context.close();
  return null;
}

/** All that the page shows and holds in its entries, the example at rest, but for what it said last, and what it keeps on the computer. */
async function allShown(page: Page): Promise<string> {
  await page.locator('.worn svg').waitFor();
  return page.evaluate(() => {
    const copy = document.body.cloneNode(true) as HTMLElement;
    for (const said of copy.querySelectorAll('[role="status"]')) said.textContent = '';
    // An attribute that went and came back stands last.
    const elements = [...copy.querySelectorAll('*')].map((e) => [
      e.tagName,
      ...[...e.attributes].map((a) => `${a.name}=${a.value}`).toSorted(),
    ]);
    const entries = [...document.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')];
    return JSON.stringify([
      copy.textContent,
      elements,
      entries.map((e) => ('checked' in e ? [e.value, e.checked] : e.value)),
      { ...localStorage },
    ]);
  });
}

/** The page unpacks its script itself, so that it can be empty when the browser calls it loaded. */
export async function begun(page: Page): Promise<void> {
  await page.locator('main').first().waitFor({ state: 'attached' });
}

/** Two frames: the page moves the focus in the one after what was pressed. */
export async function drawnAnew(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
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
/** A case with its hand, visits, chart and what next: everything that the page can show of a strip. */
export const CASE_FILE = fileURLToPath(new URL('../../fixtures/case-gains.json', import.meta.url));

/** What a reader's browser asks for, one for each of our languages. */
export const LOCALES = ['en-GB', 'es-ES', 'de-DE'];
/** How the sentence of a plate begins, in each of them. */
export const MP_HELD = /MP held at|MCF a|MP bei/;

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

/** Gives the page a file to open and waits until it has read it: it empties its entry then, whether it took the file or refused it. */
export async function openFile(page: Page, file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  const entry = page.locator('#open-file');
  await entry.setInputFiles(file);
  await expect.poll(() => entry.evaluate((input: HTMLInputElement) => input.value)).toBe('');
}

/** Opens the demonstration hand's file, or another, in the page and waits for its result. */
export async function openDemo(page: Page, file = DEMO_FILE): Promise<void> {
  await openFile(page, file);
  await page.locator('#sentence, .bottom-bar strong').filter({ hasText: /\d/ }).first().waitFor();
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
