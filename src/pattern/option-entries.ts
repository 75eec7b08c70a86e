/** An option that is a number: what it is, its default, and the range outside which it is refused. */
export interface NumberEntry<Key extends string = string> {
  readonly key: Key;
  readonly unit: 'mm' | 'degrees' | 'fraction';
  readonly default: number;
  /** Stands in place of a number and is the default, where there is one: `auto` leaves the value to the program, `none` gives none. */
  readonly word?: 'auto' | 'none';
  readonly low: number;
  readonly high: number;
  readonly about: string;
}

/** An option that is one of a few words. */
export interface ChoiceEntry<Key extends string = string> {
  readonly key: Key;
  readonly choices: readonly string[];
  readonly default: string;
  readonly about: string;
}

/** The one table behind an options file, a command's flags and the page's fields. */
export interface OptionTable {
  readonly numbers: readonly NumberEntry[];
  readonly choices: readonly ChoiceEntry[];
  /** Read in old files, and given only where a file has them. */
  readonly retired?: readonly NumberEntry[];
}

/** What an option is when nobody says otherwise. */
export function usualValue(entry: NumberEntry | ChoiceEntry): number | string {
  return ('word' in entry ? entry.word : undefined) ?? entry.default;
}
