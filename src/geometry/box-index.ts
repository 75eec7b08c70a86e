import type { Box } from './path.ts';

/** Finds boxes without looking at each. */
export interface BoxIndex {
  /** Places in the list of the boxes that meet this one or touch it, rising. */
  meeting(box: Box): readonly number[];
}

/** Boxes in a leaf, and branches in a branch. */
const IN_ONE = 16;

/** A branch: its box, and either what is below it or places in the list. */
interface Branch {
  readonly box: Box;
  readonly branches: readonly Branch[];
  readonly places: readonly number[];
}

/**
 * An index over boxes that do not change: sorted into strips by x, each strip by y, packed into leaves, these into branches (sort-tile-recursive
 * packing: Leutenegger, Lopez and Edgington, ICDE 1997). Boxes with a coordinate that is no number are found by nothing.
 */
export function boxIndex(boxes: readonly Box[]): BoxIndex {
  const middle = ({ minX, maxX, minY, maxY }: Box) => ({ x: minX + maxX, y: minY + maxY });
  const leaves = packed(
    boxes.map((box, place) => ({ box, place })).filter(({ box }) => box.maxX >= box.minX && box.maxY >= box.minY),
    ({ box }) => middle(box),
    (group): Branch => ({ box: around(group.map(({ box }) => box)), branches: [], places: group.map(({ place }) => place) }),
  );
  let level: readonly Branch[] = leaves;
  while (level.length > 1) {
    level = packed(
      level,
      ({ box }) => middle(box),
      (group): Branch => ({ box: around(group.map(({ box }) => box)), branches: group, places: [] }),
    );
  }
  return {
    meeting(box) {
      const found: number[] = [];
      const open: Branch[] = [...level];
      for (let branch = open.pop(); branch !== undefined; branch = open.pop()) {
        if (!meet(branch.box, box)) continue;
        for (const inner of branch.branches) open.push(inner);
        for (const place of branch.places) if (meet(boxes[place] as Box, box)) found.push(place);
      }
      return found.sort((a, b) => a - b);
    },
  };
}

function packed<One, Group>(
  list: readonly One[],
  middle: (one: One) => { readonly x: number; readonly y: number },
  grouped: (group: readonly One[]) => Group,
): readonly Group[] {
  const strips = Math.ceil(Math.sqrt(list.length / IN_ONE));
  const inStrip = Math.ceil(list.length / Math.max(1, strips));
  const byX = list.toSorted((a, b) => middle(a).x - middle(b).x);
  const groups: Group[] = [];
  for (let from = 0; from < byX.length; from += inStrip) {
    const byY = byX.slice(from, from + inStrip).sort((a, b) => middle(a).y - middle(b).y);
    for (let k = 0; k < byY.length; k += IN_ONE) groups.push(grouped(byY.slice(k, k + IN_ONE)));
  }
  return groups;
}

function around(boxes: readonly Box[]): Box {
  const all = {
    minX: Number.POSITIVE_INFINITY,
    minY: Number.POSITIVE_INFINITY,
    maxX: Number.NEGATIVE_INFINITY,
    maxY: Number.NEGATIVE_INFINITY,
  };
  for (const { minX, minY, maxX, maxY } of boxes) {
    all.minX = Math.min(all.minX, minX);
    all.minY = Math.min(all.minY, minY);
    all.maxX = Math.max(all.maxX, maxX);
    all.maxY = Math.max(all.maxY, maxY);
  }
  return all;
}

function meet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
