/** Something that stops the work. One message each: what, where, the value, the allowed range, what to do. */
export interface Problem {
  /** Stable upper-case code, e.g. `FIELD_OUT_OF_RANGE`. */
  readonly code: string;
  /** Path of the input, e.g. `digits.ring.width`; empty when the whole file is meant. */
  readonly where: string;
  readonly message: string;
  /** `usage`: a flag is wrong (exit 2). `input`: a file or an answer is (exit 1). `refused`: readable, but not makeable (exit 3). */
  readonly kind: 'usage' | 'input' | 'refused';
  /** A value that would do, where one can be named; mm or degrees. */
  readonly limit?: number;
}

/** Something that does not stop the work but that the person must see. */
export interface Warning {
  readonly code: string;
  readonly message: string;
  readonly where?: string;
  readonly value?: number;
  readonly limit?: number;
  /** What the person can do about it. */
  readonly next?: string;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Warning[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function success<T>(value: T, warnings: readonly Warning[] = []): Result<T> {
  return { ok: true, value, warnings };
}

export function failure<T>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** All values, with all warnings in the order of the keys; or else all problems. */
export function collect<Results extends Readonly<Record<string, Result<unknown>>>>(
  results: Results,
): Result<{ readonly [K in keyof Results]: Extract<Results[K], { readonly ok: true }>['value'] }> {
  const all = Object.entries(results);
  if (all.some(([, result]) => !result.ok)) return failure(...all.flatMap(([, result]) => (result.ok ? [] : result.problems)));
  const values = Object.fromEntries(all.flatMap(([key, result]) => (result.ok ? [[key, result.value]] : [])));
  return success(
    values as { readonly [K in keyof Results]: Extract<Results[K], { readonly ok: true }>['value'] },
    all.flatMap(([, result]) => (result.ok ? result.warnings : [])),
  );
}
