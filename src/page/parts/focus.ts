import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS, WEB_FIELDS, type WebFieldId } from '../../hand/fields.ts';
import { HARM_ENTRIES } from '../state.ts';
import type { Store, VisitPart } from '../store.ts';
import { elementId } from '../translate-messages.ts';

/** Moves the focus once the page has been drawn anew. */
export function focusNext(id: string): void {
  requestAnimationFrame(() => {
    const element = document.getElementById(id);
    // What sticks to the window's edge is in sight; scrolling to it would move what lies behind.
    const isInBar = Boolean(element?.closest('.bottom-bar'));
    element?.focus({ preventScroll: isInBar });
    if (!isInBar) element?.scrollIntoView({ block: 'nearest' });
  });
}

/** Gives the focus to an element where what had it went away with what was pressed. */
export function keepFocus(id: string): void {
  requestAnimationFrame(() => {
    if (document.activeElement === null || document.activeElement === document.body) document.getElementById(id)?.focus();
  });
}

/** Brings the part of the page that holds a field into sight and the focus to it. */
export function goToField(store: Store, where: string): void {
  const [first = ''] = where.split('.');
  store.mode.value = first === 'visit' ? 'visits' : 'design';
  const { options } = store.entries.peek();
  const row = gridRowOf(where);
  if (row !== null) {
    store.panel.value = null;
    store.middle.value = 'fingers';
    store.turn.value = 'measure';
    store.row.value = GRID_ROWS.indexOf(row);
  } else if (first in PALM_FIELDS) {
    store.panel.value = null;
    store.middle.value = 'palm';
    store.turn.value = 'measure';
  } else if (first in options || first === 'date') store.panel.value = 'options';
  else if (first === 'plate' || first === 'block' || first === 'places') store.panel.value = 'ways';
  else if (['code', 'note', 'print'].includes(first)) store.panel.value = 'files';
  else if (where === 'stop') {
    store.panel.value = null;
    store.turn.value = 'finger';
  } else if (['diagnosis', 'weeks', 'flags'].includes(first) || (first === 'motion' && !isInTurn(store, where))) store.panel.value = 'more';
  else if (first === 'visit') store.visitPart.value = visitPartOf(where);
  else {
    store.panel.value = null;
    store.turn.value = 'finger';
  }
  focusNext(elementId(where));
}

/** Whether a field of motion stands in turn 1, since the active motion does and what a rule asks for. */
export function isInTurn(store: Store, where: string): boolean {
  return where.startsWith('motion.active.') || store.needed.peek().includes(where);
}

/** The part of a visit that asks for a field. */
function visitPartOf(where: string): VisitPart {
  const [, id = ''] = where.split('.');
  if (['pain', 'date', 'crpsSigns'].includes(id)) return 'pain';
  if (HARM_ENTRIES.some((entry) => entry === id)) return 'harm';
  return ['lacks', 'bends', 'repeated', 'passiveLacks', 'passiveBends'].includes(id) ? 'motion' : 'wear';
}

export type GridRow = DigitFieldId | WebFieldId;

/**
 * Rows of the grid, from the tables of measures, in the order of the instruments: caliper, tape, ruler in the palm; then the hand is turned once for the
 * backs. What lies between the fingers comes last.
 */
export const GRID_ROWS = [...Object.keys(DIGIT_FIELDS), ...Object.keys(WEB_FIELDS)] as readonly GridRow[];

/** The row that a field of the grid stands in; null for a field that is elsewhere. */
export function gridRowOf(where: string): GridRow | null {
  const [first = '', , id = ''] = where.split('.');
  return GRID_ROWS.find((row) => row === (first === 'digits' ? id : first)) ?? null;
}
