import { describe, expect, it } from 'vitest';
import { insidePolygon } from '../geometry/inside.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import { helpingHand } from '../picture/helping-hand.ts';
import { drawMoulded, mouldedScene, type Viewpoint } from '../picture/moulded-hand.ts';
import { handEnglish, handGerman, handSpanish } from '../words/hand-words.ts';
import { named } from './finger-names.ts';

describe('names of fingers on a drawn hand', () => {
  const scene = mouldedScene({ hand: { digits: {} }, side: 'left', step: 3 });
  const views: readonly (readonly [string, Viewpoint])[] = [
    ['from the fingertips', { up: 40 }],
    ['from above', { up: 74 }],
    ['palm up', { roll: 180, up: 74 }],
  ];
  it.each(views)('%s: beyond the tips, on no area of the drawing', (_, view) => {
    const drawn = drawMoulded(scene, { ...view, squares: 140 });
    const areas = drawn.drawing.items.flatMap((item) => (item.kind === 'shape' && item.fill ? item.paths.map((p) => p.vertices) : []));
    for (const { short } of [handEnglish, handSpanish, handGerman]) {
      const names = named(drawn, short, 'ring', 0.54).flatMap((item) => (item.kind === 'text' ? [item] : []));
      expect(names.map(({ text }) => text).toSorted()).toEqual(Object.values(short).toSorted());
      for (const { text, at, height } of names) {
        const half = textWidth(text, height) / 2;
        const points = [-half, 0, half].flatMap((dx) => [0, height].map((dy) => ({ x: at.x + dx, y: at.y + dy })));
        expect(
          areas.filter((area) => points.some((p) => insidePolygon(area, p))),
          text,
        ).toEqual([]);
      }
    }
  });
});

it("a helping hand reaches toward the patient, its thumb over a finger's thickness above its index finger", () => {
  for (const [side, way] of [
    ['left', 1],
    ['right', -1],
  ] as const) {
    const { thumbTip, fingers, wrist } = helpingHand(side);
    const index = fingers.get('index');
    expect(Math.sign((index?.tip.x ?? 0) - wrist.x)).toBe(way);
    expect(thumbTip.y - (index?.middle.y ?? thumbTip.y)).toBeGreaterThan(18);
  }
});
