import { dirname } from 'node:path';
import { NO_CHILD_NORMS } from '../../hand/estimate.ts';
import { NORM_GROUPS } from '../../hand/norm-groups.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import { usualSettings } from '../../pattern/strip/strip-settings.ts';
import { layOut } from '../../sheet/plastic/lay-out.ts';
import { assignSizes, type SizePlan, type SizePlanRequest, sizePlans } from '../../sheet/plastic/size-plan.ts';
import { MOST_SIZES } from '../../sheet/plastic/stock-sizes.ts';
import { parseLength } from '../../units/length.ts';
import { plain } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import type { Language } from '../../words/language.ts';
import { plasticWords } from '../../words/plastic/plastic-words.ts';
import { type TerminalSpeech, terminalSpeech } from '../../words/terminal/terminal-words.ts';
import { defineCommand } from '../define-command.ts';
import { EXIT } from '../exit.ts';
import type { WithClinic } from '../flags/clinic-flag.ts';
import { blockOrAuto } from '../flags/device-flags.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import { readSheetRoom, sheetRoomFlags } from '../flags/layout-flags.ts';
import { handTableFlags, readStripOptionFlags, tableBlockFlag } from '../flags/option-flags.ts';
import { type OutputPlan, outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { biasInWords, fromInWords, type LeftOut, measuredLengths, normLengths, type StripLengths, tableLengths } from '../strip-lengths.ts';
import { type Sized, sizesCsvIn, writeSizes } from '../write-sizes.ts';

/** Strips to cut where no table says how many. */
const PIECES = 60;
const MOST_SHOWN = 20;
/** Width of strips from stock, mm: a width left to the program would give blanks of several. */
const STOCK_WIDTH = 20;
const SERVES = plasticWords('en').sizes.serves;
const SIZES_SCHEMA = 'knucklewright/sizes@1';

const flags = [
  flag('--count <number>', 'how many sizes').makeOptionMandatory(),
  flag('--cover <percent>', 'share of the hands that the sizes must serve; the longest beyond it are cut singly').default('95'),
  flag(
    '--norms <group>',
    'draw adult hands from published means and spreads in place of a table; children is refused: measure them',
  ).choices([...NORM_GROUPS, 'children'] as const),
  flag('--lengths <file>', 'measured strip lengths in place of a table: text, one length a line, in mm or with a unit'),
  flag('--most <number>', 'the table and chart go up to this many sizes (default: twice the count, 12 at least)'),
  flag('--step <length>', 'sizes are whole multiples of this').default('1'),
  flag('--use-trim <length>', 'a size may be shorter than the strip as drawn by so much of its trim').default('0'),
  flag('--best <what>', 'what the sizes are best in: length, the least cut off; sheets, the fewest sheets of plastic')
    .choices(['length', 'sheets'] as const)
    .default('length' as const),
  flag(
    '--pieces <number>',
    'how many strips to cut in all, shared out by need, for stock-sizes.csv (default: one for each hand of a table, else 60)',
  ),
  flag('--hands <number>', 'hands to draw with --norms').default('2000'),
  flag('--seed <number>', 'seed of that drawing').default('1'),
  tableBlockFlag().default('auto'),
  handTableFlags,
  sheetRoomFlags,
  outputFlags,
] as const;
type SizesFlags = FlagsOf<typeof flags>;

/** `sizes`: which strip lengths to keep in stock. */
export const sizes = defineCommand({
  name: 'sizes',
  group: 'Many hands',
  about: 'find the strip lengths to keep in stock that serve most hands with the least cut off',
  examples: ['sizes hands.csv --count 6 --out week', 'sizes --norms mixed --block ring-raised-in-three --count 5'],
  standardInput: true,
  args: [argument('[hands]', 'table of hands (CSV), see: knucklewright schema csv')],
  flags,
  read: readInputs,
  make: async ({ numbers, lengths, room, best, told, output, pinnedWidth }): Promise<Result<SizesMade>> => {
    const found = plansFor(lengths, numbers, room, best);
    if (!found.ok) return found;
    const { all, sheets } = found.value;
    const chosen = all.findLast(({ sizes: some }) => some.length <= numbers.count) as SizePlan;
    const assigned = assignSizes(lengths.strips, chosen.sizes, numbers.useTrim);
    const served = chosen.sizes.map(({ id }) => assigned.filter(({ size }) => size?.id === id).length);
    const named = lengths.strips.every(({ code }) => code !== null);
    const pieces = numbers.pieces === null && named ? served : sharedOut(served, numbers.pieces ?? PIECES);
    const sized: Sized = { lengths, all, chosen, pieces, assigned, step: numbers.step };
    const files = await writeSizes(sized, output);
    if (!files.ok) return files;
    for (const { text } of told.slice(0, MOST_SHOWN)) process.stderr.write(`left out: ${text}\n`);
    if (told.length > MOST_SHOWN) process.stderr.write(`and ${told.length - MOST_SHOWN} more left out\n`);
    // A hand that wants a plate is no fault of its row.
    const wrongRows = told.filter(({ code }) => code !== 'PLATE').length;
    const { language } = output.settings.pdf;
    return success(
      { ...sized, useTrim: numbers.useTrim, pinnedWidth, best, sheets, wrongRows, files: files.value, language },
      files.warnings,
    );
  },
  report: { text: describe, json: sizesJson, schema: SIZES_SCHEMA },
  exit: ({ wrongRows }) => (wrongRows > 0 ? EXIT.badInput : EXIT.done),
});

interface SizesInputs {
  readonly pinnedWidth: boolean;
  readonly numbers: Numbers;
  readonly room: SheetRoom;
  readonly output: OutputPlan;
  readonly lengths: StripLengths;
  readonly best: 'length' | 'sheets';
  /** Hands left out that are told one by one. */
  readonly told: readonly LeftOut[];
}

async function readInputs([table]: readonly [string | undefined], given: SizesFlags & WithClinic): Promise<Result<SizesInputs>> {
  const asked = await readStripOptionFlags(given);
  const read = collect({
    numbers: readNumbers(given),
    options: pinned(asked),
    room: readSheetRoom(given),
    output: await readOutputPlan(given),
  });
  if (!read.ok) return read;
  const { numbers, options, room, output } = read.value;
  if (numbers.useTrim > options.trim)
    return failure(flagProblem('--use-trim', `${plain(numbers.useTrim)} mm is more than the trim of ${plain(options.trim)} mm`));
  const lengths = await lengthsFrom(table, given, numbers, options);
  if (!lengths.ok) return lengths;
  // Nobody can measure a drawn hand again, so of these only the number and the reasons are told.
  const told = given.norms === undefined ? lengths.value.leftOut : [];
  const pinnedWidth = given.lengths === undefined && asked.ok && asked.value.width === 'auto';
  return success({ numbers, room, output, lengths: lengths.value, best: given.best, told, pinnedWidth }, [
    ...read.warnings,
    ...lengths.warnings,
  ]);
}

/** What `sizes` reports. */
interface SizesMade extends Sized {
  /** The width was left to the program, which takes 20 for strips from stock. */
  readonly pinnedWidth: boolean;
  readonly useTrim: number;
  readonly best: 'length' | 'sheets';
  /** Sheets that the blanks take, by what the sizes are best in; null where only length was asked for. */
  readonly sheets: { readonly length: number; readonly sheets: number } | null;
  readonly wrongRows: number;
  readonly files: readonly string[];
  readonly language: Language;
}

/** The options of strips from stock: a width left to the program is 20. */
function pinned(options: Result<StripOptions>): Result<StripOptions> {
  return options.ok && options.value.width === 'auto' ? success({ ...options.value, width: STOCK_WIDTH }, options.warnings) : options;
}

type SheetRoom = Extract<ReturnType<typeof readSheetRoom>, { readonly ok: true }>['value'];

/**
 * The plans for each number of sizes: best in length, or in sheets, where what the two need is laid out and the better one taken.
 */
function plansFor(
  { strips }: StripLengths,
  { count, cover, most, step, useTrim }: Numbers,
  { sheet, gap, margin }: SheetRoom,
  best: 'length' | 'sheets',
): Result<{ readonly all: readonly SizePlan[]; readonly sheets: SizesMade['sheets'] }> {
  const request: SizePlanRequest = { strips, count, most, cover, step, useTrim };
  const byLength = sizePlans(request);
  if (!byLength.ok || best === 'length') return byLength.ok ? success({ all: byLength.value, sheets: null }) : byLength;
  const along = sheet.along - 2 * margin;
  // A row of a sheet is shared by as many blanks as lie in it; a blank too long for it costs more than all rows.
  const rowShare = (length: number) => 1 / Math.max(1e-3, Math.floor((along + gap) / (length + gap)));
  const bySheets = sizePlans({ ...request, costOf: ({ length, width }) => (width + gap) * rowShare(length) });
  if (!bySheets.ok) return bySheets;
  const needed = (plans: readonly SizePlan[]) => {
    const chosen = plans.findLast(({ sizes: some }) => some.length <= count) as SizePlan;
    const parts = assignSizes(strips, chosen.sizes, useTrim).flatMap(({ size, strip }, k) => {
      if (size === null && strip.code === null) return [];
      return [{ id: `${k}`, length: size?.length ?? strip.length, width: size?.width ?? strip.height }];
    });
    return layOut({ parts, sheet, remnants: [], rules: { gap, margin, grain: 'along' } });
  };
  const [first, second] = [needed(byLength.value), needed(bySheets.value)];
  if (!first.ok || !second.ok) return first.ok ? (second.ok ? failure() : failure(...second.problems)) : failure(...first.problems);
  const sheets = { length: first.value.newSheets, sheets: second.value.newSheets };
  // Rows do not tell all of a layout: where they were no help, nothing is given up for them.
  return success({ all: sheets.sheets < sheets.length ? bySheets.value : byLength.value, sheets });
}

function sizesJson(made: SizesMade, warnings: readonly unknown[]): object {
  const { lengths, all, chosen, pieces, assigned, useTrim, best, sheets, files } = made;
  const leftOut = leftOutHands(lengths.leftOut);
  const leaning = lengths.bias && leftOut.length > 0 ? { bias: biasInWords(lengths.bias, 'en') } : {};
  const plan = ({ sizes: some, cover, meanWaste, wasteShare }: SizePlan) => ({
    sizes: some.map(({ length }) => length),
    widths: some.map(({ width }) => width),
    served: some.map(({ served }) => served),
    cover,
    meanWaste,
    wasteShare,
  });
  return {
    from: fromInWords(lengths.from, 'en'),
    sources: lengths.sources,
    hands: lengths.strips.length,
    leftOut,
    ...leaning,
    best,
    sheets,
    useTrim,
    sizes: chosen.sizes.map((size, k) => ({ ...size, serves: SERVES[size.serves], pieces: pieces[k] ?? 0 })),
    chosen: plan(chosen),
    pieces,
    assignment: assigned.flatMap(({ strip, size, cutOff, trimUsed }) => {
      const { code, side, block, relief } = strip;
      return code === null ? [] : [{ code, side, size: size?.id ?? null, cutOff, trimUsed, relief, block }];
    }),
    singly: assigned.flatMap(({ strip, size }) => (size === null && strip.code !== null ? [strip.code] : [])),
    all: all.map(plan),
    files,
    warnings,
  };
}

interface Numbers {
  readonly count: number;
  readonly cover: number;
  readonly most: number;
  readonly step: number;
  readonly pieces: number | null;
  readonly hands: number;
  readonly seed: number;
  readonly useTrim: number;
}

function readNumbers(flags: SizesFlags): Result<Numbers> {
  const problems: Problem[] = [];
  const whole = (flag: string, text: string, low: number, high: number): number => {
    const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= low && value <= high)) problems.push(flagProblem(flag, `${quote(text)} is not a whole number from ${low} to ${high}`));
    return value;
  };
  const count = whole('--count', flags.count, 1, MOST_SIZES);
  const most = flags.most === undefined ? Math.min(MOST_SIZES, Math.max(12, 2 * count)) : whole('--most', flags.most, 1, MOST_SIZES);
  const hands = whole('--hands', flags.hands, 20, 100_000);
  const seed = whole('--seed', flags.seed, 0, 999_999_999);
  const pieces = flags.pieces === undefined ? null : whole('--pieces', flags.pieces, 1, 100_000);
  const percent = Number(flags.cover.trim().replace(/\s*%$/, '').replace(',', '.'));
  if (!(percent > 0 && percent <= 100)) problems.push(flagProblem('--cover', `${quote(flags.cover)} is not a percentage above 0 to 100`));
  const step = parseLength(flags.step, 'mm');
  if (!step.ok || step.mm > 50) problems.push(flagProblem('--step', step.ok ? 'is over 50 mm' : step.reason));
  const useTrim = parseLength(flags.useTrim, 'mm', { zero: true });
  if (!useTrim.ok) problems.push(flagProblem('--use-trim', useTrim.reason));
  if (problems.length > 0 || !step.ok || !useTrim.ok) return failure(...problems);
  return success({
    count,
    cover: percent / 100,
    most: Math.max(most, count),
    step: step.mm,
    pieces,
    hands,
    seed,
    useTrim: useTrim.mm,
  });
}

