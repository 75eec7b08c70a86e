import { makePattern, type PatternRequest } from '../../pattern/make-pattern.ts';
import { WHOLE_DRAWING } from '../../sheet/cutter/machine-drawing.ts';
import { checkPrintScale, type PrintScaleCheck } from '../../sheet/paper/check-print-scale.ts';
import type { PrintedBars, SheetSettings } from '../../sheet/paper/sheet-settings.ts';
import { parseLength } from '../../units/length.ts';
import { plain } from '../../units/number.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import { DEFAULT_OUTPUT_SETTINGS } from '../../writers/output-settings.ts';
import { layOutForPdf } from '../../writers/pdf/pdf.ts';
import { resultsOf } from '../bounded/reading-result.ts';
import { defineCommand } from '../define-command.ts';
import { EXIT } from '../exit.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import { forceFlag, jsonFlag, type OutputPlan } from '../flags/output-flags.ts';
import { readSheetSettings, sheetFlags } from '../flags/sheet-flags.ts';
import { checkOutput, stemOf, type WrittenFile, writePatterns } from '../write-patterns.ts';

const flags = [
  flag('--across <length>', 'what the bar ACROSS measures on paper, mm').makeOptionMandatory(),
  flag('--along <length>', 'what the bar ALONG measures on paper, mm').makeOptionMandatory(),
  flag('--out <folder>', 'folder for the corrected PDF').default('.'),
  forceFlag,
  jsonFlag,
  sheetFlags,
] as const;
type PrintCheckFlags = FlagsOf<typeof flags>;

/**
 * `print-check`: judges the bars and, where that helps and files are named, writes each corrected. Exit 0 when the print passes or a corrected
 * file was written, 3 when something is left to do.
 */
export const printCheck = defineCommand({
  name: 'print-check',
  group: 'Files and printers',
  about:
    'judge what the 100 mm bars of a printed sheet measure, and write a PDF that corrects the printer (give --paper, --paper-margin, --pages and --area as for that sheet)',
  args: [
    argument('[files...]', 'PDF, SVG or DXF that knucklewright wrote, or hand files: to be written corrected when the printer is off'),
  ],
  flags,
  read: ([files], given) => {
    const read = collect({ bars: readBars(given), settings: readSheetSettings(given) });
    return read.ok ? success({ files, given, ...read.value }) : read;
  },
  make: async ({ files, given, bars, settings }) => {
    const judgement = checkPrintScale(bars);
    const written = judgement.verdict === 'compensate' ? await writeCorrected(files, bars, settings, given) : success([]);
    return written.ok ? success({ bars, judgement, files: written.value }, written.warnings) : written;
  },
  report: {
    text: ({ bars, judgement, files }) => describe(bars, judgement, files),
    json: ({ bars, judgement, files }, warnings) => ({ ...bars, ...judgement, warnings, files }),
  },
  exit: ({ judgement, files }) => (judgement.verdict === 'pass' || files.length > 0 ? EXIT.done : EXIT.refused),
});

function readBars(flags: PrintCheckFlags): Result<PrintedBars> {
  const read = (flag: string, text: string): Result<number> => {
    const length = parseLength(text, 'mm');
    return length.ok ? success(length.mm) : failure(flagProblem(flag, `${length.reason}; give what the bar measures, as 97.1`));
  };
  return collect({ across: read('--across', flags.across), along: read('--along', flags.along) });
}

async function writeCorrected(
  files: readonly string[],
  bars: PrintedBars,
  settings: SheetSettings,
  flags: PrintCheckFlags,
): Promise<Result<readonly WrittenFile[]>> {
  const requests = await resultsOf('drawingOrHand', files);
  const problems: Problem[] = requests.flatMap((r) => (r.ok ? [] : r.problems));
  if (problems.length > 0) return failure(...problems);
  const all: WrittenFile[] = [];
  const warnings = requests.flatMap((r) => (r.ok ? r.warnings : []));
  for (const request of requests) {
    if (!request.ok) continue;
    const one = await correct(request.value, bars, settings, flags);
    if (!one.ok) return one;
    all.push(...one.value);
    warnings.push(...one.warnings);
  }
  return success(all, warnings);
}

async function correct(
  request: PatternRequest,
  bars: PrintedBars,
  settings: SheetSettings,
  flags: PrintCheckFlags,
): Promise<Result<readonly WrittenFile[]>> {
  const made = makePattern(request);
  if (!made.ok) return made;
  const { pattern } = made.value;
  // The bars were measured on the sheet as it was laid out before; across stays across only if the new one lies the same way round.
  const before = layOutForPdf(pattern, settings);
  if (!before.ok) return before;
  const pdf = { ...settings, orientation: before.value.orientation, correction: bars };
  const settingsOfAll = { ...DEFAULT_OUTPUT_SETTINGS, pdf };
  const plan: OutputPlan = {
    folder: flags.out,
    formats: ['pdf'],
    force: flags.force === true,
    reports: false,
    cutter: null,
    machine: WHOLE_DRAWING,
    settings: settingsOfAll,
  };
  const stem = `${stemOf(request)}-corrected`;
  const place = await checkOutput(plan, [stem]);
  return place.ok ? writePatterns([{ stem, pattern }], plan) : failure(...place.problems);
}

function describe(bars: PrintedBars, judgement: PrintScaleCheck, files: readonly WrittenFile[]): string {
  const signed = (error: number) => `${error > 0 ? '+' : ''}${plain(error * 100, 2)} %`;
  const lines = [
    `across ${plain(bars.across)} mm (${signed(judgement.errors.across)}), along ${plain(bars.along)} mm (${signed(judgement.errors.along)})`,
    `${judgement.verdict}: ${judgement.advice}.`,
    ...(judgement.verdict === 'compensate' && files.length === 0
      ? ['Name the file (PDF, SVG, DXF or hand file) to have it written corrected.']
      : []),
    ...files.map((file) => `${file.path}   ${file.about ?? ''}, corrected`),
  ];
  return `${lines.join('\n')}\n`;
}
