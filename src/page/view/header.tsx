import { LENGTH_UNITS, type LengthUnit } from '../../units/length.ts';
import { retyped } from '../format.ts';
import type { DecimalSign, Entries, Settings } from '../state.ts';
import { LANGUAGES, type Language } from '../texts/languages.ts';
import type { View } from './view.ts';

/** Name, what the page is, and its settings. */
export function Header({ view }: { readonly view: View }) {
  const { texts, state } = view;
  const { settings } = state;
  return (
    <header>
      <div>
        <h1>Knucklewright</h1>
        <p>{texts.intro}</p>
        <p>{texts.stays}</p>
      </div>
      <fieldset class="settings">
        <legend class="hidden">{texts.settings}</legend>
        <label>
          {texts.language}
          <select
            id="language"
            value={settings.language}
            onChange={(event) => change(view, { language: event.currentTarget.value as Language })}
          >
            {Object.entries(LANGUAGES).map(([id, { languageName }]) => (
              <option key={id} value={id} lang={id}>
                {languageName}
              </option>
            ))}
          </select>
        </label>
        <label>
          {texts.units}
          <select id="unit" value={settings.unit} onChange={(event) => change(view, { unit: event.currentTarget.value as LengthUnit })}>
            {LENGTH_UNITS.map((unit) => (
              <option key={unit} value={unit}>
                {texts[unit]}
              </option>
            ))}
          </select>
        </label>
        <label>
          {texts.decimalSign}
          <select
            id="decimal"
            value={settings.decimal}
            onChange={(event) => change(view, { decimal: event.currentTarget.value as DecimalSign })}
          >
            <option value=".">{texts.decimalPoint}</option>
            <option value=",">{texts.decimalComma}</option>
          </select>
        </label>
      </fieldset>
    </header>
  );
}

/** A new language brings its decimal sign; bare numbers are written anew in the new unit and sign, so that the hand stays the same. */
function change({ act, state }: View, wanted: Partial<Settings>): void {
  const sign =
    wanted.language === undefined ? {} : { decimal: LANGUAGES[wanted.language].decimal === ',' ? (',' as const) : ('.' as const) };
  const next = { ...state.settings, ...sign, ...wanted };
  act.set(next, rewritten(state.entries, state.settings, next));
}

function rewritten(entries: Entries, from: Settings, to: Settings): Entries {
  const written = (fromUnit: LengthUnit, toUnit: LengthUnit) => {
    const one = (text: string) => retyped(text, { unit: fromUnit }, { unit: toUnit, decimal: to.decimal });
    return <T extends Readonly<Record<string, string>>>(values: T): T =>
      Object.fromEntries(Object.entries(values).map(([key, text]) => [key, one(text)])) as T;
  };
  const lengths = written(from.unit, to.unit);
  // Angles and the strip's own figures have one unit each; only their sign changes.
  const signs = written('mm', 'mm');
  return {
    ...entries,
    digits: {
      index: lengths(entries.digits.index),
      long: lengths(entries.digits.long),
      ring: lengths(entries.digits.ring),
      little: lengths(entries.digits.little),
    },
    palm: lengths(entries.palm),
    webs: lengths(entries.webs),
    deficits: signs(entries.deficits),
    options: signs(entries.options),
  };
}
