import { useComputed } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { DigitName } from '../../../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS, type PalmFieldId } from '../../../hand/fields.ts';
import { capital } from '../../../words/hand-words.ts';
import { wantsPlate } from '../../derive-plate.ts';
import { lengthOf } from '../../hand-file.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { focusNext, GRID_ROWS, type GridRow } from '../../parts/focus.ts';
import { columnsFor } from '../../parts/hand-picture.tsx';
import { Mend } from '../../parts/mend.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { TextInput } from '../../parts/text-input.tsx';
import { Heading } from '../../parts/turn-heading.tsx';
import { ROUND_NOTATIONS, type RoundNotation } from '../../state.ts';
import type { Store } from '../../store.ts';
import { elementId, measured } from '../../translate-messages.ts';
import { DrawnHandPicture, placeOf } from './drawn-hand.tsx';

/** Rows whose measures are taken on the back of the hand. */
const ON_THE_BACK: readonly string[] = ['dorsalLength', 'mpSetback', ...Object.keys(PALM_FIELDS)];
/** Rows that Enter goes through; the others are optional. */
const ASKED_ROWS = GRID_ROWS.filter((id) => 'needed' in DIGIT_FIELDS[id]);

/** Turn 2: the drawn fingers and under each its column of fields; what the suggestion does not need is not asked. */
export function MeasureSection() {
  const store = useStore();
  const texts = store.texts.value;
  // By what is planned, not by what is drawn: half a number typed into the palm draws nothing, and its field must not go away.
  const isPlate = useComputed(() => store.entries.value.stop !== 'some' && wantsPlate(store.entries.value, store.derived.value.plan)).value;
  const middle = isPlate ? store.middle.value : 'fingers';
  // The hand turns by itself when the focus goes to a measure of the back, once for all fingers.
  useEffect(
    () =>
      store.focus.subscribe((where) => {
        const id = where.split('.').at(-1) ?? '';
        if (placeOf(where)) store.aspect.value = ON_THE_BACK.includes(id) ? 'back' : 'palm';
      }),
    [],
  );
  const side = store.entries.value.side || 'left';
  const view = store.aspect.value === 'palm' ? texts.measure.palmUp : texts.measure.backUp;
  return (
    <section class="turn measure-turn" id="measure" aria-labelledby="measure-heading">
      <div class="heading-row">
        <Heading number={2} id="measure-heading" text={texts.measure.heading} />
        <p class="unit">{texts.measure.hand(capital(texts.hand.handOf[side]), view)}</p>
      </div>
      {isPlate ? (
        <Choice
          where="middle"
          legend={texts.measure.heading}
          legendHidden
          value={middle}
          choices={(['fingers', 'palm'] as const).map((value) => ({ value, label: texts.measure[value] }))}
          onChoose={(value) => (store.middle.value = value)}
        />
      ) : null}
      <HowLine />
      {middle === 'palm' ? <PalmFields /> : <FingerGrid />}
    </section>
  );
}

/** One sentence how to measure the place of the focus; an error stands in its stead, with its mend. */
function HowLine() {
  const store = useStore();
  const texts = store.texts.value;
  const where = store.focus.value;
  const shown = store.faults.value.filter((f) => placeOf(f.field) !== null && (store.checked.value || store.left.value.includes(f.field)));
  const fault = shown.find((f) => f.field === where) ?? shown[0];
  if (fault)
    return (
      <div class="line how error" id="how-line" role="alert">
        <Spoken sentence={fault.sentence} /> <Mend fault={fault} />
      </div>
    );
  const id = where.split('.').at(-1) as DigitFieldId | PalmFieldId;
  const how = Object.hasOwn(texts.how, id) ? texts.how[id] : texts.measure.begin;
  return (
    <p class="line how" id="how-line">
      {understood(store, where) ?? ''}
      {how}
    </p>
  );
}

/** What a typed length was taken for where that is not plain, or what stands in for one that was not measured. */
function understood(store: Store, where: string): string | null {
  const [first, digit, id] = where.split('.') as [string, DigitName, DigitFieldId];
  if (first !== 'digits') return null;
  const texts = store.texts.value;
  const format = store.format.value;
  const parsed = lengthOf(store.entries.value, digit, id, store.settings.value.unit);
  if (parsed?.ok && parsed.notation !== 'number') {
    const ring = parsed.notation.startsWith('ring') ? ` (${texts.measure.ring})` : '';
    return `${texts.measure.understood(`${format.length(parsed.mm)}${ring}`)} `;
  }
  const { hand } = store.derived.value;
  const estimate = parsed === null && hand.ok ? hand.value.estimated.find((e) => e.where === where) : undefined;
  return estimate ? `${texts.measure.estimated(format.mm(estimate.mm, 0))} ` : null;
}

