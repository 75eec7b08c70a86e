import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import { BY_NIGHT } from '../by-night.ts';
import { runCommand } from '../run-command.ts';
import { choose, DEMO_FILE, field, fillHand, inBrowser, noStopSign, openDemo, openFile, openPanel, PAGE_FILE, saved } from './browser.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'knucklewright-page-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The files that the command writes for a hand file, by their endings. */
async function commandFiles(handFile: string, ...flags: readonly string[]): Promise<Readonly<Record<string, Buffer>>> {
  const out = mkdtempSync(join(folder, 'out-'));
  expect(await runCommand('draw', handFile, '--out', out, ...flags)).toMatchObject({ exit: 0 });
  return Object.fromEntries(readdirSync(out).map((name) => [name, readFileSync(join(out, name))]));
}

/** Path data and roles of an SVG, one line each, in the order of the file: its whole geometry. */
function geometryOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<path\b[^>]*>/g)].map(
    ([path]) => `${/data-role="([^"]*)"/.exec(path)?.[1]}: ${/\bd="([^"]*)"/.exec(path)?.[1]}`,
  );
}

describe('files saved from the page', () => {
  inBrowser('are the ones of the command line: DXF byte for byte, SVG with the same geometry', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    const files = await commandFiles(DEMO_FILE);
    const dxf = await saved(page, '#save-dxf');
    const svg = await saved(page, '#save-svg');
    expect(Object.keys(files).toSorted()).toEqual([dxf.name, svg.name].toSorted());
    expect(dxf.content.equals(files[dxf.name] ?? Buffer.of())).toBe(true);
    const own = geometryOf(svg.content.toString());
    expect(own.length).toBeGreaterThan(50);
    expect(own).toEqual(geometryOf(files[svg.name]?.toString() ?? ''));
    // Drawn twice, saved twice: the same again.
    expect((await saved(page, '#save-dxf')).content.equals(dxf.content)).toBe(true);
  });

  inBrowser('stay the same through the saved hand file, for typed units, ring sizes, another block and options', async (open) => {
    const { page } = await open();
    await fillHand(page, {
      'digits.ring.width': '21/32 in',
      'digits.long.circumference': 'ring 58',
      'digits.index.palmarRoom': '',
    });
    await noStopSign(page);
    await openPanel(page, 'options');
    await field(page, 'differential').fill('25');
    await openPanel(page, 'ways');
    await choose(page, 'way', 'long-and-ring-raised-in-four');
    await openPanel(page, 'files');
    await field(page, 'code').fill('demo-01');
    await field(page, 'note').focus();
    const dxf = await saved(page, '#save-dxf');
    const hand = await saved(page, '#save-hand');
    expect(hand.name).toBe('DEMO-01_hand.json');
    const path = join(folder, hand.name);
    writeFileSync(path, hand.content);
    const files = await commandFiles(path, '--block', 'long-and-ring-raised-in-four', '--differential', '25', '--formats', 'dxf');
    // The page's name tells the differential apart from the usual one.
    expect(dxf.name).toBe('DEMO-01-long-and-ring-raised-in-four-25deg_mm.dxf');
    expect(dxf.content.equals(Object.values(files)[0] ?? Buffer.of())).toBe(true);
  });

  inBrowser('of a plate are the ones of the command line', async (open) => {
    const { page } = await open();
    const hand = JSON.parse(readFileSync(DEMO_FILE, 'utf8'));
    const path = join(folder, 'both.json');
    writeFileSync(path, JSON.stringify({ ...hand, target: { digit: 'ring', pipExtensionDeficit: 20, pipFlexionDeficit: 40 } }));
    await openDemo(page, path);
    await noStopSign(page);
    await openPanel(page, 'ways');
    await choose(page, 'plate.faces', 'both');
    const same = async (...flags: readonly string[]) => {
      const files = await commandFiles(path, '--plate', 'both', '--formats', 'dxf,pdf', ...flags);
      await openPanel(page, 'files');
      for (const button of ['#save-dxf', '#save-pdf']) {
        const file = await saved(page, button);
        expect(Object.keys(files)).toContain(file.name);
        expect(file.content.equals(files[file.name] ?? Buffer.of())).toBe(true);
      }
    };
    if (BY_NIGHT) await same();
    await openPanel(page, 'ways');
    await choose(page, 'plate.digits', 'neighbours');
    await page.locator('#sentence').getByText('long, ring, little').waitFor();
    await same('--digits', 'long,ring,little');
  });

  inBrowser('a demo hand that was opened is saved with the same content', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const hand = await saved(page, '#save');
    expect(JSON.parse(hand.content.toString())).toEqual(JSON.parse(readFileSync(DEMO_FILE, 'utf8')));
  });
});

