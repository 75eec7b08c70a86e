import { describe, expect, it } from 'vitest';
import { samplePattern } from '../../../tests/sample-pattern.ts';
import { boxOf, signedArea, vertex } from '../../geometry/path.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import type { Part } from '../../pattern/pattern.ts';
import { labelCorners } from '../../pattern/place-marks.ts';
import { numbered, placePart } from './place-part.ts';

const part = samplePattern.parts[0] as Part;

describe('placePart', () => {
  it.each([false, true])('puts the box where it is asked, same area, still sound, turned %s', (turned) => {
    const placed = placePart(part, 30, 40, turned ? Math.PI / 2 : 0);
    const before = boxOf([part.outline]);
    const box = boxOf([placed.outline]);
    const [w, h] = [before.maxX - before.minX, before.maxY - before.minY];
    expect([box.minX, box.minY]).toEqual([expect.closeTo(30, 9), expect.closeTo(40, 9)]);
    expect([box.maxX - 30, box.maxY - 40]).toEqual([expect.closeTo(turned ? h : w, 9), expect.closeTo(turned ? w : h, 9)]);
    expect(signedArea(placed.outline)).toBeCloseTo(signedArea(part.outline), 6);
    expect(outlineFaults(placed.outline, 'outside')).toEqual([]);
  });

  it('four quarter turns bring every mark, hole and label back', () => {
    const { minX, minY } = boxOf([part.outline]);
    let turned = part;
    for (let k = 0; k < 4; k++) turned = placePart(turned, 0, 0, Math.PI / 2);
    const back = placePart(turned, minX, minY, 0);
    const points = (p: Part) => [
      ...[p.outline, ...p.holes, ...p.marks.flatMap((m) => m.paths)].flatMap((path) => path.vertices),
      ...p.marks.flatMap((m) => m.circles.map((c) => ({ ...c.center, bulge: 0 }))),
      ...p.labels.flatMap((l) => labelCorners(l).map((c) => vertex(c.x, c.y))),
    ];
    const [was, is] = [points(part), points(back)];
    expect(is).toHaveLength(was.length);
    for (const [i, p] of was.entries()) {
      expect(is[i]?.x).toBeCloseTo(p.x, 6);
      expect(is[i]?.y).toBeCloseTo(p.y, 6);
      expect(is[i]?.bulge).toBeCloseTo(p.bulge, 9);
    }
  });
});

describe('numbered', () => {
  it('puts the number inside the outline and clear of every mark and label', () => {
    const { part: done, found } = numbered(part, '57');
    expect(found).toBe(true);
    const label = done.labels.at(-1);
    expect(label?.text).toBe('57');
    const words = (l: NonNullable<typeof label>) => boxOf([{ closed: true, vertices: labelCorners(l).map((c) => vertex(c.x, c.y)) }]);
    const own = label
      ? boxOf([{ closed: true, vertices: labelCorners({ ...label, height: label.height * 0.7 }).map((c) => vertex(c.x, c.y)) }])
      : null;
    const outer = boxOf([part.outline]);
    expect(own && own.minX > outer.minX && own.maxX < outer.maxX).toBe(true);
    for (const other of part.labels) {
      const box = words(other);
      expect(own && (own.maxX < box.minX || own.minX > box.maxX || own.maxY < box.minY || own.minY > box.maxY)).toBe(true);
    }
  });

  it('says so when there is no room', () => {
    const tiny: Part = {
      ...part,
      marks: [],
      labels: [],
      holes: [],
      outline: { closed: true, vertices: [vertex(0, 0), vertex(2, 0), vertex(2, 2), vertex(0, 2)] },
    };
    expect(numbered(tiny, '57')).toEqual({ part: tiny, found: false });
  });
});
