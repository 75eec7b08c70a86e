import { join } from 'node:path';
import { errorCode, systemReason } from '../../files/error-code.ts';
import { checkWritable, outputFileName, saveFiles } from '../../files/save-file.ts';
import { StreamedFile } from '../../files/streamed-file.ts';
import { makePattern, type PatternRequest } from '../../pattern/make-pattern.ts';
import { PLATE_GEOMETRY_VERSION } from '../../pattern/plate/plate.ts';
import type { PlatePreset } from '../../pattern/plate/read-plate.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { csvLine } from '../../sheet/plastic/csv-text.ts';
import { CUT_LIST_JSON_END, type CutPiece, cutListHeader, cutListJsonHead, cutListLine } from '../../sheet/plastic/cut-list.ts';
import { requestOfPiece } from '../../sheet/plastic/piece-part.ts';
import { type ShelfStrip, shelfAfter, shelfText, type Taken, takeFromShelf, type Wanted } from '../../sheet/plastic/shelf.ts';
import { counted } from '../../units/number.ts';
import { collect, failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { terminalSpeech } from '../../words/terminal/terminal-words.ts';
import { BatchProgress, digestOf } from '../batch-progress.ts';
import { defineCommand } from '../define-command.ts';
import { takenText } from '../describe-drawing.ts';
import { takenJson } from '../draw-request.ts';
import { EXIT } from '../exit.ts';
import { dateFlag, readDateFlag } from '../flags/common-flags.ts';
import { blockOrAuto, namedBlock, namedPlate } from '../flags/device-flags.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import { forShears, type LayoutPlan, layoutFlags, readLayoutFlags } from '../flags/layout-flags.ts';
import { handTableFlags, readStripOptionFlags, tableBlockFlag } from '../flags/option-flags.ts';
import { type OutputPlan, outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { readShelfFlag, SHELF_AFTER, shelfFlag } from '../flags/shelf-flag.ts';
import { type RowPiece, RowReader, type RowSettings } from '../hand-pieces.ts';
import { type LaidOut, layOutList, sheetsReportText } from '../lay-out-list.ts';
import { readCutListFile } from '../read-cut-list-file.ts';
import { type HandTable, openHandTable, type RowError, rowErrorText } from '../read-hand-rows.ts';
import { RowProgress } from '../row-progress.ts';
import { writePatterns } from '../write-patterns.ts';

const CUT_LIST_CSV = 'cut-list.csv';
const CUT_LIST_JSON = 'cut-list.json';
const ERRORS_CSV = 'row-errors.csv';
const LISTS = [CUT_LIST_CSV, CUT_LIST_JSON, ERRORS_CSV];

/** Row errors shown on the terminal; all of them stand in the file. */
const MOST_SHOWN = 20;

interface BatchInputs {
  readonly path: string;
  readonly table: HandTable;
  readonly settings: RowSettings;
  readonly output: OutputPlan;
  readonly folder: string;
  readonly date: string | null;
  readonly layout: LayoutPlan;
  readonly files: 'each' | 'sheets' | 'none';
  readonly strict: boolean;
  /** Strips in stock; null: there is no shelf. */
  readonly shelf: readonly ShelfStrip[] | null;
}

interface Tally {
  made: number;
  reused: number;
  wrongRows: number;
  files: number;
  readonly shown: RowError[];
  /** What the writing of files gave to say, each code once. */
  readonly said: Map<string, Warning>;
  /** The strips of the list by their boxes. */
  readonly strips: Wanted[];
}

const flags = [
  tableBlockFlag().default('auto'),
  handTableFlags,
  flag(
    '--plate <plate>',
    'with --block auto: plate for hands that lack both motions, by id (knucklewright plates), dorsal, palmar, or a plate file',
  ),
  flag('--files <which>', 'patterns to write beside the cut list: one for each hand, all on sheets of plastic, or none')
    .choices(['each', 'sheets', 'none'])
    .default('each'),
  shelfFlag,
  flag('--strict', 'write nothing when any row is wrong'),
  dateFlag,
  layoutFlags,
  outputFlags,
] as const;
type BatchFlags = FlagsOf<typeof flags>;

/** `batch`: from a table of hands to a cut list and the patterns; a row that is wrong is written down and the next one read. */
export const batch = defineCommand({
  name: 'batch',
  group: 'Many hands',
  about:
    'make a cut list and the patterns for a table of hands; wrong rows are left out (exit 1), and a rerun goes on where the last one stopped',
  examples: ['batch hands.csv --out week', 'batch hands.csv --width 20 --files none --shelf shelf.csv --out week'],
  standardInput: true,
  args: [argument('<hands>', 'table of hands (CSV), see: knucklewright schema csv')],
  flags,
  read: readInputs,
  make: makeBatch,
  report: {
    text: batchText,
    json: ({ tally: { made, reused, wrongRows, files }, lists, sheets, taken }, warnings) => ({
      made,
      reused,
      wrongRows,
      files,
      lists,
      sheets: sheets?.report ?? null,
      ...(taken ? { shelf: taken.map(takenJson) } : {}),
      warnings,
    }),
  },
  exit: ({ tally }) => (tally.wrongRows > 0 ? EXIT.badInput : EXIT.done),
});

interface BatchMade {
  readonly folder: string;
  readonly tally: Tally;
  readonly lists: readonly string[];
  readonly sheets: LaidOut | null;
  readonly each: boolean;
  readonly language: Language;
  /** What the shelf gives each strip; null without a shelf. */
  readonly taken: readonly Taken[] | null;
}

async function readInputs([path]: readonly [string], given: BatchFlags): Promise<Result<BatchInputs>> {
  const read = collect({
    table: await openHandTable(path),
    block: await blockOrAuto(given.block),
    plate: given.plate === undefined ? success(null) : await readPlateFlag(given.plate, given.block),
    options: await readStripOptionFlags(given),
    output: await readOutputPlan(forShears(given)),
    date: readDateFlag(given.date),
    layout: await readLayoutFlags(given),
    shelf: await readShelfFlag(given.shelf),
  });
  if (!read.ok) return read;
  const { table, output, date, layout, block, plate, options, shelf } = read.value;
  const settings = { block, plate, units: given.units, options };
  const { files, strict } = given;
  return success(
    { path, table, settings, output, folder: given.out ?? '.', date, layout, files, strict: strict === true, shelf },
    read.warnings,
  );
}

/** Everything was checked before; reads row by row. */
async function makeBatch(inputs: BatchInputs): Promise<Result<BatchMade>> {
  const { folder, output, settings } = inputs;
  const spoken = spokenIn(output.settings.pdf.language);
  const digest = digestOf({ geometry: [GEOMETRY_VERSION, PLATE_GEOMETRY_VERSION], settings, date: inputs.date, ...spoken });
  const state = await BatchProgress.state(folder, digest);
  const resume = state === 'same';
  if (state === 'other' && !output.force) return failure(otherBatch(folder));
  const place = await checkWritable(folder, inputs.shelf ? [...LISTS, SHELF_AFTER] : LISTS, { force: output.force || resume });
  if (!place.ok) return place;
  const outputs: StreamedFile[] = [];
  try {
    return await madeInFolder(inputs, digest, resume, outputs);
  } catch (error) {
    if (errorCode(error) === '') throw error;
    for (const file of outputs) await file.abandon();
    return failure(diskFailed(folder, error));
  }
}

/** Of a disk that fails under what grows line by line. */
function diskFailed(folder: string, error: unknown): Problem {
  const why = systemReason(errorCode(error));
  const message = `cannot save into the folder ${folder}: ${why}; rows that were done before are kept: put the disk right and run the same command again, it goes on there`;
  return { code: 'OUTPUT_FAILED', where: folder, message, kind: 'input' };
}

/** @param outputs takes the lists as they are begun, for whoever has to clear up */
async function madeInFolder(inputs: BatchInputs, digest: string, resume: boolean, outputs: StreamedFile[]): Promise<Result<BatchMade>> {
  const { path, folder, output } = inputs;
  const { language } = output.settings.pdf;
  const progress = await BatchProgress.open(folder, digest, resume);
  const tally: Tally = { made: 0, reused: 0, wrongRows: 0, files: 0, shown: [], said: new Map(), strips: [] };
  const stop = async (problems: readonly Problem[]): Promise<Result<never>> => {
    await Promise.all(outputs.map((file) => file.abandon()));
    return failure(...problems);
  };
  try {
    for (const name of LISTS) outputs.push(await StreamedFile.create(folder, name));
    const [list, json, errors] = outputs as [StreamedFile, StreamedFile, StreamedFile];
    const worked = await runRows(inputs, { progress, list, json, errors, tally, resume });
    if (!worked.ok) return await stop(worked.problems);
  } finally {
    await progress.close();
  }
  const total = tally.made + tally.reused;
  const noneMade = (inputs.strict && tally.wrongRows > 0) || total === 0;
  if (tally.wrongRows > 0) showErrors(path, tally, noneMade ? null : join(folder, ERRORS_CSV));
  if (noneMade) return await stop([noneWritten(path, tally, inputs.strict)]);
  for (const file of outputs) await file.finish();
  const sheets = inputs.files === 'sheets' ? await onSheets(inputs, join(folder, CUT_LIST_JSON)) : success(null);
  if (!sheets.ok) return sheets;
  const lists = LISTS.map((name) => join(folder, name));
  const taken = inputs.shelf && takeFromShelf(inputs.shelf, tally.strips);
  if (inputs.shelf && taken) {
    const left = await saveFiles(folder, [{ name: SHELF_AFTER, content: shelfText(shelfAfter(inputs.shelf, taken)) }], {
      force: output.force || resume,
    });
    if (!left.ok) return left;
    lists.push(...left.value.map(({ path: saved }) => saved));
  }
  return success({ folder, tally, lists, sheets: sheets.value, each: inputs.files === 'each', language, taken }, [
    ...tally.said.values(),
    ...sheets.warnings,
  ]);
}

/** A plate is for the rows whose hands lack both motions, which only `auto` asks about. */
async function readPlateFlag(name: string, block: string): Promise<Result<PlatePreset>> {
  if (block !== 'auto') return failure(flagProblem('--plate', 'is for --block auto; leave one of the two out'));
  const plate = await namedPlate(name);
  if (plate.ok && plate.value.faces === 'both')
    return failure(flagProblem('--plate', `"${name}" has two faces; a batch makes one, so name a dorsal or a palmar plate`));
  return plate;
}

interface Work {
  readonly progress: BatchProgress;
  readonly list: StreamedFile;
  readonly json: StreamedFile;
  readonly errors: StreamedFile;
  readonly tally: Tally;
  readonly resume: boolean;
}

async function runRows(inputs: BatchInputs, work: Work): Promise<Result<null>> {
  const { path } = inputs;
  const { progress, list, json, errors, tally } = work;
  const reader = new RowReader(inputs.settings, inputs.table.columns);
  const { block, options } = inputs.settings;
  await list.write(`${cutListHeader()}\n`);
  await json.write(
    cutListJsonHead({
      geometryVersion: GEOMETRY_VERSION,
      plateGeometryVersion: PLATE_GEOMETRY_VERSION,
      options,
      block: block && { id: block.id, title: block.title, places: block.places },
    }),
  );
  await errors.write(`${csvLine(['line', 'column', 'name', 'code', 'message'])}\n`);
  const shown = new RowProgress(path);
  for await (const row of inputs.table.rows) {
    const digest = digestOf(row.cells);
    const known = row.cells === null ? null : await progress.find(digest);
    const kept = known === null ? null : reader.known(row.line, known);
    const read = kept ?? reader.read(row);
    if (!read.ok) {
      tally.wrongRows++;
      tally.shown.push(...read.errors.slice(0, MOST_SHOWN - tally.shown.length));
      for (const e of read.errors) await errors.write(`${csvLine([e.line, e.column ?? '', e.name ?? '', e.code, e.message])}\n`);
    } else {
      if (inputs.files === 'each') {
        const written = await writeEach(read.value.piece, read.value.made, inputs, work.resume, kept !== null);
        if (!written.ok) return written;
        tally.files += written.value;
        for (const warning of written.warnings) if (!tally.said.has(warning.code)) tally.said.set(warning.code, warning);
      }
      const { id, length, width, plate } = read.value.piece;
      if (plate === null) tally.strips.push({ id, length, width });
      await list.write(`${cutListLine(read.value.piece)}\n`);
      await json.write(`${tally.made + tally.reused > 0 ? ',' : ''}\n${JSON.stringify(read.value.piece)}`);
      if (kept) tally.reused++;
      else {
        tally.made++;
        await progress.add(digest, read.value.piece);
      }
    }
    shown.row(row.line, tally.made + tally.reused, tally.wrongRows);
  }
  await json.write(CUT_LIST_JSON_END);
  shown.end();
  return success(null);
}

/** The pattern files of one hand, as `draw` writes them. What an earlier run wrote and the row still says is left as it is. */
async function writeEach(
  piece: CutPiece,
  made: RowPiece | null,
  inputs: BatchInputs,
  resume: boolean,
  kept: boolean,
): Promise<Result<number>> {
  const plan = { ...inputs.output, folder: inputs.folder };
  if (kept) {
    const names = plan.formats.map((format) => outputFileName(piece.id, format));
    const free = await checkWritable(inputs.folder, names, { force: false });
    // All of them are there when each is a problem.
    if (!free.ok && free.problems.length === names.length) return success(0);
  }
  const source = made?.request ?? (await remade(piece, inputs));
  if (source === null)
    return failure({
      code: 'PROGRESS_BROKEN',
      where: piece.id,
      message: `${piece.id}: what an earlier run left cannot be read; start again with --force.`,
      kind: 'input',
    });
  const pattern = makePattern({ ...source, date: inputs.date, language: inputs.output.settings.pdf.language });
  if (!pattern.ok) return pattern;
  const written = await writePatterns([{ stem: piece.id, pattern: pattern.value.pattern }], { ...plan, force: plan.force || resume });
  return written.ok ? success(written.value.length, written.warnings) : written;
}

async function remade(piece: CutPiece, { settings, date }: BatchInputs): Promise<PatternRequest | null> {
  const named = piece.block === null || piece.block === settings.block?.id ? null : await namedBlock(piece.block);
  const block = named?.ok ? named.value.block : (settings.block ?? undefined);
  const request = requestOfPiece(piece, { blockOf: () => block, options: settings.options }, date);
  return request.ok ? request.value : null;
}

async function onSheets(inputs: BatchInputs, listPath: string): Promise<Result<LaidOut>> {
  const list = await readCutListFile(listPath);
  return list.ok ? layOutList(list.value, inputs.layout, { ...inputs.output, folder: inputs.folder }, inputs.date) : list;
}

function otherBatch(folder: string): Problem {
  const message = `${folder} holds a batch made with other settings; choose another folder, or begin anew in this one with --force.`;
  return { code: 'OTHER_BATCH', where: folder, message, kind: 'input' };
}

function noneWritten(path: string, tally: Tally, strict: boolean): Problem {
  const message = strict
    ? `${counted(tally.wrongRows, 'row is', 'rows are')} wrong and --strict is set; no cut list was written.`
    : `no row could be made (${tally.wrongRows} wrong); no cut list was written.`;
  return { code: 'ROWS', where: path, message: `${path}: ${message}`, kind: 'input' };
}

function showErrors(path: string, tally: Tally, file: string | null): void {
  for (const error of tally.shown) process.stderr.write(`left out: ${rowErrorText(path, error)}\n`);
  process.stderr.write(
    `${tally.wrongRows} of ${counted(tally.wrongRows + tally.made + tally.reused, 'row is', 'rows are')} wrong and left out${file === null ? '' : `; all of it in ${file}`}\n`,
  );
}

function batchText({ folder, tally, lists, sheets, each, language, taken }: BatchMade): string {
  const t = terminalSpeech(language);
  const { batch: w, next } = t.w;
  const lines = [
    w.made(`${tally.made + tally.reused}`, tally.reused > 0 ? `${tally.reused}` : '', `${tally.wrongRows}`),
    ...(each ? [w.files(`${tally.files}`, folder)] : []),
    ...(taken ?? []).map((one) => `${one.wanted.id}   ${takenText(one, t)}`),
    ...lists,
    ...(sheets ? [] : [`${next}: knucklewright sheets ${join(folder, CUT_LIST_JSON)} --out ${folder}`]),
  ];
  return `${lines.join('\n')}\n${sheets ? sheetsReportText(sheets) : ''}`;
}
