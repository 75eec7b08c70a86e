import type { Case } from '../src/record/case.ts';
import { CASE_SCHEMA_ID } from '../src/record/case-schema.ts';
import { readCase } from '../src/record/read-case.ts';

/** Shorthand of an invented visit: active and passive PIP motion as deficit and flexion, anything else as in a visit file. */
export interface SampleVisit {
  readonly pip: readonly [deficit: number, flexion: number];
  readonly passive?: readonly [deficit: number, flexion: number];
  readonly rest?: Readonly<Record<string, unknown>>;
}

const motion = ([deficit, flexion]: readonly [number, number]) =>
  deficit < 0 ? { hyperextension: -deficit, flexion } : { extensionDeficit: deficit, flexion };

/** One visit a week, from 5 January 2026. */
export function sampleVisit({ pip, passive, rest = {} }: SampleVisit, week = 0): Record<string, unknown> {
  const date = new Date(Date.UTC(2026, 0, 5 + 7 * week)).toISOString().slice(0, 10);
  return { date, goniometry: { pip: { active: motion(pip), ...(passive && { passive: motion(passive) }) } }, ...rest };
}

type Rest = Readonly<Record<string, unknown>>;

/** The file of an invented case of a left ring finger. */
export const fileOf = (visits: readonly Rest[], rest: Rest = {}): Record<string, unknown> => ({
  schema: CASE_SCHEMA_ID,
  code: 'TEST-1',
  side: 'left',
  digit: 'ring',
  invented: true,
  ...rest,
  visits,
});

/** The case that a file makes. Throws with its problems when it makes none. */
export function caseOf(file: Rest): Case {
  const read = readCase(file);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.value;
}

export const sampleFile = (visits: readonly SampleVisit[] = [], rest: Rest = {}) => fileOf(visits.map(sampleVisit), rest);
export const sampleCase = (visits: readonly SampleVisit[], rest: Rest = {}): Case => caseOf(sampleFile(visits, rest));

export const strip = (
  differential: number,
  places: Readonly<Record<string, string>> = { long: 'enclosed', ring: 'lowered', little: 'enclosed' },
) => ({
  made: { kind: 'strip', block: { id: 'sample', places }, options: { differential }, geometryVersion: '1', flatLength: 160 },
});

export const plate = (mpAngle: number) => ({ made: { kind: 'plate', faces: 'dorsal', mpAngle, options: {}, geometryVersion: '1' } });