function FingerGrid() {
  const store = useStore();
  const texts = store.texts.value;
  const asked = useComputed(() => store.derived.value.asked).value;
  const side = store.entries.value.side || 'left';
  const columns = columnsFor(side);
  const target = store.entries.value.target;
  const row = store.row.value;
  return (
    <>
      <DrawnHandPicture shown="fingers" />
      <table class="grid">
        <caption class="hidden">{texts.measure.heading}</caption>
        <thead>
          <tr>
            <td />
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
          {GRID_ROWS.map((id, k) => (
            <tr key={id} class={`row-${id}${k === row ? ' current' : ''}`}>
              <th scope="row">
                <span class="row-name">{measured(id, texts)}</span>
                {id === 'circumference' ? <RoundNotationChoice /> : <span class="tool">{texts.measure.tool[id]}</span>}
              </th>
              {columns.map((digit) => (
                <td key={digit} class={digit === target ? 'treated' : undefined}>
                  <Cell digit={digit} id={id} asked={asked.includes(digit)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <RowButtons />
      <p class="hint enter-hint">{store.entries.value.sizeGroup === 'child' ? texts.measure.enterChild : texts.measure.enter}</p>
    </>
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

/** One place of the grid: a field with its estimate as placeholder; a finger that is not needed has none until it was measured. */
function Cell({ digit, id, asked }: { readonly digit: DigitName; readonly id: GridRow; readonly asked: boolean }) {
  const store = useStore();
  const where = `digits.${digit}.${id}`;
  const { texts, format, settings } = store;
  const text = useComputed(() => store.entries.value.digits[digit][id]).value;
  const placeholder = useComputed(() => placeholderOf(store, digit, id)).value;
  const back = useComputed(() => {
    const parsed = lengthOf(store.entries.value, digit, id, settings.value.unit);
    return parsed?.ok && parsed.notation !== 'number' ? texts.value.measure.understood(format.value.length(parsed.mm)) : null;
  }).value;
  const wrong = useComputed(
    () => (store.checked.value || store.left.value.includes(where)) && store.faults.value.some((f) => f.field === where),
  ).value;
  const isNeeded = useComputed(() => store.derived.value.missing.includes(where)).value;
  if (!asked && !isNeeded && text.trim() === '') return <span class="not-used">{texts.value.measure.notUsed}</span>;
  const name = `${texts.value.hand.first[digit]}: ${measured(id, texts.value)}, ${texts.value[settings.value.unit]}`;
  return (
    <span class={wrong ? 'cell wrong' : text === '' ? 'cell empty' : 'cell'}>
      <TextInput
        where={where}
        label={name}
        describedBy={back ? `how-line ${elementId(where)}-back` : 'how-line'}
        placeholder={placeholder}
        numeric={settings.value.unit !== 'in'}
        wrong={wrong}
        onEnter={() => toNextEntry(store, digit, id)}
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
function placeholderOf(store: Store, digit: DigitName, id: DigitFieldId): string | undefined {
  if (store.entries.value.sizeGroup === 'child') return undefined;
  const { pictured } = store.derived.value;
  const value = pictured?.digits[digit]?.[id];
  if (value === undefined) return undefined;
  const shown = store.format.value.length(value).split(' ')[0] ?? '';
  return `≈ ${store.settings.value.unit === 'mm' ? store.format.value.number(value, 0) : shown}`;
}

/** Enter goes on, row by row through what is asked for; from the last field to Print. */
function toNextEntry(store: Store, digit: DigitName, id: DigitFieldId): void {
  const { asked } = store.derived.peek();
  const { side } = store.entries.peek();
  const places = GRID_ROWS.flatMap((row) =>
    columnsFor(side || 'left')
      .filter((d) => asked.includes(d))
      .map((d) => ({ d, row })),
  );
  const at = places.findIndex((p) => p.d === digit && p.row === id);
  const next = places[at + 1];
  const isLastAsked = id === ASKED_ROWS.at(-1) && next?.row !== id;
  if (next === undefined || isLastAsked) {
    store.turn.value = 'make';
    // On a narrow screen Print stands in the bar, which is in sight already.
    focusNext(store.narrow.peek() ? 'bar-print' : 'print');
    return;
  }
  if (ON_THE_BACK.includes(next.row)) store.aspect.value = 'back';
  store.row.value = GRID_ROWS.indexOf(next.row);
  focusNext(elementId(`digits.${next.d}.${next.row}`));
}

/** On a narrow screen one row at a time, with buttons to the next, since a keypad of digits has no Enter. */
function RowButtons() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.measure;
  const row = store.row.value;
  const next = GRID_ROWS[row + 1];
  const go = (to: number) => {
    store.row.value = to;
    const id = GRID_ROWS[to] ?? 'width';
    store.aspect.value = ON_THE_BACK.includes(id) ? 'back' : 'palm';
    const { asked } = store.derived.peek();
    const first = columnsFor(store.entries.peek().side || 'left').find((d) => asked.includes(d));
    if (first) focusNext(elementId(`digits.${first}.${id}`));
  };
  return (
    <div class="row-buttons">
      <span class="unit">{words.rowOf(row + 1, GRID_ROWS.length)}</span>
      <button type="button" id="row-back" disabled={row === 0} onClick={() => go(row - 1)}>
        {words.back}
      </button>
      <button
        type="button"
        id="row-next"
        class="main"
        onClick={() => {
          if (next) go(row + 1);
          else {
            store.turn.value = 'make';
            focusNext('make-heading');
          }
        }}
      >
        {next ? words.next(measured(next, texts)) : words.toPrint}
      </button>
    </div>
  );
}

function PalmFields() {
  const store = useStore();
  const texts = store.texts.value;
  const unit = texts[store.settings.value.unit];
  return (
    <div class="palm">
      <p class="hint">{store.entries.value.sizeGroup === 'child' ? texts.measure.palmAboutChild : texts.measure.palmAbout}</p>
      <DrawnHandPicture shown="hand" />
      <div class="pair">
        {(Object.keys(PALM_FIELDS) as PalmFieldId[]).map((id) => (
          <Field
            key={id}
            where={id}
            label={capital(texts.hand.measure[id])}
            unit={unit}
            errorId="how-line"
            numeric={store.settings.value.unit !== 'in'}
            optional
          />
        ))}
      </div>
    </div>
  );
}
