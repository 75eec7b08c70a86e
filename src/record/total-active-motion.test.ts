import { describe, expect, it } from 'vitest';
import { sampleCase } from '../../tests/sample-case.ts';
import { ASSH_SCHEME, gradeOf, NORMAL_TOTAL, otherHandTotal, totalActiveMotion, totalAtVisit } from './total-active-motion.ts';

const m = (extensionDeficit: number, flexion: number) => ({ extensionDeficit, flexion });

describe('totalActiveMotion(joints)', () => {
  // Worked cases in teaching material on total active motion: MP 0-45, PIP 10-60, DIP 10-40 gives 125; normal 85 + 110 + 65 = 260.
  it('gives 125 for MP 0-45, PIP 10-60, DIP 10-40', () => {
    expect(totalActiveMotion({ mp: m(0, 45), pip: m(10, 60), dip: m(10, 40) })).toBe(125);
  });

  it('gives 260 for the normal finger', () => {
    expect(totalActiveMotion({ mp: m(0, 85), pip: m(0, 110), dip: m(0, 65) })).toBe(260);
    expect(NORMAL_TOTAL).toBe(260);
  });

  it('counts hyperextension as no deficit and no gain (common practice, no source)', () => {
    expect(totalActiveMotion({ mp: m(-20, 85), pip: m(-5, 110), dip: m(0, 65) })).toBe(260);
  });

  it.each(['mp', 'pip', 'dip'] as const)('is unknown without %s', (missing) => {
    const { [missing]: _, ...others } = { mp: m(0, 85), pip: m(0, 110), dip: m(0, 65) };
    expect(totalActiveMotion(others)).toBeNull();
  });
});

describe('totalAtVisit(visit, other)', () => {
  const goniometry = {
    mp: { active: { extensionDeficit: 0, flexion: 45 } },
    pip: { active: { extensionDeficit: 10, flexion: 60 } },
    dip: { active: { extensionDeficit: 10, flexion: 40 } },
  };
  const other = (mp: number) => ({
    mp: { extensionDeficit: 0, flexion: mp },
    pip: { extensionDeficit: 0, flexion: 100 },
    dip: { extensionDeficit: 0, flexion: 65 },
  });
  const of = (rest: Record<string, unknown>) => {
    const record = sampleCase([{ pip: [10, 60], rest: { goniometry, ...rest } }]);
    const [visit] = record.visits;
    return visit && totalAtVisit(visit, otherHandTotal(record));
  };

  it('compares with the other hand where that was measured, and names the scheme beside the grade', () => {
    expect(of({ otherHand: other(85) })).toEqual({
      degrees: 125,
      comparedWith: 'otherHand',
      reference: 250,
      percent: 50,
      grade: 'poor',
      scheme: 'ASSH total active motion',
    });
  });

  it('compares with the normal 260 otherwise', () => {
    expect(of({})).toMatchObject({ comparedWith: 'normal', reference: 260, percent: (100 * 125) / 260, grade: 'poor' });
  });

  it("takes the other hand's newest measurement of each joint", () => {
    const record = sampleCase([
      { pip: [10, 60], rest: { otherHand: other(85) } },
      { pip: [10, 60], rest: { otherHand: { mp: { extensionDeficit: 0, flexion: 95 } } } },
    ]);
    expect(otherHandTotal(record)).toBe(260);
  });
});

describe('gradeOf(percent, ASSH_SCHEME)', () => {
  // American Society for Surgery of the Hand as handed down in teaching material (second-hand): excellent 100, good > 75, fair > 50, poor < 50.
  it.each([
    [110, 'excellent'],
    [100, 'excellent'],
    [99.9, 'good'],
    [75.1, 'good'],
    [75, 'fair'],
    [50.1, 'fair'],
    [49.9, 'poor'],
    [0, 'poor'],
    [-20, 'poor'],
  ])('%d %% is %s', (percent, grade) => {
    expect(gradeOf(percent, ASSH_SCHEME)).toBe(grade);
  });

  it('says that the scheme is second-hand', () => {
    expect(ASSH_SCHEME.source).toMatch(/second-hand/);
  });
});
