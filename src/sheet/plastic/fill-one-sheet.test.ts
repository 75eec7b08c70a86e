import { describe, expect, it } from 'vitest';
import { CUT_SHEET, cutUpSheet } from '../../../tests/box-instances.ts';
import { fillOneSheet } from './fill-one-sheet.ts';
import type { PackPart } from './pack-box.ts';

const BOTH = [false, true];
const boxes = (...sizes: readonly (readonly [number, number])[]): PackPart[] =>
  sizes.map(([length, width], part) => ({ part, length, width }));

describe('fillOneSheet', () => {
  it.each([2, 5, 9, 12, 16])('finds back a full sheet cut into %i parts, each once and none over another', (count) => {
    const parts = cutUpSheet(count, count).map(({ length, width }, part) => ({ part, length, width }));
    const put = fillOneSheet(parts, CUT_SHEET, BOTH) ?? [];
    expect(put.map(({ part }) => part).sort((a, b) => a - b)).toEqual(parts.map(({ part }) => part));
    const taken = new Set<string>();
    for (const { part, x, y, turned } of put) {
      const { length, width } = parts[part] as PackPart;
      for (let i = 0; i < (turned ? width : length); i += 1)
        for (let j = 0; j < (turned ? length : width); j += 1) taken.add(`${x + i},${y + j}`);
    }
    // As many squares of 1 mm as the sheet has, so none twice and none beyond it.
    expect(taken.size).toBe(CUT_SHEET.along * CUT_SHEET.across);
    expect(put.every(({ x, y }) => x >= 0 && y >= 0 && x < CUT_SHEET.along && y < CUT_SHEET.across)).toBe(true);
  });

  it('has no answer for a wheel of four boxes round a fifth, which fills its sheet but has no cut from edge to edge', () => {
    const wheel = boxes([3, 2], [2, 3], [3, 2], [2, 3], [1, 1]);
    expect(fillOneSheet(wheel, { along: 5, across: 5 }, BOTH)).toBeNull();
    expect(fillOneSheet(wheel, { along: 6, across: 5 }, BOTH)).not.toBeNull();
  });

  it('keeps to the turns that the grain allows', () => {
    expect(fillOneSheet(boxes([4, 2], [2, 4]), { along: 4, across: 4 }, [false])).toBeNull();
    expect(fillOneSheet(boxes([4, 2], [2, 4]), { along: 4, across: 4 }, BOTH)?.some(({ turned }) => turned)).toBe(true);
  });

  it('leaves what is too much', () => {
    const many = Array.from({ length: 17 }, () => [1, 1] as const);
    expect(fillOneSheet(boxes(...many), { along: 100, across: 100 }, BOTH)).toBeNull();
    expect(fillOneSheet(boxes([3, 3], [3, 3]), { along: 4, across: 4 }, BOTH)).toBeNull();
  });
});