async function lengthsFrom(
  table: string | undefined,
  given: SizesFlags & WithClinic,
  numbers: Numbers,
  options: StripOptions,
): Promise<Result<StripLengths>> {
  const ways = [table, given.norms, given.lengths].filter((x) => x !== undefined).length;
  if (ways !== 1) return failure(flagProblem('sizes', 'give a table of hands, --norms or --lengths, one of the three'));
  if (given.lengths !== undefined) return measuredLengths(given.lengths, usualSettings(options).width);
  if (given.norms === 'children') return failure(flagProblem('--norms', `${NO_CHILD_NORMS}; give a table of measured hands`));
  const block = await blockOrAuto(given.block);
  if (!block.ok) return block;
  const settings = { block: block.value, plate: null, units: given.units, options };
  if (table !== undefined) return tableLengths(table, settings);
  return normLengths(given.norms ?? 'mixed', numbers, settings);
}

/** Pieces of each size by need, adding up to `pieces`: whole shares, then the largest rests (Hamilton's rule); at least one of each where there are enough. */
function sharedOut(served: readonly number[], pieces: number): readonly number[] {
  const all = served.reduce((a, b) => a + b, 0);
  const exact = served.map((n) => (n * pieces) / all);
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

/** How many hands have no strip and are in none of the figures, by the code of the first reason of each, the most frequent first. */
function leftOutHands(leftOut: readonly LeftOut[]): readonly { readonly code: string; readonly hands: number }[] {
  const first = new Map(leftOut.toReversed().map(({ hand, code }) => [hand, code]));
  const counts = new Map<string, number>();
  for (const code of first.values()) counts.set(code, (counts.get(code) ?? 0) + 1);
  return [...counts].map(([code, hands]) => ({ code, hands })).sort((a, b) => b.hands - a.hands || (a.code < b.code ? -1 : 1));
}

function leftOutText({ strips, leftOut, bias }: StripLengths, { w: { sizes: w }, number, language }: TerminalSpeech): string {
  const why = leftOutHands(leftOut);
  const out = why.reduce((sum, { hands }) => sum + hands, 0);
  const share = number((100 * out) / (strips.length + out), 1);
  const codes = why.map(({ code, hands }) => `${code} ${hands}`).join(', ');
  return `${w.leftOut(`${out}`, `${strips.length + out}`, share, codes)}; ${bias ? biasInWords(bias, language) : w.others}`;
}

function describe(made: SizesMade): string {
  const { lengths, chosen, pieces, assigned, useTrim, pinnedWidth, best, sheets, files, language } = made;
  const t = terminalSpeech(language);
  const { number } = t;
  const { sizes: w, next } = t.w;
  const { serves } = plasticWords(language).sizes;
  const list = sizesCsvIn(files);
  const singly = assigned.filter(({ size }) => size === null);
  const names = singly.flatMap(({ strip: { code } }) => (code === null ? [] : [code]));
  return [
    w.from(fromInWords(lengths.from, language), lengths.invented && lengths.sources.length === 0),
    ...lengths.sources.map((source) => `  ${source}`),
    '',
    ...planTable(made, t),
    '',
    w.chosen(`${chosen.sizes.length}`),
    ...chosen.sizes.map((size, i) => {
      const { id, length, width, served } = size;
      const who = w.serves(`${served}`, `${lengths.strips.length}`, serves[size.serves]);
      return `  ${id.padEnd(7)} ${number(length, 1).padStart(6)} x ${number(width, 1)} mm  ${`${pieces[i] ?? 0}`.padStart(4)}   ${who}`;
    }),
    `  ${w.singly(`${singly.length}`)}${names.length > 0 ? `: ${names.join(', ')}` : ''}`,
    ...(pinnedWidth ? [`  ${w.pinned(`${STOCK_WIDTH}`)}`] : []),
    ...(useTrim > 0 ? [`  ${w.useTrim(number(useTrim, 1))}`] : []),
    ...(best === 'sheets' && sheets ? [`  ${w.best(`${sheets.length}`, `${sheets.sheets}`, sheets.sheets < sheets.length)}`] : []),
    ...(lengths.leftOut.length > 0 ? [`  ${leftOutText(lengths, t)}`] : []),
    ...files,
    ...(list === undefined ? [] : [`${next}: knucklewright sheets ${list} --out ${dirname(list)}`]),
    '',
  ].join('\n');
}

/** A line a number of sizes, the chosen one marked, under a line of headings. */
function planTable({ all, chosen }: SizesMade, { w: { sizes: w }, number, fixed }: TerminalSpeech): readonly string[] {
  const { sizes: count, served, cutOff, cutOffShare, lengths } = w.column;
  const heads = [count, served, cutOff, cutOffShare];
  const row = (cells: readonly string[], last: string) =>
    `${cells.map((cell, k) => cell.padStart(heads[k]?.length ?? 0)).join('  ')}   ${last}`;
  return [
    row(heads, lengths),
    ...all.map((plan) => {
      const cells = [`${plan.sizes.length}`, number(100 * plan.cover, 1), fixed(plan.meanWaste, 2), fixed(100 * plan.wasteShare, 2)];
      const line = row(cells, plan.sizes.map(({ length }) => number(length, 1)).join(' '));
      return plan === chosen ? `>${line.slice(1)}` : line;
    }),
  ];
}
