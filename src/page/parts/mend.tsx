import { mendFor } from '../mends.ts';
import { elementId, type Fault } from '../translate-messages.ts';
import { keepFocus } from './focus.ts';
import { useStore } from './store-context.ts';

/** The one button that mends a refusal. */
export function Mend({ fault }: { readonly fault: Fault }) {
  const store = useStore();
  const mend = mendFor(store, fault.problem, fault.field);
  if (!mend) return null;
  return (
    <button
      type="button"
      class="mend"
      onClick={() => {
        mend.apply();
        keepFocus(elementId(fault.field));
      }}
    >
      {mend.label}
    </button>
  );
}
