import { useComputed } from '@preact/signals';
import type { DigitName, WebName } from '../../../hand/digits.ts';
import { type DigitFieldId, PALM_FIELDS } from '../../../hand/fields.ts';
import { Choice } from '../../parts/choice.tsx';
import { focusNext, GRID_ROWS, type GridRow, gridRowOf } from '../../parts/focus.ts';
import { columnsFor } from '../../parts/hand-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import { TextInput } from '../../parts/text-input.tsx';
import { ROUND_NOTATIONS, type RoundNotation, typedAt } from '../../state.ts';
import type { Store } from '../../store.ts';
import type { Texts } from '../../texts/english.ts';
import { elementId, fieldName, measured } from '../../translate-messages.ts';
import { DrawnHandPicture } from './drawn-hand.tsx';
import { ASKED_ROWS, isShown, lengthAt, ON_THE_BACK, placesIn, rowsOf, setbackOf } from './grid-places.ts';

/** The drawn fingers and under each its column of fields, between the columns the webs; under them how to go on and whose hand it is. */
export function FingerGrid() {
  const store = useStore();
  const texts = store.texts.value;
  const side = store.entries.value.side || 'left';
  const columns = columnsFor(side);
  const target = store.entries.value.target;
  const rows = rowsOf(store);
  const current = currentRow(store, rows);
  return (
    <>
      <DrawnHandPicture shown="fingers" />
      <table class="grid">
        <caption class="hidden">{texts.measure.heading}</caption>
        <thead>
          <tr>
            <td>
              <NextPlace />
            </td>
            {columns.map((digit) => (
              <th scope="col" key={digit} class={digit === target ? 'treated' : undefined}>
                {texts.hand.button[digit]}
                <DigitNumber digit={digit} />
                {digit === target ? <span class="hidden"> ({texts.measure.treated})</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row} class={`row-${row}${row === current ? ' current' : ''}`}>
              <th scope="row">
                <span class="row-name">{rowName(row, texts)}</span>
                {row === 'circumference' ? <RoundNotationChoice /> : <span class="tool">{texts.measure.tool[row]}</span>}
              </th>
              {row === 'webSetback' ? (
                <td colSpan={columns.length}>
                  <div class="webs">
                    {placesIn(row, columns).map((where) => (
                      <Cell key={where} where={where} name={fieldName(where, texts)} />
                    ))}
                  </div>
                </td>
              ) : (
                columns.map((digit) => (
                  <td key={digit} class={digit === target ? 'treated' : undefined}>
                    <Cell where={`digits.${digit}.${row}`} name={`${texts.hand.first[digit]}: ${rowName(row, texts)}`} />
                  </td>
                ))
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <RowButtons />
      <WhoseHand />
    </>
  );
}

/** On touch a keypad of digits has no Enter: beside the fields, above the keyboard, a button goes on as Enter does. */
export function NextPlace() {
  const store = useStore();
  return (
    <button
      type="button"
      class="next-place"
      id="next-place"
      // The field keeps the focus until the next one has it, so that the keyboard stays.
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => toNextEntry(store, store.focus.peek())}
    >
      {store.texts.value.measure.nextPlace}
    </button>
  );
}

function rowName(row: GridRow, texts: Texts): string {
  return row === 'webSetback' ? texts.measure.websRow : measured(row, texts);
}

/** The row that is shown on a narrow screen. */
function currentRow({ row }: Store, rows: readonly GridRow[]): GridRow {
  const wanted = GRID_ROWS[row.value];
  return rows.find((id) => id === wanted) ?? 'width';
}

/** How Enter goes on, and whose hand what is not measured is estimated for: nothing is for a child. */
function WhoseHand() {
  const store = useStore();
  const words = store.texts.value.measure;
  const { sizeGroup } = store.entries.value;
  return (
    <div class="whose">
      <p class="hint">
        <span class="enter-hint">{words.enter} </span>
        {words.estimates[sizeGroup]}
      </p>
      <Choice
        where="sizeGroup"
        legend={words.whose}
        legendHidden
        value={sizeGroup}
        choices={(['adult', 'child'] as const).map((value) => ({ value, label: words.group[value] }))}
        onChoose={(value) => store.enter({ where: 'sizeGroup', value: words.group[value] }, () => ({ sizeGroup: value }))}
      />
    </div>
  );
}

/** The finger's number, where pictures and sentences name it by that: D4. */
function DigitNumber({ digit }: { readonly digit: DigitName }) {
  const { short } = useStore().texts.value.hand;
  return /\d/.test(short[digit]) ? <span class="unit"> {short[digit]}</span> : null;
}

function RoundNotationChoice() {
  const store = useStore();
  const { texts, settings } = store;
  const words = texts.value.measure;
  return (
    <select
      class="notation"
      id="round-in"
      aria-label={words.roundIn}
      value={store.entries.value.roundIn}
      onChange={(event) => {
        const roundIn = event.currentTarget.value as RoundNotation;
        store.enter({ where: 'roundIn', value: words.notation[roundIn] || texts.value[settings.value.unit] }, () => ({ roundIn }));
        store.commit();
      }}
    >
      {ROUND_NOTATIONS.map((value) => (
        <option key={value} value={value}>
          {words.notation[value] || texts.value[settings.value.unit]}
        </option>
      ))}
    </select>
  );
}

/** One place of the grid: a field with its estimate as placeholder; where a finger is not needed there is none until it was measured. */
function Cell({ where, name }: { readonly where: string; readonly name: string }) {
  const store = useStore();
  const { texts, format, settings } = store;
  const text = useComputed(() => typedAt(store.entries.value, where)).value;
  const placeholder = useComputed(() => placeholderOf(store, where)).value;
  const back = useComputed(() => {
    const parsed = lengthAt(store, where);
    return parsed?.ok && parsed.notation !== 'number' ? texts.value.measure.understood(format.value.length(parsed.mm)) : null;
  }).value;
  const wrong = useComputed(
    () => (store.checked.value || store.left.value.includes(where)) && store.faults.value.some((f) => f.field === where),
  ).value;
  const shown = useComputed(() => isShown(store, where)).value;
  if (!shown) return <span class="not-used">{texts.value.measure.notUsed}</span>;
  return (
    <span class={wrong ? 'cell wrong' : text === '' ? 'cell empty' : 'cell'}>
      <TextInput
        where={where}
        label={`${name}, ${texts.value[settings.value.unit]}`}
        describedBy={back ? `how-line ${elementId(where)}-back` : 'how-line'}
        placeholder={placeholder}
        numeric={settings.value.unit !== 'in'}
        wrong={wrong}
        onEnter={() => toNextEntry(store, where)}
      />
      {back ? (
        <span class="back" id={`${elementId(where)}-back`}>
          {back}
        </span>
      ) : null}
    </span>
  );
}

/** "≈ 25": what stands in for a length that is not measured; of a child nothing does. */
function placeholderOf(store: Store, where: string): string | undefined {
  const { pictured } = store.derived.value;
  if (store.entries.value.sizeGroup === 'child' || pictured === null) return undefined;
  const [first, at, id] = where.split('.') as [string, DigitName & WebName, DigitFieldId];
  const value = first === 'webSetback' ? setbackOf(pictured, at) : pictured.digits[at]?.[id];
  if (value === undefined) return undefined;
  const shown = store.format.value.length(value).split(' ')[0] ?? '';
  return `≈ ${store.settings.value.unit === 'mm' ? store.format.value.number(value, 0) : shown}`;
}

/** Enter goes on, row by row through what is asked for, or through the palm's measures; from the last field to Print. */
export function toNextEntry(store: Store, where: string): void {
  if (store.middle.peek() === 'palm') {
    const next = PALM_PLACES[PALM_PLACES.indexOf(where) + 1];
    if (next === undefined) goToPrint(store);
    else focusNext(elementId(next));
    return;
  }
  const columns = columnsFor(store.entries.peek().side || 'left');
  const places = rowsOf(store)
    .flatMap((row) => placesIn(row, columns))
    .filter((place) => isShown(store, place));
  const next = places[places.indexOf(where) + 1];
  const row = next === undefined ? null : gridRowOf(next);
  const isLastAsked = gridRowOf(where) === ASKED_ROWS.at(-1) && row !== gridRowOf(where);
  // What a print cannot be without is asked for in any row.
  const isNeeded = next !== undefined && store.derived.peek().missing.includes(next);
  if (next === undefined || row === null || (isLastAsked && !isNeeded)) {
    goToPrint(store);
    return;
  }
  goToRow(store, row, next);
}

const PALM_PLACES: readonly string[] = Object.keys(PALM_FIELDS);

function goToPrint(store: Store): void {
  store.turn.value = 'make';
  // On a narrow screen Print stands in the bar, which is in sight already.
  focusNext(store.narrow.peek() ? 'bar-print' : 'print');
}

/** Shows a row on a narrow screen, turns the hand for it, and goes to a field of it. */
function goToRow(store: Store, row: GridRow, where: string | undefined): void {
  store.row.value = GRID_ROWS.indexOf(row);
  store.aspect.value = ON_THE_BACK.includes(row) ? 'back' : 'palm';
  if (where !== undefined) focusNext(elementId(where));
}

/** On a narrow screen one row at a time, with buttons to the next, since a keypad of digits has no Enter. */
function RowButtons() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.measure;
  const rows = rowsOf(store);
  const at = rows.indexOf(currentRow(store, rows));
  const next = rows[at + 1];
  const go = (row: GridRow | undefined) => {
    const columns = columnsFor(store.entries.peek().side || 'left');
    if (row)
      goToRow(
        store,
        row,
        placesIn(row, columns).find((where) => isShown(store, where)),
      );
  };
  return (
    <div class="row-buttons">
      <span class="unit">{words.rowOf(at + 1, rows.length)}</span>
      <button type="button" id="row-back" disabled={at === 0} onClick={() => go(rows[at - 1])}>
        {words.back}
      </button>
      <button
        type="button"
        id="row-next"
        class="main"
        onClick={() => {
          if (next) go(next);
          else {
            store.turn.value = 'make';
            focusNext('make-heading');
          }
        }}
      >
        {next ? words.next(rowName(next, texts)) : words.toPrint}
      </button>
    </div>
  );
}
