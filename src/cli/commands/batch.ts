import { join } from 'node:path';
import { errorCode, systemReason } from '../../files/error-code.ts';
import { checkWritable, outputFileName, saveFiles } from '../../files/save-file.ts';
import { StreamedFile } from '../../files/streamed-file.ts';
import { PLATE_GEOMETRY_VERSION } from '../../pattern/plate/plate.ts';
import type { PlatePreset } from '../../pattern/plate/read-plate.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import { csvLine } from '../../sheet/plastic/csv-text.ts';
import { CUT_LIST_JSON_END, type CutPiece, cutListHeader, cutListJsonHead, cutListLine } from '../../sheet/plastic/cut-list.ts';
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
import { blockOrAuto, namedPlate } from '../flags/device-flags.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import { forShears, type LayoutPlan, layoutFlags, readLayoutFlags } from '../flags/layout-flags.ts';
import { handTableFlags, readStripOptionFlags, tableBlockFlag } from '../flags/option-flags.ts';
import { type OutputPlan, outputFlags, readOutputPlan } from '../flags/output-flags.ts';
import { readShelfFlag, SHELF_AFTER, shelfFlag } from '../flags/shelf-flag.ts';
import { type RowJob, RowReader, type RowSettings } from '../hand-pieces.ts';
import { type LaidOut, layOutList, sheetsReportText } from '../lay-out-list.ts';
import type { MadeRow } from '../make-row.ts';
import { readCutListFile } from '../read-cut-list-file.ts';
import { type HandRow, type HandTable, openHandTable, type RowError, rowErrorText } from '../read-hand-rows.ts';
import { RowCrew } from '../row-crew.ts';
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
    for (const file of outputs) await file.abandon();
    if (errorCode(error) === '') throw error;
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
  const { list, json, errors } = work;
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
  const { columns } = inputs.table;
  const reader = new RowReader(inputs.settings, columns);
  const { output, date } = inputs;
  const drawing = inputs.files === 'each' ? { plan: planOf(inputs, work), date, language: output.settings.pdf.language } : null;
  const crew = new RowCrew({ settings: inputs.settings, columns, drawing });
  try {
    // Rows are begun and ended in their order, whatever is made first.
    const begun: BegunRow[] = [];
    const endFirst = async () => endRow(begun.shift() as BegunRow, reader, inputs, work, shown);
    for await (const row of inputs.table.rows) {
      begun.push(await beginRow(row, reader, crew, inputs, work));
      await crew.hear();
      while (begun.length >= crew.room) {
        const ended = await endFirst();
        if (!ended.ok) return ended;
      }
    }
    while (begun.length > 0) {
      const ended = await endFirst();
      if (!ended.ok) return ended;
    }
  } finally {
    await crew.close();
  }
  await json.write(CUT_LIST_JSON_END);
  shown.end();
  return success(null);
}

/** A row of the table that is being made, or was by an earlier run. */
interface BegunRow {
  readonly line: number;
  readonly digest: string;
  readonly isKept: boolean;
  readonly made: Promise<MadeRow>;
}

async function beginRow(row: HandRow, reader: RowReader, crew: RowCrew, inputs: BatchInputs, work: Work): Promise<BegunRow> {
  const digest = digestOf(row.cells);
  const kept = row.cells === null ? null : await work.progress.find(digest);
  const begun = { line: row.line, digest, isKept: kept !== null };
  if (kept) {
    reader.know(kept);
    const isDone = inputs.files !== 'each' || (await hasFiles(kept, planOf(inputs, work)));
    return { ...begun, made: isDone ? Promise.resolve({ ok: true, piece: kept, drawn: null }) : making(crew, kept) };
  }
  const job = reader.begin(row);
  return { ...begun, made: 'ok' in job ? Promise.resolve(job) : making(crew, job) };
}

/** A fault in a thread is met when the row's turn comes, not before. */
function making(crew: RowCrew, job: RowJob | CutPiece): Promise<MadeRow> {
  const made = crew.make(job);
  made.catch(() => {});
  return made;
}

async function endRow(begun: BegunRow, reader: RowReader, inputs: BatchInputs, work: Work, shown: RowProgress): Promise<Result<null>> {
  const { list, json, errors, tally, progress } = work;
  const { line, digest, isKept } = begun;
  const made = await begun.made;
  const wrong = made.ok ? reader.seenBefore(made.piece.id, line) : made;
  if (wrong) {
    tally.wrongRows++;
    tally.shown.push(...wrong.errors.slice(0, MOST_SHOWN - tally.shown.length));
    for (const e of wrong.errors) await errors.write(`${csvLine([e.line, e.column ?? '', e.name ?? '', e.code, e.message])}\n`);
  } else if (made.ok) {
    const { piece, drawn } = made;
    if (drawn) {
      if (!drawn.ok) return drawn;
      const written = await writePatterns([drawn.value], planOf(inputs, work));
      if (!written.ok) return written;
      tally.files += written.value.length;
      for (const warning of [...written.warnings, ...drawn.warnings])
        if (!tally.said.has(warning.code)) tally.said.set(warning.code, warning);
    }
    const { id, length, width, plate } = piece;
    if (plate === null) tally.strips.push({ id, length, width });
    await list.write(`${cutListLine(piece)}\n`);
    await json.write(`${tally.made + tally.reused > 0 ? ',' : ''}\n${JSON.stringify(piece)}`);
    if (isKept) tally.reused++;
    else {
      tally.made++;
      await progress.add(digest, piece);
    }
  }
  shown.row(line, tally.made + tally.reused, tally.wrongRows);
  return success(null);
}

/** How the files of a hand are written: as `draw` writes them, over those of an earlier run. */
function planOf({ output, folder }: BatchInputs, { resume }: Work): OutputPlan {
  return { ...output, folder, force: output.force || resume };
}

/** Whether an earlier run wrote a piece's files; what it wrote and the row still says is left as it is. */
async function hasFiles(piece: CutPiece, { formats, folder }: OutputPlan): Promise<boolean> {
  const names = formats.map((format) => outputFileName(piece.id, format));
  const free = await checkWritable(folder ?? '.', names, { force: false });
  // All of them are there when each is a problem.
  return !free.ok && free.problems.length === names.length;
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
