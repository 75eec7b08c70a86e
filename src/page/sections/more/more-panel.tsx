import { DIGITS } from '../../../hand/digits.ts';
import { LONGEST_NOTE } from '../../../hand/hand-schema.ts';
import { Tick } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { Panel } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { MOTION_IDS, type MotionId } from '../../state.ts';
import type { Store } from '../../store.ts';
import { neutralZero } from '../../typed-motion.ts';

const FLAGS = ['swelling', 'sensation', 'hardEndFeel', 'unprotectedRepair'] as const;
const OTHERS = MOTION_IDS.filter((id) => id !== 'active');

/** The ends of a motion that the panel asks for: those that a rule needs stand in turn 1. */
function endsHere({ needed }: Store, id: MotionId): readonly ('lacks' | 'bends')[] {
  return (['lacks', 'bends'] as const).filter((end) => !needed.value.includes(`motion.${id}.${end}`));
}

/** How many things of the panel were said. */
export function saidOfFinger(store: Store): number {
  const { motion, diagnosis, weeks, flags, hypermobile } = store.entries.value;
  const motions = OTHERS.filter((id) => endsHere(store, id).some((end) => motion[id][end].trim() !== '')).length;
  const words = [diagnosis, weeks].filter((text) => text.trim() !== '').length;
  const marks = FLAGS.filter((flag) => flags[flag]).length + hypermobile.length;
  return motions + words + marks;
}

/** What makes the advice more certain and is not needed: passive motion, the other hand, MP, cautions, diagnosis, weeks. */
export function MorePanel() {
  const store = useStore();
  const texts = store.texts.value;
  const { flags, hypermobile, motion } = store.entries.value;
  return (
    <Panel name="more" heading={texts.more.heading}>
      <p class="hint">{texts.more.about}</p>
      {OTHERS.filter((id) => endsHere(store, id).length > 0).map((id) => (
        <fieldset class="plain motion" key={id}>
          <legend>{texts.finger.motion[id]}</legend>
          <div class="motion-row">
            {endsHere(store, id).map((end) => (
              <Field key={end} where={`motion.${id}.${end}`} label={texts.finger[end]} longest={20} />
            ))}
            <span class="neutral">{neutralZero(motion[id]) ?? ''}</span>
          </div>
        </fieldset>
      ))}
      <fieldset class="plain ticks" id="field-flags" tabIndex={-1}>
        <legend>{texts.more.flags}</legend>
        {FLAGS.map((flag) => (
          <Tick
            key={flag}
            where={`flags.${flag}`}
            label={texts.more.flag[flag]}
            checked={flags[flag]}
            onChange={(is) =>
              store.enter({ where: `flags.${flag}`, value: texts.more.flag[flag] }, (now) => ({ flags: { ...now.flags, [flag]: is } }))
            }
          />
        ))}
      </fieldset>
      <fieldset class="plain ticks across">
        <legend>{texts.more.hypermobile}</legend>
        {DIGITS.map((digit) => (
          <Tick
            key={digit}
            where={`hypermobile.${digit}`}
            label={texts.hand.button[digit]}
            checked={hypermobile.includes(digit)}
            onChange={(is) =>
              store.enter({ where: `hypermobile.${digit}`, value: texts.hand.finger[digit] }, (now) => ({
                hypermobile: DIGITS.filter((d) => (d === digit ? is : now.hypermobile.includes(d))),
              }))
            }
          />
        ))}
      </fieldset>
      <Field where="diagnosis" label={texts.more.diagnosis} hint={texts.more.diagnosisHint} longest={LONGEST_NOTE} optional />
      <Field where="weeks" label={texts.more.weeks} numeric optional longest={6} />
    </Panel>
  );
}
