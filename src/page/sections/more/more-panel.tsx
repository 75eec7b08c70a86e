import { DIGITS, WEBS } from '../../../hand/digits.ts';
import { LONGEST_NOTE } from '../../../hand/hand-schema.ts';
import { Choice, Tick } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { columnsFor } from '../../parts/hand-picture.tsx';
import { Panel } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { type Entries, MOTION_IDS } from '../../state.ts';
import { webName } from '../../translate-messages.ts';
import { neutralZero } from '../../typed-motion.ts';
import { DrawnHandPicture } from '../measure/drawn-hand.tsx';

const FLAGS = ['swelling', 'sensation', 'hardEndFeel', 'unprotectedRepair'] as const;
const OTHERS = MOTION_IDS.filter((id) => id !== 'active');

/** How many things of the panel were said. */
export function saidOfFinger({ motion, diagnosis, weeks, flags, hypermobile, sizeGroup, webs, digits }: Entries): number {
  const motions = OTHERS.filter((id) => motion[id].lacks.trim() !== '' || motion[id].bends.trim() !== '').length;
  const roots = DIGITS.map((digit) => digits[digit].rootCircumference);
  const words = [diagnosis, weeks, ...Object.values(webs), ...roots].filter((text) => text.trim() !== '').length;
  const marks = FLAGS.filter((flag) => flags[flag]).length + hypermobile.length;
  return motions + words + marks + (sizeGroup === 'adult' ? 0 : 1);
}

/** What makes the advice more certain and is not needed: passive motion, the other hand, MP, diagnosis, weeks, cautions, size group. */
export function MorePanel() {
  const store = useStore();
  const texts = store.texts.value;
  const { flags, hypermobile, sizeGroup, motion } = store.entries.value;
  return (
    <Panel name="more" heading={texts.more.heading}>
      <p class="hint">{texts.more.about}</p>
      {OTHERS.map((id) => (
        <fieldset class="plain motion" key={id}>
          <legend>{texts.finger.motion[id]}</legend>
          <div class="motion-row">
            <Field where={`motion.${id}.lacks`} label={texts.finger.lacks} longest={20} />
            <Field where={`motion.${id}.bends`} label={texts.finger.bends} longest={20} />
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
      <LieFields />
      <Field where="diagnosis" label={texts.more.diagnosis} hint={texts.more.diagnosisHint} longest={LONGEST_NOTE} optional />
      <Field where="weeks" label={texts.more.weeks} numeric optional longest={6} />
      <Choice
        where="sizeGroup"
        legend={texts.measure.averageFor}
        value={sizeGroup}
        choices={(['adult', 'child'] as const).map((value) => ({ value, label: texts.measure.group[value] }))}
        onChoose={(value) => store.enter({ where: 'sizeGroup', value: texts.measure.group[value] }, () => ({ sizeGroup: value }))}
      />
    </Panel>
  );
}

/** Measures that make the strip follow the hand: how far each web lies back, and how round each finger is at its root. */
function LieFields() {
  const store = useStore();
  const texts = store.texts.value;
  const { side, roundIn } = store.entries.value;
  const { asked } = store.derived.value;
  const unit = texts[store.settings.value.unit];
  const numeric = store.settings.value.unit !== 'in';
  return (
    <fieldset class="plain">
      <legend>{texts.more.lie}</legend>
      <p class="hint">{texts.more.lieAbout}</p>
      <DrawnHandPicture shown="fingers" />
      <p class="hint">{texts.how.webSetback}</p>
      <div class="pair">
        {WEBS.map((web) => (
          <Field key={web} where={`webSetback.${web}`} label={webName(web, texts)} unit={unit} numeric={numeric} optional longest={20} />
        ))}
      </div>
      <p class="hint">{texts.how.rootCircumference}</p>
      <div class="pair">
        {columnsFor(side || 'left')
          .filter((digit) => asked.includes(digit))
          .map((digit) => (
            <Field
              key={digit}
              where={`digits.${digit}.rootCircumference`}
              label={`${texts.hand.first[digit]}: ${texts.hand.measure.rootCircumference}`}
              unit={texts.measure.notation[roundIn] || unit}
              numeric={numeric}
              optional
              longest={20}
            />
          ))}
      </div>
    </fieldset>
  );
}
