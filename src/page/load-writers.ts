/** What writes files: heavy, and not needed before the first of them. */
export type Writers = typeof import('./writers.ts');

/** The writers, on first use. The page's build puts another module in this one's place, which holds them packed and unpacks them here. */
export function loadWriters(): Promise<Writers> {
  return import('./writers.ts');
}
