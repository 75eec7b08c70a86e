import { describe, expect, it } from 'vitest';
import { bendAllowance, bendShift, dorsalBend, palmarBend } from './bend.ts';

const inputs = { angle: 90, mpDepth: 28, clearance: 0.5, thickness: 2.4, neutral: 0.5, palmarRadius: 3 };

describe('bendAllowance', () => {
  it('is 2.356194 for 90 degrees, R 1, T 1, K 0.5 (sheet-metal handbooks; trade facts 30)', () => {
    expect(bendAllowance(90, 1, 1, 0.5)).toBeCloseTo(2.356194, 6);
  });
  it('is a quarter of the circle through the neutral line', () => {
    expect(bendAllowance(90, 14.5, 2.4, 0.5)).toBeCloseTo((2 * Math.PI * 15.7) / 4, 12);
  });
});

describe('dorsalBend', () => {
  it('begins at the joint line and runs at half the depth and the clearance round the axis', () => {
    expect(dorsalBend(inputs)).toMatchObject({ before: 0, insideRadius: 14.5 });
  });
});

describe('palmarBend', () => {
  it('takes off what the two legs lose in the corner: at 90 degrees depth/2 + c + R + T on each', () => {
    const bend = palmarBend(inputs);
    expect(bend.before).toBeCloseTo(14 + 0.5 + 3 + 2.4, 12);
    expect(bendShift(bend)).toBeCloseTo((Math.PI / 2) * (3 + 1.2) - 2 * 19.9, 12);
  });
  it('is flat at 0 degrees', () => {
    expect(palmarBend({ ...inputs, angle: 0 })).toMatchObject({ before: 0, allowance: 0 });
  });
  it('agrees with the corner measured by points: both tangents of the bend lie on the skin planes, moved by the clearance', () => {
    for (const angle of [20, 45, 70]) {
      const bend = palmarBend({ ...inputs, angle });
      const a = (angle * Math.PI) / 180;
      // The palm's plane is y = 14.5 (axis at 0); the finger's has the normal (-sin a, cos a). The circle of radius R + T touches both.
      const centre = { x: -bend.before, y: 14.5 + 3 + 2.4 };
      const toFinger = -centre.x * Math.sin(a) + centre.y * Math.cos(a) - 14.5;
      expect(toFinger).toBeCloseTo(3 + 2.4, 12);
    }
  });
});
