import { formatLength, type LengthUnit, MM_PER, parseLength } from '../units/length.ts';
import { plain } from '../units/number.ts';
import type { Settings } from './state.ts';
import type { Texts } from './texts/english.ts';

/** Numbers and lengths as the reader writes them. */
export interface Format {
  number(value: number, decimals?: number): string;
  /** mm in, the reader's unit out, with the unit. */
  length(mm: number): string;
  /** A length of the pattern, in the reader's unit with as many decimals as are of use. */
  mm(mm: number, decimals?: number): string;
  lengthRange(from: number, to: number): string;
  degrees(value: number, decimals?: number): string;
  degreesRange(from: number, to: number): string;
}

export function formatFor({ unit, decimal }: Settings, texts: Texts): Format {
  const signed = (text: string) => text.replace('.', decimal);
  const number = (value: number, decimals = 2) => signed(plain(value, decimals));
  const length = (mm: number) => signed(formatLength(mm, unit)).replace(/ in$/, ` ${texts.in}`);
  return {
    number,
    length,
    mm: (mm, decimals = 1) =>
      unit === 'mm' ? `${number(mm, decimals)} mm` : unit === 'cm' ? `${number(mm / MM_PER.cm, decimals + 1)} cm` : length(mm),
    lengthRange: (from, to) => `${number(from / MM_PER[unit])} ${texts.to} ${length(to)}`,
    degrees: (value, decimals = 1) => `${number(value, decimals)} ${texts.degrees}`,
    degreesRange: (from, to) => `${number(from)} ${texts.to} ${number(to)} ${texts.degrees}`,
  };
}

/** A number or fraction without a unit, typed in one unit and sign, written anew in another; anything with a unit of its own, or unreadable, stays. */
export function retyped(text: string, from: Pick<Settings, 'unit'>, to: Pick<Settings, 'unit' | 'decimal'>): string {
  if (from.unit === to.unit) return /^\s*\d*[.,]?\d+\s*$/.test(text) ? text.replace(/[.,]/, to.decimal) : text;
  const read = parseLength(text, from.unit, { zero: true });
  if (!read.ok || read.notation !== 'number') return text;
  const decimals: Record<LengthUnit, number> = { mm: 2, cm: 3, in: 4 };
  return plain(read.mm / MM_PER[to.unit], decimals[to.unit]).replace('.', to.decimal);
}
