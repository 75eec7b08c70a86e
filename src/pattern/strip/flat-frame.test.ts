import { describe, expect, it } from 'vitest';
import { handJson, SMALLEST, WORKED } from '../../../tests/hands.ts';
import { blockById, blocks } from '../../block/library.ts';
import type { Point } from '../../geometry/path.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { readHand } from '../../hand/read-hand.ts';
import { flatFrame } from './flat-frame.ts';
import { stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip-options.ts';
import type { StripPath } from './strip-path.ts';
import { usualSettings } from './strip-settings.ts';

const settings = usualSettings(DEFAULT_STRIP_OPTIONS);

/** The worked hand, its fingers by so many mm rounder at their roots. */
function tapering(more: number): Hand {
  const json = handJson(WORKED) as { digits: Record<DigitName, { circumference: number; rootCircumference?: number }> };
  for (const digit of Object.values(json.digits)) digit.rootCircumference = digit.circumference + more;
  const read = readHand(json);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
}

function figures(hand: Hand, id: string, changes: Partial<StripOptions> = {}) {
  const block = blockById(id);
  const found = block ? stripFigures(hand, block, { ...DEFAULT_STRIP_OPTIONS, ...changes }) : null;
  if (!found?.ok) throw new Error(found?.problems[0]?.message ?? id);
  return found.value;
}

describe('one round finger', () => {
  // Sheet-metal development of a frustum of radii R and r and slant s (common geometry of handbooks): a ring sector of angle 2 pi (R - r) / s between circles
  // of radius r s / (R - r) and R s / (R - r).
  it.each([
    [10, 9, 24],
    [12, 9.5, 18],
    [9, 9.8, 20],
  ])('of radius %d at its root and %d, %d further along the skin: the frustum’s ring sector', (root, end, slant) => {
    const taper = Math.asin((root - end) / slant);
    const middle = (root + end) / 2;
    const level = slant / 2;
    const contact = { body: { center: { x: 0, y: 0 }, a: middle, b: middle, offset: 0 }, side: 1, hold: 'round', name: '' };
    const length = 2 * Math.PI * middle;
    const path = {
      pathLength: length,
      pieces: [{ course: 'inner', u: 0, startsAt: null, element: { kind: 'arc', contact, fromNormal: 0, toNormal: 2 * Math.PI, length } }],
      hand: { sections: [{ x: 0, y: 0, taper, rootLevel: 0, palmarRoom: slant }] },
    } as unknown as StripPath;
    const frame = flatFrame(path, settings, 0, length);
    if (!frame) throw new Error('nothing bent');
    expect(frame.turn).toBeCloseTo((2 * Math.PI * (root - end)) / slant, 9);
    const apex = (root * slant) / (root - end);
    const [c, h] = [frame.place(0, 0), frame.heading(0)];
    const centre = { x: c.x - apex * Math.sin(h), y: c.y + apex * Math.cos(h) };
    for (const v of [0, 0.21, 0.5, 0.77, 1])
      for (const [z, radius] of [
        [0, apex],
        [level, (middle * slant) / (root - end)],
        [slant, (end * slant) / (root - end)],
      ] as const) {
        const p = frame.place(v * length, z);
        expect(Math.hypot(p.x - centre.x, p.y - centre.y)).toBeCloseTo(Math.abs(radius), 8);
      }
    // So the root's circle is as long as it is round the finger.
    expect(apex * frame.turn).toBeCloseTo(2 * Math.PI * root, 8);
  });
});

describe('fingers that taper', () => {
  it('leave path, marks and levels as they are; a root as round as the finger bends nothing, to the byte', () => {
    const plain = figures(tapering(0), 'ring-raised-in-four');
    const bent = figures(tapering(3), 'ring-raised-in-four');
    expect(plain.flat.frame).toBeNull();
    expect(bent.path.pathLength).toBe(plain.path.pathLength);
    expect(bent.edges.map(({ u, proximal }) => [u, proximal])).toEqual(plain.edges.map(({ u, proximal }) => [u, proximal]));
    const json = handJson(WORKED);
    const without = readHand(json);
    if (!without.ok) throw new Error('not read');
    expect(figures(without.value, 'ring-raised-in-four').flat.outline).toEqual(plain.flat.outline);
  });

  it('turn the strip by their contacts’ angles, distally where they narrow, and the first version not at all', () => {
    const { flat, path } = figures(tapering(3), 'ring-raised-in-three', { seamAllowance: 0, trim: 0 });
    const turned = path.pieces.flatMap(({ element }) => {
      if (element.kind !== 'arc') return [];
      const section = path.hand.sections.find((s) => s.x === element.contact.body.center.x);
      return [Math.abs(element.toNormal - element.fromNormal) * Math.sin(section?.taper ?? 0)];
    });
    expect(flat.frame?.turn).toBeCloseTo(
      turned.reduce((sum, t) => sum + t, 0),
      9,
    );
    expect(flat.frame?.turn).toBeGreaterThan(0.2);
    expect(figures(tapering(-3), 'ring-raised-in-three').flat.frame?.turn).toBeLessThan(-0.2);
    const block = blockById('ring-raised-in-three');
    const first = block && stripFigures(tapering(3), block, { ...DEFAULT_STRIP_OPTIONS, width: 15 }, '1');
    expect(first?.ok && first.value.flat.frame).toBeNull();
  });

  it('lines across stay straight and as long; the least width and sound outlines hold in all blocks', () => {
    for (const { id } of blocks())
      for (const more of [5, -4]) {
        const { flat } = figures(tapering(more), id);
        expect(outlineFaults(flat.outline, 'outside'), id).toEqual([]);
        for (let v = flat.start; v < flat.end; v += 7.3) {
          const [a, b, m] = [0, 20, 10].map((z) => flat.frame?.place(v, z) ?? { x: 0, y: 0 }) as [Point, Point, Point];
          expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(20, 9);
          expect(Math.hypot(m.x - (a.x + b.x) / 2, m.y - (a.y + b.y) / 2)).toBeLessThan(1e-9);
        }
      }
  });

  it('stretched sheet is as curved for each mm', () => {
    const options = { seamAllowance: 0, trim: 0 };
    const plain = figures(tapering(3), 'long-raised-in-three', options).flat;
    const drawn = figures(tapering(3), 'long-raised-in-three', { ...options, stretch: 0.1 }).flat;
    expect(drawn.frame?.turn).toBeCloseTo((plain.frame?.turn ?? 0) / 1.1, 9);
  });

  it('a strip so wide that a small finger would have no half of its circumference left at its edge is refused, with a width that was tried', () => {
    const json = handJson(SMALLEST) as { digits: Record<DigitName, { circumference: number; rootCircumference?: number }> };
    for (const digit of Object.values(json.digits)) digit.rootCircumference = digit.circumference + 8;
    const hand = readHand(json);
    const block = blockById('ring-raised-in-three');
    if (!hand.ok || !block) throw new Error('no hand');
    const at = (width: number) => stripFigures(hand.value, block, { ...DEFAULT_STRIP_OPTIONS, width });
    expect(at(30)).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'STRIP_TOO_BENT',
          where: 'digits.little.rootCircumference',
          message:
            'the little finger tapers so much that at an edge of the strip it would have 33 % of its circumference, which no finger has; at least 50 % is needed. Measure its circumference and root circumference again. A strip 15 mm wide can be drawn.',
        },
      ],
    });
    expect(at(15).ok).toBe(true);
  });

  it('a straight outline is not bent and says that it stands off', () => {
    const { flat, warnings } = figures(tapering(5), 'long-raised-in-three', { outline: 'straight' });
    expect(flat.frame).toBeNull();
    const warning = warnings.find((w) => w.code === 'STRAIGHT_NOT_TAPERED');
    // Half of the width of 20 times the steepest taper, the little finger's being in no such block: ring, 5 over pi 25.
    expect(warning?.value).toBeCloseTo(10 * (5 / (Math.PI * 25)), 6);
  });
});
