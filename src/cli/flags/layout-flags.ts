import { readText } from '../../files/read-file.ts';
import { GRAINS, type LayRules, type StockSheet } from '../../sheet/plastic/layout.ts';
import { readStock } from '../../sheet/plastic/read-stock.ts';
import { readSheetSize } from '../../sheet/plastic/sheet-size.ts';
import { getOwn } from '../../units/json-text.ts';
import { parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import type { WithClinic } from './clinic-flag.ts';
import { type FlagsOf, flag, flagProblem, flagSet, ofFlag } from './flag.ts';

/** mm, as they would be typed. */
const USUAL = { gap: '2', margin: '5' } as const;

/** The flags of every command that reckons with a sheet of plastic. */
export const sheetRoomFlags = flagSet(
  flag('--sheet <size>', 'sheet of plastic, as 457x610 or 18inx24in; its grain runs along the longer side').default('457x610'),
  flag('--gap <length>', `room between parts (default: ${USUAL.gap})`),
  flag('--margin <length>', `room to the sheet's edge (default: ${USUAL.margin})`),
);

/** The flags of every command that lays parts out on sheets of plastic. */
export const layoutFlags = flagSet(
  sheetRoomFlags,
  flag('--grain <way>', "how the parts' length lies to the grain").choices(GRAINS).default('along'),
  flag('--shears', 'for shears alone: boxes side by side without gap or margin, and the number of straight cuts'),
  flag('--stock <file>', 'remnants to use first, CSV: id,along,across (as remnants.csv of an earlier run)'),
  flag('--seed <number>', 'seed of the search; the same seed gives the same layout').default('1'),
  flag('--prove', 'spend up to a minute more on finding or excluding a layout with fewer rows'),
);
export type LayoutFlags = FlagsOf<[typeof layoutFlags]>;

export interface LayoutPlan {
  readonly sheet: StockSheet;
  readonly rules: LayRules;
  readonly seed: number;
  readonly prove: boolean;
  /** Remnants to use first. */
  readonly stock: readonly StockSheet[];
}

const SIZES = { gap: 50, margin: 100 };

/** The sheet, the gap between parts and the margin, with all their problems at once. */
export function readSheetRoom(flags: FlagsOf<[typeof sheetRoomFlags]>): Result<Pick<LayoutPlan, 'sheet'> & Omit<LayRules, 'grain'>> {
  const problems: Problem[] = [];
  const length = (flag: string, text: string, most: number): number => {
    const parsed = parseLength(text, 'mm', { zero: true });
    if (parsed.ok && parsed.mm <= most) return parsed.mm;
    problems.push(flagProblem(flag, parsed.ok ? `${text} is over ${most} mm` : parsed.reason));
    return 0;
  };
  const size = ofFlag(readSheetSize(flags.sheet, '--sheet'));
  if (!size.ok) problems.push(...size.problems);
  const gap = length('--gap', flags.gap ?? USUAL.gap, SIZES.gap);
  const margin = length('--margin', flags.margin ?? USUAL.margin, SIZES.margin);
  if (problems.length === 0 && size.ok && size.value.across <= 2 * margin)
    problems.push(flagProblem('--margin', `two margins of ${margin} mm leave nothing of the sheet`));
  if (!size.ok || problems.length > 0) return failure(...problems);
  return success({ sheet: { id: 'sheet', ...size.value }, gap, margin });
}

/** Flags of machines and of room between parts, which mean nothing for shears. */
const NOT_FOR_SHEARS = ['cutter', 'gap', 'margin', 'kerf'] as const;

function shearsProblems(flags: LayoutFlags & ShearsFlags): readonly Problem[] {
  if (flags.shears !== true) return [];
  const typed = NOT_FOR_SHEARS.filter((key) => flags[key] !== undefined && flags[key] !== getOwn(flags.fromClinic?.flags, key));
  return typed.map((key) => flagProblem(`--${key}`, 'means nothing for shears, which cut along straight lines; leave it or --shears out'));
}

/** The flags without the clinic's cutter where shears cut; a cutter that somebody typed was refused before. */
export function forShears<Flags extends Pick<LayoutFlags, 'shears'> & ShearsFlags>(flags: Flags): Flags {
  return flags.shears === true ? { ...flags, cutter: undefined } : flags;
}

/** Flags of other sets that --shears is held against. */
type ShearsFlags = { readonly cutter?: string | undefined; readonly kerf?: string | undefined } & WithClinic;

export async function readLayoutFlags(flags: LayoutFlags & ShearsFlags): Promise<Result<LayoutPlan>> {
  const clash = shearsProblems(flags);
  if (clash.length > 0) return failure(...clash);
  const shears = flags.shears === true;
  const isSeed = /^\d{1,9}$/.test(flags.seed);
  const read = collect({
    room: readSheetRoom(shears ? { ...flags, gap: '0', margin: '0' } : flags),
    stock: await readStockFlag(flags.stock),
    seed: isSeed
      ? success(Number(flags.seed))
      : failure<number>(flagProblem('--seed', `${quote(flags.seed)} is not a whole number from 0 to 999999999`)),
  });
  if (!read.ok) return read;
  const { room, stock, seed } = read.value;
  const rules = { gap: room.gap, margin: room.margin, grain: flags.grain, ...(shears ? { shears } : {}) };
  return success({ sheet: room.sheet, rules, seed, prove: flags.prove === true, stock }, read.warnings);
}

async function readStockFlag(path: string | undefined): Promise<Result<readonly StockSheet[]>> {
  if (path === undefined) return success([]);
  const text = await readText(path);
  return text.ok ? readStock(text.value, path) : text;
}
