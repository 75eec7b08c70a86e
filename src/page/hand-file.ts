import { LACK } from '../block/figures.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import { averageDigit } from '../hand/estimate.ts';
import { DIGIT_FIELDS, type DigitFieldId, isRound, PALM_FIELDS, type PalmFieldId } from '../hand/fields.ts';
import { HAND_SCHEMA_ID, type HandFile } from '../hand/hand-schema.ts';
import { type LengthUnit, MM_PER, parseLength } from '../units/length.ts';
import { plain, rounded } from '../units/number.ts';
import { extrasOf, targetExtras } from './hand-extras.ts';
import { type DecimalSign, type Entries, emptyEntries } from './state.ts';
import { readAngle } from './typed-motion.ts';

type Typed = number | string;

/** Stands on a pattern that was printed before anybody gave a case code. */
export const NO_CODE = 'NO-CODE-0';
/** Full PIP flexion where the other hand is not known, degrees: AAOS-type tables give 0 to 100. */
export const FULL_FLEXION = 100;

/** No finger joint bends further, degrees; what is more is refused as it stands there. */
const LARGEST_ANGLE = 150;

/** A plain decimal number becomes a number; everything else (fractions, units, ring sizes) stays text, which the hand file takes as well. */
function typed(text: string): Typed {
  const tidy = text.trim();
  const value = BARE.test(tidy) ? Number(tidy.replace(',', '.')) : Number.NaN;
  // Digits beyond all numbers stay text as well, so that they are refused as they stand there.
  return Number.isFinite(value) ? value : tidy;
}

const BARE = /^(\d+([.,]\d+)?|[.,]\d+)$/;
/** What may stand alone in a row whose numbers are ring sizes: a number, a half, a UK letter. */
const BARE_RING = /^(?:\d+(?:[.,]\d+)?(?: ?½| 1\/2)?|[a-z](?: ?½| 1\/2)?)$/i;

function filled<Id extends string>(values: Readonly<Record<Id, string>>): Partial<Record<Id, Typed>> {
  const entries = Object.entries<string>(values).filter(([, text]) => text.trim() !== '');
  return Object.fromEntries(entries.map(([id, text]) => [id, typed(text)])) as Partial<Record<Id, Typed>>;
}

/** A digit's measures as the file takes them: in a row of ring sizes a bare number is one. */
function measuresOf(entries: Entries, digit: DigitName): Partial<Record<DigitFieldId, Typed>> {
  const values = entries.digits[digit];
  const round = (text: string) =>
    entries.roundIn !== 'length' && BARE_RING.test(text.trim()) ? `${entries.roundIn} ${text.trim()}` : text;
  return filled(Object.fromEntries(Object.entries(values).map(([id, text]) => [id, isRound(id) ? round(text) : text])) as typeof values);
}

/** What a typed circumference or other length of a digit is taken for. */
export function lengthOf(entries: Entries, digit: DigitName, id: DigitFieldId, unit: LengthUnit) {
  const value = measuresOf(entries, digit)[id];
  if (value === undefined) return null;
  return parseLength(value, unit, { ringSizes: isRound(id), zero: DIGIT_FIELDS[id].refuse.from === 0 });
}

/** Whether anything was measured on the digit. */
export function isMeasured(entries: Entries, digit: DigitName): boolean {
  return Object.values(entries.digits[digit]).some((text) => text.trim() !== '');
}

/** What the treated PIP joint lacks in each direction, as the hand file has it; nothing where nothing was typed. */
function deficits({ motion }: Entries): Record<string, Typed> {
  const other = readAngle(motion.other.bends);
  const full = other.kind === 'degrees' && other.degrees <= LARGEST_ANGLE ? other.degrees : FULL_FLEXION;
  const extension = (text: string): Typed | null => {
    const read = readAngle(text);
    if (read.kind === 'blank') return null;
    return read.kind === 'degrees' && read.degrees <= LARGEST_ANGLE ? Math.max(0, read.degrees) : text.trim();
  };
  const flexion = (text: string): Typed | null => {
    const read = readAngle(text);
    if (read.kind === 'blank') return null;
    return read.kind === 'degrees' && read.degrees <= LARGEST_ANGLE ? rounded(Math.max(0, full - read.degrees), 6) : text.trim();
  };
  const found: Record<string, Typed> = {};
  const set = (key: string, value: Typed | null) => {
    if (value !== null) found[key] = value;
  };
  set('pipExtensionDeficit', extension(motion.active.lacks));
  set('pipFlexionDeficit', flexion(motion.active.bends));
  set('pipExtensionDeficitPassive', extension(motion.passive.lacks));
  set('pipFlexionDeficitPassive', flexion(motion.passive.bends));
  return found;
}

