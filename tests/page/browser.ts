import { existsSync } from 'node:fs';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

const PLACES = [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'];

/** The browser on this computer: CHROMIUM_PATH, Debian's chromium or google-chrome. */
export function browserPath(): string | null {
  return PLACES.find((path) => path !== undefined && existsSync(path)) ?? null;
}

export async function startBrowser(): Promise<Browser> {
  const executablePath = browserPath();
  if (executablePath === null) throw new Error('no browser; set CHROMIUM_PATH or install chromium');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--enable-precise-memory-info',
    ],
  });
}

/** What a visit did that it should not, and what it asked for. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  /** Uncaught errors and everything the page wrote to the console as an error, breaches of its policy among them. */
  readonly errors: readonly string[];
}

/** Opens an address in a fresh profile with the network off. */
export async function visit(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Visit> {
  const context = await browser.newContext({ offline: true, locale: 'en-GB', viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const requests: string[] = [];
  const errors: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(address);
  return { page, context, requests, errors };
}

/** The demonstration hand, as it is typed. */
export const TYPED_HAND: Readonly<Record<string, string>> = {
  code: 'DEMO-01',
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
  'target.pipExtensionDeficit': '25',
};

/** The element of an entry, by its path. */
export function field(page: Page, where: string) {
  return page.locator(`[id="field-${where.replaceAll('.', '-')}"]`);
}

/** Types the demonstration hand, with the changes given, and waits until the pattern is there. */
export async function fillHand(page: Page, changes: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const [where, text] of Object.entries({ ...TYPED_HAND, ...changes })) await field(page, where).fill(text);
  await page.locator('input[name="side"][value="left"]').check();
  await page.locator('input[name="target.digit"][value="ring"]').check();
}
