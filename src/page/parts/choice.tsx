import { elementId } from '../translate-messages.ts';
import { useStore } from './store-context.ts';

interface ChoiceProps<T extends string> {
  readonly where: string;
  readonly legend: string;
  readonly legendHidden?: boolean;
  readonly choices: readonly { readonly value: T; readonly label: string; readonly meaning?: string }[];
  readonly value: T | '';
  readonly onChoose: (value: T) => void;
}

/** Native radios side by side; the chosen one has a tick and weight, not colour only. The arrow keys choose, one step until the group is left. */
export function Choice<T extends string>({ where, legend, legendHidden, choices, value, onChoose }: ChoiceProps<T>) {
  const store = useStore();
  const id = elementId(where);
  return (
    <fieldset class="choice" id={id} tabIndex={-1} onBlurCapture={() => store.commit()}>
      <legend class={legendHidden ? 'hidden' : undefined}>{legend}</legend>
      <div class="choices">
        {choices.map((choice) => (
          <label class={choice.value === value ? 'pick chosen' : 'pick'} key={choice.value}>
            <input
              type="radio"
              name={where}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => onChoose(choice.value)}
              onFocus={() => (store.focus.value = where)}
            />
            <span>
              {choice.label}
              {choice.meaning ? <span class="unit"> {choice.meaning}</span> : null}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** A box to tick, one step of the history. */
export function Tick({
  where,
  label,
  checked,
  onChange,
  describedBy,
}: {
  readonly where: string;
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly describedBy?: string;
}) {
  return (
    <label class={checked ? 'pick chosen' : 'pick'}>
      <input
        type="checkbox"
        id={elementId(where)}
        checked={checked}
        aria-describedby={describedBy}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <span>{label}</span>
    </label>
  );
}
