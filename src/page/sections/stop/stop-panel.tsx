import { WHOM_TO_ASK } from '../../../block/hand-notes.ts';
import { STOP_SIGNS, type StopSign } from '../../../hand/signs.ts';
import { sayAsk } from '../../../words/advice/plan/say-plan.ts';
import { Tick } from '../../parts/choice.tsx';
import { closePanel, Panel, PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';

/** Which stop sign there is, and whom to ask about it. */
export function StopPanel() {
  const store = useStore();
  const texts = store.texts.value.stop;
  const { stop, stopSigns } = store.entries.value;
  const { language } = store.settings.value;
  const set = (sign: StopSign, is: boolean) =>
    store.enter({ where: `stop.${sign}`, value: texts.sign[sign] }, (now) => {
      const signs = STOP_SIGNS.filter((s) => (s === sign ? is : now.stopSigns.includes(s)));
      return { stopSigns: signs, stop: signs.length > 0 ? 'some' : '' };
    });
  return (
    <Panel name="stop" heading={texts.which}>
      <ul class="plain-list">
        {STOP_SIGNS.map((sign) => (
          <li key={sign}>
            <Tick where={`stop.${sign}`} label={texts.sign[sign]} checked={stopSigns.includes(sign)} onChange={(is) => set(sign, is)} />
            {stopSigns.includes(sign) ? <p class="error ask">{sayAsk(WHOM_TO_ASK[sign], language)}</p> : null}
          </li>
        ))}
      </ul>
      {stop === 'some' ? <p class="error grave">{texts.stopped}</p> : null}
      <div class="buttons">
        <button
          type="button"
          onClick={() => {
            store.enter({ where: 'stop', value: texts.none }, () => ({ stop: 'none', stopSigns: [] }));
            closePanel(store);
          }}
        >
          {texts.none}
        </button>
      </div>
    </Panel>
  );
}

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
