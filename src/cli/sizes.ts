import { dirname } from 'node:path';
import { readText } from '../files/read-file.ts';
import { checkWritable, outputFileName, saveFiles } from '../files/save-file.ts';
import { NORM_SOURCES, normHands } from '../hand/norm-hands.ts';
import { csvLine } from '../sheet/plastic/csv-text.ts';
import { cutListHeader, cutListLine } from '../sheet/plastic/cut-list.ts';
import { sizeChart } from '../sheet/plastic/size-chart.ts';
import { MOST_SIZES, type StockSizes, stockSizes } from '../sheet/plastic/stock-sizes.ts';
import { stripPiece } from '../sheet/plastic/strip-piece.ts';
import { parseLength } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { seeded, seededNormal } from '../units/seeded.ts';
import { readOptions } from './draw.ts';
import { fail } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';
import { blockFlag, RowReader, type RowSettings } from './hand-pieces.ts';
import { readOutputPlan } from './output-plan.ts';
import { openHandTable, type RowError, rowErrorText } from './read-hand-rows.ts';
import type { SizesFlags } from './sizes-command.ts';
import { writePatterns } from './write-patterns.ts';

const SIZES_CSV = 'stock-sizes.csv';
const WASTE_CSV = 'size-table.csv';
const CHART = 'stock-sizes';
const PIECES = 60;
const LARGEST_LENGTHS = 20_000_000;
const LONGEST_STRIP = 1000;
const MOST_SHOWN = 20;

/** Why a hand, a code or a line of the table, has no strip; one hand may have several reasons. */
interface LeftOut {
  readonly hand: string | number;
  readonly code: string;
  readonly text: string;
}

/** Lengths to serve, mm, with what they rest on. */
interface Lengths {
  readonly values: readonly number[];
  readonly width: number;
  readonly from: string;
  readonly sources: readonly string[];
  readonly leftOut: readonly LeftOut[];
  /** What leaving them out does to a drawn sample. */
  readonly bias?: string;
  readonly invented: boolean;
}

interface Numbers {
  readonly count: number;
  readonly cover: number;
  readonly most: number;
  readonly step: number;
  readonly pieces: number | null;
  readonly hands: number;
  readonly seed: number;
}

/** Runs `sizes`. */
export async function sizes(table: string | undefined, flags: SizesFlags): Promise<void> {
  const numbers = readNumbers(flags);
  const output = readOutputPlan(flags);
  if (!numbers.ok || !output.ok) return fail([numbers, output].flatMap((r) => (r.ok ? [] : r.problems)));
  const lengths = await lengthsFrom(table, flags, numbers.value);
  if (!lengths.ok) return fail(lengths.problems);
  const { count, cover, most, step } = numbers.value;
  const found = stockSizes({ lengths: lengths.value.values, most, cover, step });
  if (!found.ok) return fail(found.problems);
  const all = found.value;
  const chosen = all[Math.min(count, all.length) - 1] as StockSizes;
  const pieces = numbers.value.pieces ?? (table === undefined ? PIECES : lengths.value.values.length);
  const shares = sharedOut(chosen, pieces);
  const written = await write(lengths.value, all, chosen, shares, output.value);
  if (!written.ok) return fail(written.problems);
  // Nobody can measure a drawn hand again, so of these only the number and the reasons are told.
  const told = flags.norms === undefined ? lengths.value.leftOut : [];
  for (const { text } of told.slice(0, MOST_SHOWN)) process.stderr.write(`left out: ${text}\n`);
  if (told.length > MOST_SHOWN) process.stderr.write(`and ${told.length - MOST_SHOWN} more left out\n`);
  const { from, sources, width, bias } = lengths.value;
  if (flags.json) {
    const leftOut = leftOutHands(lengths.value.leftOut);
    process.stdout.write(
      `${JSON.stringify({ from, sources, width, hands: lengths.value.values.length, leftOut, ...(bias && leftOut.length > 0 ? { bias } : {}), chosen, pieces: shares, all, files: written.value }, null, 2)}\n`,
    );
  } else process.stdout.write(describe(lengths.value, all, chosen, shares, written.value));
}

