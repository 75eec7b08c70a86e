/** An option that is a number: what it is, its default, and the range outside which it is refused. */
export interface NumberEntry<Key extends string = string> {
  readonly key: Key;
  readonly unit: 'mm' | 'degrees' | 'fraction';
  readonly default: number;
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
}
