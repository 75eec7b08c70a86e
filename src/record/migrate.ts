import { newerWords } from '../units/form-problems.ts';
import { getOwn } from '../units/json-text.ts';
import { quote } from '../units/quote.ts';
import { failure, type Result, success } from '../units/result.ts';
import { CASE_VERSION } from './case-schema.ts';

/** Turns the JSON of version `from` into that of `from + 1`. Gets what a hand may have edited: must not throw, and leaves checking to the reader. */
export interface MigrationStep {
  readonly from: number;
  readonly change: (json: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

/**
 * Every step since the first version; add one with each new version, and never remove any. From 1 to 2: what was seen of a device lies
 * flat in the visit, marks that stay are a state of the skin, and hours worn are called wear.
 */
export const MIGRATIONS: readonly MigrationStep[] = [
  {
    from: 1,
    change: (json) => ({ ...json, ...(Array.isArray(json.visits) ? { visits: json.visits.map(flatVisit) } : {}) }),
  },
];

/** A visit of the first version in the form of the second; anything else as it is, and what it says twice as it is. */
export function flatVisit(visit: unknown): unknown {
  if (!isObject(visit) || (visit.seen === undefined && visit.wearHoursPerDay === undefined)) return visit;
  const { seen, wearHoursPerDay, ...rest } = visit;
  if (seen !== undefined && !isObject(seen)) return visit;
  const { marksOnSkin, ...others } = seen ?? {};
  const skin = typeof marksOnSkin === 'boolean' ? (marksOnSkin ? 'marks' : 'ok') : marksOnSkin;
  return {
    ...others,
    ...(skin === undefined ? {} : { skin }),
    ...(wearHoursPerDay === undefined ? {} : { wear: wearHoursPerDay }),
    ...rest,
  };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const SCHEMA = /^knucklewright\/case@(\d{1,6})$/;

/**
 * The JSON of a case file in the present version; `json` itself when it has that already. Fails with `CASE_SCHEMA` (not a case file),
 * `CASE_NEWER` (a newer program wrote it) or `CASE_OLDER` (no step leads from its version).
 * @param steps and `version`: for tests; the program's own otherwise
 */
export function migrateCase(json: unknown, steps: readonly MigrationStep[] = MIGRATIONS, version: number = CASE_VERSION): Result<unknown> {
  const written = getOwn(json, 'schema');
  const found = typeof written === 'string' ? SCHEMA.exec(written)?.[1] : undefined;
  if (found === undefined) {
    const what = written === undefined ? 'it names no schema' : `its schema is ${quote(written)}`;
    return refused('CASE_SCHEMA', `this is not a case file: ${what}; a case file has "schema": "knucklewright/case@${version}"`);
  }
  const from = Number(found);
  if (from > version) {
    return refused('CASE_NEWER', newerWords(from, version, 'case'));
  }
  let current: unknown = json;
  for (let at = from; at < version; at++) {
    const step = steps.find((known) => known.from === at);
    if (step === undefined) {
      return refused('CASE_OLDER', `the file has version ${from} of the case file, from which no way leads to version ${version}`);
    }
    current = { ...step.change(current as Record<string, unknown>), schema: `knucklewright/case@${at + 1}` };
  }
  return success(current);
}

function refused(code: string, message: string): Result<unknown> {
  return failure({ code, where: 'schema', message: `schema: ${message}.`, kind: 'input' });
}
