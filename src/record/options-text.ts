import { PLATE_CHOICE_OPTIONS, PLATE_NUMBER_OPTIONS } from '../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { plain } from '../units/number.ts';
import type { MadeFile } from './case-schema.ts';

type Value = MadeFile['options'][string];

/** Decimals of an option's value: stretch is a fraction. */
const DECIMALS = 4;

/**
 * The options that a thing was made with, where they differ from the defaults of its kind, in one sentence or more; an option unknown
 * to this version is told as it is. The differential of a strip is left to the words for what was made.
 */
export function optionsText({ kind, options }: MadeFile): string {
  const noted = Object.entries(options).filter(([key]) => key !== 'differential' || kind !== 'strip');
  if (noted.length === 0) return 'Options not noted.';
  const all = kind === 'plate' ? [...PLATE_NUMBER_OPTIONS, ...PLATE_CHOICE_OPTIONS] : [...NUMBER_OPTIONS, ...CHOICE_OPTIONS];
  const other = noted.flatMap(([key, value]) => {
    const option = all.find((one) => one.key === key);
    if (option === undefined) return [`${key} ${shown(value)}`];
    if (option.default === value) return [];
    const unit = 'unit' in option && option.unit !== 'fraction' ? ` ${option.unit}` : '';
    return [`${key} ${shown(value)}${unit} (default ${shown(option.default)})`];
  });
  return other.length === 0 ? 'No noted option differs from its default.' : `Differs from the default: ${other.join(', ')}.`;
}

function shown(value: Value): string {
  if (typeof value === 'number') return plain(value, DECIMALS);
  return typeof value === 'string' ? value : value ? 'yes' : 'no';
}
