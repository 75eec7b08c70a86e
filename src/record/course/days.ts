const MS_A_DAY = 86_400_000;

/** Whole days from one ISO date to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / MS_A_DAY);
}

/** The ISO date some days later. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(date) + days * MS_A_DAY).toISOString().slice(0, 10);
}
