import { describe, expect, it } from 'vitest';
import type { Point } from '../geometry/path.ts';
import { strainAt } from './judge-plate.ts';

/** Strain is found from corners of a square of 0.01 mm, whose chords are a millionth off a bend of a few mm. */
const CLOSE = 1e-5;

const places: readonly Point[] = [-20, -3, 0, 8, 31].flatMap((x) => [12, 25, 48].map((y) => ({ x, y })));

describe('strainAt', () => {
  it('is nothing for a sheet rolled to a cylinder', () => {
    for (const p of places) {
      const { stretch, shear } = strainAt(({ x, y }) => ({ x: 9 * Math.sin(x / 9), y, z: 9 * Math.cos(x / 9) }), p);
      expect(stretch).toBeLessThan(CLOSE);
      expect(shear).toBeLessThan(0.05);
    }
  });

  it('is nothing for a ring sector rolled to the frustum that it develops, whose angle is 2 pi sin(half the cone angle)', () => {
    // Development of a cone (descriptive geometry): slant lengths stay, angles about the apex are divided by sin(gamma).
    for (const gamma of [0.1, 0.35, 0.8]) {
      const into = ({ x, y }: Point) => {
        const slant = Math.hypot(x, y);
        const round = Math.atan2(x, y) / Math.sin(gamma);
        const radius = slant * Math.sin(gamma);
        return { x: radius * Math.sin(round), y: slant * Math.cos(gamma), z: radius * Math.cos(round) };
      };
      for (const p of places) expect(strainAt(into, p).stretch).toBeLessThan(2e-3 * CLOSE ** 0.5);
    }
  });

  it('finds the stretch of a sheet laid on a ball, which no sheet can be without', () => {
    const into = ({ x, y }: Point) => {
      const [a, b] = [x / 60, y / 60];
      return { x: 60 * Math.sin(a), y: 60 * Math.cos(a) * Math.sin(b), z: 60 * Math.cos(a) * Math.cos(b) };
    };
    expect(strainAt(into, { x: 30, y: 10 }).stretch).toBeCloseTo(1 - Math.cos(0.5), 3);
  });

  it('finds a plain stretch and a plain shear', () => {
    expect(strainAt(({ x, y }) => ({ x: 1.07 * x, y, z: 0 }), { x: 3, y: 4 }).stretch).toBeCloseTo(0.07, 6);
    expect(strainAt(({ x, y }) => ({ x: x + 0.2 * y, y, z: 0 }), { x: 3, y: 4 }).shear).toBeCloseTo((Math.atan(0.2) * 180) / Math.PI, 4);
  });
});
