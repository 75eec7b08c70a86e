import { DIGITS } from '../../../hand/digits.ts';
import { capital } from '../../../words/hand-words.ts';
import { halfMotionWords } from '../../looks.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field, useFault } from '../../parts/field.tsx';
import { focusNext } from '../../parts/focus.ts';
import { MotionPicture } from '../../parts/motion-picture.tsx';
import { PanelButton } from '../../parts/panel.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { Heading } from '../../parts/turn-heading.tsx';
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
    <section class="turn finger-turn" id="finger" aria-labelledby="finger-heading">
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
      <MoreButton />
      <Suggestions />
    </section>
  );
}

/** Two labelled numbers, shown back in neutral-zero notation; how to measure, or what is wrong, stands in one line under them. */
function Motion() {
  const store = useStore();
  const texts = store.texts.value;
  const { active } = store.entries.value.motion;
  const [lacks, bends] = [readAngle(active.lacks), readAngle(active.bends)];
  const shown = neutralZero(active);
  const faultA = useFault('motion.active.lacks');
  const faultB = useFault('motion.active.bends');
  const fault = faultA ?? faultB;
  const half = halfMotionWords(store.entries.value, texts) ?? texts.finger.how;
  return (
    <fieldset class="plain motion">
      <legend>{texts.finger.pip}</legend>
      <div class="motion-row">
        <Field
          where="motion.active.lacks"
          label={texts.finger.lacks}
          errorId="motion-line"
          longest={20}
          onEnter={() => focusNext('field-motion-active-bends')}
        />
        <Field
          where="motion.active.bends"
          label={texts.finger.bends}
          errorId="motion-line"
          longest={20}
          onEnter={() => focusNext(store.entries.peek().stop === '' ? 'stop-none' : 'suggestions-heading')}
        />
        <span class="neutral">{shown ?? '0-…-…'}</span>
      </div>
      <p class={fault ? 'line error' : 'line hint'} id="motion-line">
        {fault ? <Spoken sentence={fault.sentence} /> : shown ? texts.finger.shownBack(shown) : half}
      </p>
      <MotionPicture
        lacks={lacks.kind === 'degrees' ? lacks.degrees : 0}
        bends={bends.kind === 'degrees' ? bends.degrees : 100}
        title={texts.finger.picture(shown ?? '0-…-…')}
      />
    </fieldset>
  );
}

function MoreButton() {
  const store = useStore();
  const texts = store.texts.value;
  const count = saidOfFinger(store.entries.value);
  return (
    <PanelButton name="more" class="wide">
      {count === 0 ? texts.more.nothing : texts.more.said(count)}
    </PanelButton>
  );
}
