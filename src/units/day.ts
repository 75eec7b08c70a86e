const ISO = /^\d{4}-\d{2}-\d{2}$/;
const DOTTED = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/;
const SLASHED = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/;
/** No month has this number: what is larger in "31/3/2026" is the day. */
const LAST_MONTH = 12;

/** Whether a text is a day that exists, as 2026-03-31. */
export function isDay(text: string): boolean {
  const time = ISO.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}

/**
 * A day as a person writes it, as 2026-03-31: with dots the day stands first (31.3.2026); with slashes it is the number over 12, and 3/4/2026, which is
 * another day in another country, is left as it stands. What is no day is left as well.
 */
export function tidyDay(text: string): string {
  const tidy = text.trim();
  const written = (day = '', month = '', year = '') => `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  if (isDay(tidy)) return tidy;
  const dotted = DOTTED.exec(tidy);
  const slashed = SLASHED.exec(tidy);
  const [, first = '', second = '', year = ''] = dotted ?? slashed ?? [];
  const isFirstDay = dotted !== null || Number(first) > LAST_MONTH || first === second;
  const found = isFirstDay ? written(first, second, year) : Number(second) > LAST_MONTH ? written(second, first, year) : tidy;
  return isDay(found) ? found : text;
}

const MS_A_DAY = 86_400_000;

/** Whole days from one ISO date to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / MS_A_DAY);
}

/** The ISO date some days later. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(date) + days * MS_A_DAY).toISOString().slice(0, 10);
}
