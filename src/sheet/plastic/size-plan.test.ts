import { describe, expect, it } from 'vitest';
import { assignSizes, type NeededStrip, type SizePlan, sizePlans, widthClasses } from './size-plan.ts';

const strip = (length: number, withLittle: boolean | null, height = withLittle ? 32.5 : 20, code = `C-${length}`): NeededStrip => ({
  code,
  side: 'left',
  block: null,
  length,
  height,
  relief: [],
  withLittle,
  invented: true,
});

/** Every way to choose so many sizes of whole mm that serve enough, by trying all of them. */
function leastByTrying(strips: readonly NeededStrip[], count: number, leave: number): number {
  const groups = [false, true].map((little) => strips.filter((s) => s.withLittle === little));
  const candidates = groups.flatMap((group) => [...new Set(group.map((s) => Math.ceil(s.length)))].map((length) => ({ group, length })));
  let least = Number.POSITIVE_INFINITY;
  const pick = (from: number, chosen: readonly (typeof candidates)[number][]): void => {
    if (chosen.length === count) {
      let left = 0;
      let area = 0;
      for (const group of groups) {
        const width = Math.ceil(Math.max(...group.map((s) => s.height)));
        for (const s of group) {
          const size = Math.min(...chosen.filter((c) => c.group === group && c.length >= s.length).map((c) => c.length));
          if (size === Number.POSITIVE_INFINITY) left++;
          else area += (size - s.length) * width;
        }
      }
      if (left <= leave) least = Math.min(least, area);
      return;
    }
    for (let k = from; k < candidates.length; k++) pick(k + 1, [...chosen, candidates[k] as (typeof candidates)[number]]);
  };
  pick(0, []);
  return least;
}

const STRIPS = [150.2, 158, 161.7, 170, 171.4, 188]
  .map((length) => strip(length, false))
  .concat([170.5, 176, 181.3, 182, 199.9, 204, 230].map((length) => strip(length, true)));
const plansOf = (more: Partial<Parameters<typeof sizePlans>[0]> = {}): readonly SizePlan[] => {
  const found = sizePlans({ strips: STRIPS, count: 4, most: 5, cover: 1, step: 1, useTrim: 0, ...more });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
};
const areaOff = (plan: SizePlan, useTrim = 0) =>
  assignSizes(STRIPS, plan.sizes, useTrim).reduce((sum, { size, cutOff }) => sum + cutOff * (size?.width ?? 0), 0);

describe('sizes for strips of two widths', () => {
  it('are named by what they serve, each blank as high as its strips span, rounded up', () => {
    expect(widthClasses(STRIPS).map(({ serves, width, strips }) => [serves, width, strips.length])).toEqual([
      ['withoutLittle', 20, 6],
      ['withLittle', 33, 7],
    ]);
    // Straight outlines are all as high as the strip is wide, and lengths from a file tell nothing of fingers.
    expect(widthClasses(STRIPS.map((s) => ({ ...s, height: 20 })))).toMatchObject([{ serves: 'all', width: 20 }]);
    expect(widthClasses([strip(150, null, 20), strip(160, null, 20)])).toMatchObject([{ serves: 'all', width: 20 }]);
  });

  it.each([
    [1, 0],
    [0.85, 1],
  ])('cut off the least area of all ways to choose them, with %d served', (cover, leave) => {
    for (const plan of plansOf({ cover })) {
      const best = leastByTrying(STRIPS, plan.sizes.length, leave);
      expect(areaOff(plan), `${plan.sizes.length} sizes`).toBeCloseTo(best, 6);
      expect(plan.cover).toBeGreaterThanOrEqual(cover);
    }
  });

  it('each strip gets the shortest of its class that serves it, or is cut singly; all are served once', () => {
    const [, , plan] = plansOf({ cover: 0.85 });
    const assigned = assignSizes(STRIPS, plan?.sizes ?? [], 0);
    expect(assigned.map(({ strip: s }) => s)).toEqual(STRIPS);
    for (const { strip: s, size, cutOff } of assigned) {
      const able = (plan?.sizes ?? []).filter((one) => (one.serves === 'withLittle') === s.withLittle && one.length >= s.length);
      expect(size?.length ?? null).toBe(able.length === 0 ? null : Math.min(...able.map(({ length }) => length)));
      expect(cutOff).toBeCloseTo(size === null ? 0 : size.length - s.length, 9);
    }
    expect(plan?.sizes.map(({ id, served }) => [id, served])).toEqual(
      plan?.sizes.map(({ id }) => [id, assigned.filter(({ size }) => size?.id === id).length]),
    );
    expect(assigned.filter(({ size }) => size === null)).toHaveLength(1);
  });

  it('a size may be shorter by so much of the trim as is given up, never by more', () => {
    const [plan] = plansOf({ useTrim: 5 });
    const assigned = assignSizes(STRIPS, plan?.sizes ?? [], 5);
    for (const { strip: s, size, trimUsed } of assigned) {
      expect(trimUsed).toBeCloseTo(Math.max(0, s.length - (size?.length ?? 0)), 9);
      expect(trimUsed).toBeLessThanOrEqual(5);
    }
    expect(Math.max(...assigned.map(({ trimUsed }) => trimUsed))).toBeGreaterThan(0);
  });

  it('by cost: the dearest steps are passed over, and equal costs cut off less', () => {
    // A blank over 200 costs as much as two.
    const found = plansOf({ costOf: ({ length, width }) => width * (length > 200 ? 2 : 1) });
    for (const plan of found) expect(plan.cover).toBe(1);
    const flat = plansOf({ costOf: () => 1 });
    expect(flat).toHaveLength(plansOf().length);
    expect(flat[0]?.sizes.map(({ length }) => length)).toEqual([188, 230]);
  });

  it('fewer sizes than widths are refused', () => {
    const found = sizePlans({ strips: STRIPS, count: 1, most: 5, cover: 1, step: 1, useTrim: 0 });
    expect(found.ok ? '' : found.problems[0]?.message).toContain('index to ring (20 mm), with the little finger (33 mm)');
  });
});
