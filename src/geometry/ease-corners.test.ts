import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BrokenLine } from './broken-line.ts';
import { heightAt } from './broken-line.ts';
import { easeCorners } from './ease-corners.ts';

const RADIUS = 3.05;
const END_RADIUS = 2;

/** What the edge from corner i to the next is longer than its two arcs, mm: tangents by the angles between the edges. */
function straightLeft(line: BrokenLine, i: number): number {
  const heading = (k: number) => {
    const [from, to] = [line[k], line[k + 1]];
    return from && to ? Math.atan2(to.y - from.y, to.x - from.x) : null;
  };
  const here = heading(i) as number;
  const tangent = (other: number | null, upright: number) =>
    other === null ? END_RADIUS * Math.tan(Math.abs(upright - here) / 2) : RADIUS * Math.tan(Math.abs(other - here) / 2);
  const [from, to] = [line[i] as BrokenLine[number], line[i + 1] as BrokenLine[number]];
  // What lies under the line ends upright: its outline comes up at the left end and goes down at the right one.
  return Math.hypot(to.x - from.x, to.y - from.y) - tangent(heading(i - 1), Math.PI / 2) - tangent(heading(i + 1), -Math.PI / 2);
}

/** Where two lines bend, and between. */
const places = (...lines: readonly BrokenLine[]) => lines.flatMap((line) => line.map(({ x }) => x));

describe('a hollow near an end', () => {
  // The proximal edge of an invented hand whose web lies 30 mm back, upside down: down by 30 mm over 6, then 3.9 mm level to the end.
  const steep = [
    { x: -20, y: 28 },
    { x: -10, y: 28 },
    { x: -3.9, y: -2.5 },
    { x: 0, y: -2.5 },
  ];

  it.each([
    ['at the right', steep],
    ['at the left', steep.map(({ x, y }) => ({ x: -x, y })).reverse()],
  ])('beside a steep edge, %s: the end is lowered by what its arcs need, not to where that edge would lead', (_, line) => {
    const eased = easeCorners(line, RADIUS, END_RADIUS);
    const end = eased.find(({ x }) => x === 0)?.y ?? Number.NaN;
    expect(eased).toHaveLength(4);
    expect(end).toBeLessThan(-2.5);
    expect(end).toBeGreaterThan(-4.5);
    for (const i of [0, 1, 2]) expect(straightLeft(eased, i)).toBeGreaterThan(0.25);
  });

  it('where no lowering makes room it is left out, and the end lies on the edge beyond', () => {
    const line = [
      { x: -30, y: 8 },
      { x: -20, y: 8 },
      { x: -1.8, y: 0 },
      { x: 0, y: 0 },
    ];
    const eased = easeCorners(line, RADIUS, END_RADIUS);
    expect(eased.map(({ x }) => x)).toEqual([-30, -20, 0]);
    expect(eased[2]?.y).toBeCloseTo((-8 / 18.2) * 1.8, 9);
  });

  it('as good as at the end it is left out', () => {
    const eased = easeCorners(
      [
        { x: 0, y: 4 },
        { x: 1e-200, y: 3 },
        { x: 20, y: 10 },
      ],
      RADIUS,
      END_RADIUS,
    );
    expect(eased).toHaveLength(2);
    expect(eased[0]).toEqual({ x: 0, y: expect.closeTo(3, 9) });
  });
});

// A corner that turns by less than 1e-9 is left out, which over 100 mm may add a millionth of a millimetre.
it('takes away and never adds, and ends stay where they are along the line', () => {
  const lines = fc
    .tuple(
      fc.array(fc.tuple(fc.double({ min: 0.3, max: 20, noNaN: true }), fc.double({ min: -30, max: 30, noNaN: true })), {
        minLength: 2,
        maxLength: 9,
      }),
    )
    .map(([steps]) => {
      let x = 0;
      return steps.map(([step, y], k) => {
        x += k === 0 ? 0 : step;
        return { x, y };
      });
    });
  fc.assert(
    fc.property(lines, (line) => {
      const eased = easeCorners(line, RADIUS, END_RADIUS);
      expect([eased[0]?.x, eased.at(-1)?.x]).toEqual([line[0]?.x, line.at(-1)?.x]);
      for (const x of places(line, eased)) expect(heightAt(eased, x)).toBeLessThan(heightAt(line, x) + 1e-6);
    }),
  );
});
