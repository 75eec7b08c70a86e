import { describe, expect, it } from 'vitest';
import { distalSteps, levels, stepFor } from './distal-steps.ts';

const stretch = (from: number, to: number, edge: number) => ({ from, to, edge, notchLimit: -100 });

describe('levels', () => {
  it('leaves every digit its own length where there is room for the steps', () => {
    expect(levels([stretch(0, 26, 37), stretch(26, 45, 43), stretch(45, 63, 35), stretch(63, 86, 18)])).toEqual([37, 43, 35, 18]);
  });
  it('takes a narrow long digit back so far that its two steps and a straight fit', () => {
    const [index, long, ring] = levels([stretch(0, 18, 20), stretch(18, 30, 40), stretch(30, 48, 20)]);
    expect([index, ring]).toEqual([20, 20]);
    expect(long).toBeLessThan(40);
    const { run, foot, top } = stepFor((long ?? 0) - 20);
    expect(2 * (run + foot + top)).toBeLessThanOrEqual(12);
  });
  it('never lets a digit reach further than its limit', () => {
    const limits = [21, 20.7, 33, 12];
    const found = levels(limits.map((edge, k) => stretch(15 * k, 15 * (k + 1), edge)));
    for (const [k, level] of found.entries()) expect(level).toBeLessThanOrEqual(limits[k] ?? 0);
    expect(found[0]).toBe(found[1]);
  });
});

describe('stepFor', () => {
  it('leaves the upper corner of the slope its 6 mm radius, the hollow at its foot 3, and a straight between', () => {
    for (const h of [1.2, 2, 6, 9, 20]) {
      const { run, foot, top } = stepFor(h);
      expect(Math.hypot(run, h)).toBeGreaterThanOrEqual(foot + top + 1);
      const half = Math.tan(Math.atan2(h, run) / 2);
      expect([foot, top]).toEqual([expect.closeTo(3 * half, 9), expect.closeTo(6 * half, 9)]);
    }
  });
});

describe('distalSteps', () => {
  it('puts each step inside the longer digit, its rounded foot too, so that the edge never rises over the shorter one', () => {
    for (const [levels, sign] of [
      [[30, 38], 1],
      [[38, 30], -1],
    ] as const) {
      const corners = distalSteps([stretch(0, 20, levels[0]), stretch(20, 40, levels[1])], levels, 0);
      const foot = corners.find((c) => c.y === 30);
      expect(sign * ((foot?.x ?? 0) - 20)).toBeCloseTo(stepFor(8).foot, 9);
      expect(corners.every((c) => sign * (c.x - 20) > 0)).toBe(true);
    }
  });
  it('cuts a notch between two digits, no deeper than its limit', () => {
    const limited = { ...stretch(0, 20, 30), notchLimit: 22 };
    const corners = distalSteps([limited, stretch(20, 40, 38)], [30, 38], 20);
    expect(Math.min(...corners.map((c) => c.y))).toBe(22);
    expect(corners).toHaveLength(4);
  });
});