describe('files opened in the page', () => {
  const demo = readFileSync(DEMO_FILE, 'utf8');
  const refused: readonly (readonly [string, string, RegExp])[] = [
    ['of 2 MB', JSON.stringify({ filler: 'x'.repeat(2_000_000) }), /larger than the 1 MB/],
    ['that is cut off', demo.slice(0, 300), /not JSON/],
    ['with another form', '{"schema": "something/else"}', /is missing|not allowed/],
    ['with a value out of range', demo.replace('17.5', '175'), /8 to 35 mm is allowed/],
  ];
  for (const [name, text, message] of refused) {
    inBrowser(`a file ${name} is refused with a message that takes the focus, and nothing is lost`, async (open) => {
      const { page } = await open();
      await openDemo(page);
      const path = join(folder, 'wrong.json');
      writeFileSync(path, text);
      await openFile(page, path);
      await page.waitForFunction(() => document.activeElement?.id === 'file-problems');
      expect(await page.locator('#file-problems').textContent()).toMatch(message);
      expect(await page.locator('header .code').textContent()).toContain('DEMO-01');
      expect(await page.locator('.kept').count()).toBe(0);
      expect(await field(page, 'digits.ring.width').inputValue()).toBe('16.5');
    });
  }

  inBrowser('hostile text in a code or a note is text on the page and in the files, never markup', async (open) => {
    const { page } = await open();
    const hostile = '<img src=x onerror="window.ran=1"><script>window.ran=1</script>&lt;b&gt; ]]> -->';
    const path = join(folder, 'hostile.json');
    writeFileSync(path, JSON.stringify({ ...JSON.parse(demo), note: hostile }));
    const elements = () => page.evaluate(() => document.querySelectorAll('img, script:not([type="module"]), b').length);
    await openDemo(page, path);
    await openPanel(page, 'files');
    expect(await page.locator('#field-note').inputValue()).toBe(hostile);
    await page.locator('#field-code').fill('"><svg onload=window.ran=1>');
    await page.locator('#print').click();
    await page.locator('#panel-look').waitFor();
    writeFileSync(path, JSON.stringify({ ...JSON.parse(demo), code: hostile, '<b>key</b>': 1 }));
    await openFile(page, path);
    await page.waitForFunction(() => document.activeElement?.id === 'file-problems');
    expect(await elements()).toBe(0);
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);
    await openDemo(page);
    await noStopSign(page);
    await openPanel(page, 'files');
    await page.locator('#field-note').fill(hostile);
    const svg = (await saved(page, '#save-svg')).content.toString();
    const parsed = await page.evaluate((text) => {
      const file = new DOMParser().parseFromString(text, 'image/svg+xml');
      const inputs = JSON.parse(file.querySelector('metadata')?.textContent ?? 'null') as { hand: { note: string } };
      return { broken: file.querySelectorAll('parsererror, img, script').length, note: inputs.hand.note };
    }, svg);
    expect(parsed).toEqual({ broken: 0, note: hostile });
  });
});

/** The template that the build filled, as the browser reads it. */
function noticesBuiltIn(): string {
  const [, escaped = ''] = /<template id="notices">([\s\S]*?)<\/template>/.exec(readFileSync(PAGE_FILE, 'utf8')) ?? [];
  return escaped.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
}

inBrowser('what the page is says its licence in three languages, and shows every word of whose work is in it', async (open) => {
  const notices = noticesBuiltIn();
  for (const [locale, heading, own] of [
    ['en-GB', 'About this page', /free to use, copy and change under the MIT licence/],
    ['es-ES', 'Acerca de esta página', /usar, copiar y modificar libremente con la licencia MIT/],
    ['de-DE', 'Über diese Seite', /frei zu nutzen, zu kopieren und zu ändern unter der MIT-Lizenz/],
  ] as const) {
    const { page, requests } = await open({ locale });
    await openPanel(page, 'files');
    await openPanel(page, 'about');
    const panel = page.locator('#panel-about');
    expect(await panel.getByRole('heading').first().textContent()).toBe(heading);
    expect(await panel.locator('p').first().textContent()).toMatch(own);
    const shown = panel.locator('.notices');
    expect(await shown.isVisible()).toBe(true);
    expect(await shown.textContent()).toBe(notices);
    // A licence is in English whatever the page speaks, which a screen reader has to be told.
    expect(await shown.getAttribute('lang')).toBe('en');
    for (const name of ['preact', 'pdfkit', 'zod', 'core-js-pure']) expect(notices).toMatch(new RegExp(`^${name} \\d`, 'm'));
    expect(notices).toContain('Permission is hereby granted');
    expect(requests.filter((address) => !/^(file|blob|data):/.test(address))).toEqual([]);
  }
});
