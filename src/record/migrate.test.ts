import { describe, expect, it } from 'vitest';
import firstVersion from '../../fixtures/old/case-1.json' with { type: 'json' };
import { sampleFile } from '../../tests/sample-case.ts';
import { CASE_VERSION } from './case-schema.ts';
import { MIGRATIONS, type MigrationStep, migrateCase } from './migrate.ts';
import { readCase } from './read-case.ts';
import { readVisit } from './read-visit.ts';

const codes = (result: ReturnType<typeof migrateCase>) => (result.ok ? [] : result.problems.map((p) => p.code));

/** An invented earlier version, in which the digit was called a finger and visits were called trials. */
const EARLIER: readonly MigrationStep[] = [
  { from: -1, change: () => ({}) },
  { from: 0, change: ({ finger, trials, ...rest }) => ({ ...rest, digit: finger, visits: trials }) },
  ...MIGRATIONS,
];
const { digit, visits, ...others } = sampleFile([{ pip: [20, 90] }]);
const earlierFile = { ...others, schema: 'knucklewright/case@0', finger: digit, trials: visits };

describe('migrateCase(json, steps, version)', () => {
  it('leaves the present version alone', () => {
    const file = sampleFile();
    expect(migrateCase(file)).toMatchObject({ ok: true, value: file });
  });

  it('goes step by step, and the reader takes what comes out', () => {
    const read = readCase(earlierFile, undefined, EARLIER);
    expect(read).toMatchObject({
      ok: true,
      value: { digit: 'ring', visits: [{ date: '2026-01-05' }], file: sampleFile([{ pip: [20, 90] }]) },
    });
  });

  it('reads a case of the first version on: nothing of it is lost', () => {
    const read = readCase(firstVersion);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    for (const [k, visit] of firstVersion.visits.entries()) {
      const now = read.value.visits[k];
      const { seen, wearHoursPerDay } = visit as {
        seen?: { fits?: boolean; redirects?: boolean; marksOnSkin?: boolean; comment?: string };
        wearHoursPerDay?: number;
      };
      expect(now?.date).toBe(visit.date);
      expect(now?.noted).toMatchObject({
        fits: seen?.fits ?? null,
        redirects: seen?.redirects ?? null,
        skin: seen?.marksOnSkin === undefined ? null : seen.marksOnSkin ? 'marks' : 'ok',
        comment: seen?.comment ?? null,
        wear: wearHoursPerDay ?? null,
        pain: null,
      });
    }
    expect(read.value.file.schema).toBe(`knucklewright/case@${CASE_VERSION}`);
  });

  it('takes a visit file of the first version, and refuses what is wrong in it by its present name', () => {
    const visit = { ...firstVersion.visits[1], seen: { marksOnSkin: true } };
    expect(readVisit(visit)).toMatchObject({ ok: true, value: { visit: { noted: { skin: 'marks' } } } });
    expect(readVisit({ ...visit, seen: { marksOnSkin: 'yes' } })).toMatchObject({ ok: false, problems: [{ where: 'skin' }] });
    expect(readVisit({ ...visit, seen: 7 })).toMatchObject({ ok: false });
  });

  it('walks over several versions', () => {
    const steps = [0, 1, 2].map(
      (from): MigrationStep => ({ from, change: (json) => ({ ...json, path: `${String(json.path ?? '')}${from}` }) }),
    );
    expect(migrateCase({ schema: 'knucklewright/case@0' }, steps, 3)).toMatchObject({
      ok: true,
      value: { schema: 'knucklewright/case@3', path: '012' },
    });
  });

  it('refuses a version from which no step leads', () => {
    expect(codes(migrateCase({ schema: 'knucklewright/case@0' }))).toEqual(['CASE_OLDER']);
  });

  it('refuses a newer version and says what to do', () => {
    const newer = migrateCase({ ...sampleFile(), schema: 'knucklewright/case@3', future: true });
    expect(newer).toMatchObject({
      ok: false,
      problems: [{ code: 'CASE_NEWER', message: expect.stringContaining('a newer knucklewright wrote it') }],
    });
  });

  it.each([
    null,
    [],
    'text',
    5,
    {},
    { schema: 'knucklewright/hand@1' },
    { schema: 7 },
    { schema: 'knucklewright/case@-1' },
    { schema: 'knucklewright/case@1e3' },
  ])('refuses %j as no case file', (json) => {
    expect(codes(migrateCase(json))).toEqual(['CASE_SCHEMA']);
  });

  it('has a step from every version since the first', () => {
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(Array.from({ length: CASE_VERSION - 1 }, (_, k) => k + 1));
  });
});
