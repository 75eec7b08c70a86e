import { describe, expect, it } from 'vitest';
import { headings, segmentsOf } from '../../geometry/path.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import { gaugeOutline } from './angle-gauge.ts';

describe('gaugeOutline', () => {
  it.each([0, 5, 45, 90])('at %d degrees is sound and its two palmar edges stand at that angle', (angle) => {
    const outline = gaugeOutline(angle);
    expect(outlineFaults(outline, 'outside')).toEqual([]);
    const [, palm, finger] = segmentsOf(outline);
    if (!palm || !finger) throw new Error('no edges');
    const bend = angle === 0 ? 0 : headings(palm).end - headings(finger).start;
    expect((bend * 180) / Math.PI).toBeCloseTo(angle, 9);
  });
});
