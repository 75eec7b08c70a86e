import { DIGITS, type DigitName } from '../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS, type PalmFieldId, TARGET_FIELDS, type TargetFieldId } from '../hand/fields.ts';
import { HAND_SCHEMA_ID, type HandFile } from '../hand/hand-schema.ts';
import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { type DecimalSign, type Entries, emptyEntries } from './state.ts';

type Typed = number | string;

/** A plain decimal number becomes a number; everything else (fractions, units, ring sizes) stays text, which the hand file takes as well. */
function typed(text: string): Typed {
  const tidy = text.trim();
  const value = /^(\d+([.,]\d+)?|[.,]\d+)$/.test(tidy) ? Number(tidy.replace(',', '.')) : Number.NaN;
  // Digits beyond all numbers stay text as well, so that they are refused as they stand there.
  return Number.isFinite(value) ? value : tidy;
}

function filled<Id extends string>(values: Readonly<Record<Id, string>>): Partial<Record<Id, Typed>> {
  const entries = Object.entries<string>(values).filter(([, text]) => text.trim() !== '');
  return Object.fromEntries(entries.map(([id, text]) => [id, typed(text)])) as Partial<Record<Id, Typed>>;
}

/** Whether anything was measured on the digit. */
export function isMeasured(entries: Entries, digit: DigitName): boolean {
  return Object.values(entries.digits[digit]).some((text) => text.trim() !== '');
}

/** The hand file that the entries make, still unchecked; what is empty is left out, in the order of the form of a hand file. */
export function handFileOf(entries: Entries, unit: LengthUnit): Record<string, unknown> {
  const measured = DIGITS.filter((digit) => isMeasured(entries, digit));
  const flags = Object.entries(entries.flags).filter(([, set]) => set);
  const anyFlag = flags.length > 0 || entries.hypermobile.length > 0;
  const deficits = filled(entries.deficits);
  const anyTarget = entries.target !== '' || Object.keys(deficits).length > 0;
  // A deficit that was not typed is none: the form has no other way to say so.
  const both = entries.target === '' ? {} : { pipExtensionDeficit: 0, pipFlexionDeficit: 0 };
  return {
    schema: HAND_SCHEMA_ID,
    ...(entries.code.trim() === '' ? {} : { code: entries.code.trim() }),
    ...(entries.side === '' ? {} : { side: entries.side }),
    units: unit,
    ...(entries.invented ? { invented: true } : {}),
    ...(entries.note.trim() === '' ? {} : { note: entries.note.trim() }),
    digits: Object.fromEntries(measured.map((digit) => [digit, filled(entries.digits[digit])])),
    ...(Object.keys(filled(entries.webs)).length > 0 ? { webSetback: filled(entries.webs) } : {}),
    ...filled(entries.palm),
    ...(anyTarget ? { target: { ...(entries.target === '' ? {} : { digit: entries.target }), ...both, ...deficits } } : {}),
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
  const none = emptyEntries(decimal);
  const flags = file.flags ?? {};
  return {
    ...none,
    code: file.code,
    side: file.side,
    note: file.note ?? '',
    invented: file.invented ?? false,
    digits: Object.fromEntries(
      DIGITS.map((digit) => [digit, texts<DigitFieldId>(DIGIT_FIELDS, file.digits[digit] ?? {})]),
    ) as Entries['digits'],
    palm: texts<PalmFieldId>(PALM_FIELDS, file),
    webs: texts(none.webs, file.webSetback ?? {}),
    target: file.target?.digit ?? '',
    deficits: texts<TargetFieldId>(TARGET_FIELDS, file.target ?? {}),
    flags: {
      swelling: flags.swelling ?? false,
      sensation: flags.sensation ?? false,
      hardEndFeel: flags.hardEndFeel ?? false,
      unprotectedRepair: flags.unprotectedRepair ?? false,
    },
    hypermobile: DIGITS.filter((digit) => flags.hypermobile?.includes(digit)),
  };
}
