import { useComputed } from '@preact/signals';
import { DIGITS } from '../../../hand/digits.ts';
import { capital } from '../../../words/hand-words.ts';
import { halfMotionWords } from '../../looks.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field, shownFault } from '../../parts/field.tsx';
import { focusNext } from '../../parts/focus.ts';
import { MotionPicture } from '../../parts/motion-picture.tsx';
import { PanelButton } from '../../parts/panel.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { TextInput } from '../../parts/text-input.tsx';
import { Heading } from '../../parts/turn-heading.tsx';
import type { Store } from '../../store.ts';
import { elementId, fieldName } from '../../translate-messages.ts';
import { neutralZero, readAngle } from '../../typed-motion.ts';
import { saidOfFinger } from '../more/more-panel.tsx';
import { StopQuestion } from '../stop/stop-panel.tsx';
import { Suggestions } from '../suggestions/suggestions.tsx';

/** Turn 1: which finger, what its PIP joint cannot do, the stop signs, and what follows. */
export function FingerSection() {
  const store = useStore();
  const texts = store.texts.value;
  const { target, side } = store.entries.value;
  return (
    <section
      class={store.needed.value.length > 1 ? 'turn finger-turn asks' : 'turn finger-turn'}
      id="finger"
      aria-labelledby="finger-heading"
    >
      <Heading number={1} id="finger-heading" text={texts.finger.heading} />
      <Choice
        where="target.digit"
        legend={texts.finger.target}
        legendHidden
        value={target}
        choices={DIGITS.map((digit) => ({ value: digit, label: texts.hand.button[digit] }))}
        onChoose={(value) =>
          // That no sign stands was said of the finger before; a sign that stands goes on standing.
          store.enter({ where: 'target.digit', value: texts.hand.finger[value] }, ({ target: before, stop }) => ({
            target: value,
            ...(before !== '' && before !== value && stop === 'none' ? { stop: '' as const } : {}),
          }))
        }
      />
      <Choice
        where="side"
        legend={texts.finger.side}
        legendHidden
        value={side}
        choices={(['left', 'right'] as const).map((value) => ({ value, label: capital(texts.hand.handOf[value]) }))}
        onChoose={(value) => store.enter({ where: 'side', value: texts.hand.side[value] }, () => ({ side: value }))}
      />
      <Motion />
      <StopQuestion />
      {stands(store) === 'after the stop signs' ? <NeededAfterSigns /> : null}
      <MoreButton />
      <Suggestions />
    </section>
  );
}

const ACTIVE = ['motion.active.lacks', 'motion.active.bends'] as const;

/**
 * Two labelled numbers, shown back in neutral-zero notation, and what a rule needs besides: one number beside them, more of them in rows under them. How
 * to measure, or what is wrong, stands in one line below.
 */
function Motion() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.finger;
  const { active } = store.entries.value.motion;
  const [lacks, bends] = [readAngle(active.lacks), readAngle(active.bends)];
  const shown = neutralZero(active);
  const needed = store.needed.value;
  const place = stands(store);
  const isHere = place !== 'after the stop signs';
  const fault = useComputed(() => [...ACTIVE, ...(isHere ? needed : [])].map((where) => shownFault(store, where)).find(Boolean)).value;
  const half = halfMotionWords(store.entries.value, texts) ?? words.how;
  const beside = place === 'beside' ? (needed[0] ?? null) : null;
  return (
    <fieldset class="plain motion">
      <legend>{words.pip}</legend>
      <div class="motion-row">
        {ACTIVE.map((where) => (
          <MotionField key={where} where={where} label={where.endsWith('lacks') ? words.lacks : words.bends} />
        ))}
        {beside === null ? (
          <span class="neutral">{shown ?? '0-…-…'}</span>
        ) : (
          <MotionField where={beside} label={beside.endsWith('lacks') ? words.passive.lacks : words.passive.bends} />
        )}
        {place === 'in rows' ? <NeededRows line="motion-line" /> : null}
      </div>
      <p class={fault ? 'line error' : 'line hint'} id="motion-line">
        {fault ? <Spoken sentence={fault.sentence} /> : shown ? words.shownBack(shown) : half}
      </p>
      <MotionPicture
        lacks={lacks.kind === 'degrees' ? lacks.degrees : 0}
        bends={bends.kind === 'degrees' ? bends.degrees : 100}
        title={words.picture(shown ?? '0-…-…')}
      />
    </fieldset>
  );
}

