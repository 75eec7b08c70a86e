import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './built-command.ts';
import { parseDxf } from './parse-dxf.ts';

const DEMO = 'fixtures/demo-clinic.csv';
const scratch = mkdtempSync(join(tmpdir(), 'batch-'));

afterAll(() => rmSync(scratch, { recursive: true }));

const folder = (name: string) => join(scratch, name);
const text = (...path: string[]) => readFileSync(join(scratch, ...path), 'utf8');
const rows = (...path: string[]) => parse(text(...path), { columns: true }) as Record<string, string>[];

/** Rounded size of each closed outline on CUT, as a reader of DXF finds it. */
function outlines(dxf: string): string[] {
  const found = parseDxf(dxf).entities.filter((e) => e.layer === 'CUT') as unknown as {
    shape?: boolean;
    vertices: { x: number; y: number }[];
  }[];
  expect(found.every((e) => e.shape === true)).toBe(true);
  return found.map(({ vertices }) => {
    const side = (values: number[]) => (Math.max(...values) - Math.min(...values)).toFixed(3);
    return `${side(vertices.map((v) => v.x))} x ${side(vertices.map((v) => v.y))}`;
  });
}

/** A table with the demo's first hands, in another notation. */
function table(name: string, rewrite: (line: string) => string, count = 6): string {
  const lines = readFileSync(DEMO, 'utf8')
    .trimEnd()
    .split('\n')
    .slice(0, count + 1);
  const path = join(scratch, name);
  writeFileSync(path, rewrite(lines.join('\n')));
  return path;
}

describe('the walk from the demo table to sheets', () => {
  it('1. batch: 57 hands, and three rows that name line, column and fault', () => {
    // As wide as strips from stock are.
    const ran = run('batch', DEMO, '--block', 'auto', '--width', '20', '--files', 'none', '--out', folder('walk'));
    expect([ran.code, ran.out.split('\n')[0]]).toEqual([1, '57 hands in the cut list; 3 rows wrong']);
    expect(rows('walk', 'row-errors.csv').map((e) => [e.line, e.column, e.name, e.code])).toEqual([
      ['18', '11', 'ring.width', 'FIELD_UNREADABLE'],
      ['35', '7', 'long.width', 'SECTION_IMPOSSIBLE'],
      ['50', '1', 'code', 'CASE_CODE'],
    ]);
    const list = rows('walk', 'cut-list.csv');
    const json = JSON.parse(text('walk', 'cut-list.json'));
    expect(list).toHaveLength(57);
    expect(json.pieces.map((p: { id: string; length: number }) => `${p.id} ${p.length.toFixed(2)}`)).toEqual(
      list.map((p) => `${p.id} ${Number(p.length).toFixed(2)}`),
    );
    expect(list.every((p) => p.invented === 'yes')).toBe(true);
  });

  it('2. sizes: six of them in two widths and what is cut singly, each of 57 hands served once', () => {
    const ran = run('sizes', DEMO, '--count', '6', '--out', folder('walk'), '--json');
    expect(ran.code).toBe(1);
    const report = JSON.parse(ran.out);
    const blanks = rows('walk', 'stock-sizes.csv');
    expect(blanks.filter((p) => p.id?.startsWith('SIZE-'))).toHaveLength(6);
    expect(blanks.filter((p) => p.id?.startsWith('SINGLY-')).map((p) => p.code)).toEqual(report.singly);
    expect(blanks.reduce((sum, p) => sum + Number(p.quantity), 0)).toBe(57);
    expect(report.pieces.reduce((a: number, b: number) => a + b) + report.singly.length).toBe(57);
    // Each hand's blank is as long and as wide as its strip in the cut list of batch, whoever made that.
    const strips = new Map(rows('walk', 'cut-list.csv').map((p) => [p.code, p]));
    const sizes = new Map(report.sizes.map((size: { id: string }) => [size.id, size])) as Map<string, { length: number; width: number }>;
    expect(report.assignment).toHaveLength(57);
    for (const { code, size, cutOff } of report.assignment) {
      const [strip, blank] = [strips.get(code), sizes.get(size)];
      if (size === null) expect(report.singly).toContain(code);
      else expect((blank?.length ?? 0) - cutOff).toBeCloseTo(Number(strip?.length), 2);
      if (blank) expect(Number(strip?.width)).toBeLessThanOrEqual(blank.width);
    }
    expect(report.chosen.cover).toBeGreaterThanOrEqual(0.95);
  });

  it('3. sheets: every blank once, as a reader of the DXF files finds them, and the bound in words', () => {
    const ran = run('sheets', join(folder('walk'), 'stock-sizes.csv'), '--out', folder('walk'));
    expect([ran.code, ran.out.split('\n')[0]]).toEqual([0, expect.stringMatching(/^57 pieces: [23] new sheets/)]);
    const drawn = readdirSync(folder('walk'))
      .filter((file) => /^sheet-\d+_mm\.dxf$/.test(file))
      .flatMap((file) => outlines(text('walk', file)));
    const wanted = rows('walk', 'stock-sizes.csv').flatMap((s) =>
      Array.from({ length: Number(s.quantity) }, () => `${Number(s.length).toFixed(3)} x ${Number(s.width).toFixed(3)}`),
    );
    expect(drawn.toSorted()).toEqual(wanted.toSorted());
    expect(readdirSync(folder('walk'))).toEqual(
      expect.arrayContaining(['cut-list-01_mm.svg', 'remnants.csv', 'layout.json', 'stock-sizes_mm.svg']),
    );
  });

  it('or all strips themselves on sheets, with the outlines of the cut list', () => {
    const ran = run('batch', DEMO, '--files', 'sheets', '--formats', 'dxf', '--out', folder('strips'), '--json');
    expect(ran.code).toBe(1);
    const { sheets } = JSON.parse(ran.out);
    const drawn = sheets.sheets.flatMap((_: unknown, i: number) => outlines(text('strips', `sheet-0${i + 1}_mm.dxf`)));
    const lengths = drawn.map((d: string) => Number(d.split(' x ')[0])).toSorted((a: number, b: number) => a - b);
    const listed = rows('strips', 'cut-list.csv')
      .map((p) => Number(p.length))
      .toSorted((a, b) => a - b);
    expect(lengths).toHaveLength(57);
    // The list has two decimals.
    for (const [i, length] of listed.entries()) expect(Math.abs(lengths[i] - length)).toBeLessThan(0.006);
    expect(sheets.atLeast).toBeLessThanOrEqual(sheets.newSheets);
  });

  it('is the same, byte for byte, when it is done again', () => {
    const args = ['sheets', join(folder('walk'), 'stock-sizes.csv'), '--grain', 'free', '--seed', '7', '--out'];
    expect(run(...args, folder('one')).code).toBe(0);
    expect(run(...args, folder('two')).code).toBe(0);
    expect(readdirSync(folder('one')).length).toBeGreaterThan(3);
    for (const file of readdirSync(folder('one'))) expect(text('one', file)).toBe(text('two', file));
  });
});

