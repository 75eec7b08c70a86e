import { describe, expect, it } from 'vitest';
import { bendAllowance, bendAlong, bendShift, obliqueTurn } from './bend.ts';

const inputs = { angle: 90, dorsalRadius: 12, palmarDepth: 14, clearance: 0.5, thickness: 2.4, neutral: 0.5, palmarRadius: 3 };
const SLOPES = [-0.4, -0.1, 0, 0.25];

describe('bendAllowance', () => {
  it('is 2.356194 for 90 degrees, R 1, T 1, K 0.5 (sheet-metal handbooks; trade facts 30)', () => {
    expect(bendAllowance(90, 1, 1, 0.5)).toBeCloseTo(2.356194, 6);
  });
  it('is a quarter of the circle through the neutral line', () => {
    expect(bendAllowance(90, 14.5, 2.4, 0.5)).toBeCloseTo((2 * Math.PI * 15.7) / 4, 12);
  });
});

describe('obliqueTurn', () => {
  it('is the angle itself about a line square to the fingers, and at 90 degrees about any line', () => {
    expect(obliqueTurn(45, 0)).toBeCloseTo(45, 12);
    for (const slope of SLOPES) expect(obliqueTurn(90, slope)).toBeCloseTo(90, 12);
  });
  it('turns the plane so far that its trace at the side of the finger stands at the angle', () => {
    for (const slope of SLOPES) {
      const tilt = Math.atan(slope);
      const turn = (obliqueTurn(35, slope) * Math.PI) / 180;
      // The plane holds the line and the turned normal to it; of its directions, the one without a part across.
      const share = Math.tan(tilt) * Math.cos(turn);
      const forward = share * Math.sin(tilt) + Math.cos(tilt) * Math.cos(turn);
      expect((Math.atan2(Math.sin(turn), forward) * 180) / Math.PI).toBeCloseTo(35, 9);
    }
  });
});

describe('bendAlong', () => {
  it('on the back begins at the joint line and runs at the dorsal radius and the clearance round the axis', () => {
    expect(bendAlong('dorsal', 0, inputs)).toMatchObject({ before: 0, insideRadius: 12.5 });
    expect(bendAlong('dorsal', 0, inputs).length).toBeCloseTo((Math.PI / 2) * (12.5 + 1.2), 12);
  });
  it('about an oblique line touches hand and finger where the round about the joint does', () => {
    for (const slope of SLOPES) {
      for (const angle of [20, 45, 90]) {
        const { turn, insideRadius } = bendAlong('dorsal', slope, { ...inputs, angle });
        // From the line where it leaves the hand to where the two planes meet: seen from the finger's side, and square to the line.
        const sagittal = 12.5 * Math.tan((angle * Math.PI) / 360);
        const square = insideRadius * Math.tan((turn * Math.PI) / 360);
        expect(square * Math.hypot(1, slope)).toBeCloseTo(sagittal, 9);
      }
    }
  });
  it('on the palm side takes off what the two legs lose in the corner: at 90 degrees depth/2 + c + R + T on each', () => {
    const bend = bendAlong('palmar', 0, inputs);
    expect(bend.before).toBeCloseTo(14 + 0.5 + 3 + 2.4, 12);
    expect(bendShift(bend)).toBeCloseTo((Math.PI / 2) * (3 + 1.2) - 2 * 19.9, 12);
  });
  it('is flat at 0 degrees, oblique or not', () => {
    for (const slope of SLOPES) {
      for (const face of ['dorsal', 'palmar'] as const)
        expect(bendAlong(face, slope, { ...inputs, angle: 0 })).toMatchObject({ before: 0, length: 0 });
    }
  });
  it('agrees with the corner measured by points: both tangents of the bend lie on the skin planes, moved by the clearance', () => {
    for (const angle of [20, 45, 70]) {
      const bend = bendAlong('palmar', 0, { ...inputs, angle });
      const a = (angle * Math.PI) / 180;
      // The palm's plane is y = 14.5 (axis at 0); the finger's has the normal (-sin a, cos a). The circle of radius R + T touches both.
      const centre = { x: -bend.before, y: 14.5 + 3 + 2.4 };
      const toFinger = -centre.x * Math.sin(a) + centre.y * Math.cos(a) - 14.5;
      expect(toFinger).toBeCloseTo(3 + 2.4, 12);
    }
  });
});