function MotionField({ where, label }: { readonly where: string; readonly label: string }) {
  const store = useStore();
  return <Field where={where} label={label} errorId="motion-line" longest={20} onEnter={() => afterMotion(store, where)} />;
}

/**
 * Where what a rule needs besides the active motion is asked for: one number beside it, more of them in rows under it. On a narrow screen rows would push the
 * stop signs out of sight, and come after them.
 */
function stands({ needed, narrow }: Store): 'beside' | 'in rows' | 'after the stop signs' {
  if (needed.value.length < 2) return 'beside';
  return narrow.value ? 'after the stop signs' : 'in rows';
}

/** On a narrow screen the rows have the labels of their columns again, and a line of their own for what is wrong. */
function NeededAfterSigns() {
  const store = useStore();
  const words = store.texts.value.finger;
  const fault = useComputed(() => store.needed.value.map((where) => shownFault(store, where)).find(Boolean)).value;
  return (
    <div class="plain motion">
      <div class="motion-row">
        {(['lacks', 'bends'] as const).map((end) => (
          <span class="hint" key={end} aria-hidden="true">
            {words[end]}
          </span>
        ))}
        <span />
        <NeededRows line="needed-line" />
      </div>
      <p class="line error" id="needed-line">
        {fault ? <Spoken sentence={fault.sentence} /> : null}
      </p>
    </div>
  );
}

function NeededRows({ line }: { readonly line: string }) {
  const { needed } = useStore();
  return (
    <>
      {(['passive', 'mpPassive'] as const)
        .filter((id) => needed.value.some((where) => where.startsWith(`motion.${id}.`)))
        .map((id) => (
          <NeededRow key={id} id={id} line={line} />
        ))}
    </>
  );
}

/** Both ends of a motion under those of the active one, whose labels stand over them; what it is stands behind them. */
function NeededRow({ id, line }: { readonly id: 'passive' | 'mpPassive'; readonly line: string }) {
  const store = useStore();
  const texts = store.texts.value;
  const cell = (end: 'lacks' | 'bends') => {
    const where = `motion.${id}.${end}`;
    if (!store.needed.value.includes(where)) return <span />;
    return (
      <TextInput
        where={where}
        label={fieldName(where, texts)}
        describedBy={line}
        longest={20}
        wrong={shownFault(store, where) !== undefined}
        onEnter={() => afterMotion(store, where)}
      />
    );
  };
  return (
    <>
      {cell('lacks')}
      {cell('bends')}
      <span class="row-of">{texts.finger.row[id]}</span>
    </>
  );
}

/** Enter goes on through what is asked of motion and the stop signs, in the order in which they stand, then to the suggestions. */
function afterMotion(store: Store, where: string): void {
  const signs = store.entries.peek().stop === '' ? ['stop'] : [];
  const needed = store.needed.peek();
  const places = stands(store) === 'after the stop signs' ? [...ACTIVE, ...signs, ...needed] : [...ACTIVE, ...needed, ...signs];
  const next = places[places.indexOf(where) + 1];
  focusNext(next === undefined ? 'suggestions-heading' : next === 'stop' ? 'stop-none' : elementId(next));
}

function MoreButton() {
  const store = useStore();
  const texts = store.texts.value;
  const count = saidOfFinger(store);
  return (
    <PanelButton name="more" class="wide">
      {count === 0 ? texts.more.nothing : texts.more.said(count)}
    </PanelButton>
  );
}
