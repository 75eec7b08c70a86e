import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { batchScratch, DEMO, outlines } from './batch-scratch.ts';
import { runCommand } from './run-command.ts';

const { folder, rows, scratch, table, text } = batchScratch();

describe('batch reads tables as they come', () => {
  const lengths = (name: string) => rows(name, 'cut-list.csv').map((p) => [p.code, p.length]);
  const made = (path: string, name: string, ...more: string[]) =>
    runCommand('batch', path, '--block', 'ring-lowered-in-three', '--files', 'none', '--out', folder(name), ...more);

  it('semicolons, decimal commas, a byte order mark, line ends of Windows and centimetres give the same list', async () => {
    expect(
      (
        await made(
          table('plain.csv', (t) => t),
          'plain',
        )
      ).exit,
    ).toBe(0);
    expect(lengths('plain')).toHaveLength(6);
    const german = (t: string) =>
      `\uFEFF${t
        .replaceAll(',', ';')
        .replaceAll(/(\d)\.(\d)/g, '$1,$2')
        .replaceAll('\n', '\r\n')}\r\n`;
    expect((await made(table('german.csv', german), 'german')).exit).toBe(0);
    expect(lengths('german')).toEqual(lengths('plain'));
    const quoted = (t: string) => t.replaceAll(/(\d+)\.(\d)/g, '"$1,$2"');
    expect((await made(table('quoted.csv', quoted), 'quoted')).exit).toBe(0);
    expect(lengths('quoted')).toEqual(lengths('plain'));
    const cm = (t: string) =>
      t
        .split('\n')
        .map((line, i) =>
          i === 0
            ? line
            : line
                .split(',')
                .map((cell, c) => (c >= 2 && c < 18 && cell !== '' ? String(Number(cell) / 10) : cell))
                .join(','),
        )
        .join('\n');
    expect((await made(table('cm.csv', cm), 'cm', '--units', 'cm')).exit).toBe(0);
    expect(lengths('cm')).toEqual(lengths('plain'));
  });

  it('a row with too many cells, a stray quote and a repeated code stop no other row', async () => {
    const path = table('broken.csv', (t) => {
      const [head = '', a = '', b = '', c = '', d = '', e = '', f = ''] = t.split('\n');
      const stray = c.replace('CLINIC-03', 'CLINIC-03"x');
      return [head, `${a},9`, b, stray, d, d, e, '', f].join('\n');
    });
    const ran = await made(path, 'broken');
    expect(ran.exit).toBe(1);
    expect(rows('broken', 'row-errors.csv').map((r) => [r.line, r.code])).toEqual([
      ['2', 'CSV_CELLS'],
      ['4', 'INVALID_OPENING_QUOTE'],
      ['6', 'ROW_TWICE'],
    ]);
    expect(rows('broken', 'cut-list.csv').map((p) => p.code)).toEqual(['CLINIC-02', 'CLINIC-04', 'CLINIC-05', 'CLINIC-06']);
  });

  it('--strict writes no list when a row is wrong', async () => {
    const ran = await made(
      table('strict.csv', (t) => t.replace('CLINIC-03', '=1+1')),
      'strict',
      '--strict',
    );
    expect(ran.exit).toBe(1);
    expect(readdirSync(folder('strict'))).not.toContain('cut-list.csv');
  });

  it('a wrong header is refused with every column, and a text that looks like a formula is disarmed in the list of errors', async () => {
    const ran = await made(
      table('head.csv', (t) => t.replace('index.width', 'index.witdh').replace('code,', 'kode,')),
      'head',
    );
    expect(ran.exit).toBe(1);
    expect(ran.err).toContain('column 3: "index.witdh"');
    expect(ran.err).toContain('did you mean index.width?');
    expect(ran.err).toContain('has no code');
    await made(
      table('formula.csv', (t) => t.replace('CLINIC-01', '=1+1')),
      'formula',
    );
    const [error] = rows('formula', 'row-errors.csv');
    expect([error?.line, error?.code]).toEqual(['2', 'CASE_CODE']);
    expect(text('formula', 'row-errors.csv')).not.toMatch(/(^|,)"?[=+@-]/m);
  });
});

describe('plates in a batch', () => {
  /** The demo's first hands; the second lacks both motions, the fourth is to have a palmar plate whatever it lacks. */
  const mixed = () =>
    table('mixed.csv', (t) =>
      t
        .split('\n')
        .map((line, i) => {
          const cells = line.split(',');
          if (i === 2) cells.splice(19, 2, '20', '30');
          return [...cells.slice(0, 2), i === 0 ? 'block' : i === 4 ? 'mp-extension-block' : '', ...cells.slice(2)].join(',');
        })
        .join('\n'),
    );
  const listed = (name: string) => rows(name, 'cut-list.csv').map((p) => p.plate || p.block);

  it('a hand that lacks both motions has a plate when one is named, else its row is wrong and says so', async () => {
    const path = mixed();
    expect((await runCommand('batch', path, '--files', 'none', '--out', folder('no-plate'))).exit).toBe(1);
    expect(rows('no-plate', 'row-errors.csv').map((e) => [e.line, e.code])).toEqual([['3', 'BOTH_DEFICITS']]);
    expect(rows('no-plate', 'row-errors.csv')[0]?.message).toMatch(/--plate/);
    expect(listed('no-plate').filter((w) => w?.startsWith('mp-'))).toEqual(['mp-extension-block, MP 0 degrees, index to little']);
    const args = [
      'batch',
      path,
      '--files',
      'each',
      '--formats',
      'dxf',
      '--plate',
      'mp-immobilisation-dorsal',
      '--out',
      folder('each'),
      '--json',
    ];
    expect(JSON.parse((await runCommand(...args)).out)).toMatchObject({ made: 6, files: 6, wrongRows: 0 });
    expect(listed('each')[1]).toBe('mp-immobilisation-dorsal, MP 40 degrees, index to little');
    // The plate's file is what draw makes of the same hand.
    const [plate] = JSON.parse(text('each', 'cut-list.json')).pieces.filter((p: { plate: unknown }) => p.plate);
    writeFileSync(join(scratch, 'hand.json'), JSON.stringify(plate.hand));
    const drawn = await runCommand(
      'draw',
      join(scratch, 'hand.json'),
      '--plate',
      'mp-immobilisation-dorsal',
      '--formats',
      'dxf',
      '--out',
      folder('one-plate'),
    );
    expect(drawn.exit).toBe(0);
    const [file = ''] = readdirSync(folder('one-plate'));
    expect(text('each', `${plate.id}_mm.dxf`)).toBe(text('one-plate', file));
    rmSync(join(folder('each'), `${plate.id}_mm.dxf`));
    expect(JSON.parse((await runCommand(...args)).out)).toMatchObject({ made: 0, reused: 6, files: 1 });
    expect(text('each', `${plate.id}_mm.dxf`)).toBe(text('one-plate', file));
  });

  it('plates and strips lie on one sheet, each in its size', async () => {
    const ran = await runCommand(
      'batch',
      mixed(),
      '--plate',
      'dorsal',
      '--files',
      'sheets',
      '--formats',
      'dxf',
      '--out',
      folder('mixed'),
      '--json',
    );
    expect([ran.exit, JSON.parse(ran.out).sheets.newSheets]).toEqual([0, 1]);
    const sides = (a: number, b: number): readonly number[] => (a < b ? [a, b] : [b, a]);
    const bySize = (list: readonly (readonly number[])[]) => list.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d);
    const drawn = bySize(outlines(text('mixed', 'sheet-01_mm.dxf')).map((d) => sides(...(d.split(' x ').map(Number) as [number, number]))));
    const { pieces } = JSON.parse(text('mixed', 'cut-list.json')) as { pieces: { length: number; width: number }[] };
    const wanted = bySize(pieces.map((p) => sides(p.length, p.width)));
    expect(drawn).toHaveLength(6);
    // This reader sees an arc as its chord, so a plate's box, which arcs bound, comes out a little small.
    for (const [i, size] of wanted.entries())
      for (const k of [0, 1]) expect(Math.abs((drawn[i]?.[k] ?? 0) - (size[k] ?? 0))).toBeLessThan(0.1);
  });

  it('sizes leave plates out and say so', async () => {
    const ran = await runCommand('sizes', mixed(), '--block', 'auto', '--count', '2', '--json');
    expect(JSON.parse(ran.out)).toMatchObject({
      hands: 4,
      leftOut: [
        { code: 'BOTH_DEFICITS', hands: 1 },
        { code: 'PLATE', hands: 1 },
      ],
    });
    expect(ran.err).toMatch(/line 5: a plate/);
  });

  it.each([
    [['--plate', 'dorsal', '--block', 'ring-lowered-in-three'], 'is for --block auto'],
    [['--plate', 'both'], 'has two faces'],
    [['--plate', 'dorsel'], 'no plate "dorsel"'],
  ])('%j is refused with a message about %s', async (args, message) => {
    const ran = await runCommand('batch', DEMO, '--files', 'none', '--out', folder('refused'), ...args);
    expect([ran.exit, ran.err.includes(message)]).toEqual([2, true]);
  });
});
