// Does the counted jobs in the real browser and prints what each costs: clicks, keys, Tabs, pixels scrolled, seconds of the run (no person's).
// node scripts/count-jobs.mjs [PART OF A JOB'S NAME [WIDTHxHEIGHT [LANGUAGE]]]; the page must be built.
import { pathToFileURL } from 'node:url';
import { openBrowser } from './browser.mjs';
import { PAGE } from './build-page.mjs';
import { bundleTests, load } from './bundle-tests.mjs';

const [, , only = '', onlyWindow = '', onlyLanguage = ''] = process.argv;
const folder = await bundleTests('tests/page/jobs.ts');
const { JOBS, WINDOWS, CountedHands } = await load(folder, 'jobs');
const browser = await openBrowser();
console.log(
  'before, by keys: 68 Tabs and 28 keys, or 13 clicks, in a page 6300 px tall at 1280 x 800 (the page of one long form, counted by hand)',
);
console.log('job | window | language | clicks | keys | Tabs | scrolled px | s');
for (const { name, run } of JOBS.filter((job) => job.name.includes(only))) {
  for (const [width, height] of WINDOWS) {
    if (!`${width}x${height}`.includes(onlyWindow)) continue;
    if (width < 600 && name.includes('keys')) continue;
    for (const language of ['en', 'es', 'de']) {
      if (!language.includes(onlyLanguage)) continue;
      const context = await browser.newContext({
        locale: language === 'en' ? 'en-GB' : language,
        viewport: { width, height },
        offline: true,
      });
      const page = await context.newPage();
      await page.goto(pathToFileURL(PAGE).href);
      // Nobody presses a key in a page that is not there yet: what was pressed before it had unpacked itself was counted and led nowhere.
      await page.locator('main').waitFor({ state: 'attached' });
      const hands = new CountedHands(page);
      const failed = await run(hands).then(
        () => '',
        (error) => ` | FAILED ${String(error).split('\n')[0]}`,
      );
      const { clicks, keys, tabs, scrolled, seconds } = hands.cost();
      console.log(`${name} | ${width} x ${height} | ${language} | ${clicks} | ${keys} | ${tabs} | ${scrolled} | ${seconds}${failed}`);
      if (failed) process.exitCode = 1;
      await context.close();
    }
  }
}
await browser.close();
