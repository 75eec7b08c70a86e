import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { usualOptions } from '../state.ts';
import { Choice, Field } from './field.tsx';
import type { View } from './view.ts';

/** Everything about the strip that may be chosen; the differential stands beside the section that it moves. */
export function OptionsSection({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  return (
    <section id="options" aria-labelledby="options-heading">
      <h2 id="options-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          4
        </span>
        {texts.options.heading}
      </h2>
      <p>{texts.options.about}</p>
      <div class="pair">
        {NUMBER_OPTIONS.filter((o) => o.key === 'width' || o.key === 'thickness').map((o) => (
          <OptionField view={view} option={o} key={o.key} />
        ))}
      </div>
      <details>
        <summary>{texts.options.more}</summary>
        <div class="pair">
          {NUMBER_OPTIONS.filter((o) => !['width', 'thickness', 'differential'].includes(o.key)).map((o) => (
            <OptionField view={view} option={o} key={o.key} />
          ))}
        </div>
        {CHOICE_OPTIONS.map((o) => (
          <Choice
            view={view}
            key={o.key}
            where={o.key}
            legend={`${texts.options.name[o.key]}: ${texts.options.option[o.key]}`}
            value={state.entries.options[o.key]}
            choices={o.choices.map((value) => ({ value, label: texts.options.choice[value as keyof typeof texts.options.choice] }))}
            onChoose={(value) => act.enter(({ options }) => ({ options: { ...options, [o.key]: value } }))}
          />
        ))}
        <Field view={view} where="date" label={texts.options.date} hint={texts.options.dateHint} unit="2026-03-31" longest={10} optional />
        <button type="button" class="quiet" onClick={() => act.enter(() => ({ options: usualOptions(state.settings.decimal) }))}>
          {texts.options.reset}
        </button>
      </details>
    </section>
  );
}

export function OptionField({ view, option }: { readonly view: View; readonly option: (typeof NUMBER_OPTIONS)[number] }) {
  const { texts } = view;
  return (
    <Field
      view={view}
      where={option.key}
      label={texts.options.name[option.key]}
      unit={option.unit === 'mm' ? texts.mm : option.unit === 'degrees' ? texts.degrees : texts.fraction}
      hint={texts.options.option[option.key]}
      numeric
    />
  );
}
