import { PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';

/** The stop signs in short words, always in sight; answered by one press, or opened. Never answered in advance. */
export function StopQuestion() {
  const store = useStore();
  const texts = store.texts.value.stop;
  const { stop, stopSigns } = store.entries.value;
  return (
    <fieldset class={`plain stop ${stop === '' ? 'open' : stop}`} id="field-stop" tabIndex={-1}>
      <legend>{texts.heading}</legend>
      <p class="signs" id="stop-list">
        {texts.list}
      </p>
      <div class="choices">
        <button
          type="button"
          id="stop-none"
          aria-pressed={stop === 'none'}
          aria-describedby="stop-list"
          class={stop === 'none' ? 'chosen' : undefined}
          onClick={() => store.enter({ where: 'stop', value: texts.none }, () => ({ stop: stop === 'none' ? '' : 'none', stopSigns: [] }))}
        >
          {stop === 'none' ? '✓ ' : ''}
          {texts.none}
        </button>
        <PanelButton name="stop" class={stop === 'some' ? 'chosen grave' : ''}>
          {stop === 'some' ? `! ${stopSigns.length || ''} ` : ''}
          {texts.some}
        </PanelButton>
      </div>
    </fieldset>
  );
}
