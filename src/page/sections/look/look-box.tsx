import { useComputed } from '@preact/signals';
import { looksOf } from '../../looks.ts';
import { PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';

/** Lines of the box; the rest is behind its heading, which counts all. */
const LINES = 3;

/** How many things there are to look at, the first in short; a press opens all of them, each with its mend. */
export function LookBox() {
  const store = useStore();
  const looks = useComputed(() => looksOf(store)).value;
  const words = store.texts.value.look;
  if (looks.length === 0) return null;
  return (
    <div class={looks.some((look) => look.stops) ? 'look-box stops' : 'look-box'}>
      <PanelButton name="look" class="look-head">
        <strong>{words.heading(looks.length)}</strong> <span class="unit">{words.each}</span>
      </PanelButton>
      <ul>
        {looks.slice(0, LINES).map((look) => (
          <li key={look.id} {...(look.full.english ? { lang: 'en' } : {})}>
            {look.short}
          </li>
        ))}
      </ul>
    </div>
  );
}
