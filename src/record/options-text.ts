import { PLATE_CHOICE_OPTIONS, PLATE_NUMBER_OPTIONS } from '../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { plain } from '../units/number.ts';
import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';
import type { MadeFile } from './case-schema.ts';

type Value = MadeFile['options'][string];

/** Decimals of an option's value: stretch is a fraction. */
const DECIMALS = 4;

/**
 * The options that a thing was made with, where they differ from the defaults of its kind, in one sentence or more; an option unknown
 * to this version is told as it is. Options go by their names in an options file, in every language. The differential of a strip is left to the words for what was made.
 */
export function optionsText({ kind, options }: MadeFile, words: RecordWords = RECORD_WORDS.en): string {
  const noted = Object.entries(options).filter(([key]) => key !== 'differential' || kind !== 'strip');
  if (noted.length === 0) return words.optionsNotNoted;
  const all = kind === 'plate' ? [...PLATE_NUMBER_OPTIONS, ...PLATE_CHOICE_OPTIONS] : [...NUMBER_OPTIONS, ...CHOICE_OPTIONS];
  const other = noted.flatMap(([key, value]) => {
    const option = all.find((one) => one.key === key);
    if (option === undefined) return [`${key} ${shown(value, words)}`];
    if (option.default === value) return [];
    const unit = 'unit' in option && option.unit !== 'fraction' ? ` ${option.unit}` : '';
    return [words.option({ key, value: shown(value, words), unit, usual: shown(option.default, words) })];
  });
  return other.length === 0 ? words.optionsUsual : words.optionsDiffer(other);
}

function shown(value: Value, { yes, no, decimal }: RecordWords): string {
  if (typeof value === 'number') return plain(value, DECIMALS).replace('.', decimal);
  return typeof value === 'string' ? value : value ? yes : no;
}
