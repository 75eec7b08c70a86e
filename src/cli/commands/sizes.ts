import { dirname } from 'node:path';
import { checkWritable, outputFileName, saveFiles } from '../../files/save-file.ts';
import { NORM_GROUPS } from '../../hand/norm-groups.ts';
import { usualSettings } from '../../pattern/strip/strip-settings.ts';
import { csvLine } from '../../sheet/plastic/csv-text.ts';
import { cutListHeader, cutListLine } from '../../sheet/plastic/cut-list.ts';
import { sizeChart } from '../../sheet/plastic/size-chart.ts';
import { MOST_SIZES, type StockSizes, stockSizes } from '../../sheet/plastic/stock-sizes.ts';
import { parseLength } from '../../units/length.ts';
import { plain } from '../../units/number.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { EXIT } from '../exit.ts';
import { blockOrAuto } from '../flags/block-flag.ts';
import { argument, type FlagsOf, flag } from '../flags/flag.ts';
import { flagProblem } from '../flags/flag-problem.ts';
import { handTableFlags, tableBlockFlag } from '../flags/hand-table-flags.ts';
import { readStripOptionFlags } from '../flags/option-flags.ts';
import { type OutputPlan, outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { type LeftOut, measuredLengths, normLengths, type StripLengths, tableLengths } from '../strip-lengths.ts';
import { writePatterns } from '../write-patterns.ts';

const SIZES_CSV = 'stock-sizes.csv';
const WASTE_CSV = 'size-table.csv';
const CHART = 'stock-sizes';
/** Strips to cut where no table says how many. */
const PIECES = 60;
const MOST_SHOWN = 20;

const flags = [
  flag('--count <number>', 'how many sizes').makeOptionMandatory(),
  flag('--cover <percent>', 'share of the hands that the sizes must serve; the longest beyond it are cut singly').default('95'),
  flag(
    '--norms <group>',
    'draw adult hands from published means and spreads in place of a table; for children measure: there are no norms',
  ).choices(NORM_GROUPS),
  flag('--lengths <file>', 'measured strip lengths in place of a table: text, one length a line, in mm or with a unit'),
  flag('--most <number>', 'the table and chart go up to this many sizes (default: twice the count, 12 at least)'),
  flag('--step <length>', 'sizes are whole multiples of this').default('1'),
  flag(
    '--pieces <number>',
    'how many strips to cut in all, shared out by need, for stock-sizes.csv (default: one for each hand of a table, else 60)',
  ),
  flag('--hands <number>', 'hands to draw with --norms').default('2000'),
  flag('--seed <number>', 'seed of that drawing').default('1'),
  tableBlockFlag(),
  handTableFlags,
  outputFlags,
] as const;
type SizesFlags = FlagsOf<typeof flags>;

/** `sizes`: which strip lengths to keep in stock. */
export const sizes = defineCommand({
  name: 'sizes',
  group: 'Many hands',
  about: 'find the strip lengths to keep in stock that serve most hands with the least cut off',
  args: [argument('[hands]', 'table of hands (CSV), see: knucklewright schema csv')],
  flags,
  read: async ([table], given) => {
    const read = collect({ numbers: readNumbers(given), output: await readOutputPlan(given) });
    if (!read.ok) return read;
    const lengths = await lengthsFrom(table, given, read.value.numbers);
    if (!lengths.ok) return lengths;
    const pieces = read.value.numbers.pieces ?? (table === undefined ? PIECES : lengths.value.values.length);
    // Nobody can measure a drawn hand again, so of these only the number and the reasons are told.
    const told = given.norms === undefined ? lengths.value.leftOut : [];
    return success({ ...read.value, lengths: lengths.value, pieces, told }, [...read.warnings, ...lengths.warnings]);
  },
  make: async ({ numbers: { count, cover, most, step }, lengths, pieces, told, output }) => {
    const found = stockSizes({ lengths: lengths.values, most, cover, step });
    if (!found.ok) return found;
    const all = found.value;
    const chosen = all[Math.min(count, all.length) - 1] as StockSizes;
    const shares = sharedOut(chosen, pieces);
    const files = await write(lengths, all, chosen, shares, output);
    if (!files.ok) return files;
    for (const { text } of told.slice(0, MOST_SHOWN)) process.stderr.write(`left out: ${text}\n`);
    if (told.length > MOST_SHOWN) process.stderr.write(`and ${told.length - MOST_SHOWN} more left out\n`);
    // A hand that wants a plate is no fault of its row.
    const wrongRows = told.filter(({ code }) => code !== 'PLATE').length;
    return success({ lengths, all, chosen, shares, wrongRows, files: files.value }, files.warnings);
  },
  report: {
    text: ({ lengths, all, chosen, shares, files }) => describe(lengths, all, chosen, shares, files),
    json: ({ lengths: { from, sources, width, values, bias, ...lengths }, all, chosen, shares, files }, warnings) => {
      const leftOut = leftOutHands(lengths.leftOut);
      const leaning = bias && leftOut.length > 0 ? { bias } : {};
      return { from, sources, width, hands: values.length, leftOut, ...leaning, chosen, pieces: shares, all, files, warnings };
    },
  },
  exit: ({ wrongRows }) => (wrongRows > 0 ? EXIT.badInput : EXIT.done),
});

interface Numbers {
  readonly count: number;
  readonly cover: number;
  readonly most: number;
  readonly step: number;
  readonly pieces: number | null;
  readonly hands: number;
  readonly seed: number;
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

async function lengthsFrom(table: string | undefined, given: SizesFlags, numbers: Numbers): Promise<Result<StripLengths>> {
  const ways = [table, given.norms, given.lengths].filter((x) => x !== undefined).length;
  if (ways !== 1) return failure(flagProblem('sizes', 'give a table of hands, --norms or --lengths, one of the three'));
  const options = await readStripOptionFlags(given);
  if (!options.ok) return options;
  if (given.lengths !== undefined) return measuredLengths(given.lengths, usualSettings(options.value).width);
  if (given.block === undefined)
    return failure(
      flagProblem('--block', 'is needed: name the block that the strips are for (knucklewright blocks), or auto for a table with targets'),
    );
  const block = await blockOrAuto(given.block);
  if (!block.ok) return block;
  const settings = { block: block.value, plate: null, units: given.units, options: options.value };
  if (table !== undefined) return tableLengths(table, settings);
  return normLengths(given.norms ?? 'mixed', numbers, settings);
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
  lengths: StripLengths,
  all: readonly StockSizes[],
  chosen: StockSizes,
  shares: readonly number[],
  plan: OutputPlan,
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

function leftOutText({ values, leftOut, bias }: StripLengths): string {
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
  lengths: StripLengths,
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
