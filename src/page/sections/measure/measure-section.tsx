import { useComputed } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { WebName } from '../../../hand/digits.ts';
import { PALM_FIELDS, type PalmFieldId } from '../../../hand/fields.ts';
import { capital } from '../../../words/hand-words.ts';
import { wantsPlate } from '../../derive-plate.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { gridRowOf } from '../../parts/focus.ts';
import { Mend } from '../../parts/mend.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { Heading } from '../../parts/turn-heading.tsx';
import type { Store } from '../../store.ts';
import { DrawnHandPicture, placeOf } from './drawn-hand.tsx';
import { FingerGrid, NextPlace, toNextEntry } from './finger-grid.tsx';
import { lengthAt, ON_THE_BACK, setbackOf } from './grid-places.ts';

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
        if (placeOf(where)) store.aspect.value = ON_THE_BACK.includes(gridRowOf(where) ?? where) ? 'back' : 'palm';
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
  const id = gridRowOf(where) ?? (where as PalmFieldId);
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
  const texts = store.texts.value;
  const format = store.format.value;
  const parsed = lengthAt(store, where);
  if (parsed?.ok && parsed.notation !== 'number') {
    const ring = parsed.notation.startsWith('ring') ? ` (${texts.measure.ring})` : '';
    return `${texts.measure.understood(`${format.length(parsed.mm)}${ring}`)} `;
  }
  const { hand } = store.derived.value;
  const [first, web] = where.split('.');
  const estimate =
    parsed !== null || !hand.ok
      ? undefined
      : first === 'webSetback'
        ? setbackOf(hand.value, web as WebName)
        : hand.value.estimated.find((e) => e.where === where)?.mm;
  return estimate === undefined ? null : `${texts.measure.estimated(format.mm(estimate, 0))} `;
}

function PalmFields() {
  const store = useStore();
  const texts = store.texts.value;
  const unit = texts[store.settings.value.unit];
  return (
    <div class="palm">
      <div class="palm-head">
        <p class="hint">{store.entries.value.sizeGroup === 'child' ? texts.measure.palmAboutChild : texts.measure.palmAbout}</p>
        <NextPlace />
      </div>
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
            onEnter={() => toNextEntry(store, id)}
          />
        ))}
      </div>
    </div>
  );
}
