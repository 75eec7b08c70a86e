import { useComputed } from '@preact/signals';
import { looksOf } from '../../looks.ts';
import { Panel } from '../../parts/panel.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';

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
              <button type="button" class="mend" onClick={look.mend.apply}>
                {look.mend.label}
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <p class="caution">{texts.caution.contraindications}</p>
      <p class="caution">{texts.caution.pencil}</p>
      <p class="caution">{texts.caution.evidence}</p>
      <p class="caution">{texts.caution.model}</p>
      <p class="caution">{texts.caution.skin}</p>
    </Panel>
  );
}
