import { describe, expect, it } from 'vitest';
import type { LineArcPath } from '../geometry/path.ts';
import type { DrawnShape } from '../pattern/drawing.ts';
import { goniometerPicture } from './goniometer.ts';

const pathsOf = (lacks: number, bends: number, role: string): readonly LineArcPath[] =>
  goniometerPicture({ lacks, bends }).items.flatMap((item) => (item.role === role ? (item as DrawnShape).paths : []));
/** Direction in which an arm runs from the hub, degrees below the proximal arm's own line. */
const direction = (arm: LineArcPath | undefined) => {
  const [a, b] = arm?.vertices ?? [];
  return a && b ? (Math.atan2(a.y - b.y, b.x - a.x) * 180) / Math.PI : Number.NaN;
};

describe('goniometerPicture: a finger from the side with a goniometer on its back', () => {
  it.each([-20, 0, 25, 60, 90])('the arms enclose the angle that was read: %d', (lacks) => {
    const [proximal, distal] = pathsOf(lacks, 100, 'arm');
    expect(Math.abs(direction(proximal))).toBeCloseTo(180, 6);
    expect(direction(distal)).toBeCloseTo(lacks, 6);
  });

  it('the arms lie on the back: above the finger all along the proximal phalanx', () => {
    const [arm] = pathsOf(25, 100, 'arm');
    const skin = pathsOf(25, 100, 'finger').flatMap((path) => path.vertices.filter((v) => v.x < 40).map((v) => v.y));
    expect(Math.min(...(arm?.vertices ?? []).map((v) => v.y))).toBeGreaterThan(Math.max(...skin.filter((y) => y < 9)));
  });

  it('a finger that bends no further than it straightens has no room of motion', () => {
    expect(pathsOf(25, 85, 'reach')).toHaveLength(1);
    expect(pathsOf(60, 60, 'reach')).toHaveLength(0);
  });

  it('stays finite over every angle that may be typed', () => {
    for (let lacks = -30; lacks <= 120; lacks += 15) {
      for (let bends = -30; bends <= 180; bends += 15) {
        const { extents, items } = goniometerPicture({ lacks, bends });
        const numbers = items.flatMap((item) =>
          item.kind === 'shape' ? item.paths.flatMap((p) => p.vertices.flatMap((v) => [v.x, v.y])) : [],
        );
        expect([...numbers, ...Object.values(extents)].every(Number.isFinite)).toBe(true);
        expect(extents.maxX - extents.minX).toBeLessThan(120);
      }
    }
  });
});
