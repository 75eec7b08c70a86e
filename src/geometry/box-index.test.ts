import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxIndex } from './box-index.ts';

const side = fc.integer({ min: -50, max: 50 });
const box = fc.tuple(side, side, fc.nat(20), fc.nat(20)).map(([minX, minY, w, h]) => ({ minX, minY, maxX: minX + w, maxY: minY + h }));

describe('boxIndex', () => {
  it('finds what looking at each finds, touching boxes too, in the order of the list', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 200 }), box, (boxes, at) => {
        const each = boxes.flatMap((b, k) => (b.minX <= at.maxX && at.minX <= b.maxX && b.minY <= at.maxY && at.minY <= b.maxY ? [k] : []));
        expect(boxIndex(boxes).meeting(at)).toEqual(each);
      }),
      { numRuns: 60 },
    );
  });

  it('takes many equal boxes, and passes over boxes that are none', () => {
    const same = { minX: 1, minY: 1, maxX: 2, maxY: 2 };
    const index = boxIndex([...Array.from({ length: 3000 }, () => same), { ...same, maxX: Number.NaN }]);
    expect(index.meeting(same)).toHaveLength(3000);
    expect(index.meeting({ minX: 3, minY: 3, maxX: 4, maxY: 4 })).toEqual([]);
  });
});
