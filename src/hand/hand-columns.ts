import { getOwn } from '../units/json-text.ts';
import { DIGITS, WEBS } from './digits.ts';
import { DIGIT_FIELDS, type Field, FLAG_MEANINGS, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from './fields.ts';
import { HAND_SCHEMA_ID, MOST_READINGS, MOST_WEEKS } from './hand-schema.ts';
import { CENTRAL_SLIP, STOP_SIGNS } from './signs.ts';
import { TARGET_MOTION_MEANINGS, targetMotionPaths } from './target-motion.ts';

/** A column of a table of hands, one hand a row. */
export interface HandColumn {
  /** Its name in the header: the path of the field in a hand file. */
  readonly name: string;
  readonly about: string;
  /** Whether the header must have it. */
  readonly required: boolean;
  readonly kind: 'value' | 'count' | 'yesNo' | 'names' | 'row';
}

const FEWEST = 'at least three neighbouring digits';

function count(name: string, about: string): HandColumn {
  return { name, about, required: false, kind: 'count' };
}

const digitColumns = DIGITS.flatMap((digit) =>
  Object.values(DIGIT_FIELDS).map((field): HandColumn => column(`${digit}.${field.id}`, field, `${digit}: `)),
);

function column(name: string, field: Field, prefix = ''): HandColumn {
  const range = `${field.refuse.from} to ${field.refuse.to} ${field.unit}`;
  return { name, about: `${prefix}${field.howToMeasure} ${range}.`, required: false, kind: 'value' };
}

/** Every column that a table of hands may have, in the order of measuring. */
export const HAND_COLUMNS: readonly HandColumn[] = [
  { name: 'code', about: 'case code: capital letters, digits, hyphens; never a name or a date of birth', required: true, kind: 'value' },
  { name: 'side', about: 'left or right', required: true, kind: 'value' },
  { name: 'units', about: 'mm, cm or in, the same in every row; without this column --units says it', required: false, kind: 'row' },
  { name: 'block', about: 'block, or plate, for this row, by id, in place of --block', required: false, kind: 'row' },
  ...digitColumns,
  ...Object.values(WEB_FIELDS).flatMap((field) => WEBS.map((web) => column(`${field.id}.${web}`, field, `${web}: `))),
  ...Object.values(PALM_FIELDS).map((field) => column(field.id, field)),
  { name: 'target.digit', about: 'digit whose PIP joint is treated: index, long, ring or little', required: false, kind: 'value' },
  ...Object.values(TARGET_FIELDS).map((field) => column(`target.${field.id}`, field)),
  ...targetMotionPaths().map(({ motion, key, field }) => column(`target.${motion}.${key}`, field, `${TARGET_MOTION_MEANINGS[motion]} `)),
  count('target.readings.extension', `how often extension was measured, where the deficit is a mean: 1 to ${MOST_READINGS}`),
  count('target.readings.flexion', `how often flexion was measured, where the deficit is a mean: 1 to ${MOST_READINGS}`),
  { name: 'target.diagnosis', about: 'what the finger has, in a few words; never who the person is', required: false, kind: 'value' },
  count('target.weeks', `weeks since the injury or operation, 0 to ${MOST_WEEKS}`),
  { name: 'target.boutonniere', about: 'yes: the finger has a boutonniere deformity', required: false, kind: 'yesNo' },
  { name: 'target.centralSlip', about: `outcome of the central slip test: ${CENTRAL_SLIP.join(' or ')}`, required: false, kind: 'value' },
  {
    name: 'target.stopSigns',
    about: `signs that stop any suggestion, names with blanks between: ${STOP_SIGNS.join(', ')}`,
    required: false,
    kind: 'names',
  },
  {
    name: 'target.surgeonAgrees',
    about: 'yes: the surgeon has agreed in spite of an open wound, pins or a doubtful central slip',
    required: false,
    kind: 'yesNo',
  },
  { name: 'flags.hypermobile', about: `${FLAG_MEANINGS.hypermobile} Names with blanks between.`, required: false, kind: 'names' },
  ...(['swelling', 'sensation', 'hardEndFeel', 'unprotectedRepair'] as const).map(
    (flag): HandColumn => ({ name: `flags.${flag}`, about: `${FLAG_MEANINGS[flag]} yes or no.`, required: false, kind: 'yesNo' }),
  ),
  { name: 'absent', about: 'digits that the hand does not have, names with blanks between', required: false, kind: 'names' },
  { name: 'child', about: "yes: a child's hand", required: false, kind: 'yesNo' },
  { name: 'invented', about: 'yes marks a made-up hand', required: false, kind: 'yesNo' },
  { name: 'note', about: 'one line about the measuring; never who the person is', required: false, kind: 'value' },
];

/** How a table of hands is written, for a person: the header, then every column. */
export function handColumnsText(): string {
  const names = HAND_COLUMNS.map((c) => c.name);
  const width = Math.max(...names.map((name) => name.length));
  return [
    'A table of hands is CSV in UTF-8 or UTF-16, as a spreadsheet saves it; lines of title, one header line, then one hand a row.',
    'Commas or semicolons part the cells; a decimal comma may be used where semicolons do, or inside quotes.',
    'The header names the columns below, in any order; in any case; columns that are not needed may be left out, others are not read, but every row has as many cells as the header.',
    `An empty cell is a value that was not measured. Needed: code, side, and width and circumference of ${FEWEST}.`,
    'A length may carry its own unit (84.5 mm, 3 5/16 in, ring 54); a bare number is in the units of the table.',
    '',
    names.join(','),
    '',
    ...HAND_COLUMNS.map((c) => `${c.name.padEnd(width)}  ${c.about}`),
    '',
  ].join('\n');
}

/** The hand file that a row stands for, unchecked; `readHand` checks it. Cells by column name; empty ones are left out. */
export function handOfRow(cells: Readonly<Record<string, string>>, units: string): Record<string, unknown> {
  const hand: Record<string, unknown> = { schema: HAND_SCHEMA_ID, units };
  for (const { name, kind } of HAND_COLUMNS) {
    const text = (getOwn(cells, name) as string | undefined)?.trim() ?? '';
    if (text === '' || kind === 'row') continue;
    const value =
      name === 'side'
        ? sideOf(text)
        : name === 'target.digit' || name === 'target.centralSlip'
          ? text.toLowerCase()
          : kind === 'yesNo'
            ? yesNo(text)
            : kind === 'count'
              ? numeral(text)
              : kind === 'names'
                ? namesIn(name, text)
                : text;
    // A made-up hand is marked, any other is not: the hand file knows only the mark.
    if (name === 'invented' && value === false) continue;
    put(hand, pathOf(name), value);
  }
  return hand;
}

/** The column that a problem of `readHand` is about: `digits.ring.width` is in `ring.width`. Null when it is about the row as a whole. */
export function columnOfProblem(where: string): string | null {
  const name = where.replace(/^digits\./, '');
  const known = HAND_COLUMNS.map((c) => c.name);
  return known.find((c) => c === name || name.startsWith(`${c}.`)) ?? known.find((c) => c.startsWith(`${name}.`) && name !== '') ?? null;
}

function pathOf(name: string): readonly string[] {
  const parts = name.split('.');
  return DIGITS.some((digit) => digit === parts[0]) ? ['digits', ...parts] : parts;
}

function put(target: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [first = '', ...rest] = path;
  if (rest.length === 0) {
    target[first] = value;
    return;
  }
  const inner = (getOwn(target, first) ?? {}) as Record<string, unknown>;
  target[first] = inner;
  put(inner, rest, value);
}

/** Left and right as people write them in English, German and Spanish; anything else is left as it is, for the check of the form to refuse. */
const SIDES: readonly (readonly ['left' | 'right', RegExp])[] = [
  ['left', /^(l|left|li|links|izq|izquierd[ao]|i)\.?$/i],
  ['right', /^(r|right|re|rechts|der|derech[ao]|d)\.?$/i],
];

function sideOf(text: string): string {
  return SIDES.find(([, words]) => words.test(text))?.[0] ?? text;
}

/** Digits in small letters; the signs have capitals of their own. */
function namesIn(column: string, text: string): readonly string[] {
  const names = text.split(/[\s+]+/);
  return column === 'target.stopSigns' ? names : names.map((name) => name.toLowerCase());
}

/** What is neither is left as text, for the check of the form to refuse. */
function yesNo(text: string): boolean | string {
  if (/^(?:yes|true|1)$/i.test(text)) return true;
  return /^(?:no|false|0)$/i.test(text) ? false : text;
}

/** What is no number is left as text, for the check of the form to refuse. */
function numeral(text: string): number | string {
  return /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : text;
}
