import { describe, expect, it } from 'vitest';
import { DEMO_HAND, LARGE_HAND, SMALL_HAND, stripOf } from '../../../tests/pdf-samples.ts';
import { blocks } from '../../block/library.ts';
import { boxOf } from '../../geometry/path.ts';
import { cautionsEnglish } from '../../words/cautions.ts';

const all = blocks().flatMap((block) =>
  [SMALL_HAND, DEMO_HAND, LARGE_HAND].map((hand) => ({ block, hand, pattern: stripOf(hand, block.id) })),
);

describe('notes of a strip', () => {
  it.each(all.map((one) => [one.block.id, one.hand.code, one] as const))(
    '%s, %s: the cut list makes the drawn outline with a ruler',
    (_, __, { pattern }) => {
      const [list] = pattern.notes?.cutLists ?? [];
      const [part] = pattern.parts;
      if (!list || !part) throw new Error('a strip has a cut list');
      const box = boxOf([part.outline]);
      expect(list.length).toBeCloseTo(box.maxX - box.minX, 9);
      expect(list.width).toBeGreaterThanOrEqual(box.maxY - box.minY - 1e-9);
      const rows = list.rows.map((row) => row.at);
      expect([...rows].sort((a, b) => a - b)).toEqual(rows);
      expect(rows.at(-1)).toBe(list.length);
      // Each line across the strip is in the list, at the drawn distance from the end with the corner mark.
      const corner = part.marks.find((mark) => mark.role === 'corner');
      const cornerX = corner ? boxOf(corner.paths) : null;
      const fromLeft = cornerX !== null && cornerX.minX - box.minX < box.maxX - cornerX.maxX;
      for (const mark of part.marks.filter((m) => list.rows.some((row) => row.title === m.title))) {
        const { minX } = boxOf(mark.paths);
        const at = fromLeft ? minX - box.minX : box.maxX - minX;
        expect(list.rows.some((row) => row.title === mark.title && Math.abs(row.at - at) < 1e-6)).toBe(true);
      }
      expect(part.marks.filter((m) => list.rows.some((row) => row.title === m.title))).toHaveLength(list.rows.length - 1);
    },
  );

  it('says the way of the strip as the passes go', () => {
    const steps = stripOf(DEMO_HAND, 'long-raised-in-three').notes?.steps.join('\n') ?? '';
    // The worked hand of docs/model.md: long o, index o, index i, long i, ring i, ring o; raised, so the outer course is palmar.
    expect(steps).toContain(
      'palmar to long, palmar to index, round the radial side, dorsal to index, palmar to long, dorsal to ring, round the ulnar side, palmar to ring, and back to the seam',
    );
    expect(steps).toContain('long held in about 20 degrees more MP extension');
    expect(stripOf(DEMO_HAND, 'ring-lowered-in-three').notes?.steps.join('\n')).toContain('ring held in about 20 degrees more MP flexion');
  });

  it('keeps the order of work and every caution', () => {
    const notes = stripOf(DEMO_HAND, 'ring-lowered-in-three').notes;
    const words = ['Measure', 'Paper trial', 'Cut', 'Heat', 'Blot', 'Drape', 'Seam', 'Cool', 'Check full PIP', 'Trim'];
    expect(notes?.steps.map((step, k) => step.startsWith(words[k] ?? '?'))).toEqual(words.map(() => true));
    expect(notes?.cautions).toEqual(Object.values(cautionsEnglish));
  });
});