function readNumbers(flags: SizesFlags): Result<Numbers> {
  const problems: Problem[] = [];
  const whole = (flag: string, text: string, low: number, high: number): number => {
    const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= low && value <= high)) problems.push(flagProblem(flag, `"${text}" is not a whole number from ${low} to ${high}`));
    return value;
  };
  const count = whole('--count', flags.count, 1, MOST_SIZES);
  const most = flags.most === undefined ? Math.min(MOST_SIZES, Math.max(12, 2 * count)) : whole('--most', flags.most, 1, MOST_SIZES);
  const hands = whole('--hands', flags.hands, 20, 100_000);
  const seed = whole('--seed', flags.seed, 0, 999_999_999);
  const pieces = flags.pieces === undefined ? null : whole('--pieces', flags.pieces, 1, 100_000);
  const percent = Number(flags.cover.trim().replace(/\s*%$/, '').replace(',', '.'));
  if (!(percent > 0 && percent <= 100)) problems.push(flagProblem('--cover', `"${flags.cover}" is not a percentage above 0 to 100`));
  const step = parseLength(flags.step, 'mm');
  if (!step.ok || step.mm > 50) problems.push(flagProblem('--step', step.ok ? 'is over 50 mm' : step.reason));
  if (problems.length > 0 || !step.ok) return failure(...problems);
  return success({ count, cover: percent / 100, most: Math.max(most, count), step: step.mm, pieces, hands, seed });
}

async function lengthsFrom(table: string | undefined, flags: SizesFlags, numbers: Numbers): Promise<Result<Lengths>> {
  const given = [table, flags.norms, flags.lengths].filter((x) => x !== undefined).length;
  if (given !== 1) return failure(flagProblem('sizes', 'give a table of hands, --norms or --lengths, one of the three'));
  const options = await readOptions({ ...flags, block: 'auto' });
  if (!options.ok) return options;
  if (flags.lengths !== undefined) return measuredLengths(flags.lengths, options.value.width);
  if (flags.block === undefined)
    return failure(
      flagProblem('--block', 'is needed: name the block that the strips are for (knucklewright blocks), or auto for a table with targets'),
    );
  const block = await blockFlag({ block: flags.block });
  if (!block.ok) return block;
  const settings: RowSettings = { block: block.value, plate: null, units: flags.units, options: options.value };
  return table === undefined ? normLengths(flags, settings, numbers) : tableLengths(table, settings);
}

async function measuredLengths(path: string, width: number): Promise<Result<Lengths>> {
  const text = await readText(path, LARGEST_LENGTHS);
  if (!text.ok) return text;
  const problems: Problem[] = [];
  const values: number[] = [];
  for (const [i, line] of text.value
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '') continue;
    const parsed = parseLength(line, 'mm');
    if (parsed.ok && parsed.mm <= LONGEST_STRIP) values.push(parsed.mm);
    else
      problems.push({
        code: 'LENGTH',
        where: `line ${i + 1}`,
        message: `${path}: line ${i + 1}: ${parsed.ok ? `over ${LONGEST_STRIP} mm` : parsed.reason}.`,
        kind: 'input',
      });
  }
  if (values.length === 0 && problems.length === 0)
    problems.push({ code: 'LENGTH', where: path, message: `${path} has no lengths; write one a line.`, kind: 'input' });
  if (problems.length > 0) return failure(...problems.slice(0, MOST_SHOWN));
  return success({ values, width, from: `${values.length} measured lengths of ${path}`, sources: [], leftOut: [], invented: false });
}

