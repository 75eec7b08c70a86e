import { makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { checkPrintScale } from '../sheet/paper/check-print-scale.ts';
import type { SheetSettings } from '../sheet/paper/sheet-settings.ts';
import { failure, type Result, success } from '../units/result.ts';
import { outputFileName } from '../writers/output-file-name.ts';
import { layOutForPdf } from '../writers/pdf/pdf.ts';
import type { WriterFormat } from '../writers/writer.ts';
import type { Drawn } from './derive.ts';
import { printedBars, sheetSettings } from './print-settings.ts';
import type { Entries } from './state.ts';
import { pageWriter } from './writers.ts';

const TYPES: Readonly<Record<WriterFormat, string>> = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf', pdf: 'application/pdf' };

/** What can be saved: a format, and of the PDF the pattern with the making sheet, or the page for the patient. */
export type FileKind = WriterFormat | 'handout';

export interface MadeFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  readonly type: string;
}

/** The file of a pattern that is made and proved anew. Fails with everything that keeps it from being written. */
export function fileOf(kind: FileKind, drawn: Drawn, print: Entries['print']): Result<MadeFile> {
  const made = makePattern(requestOf(drawn));
  if (!made.ok) return made;
  const { pattern } = made.value;
  const format: WriterFormat = kind === 'handout' ? 'pdf' : kind;
  const settings = settingsFor(kind, pattern, print);
  if (!settings.ok) return settings;
  const writer = pageWriter(format, settings.value);
  const written = writer.write(pattern);
  if (!written.ok) return failure(...written.problems);
  const about = kind === 'handout' ? '-handout' : settings.value.correction ? '-corrected' : '';
  const name = outputFileName(`${drawn.hand.code}-${drawn.kind === 'plate' ? drawn.design.id : drawn.block.id}${about}`, writer.extension);
  return success({ name, content: written.value, type: TYPES[format] });
}

/** A correction keeps the way round of the sheet whose bars were measured, or across would no longer be across. */
function settingsFor(kind: FileKind, pattern: Pattern, print: Entries['print']): Result<SheetSettings> {
  const plain = sheetSettings(print);
  if (kind === 'handout') return success({ ...plain, parts: ['handout'] });
  const bars = kind === 'pdf' ? printedBars(print) : null;
  if (!bars || checkPrintScale(bars).verdict !== 'compensate') return success(plain);
  const before = layOutForPdf(pattern, plain);
  return before.ok ? success({ ...plain, orientation: before.value.orientation, correction: bars }) : before;
}

function requestOf(drawn: Drawn): PatternRequest {
  const { hand, date } = drawn;
  return drawn.kind === 'plate'
    ? { kind: 'plate', hand, plate: drawn.design, options: drawn.options, date }
    : { kind: 'strip', hand, block: drawn.block, options: drawn.options, date };
}
