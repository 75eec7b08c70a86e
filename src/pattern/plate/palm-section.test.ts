import { describe, expect, it } from 'vitest';
import type { Point } from '../../geometry/path.ts';
import { alongFace, faceLength, type PalmSection, palmSection, scaledPalm, wrapped } from './palm-section.ts';

/** ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, means of women and men, mm (trade facts 9 and 10). */
const ANSUR = [
  { breadth: 78.15, circumference: 186.55, thickness: 26.5 },
  { breadth: 88.26, circumference: 212.28, thickness: 31.3 },
];

function section(breadth: number, circumference: number) {
  const found = palmSection(breadth, circumference);
  if (!found) throw new Error('no section');
  return found;
}

/** Distance from a point to the section's edge: positive outside. */
function distanceToPalm({ breadth, thickness }: PalmSection, { x, y }: Point): number {
  return Math.hypot(Math.max(0, Math.abs(x) - (breadth - thickness) / 2), y) - thickness / 2;
}

describe('palmSection', () => {
  it.each(ANSUR)('with the mean breadth $breadth and circumference $circumference is $thickness thick (ANSUR II)', (mean) => {
    expect(section(mean.breadth, mean.circumference).thickness).toBeCloseTo(mean.thickness, 1);
  });
  it('has the perimeter of two flats and one circle', () => {
    const { breadth, thickness } = section(80, 190);
    expect(2 * (breadth - thickness) + Math.PI * thickness).toBeCloseTo(190, 10);
  });
  it('is null where no stadium has these measures', () => {
    expect(palmSection(80, 160)).toBeNull();
    expect(palmSection(80, 80 * Math.PI)).toBeNull();
  });
});

describe('wrapped', () => {
  const palm = section(82, 197);
  it('keeps lengths, and stays at the offset from the skin', () => {
    let length = 0;
    const half = faceLength(palm, 1.7) / 2;
    let before = wrapped(palm, 1.7, -half);
    const steps = 4000;
    for (let k = 1; k <= steps; k++) {
      const p = wrapped(palm, 1.7, -half + (2 * half * k) / steps);
      length += Math.hypot(p.x - before.x, p.y - before.y);
      expect(distanceToPalm(palm, p)).toBeCloseTo(1.7, 9);
      before = p;
    }
    // Chords are shorter than the round by less than a ten-thousandth.
    expect(length).toBeCloseTo(2 * half, 3);
  });
  it('ends at the mid-lateral lines, half the thickness down', () => {
    const half = faceLength(palm, 1.7) / 2;
    expect(wrapped(palm, 1.7, half).y).toBeCloseTo(0, 9);
    expect(wrapped(palm, 1.7, half).x).toBeCloseTo(41 + 1.7, 9);
  });
  it('is undone by alongFace', () => {
    for (const s of [-44, -30, 0, 12, 40]) expect(alongFace(palm, 1.7, wrapped(palm, 1.7, s).x)).toBeCloseTo(s, 9);
  });
});

describe('scaledPalm', () => {
  it('is a stadium again', () => {
    const small = scaledPalm(section(82, 197), 0.9);
    expect(palmSection(small.breadth, small.circumference)?.thickness).toBeCloseTo(small.thickness, 10);
  });
});