function normLengths(flags: SizesFlags, { block, options }: RowSettings, numbers: Numbers): Result<Lengths> {
  if (!block)
    return failure(flagProblem('--block', 'auto needs deficits, which drawn hands have not; name a block (knucklewright blocks)'));
  const { hands, redrawn } = normHands(flags.norms ?? 'mixed', numbers.hands, seededNormal(seeded(numbers.seed)));
  const byGroup = new Map<string, { hands: number; out: number }>();
  const leftOut: LeftOut[] = [];
  const values = hands.flatMap(({ hand, sex }) => {
    const group = byGroup.get(sex) ?? { hands: 0, out: 0 };
    byGroup.set(sex, group);
    group.hands++;
    const piece = stripPiece(hand, block, options);
    if (piece.ok) return [piece.value.length];
    group.out++;
    leftOut.push({ hand: hand.code, code: piece.problems[0]?.code ?? '', text: `${hand.code}: ${piece.problems[0]?.message ?? ''}` });
    return [];
  });
  const from = `${hands.length} ${flags.norms} hands drawn from norms (seed ${numbers.seed}, ${redrawn} drawn again), block ${block.id}`;
  // Strips too narrow for the palmar room are refused more often for small hands, so what is left is not the group that was drawn.
  const groups = [...byGroup].map(([sex, group]) => `${sex} ${group.out} of ${group.hands}`).join(', ');
  const bias = `these are the hands with least palmar room (${groups}): the sizes lean to larger hands; a lower --minimum-width leaves out fewer`;
  return success({ values, width: options.width, from, sources: NORM_SOURCES, leftOut, bias, invented: true });
}

async function tableLengths(path: string, settings: RowSettings): Promise<Result<Lengths>> {
  const table = await openHandTable(path);
  if (!table.ok) return table;
  const reader = new RowReader(settings, table.value.columns);
  const values: number[] = [];
  const errors: RowError[] = [];
  const leftOut: LeftOut[] = [];
  let invented = false;
  for await (const row of table.value.rows) {
    const read = reader.read(row);
    if (!read.ok) {
      errors.push(...read.errors);
      continue;
    }
    if (read.value.piece.plate)
      leftOut.push({
        hand: row.line,
        code: 'PLATE',
        text: `${path}: line ${row.line}: a plate, which is cut for one hand, not from stock sizes`,
      });
    else values.push(read.value.piece.length);
    invented ||= read.value.piece.invented;
  }
  if (values.length === 0)
    return failure({
      code: 'ROWS',
      where: path,
      message: `${path}: no row could be made (${errors.length} faults; see knucklewright batch).`,
      kind: 'input',
    });
  leftOut.push(...errors.map((error) => ({ hand: error.line, code: error.code, text: rowErrorText(path, error) })));
  const from = `${values.length} hands of ${path}, block ${settings.block?.id ?? 'by each target'}`;
  return success({ values, width: settings.options.width, from, sources: [], leftOut, invented });
}

/** Pieces of each size by need, adding up to `pieces`: whole shares, then the largest rests (Hamilton's rule); at least one of each where there are enough. */
function sharedOut(chosen: StockSizes, pieces: number): readonly number[] {
  const all = chosen.served.reduce((a, b) => a + b, 0);
  const exact = chosen.served.map((n) => (n * pieces) / all);
  const shares = exact.map((x) => (pieces >= exact.length ? Math.max(1, Math.floor(x)) : Math.floor(x)));
  const order = exact.map((x, i) => ({ i, rest: x - (shares[i] as number) })).sort((a, b) => b.rest - a.rest || a.i - b.i);
  let left = pieces - shares.reduce((a, b) => a + b, 0);
  for (let k = 0; left > 0; k++, left--)
    shares[order[k % order.length]?.i as number] = (shares[order[k % order.length]?.i as number] as number) + 1;
  for (let k = order.length - 1; left < 0 && k >= 0; k = k === 0 ? order.length - 1 : k - 1) {
    const i = order[k]?.i as number;
    if ((shares[i] as number) > 1) {
      shares[i] = (shares[i] as number) - 1;
      left++;
    }
  }
  return shares;
}