describe('batch reads tables as they come', () => {
  const lengths = (name: string) => rows(name, 'cut-list.csv').map((p) => [p.code, p.length]);
  const made = (path: string, name: string, ...more: string[]) => run('batch', path, '--files', 'none', '--out', folder(name), ...more);

  it('semicolons, decimal commas, a byte order mark, line ends of Windows and centimetres give the same list', () => {
    expect(
      made(
        table('plain.csv', (t) => t),
        'plain',
      ).code,
    ).toBe(0);
    expect(lengths('plain')).toHaveLength(6);
    const german = (t: string) =>
      `\uFEFF${t
        .replaceAll(',', ';')
        .replaceAll(/(\d)\.(\d)/g, '$1,$2')
        .replaceAll('\n', '\r\n')}\r\n`;
    expect(made(table('german.csv', german), 'german').code).toBe(0);
    expect(lengths('german')).toEqual(lengths('plain'));
    const quoted = (t: string) => t.replaceAll(/(\d+)\.(\d)/g, '"$1,$2"');
    expect(made(table('quoted.csv', quoted), 'quoted').code).toBe(0);
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
    expect(made(table('cm.csv', cm), 'cm', '--units', 'cm').code).toBe(0);
    expect(lengths('cm')).toEqual(lengths('plain'));
  });

  it('a row with too many cells, a stray quote and a repeated code stop no other row', () => {
    const path = table('broken.csv', (t) => {
      const [head = '', a = '', b = '', c = '', d = '', e = '', f = ''] = t.split('\n');
      const stray = c.replace('CLINIC-03', 'CLINIC-03"x');
      return [head, `${a},9`, b, stray, d, d, e, '', f].join('\n');
    });
    const ran = made(path, 'broken');
    expect(ran.code).toBe(1);
    expect(rows('broken', 'row-errors.csv').map((r) => [r.line, r.code])).toEqual([
      ['2', 'CSV_CELLS'],
      ['4', 'INVALID_OPENING_QUOTE'],
      ['6', 'ROW_TWICE'],
    ]);
    expect(rows('broken', 'cut-list.csv').map((p) => p.code)).toEqual(['CLINIC-02', 'CLINIC-04', 'CLINIC-05', 'CLINIC-06']);
  });

  it('--strict writes no list when a row is wrong', () => {
    const ran = made(DEMO, 'strict', '--strict');
    expect(ran.code).toBe(1);
    expect(readdirSync(folder('strict'))).not.toContain('cut-list.csv');
  });

  it('a wrong header is refused with every column, and a text that looks like a formula is disarmed in the list of errors', () => {
    const ran = made(
      table('head.csv', (t) => t.replace('index.width', 'index.witdh').replace('code,', 'kode,')),
      'head',
    );
    expect(ran.code).toBe(1);
    expect(ran.err).toContain('column 3: "index.witdh"');
    expect(ran.err).toContain('did you mean index.width?');
    expect(ran.err).toContain('has no code');
    made(
      table('formula.csv', (t) => t.replace('CLINIC-01', '=1+1')),
      'formula',
    );
    const [error] = rows('formula', 'row-errors.csv');
    expect([error?.line, error?.code]).toEqual(['2', 'CASE_CODE']);
    expect(text('formula', 'row-errors.csv')).not.toMatch(/(^|,)"?[=+@-]/m);
  });
});

describe('files for a machine', () => {
  const laser = ['--cutter', 'laser-if-allowed', '--kerf', '0.3', '--material', 'PCL sheet', '--material-allows-laser', '--formats', 'dxf'];

  it.each([
    ['batch, a file each', ['batch', 'HANDS', '--files', 'each']],
    ['batch, on sheets', ['batch', 'HANDS', '--files', 'sheets']],
    ['sheets', ['sheets', '--sizes', '168x20:3']],
  ])('%s: the caution of the laser and the kerf in the outlines are said once', (name, args) => {
    const path = table('machine.csv', (t) => t, 3);
    const ran = run(...args.map((arg) => (arg === 'HANDS' ? path : arg)), ...laser, '--out', folder(`machine ${name}`));
    expect(ran.code).toBe(0);
    for (const code of ['LASER_CAUTION', 'KERF_IN_OUTLINES']) expect(ran.err.match(new RegExp(code, 'g'))).toHaveLength(1);
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

  it('a hand that lacks both motions has a plate when one is named, else its row is wrong and says so', () => {
    const path = mixed();
    expect(run('batch', path, '--files', 'none', '--out', folder('no-plate')).code).toBe(1);
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
    expect(JSON.parse(run(...args).out)).toMatchObject({ made: 6, files: 6, wrongRows: 0 });
    expect(listed('each')[1]).toBe('mp-immobilisation-dorsal, MP 40 degrees, index to little');
    // The plate's file is what draw makes of the same hand.
    const [plate] = JSON.parse(text('each', 'cut-list.json')).pieces.filter((p: { plate: unknown }) => p.plate);
    writeFileSync(join(scratch, 'hand.json'), JSON.stringify(plate.hand));
    const drawn = run(
      'draw',
      join(scratch, 'hand.json'),
      '--plate',
      'mp-immobilisation-dorsal',
      '--formats',
      'dxf',
      '--out',
      folder('one-plate'),
    );
    expect(drawn.code).toBe(0);
    const [file = ''] = readdirSync(folder('one-plate'));
    expect(text('each', `${plate.id}_mm.dxf`)).toBe(text('one-plate', file));
    rmSync(join(folder('each'), `${plate.id}_mm.dxf`));
    expect(JSON.parse(run(...args).out)).toMatchObject({ made: 0, reused: 6, files: 1 });
    expect(text('each', `${plate.id}_mm.dxf`)).toBe(text('one-plate', file));
  });

  it('plates and strips lie on one sheet, each in its size', () => {
    const ran = run('batch', mixed(), '--plate', 'dorsal', '--files', 'sheets', '--formats', 'dxf', '--out', folder('mixed'), '--json');
    expect([ran.code, JSON.parse(ran.out).sheets.newSheets]).toEqual([0, 1]);
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

  it('sizes leave plates out and say so', () => {
    const ran = run('sizes', mixed(), '--block', 'auto', '--count', '2', '--json');
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
  ])('%j is refused with a message about %s', (args, message) => {
    const ran = run('batch', DEMO, '--files', 'none', '--out', folder('refused'), ...args);
    expect([ran.code, ran.err.includes(message)]).toEqual([2, true]);
  });
});

describe('a rerun of batch', () => {
  const again = (...more: string[]) =>
    run(
      'batch',
      table('again.csv', (t) => t),
      '--files',
      'each',
      '--formats',
      'svg',
      '--out',
      folder('again'),
      '--json',
      ...more,
    );

  it('takes over what is done, makes what is missing, and does not mix settings', () => {
    const first = again();
    expect(JSON.parse(first.out)).toMatchObject({ made: 6, reused: 0, files: 6 });
    const list = text('again', 'cut-list.csv');
    const [svg = ''] = readdirSync(folder('again')).filter((name) => name.endsWith('.svg'));
    const drawn = text('again', svg);
    // As after a stop: one file is missing, the last line of the progress was cut off, and rubbish follows.
    rmSync(join(folder('again'), svg));
    const progress = join(folder('again'), 'batch-progress.jsonl');
    truncateSync(progress, readFileSync(progress).length - 200);
    appendFileSync(progress, '{"digest":');
    expect(JSON.parse(again().out)).toMatchObject({ made: 1, reused: 5 });
    expect(text('again', 'cut-list.csv')).toBe(list);
    expect(text('again', svg)).toBe(drawn);
    expect(JSON.parse(again().out)).toMatchObject({ made: 0, reused: 6, files: 0 });
    const other = again('--width', '18');
    expect([other.code, other.err.includes('OTHER_BATCH')]).toEqual([1, true]);
    expect(JSON.parse(again('--width', '18', '--force').out)).toMatchObject({ made: 6, reused: 0 });
    expect(text('again', 'cut-list.csv')).not.toBe(list);
  });

  it('never overwrites a list that is not its own', () => {
    const ran = run('batch', DEMO, '--files', 'none', '--out', folder('walk2'));
    expect(ran.code).toBe(1);
    rmSync(join(folder('walk2'), 'batch-progress.jsonl'));
    const second = run('batch', DEMO, '--files', 'none', '--out', folder('walk2'));
    expect([second.code, second.err.includes('OUTPUT_EXISTS')]).toEqual([1, true]);
  });
});

describe('sizes and sheets by themselves', () => {
  it('sizes --norms says which figures are of memory grade, and --lengths needs no hands', () => {
    const norms = run('sizes', '--norms', 'mixed', '--block', 'ring-lowered-in-three', '--count', '5', '--hands', '200', '--json');
    const told = JSON.parse(norms.out);
    expect(told.sources.join(' ')).toMatch(/ANSUR II.*MEMORY GRADE/s);
    expect(told.chosen.sizes).toHaveLength(5);
    const file = join(scratch, 'lengths.txt');
    writeFileSync(file, '150\n160,5\n17 cm\n');
    const measured = JSON.parse(run('sizes', '--lengths', file, '--count', '2', '--cover', '100', '--json').out);
    expect(measured.all.map((s: { sizes: number[] }) => s.sizes)).toEqual([[170], [150, 170], [150, 161, 170]]);
  });

  it('sheets takes sizes typed, remnants, and proves with HiGHS when asked', () => {
    writeFileSync(join(scratch, 'stock.csv'), 'id,along,across\nLEFT-1,400,60\n');
    const ran = run('sheets', '--sizes', '168x20:8, 176x20:10', '--stock', join(scratch, 'stock.csv'), '--prove', '--json');
    const told = JSON.parse(ran.out);
    expect(told).toMatchObject({
      pieces: 18,
      newSheets: 1,
      atLeast: 1,
      verdict: '1 new sheet, and fewer is impossible with a gap of 2 and a margin of 5 mm',
    });
    expect(told.sheets.map((s: { stock: string }) => s.stock)).toEqual(['LEFT-1', 'new']);
  });

  it.each([
    [['sheets'], 'give a cut list or --sizes'],
    [['sheets', '--sizes', '168x20', '--sheet', '457'], '--sheet'],
    [['sheets', '--sizes', '168:20'], '--sizes'],
    [['sheets', '--sizes', '900x20'], 'PART_TOO_LARGE'],
    [['sizes', '--count', '3'], 'one of the three'],
    [['sizes', '--norms', 'male', '--count', '3'], '--block'],
    [['sizes', '--norms', 'male', '--count', '3', '--block', 'auto'], 'auto needs deficits'],
    [['sizes', DEMO, '--count', '3', '--block', 'auto', '--cover', '0'], '--cover'],
    [['batch', 'nowhere.csv'], 'does not exist'],
  ])('%j is refused with a message about %s', (args, message) => {
    const ran = run(...args, '--json');
    expect(ran.code).toBeGreaterThan(0);
    expect(ran.err).toContain(message);
  });
});
