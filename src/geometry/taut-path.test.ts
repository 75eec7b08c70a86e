import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../tests/by-night.ts';
import { type Body, ellipsePerimeter, pointAtNormal } from './ellipse.ts';
import { type Contact, hullPerimeter, laidAgain, lengthLaidAgain, type Side, tautPath } from './taut-path.ts';

const disc = (x: number, radius: number): Body => ({ center: { x, y: 0 }, a: radius, b: radius, offset: 0 });
const round = (body: Body, side: Side): Contact => ({ body, side, hold: 'round', name: '' });
const lengthOf = (contacts: readonly Contact[]) => {
  const path = tautPath(contacts);
  return path.ok ? path.length : Number.NaN;
};

describe('belts round two discs', () => {
  // Exact belt-length formulas of mechanical handbooks (trade facts, row 29).
  it.each([
    [150, 75, 600, 1916.2456, 1992.2667],
    [5, 2.5, 20, 63.874854, 66.408889],
    [10, 10, 22, 106.831853, 126.806022],
  ])('radii %d and %d at %d: open %d, crossed %d', (big, small, distance, open, crossed) => {
    const [a, b] = [disc(0, big), disc(distance, small)];
    expect(lengthOf([round(a, 1), round(b, 1)])).toBeCloseTo(open, 4);
    expect(lengthOf([round(a, -1), round(b, -1)])).toBeCloseTo(open, 4);
    expect(lengthOf([round(a, 1), round(b, -1)])).toBeCloseTo(crossed, 4);
  });

  it('do not take the common crossed-belt approximation, which is 1.8 mm short at finger spacing', () => {
    const approximate = 2 * 22 + Math.PI * 20 + 40 ** 2 / (4 * 22);
    expect(126.806022 - approximate).toBeCloseTo(1.79, 2);
  });
});

describe('one body', () => {
  it('offset by r is longer by 2 pi r (Steiner)', () => {
    // 20 x 16 ellipse offset 1.2 is 64.263158 (trade facts, row 28).
    const body = { center: { x: 3, y: -2 }, a: 10, b: 8, offset: 1.2 };
    expect(lengthOf([round(body, 1)])).toBeCloseTo(64.263158, 6);
    expect(hullPerimeter([body])).toBeCloseTo(ellipsePerimeter(10, 8) + 2.4 * Math.PI, 9);
  });
});

const digit = fc.record({
  a: fc.double({ min: 5, max: 12, noNaN: true }),
  b: fc.double({ min: 5, max: 12, noNaN: true }),
  y: fc.double({ min: -8, max: 8, noNaN: true }),
});
const row = (digits: readonly { a: number; b: number; y: number }[], gap: number): Body[] => {
  let x = 0;
  return digits.map(({ a, b, y }, k) => {
    x += k === 0 ? 0 : (digits[k - 1]?.a ?? 0) + gap + a;
    return { center: { x, y }, a, b, offset: 0 };
  });
};

