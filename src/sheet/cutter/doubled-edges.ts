import { intersections, overlapOf } from '../../geometry/intersect.ts';
import {
  type Box,
  boxOf,
  type LineArcPath,
  type Point,
  pointAlong,
  type Segment,
  segmentBox,
  segmentLength,
  segmentsOf,
} from '../../geometry/path.ts';
import type { Stretch } from '../../geometry/sub-path.ts';
import { DOUBLED_EDGE, DOUBLED_LENGTH } from '../../units/tolerance.ts';

/** A stretch of a later outline that runs along an earlier one. */
export interface DoubledEdge {
  /** Places in the list that was given; `one` comes first. */
  readonly one: number;
  readonly other: number;
  /** Where on the other outline, mm from its first vertex. */
  readonly stretch: Stretch;
  readonly length: number;
  readonly at: Point;
}

/** A point where two outlines cross. */
export interface CrossedOutlines {
  readonly one: number;
  readonly other: number;
  readonly at: Point;
}

interface Edge {
  readonly segment: Segment;
  readonly box: Box;
  readonly start: number;
}

/** Edges that neighbouring outlines have in common, and outlines that cross. Closed outlines, mm. */
export function meetings(outlines: readonly LineArcPath[]): {
  readonly doubled: readonly DoubledEdge[];
  readonly crossed: readonly CrossedOutlines[];
} {
  const boxes = outlines.map((outline) => boxOf([outline]));
  const edges = outlines.map(edgesOf);
  const doubled: DoubledEdge[] = [];
  const crossed: CrossedOutlines[] = [];
  for (let one = 0; one < outlines.length; one++) {
    for (let other = one + 1; other < outlines.length; other++) {
      if (!touches(boxes[one], boxes[other])) continue;
      let crossing: Point | null = null;
      for (const a of edges[one] ?? []) {
        for (const b of edges[other] ?? []) {
          if (!touches(a.box, b.box)) continue;
          const overlap = overlapOf(a.segment, b.segment, DOUBLED_EDGE, DOUBLED_LENGTH);
          if (overlap) {
            const length = segmentLength(b.segment);
            const stretch = { from: b.start + overlap.from * length, to: b.start + overlap.to * length };
            doubled.push({ one, other, stretch, length: overlap.length, at: pointAlong(b.segment, (overlap.from + overlap.to) / 2) });
          } else crossing ??= intersections(a.segment, b.segment).find((p) => isInside(p, a.segment) && isInside(p, b.segment)) ?? null;
        }
      }
      if (crossing) crossed.push({ one, other, at: crossing });
    }
  }
  return { doubled, crossed };
}

function edgesOf(outline: LineArcPath): readonly Edge[] {
  let start = 0;
  return segmentsOf(outline).map((segment) => {
    const edge = { segment, box: segmentBox(segment), start };
    start += segmentLength(segment);
    return edge;
  });
}

/** Outlines may touch in a corner; they cross where both edges go on. */
function isInside(p: Point, { from, to }: Segment): boolean {
  return Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - to.x, p.y - to.y)) > DOUBLED_EDGE;
}

function touches(a: Box | undefined, b: Box | undefined): boolean {
  if (!a || !b) return false;
  const s = DOUBLED_EDGE;
  return a.minX <= b.maxX + s && b.minX <= a.maxX + s && a.minY <= b.maxY + s && b.minY <= a.maxY + s;
}
