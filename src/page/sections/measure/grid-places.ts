import { DIGITS, type DigitName, WEBS, type WebName } from '../../../hand/digits.ts';
import { webLevels } from '../../../hand/estimate-palm.ts';
import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS } from '../../../hand/fields.ts';
import { parseLength } from '../../../units/length.ts';
import { wantsPlate } from '../../derive-plate.ts';
import { lengthOf } from '../../hand-file.ts';
import { GRID_ROWS, type GridRow, gridRowOf } from '../../parts/focus.ts';
import { typedAt } from '../../state.ts';
import type { Store } from '../../store.ts';

/** Rows whose measures are taken on the back of the hand. */
export const ON_THE_BACK: readonly string[] = ['dorsalLength', 'mpSetback', ...Object.keys(PALM_FIELDS)];
/** Rows that Enter goes through; the others are optional. */
export const ASKED_ROWS = GRID_ROWS.filter((id) => id !== 'webSetback' && 'needed' in DIGIT_FIELDS[id]);
/** What only a plate follows; all other optional rows are what only a strip does. */
const FOR_PLATES: GridRow = 'mpSetback';

/** The web between two fingers that stand beside each other. */
function webBetween(one: DigitName, other: DigitName): WebName | undefined {
  return WEBS.find((web) => web === `${one}-${other}` || web === `${other}-${one}`);
}

/** Paths of all fields of a row, as they stand over each other's columns. */
export function placesIn(row: GridRow, columns: readonly DigitName[]): readonly string[] {
  if (row !== 'webSetback') return columns.map((digit) => `digits.${digit}.${row}`);
  return columns.slice(1).map((digit, k) => `webSetback.${webBetween(columns[k] ?? digit, digit)}`);
}

/** Whether a field is there: its fingers are taken in, it is needed, or something was typed in it; one that is being emptied stays. */
export function isShown({ derived, entries, focus }: Store, where: string): boolean {
  const { asked, missing } = derived.value;
  const [first, at = ''] = where.split('.');
  const fingers = first === 'digits' ? [at] : at.split('-');
  return (
    asked.filter((digit) => fingers.includes(digit)).length === fingers.length ||
    missing.includes(where) ||
    focus.value === where ||
    typedAt(entries.value, where).trim() !== ''
  );
}

/** The rows that the suggestion needs or may use, and those with something typed in them or the focus. */
export function rowsOf(store: Store): readonly GridRow[] {
  const isPlate = wantsPlate(store.entries.value, store.derived.value.plan);
  const isOfUse = (row: GridRow) => ASKED_ROWS.includes(row) || (row === FOR_PLATES) === isPlate;
  return GRID_ROWS.filter(
    (row) =>
      isOfUse(row) ||
      row === gridRowOf(store.focus.value) ||
      placesIn(row, DIGITS).some((where) => typedAt(store.entries.value, where).trim() !== ''),
  );
}

/** What was typed in a field of the grid, as a length. */
export function lengthAt({ entries, settings }: Store, where: string) {
  const [first, at, id] = where.split('.') as [string, DigitName, DigitFieldId];
  if (first === 'digits') return lengthOf(entries.value, at, id, settings.value.unit);
  const text = typedAt(entries.value, where);
  return first !== 'webSetback' || text.trim() === '' ? null : parseLength(text, settings.value.unit, { zero: true });
}

/** How far a web lies behind the foremost, measured or estimated, mm. */
export function setbackOf(hand: Parameters<typeof webLevels>[0], web: WebName): number {
  return -webLevels(hand).level[web];
}
