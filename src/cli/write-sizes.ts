import { FileSet } from '../files/save-file.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { csvLine } from '../sheet/plastic/csv-text.ts';
import { type CutPiece, cutListHeader, cutListLine } from '../sheet/plastic/cut-list.ts';
import { sizeChart } from '../sheet/plastic/size-chart.ts';
import { sizePages } from '../sheet/plastic/size-pages.ts';
import type { Assigned, SizePlan } from '../sheet/plastic/size-plan.ts';
import { plain } from '../units/number.ts';
import { type Result, success } from '../units/result.ts';
import { plasticWords } from '../words/plastic/plastic-words.ts';
import { speechIn } from '../words/speech.ts';
import type { OutputPlan } from './flags/output-flags.ts';
import { fromOnPaper, type StripLengths } from './strip-lengths.ts';
import { addPatterns, outputNames } from './write-patterns.ts';

export const SIZES_CSV = 'stock-sizes.csv';
const WASTE_CSV = 'size-table.csv';
const ASSIGNMENT_CSV = 'size-assignment.csv';
const CHART = 'stock-sizes';
const LIST = 'size-list';

/** What `sizes` found: the plans for each number of sizes, the one chosen, blanks of each size, and who takes which. */
export interface Sized {
  readonly lengths: StripLengths;
  readonly all: readonly SizePlan[];
  readonly chosen: SizePlan;
  readonly pieces: readonly number[];
  readonly assigned: readonly Assigned[];
  /** Sizes are whole multiples of this, mm. */
  readonly step: number;
}

/** Writes the cut list of blanks, the table of plans, the assignment, the chart and the printed list with its labels; all of them or none. */
export async function writeSizes(sized: Sized, plan: OutputPlan): Promise<Result<readonly string[]>> {
  if (plan.folder === null) return success([]);
  const { folder } = plan;
  const { lengths, all, chosen, pieces, assigned } = sized;
  // Pages are to be printed; no machine cuts them.
  const printed = { ...plan, formats: plan.formats.filter((format) => format !== 'dxf') };
  const { language } = plan.settings.pdf;
  const { chart, sizes: w } = plasticWords(language);
  const from = `${fromOnPaper(lengths.from, language)}${lengths.invented ? ` ${w.invented}` : ''}`;
  const served = chart.served(from, speechIn(language).number(100 * chosen.cover, 1));
  const named = assigned.some(({ strip }) => strip.code !== null);
  const pages = sizePages({ sizes: chosen.sizes, pieces, assigned, invented: lengths.invented }, language);
  const patterns: readonly { readonly stem: string; readonly pattern: Pattern }[] = [
    { stem: CHART, pattern: sizeChart(all, all.indexOf(chosen), served, language) },
    ...pages.map((pattern, k) => ({ stem: `${LIST}-${String(k + 1).padStart(2, '0')}`, pattern })),
  ];
  const tables = [
    { name: SIZES_CSV, lines: [cutListHeader(), ...blanks(sized).map(cutListLine)] },
    { name: WASTE_CSV, lines: planLines(all) },
    ...(named ? [{ name: ASSIGNMENT_CSV, lines: assignmentLines(assigned) }] : []),
  ];
  const names = [...tables.map(({ name }) => name), ...patterns.flatMap(({ stem }) => outputNames(printed, stem))];
  const set = await FileSet.open(folder, names, { force: plan.force });
  if (!set.ok) return set;
  for (const { name, lines } of tables) {
    const added = await set.value.add({ name, content: `${lines.join('\n')}\n` });
    if (!added.ok) return added;
  }
  const drawn = await addPatterns(set.value, patterns, printed, new Set(names));
  if (!drawn.ok) return drawn;
  const saved = await set.value.commit();
  return saved.ok ? success(saved.value.map(({ path }) => path)) : saved;
}

/** The blanks as lines of a cut list: each size with its number, and every strip that is cut singly. */
function blanks({ lengths, chosen, pieces, assigned, step }: Sized): readonly CutPiece[] {
  const blank = { side: null, block: null, plate: null, marks: [], warnings: [], hand: null };
  const ofSizes = chosen.sizes.flatMap(({ id, length, width }, k) => {
    const quantity = pieces[k] ?? 0;
    return quantity === 0 ? [] : [{ ...blank, id, code: id, length, width, quantity, invented: lengths.invented }];
  });
  const singly = assigned.flatMap(({ strip, size }) => {
    if (size !== null || strip.code === null) return [];
    const id = `SINGLY-${strip.code}${strip.side ? `-${strip.side}` : ''}`;
    const up = (mm: number, to: number) => Math.ceil(mm / to - 1e-6) * to;
    return [
      {
        ...blank,
        id,
        code: strip.code,
        side: strip.side,
        length: up(strip.length, step),
        width: up(strip.height, 1),
        quantity: 1,
        invented: strip.invented,
      },
    ];
  });
  return [...ofSizes, ...singly];
}

function planLines(all: readonly SizePlan[]): readonly string[] {
  return [
    csvLine(['sizes', 'cover percent', 'mean cut off mm', 'cut off percent', 'lengths x widths mm']),
    ...all.map(({ sizes, cover, meanWaste, wasteShare }) =>
      csvLine([
        sizes.length,
        plain(100 * cover, 2),
        plain(meanWaste, 3),
        plain(100 * wasteShare, 2),
        sizes.map(({ length, width }) => `${plain(length, 2)}x${plain(width, 2)}`).join(' '),
      ]),
    ),
  ];
}

function assignmentLines(assigned: readonly Assigned[]): readonly string[] {
  return [
    csvLine(['code', 'side', 'block', 'length mm', 'size', 'size length mm', 'size width mm', 'cut off mm', 'trim used mm', 'relief mm']),
    ...assigned.map(({ strip, size, cutOff, trimUsed }) =>
      csvLine([
        strip.code ?? '',
        strip.side ?? '',
        strip.block ?? '',
        plain(strip.length, 3),
        size?.id ?? 'singly',
        size === null ? '' : plain(size.length, 3),
        size === null ? '' : plain(size.width, 3),
        size === null ? '' : plain(cutOff, 3),
        size === null ? '' : plain(trimUsed, 3),
        strip.relief.map(({ digit, depth }) => `${digit} ${plain(depth, 3)}`).join(' '),
      ]),
    ),
  ];
}

/** Files that `writeSizes` puts beside each other, for what is to be said of the next command. */
export function sizesCsvIn(files: readonly string[]): string | undefined {
  return files.find((file) => file.endsWith(SIZES_CSV));
}
