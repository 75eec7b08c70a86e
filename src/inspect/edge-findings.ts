import { boxIndex } from '../geometry/box-index.ts';
import { intersections, overlapOf } from '../geometry/intersect.ts';
import { arcOf, type Box, headings, type Point, pointAlong, type Segment, segmentBox, segmentLength } from '../geometry/path.ts';
import { DOUBLED_EDGE, DOUBLED_LENGTH } from '../units/tolerance.ts';
import { type Contour, JOINED } from './contours.ts';
import type { Budget, DeclaredSettings, Finding, ReadCurve } from './drawing.ts';

/** Edges shorter than this have no length a machine could see. mm */
const NO_LENGTH = 0.0005;
/** Edges shorter than this make a machine stutter. mm; common practice, no source. */
const STUTTER = 0.1;
/** So many lines of equal length and turn in a row are an arc that was broken up. */
const BROKEN_ARC = 8;
const MOST_TURN = 0.35;

interface Edge {
  readonly segment: Segment;
  readonly box: Box;
  readonly curve: number;
  readonly place: number;
  readonly last: number;
  readonly closed: boolean;
}

/**
 * What is wrong with the edges of what is cut: without length, short, doubled, crossing, arcs broken up. `contours` are the same edges put
 * together, since an arc may also be broken into loose lines.
 */
export function edgeFindings(
  curves: readonly ReadCurve[],
  contours: readonly Contour[],
  stated: DeclaredSettings,
  budget: Budget,
): readonly Finding[] {
  // A free curve was broken up by the reader, not by the file.
  const whole = contours.filter((contour) => !contour.curves.some((k) => curves[k]?.flattened)).map((contour) => contour.segments);
  const findings: Finding[] = [...lengthFindings(curves, stated), ...(stated.shortLines ? [] : whole.flatMap(brokenArcs))];
  const edges = curves.flatMap(({ segments, closed }, curve) =>
    segments.map((segment, place): Edge => ({ segment, box: segmentBox(segment), curve, place, last: segments.length - 1, closed })),
  );
  const sorted = edges.filter((edge) => segmentLength(edge.segment) > NO_LENGTH).sort((a, b) => a.box.minX - b.box.minX);
  const doubled: { at: Point; length: number; curves: Set<number> }[] = [];
  const crossed = new Map<string, { at: Point; same: boolean }>();
  const index = boxIndex(sorted.map((edge) => edge.box));
  for (const [i, a] of sorted.entries()) {
    if (i % 256 === 0) budget.check();
    const near = index.meeting(grown(a.box, DOUBLED_EDGE));
    budget.compare(near.length / FOUND_AS_ONE);
    for (const j of near) {
      if (j <= i) continue;
      const b = sorted[j] as Edge;
      budget.compare();
      const overlap = overlapOf(a.segment, b.segment, DOUBLED_EDGE, DOUBLED_LENGTH);
      if (overlap)
        doubled.push({
          at: pointAlong(b.segment, (overlap.from + overlap.to) / 2),
          length: overlap.length,
          curves: new Set([a.curve, b.curve]),
        });
      else if (!neighbours(a, b)) {
        const at = intersections(a.segment, b.segment).find((p) => goesOn(p, a.segment) && goesOn(p, b.segment));
        const key = [a.curve, b.curve].sort((p, q) => p - q).join(' ');
        if (at && !crossed.has(key)) crossed.set(key, { at, same: a.curve === b.curve });
      }
    }
  }
  const [worst] = [...doubled].sort((a, b) => b.length - a.length);
  if (worst) {
    const sum = doubled.reduce((total, one) => total + one.length, 0);
    findings.push({
      code: 303,
      message: `${doubled.length} edges are drawn twice, ${sum.toFixed(1)} mm together: they would be cut twice`,
      at: worst.at,
    });
  }
  for (const { at, same } of crossed.values()) {
    findings.push(same ? { code: 304, message: 'a contour crosses itself', at } : { code: 310, message: 'two cuts cross each other', at });
  }
  return findings;
}

function lengthFindings(curves: readonly ReadCurve[], stated: DeclaredSettings): readonly Finding[] {
  const findings: Finding[] = [];
  const all = curves.flatMap((curve) => (curve.flattened ? [] : curve.segments));
  const none = all.filter((segment) => segmentLength(segment) <= NO_LENGTH);
  const [first] = none;
  if (first) findings.push({ code: 305, message: `${none.length} edges have no length`, at: first.from });
  // The corners of an outline that was moved by half a kerf are arcs of that radius, as short as the kerf is narrow.
  const corner = (segment: Segment) => stated.kerf !== null && Math.abs((arcOf(segment)?.radius ?? -1) - stated.kerf / 2) < 0.001;
  const short = all.filter((segment) => segmentLength(segment) > NO_LENGTH && segmentLength(segment) < STUTTER && !corner(segment));
  const least = [...short].sort((a, b) => segmentLength(a) - segmentLength(b))[0];
  if (least && !stated.shortLines) {
    const message = `${short.length} edges are shorter than ${STUTTER} mm (the shortest ${segmentLength(least).toFixed(4)} mm): a machine stutters on them`;
    findings.push({ code: 306, message, at: least.from });
  }
  return findings;
}

/** Runs of lines with the same length and the same small turn. */
function brokenArcs(segments: readonly Segment[]): readonly Finding[] {
  let run = 1;
  let longest = { count: 0, end: 0 };
  for (let k = 1; k < segments.length; k++) {
    const [a, b] = [segments[k - 1] as Segment, segments[k] as Segment];
    const before = k > 1 && run > 1 ? turn(segments[k - 2] as Segment, a) : null;
    const here = turn(a, b);
    const alike = a.bulge === 0 && b.bulge === 0 && Math.abs(segmentLength(a) - segmentLength(b)) <= 0.05 * segmentLength(a) + 0.002;
    const bends =
      Math.abs(here) > 0.002 && Math.abs(here) < MOST_TURN && (before === null || Math.abs(here - before) < 0.15 * Math.abs(here) + 0.002);
    run = alike && bends ? run + 1 : alike && Math.abs(here) > 0.002 && Math.abs(here) < MOST_TURN ? 2 : 1;
    if (run > longest.count) longest = { count: run, end: k };
  }
  if (longest.count < BROKEN_ARC) return [];
  const last = segments[longest.end] as Segment;
  const before = segments[longest.end - 1] as Segment;
  const radius = segmentLength(last) / (2 * Math.sin(Math.abs(turn(before, last)) / 2));
  return [{ code: 308, message: `an arc of about ${radius.toFixed(2)} mm radius is drawn as ${longest.count} short lines`, at: last.from }];
}

function turn(a: Segment, b: Segment): number {
  const raw = headings(b).start - headings(a).end;
  return raw - 2 * Math.PI * Math.round(raw / (2 * Math.PI));
}

/** Finding boxes takes so much less than comparing what is in them. */
const FOUND_AS_ONE = 20;

function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function neighbours(a: Edge, b: Edge): boolean {
  if (a.curve !== b.curve) return false;
  const step = Math.abs(a.place - b.place);
  return step === 1 || (step === a.last && a.closed);
}

function goesOn(p: Point, { from, to }: Segment): boolean {
  return Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - to.x, p.y - to.y)) > 2 * JOINED;
}
