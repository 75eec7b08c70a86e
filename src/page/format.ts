import { formatLength, type LengthUnit, MM_PER } from '../units/length.ts';
import { isWritable, plain } from '../units/number.ts';
import type { Settings } from './state.ts';
import type { Texts } from './texts/english.ts';

/** Numbers and lengths as the reader writes them. */
export interface Format {
  number(value: number, decimals?: number): string;
  /** mm in, the reader's unit out, with the unit. */
  length(mm: number): string;
  /** The pattern's figures are always in mm, whatever unit is typed. */
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
    mm: (mm, decimals = 1) => `${number(mm, decimals)} mm`,
    lengthRange: (from, to) => `${number(from / MM_PER[unit])} ${texts.to} ${length(to)}`,
    degrees: (value, decimals = 1) => `${number(value, decimals)} ${texts.degrees}`,
    degreesRange: (from, to) => `${number(from)} ${texts.to} ${number(to)} ${texts.degrees}`,
  };
}

/** A bare number typed in one unit and sign, written anew in another; anything with a unit of its own, or unreadable, stays. */
export function retyped(text: string, from: Pick<Settings, 'unit'>, to: Pick<Settings, 'unit' | 'decimal'>): string {
  if (!/^\s*(\d+([.,]\d+)?|[.,]\d+)\s*$/.test(text)) return text;
  const value = Number(text.trim().replace(',', '.'));
  const decimals: Record<LengthUnit, number> = { mm: 2, cm: 3, in: 4 };
  if (from.unit === to.unit) return text.replace(/[.,]/, to.decimal);
  const converted = (value * MM_PER[from.unit]) / MM_PER[to.unit];
  // A number too large to be written is none of a hand, and refused in any unit.
  return isWritable(converted) ? plain(converted, decimals[to.unit]).replace('.', to.decimal) : text;
}
