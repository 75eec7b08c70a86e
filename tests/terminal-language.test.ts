import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LANGUAGE_IDS, type Language } from '../src/words/language.ts';
import { type CommandRun, runCommandIn } from './run-command.ts';

const fixture = (name: string) => resolve('fixtures', name);
const HAND = fixture('demo-hand.json');
const PLATE_HAND = fixture('demo-hand-plate.json');
/** Of the demo table, its first rows: one of them is wrong on purpose. */
const TABLE = 'hands.csv';
const CASE = fixture('case-gains.json');

/** What each command prints of what it made; the later ones read what the earlier ones wrote. */
const COMMANDS: Readonly<Record<string, readonly string[]>> = {
  draw: ['draw', HAND, '--formats', 'svg', '--shelf', 'shelf.csv', '--paper-trial'],
  'draw the named block': ['draw', HAND, '--block', 'ring-raised-in-four', '--formats', 'svg', '--cutter', 'knife'],
  'draw a plate': ['draw', PLATE_HAND, '--plate', 'dorsal', '--formats', 'pdf', '--pages', 'pattern'],
  redraw: ['redraw', 'DEMO-01-ring-lowered-in-three_mm.svg', '--formats', 'svg', '--force'],
  batch: ['batch', TABLE, '--files', 'none'],
  sizes: ['sizes', TABLE, '--count', '6', '--formats', 'svg', '--best', 'sheets', '--use-trim', '2'],
  'sizes of norms': [
    'sizes',
    '--norms',
    'mixed',
    '--block',
    'ring-raised-in-four',
    '--count',
    '2',
    '--hands',
    '40',
    '--out',
    'norms',
    '--force',
  ],
  sheets: ['sheets', 'stock-sizes.csv', '--shears', '--formats', 'svg'],
  'sheets apart': ['sheets', '--sizes', '184x28:7,205x36:12', '--formats', 'svg', '--force'],
  'case report': ['case', 'report', CASE, '--out', 'report.pdf'],
  'case chart': ['case', 'chart', CASE, '--out', 'chart.svg'],
  'case next': ['case', 'next', CASE],
};

/** Words that no Spanish or German sentence has. */
const ENGLISH =
  /\b(the|of|and|with|from|by|to|is|are|off|round|wide|hands|sheets?|strips?|cuts?|pages?|sizes?|pieces?|drawing|chart|new|used|free|loop|next|degrees|finger|long|little)\b/g;

/** What is the same in every language: names of files, blocks, flags and commands, sources and the name of a scheme. */
function wordsAlone(text: string): string {
  return text
    .split('\n')
    .filter((line) => !/^ {2}(\(|published|MEMORY)|^left out: /.test(line))
    .join('\n')
    .replace(/knucklewright \S+( \S+)*|\S*[/\\]\S*|\S+\.(svg|pdf|csv|json)\b|--\S+|\([a-z]+(-[a-z]+)+\)|total active motion/g, '');
}

const english = (text: string) => [...new Set(wordsAlone(text).match(ENGLISH) ?? [])];

const folders = new Map<Language, string>();
const printed = new Map<string, CommandRun>();

beforeAll(async () => {
  for (const language of LANGUAGE_IDS) {
    const folder = mkdtempSync(join(tmpdir(), 'knucklewright-words-'));
    folders.set(language, folder);
    writeFileSync(join(folder, TABLE), readFileSync(fixture('demo-clinic.csv'), 'utf8').split('\n').slice(0, 20).join('\n'));
    writeFileSync(join(folder, 'shelf.csv'), 'id,length,width,count\nA,185,33,4\n');
    for (const [name, words] of Object.entries(COMMANDS))
      printed.set(`${language} ${name}`, await runCommandIn(folder, ...words, '--language', language));
  }
}, 240_000);
afterAll(() => {
  for (const folder of folders.values()) rmSync(folder, { recursive: true });
});

const said = (language: Language, name: string) => {
  const run = printed.get(`${language} ${name}`);
  if (!run) throw new Error(`${name} did not run`);
  return run;
};

describe('what commands print is in the language that was asked for', () => {
  const foreign = LANGUAGE_IDS.filter((language) => language !== 'en');
  it.each(Object.keys(COMMANDS).flatMap((name) => foreign.map((language) => [name, language] as const)))('%s, %s', (name, language) => {
    const { out, exit } = said(language, name);
    expect([exit, out.length > 20]).toEqual([COMMANDS[name]?.includes(TABLE) ? 1 : 0, true]);
    expect(english(out)).toEqual([]);
    // A figure with decimals has the language's sign; degrees and dates have none.
    expect(wordsAlone(out).match(/\b\d+\.\d+\b(?!\.)/g) ?? []).toEqual([]);
    expect(out.split('\n').length).toBe(said('en', name).out.split('\n').length);
  });

  it('English would be found', () => {
    for (const name of Object.keys(COMMANDS)) expect(english(said('en', name).out).length, name).toBeGreaterThan(0);
    expect(english(said('en', 'draw').out).length).toBeGreaterThan(10);
  });

  it('the words of problems and warnings are the same in every language', () => {
    for (const name of Object.keys(COMMANDS))
      for (const language of foreign) expect(said(language, name).err, name).toBe(said('en', name).err);
  });

  it('JSON is English, whatever was asked for', async () => {
    const folder = folders.get('en') ?? '';
    for (const name of ['draw the named block', 'draw a plate', 'sizes of norms', 'sheets apart', 'case next']) {
      // Nothing is written without a folder, and files have their language inside.
      const run = (language: Language) => runCommandIn(folder, ...(COMMANDS[name] ?? []), '--json', '--language', language);
      const data: object[] = [];
      for (const language of LANGUAGE_IDS) data.push({ ...JSON.parse((await run(language)).out), valuesFrom: null });
      for (const other of data.slice(1)) expect(other, name).toEqual(data[0]);
    }
  });
});
