import type { NeededStrip } from './needed-strip.ts';

/** What blanks of one width serve: strips on index to ring, those that take in the little finger, or both. */
export type Serves = 'withoutLittle' | 'withLittle' | 'all';

/** Strips that are cut from blanks of one width. */
export interface WidthClass {
  readonly serves: Serves;
  /** Of the blanks, mm: as high as the highest of its strips spans, rounded up to a mm. */
  readonly width: number;
  readonly strips: readonly NeededStrip[];
}

const CLASSES = [
  [false, 'withoutLittle'],
  [true, 'withLittle'],
] as const;
/** Rounding of a height that came out of the geometry is no mm more. */
const ROUNDING = 1e-6;

/**
 * Strips by the width of the blank they need, narrow first: those on index to ring lie at nearly one level, those that take in the little finger step back by
 * the setback of its web. One class where that makes no difference, as for straight outlines.
 */
export function widthClasses(strips: readonly NeededStrip[]): readonly WidthClass[] {
  const groups = CLASSES.flatMap(([withLittle, serves]) => {
    const own = strips.filter((strip) => strip.withLittle === withLittle);
    return own.length === 0 ? [] : [{ serves, width: widthFor(own), strips: own }];
  });
  const known = groups.reduce((sum, group) => sum + group.strips.length, 0);
  const isOne = known < strips.length || new Set(groups.map(({ width }) => width)).size <= 1;
  if (isOne)
    return [
      { serves: groups.length === 1 && known === strips.length ? (groups[0]?.serves ?? 'all') : 'all', width: widthFor(strips), strips },
    ];
  return groups.sort((a, b) => a.width - b.width);
}

function widthFor(strips: readonly NeededStrip[]): number {
  return Math.ceil(Math.max(...strips.map(({ height }) => height)) - ROUNDING);
}
