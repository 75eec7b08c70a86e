import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../../../pattern/strip/strip-options.ts';
import { tidyDay } from '../../../units/day.ts';
import { capital } from '../../../words/hand-words.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { Panel } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { freshEntries, rewritten } from '../../rewrite-entries.ts';
import type { DecimalSign } from '../../state.ts';

/** Everything about the strip that may be chosen, in the unit of the page; usual values are filled in. */
export function OptionsPanel() {
  const store = useStore();
  const texts = store.texts.value;
  const settings = store.settings.value;
  const unit = (of: 'mm' | 'degrees' | 'fraction') =>
    of === 'mm' ? texts[settings.unit] : of === 'degrees' ? texts.degrees : texts.fraction;
  // From the last to the first; what is read off a paper trial is looked for more often than the rest.
  const order = ['paperReading', 'differential', 'width', 'thickness'];
  const options = NUMBER_OPTIONS.toSorted((a, b) => (order.indexOf(b.key) + 1 || -9) - (order.indexOf(a.key) + 1 || -9)).toSorted(
    (a, b) => Number(order.includes(b.key)) - Number(order.includes(a.key)),
  );
  return (
    <Panel name="options" heading={texts.options.heading}>
      <p class="hint">{texts.options.about}</p>
      <div class="pair">
        {options.map((o) => (
          <Field
            key={o.key}
            where={o.key}
            label={capital(texts.options.name[o.key])}
            unit={unit(o.unit)}
            hint={texts.options.option[o.key]}
            numeric={settings.unit !== 'in'}
            placeholder={o.word === 'none' ? texts.options.none : o.word === 'auto' ? texts.options.automatic : undefined}
            optional={o.word === 'none'}
          />
        ))}
      </div>
      {CHOICE_OPTIONS.map((o) => (
        <Choice
          key={o.key}
          where={o.key}
          legend={`${capital(texts.options.name[o.key])}: ${texts.options.option[o.key]}`}
          value={store.entries.value.options[o.key]}
          choices={o.choices.map((value) => ({ value, label: texts.options.choice[value as keyof typeof texts.options.choice] }))}
          onChoose={(value) => store.enter({ where: o.key, value }, ({ options: now }) => ({ options: { ...now, [o.key]: value } }))}
        />
      ))}
      <Field where="date" label={texts.options.date} hint={texts.options.dateHint} unit="2026-03-31" longest={14} tidy={tidyDay} optional />
      <div class="buttons">
        <button
          type="button"
          onClick={() => {
            store.enter({ where: 'options', value: texts.options.reset }, () => ({ options: freshEntries(settings).options }));
            store.commit();
          }}
        >
          {texts.options.reset}
        </button>
      </div>
      <Choice
        where="decimal"
        legend={texts.decimalSign}
        value={settings.decimal}
        choices={[
          { value: '.', label: texts.decimalPoint },
          { value: ',', label: texts.decimalComma },
        ]}
        onChoose={(decimal: DecimalSign) => {
          const next = { ...settings, decimal };
          store.set(next, (entries) => rewritten(entries, settings, next));
        }}
      />
    </Panel>
  );
}
