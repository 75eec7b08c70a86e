import { LONGEST_CODE } from '../../hand/case-code.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId } from '../../hand/fields.ts';
import { LONGEST_NOTE } from '../../hand/hand-schema.ts';
import { parseLength } from '../../units/length.ts';
import { isMeasured } from '../hand-file.ts';
import { emptyEntries } from '../state.ts';
import { Choice, Field } from './field.tsx';
import { MeasureDrawing } from './measure-drawing.tsx';
import type { View } from './view.ts';

const MAIN: readonly DigitFieldId[] = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
const MORE: readonly DigitFieldId[] = ['pipCircumference', 'mpSetback'];

/** Code, side and measurements, in the order of measuring. */
export function HandSection({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  const { entries, viewing } = state;
  const last = viewing.focus.split('.').at(-1) ?? '';
  const lit = viewing.focus.startsWith('digits.') && last in DIGIT_FIELDS ? (last as DigitFieldId) : null;
  return (
    <section id="hand" aria-labelledby="hand-heading">
      <h2 id="hand-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          1
        </span>
        {texts.hand.heading}
      </h2>
      <Field
        view={view}
        where="code"
        label={texts.hand.code}
        hint={texts.hand.codeHint}
        longest={2 * LONGEST_CODE}
        tidy={(text) => text.trim().toUpperCase()}
      />
      <Choice
        view={view}
        where="side"
        legend={texts.hand.side}
        value={entries.side}
        choices={[
          { value: 'left', label: texts.handOf.left },
          { value: 'right', label: texts.handOf.right },
        ]}
        onChoose={(side) => act.enter(() => ({ side }))}
      />
      <p>{texts.hand.about}</p>
      <div class="measuring">
        <div class="guide">
          <h3>{texts.hand.measureHeading}</h3>
          <MeasureDrawing view={view} lit={lit} />
          <ol>
            {MAIN.map((id) => (
              <li key={id} class={id === lit ? 'lit' : undefined}>
                <strong>{texts.field[id].label}.</strong> <span id={`how-${id}`}>{texts.field[id].how}</span>
              </li>
            ))}
          </ol>
        </div>
        <div class="digits">
          {DIGITS.map((digit) => (
            <fieldset class="digit" key={digit}>
              <legend>{texts.digit[digit]}</legend>
              {MAIN.map((id) => (
                <DigitField view={view} digit={digit} id={id} key={id} />
              ))}
              {isMeasured(entries, digit) ? (
                <button
                  type="button"
                  class="quiet"
                  onClick={() => act.enter((now) => ({ digits: { ...now.digits, [digit]: emptyEntries('.').digits[digit] } }))}
                >
                  {texts.hand.clearDigit(texts.digitIn[digit])}
                </button>
              ) : null}
            </fieldset>
          ))}
        </div>
      </div>
      <details>
        <summary>{texts.hand.more}</summary>
        <p>{texts.hand.moreAbout}</p>
        <ol start={5}>
          {MORE.map((id) => (
            <li key={id}>
              <strong>{texts.field[id].label}.</strong> <span id={`how-${id}`}>{texts.field[id].how}</span>
            </li>
          ))}
        </ol>
        <div class="digits">
          {DIGITS.map((digit) => (
            <fieldset class="digit" key={digit}>
              <legend>{texts.digit[digit]}</legend>
              {MORE.map((id) => (
                <DigitField view={view} digit={digit} id={id} key={id} />
              ))}
            </fieldset>
          ))}
        </div>
        <Field view={view} where="note" label={texts.hand.note} hint={texts.hand.noteHint} optional longest={LONGEST_NOTE} />
        <label class="pick">
          <input
            type="checkbox"
            checked={entries.invented}
            onChange={(event) => {
              const invented = event.currentTarget.checked;
              act.enter(() => ({ invented }));
            }}
          />
          <span>{texts.hand.invented}</span>
        </label>
      </details>
    </section>
  );
}

function DigitField({ view, digit, id }: { readonly view: View; readonly digit: DigitName; readonly id: DigitFieldId }) {
  const { texts, state } = view;
  const back = understood(view, digit, id);
  return (
    <Field
      view={view}
      where={`digits.${digit}.${id}`}
      label={texts.field[id].label}
      unit={texts[state.settings.unit]}
      numeric
      describedBy={`how-${id}`}
      {...(back === null ? {} : { back })}
    />
  );
}

/** What a typed length was taken for, or what stands in for one that was not measured. */
function understood(view: View, digit: DigitName, id: DigitFieldId): string | null {
  const { state, derived, format, texts } = view;
  const text = state.entries.digits[digit][id];
  if (text.trim() === '') {
    const estimate = derived.hand.ok ? derived.hand.value.estimated.find((e) => e.digit === digit && e.field === id) : undefined;
    return estimate ? texts.hand.estimated(format.length(estimate.mm)) : null;
  }
  const isRound = id === 'circumference' || id === 'pipCircumference';
  const parsed = parseLength(text, state.settings.unit, { ringSizes: isRound, zero: id === 'mpSetback' });
  if (!parsed.ok) return null;
  const ring = parsed.notation.startsWith('ring') ? ` (${texts.hand.ringSize})` : '';
  return texts.hand.taken(`${format.length(parsed.mm)}${ring}`);
}
