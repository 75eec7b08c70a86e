import { readText } from '../../files/read-file.ts';
import { GRAINS, type LayRules, type StockSheet } from '../../sheet/plastic/layout.ts';
import { readStock } from '../../sheet/plastic/read-stock.ts';
import { readSheetSize } from '../../sheet/plastic/sheet-size.ts';
import { parseLength } from '../../units/length.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { type FlagsOf, flag, flagSet } from './flag.ts';
import { flagProblem } from './flag-problem.ts';

/** The flags of every command that lays parts out on sheets of plastic. */
export const layoutFlags = flagSet(
  flag('--sheet <size>', 'sheet of plastic, as 457x610 or 18inx24in; its grain runs along the longer side').default('457x610'),
  flag('--gap <length>', 'room between parts').default('2'),
  flag('--margin <length>', "room to the sheet's edge").default('5'),
  flag('--grain <way>', "how the parts' length lies to the grain").choices(GRAINS).default('along'),
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

export async function readLayoutFlags(flags: LayoutFlags): Promise<Result<LayoutPlan>> {
  const problems: Problem[] = [];
  const length = (flag: string, text: string, most: number): number => {
    const parsed = parseLength(text, 'mm', { zero: true });
    if (parsed.ok && parsed.mm <= most) return parsed.mm;
    problems.push(flagProblem(flag, parsed.ok ? `${text} is over ${most} mm` : parsed.reason));
    return 0;
  };
  const size = readSheetSize(flags.sheet, '--sheet');
  if (!size.ok) problems.push(...size.problems);
  const gap = length('--gap', flags.gap, SIZES.gap);
  const margin = length('--margin', flags.margin, SIZES.margin);
  const seed = Number(flags.seed);
  if (!/^\d{1,9}$/.test(flags.seed)) problems.push(flagProblem('--seed', `"${flags.seed}" is not a whole number from 0 to 999999999`));
  if (problems.length === 0 && size.ok && size.value.across <= 2 * margin)
    problems.push(flagProblem('--margin', `two margins of ${margin} mm leave nothing of the sheet`));
  const stock = await readStockFlag(flags.stock);
  if (!size.ok || !stock.ok || problems.length > 0) return failure(...problems, ...(stock.ok ? [] : stock.problems));
  const sheet = { id: 'sheet', ...size.value };
  return success(
    { sheet, rules: { gap, margin, grain: flags.grain }, seed, prove: flags.prove === true, stock: stock.value },
    stock.warnings,
  );
}

async function readStockFlag(path: string | undefined): Promise<Result<readonly StockSheet[]>> {
  if (path === undefined) return success([]);
  const text = await readText(path);
  return text.ok ? readStock(text.value, path) : text;
}
