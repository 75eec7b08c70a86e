import { REPORT_ENDING, setLine, WORDS_ENDING, wouldMix } from '../files/drawing-set.ts';
import { checkWritable, FileSet, type OutputFile, outputFileName } from '../files/save-file.ts';
import type { PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { setIdOf } from '../pattern/set-id.ts';
import { machineWords } from '../sheet/cutter/machine-words.ts';
import { plain, rounded } from '../units/number.ts';
import { failure, type Result, success, type Warning } from '../units/result.ts';
import { type TerminalSpeech, type TerminalWords, terminalSpeech } from '../words/terminal/terminal-words.ts';
import { loadWriter } from '../writers/load-writer.ts';
import type { OutputSettings } from '../writers/output-settings.ts';
import type { PagesOfFile, WriterFormat } from '../writers/writer.ts';
import { readyForCutter } from './cutter-plan.ts';
import type { OutputPlan } from './flags/output-flags.ts';

/** A file that was written, with the true size of its drawing in mm. */
export interface WrittenFile {
  readonly path: string;
  /** `txt`: the words that a drawing for a machine leaves out. */
  readonly format: WriterFormat | 'txt';
  readonly bytes: number;
  readonly width: number;
  readonly height: number;
  /** Of a PDF: its pages and paper, as data and in English words. */
  readonly pages?: PagesOfFile;
  readonly about?: string;
}

/** A written file in one line: where it is, and the true size of what it draws. */
export function fileLine({ path, format, pages, width, height }: WrittenFile, { w, number }: TerminalSpeech, more?: string): string {
  if (format === 'txt') return `${path}   ${w.file.words}`;
  const what = pages ? pagesInWords(pages, w) : w.file.drawing(number(width, 1), number(height, 1));
  return `${path}   ${[what, ...(more === undefined ? [] : [more]), w.file.trueSize].join(', ')}`;
}

function pagesInWords({ count, paper, orientation, tiled }: PagesOfFile, { file: w }: TerminalWords): string {
  return `${w.pages(`${count}`, paper)} ${w[orientation]}${tiled ? `, ${w.tiled}` : ''}`;
}

/** A pattern with the beginning of its files' names. */
export interface NamedPattern {
  readonly stem: string;
  readonly pattern: Pattern;
  /** Those of the plan's formats that it is written in; all, where it does not say. */
  readonly formats?: OutputPlan['formats'];
}

/** The files of a pattern, drawn and not yet written: data that may come from another thread. */
export interface DrawnFiles {
  readonly stem: string;
  readonly setId: string;
  /** Whether it has outlines to cut. */
  readonly cuts: boolean;
  readonly files: readonly DrawnFile[];
}

/** `format` is null for a report of the drawings beside them. */
type DrawnFile = OutputFile & Omit<WrittenFile, 'path' | 'bytes' | 'format'> & { readonly format: WrittenFile['format'] | null };

const PDF_WITHOUT_KERF: Warning = {
  code: 'PDF_WITHOUT_KERF',
  where: '--kerf',
  message: 'the PDF shows the true edges, to be drawn round on paper; the kerf is in the SVG and DXF only',
  next: 'give the machine the SVG or DXF',
};

function kerfInside(kerf: number): Warning {
  return {
    code: 'KERF_IN_OUTLINES',
    where: '--kerf',
    message: `the outlines in the SVG and DXF are ${plain(kerf / 2, 3)} mm larger all round, holes as much smaller, for a kerf of ${plain(kerf, 3)} mm`,
    value: kerf,
    next: 'set no kerf at the machine, or it is taken off twice',
  };
}

/** The beginning of the names of a request's files: the case code and what is made. */
export function stemOf(request: PatternRequest): string {
  return `${request.hand.code}-${request.kind === 'strip' ? request.block.id : request.plate.id}`;
}

/** Whether the plan's files can be written; to be asked before anything is computed. */
export async function checkOutput(plan: OutputPlan, stems: readonly string[], more: readonly string[] = []): Promise<Result<unknown>> {
  if (plan.folder === null) return success(null);
  const names = [...stems.flatMap((stem) => outputNames(plan, stem)), ...more];
  return checkWritable(plan.folder, names, { force: plan.force });
}

/**
 * Makes every pattern ready for the plan's machine and writes it in every format of the plan, all files together or none; an empty list when
 * the plan writes nothing. `beside`: other files of the same run. Fails with `SET_MIXED` rather than leave beside them files of another pattern that have their names.
 */
export async function writePatterns(
  patterns: readonly (NamedPattern | DrawnFiles)[],
  plan: OutputPlan,
  beside: readonly OutputFile[] = [],
): Promise<Result<readonly WrittenFile[]>> {
  if (plan.folder === null) return success([]);
  const names = patterns.flatMap((one) => outputNames(planOf(plan, one), one.stem));
  const set = await FileSet.open(plan.folder, [...names, ...beside.map(({ name }) => name)], { force: plan.force });
  if (!set.ok) return set;
  const added = await addPatterns(set.value, patterns, plan, new Set(names));
  if (!added.ok) return added;
  for (const file of beside) {
    const put = await set.value.add(file);
    if (!put.ok) return put;
  }
  const saved = await set.value.commit();
  return saved.ok ? added : saved;
}

function planOf(plan: OutputPlan, one: NamedPattern | DrawnFiles): OutputPlan {
  return 'files' in one || one.formats === undefined ? plan : { ...plan, formats: one.formats };
}

/** The names that `writePatterns` writes for a stem. */
export function outputNames(plan: OutputPlan, stem: string): readonly string[] {
  const endings = [...plan.formats, ...(hasWords(plan) ? [WORDS_ENDING] : []), ...(plan.reports ? [REPORT_ENDING] : [])];
  return endings.map((ending) => outputFileName(stem, ending));
}

/** Layers that the files are not to hold are not declared either. */
function machineSettings({ settings, machine: { content, testSquare } }: OutputPlan): OutputSettings {
  const { CUT, MARK, INFO } = settings.layers;
  if (content === 'all') return settings;
  return {
    ...settings,
    layers: { CUT, MARK: content === 'cut' && !testSquare ? { ...MARK, omit: true } : MARK, INFO: { ...INFO, omit: true } },
  };
}

/** Whether the words of a drawing have no other place than a text of their own. */
function hasWords(plan: OutputPlan): boolean {
  return plan.machine.content !== 'all' && plan.formats.length > 0 && !plan.formats.includes('pdf');
}

/**
 * Adds the files of patterns to a set that is put in place later; on failure the set is discarded.
 * @param leaving names that the whole run writes or takes away
 */
export async function addPatterns(
  set: FileSet,
  patterns: readonly (NamedPattern | DrawnFiles)[],
  plan: OutputPlan,
  leaving: ReadonlySet<string>,
): Promise<Result<readonly WrittenFile[]>> {
  const files: WrittenFile[] = [];
  const warnings: Warning[] = [];
  const kerf = plan.cutter?.profile.kerf ?? 0;
  const cuts = patterns.some((one) => ('files' in one ? one.cuts : one.pattern.parts.length > 0));
  if (kerf > 0 && cuts && plan.formats.some((format) => format !== 'pdf')) warnings.push(kerfInside(kerf));
  for (const one of patterns) {
    const added = await addPattern(set, one, plan, leaving);
    if (!added.ok) {
      await set.discard();
      return added;
    }
    files.push(...added.value);
    warnings.push(...added.warnings);
  }
  return success(files, warnings);
}

async function addPattern(
  set: FileSet,
  one: NamedPattern | DrawnFiles,
  plan: OutputPlan,
  leaving: ReadonlySet<string>,
): Promise<Result<readonly WrittenFile[]>> {
  const own = planOf(plan, one);
  const [first] = outputNames(own, one.stem);
  const setId = 'files' in one ? one.setId : setIdOf(one.pattern.inputs);
  const mixed = first === undefined ? null : await wouldMix(set.folder, first, setId, leaving);
  if (mixed) return failure(mixed);
  const drawn = 'files' in one ? success(one) : await drawFiles(one, own);
  if (!drawn.ok) return drawn;
  const files: WrittenFile[] = [];
  for (const { name, content, format, ...size } of drawn.value.files) {
    const added = await set.add({ name, content });
    if (!added.ok) return added;
    if (format !== null) files.push({ path: added.value.path, format, bytes: added.value.bytes, ...size });
  }
  return success(files, drawn.warnings);
}

/** A pattern's files in every format of the plan, ready for its machine; nothing is written. */
export async function drawFiles({ stem, pattern: drawn }: NamedPattern, plan: OutputPlan): Promise<Result<DrawnFiles>> {
  const ready = readyForCutter(drawn, plan);
  if (!ready.ok) return ready;
  const warnings = [...ready.warnings];
  const pattern = ready.value;
  if (plan.formats.includes('pdf') && (plan.cutter?.profile.kerf ?? 0) > 0 && drawn.parts.length > 0) warnings.push(PDF_WITHOUT_KERF);
  const files: DrawnFile[] = [];
  const { minX, minY, maxX, maxY } = pattern.extents;
  const size = { width: rounded(maxX - minX, 3), height: rounded(maxY - minY, 3) };
  for (const format of plan.formats) {
    const writer = await loadWriter(format, format === 'pdf' ? plan.settings : machineSettings(plan));
    // Paper is drawn round by hand, so it always shows the true edges.
    const shown = format === 'pdf' ? drawn : pattern;
    const written = writer.write(shown);
    if (!written.ok) return written;
    warnings.push(...written.warnings);
    const pages = writer.pages?.(shown);
    const printed = pages ? { pages, about: pagesInWords(pages, terminalSpeech('en').w) } : {};
    files.push({ name: outputFileName(stem, writer.extension), content: written.value, format, ...size, ...printed });
  }
  const setId = setIdOf(drawn.inputs);
  const cuts = drawn.parts.length > 0;
  const drawings = [...files];
  if (hasWords(plan) && cuts) {
    const words = machineWords(drawn, pattern, plan.settings.pdf.language).join('\n');
    files.push({ name: outputFileName(stem, WORDS_ENDING), content: `${words}\n\n${setLine(setId)}`, format: 'txt', ...size });
  }
  if (plan.reports) {
    const content = `${setLine(setId)}${await readBack(drawings)}`;
    files.push({ name: outputFileName(stem, REPORT_ENDING), content, format: null, ...size });
  }
  return success({ stem, setId, cuts, files }, warnings);
}

/** What the reader finds in the files as they will be saved, one after the other. */
async function readBack(files: readonly OutputFile[]): Promise<string> {
  const { inspectFile } = await import('../inspect/inspect-file.ts');
  const { describeInspection } = await import('./describe-inspection.ts');
  const bytes = (content: string | Uint8Array) => (typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
  return files.map(({ name, content }) => describeInspection(inspectFile(bytes(content)), name)).join('\n');
}