async function write(
  lengths: Lengths,
  all: readonly StockSizes[],
  chosen: StockSizes,
  shares: readonly number[],
  plan: import('./output-plan.ts').OutputPlan,
): Promise<Result<readonly string[]>> {
  if (plan.folder === null) return success([]);
  const chart = { ...plan, formats: plan.formats.filter((f) => f !== 'dxf') };
  const names = chart.formats.map((format) => outputFileName(CHART, format));
  const place = await checkWritable(plan.folder, [SIZES_CSV, WASTE_CSV, ...names], { force: plan.force });
  if (!place.ok) return place;
  const pieces = chosen.sizes.flatMap((length, i) => {
    const code = `SIZE-${i + 1}`;
    const quantity = shares[i] ?? 0;
    return quantity === 0
      ? []
      : [
          {
            id: code,
            code,
            side: null,
            block: null,
            plate: null,
            length,
            width: lengths.width,
            quantity,
            marks: [],
            warnings: [],
            invented: lengths.invented,
            hand: null,
          },
        ];
  });
  const table = [
    csvLine(['sizes', 'cover percent', 'mean cut off mm', 'cut off percent', 'lengths mm']),
    ...all.map((s, i) =>
      csvLine([
        i + 1,
        plain(100 * s.cover, 2),
        plain(s.meanWaste, 3),
        plain(100 * s.wasteShare, 2),
        s.sizes.map((x) => plain(x, 2)).join(' '),
      ]),
    ),
  ];
  const saved = await saveFiles(
    plan.folder,
    [
      { name: SIZES_CSV, content: [cutListHeader(), ...pieces.map(cutListLine), ''].join('\n') },
      { name: WASTE_CSV, content: [...table, ''].join('\n') },
    ],
    { force: plan.force },
  );
  if (!saved.ok) return saved;
  const drawn = await writePatterns(
    [
      {
        stem: CHART,
        pattern: sizeChart(
          all,
          chosen.sizes.length,
          `${lengths.from}${lengths.invented ? ' (invented)' : ''}, ${plain(100 * chosen.cover, 1)} % served`,
        ),
      },
    ],
    chart,
  );
  return drawn.ok ? success([...saved.value.map((f) => f.path), ...drawn.value.map((f) => f.path)]) : drawn;
}

/** How many hands have no strip and are in none of the figures, by the code of the first reason of each, the most frequent first. */
function leftOutHands(leftOut: readonly LeftOut[]): readonly { readonly code: string; readonly hands: number }[] {
  const first = new Map(leftOut.toReversed().map(({ hand, code }) => [hand, code]));
  const counts = new Map<string, number>();
  for (const code of first.values()) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts].map(([code, hands]) => ({ code, hands })).sort((a, b) => b.hands - a.hands || (a.code < b.code ? -1 : 1));
}

function leftOutText({ values, leftOut, bias }: Lengths): string {
  const why = leftOutHands(leftOut);
  const out = why.reduce((sum, { hands }) => sum + hands, 0);
  const share = plain((100 * out) / (values.length + out), 1);
  const codes = why.map(({ code, hands }) => `${code} ${hands}`).join(', ');
  return `${out} of ${values.length + out} hands (${share} %) have no strip and are left out (${codes}); ${bias ?? 'the sizes speak for the others only'}`;
}

function nextStep(files: readonly string[]): readonly string[] {
  const list = files.find((file) => file.endsWith(SIZES_CSV));
  return list === undefined ? [] : [`next: knucklewright sheets ${list} --out ${dirname(list)}`];
}

function describe(
  lengths: Lengths,
  all: readonly StockSizes[],
  chosen: StockSizes,
  shares: readonly number[],
  files: readonly string[],
): string {
  const pad = (text: string, width: number) => text.padStart(width);
  return [
    `From ${lengths.from}${lengths.invented && lengths.sources.length === 0 ? ' (invented)' : ''}`,
    ...lengths.sources.map((source) => `  ${source}`),
    '',
    'sizes  served %  cut off mm  cut off %   lengths mm',
    ...all.map(
      (s, i) =>
        `${s === chosen ? '>' : ' '}${pad(String(i + 1), 4)}  ${pad(plain(100 * s.cover, 1), 8)}  ${pad(s.meanWaste.toFixed(2), 10)}  ${pad((100 * s.wasteShare).toFixed(2), 9)}   ${s.sizes.map((x) => plain(x, 1)).join(' ')}`,
    ),
    '',
    `${chosen.sizes.length} sizes, ${plain(lengths.width, 1)} mm wide, and how many to cut:`,
    ...chosen.sizes.map(
      (size, i) => `  SIZE-${i + 1}   ${plain(size, 1)} mm   ${shares[i] ?? 0}   (serves ${chosen.served[i]} of ${lengths.values.length})`,
    ),
    `  ${lengths.values.length - chosen.served.reduce((a, b) => a + b, 0)} longer ones are cut singly`,
    ...(lengths.leftOut.length > 0 ? [`  ${leftOutText(lengths)}`] : []),
    ...files,
    ...nextStep(files),
    '',
  ].join('\n');
}