/** Whether anything is known of the treated finger's active motion. */
export function isMotionGiven({ motion }: Entries): boolean {
  return motion.active.lacks.trim() !== '' || motion.active.bends.trim() !== '';
}

/**
 * The end of the active motion that must be measured before anything is said: what was typed for the other end lacks nothing to speak of, so all
 * hangs on this one. Null where both were typed, or where the one that was lacks enough for a suggestion.
 */
export function unmeasuredEnd(entries: Entries): 'lacks' | 'bends' | null {
  const { lacks, bends } = entries.motion.active;
  if ((lacks.trim() === '') === (bends.trim() === '')) return null;
  const [end, deficit] = bends.trim() === '' ? (['bends', 'pipExtensionDeficit'] as const) : (['lacks', 'pipFlexionDeficit'] as const);
  const found = deficits(entries)[deficit];
  return typeof found === 'number' && found < LACK ? end : null;
}

/** The hand file that the entries make, still unchecked; what is empty is left out, in the order of the form of a hand file. */
export function handFileOf(entries: Entries, unit: LengthUnit): Record<string, unknown> {
  const measured = DIGITS.filter((digit) => isMeasured(entries, digit));
  const flags = Object.entries(entries.flags).filter(([, set]) => set);
  const anyFlag = flags.length > 0 || entries.hypermobile.length > 0;
  // A deficit that was not typed beside one that was is none: the form has no other way to say so, and the page says it.
  const target =
    entries.target !== '' && isMotionGiven(entries) ? { pipExtensionDeficit: 0, pipFlexionDeficit: 0, ...deficits(entries) } : null;
  const code = entries.code.trim();
  const absent = entries.absent.filter((digit) => !measured.includes(digit));
  return {
    schema: HAND_SCHEMA_ID,
    code: code === '' ? NO_CODE : code,
    ...(entries.side === '' ? {} : { side: entries.side }),
    units: unit,
    ...(entries.invented || entries.example ? { invented: true } : {}),
    ...(entries.note.trim() === '' ? {} : { note: entries.note.trim() }),
    digits: Object.fromEntries(measured.map((digit) => [digit, measuresOf(entries, digit)])),
    ...(absent.length > 0 ? { absent } : {}),
    ...(entries.sizeGroup === 'child' ? { child: true } : {}),
    ...(Object.keys(filled(entries.webs)).length > 0 ? { webSetback: filled(entries.webs) } : {}),
    ...filled(entries.palm),
    ...(target ? { target: { digit: entries.target, ...target, ...targetExtras(entries) } } : {}),
    ...(anyFlag
      ? {
          flags: {
            ...(entries.hypermobile.length > 0 ? { hypermobile: DIGITS.filter((d) => entries.hypermobile.includes(d)) } : {}),
            ...Object.fromEntries(flags),
          },
        }
      : {}),
  };
}

/** Share of an adult's measures that a child's unmeasured hand is drawn with, from memory; for pictures alone, never for a pattern. */
const CHILD_SHARE = 0.7;

/**
 * The hand file with everything that a pattern needs and nobody measured yet, from the average digit by the size of those that were measured.
 * For the suggestion and for pictures, never for a print.
 */
