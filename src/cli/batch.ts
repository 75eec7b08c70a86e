import { join } from 'node:path';
import { checkWritable, outputFileName } from '../files/save-file.ts';
import { StreamedFile } from '../files/streamed-file.ts';
import { makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import { PLATE_GEOMETRY_VERSION } from '../pattern/plate/plate.ts';
import type { PlatePreset } from '../pattern/plate/read-plate.ts';
import { GEOMETRY_VERSION } from '../pattern/strip/geometry-version.ts';
import { csvLine } from '../sheet/plastic/csv-text.ts';
import { CUT_LIST_JSON_END, type CutPiece, cutListHeader, cutListJsonHead, cutListLine } from '../sheet/plastic/cut-list.ts';
import { requestOfPiece } from '../sheet/plastic/piece-part.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import type { BatchFlags } from './batch-command.ts';
import { BatchProgress, digestOf } from './batch-progress.ts';
import { namedBlock, readOptions } from './draw.ts';
import { namedPlate } from './draw-plate.ts';
import { EXIT, fail, warn } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';
import { readLayoutFlags } from './flags/layout-flags.ts';
import { blockFlag, type RowPiece, RowReader, type RowSettings } from './hand-pieces.ts';
import { type OutputPlan, readOutputPlan } from './output-plan.ts';
import { readDate } from './read-date.ts';
import { type HandTable, openHandTable, type RowError, rowErrorText } from './read-hand-rows.ts';
import { layOutPieces, readStockFlag, type SheetsReport, sheetsReportText } from './sheets.ts';
import { writePatterns } from './write-patterns.ts';

export const CUT_LIST_CSV = 'cut-list.csv';
export const CUT_LIST_JSON = 'cut-list.json';
export const ERRORS_CSV = 'row-errors.csv';

/** Row errors shown on the terminal; all of them stand in the file. */
const MOST_SHOWN = 20;
const PROGRESS_EVERY_MS = 200;

interface BatchInputs {
  readonly table: HandTable;
  readonly settings: RowSettings;
  readonly output: OutputPlan;
  readonly folder: string;
  readonly date: string | null;
}

interface Tally {
  made: number;
  again: number;
  wrongRows: number;
  files: number;
  readonly shown: RowError[];
  /** What the writing of files gave to say, each code once. */
  readonly said: Map<string, Warning>;
}

/** Runs `batch`: checks everything first, then reads row by row; a row that is wrong is written down and the next one read. */
export async function batch(path: string, flags: BatchFlags): Promise<void> {
  const inputs = await readInputs(path, flags);
  if (!inputs.ok) return fail(inputs.problems);
  const { folder, output, settings } = inputs.value;
  const digest = digestOf({ geometry: [GEOMETRY_VERSION, PLATE_GEOMETRY_VERSION], settings, date: inputs.value.date });
  const state = await BatchProgress.state(folder, digest);
  const resume = state === 'same';
  if (state === 'other' && !output.force) return fail([otherBatch(folder)]);
  const place = await checkWritable(folder, [CUT_LIST_CSV, CUT_LIST_JSON, ERRORS_CSV], { force: output.force || resume });
  if (!place.ok) return fail(place.problems);
  const progress = await BatchProgress.open(folder, digest, resume);
  const tally: Tally = { made: 0, again: 0, wrongRows: 0, files: 0, shown: [], said: new Map() };
  const outputs = await Promise.all([CUT_LIST_CSV, CUT_LIST_JSON, ERRORS_CSV].map((name) => StreamedFile.create(folder, name)));
  const [list, json, errors] = outputs as [StreamedFile, StreamedFile, StreamedFile];
  const stop = async (problems: readonly Problem[]) => {
    await Promise.all(outputs.map((file) => file.abandon()));
    fail(problems);
  };
  try {
    const worked = await runRows(path, inputs.value, flags, { progress, list, json, errors, tally, resume });
    if (!worked.ok) return await stop(worked.problems);
  } finally {
    await progress.close();
  }
  const total = tally.made + tally.again;
  if (tally.wrongRows > 0) showErrors(path, tally, join(folder, ERRORS_CSV));
  if ((flags.strict && tally.wrongRows > 0) || total === 0) return await stop([noneWritten(path, tally, flags.strict === true)]);
  for (const file of outputs) await file.finish();
  const sheets = flags.files === 'sheets' ? await onSheets(inputs.value, flags, join(folder, CUT_LIST_JSON)) : success(null);
  if (!sheets.ok) return fail(sheets.problems);
  warn([...inputs.warnings, ...tally.said.values(), ...sheets.warnings]);
  report(inputs.value, flags, tally, sheets.value);
}

async function readInputs(path: string, flags: BatchFlags): Promise<Result<BatchInputs>> {
  const block = await blockFlag(flags);
  const plate = flags.plate === undefined ? success(null) : await readPlateFlag(flags.plate, flags.block);
  const options = await readOptions(flags);
  const output = readOutputPlan(flags);
  const date = readDate(flags.date);
  const lay = readLayoutFlags(flags);
  const stock = await readStockFlag(flags.stock);
  const table = await openHandTable(path);
  const problems = [table, block, plate, options, output, date, lay, stock].flatMap((r) => (r.ok ? [] : r.problems));
  if (!table.ok || !block.ok || !plate.ok || !options.ok || !output.ok || !date.ok || problems.length > 0) return failure(...problems);
  const settings = { block: block.value, plate: plate.value, units: flags.units, options: options.value };
  return success({ table: table.value, settings, output: output.value, folder: flags.out ?? '.', date: date.value }, output.warnings);
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

async function runRows(path: string, inputs: BatchInputs, flags: BatchFlags, work: Work): Promise<Result<null>> {
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
  let shownAt = 0;
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
      if (flags.files === 'each') {
        const written = await writeEach(read.value.piece, read.value.made, inputs, work.resume, kept !== null);
        if (!written.ok) return written;
        tally.files += written.value;
        for (const warning of written.warnings) if (!tally.said.has(warning.code)) tally.said.set(warning.code, warning);
      }
      await list.write(`${cutListLine(read.value.piece)}\n`);
      await json.write(`${tally.made + tally.again > 0 ? ',' : ''}\n${JSON.stringify(read.value.piece)}`);
      if (kept) tally.again++;
      else {
        tally.made++;
        await progress.add(digest, read.value.piece);
      }
    }
    if (process.stderr.isTTY && Date.now() - shownAt > PROGRESS_EVERY_MS) {
      shownAt = Date.now();
      process.stderr.write(`\r${path}: line ${row.line}, ${tally.made + tally.again} hands done, ${tally.wrongRows} rows wrong`);
    }
  }
  await json.write(CUT_LIST_JSON_END);
  if (process.stderr.isTTY) process.stderr.write('\n');
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
  const pattern = makePattern({ ...source, date: inputs.date });
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

async function onSheets(inputs: BatchInputs, flags: BatchFlags, listPath: string): Promise<Result<SheetsReport>> {
  const lay = readLayoutFlags(flags);
  const stock = await readStockFlag(flags.stock);
  if (!lay.ok) return lay;
  if (!stock.ok) return stock;
  return layOutPieces(listPath, lay.value, stock.value, { ...inputs.output, folder: inputs.folder }, inputs.date);
}

function otherBatch(folder: string): Problem {
  const message = `${folder} holds a batch made with other settings; choose another folder, or begin anew in this one with --force.`;
  return { code: 'OTHER_BATCH', where: folder, message, kind: 'input' };
}

function noneWritten(path: string, tally: Tally, strict: boolean): Problem {
  const message = strict
    ? `${tally.wrongRows} rows are wrong and --strict is set; no cut list was written.`
    : `no row could be made (${tally.wrongRows} wrong); no cut list was written.`;
  return { code: 'ROWS', where: path, message: `${path}: ${message}`, kind: 'input' };
}

function count(n: number, one: string, more: string): string {
  return `${n} ${n === 1 ? one : more}`;
}

function showErrors(path: string, tally: Tally, file: string): void {
  for (const error of tally.shown) process.stderr.write(`left out: ${rowErrorText(path, error)}\n`);
  process.stderr.write(
    `${tally.wrongRows} of ${count(tally.wrongRows + tally.made + tally.again, 'row is', 'rows are')} wrong and left out; all of it in ${file}\n`,
  );
}

function report(inputs: BatchInputs, flags: BatchFlags, tally: Tally, sheets: SheetsReport | null): void {
  const { folder } = inputs;
  const lists = [CUT_LIST_CSV, CUT_LIST_JSON, ERRORS_CSV].map((name) => join(folder, name));
  if (flags.json) {
    const { made, again, wrongRows, files } = tally;
    process.stdout.write(`${JSON.stringify({ made, again, wrongRows, files, lists, sheets }, null, 2)}\n`);
  } else {
    const total = tally.made + tally.again;
    const before = tally.again > 0 ? `, ${tally.again} of them by an earlier run` : '';
    process.stdout.write(`${count(total, 'hand', 'hands')} in the cut list${before}; ${count(tally.wrongRows, 'row', 'rows')} wrong\n`);
    if (flags.files === 'each') process.stdout.write(`${tally.files} pattern files written into ${folder}\n`);
    for (const list of lists) process.stdout.write(`${list}\n`);
    if (sheets) process.stdout.write(sheetsReportText(sheets));
    else process.stdout.write(`next: knucklewright sheets ${join(folder, CUT_LIST_JSON)} --out ${folder}\n`);
  }
  process.exitCode = EXIT.done;
}
