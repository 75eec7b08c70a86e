import { mendFor } from '../mends.ts';
import type { Fault } from '../translate-messages.ts';
import { useStore } from './store-context.ts';

/** The one button that mends a refusal. */
export function Mend({ fault }: { readonly fault: Fault }) {
  const store = useStore();
  const mend = mendFor(store, fault.problem, fault.field);
  if (!mend) return null;
  return (
    <button type="button" class="mend" onClick={mend.apply}>
      {mend.label}
    </button>
  );
}
