import { WHOM_TO_ASK } from '../../../block/hand-notes.ts';
import { STOP_SIGNS, type StopSign } from '../../../hand/signs.ts';
import { sayAsk } from '../../../words/advice/plan/say-plan.ts';
import { Tick } from '../../parts/choice.tsx';
import { closePanel, Panel } from '../../parts/panel.tsx';
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
