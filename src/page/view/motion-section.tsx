import { DIGITS } from '../../hand/digits.ts';
import { TARGET_FIELDS, type TargetFieldId } from '../../hand/fields.ts';
import { Choice, Field } from './field.tsx';
import type { View } from './view.ts';

const FLAGS = ['swelling', 'sensation', 'hardEndFeel', 'unprotectedRepair'] as const;

/** The treated finger, what its PIP joint lacks, and what calls for caution. */
export function MotionSection({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  const { entries } = state;
  return (
    <section id="motion" aria-labelledby="motion-heading">
      <h2 id="motion-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          2
        </span>
        {texts.motion.heading}
      </h2>
      <p>{texts.motion.about}</p>
      <Choice
        view={view}
        where="target.digit"
        legend={texts.motion.target}
        value={entries.target}
        choices={DIGITS.map((digit) => ({ value: digit, label: texts.digit[digit] }))}
        onChoose={(target) => act.enter(() => ({ target }))}
      />
      <div class="pair">
        {(Object.keys(TARGET_FIELDS) as TargetFieldId[]).map((id) => (
          <Field
            key={id}
            view={view}
            where={`target.${id}`}
            label={texts.field[id].label}
            unit={texts.degrees}
            hint={texts.field[id].how}
            numeric
            optional={id.endsWith('Passive')}
          />
        ))}
      </div>
      <fieldset class="choice">
        <legend>{texts.motion.flags}</legend>
        {FLAGS.map((flag) => (
          <label class="pick wide" key={flag}>
            <input
              type="checkbox"
              checked={entries.flags[flag]}
              onChange={(event) => {
                const set = event.currentTarget.checked;
                act.enter((now) => ({ flags: { ...now.flags, [flag]: set } }));
              }}
            />
            <span>{texts.motion.flag[flag]}</span>
          </label>
        ))}
        {DIGITS.map((digit) => (
          <label class="pick" key={digit}>
            <input
              type="checkbox"
              checked={entries.hypermobile.includes(digit)}
              onChange={(event) => {
                const set = event.currentTarget.checked;
                act.enter(({ hypermobile }) => {
                  const others = hypermobile.filter((other) => other !== digit);
                  return { hypermobile: set ? [...others, digit] : others };
                });
              }}
            />
            <span>{texts.motion.hypermobile(texts.digit[digit])}</span>
          </label>
        ))}
      </fieldset>
      <p class="caution">{texts.caution.contraindications}</p>
    </section>
  );
}
