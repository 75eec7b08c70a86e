import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from './run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'clinic-tables-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const MEASURES = ['index', 'long', 'ring', 'little'].flatMap((digit) =>
  ['width', 'circumference', 'palmarRoom', 'dorsalLength'].map((measure) => `${digit}.${measure}`),
);
const HAND = [17.5, 57, 25, 44, 17.5, 57, 27, 48, 16.5, 53, 25, 45, 14.5, 47, 19, 36];
const header = ['code', 'side', ...MEASURES, 'target.digit', 'target.pipExtensionDeficit', 'target.pipFlexionDeficit'];
const row = (code: string, side: string, digit = 'ring') => [
  code,
  side,
  ...HAND.map((mm) => String(mm).replace('.', ',')),
  digit,
  '25',
  '0',
];
const table = (...rows: readonly (readonly string[])[]) => rows.map((cells) => cells.join(';')).join('\r\n');

let runs = 0;
async function batch(bytes: string | Uint8Array, ...flags: readonly string[]) {
  const path = join(scratch, `table-${++runs}.csv`);
  writeFileSync(path, bytes);
  const folder = join(scratch, `out-${runs}`);
  const run = await runCommand('batch', path, '--files', 'none', '--json', '--out', folder, ...flags);
  const list = existsSync(join(folder, 'cut-list.csv')) ? readFileSync(join(folder, 'cut-list.csv'), 'utf8') : '';
  return { ...run, folder, list, report: run.out === '' ? null : JSON.parse(run.out) };
}

describe('tables as a spreadsheet leaves them', () => {
  it('sides in three languages and any case, digits and headers in capitals', async () => {
    const sides = ['Left', 'L', 'links', 'izq', 'RIGHT', 'R', 'rechts', 'derecha'];
    const done = await batch(
      table(
        header.map((name) => name.toUpperCase()),
        ...sides.map((side, k) => row(`CASE-${k + 1}`, side, 'RING')),
      ),
    );
    expect(done.exit, done.err).toBe(0);
    const sidesOf = done.list
      .split('\n')
      .slice(1, 9)
      .map((line) => /,(left|right),/.exec(line)?.[1]);
    expect(sidesOf).toEqual(['left', 'left', 'left', 'left', 'right', 'right', 'right', 'right']);
  });

  it.each([
    ['a line sep=;', `sep=;\r\n${table(header, row('CASE-1', 'left'))}`],
    ['lines of title', `Hands of the week;;\r\n;;\r\n${table(header, row('CASE-1', 'left'))}`],
    [
      'empty rows behind',
      `${table(header, row('CASE-1', 'left'))}\r\n${';'.repeat(header.length - 1)}\r\n${';'.repeat(header.length - 1)}\r\n`,
    ],
    ['UTF-16, little end first', Buffer.from(`\ufeff${table(header, row('CASE-1', 'left'))}`, 'utf16le')],
    ['UTF-16, big end first', Buffer.from(`\ufeff${table(header, row('CASE-1', 'left'))}`, 'utf16le').swap16()],
    ['a byte order mark', `\ufeff${table(header, row('CASE-1', 'left'))}`],
  ])('%s', async (_name, text) => {
    const done = await batch(text);
    expect(done.exit, done.err).toBe(0);
    expect(done.report).toMatchObject({ made: 1, wrongRows: 0 });
  });

  it('tells the line of the file, whatever stands before it', async () => {
    const done = await batch(`Week 12\r\n\r\n${table(header, row('CASE-1', 'left'), row('CASE-2', 'upwards'))}`);
    expect(done.err).toContain('line 5, column 2 (side)');
  });

  it('columns of no meaning are named by their headers, their cells are nowhere', async () => {
    const done = await batch(table([...header, 'Patient', 'Tel.'], [...row('CASE-1', 'left'), 'Somebody Known', '555']));
    expect(done.exit).toBe(0);
    expect(JSON.stringify(done.report.warnings)).toContain('\\"Patient\\", \\"Tel.\\"');
    for (const name of readdirSync(done.folder)) expect(readFileSync(join(done.folder, name), 'utf8')).not.toMatch(/Somebody|555/);
    expect(done.out + done.err).not.toContain('Somebody');
  });

  it('a slip in the name of a measure is no column of no meaning', async () => {
    const done = await batch(
      table(
        header.map((name) => name.replace('ring.width', 'ring.widht')),
        row('CASE-1', 'left'),
      ),
    );
    expect(done.exit).toBe(1);
    expect(done.err).toContain('did you mean ring.width?');
  });
});

describe('some rows wrong', () => {
  const text = table(header, row('CASE-1', 'left'), row('CASE-2', 'upwards'));

  it('exit 1, the good ones made, the wrong ones in a file that is there', async () => {
    const done = await batch(text);
    expect(done.exit).toBe(1);
    expect(done.report).toMatchObject({ made: 1, wrongRows: 1 });
    const [, named = ''] = /all of it in (\S+)/.exec(done.err) ?? [];
    expect(existsSync(named)).toBe(true);
  });

  it('--strict: nothing written, and no file named', async () => {
    const done = await batch(text, '--strict');
    expect(done.exit).toBe(1);
    expect(done.list).toBe('');
    expect(done.err).not.toContain('row-errors.csv');
  });
});