export function withAverages(file: Record<string, unknown>, entries: Entries, unit: LengthUnit): Record<string, unknown> {
  // A length that no finger has says nothing of the others: it is refused itself, and alone.
  const usable = (digit: DigitName, id: 'width' | 'circumference') => {
    const read = lengthOf(entries, digit, id, unit);
    const { from, to } = DIGIT_FIELDS[id].refuse;
    return read?.ok && read.mm >= from && read.mm <= to ? read.mm : null;
  };
  const known = DIGITS.flatMap((digit) => {
    const round = usable(digit, 'circumference');
    return round === null ? [] : [round / averageDigit(digit).circumference];
  }).toSorted((a, b) => a - b);
  const scale = known[Math.floor(known.length / 2)] ?? (entries.sizeGroup === 'child' ? CHILD_SHARE : 1);
  const digits = file.digits as Readonly<Record<string, Partial<Record<DigitFieldId, Typed>>>>;
  const full = DIGITS.map((digit) => {
    const measured = digits[digit] ?? {};
    const width = usable(digit, 'width');
    const circumference = usable(digit, 'circumference') ?? (width === null ? averageDigit(digit).circumference * scale : width * Math.PI);
    const average = { width: rounded(circumference / Math.PI / MM_PER[unit], 4), circumference: rounded(circumference / MM_PER[unit], 4) };
    return [digit, { ...average, ...measured }];
  });
  // A child's measures are not estimated for a print; for a picture an adult's ratios do.
  const { child: _, ...rest } = file;
  return { ...rest, side: file.side ?? 'left', digits: Object.fromEntries(full) };
}

/** The text of a hand file as it is saved: two blanks of indent, a line end at the end. */
export function handFileText(entries: Entries, unit: LengthUnit): string {
  return `${JSON.stringify(handFileOf(entries, unit), null, 2)}\n`;
}

/** The entries that a checked hand file stands for; block and options are the usual ones. Bare numbers are in the file's own unit. */
export function entriesOf(file: HandFile, decimal: DecimalSign): Entries {
  const written = (value: Typed | undefined) =>
    value === undefined ? '' : typeof value === 'number' ? plain(value, 9).replace('.', decimal) : value;
  const texts = <Id extends string>(fields: Readonly<Record<Id, unknown>>, from: Readonly<Partial<Record<Id, Typed | undefined>>>) =>
    Object.fromEntries((Object.keys(fields) as Id[]).map((id) => [id, written(from[id])])) as Record<Id, string>;
  const bends = (deficit: Typed | undefined) => {
    if (deficit === undefined) return '';
    const read = readAngle(String(deficit));
    return read.kind === 'degrees' && read.degrees <= FULL_FLEXION ? written(rounded(FULL_FLEXION - read.degrees, 6)) : '0';
  };
  const none = emptyEntries(decimal);
  const { target } = file;
  const extras = extrasOf(target, decimal);
  const flags = file.flags ?? {};
  return {
    ...none,
    code: file.code === NO_CODE ? '' : file.code,
    side: file.side,
    note: file.note ?? '',
    sizeGroup: file.child ? 'child' : 'adult',
    invented: file.invented ?? false,
    digits: Object.fromEntries(
      DIGITS.map((digit) => [digit, texts<DigitFieldId>(DIGIT_FIELDS, file.digits[digit] ?? {})]),
    ) as Entries['digits'],
    palm: texts<PalmFieldId>(PALM_FIELDS, file),
    webs: texts(none.webs, file.webSetback ?? {}),
    target: target?.digit ?? '',
    ...extras,
    motion: {
      ...extras.motion,
      // Motion that was read goes before the deficits, which stand alone in older files.
      ...(target?.pipActive ? {} : { active: { lacks: written(target?.pipExtensionDeficit), bends: bends(target?.pipFlexionDeficit) } }),
      ...(target?.pipPassive
        ? {}
        : { passive: { lacks: written(target?.pipExtensionDeficitPassive), bends: bends(target?.pipFlexionDeficitPassive) } }),
    },
    flags: {
      swelling: flags.swelling ?? false,
      sensation: flags.sensation ?? false,
      hardEndFeel: flags.hardEndFeel ?? false,
      unprotectedRepair: flags.unprotectedRepair ?? false,
    },
    hypermobile: DIGITS.filter((digit) => flags.hypermobile?.includes(digit)),
    boutonniere: target?.boutonniere ?? false,
    centralSlip: target?.centralSlip ?? '',
    absent: DIGITS.filter((digit) => file.absent?.includes(digit)),
  };
}
