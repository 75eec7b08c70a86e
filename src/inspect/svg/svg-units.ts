/** Millimetres in one of each unit; 96 px are one inch (CSS Values and Units). */
const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, q: 0.25, px: 25.4 / 96 };
/** No two neighbours take the same letters, so that a text is read in one way only, however long. */
const LENGTH = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z%]*)$/;

export interface SvgLength {
  readonly value: number;
  /** Lower case; empty when none is written. */
  readonly unit: string;
  /** Null for percentages and units that depend on a font. */
  readonly mm: number | null;
}

/** A length attribute; null when it cannot be read. Without a unit it is in CSS pixels. */
export function readSvgLength(text: string): SvgLength | null {
  const [, number, unit = ''] = LENGTH.exec(text.trim()) ?? [];
  const value = Number(number);
  if (number === undefined || !Number.isFinite(value)) return null;
  const factor = MM[unit === '' ? 'px' : unit.toLowerCase()];
  return { value, unit: unit.toLowerCase(), mm: factor === undefined ? null : value * factor };
}

/** A number in user units, from an attribute that may carry a unit; 0 when missing or unreadable. */
export function userNumber(text: string | undefined): number {
  const length = text === undefined ? null : readSvgLength(text);
  if (!length) return 0;
  return length.unit === '' || length.mm === null ? length.value : length.mm / (25.4 / 96);
}