describe('a path laid again', () => {
  it('round bodies of other sizes and places is as long as one laid anew, or is none', () => {
    const body = fc.record({
      a: fc.double({ min: 5, max: 12, noNaN: true }),
      b: fc.double({ min: 5, max: 12, noNaN: true }),
      y: fc.double({ min: -8, max: 8, noNaN: true }),
      offset: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    const three = fc.tuple(body, body, body);
    fc.assert(
      fc.property(three, three, fc.double({ min: 0, max: 0.3, noNaN: true }), (before, after, share) => {
        const contactsOf = (list: typeof before) =>
          list.map(({ a, b, y, offset }, k): Contact => {
            const body = { center: { x: 32 * k, y }, a, b, offset };
            return { body, side: k === 1 ? -1 : 1, hold: k === 1 ? 'touch' : 'round', name: `${k}` };
          });
        const between = before.map((one, k) => {
          const other = after[k] as typeof one;
          const mixed = (key: 'a' | 'b' | 'y' | 'offset') => one[key] + share * (other[key] - one[key]);
          return { a: mixed('a'), b: mixed('b'), y: mixed('y'), offset: mixed('offset') };
        }) as unknown as typeof before;
        const path = tautPath(contactsOf(before));
        if (!path.ok) return;
        const bodies = contactsOf(between).map((contact) => contact.body);
        const again = laidAgain(path, bodies);
        if (again) expect(lengthLaidAgain(path, again)).toBeCloseTo(lengthOf(contactsOf(between)), 9);
        const same = laidAgain(
          path,
          contactsOf(before).map((contact) => contact.body),
        );
        // Newton's method may be unsure of lines that cross between long bodies close together; then the path is laid anew.
        const isSure = before.slice(1).every((to, k) => {
          const from = before[k] as typeof to;
          const reaches = [from, to].map(({ a, b, offset }) => Math.max(a, b) + offset);
          const across = (reaches[0] as number) + (reaches[1] as number);
          return 32 ** 2 + (to.y - from.y) ** 2 - across ** 2 > (Math.abs(from.a - from.b) + Math.abs(to.a - to.b)) ** 2;
        });
        if (same || isSure) expect(same && lengthLaidAgain(path, same)).toBeCloseTo(path.length, 9);
      }),
      { numRuns: times(100, 1000) },
    );
  });

  it('is none where a body that was left out sticks through, and where one that was touched is passed by', () => {
    const at = (y: number): Contact[] => [
      round(disc(0, 5), 1),
      { body: { center: { x: 20, y }, a: 5, b: 5, offset: 0 }, side: 1, hold: 'touch', name: 'between' },
      round(disc(40, 5), 1),
    ];
    const [low, high] = [tautPath(at(-3)), tautPath(at(3))];
    if (!low.ok || !high.ok) throw new Error('no path');
    expect([low.kept, high.kept]).toEqual([
      [0, 1, 2],
      [0, 2],
    ]);
    const bodies = (y: number) => at(y).map((contact) => contact.body);
    expect(laidAgain(low, bodies(3))).toBeNull();
    expect(laidAgain(high, bodies(-3))).toBeNull();
    expect(laidAgain(low, bodies(-2))).not.toBeNull();
  });
});

describe('hullPerimeter', () => {
  it('is the perimeter of the convex hull of many points of the edges', () => {
    fc.assert(
      fc.property(fc.array(digit, { minLength: 2, maxLength: 4 }), (digits) => {
        const bodies = row(digits, 1);
        const points = bodies.flatMap((body) => Array.from({ length: 720 }, (_, k) => pointAtNormal(body, (k * Math.PI) / 360)));
        const perimeter = polygonHullPerimeter(points);
        const exact = hullPerimeter(bodies) ?? Number.NaN;
        expect(exact).toBeGreaterThanOrEqual(perimeter - 1e-9);
        expect(exact - perimeter).toBeLessThan(1e-4 * exact);
      }),
      { numRuns: times(30, 60) },
    );
  });
});

describe('a woven path', () => {
  it('is the same length whichever way it is travelled, mirrored either way or seen upside down', () => {
    const sides: readonly Side[] = [1, -1];
    fc.assert(
      fc.property(fc.array(digit, { minLength: 3, maxLength: 3 }), fc.constantFrom(...sides), (digits, side) => {
        const woven = (bodies: readonly Body[], around: Side): number => {
          const [first, middle, last] = bodies as [Body, Body, Body];
          const touch = (body: Body, s: Side): Contact => ({ body, side: s, hold: 'touch', name: '' });
          return lengthOf([
            round(first, around),
            touch(middle, -around as Side),
            round(last, around),
            touch({ ...middle, offset: 2.4 }, around),
          ]);
        };
        const bodies = row(digits, 4);
        const upsideDown = bodies.map((b) => ({ ...b, center: { x: b.center.x, y: -b.center.y } }));
        const mirrored = bodies.map((b) => ({ ...b, center: { x: -b.center.x, y: b.center.y } })).reverse();
        const length = woven(bodies, side);
        expect(length).toBeGreaterThan(0);
        // Mirrored and then travelled from its other end, the path has its bodies on the same sides.
        expect(woven(mirrored, side)).toBeCloseTo(length, 8);
        expect(woven(upsideDown, -side as Side)).toBeCloseTo(length, 8);
      }),
      { numRuns: times(40, 80) },
    );
  });

  it('has no answer, and says so, where bodies overlap that it must cross between', () => {
    const path = tautPath([round(disc(0, 10), 1), round(disc(5, 10), -1)]);
    expect(path.ok).toBe(false);
  });
});

/** Andrew's monotone chain; a test's own hull, apart from the code under test. */
function polygonHullPerimeter(points: readonly { x: number; y: number }[]): number {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const half = (list: readonly { x: number; y: number }[]) => {
    const chain: { x: number; y: number }[] = [];
    for (const p of list) {
      for (;;) {
        const [o, a] = [chain.at(-2), chain.at(-1)];
        if (!o || !a || (a.x - o.x) * (p.y - o.y) - (a.y - o.y) * (p.x - o.x) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  const hull = [...half(sorted), ...half(sorted.reverse())];
  return hull.reduce((sum, p, k) => {
    const q = hull[(k + 1) % hull.length] ?? p;
    return sum + Math.hypot(p.x - q.x, p.y - q.y);
  }, 0);
}
