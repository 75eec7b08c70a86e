import { useComputed } from '@preact/signals';
import { looksOf } from '../../looks.ts';
import { keepFocus } from '../../parts/focus.ts';
import { Panel, PanelButton } from '../../parts/panel.tsx';
import { Spoken } from '../../parts/spoken.tsx';
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

/** Everything to look at in full, each with the button that mends it, and the standing cautions. */
export function LookPanel() {
  const store = useStore();
  const looks = useComputed(() => looksOf(store)).value;
  const texts = store.texts.value;
  return (
    <Panel name="look" heading={texts.look.panel}>
      {looks.length === 0 ? <p>{texts.look.heading(0)}</p> : null}
      <ul class="looks">
        {looks.map((look) => (
          <li key={look.id} class={look.stops ? 'stops' : undefined}>
            <p>
              <Spoken sentence={look.full} />
            </p>
            {look.mend ? (
              <button
                type="button"
                class="mend"
                onClick={() => {
                  look.mend?.apply();
                  keepFocus('panel-heading');
                }}
              >
                {look.mend.label}
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <p class="caution">{texts.caution.contraindications}</p>
      <p class="caution">{texts.caution.pencil}</p>
      <p class="caution">{texts.caution.evidence}</p>
      <p class="caution">{texts.caution.heat}</p>
      <p class="caution">{texts.caution.model}</p>
      <p class="caution">{texts.caution.skin}</p>
    </Panel>
  );
}
