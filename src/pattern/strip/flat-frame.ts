import { edgeLength } from '../../geometry/ellipse.ts';
import { type LineArcPath, type Point, pointAlong, segmentLength, segmentsOf, type Vertex, vertex } from '../../geometry/path.ts';
import { degrees } from '../../units/angle.ts';
import { rounded } from '../../units/number.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import type { Drawn, Label, Mark } from '../marks.ts';
import { bulgeThrough } from './band-drawing.ts';
import type { StripSettings } from './strip-options.ts';
import { type FlatFrame, type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';

/** The normal of a contact turns by at most this between two places at which the frame is known, radians: between them it turns evenly. */
const STEP = 0.05;
/** An arc of the bent outline is at most so long, mm; then it lies within 0.01 mm of the true edge. */
const ARC = 2.5;
/** A bulge under this is a straight line: a sagitta of under 0.1 nm. */
const STRAIGHT = 1e-7;
const ANGLE_DECIMALS = 3;

/** A stretch of the flat strip that turns evenly, or not at all: a piece of a cone's development or of a straight span. */
interface Stretch {
  /** v of its ends, mm from the seam mark. */
  readonly from: number;
  readonly to: number;
  /** Turn of the strip for each mm of v, radians, positive about a centre on the distal side. */
  readonly bend: number;
  /** The level at which v is true, mm: where the finger's circumference was measured. */
  readonly level: number;
  /** The place of (from, level 0) in the plane, and the strip's heading there, radians. */
  readonly at: Point;
  readonly heading: number;
}

/** The frame of a strip from v = start to end; null where no finger tapers, so that nothing is bent. */
export function flatFrame(path: StripPath, settings: StripSettings, start: number, end: number): FlatFrame | null {
  const bends = bendsOf(path, settings);
  if (bends.length === 0) return null;
  const stretches: Stretch[] = [];
  let [v, at, heading]: [number, Point, number] = [start, { x: 0, y: 0 }, 0];
  const add = (to: number, bend: number, level: number) => {
    if (to - v < SAME_POINT) return;
    const stretch: Stretch = { from: v, to, bend, level, at, heading };
    stretches.push(stretch);
    at = placeOn(stretch, to, 0);
    heading += bend * (to - v);
    v = to;
  };
  for (const b of bends) {
    if (b.to <= v || b.from >= end) continue;
    add(Math.min(end, b.from), 0, 0);
    add(Math.min(end, b.to), b.bend, b.level);
  }
  add(end, 0, 0);
  const stretchAt = (x: number) => stretches.find((s) => x <= s.to) ?? (stretches.at(-1) as Stretch);
  const headingAt = (x: number) => {
    const s = stretchAt(x);
    return s.heading + s.bend * (x - s.from);
  };
  // Turned so that the middle of the strip lies level, where it would lie unbent.
  const middle = (start + end) / 2;
  const [tilt, pivot] = [headingAt(middle), placeOn(stretchAt(middle), middle, 0)];
  const [c, s] = [Math.cos(-tilt), Math.sin(-tilt)];
  return {
    place: (x, level) => {
      const p = placeOn(stretchAt(x), x, level);
      const [dx, dy] = [p.x - pivot.x, p.y - pivot.y];
      return { x: middle + c * dx - s * dy, y: s * dx + c * dy };
    },
    heading: (x) => headingAt(x) - tilt,
    scale: (x, level) => {
      const { bend, level: own } = stretchAt(x);
      return 1 - (level - own) * bend;
    },
    turn: heading,
  };
}

/** A place of a stretch: its own level runs on a circle or straight on, the others beside it. */
function placeOn({ from, bend, level: own, at, heading }: Stretch, v: number, level: number): Point {
  const now = heading + bend * (v - from);
  const across = (angle: number, size: number): Point => ({ x: -size * Math.sin(angle), y: size * Math.cos(angle) });
  const begin = across(heading, own);
  const beside = across(now, level - own);
  const half = (now - heading) / 2;
  const chord = (v - from) * (half === 0 ? 1 : Math.sin(half) / half);
  return {
    x: at.x + begin.x + chord * Math.cos(heading + half) + beside.x,
    y: at.y + begin.y + chord * Math.sin(heading + half) + beside.y,
  };
}

type Bend = Pick<Stretch, 'from' | 'to' | 'bend' | 'level'>;

/** Every piece of a contact with a finger that tapers, by v; the band wound on beyond both seam marks. */
function bendsOf(path: StripPath, settings: StripSettings): readonly Bend[] {
  const once = path.pieces.flatMap(({ u, element }): Bend[] => {
    if (element.kind !== 'arc') return [];
    const { body } = element.contact;
    // The tack is a point, and bends nothing.
    const section = path.hand.sections.find((s) => s.x === body.center.x && s.y === body.center.y);
    if (!section || section.taper === 0 || element.length < SAME_POINT) return [];
    const count = Math.ceil(Math.abs(element.toNormal - element.fromNormal) / STEP);
    const normal = (k: number) => element.fromNormal + ((element.toNormal - element.fromNormal) * k) / count;
    const turn = Math.abs(normal(1) - normal(0)) * Math.sin(section.taper);
    let from = u;
    return Array.from({ length: count }, (_, k) => {
      const to = from + edgeLength(body, normal(k), normal(k + 1));
      const piece = { from, to, bend: turn / (to - from), level: section.rootLevel + section.palmarRoom / 2 };
      from = to;
      return piece;
    });
  });
  // Stretched sheet is as curved, so that it is stretched alike at every level.
  return [-1, 0, 1, 2]
    .flatMap((wound) =>
      once.map((b) => ({
        ...b,
        from: flattened(b.from + wound * path.pathLength, settings),
        to: flattened(b.to + wound * path.pathLength, settings),
      })),
    )
    .sort((a, b) => a.from - b.from);
}

/** The outline bent: each edge in arcs through its true start, middle and end. */
export function bentOutline(outline: LineArcPath, frame: FlatFrame): LineArcPath {
  const vertices = segmentsOf(outline).flatMap((segment) => {
    const count = Math.max(1, Math.floor(segmentLength(segment) / ARC));
    const at = (t: number) => {
      const p = pointAlong(segment, t);
      return frame.place(p.x, p.y);
    };
    return Array.from({ length: count }, (_, k): Vertex => {
      const [from, middle, to] = [at(k / count), at((k + 0.5) / count), at((k + 1) / count)];
      const bulge = bulgeThrough(from, middle, to);
      return vertex(from.x, from.y, Math.abs(bulge) < STRAIGHT ? 0 : bulge);
    });
  });
  return { closed: outline.closed, vertices };
}

/**
 * Marks and words of the unbent strip, laid with v = start (or its end, where u runs to the left) at x = 0, carried onto the bent one: every stroke by its
 * points, every word turned as it stands. As they are where nothing is bent.
 */
export function bentDrawn(drawn: Drawn, { frame, start, end }: FlatStrip, runsRight: boolean): Drawn {
  if (!frame) return drawn;
  const vOf = (x: number) => (runsRight ? x + start : end - x);
  const place = ({ x, y }: Point): Point => {
    const p = frame.place(vOf(x), y);
    return { x: runsRight ? p.x - start : end - p.x, y: p.y };
  };
  const turnAt = ({ x }: Point) => (runsRight ? 1 : -1) * frame.heading(vOf(x));
  return {
    marks: drawn.marks.map(
      (mark): Mark => ({
        ...mark,
        paths: mark.paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, ...place(v) })) })),
        circles: mark.circles.map((circle) => ({ ...circle, center: place(circle.center) })),
      }),
    ),
    labels: drawn.labels.map(
      (label): Label => ({ ...label, at: place(label.at), angle: rounded(label.angle + degrees(turnAt(label.at)), ANGLE_DECIMALS) }),
    ),
  };
}
