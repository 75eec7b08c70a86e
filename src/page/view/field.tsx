import type { ComponentChildren } from 'preact';
import { setEntry } from '../state.ts';
import { elementId, type Sentence, typedAt } from '../translate-messages.ts';
import { faultAt, type View } from './view.ts';

interface FieldProps {
  readonly view: View;
  /** Path of the entry, e.g. `digits.ring.width`. */
  readonly where: string;
  readonly label: string;
  readonly unit?: string;
  /** Ids of texts elsewhere that tell how to fill it in. */
  readonly describedBy?: string;
  readonly hint?: string;
  /** What was understood, shown back under the field. */
  readonly back?: string;
  readonly numeric?: boolean;
  readonly optional?: boolean;
  readonly longest?: number;
  /** How the text is put in order when the field is left. */
  readonly tidy?: (text: string) => string;
}

/** A labelled text field: label above, then hint, field, what was understood, error. Checked when it is left. */
export function Field(props: FieldProps) {
  const { view, where, label, unit, hint, back, numeric, optional, tidy } = props;
  const id = elementId(where);
  const fault = faultAt(view, where);
  const text = typedAt(where, view.state.entries);
  const described = [props.describedBy, hint && `${id}-hint`, back && `${id}-back`, fault && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div class={fault ? 'field wrong' : 'field'}>
      <label for={id}>
        {label}
        {unit ? <span class="unit"> ({unit})</span> : null}
        {optional ? <span class="unit"> ({view.texts.optional})</span> : null}
      </label>
      {hint ? (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <input
        id={id}
        name={where}
        type="text"
        inputMode={numeric ? 'decimal' : 'text'}
        autocomplete="off"
        autocapitalize={where === 'code' ? 'characters' : 'off'}
        spellcheck={false}
        maxLength={props.longest ?? 40}
        value={text}
        aria-describedby={described === '' ? undefined : described}
        aria-invalid={fault ? 'true' : undefined}
        onInput={(event) => {
          const typed = event.currentTarget.value;
          view.act.enter((now) => setEntry(now, where, typed));
        }}
        onFocus={() => view.act.view({ focus: where })}
        onBlur={(event) => {
          const typed = event.currentTarget.value;
          const tidied = tidy ? tidy(typed) : typed;
          if (tidied !== typed) view.act.enter((now) => setEntry(now, where, tidied));
          view.act.view(({ left }) => {
            const others = left.filter((other) => other !== where);
            return { left: typed.trim() === '' ? others : [...others, where] };
          });
        }}
      />
      {back ? (
        <p class="back" id={`${id}-back`}>
          {back}
        </p>
      ) : null}
      {fault ? (
        <p class="error" id={`${id}-error`}>
          <span class="error-sign" aria-hidden="true">
            !
          </span>{' '}
          <span class="hidden">{view.texts.errors.prefix} </span>
          <Spoken sentence={fault.sentence} />
        </p>
      ) : null}
    </div>
  );
}

/** A sentence, marked as English where the page has none in the reader's language. */
export function Spoken({ sentence }: { readonly sentence: Sentence }) {
  return sentence.english ? <span lang="en">{sentence.text}</span> : <span>{sentence.text}</span>;
}

interface ChoiceProps<T extends string> {
  readonly view: View;
  readonly where: string;
  readonly legend: string;
  readonly choices: readonly { readonly value: T; readonly label: string; readonly meaning?: string }[];
  readonly value: T | '';
  readonly onChoose: (value: T) => void;
  readonly children?: ComponentChildren;
}

/** One of a few, as radio buttons; the first carries the id that error links lead to. */
export function Choice<T extends string>({ view, where, legend, choices, value, onChoose, children }: ChoiceProps<T>) {
  const id = elementId(where);
  const fault = faultAt(view, where);
  return (
    <fieldset class={fault ? 'choice wrong' : 'choice'} aria-describedby={fault ? `${id}-error` : undefined}>
      <legend>{legend}</legend>
      <div class="choices">
        {choices.map((choice, k) => (
          <label class="pick" key={choice.value}>
            <input
              type="radio"
              id={k === 0 ? id : `${id}-${choice.value}`}
              name={where}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => onChoose(choice.value)}
              onFocus={() => view.act.view({ focus: where })}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
      {children}
      {fault ? (
        <p class="error" id={`${id}-error`}>
          <span class="error-sign" aria-hidden="true">
            !
          </span>{' '}
          <span class="hidden">{view.texts.errors.prefix} </span>
          <Spoken sentence={fault.sentence} />
        </p>
      ) : null}
    </fieldset>
  );
}
