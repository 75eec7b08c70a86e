import { describe, expect, it } from 'vitest';
import { type BendForm, bendLine, bendLines, costOf, leastCost, type MpJoint } from './bend-forms.ts';

/** The demonstration hand's joints on its plate, mm, rounded. */
const JOINTS: readonly MpJoint[] = [
  { digit: 'index', x: -30.5, y: -2 },
  { digit: 'long', x: -8.5, y: 0 },
  { digit: 'ring', x: 12.8, y: -5 },
  { digit: 'little', x: 32.5, y: -12 },
];

function costs(joints: readonly MpJoint[], angle: number) {
  const of = (form: BendForm) => costOf(form, form === 'kinked' ? null : bendLines(form, joints), joints, angle);
  return { straight: of('straight'), split: of('split'), kinked: of('kinked') };
}

describe('bendLine', () => {
  it('lies half-way between the joints furthest off on both sides, and no other slope comes nearer', () => {
    const { slope, level, miss } = bendLine(JOINTS);
    const off = JOINTS.map((j) => j.y - level - slope * j.x);
    expect(Math.max(...off)).toBeCloseTo(miss, 12);
    expect(Math.min(...off)).toBeCloseTo(-miss, 12);
    for (let other = -0.6; other < 0.6; other += 0.01) {
      const offsets = JOINTS.map((j) => j.y - other * j.x);
      expect((Math.max(...offsets) - Math.min(...offsets)) / 2).toBeGreaterThanOrEqual(miss - 1e-12);
    }
  });
  it('is level through one joint and goes through two', () => {
    expect(bendLine(JOINTS.slice(3))).toMatchObject({ slope: 0, level: -12, miss: 0 });
    expect(bendLine(JOINTS.slice(0, 2)).miss).toBeCloseTo(0, 12);
  });
});

describe('the cost of a bend', () => {
  it('of the demonstration hand: straight misses by about 3, split by 1.8, kinked stretches by 0.05 to 0.08 at 45 and over 0.2 at 90', () => {
    for (const angle of [45, 90]) {
      const { straight, split, kinked } = costs(JOINTS, angle);
      expect(straight?.miss).toBeGreaterThan(2.5);
      expect(straight?.miss).toBeLessThan(3.2);
      expect(split?.miss).toBeGreaterThan(1.6);
      expect(split?.miss).toBeLessThan(1.9);
      expect(kinked?.stretch).toBeGreaterThan(angle === 45 ? 0.05 : 0.2);
      expect(leastCost(costs(JOINTS, angle))).toBe('split');
    }
  });
  it('is nothing for a kinked line over joints in one level line, whatever the angle', () => {
    const level = JOINTS.map((j) => ({ ...j, y: -3 }));
    expect(costs(level, 90)).toMatchObject({ straight: { cost: 0 }, kinked: { cost: 0 } });
    expect(leastCost(costs(level, 90))).toBe('straight');
  });
  it('cuts no slot where a line without one keeps within the limits', () => {
    expect(leastCost(costs(JOINTS, 10))).toBe('kinked');
    expect(leastCost(costs(JOINTS.slice(1), 90))).toBe('straight');
  });
  it('has no split without ring and little finger', () => {
    expect(bendLines('split', JOINTS.slice(0, 3))).toBeNull();
    expect(bendLines('split', JOINTS.slice(3))).toBeNull();
  });
});
