import { useComputed } from '@preact/signals';
import type { Store } from '../store.ts';
import { elementId, type Fault } from '../translate-messages.ts';
import { Spoken } from './spoken.tsx';
import { useStore } from './store-context.ts';
import { TextInput } from './text-input.tsx';

/** The problem to show at a field: after it was left with something in it, or after a check. */
export function shownFault({ checked, left, faults }: Store, where: string): Fault | undefined {
  return checked.value || left.value.includes(where) ? faults.value.find((fault) => fault.field === where) : undefined;
}

function useFault(where: string): Fault | undefined {
  const store = useStore();
  return useComputed(() => shownFault(store, where)).value;
}

interface FieldProps {
  readonly where: string;
  readonly label: string;
  readonly unit?: string;
  readonly hint?: string;
  readonly numeric?: boolean;
  readonly optional?: boolean;
  readonly longest?: number;
  readonly placeholder?: string | undefined;
  readonly tidy?: (text: string) => string;
  /** The error is shown elsewhere, in the line that tells how to measure. */
  readonly errorId?: string;
  readonly onEnter?: () => void;
}

/** A labelled text field: label above, then hint, field, error. Checked when it is left. */
export function Field(props: FieldProps) {
  const { where, label, unit, hint, numeric, optional, errorId } = props;
  const { texts } = useStore();
  const id = elementId(where);
  const fault = useFault(where);
  const described = [hint && `${id}-hint`, errorId, fault && !errorId && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div class={fault ? 'field wrong' : 'field'}>
      <label for={id}>
        {label}
        {unit ? <span class="unit"> ({unit})</span> : null}
        {optional ? <span class="unit"> ({texts.value.optional})</span> : null}
      </label>
      {hint ? (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      <TextInput
        where={where}
        describedBy={described}
        numeric={numeric ?? false}
        wrong={fault !== undefined}
        placeholder={props.placeholder}
        {...(props.longest === undefined ? {} : { longest: props.longest })}
        {...(props.tidy ? { tidy: props.tidy } : {})}
        {...(props.onEnter ? { onEnter: props.onEnter } : {})}
      />
      {fault && !errorId ? (
        <p class="error" id={`${id}-error`}>
          <span class="error-sign" aria-hidden="true">
            !
          </span>{' '}
          <span class="hidden">{texts.value.errors.prefix} </span>
          <Spoken sentence={fault.sentence} />
        </p>
      ) : null}
    </div>
  );
}
