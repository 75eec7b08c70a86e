// Pictures of the page to look at: three widths, light, dark and forced colours, three languages. node scripts/page-pictures.mjs FOLDER
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { buildPage, PAGE } from './build-page.mjs';

const folder = process.argv[2] ?? 'out/page-pictures';
const only = process.argv[3] ?? '';
await mkdir(folder, { recursive: true });
await buildPage();
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
const DIGITS = {
  index: [17.5, 57, 25, 44],
  long: [17.5, 57, 27, 48],
  ring: [16.5, 53, 25, 45],
  little: [14.5, 47, 19, 36],
};
const FIELDS = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
const LOOKS = { light: { colorScheme: 'light' }, dark: { colorScheme: 'dark' }, forced: { forcedColors: 'active' } };

for (const locale of ['en-GB', 'es-ES', 'de-DE']) {
  for (const width of [320, 768, 1440]) {
    for (const [look, settings] of Object.entries(LOOKS)) {
      const name = `${locale.slice(0, 2)}-${width}-${look}`;
      if (!name.includes(only)) continue;
      const context = await browser.newContext({ locale, viewport: { width, height: 900 }, ...settings });
      const page = await context.newPage();
      await page.goto(pathToFileURL(PAGE).href);
      if (width === 1440) await page.screenshot({ path: join(folder, `${name}-empty.png`), fullPage: true });
      await page.locator('#draw').click();
      await page.waitForTimeout(100);
      if (width === 320) await page.screenshot({ path: join(folder, `${name}-wrong.png`), fullPage: false });
      await page.fill('#field-code', 'DEMO-01');
      await page.check('input[name="side"][value="left"]');
      for (const [digit, values] of Object.entries(DIGITS)) {
        for (const [k, id] of FIELDS.entries()) await page.fill(`#field-digits-${digit}-${id}`, String(values[k]));
      }
      await page.check('input[name="target.digit"][value="ring"]');
      await page.fill('#field-target-pipExtensionDeficit', '25');
      await page.focus('#field-digits-ring-palmarRoom');
      await page.waitForTimeout(700);
      await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
      await context.close();
    }
  }
}
await browser.close();
