import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import gains from '../../fixtures/case-gains.json' with { type: 'json' };
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import { DEMO_FILE, inBrowser, openFile } from './browser.ts';

const json = (value: unknown) => Buffer.from(JSON.stringify(value));
const [visit] = gains.visits;

/** Files that a person may open, and what the page says of them in English and German. */
const REFUSED: readonly (readonly [why: string, content: Buffer, english: RegExp, german: RegExp])[] = [
  ['a hand of a newer version', json({ ...demoHand, schema: 'knucklewright/hand@9' }), /newer Knucklewright/, /neueren Knucklewright/],
  ['a case of a newer version', json({ ...gains, schema: 'knucklewright/case@9' }), /newer Knucklewright/, /neueren Knucklewright/],
  [
    '401 visits',
    json({ ...gains, visits: Array.from({ length: 401 }, () => visit) }),
    /400 that one file holds/,
    /400, die eine Datei fasst/,
  ],
  ['a name twice', Buffer.from(JSON.stringify(demoHand).replace('"side":', '"side":"left","side":')), /“side” twice/, /„side“ zweimal/],
];

inBrowser('says of a file why it is not opened, in words, and changes nothing', async (open) => {
  for (const [locale, column] of [
    ['en-GB', 2],
    ['de-DE', 3],
  ] as const) {
    const { page } = await open({ locale });
    await openFile(page, DEMO_FILE);
    await page.locator('.code', { hasText: 'DEMO-01' }).waitFor();
    for (const row of REFUSED) {
      await openFile(page, { name: 'file.json', mimeType: 'application/json', buffer: row[1] });
      const said = page.locator('#file-problems');
      await said.waitFor();
      expect(await said.textContent(), row[0]).toMatch(row[column]);
      expect(await page.locator('.code').textContent()).toContain('DEMO-01');
      await said.getByRole('button').click();
    }
  }
});

inBrowser('reads a hand file that a Windows editor saved as UTF-16', async (open) => {
  const { page } = await open();
  const text = readFileSync(DEMO_FILE, 'utf8').replace('DEMO-01', 'DEMO-16');
  await openFile(page, {
    name: 'utf-16.json',
    mimeType: 'application/json',
    buffer: Buffer.from(`\ufeff${text}`, 'utf16le'),
  });
  await page.locator('.code', { hasText: 'DEMO-16' }).waitFor();
});
