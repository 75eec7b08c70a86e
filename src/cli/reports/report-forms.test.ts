import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as z from 'zod';
import { runCommand } from '../../../tests/run-command.ts';
import { commandsFor } from '../commands.ts';
import { installed } from '../installed.ts';
import { REPORT_FORMS, reportSchemas } from '../report-schemas.ts';

const scratch = mkdtempSync(join(tmpdir(), 'reports-'));
const at = (name: string) => join(scratch, name);
const HAND = 'fixtures/demo-hand.json';
const DRAWN = '@drawn/DEMO-01-ring-lowered-in-three_mm';
const BOTH = 'fixtures/demo-hand-plate.json';

beforeAll(async () => {
  writeFileSync(at('hands.csv'), readFileSync('fixtures/demo-clinic.csv', 'utf8').split('\n').slice(0, 3).join('\n'));
  writeFileSync(at('shelf.csv'), 'length,width,count\n210,20,2\n240,30,5\n');
  for (const name of ['gains', 'stalls', 'swells']) cpSync(`fixtures/case-${name}.json`, at(`${name}.json`));
  // One of its strips was closed 1.25 mm beyond the trim mark.
  const stalls = JSON.parse(readFileSync(at('stalls.json'), 'utf8'));
  stalls.visits.at(-1).closedAt = 1.25;
  writeFileSync(at('stalls.json'), JSON.stringify(stalls));
  await runCommand('case', 'new', at('new.json'), '--code', 'KW-1', '--side', 'left', '--digit', 'ring', '--no-input');
}, 60_000);
afterAll(() => rmSync(scratch, { recursive: true }));

/** What each command is run on, in this order, for some read what others wrote: a report of each, and of its other forms. */
const RUNS: readonly (readonly string[])[] = [
  ['plan', HAND],
  ['plan', BOTH],
  ['plan', '@no-such.json'],
  ['draw', HAND, '--formats', 'svg,dxf', '--content', 'cut', '--shelf', '@shelf.csv', '--out', '@drawn'],
  ['draw', BOTH, '--plate', 'both', '--formats', 'svg', '--content', 'cut', '--out', '@plates'],
  ['redraw', `${DRAWN}.svg`, '--formats', 'dxf', '--content', 'cut', '--out', '@redrawn'],
  ['batch', '@hands.csv', '--formats', 'dxf', '--files', 'sheets', '--out', '@batch'],
  ['batch', '@hands.csv', '--files', 'none', '--shelf', '@shelf.csv', '--out', '@each'],
  ['sizes', '@hands.csv', '--count', '2'],
  ['sizes', '--norms', 'mixed', '--block', 'ring-lowered-in-three', '--count', '2', '--hands', '20', '--best', 'sheets'],
  ['sheets', '--sizes', '168x20:8', '--shears', '--formats', 'dxf', '--out', '@sheets'],
  ['sheets', '--sizes', '900x20'],
  ['print-check', '--across', '98.5', '--along', '100.2', '--pages', 'pattern', `${DRAWN}.svg`, '--out', '@corrected'],
  ['print-check', '--across', '100', '--along', '100'],
  ['inspect', `${DRAWN}.dxf`],
  ['inspect', `${DRAWN}.svg`, 'fixtures/demo-hand.json'],
  ['kerf-test', '--material', 'PCL', '--out', '@kerf'],
  ['case', 'show', '@gains.json'],
  ['case', 'next', '@gains.json'],
  ['case', 'next', '@stalls.json'],
  ['case', 'next', '@swells.json'],
  ['case', 'add', '@new.json', '--date', '2026-01-02', '--pip-active', '25/85', '--circumference', '61.5'],
  ['case', 'amend', '@new.json', '1', '--pip-active', '20/85', '--why', 'read again'],
  ['case', 'close', '@gains.json', '--date', '2026-09-01', '--reason', 'goal'],
  ['case', 'fit', '@gains.json', '@stalls.json', '--all'],
  ['case', 'audit', '@gains.json', '@stalls.json'],
  ['blocks'],
  ['plates'],
];

const ERRORS = 'knucklewright/errors@1';
/** What is wrong in those runs that are to stop. */
const WRONG = ['@no-such.json', '900x20'];

/** Keys whose figures are pure numbers with more decimals: what one unit is in mm, and by what a drawing is made larger. */
const NO_LENGTH = /\.mmPerUnit$|^\.factors\./;

function figuresOf(data: unknown, path = ''): readonly (readonly [string, number])[] {
  if (typeof data === 'number') return [[path, data]];
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) => figuresOf(value, `${path}.${key}`));
}

describe('what --json prints', () => {
  const printed = new Map<string, unknown[]>();

  it.each(RUNS.map((words) => [words.join(' '), words] as const))('%s: is of its form, and has no key besides', async (_, words) => {
    const { out } = await runCommand(...words.map((word) => (word.startsWith('@') ? at(word.slice(1)) : word)), '--json');
    const data = JSON.parse(out);
    expect([data.schema, data.schema === ERRORS]).toEqual([data.schema, WRONG.some((word) => words.includes(word))]);
    const form = REPORT_FORMS[data.schema];
    if (form === undefined) throw new Error(`${data.schema} has no form`);
    expect(form.safeParse(data).error).toBeUndefined();
    const besides = form.safeParse({ ...data, besides: 1 });
    expect(besides.success).toBe(false);
    for (const [path, value] of figuresOf(data))
      if (!NO_LENGTH.test(path)) expect([path, String(value)]).toEqual([path, expect.stringMatching(/^-?\d+(\.\d{1,3})?$/)]);
    printed.set(data.schema, [...(printed.get(data.schema) ?? []), data]);
  });

  it('the version of the program, as data, is of its form', async () => {
    const data = await installed(new URL('./', import.meta.url));
    expect(REPORT_FORMS[data.schema]?.safeParse(data).error).toBeUndefined();
    printed.set(data.schema, [data]);
  });

  it('was looked at for every report there is, those of all commands among them', async () => {
    expect([...printed.keys()].sort()).toEqual(Object.keys(REPORT_FORMS).sort());
    const named = (await commandsFor([])).flatMap(({ reportSchema }) => (reportSchema === null ? [] : [reportSchema]));
    expect(Object.keys(REPORT_FORMS)).toEqual(expect.arrayContaining(named));
  });

  it('fits the JSON Schema that schema report prints, read back', async () => {
    const schemas = JSON.parse((await runCommand('schema', 'report')).out);
    expect(schemas).toEqual(JSON.parse(JSON.stringify(reportSchemas())));
    for (const [name, all] of printed) {
      const read = z.fromJSONSchema(schemas[name]);
      for (const data of all) expect([name, read.safeParse(data).error]).toEqual([name, undefined]);
      expect([name, read.safeParse({ ...(all[0] as object), besides: 1 }).success]).toEqual([name, false]);
    }
  });
});

describe('schema report NAME', () => {
  it('prints the one that is meant, by its whole or its short name', async () => {
    const whole = JSON.parse((await runCommand('schema', 'report', 'knucklewright/case-fit-report@1')).out);
    expect(whole).toMatchObject({ title: 'knucklewright/case-fit-report@1', additionalProperties: false });
    expect(JSON.parse((await runCommand('schema', 'report', 'case fit')).out)).toEqual(whole);
  });

  it('says which there are where there is none of that name', async () => {
    const { exit, err } = await runCommand('schema', 'report', 'plans');
    expect([exit, err]).toEqual([2, expect.stringContaining('there is no report "plans"; there are plan, draw,')]);
    expect((await runCommand('schema', 'hand', 'plan')).exit).toBe(2);
  });
});
