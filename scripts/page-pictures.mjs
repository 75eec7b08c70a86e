// Pictures of the page to look at: three widths, light, dark and forced colours, three languages; empty, with
// the demo hand, with a plate, with a case, and wrong.
// node scripts/page-pictures.mjs FOLDER [PART OF A NAME]; the page must be built.
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { openBrowser } from './browser.mjs';
import { PAGE } from './build-page.mjs';

const folder = process.argv[2] ?? 'out/page-pictures';
const only = process.argv[3] ?? '';
await mkdir(folder, { recursive: true });
const fixture = (name) => new URL(`../fixtures/${name}.json`, import.meta.url).pathname;
const browser = await openBrowser();
const LOOKS = { light: { colorScheme: 'light' }, dark: { colorScheme: 'dark' }, forced: { forcedColors: 'active' } };

for (const [look, settings] of Object.entries(LOOKS)) {
  for (const width of [320, 768, 1440]) {
    const context = await browser.newContext({ locale: 'en-GB', viewport: { width, height: 900 }, ...settings });
    const page = await context.newPage();
    await page.goto(pathToFileURL(PAGE).href);
    for (const language of ['en', 'es', 'de']) {
      const name = `${language}-${width}-${look}`;
      if (!name.includes(only)) continue;
      const picture = (state) => page.screenshot({ path: join(folder, `${name}-${state}.png`), fullPage: true });
      await page.reload();
      await page.locator('#language').selectOption(language);
      if (language === 'en') await picture('empty');
      const open = async (name) => {
        await page.locator('#open-file').setInputFiles(fixture(name));
        await page.locator('#pattern-picture').waitFor();
        await page.waitForTimeout(700);
      };
      for (const [state, file] of [
        ['plate', 'demo-hand-plate'],
        ['case', 'case-gains'],
        ['demo', 'demo-hand'],
      ]) {
        await open(file);
        await page.focus('#field-digits-ring-palmarRoom');
        await page.waitForTimeout(100);
        await picture(state);
      }
      await page.fill('#field-digits-ring-width', '160');
      await page.check('input[name="block"][value="own"]');
      await page.check('input[name="places.long"][value="raised"]');
      await page.click('#draw');
      await page.waitForTimeout(700);
      await picture('wrong');
    }
    await context.close();
  }
}
await browser.close();
