import { useComputed } from '@preact/signals';
import { setEntry, typedAt } from '../state.ts';
import { elementId } from '../translate-messages.ts';
import { endsOfMotion, readNeutralZero } from '../typed-motion.ts';
import { useStore } from './store-context.ts';

interface TextInputProps {
  /** Path of the entry, e.g. `digits.ring.width`. */
  readonly where: string;
  readonly label?: string;
  /** Ids of texts elsewhere that tell how to fill it in. */
  readonly describedBy?: string | undefined;
  readonly placeholder?: string | undefined;
  /** A keypad of digits; without it letters, slash and hyphen can be typed on touch as well. */
  readonly numeric?: boolean;
  readonly longest?: number;
  /** How the text is put in order when the field is left. */
  readonly tidy?: (text: string) => string;
  readonly wrong: boolean;
  /** Enter: goes on from here. */
  readonly onEnter?: () => void;
  readonly class?: string;
}

/** The text field itself: every key is an entry, leaving it commits the step, and its errors are shown from then on. */
export function TextInput(props: TextInputProps) {
  const { where, label, describedBy, placeholder, numeric, longest, tidy, wrong, onEnter } = props;
  const store = useStore();
  const text = useComputed(() => typedAt(store.entries.value, where)).value;
  const leave = (typed: string) => {
    // A whole motion in neutral-zero notation is both numbers, once it is typed to its end.
    const ends = endsOfMotion(where);
    const whole = ends && readNeutralZero(typed, store.texts.peek().finger.beyond);
    if (ends && whole) {
      store.enter({ where, value: typed }, (now) => {
        const first = setEntry(now, ends.lacks, whole.lacks);
        return { ...first, ...setEntry({ ...now, ...first }, ends.bends, whole.bends) };
      });
    } else if (tidy) store.type(where, tidy(typed));
    store.commit();
    const others = store.left.peek().filter((other) => other !== where);
    store.left.value = typed.trim() === '' ? others : [...others, where];
  };
  return (
    <input
      id={elementId(where)}
      name={where}
      class={props.class}
      type="text"
      autocomplete="off"
      spellcheck={false}
      inputMode={numeric ? 'decimal' : 'text'}
      autocapitalize={where === 'code' ? 'characters' : 'off'}
      maxLength={longest ?? 40}
      placeholder={placeholder}
      value={text}
      aria-label={label}
      aria-describedby={describedBy || undefined}
      aria-invalid={wrong ? 'true' : undefined}
      onInput={(event) => store.type(where, event.currentTarget.value)}
      onFocus={() => (store.focus.value = where)}
      onBlur={(event) => leave(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || event.isComposing) return;
        event.preventDefault();
        leave(event.currentTarget.value);
        onEnter?.();
      }}
    />
  );
}
