import { type Command, Option } from 'commander';
import { GRAINS, type Grain, type LayRules, type StockSheet } from '../../sheet/plastic/layout.ts';
import { parseLength } from '../../units/length.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { flagProblem } from './flag-problem.ts';

export interface LayoutFlags {
  readonly sheet: string;
  readonly gap: string;
  readonly margin: string;
  readonly grain: Grain;
  readonly stock?: string;
  readonly seed: string;
  readonly prove?: boolean;
}

export interface LayoutPlan {
  readonly sheet: StockSheet;
  readonly rules: LayRules;
  readonly seed: number;
  readonly prove: boolean;
}

export function addLayoutFlags(command: Command): void {
  command
    .option('--sheet <size>', 'sheet of plastic, as 457x610 or 18inx24in; its grain runs along the longer side', '457x610')
    .option('--gap <length>', 'room between parts', '2')
    .option('--margin <length>', "room to the sheet's edge", '5')
    .addOption(new Option('--grain <way>', "how the parts' length lies to the grain").choices([...GRAINS]).default('along'))
    .option('--stock <file>', 'remnants to use first, CSV: id,along,across (as remnants.csv of an earlier run)')
    .option('--seed <number>', 'seed of the search; the same seed gives the same layout', '1')
    .option('--prove', 'spend up to a minute more on finding or excluding a layout with fewer rows');
}

const SIZES = { largest: 5000, gap: 50, margin: 100 };

export function readLayoutFlags(flags: LayoutFlags): Result<LayoutPlan> {
  const problems: Problem[] = [];
  const length = (flag: string, text: string, most: number, zero: boolean): number => {
    const parsed = parseLength(text, 'mm', { zero });
    if (parsed.ok && parsed.mm <= most) return parsed.mm;
    problems.push(flagProblem(flag, parsed.ok ? `${text} is over ${most} mm` : parsed.reason));
    return 0;
  };
  const sides = flags.sheet.split(/\s*[x×*]\s*/i);
  if (sides.length !== 2) problems.push(flagProblem('--sheet', `"${flags.sheet}" is no size; write it as 457x610`));
  const [a = 0, b = 0] = sides.length === 2 ? sides.map((side) => length('--sheet', side, SIZES.largest, false)) : [];
  const gap = length('--gap', flags.gap, SIZES.gap, true);
  const margin = length('--margin', flags.margin, SIZES.margin, true);
  const seed = Number(flags.seed);
  if (!/^\d{1,9}$/.test(flags.seed)) problems.push(flagProblem('--seed', `"${flags.seed}" is not a whole number from 0 to 999999999`));
  if (problems.length === 0 && Math.min(a, b) <= 2 * margin)
    problems.push(flagProblem('--margin', `two margins of ${margin} mm leave nothing of the sheet`));
  if (problems.length > 0) return failure(...problems);
  const sheet = { id: 'sheet', along: Math.max(a, b), across: Math.min(a, b) };
  return success({ sheet, rules: { gap, margin, grain: flags.grain }, seed, prove: flags.prove === true });
}
