import { makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { paperTrial } from '../pattern/strip/paper-trial.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import { validatePattern } from '../pattern/validate-pattern.ts';
import { checkPrintScale } from '../sheet/paper/check-print-scale.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../sheet/paper/sheet-settings.ts';
import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { patternWords } from '../words/pattern/pattern-words.ts';
import { outputFileName } from '../writers/output-file-name.ts';
import type { WriterFormat } from '../writers/writer.ts';
import type { Drawn } from './derive.ts';
import type { Writers } from './load-writers.ts';
import { printedBars, printIn, sheetSettings } from './print-settings.ts';
import type { Entries } from './state.ts';

const TYPES: Readonly<Record<WriterFormat, string>> = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf', pdf: 'application/pdf' };

/** What can be saved: a format, and of the PDF the pattern with the making sheet, the paper strip of a trial, or the page for the patient. */
export type FileKind = WriterFormat | 'trial' | 'handout';

export interface MadeFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  readonly type: string;
  /** How many pages a printed file has; null of a drawing. */
  readonly pages: number | null;
}

/** What is printed on, and what the print has to say of the page. */
export interface PrintWishes {
  readonly print: Entries['print'];
  readonly unit: LengthUnit;
  /** Somebody was asked whether there is a stop sign. If not, the print says so. */
  readonly isStopAsked: boolean;
  /** Of all words in the file. Usual: English. */
  readonly language?: Language;
}

/** The file of a pattern that is made and proved anew. Fails with everything that keeps it from being written. */
export function fileOf(
  kind: FileKind,
  drawn: Drawn,
  { print: typedPrint, unit, isStopAsked, language = 'en' }: PrintWishes,
  { pageWriter, layOutForPdf }: Writers,
): Result<MadeFile> {
  const made = makePattern({ ...requestOf(drawn), language });
  if (!made.ok) return made;
  const drawing = kind === 'trial' ? withPaperTrial(made.value.pattern, drawn, language) : success(made.value.pattern);
  if (!drawing.ok) return drawing;
  const pattern = isStopAsked ? drawing.value : withUnaskedStop(drawing.value, language);
  const print = printIn(typedPrint, unit);
  const format: WriterFormat = kind === 'handout' || kind === 'trial' ? 'pdf' : kind;
  const settings = settingsFor(kind, pattern, print, language, layOutForPdf);
  if (!settings.ok) return settings;
  const writer = pageWriter(format, settings.value);
  const written = writer.write(pattern);
  if (!written.ok) return failure(...written.problems);
  const about = kind === 'handout' ? '-handout' : `${kind === 'trial' ? '-paper' : ''}${settings.value.correction ? '-corrected' : ''}`;
  const name = outputFileName(`${drawn.hand.code}-${whatIsMade(drawn)}${about}`, writer.extension);
  return success({ name, content: written.value, type: TYPES[format], pages: writer.pages?.(pattern)?.count ?? null });
}

/** The pattern with the paper strip of its trial. A plate has none. Fails as the paper strip does, and where it cannot be proved. */
function withPaperTrial(pattern: Pattern, drawn: Drawn, language: Language): Result<Pattern> {
  if (drawn.kind === 'plate') return success(pattern);
  const { hand, block, options, date } = drawn;
  const trial = paperTrial(hand, block, options, date, language);
  const sound = trial.ok ? validatePattern(trial.value) : trial;
  return sound.ok && trial.ok ? success({ ...pattern, paperTrial: trial.value, inputs: { ...pattern.inputs, paperTrial: true } }) : sound;
}

/** The pattern whose making pages begin their cautions, and whose paper strip its words, with what was not asked. */
function withUnaskedStop(pattern: Pattern, language: Language): Pattern {
  const { notes, paperTrial: trial } = pattern;
  const { stopUnasked } = patternWords(language);
  return {
    ...pattern,
    ...(notes ? { notes: { ...notes, cautions: [stopUnasked, ...notes.cautions] } } : {}),
    ...(trial?.lists
      ? { paperTrial: { ...trial, lists: trial.lists.map((list) => ({ ...list, lines: [stopUnasked, ...list.lines] })) } }
      : {}),
  };
}

/** A correction keeps the way round of the sheet whose bars were measured, or across would no longer be across. */
function settingsFor(
  kind: FileKind,
  pattern: Pattern,
  print: Entries['print'],
  language: Language,
  layOutForPdf: Writers['layOutForPdf'],
): Result<SheetSettings> {
  const { parts } = DEFAULT_SHEET_SETTINGS;
  const plain = { ...sheetSettings(print), language, parts: kind === 'handout' || kind === 'trial' ? [kind] : parts };
  const bars = kind === 'pdf' || kind === 'trial' ? printedBars(print) : null;
  if (!bars || checkPrintScale(bars).verdict !== 'compensate') return success(plain);
  const before = layOutForPdf(pattern, plain);
  return before.ok ? success({ ...plain, orientation: before.value.orientation, correction: bars }) : before;
}

/** What tells two files of one hand apart: the arrangement or plate, and what is not as usual. */
function whatIsMade(drawn: Drawn): string {
  if (drawn.kind === 'plate') return drawn.design.id;
  const { differential, width } = drawn.options;
  const unusual = [
    ...(differential === DEFAULT_STRIP_OPTIONS.differential ? [] : [`${plain(differential, 1)}deg`]),
    ...(width === DEFAULT_STRIP_OPTIONS.width ? [] : [`${width === 'auto' ? width : plain(width, 1)}wide`]),
  ];
  return [drawn.block.id, ...unusual].join('-');
}

function requestOf(drawn: Drawn): PatternRequest {
  const { hand, date } = drawn;
  return drawn.kind === 'plate'
    ? { kind: 'plate', hand, plate: drawn.design, options: drawn.options, date }
    : { kind: 'strip', hand, block: drawn.block, options: drawn.options, date };
}
