import { distanceToSegment } from '../../geometry/broken-line.ts';
import { distanceToEllipse, pointAtNormal } from '../../geometry/ellipse.ts';
import { distanceBetween, type Point } from '../../geometry/path.ts';
import type { Problem } from '../../units/result.ts';
import type { Course, CoursePiece } from './strip-courses.ts';
import type { StripSettings } from './strip-options.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingSection } from './strip-sections.ts';

/** Distance between the points at which a path is looked at, mm: a chord of it lies within 0.004 mm of the tightest finger's edge. */
const PROOF_STEP = 0.5;
/** How much nearer than one thickness two layers may seem, and how far a path may seem to enter a digit. mm */
const LAYER_SLACK = 0.1;
const BODY_SLACK = 0.01;
/** A closed path that does not cross itself turns once round; sums of its small turns are rounded. radians */
const TURN_SLACK = 1e-6;

interface PathPoint extends Point {
  readonly course: Course;
}

/**
 * What is wrong with a path, by looking at points of it and not at how it was laid (model rule 10): it turns once round, does not cross itself,
 * enters no digit, and its two courses keep a thickness apart. An empty list proves it. That held digits are touched is checked where it is laid.
 */
export function pathFaults(path: StripPath, options: StripSettings): readonly Problem[] {
  const points = path.pieces.flatMap(pointsOn).filter((p, k, all) => distanceBetween(p, all[(k + 1) % all.length] ?? p) > 1e-9);
  const faults: string[] = [];
  const turns = totalTurn(points) / (2 * Math.PI);
  if (Math.abs(Math.abs(turns) - 1) > TURN_SLACK) faults.push(`it turns ${turns.toFixed(2)} times round instead of once`);
  if (crossesItself(points)) faults.push('it crosses itself');
  const entered = deepestEntry(path, points, options.skinClearance + options.thickness / 2);
  if (entered > BODY_SLACK) faults.push(`it runs ${entered.toFixed(3)} mm into a finger`);
  // The first version's tack let the layers run into each other at small differentials; its files say that another geometry drew them.
  if (path.hand.version !== '1') {
    const layers = leastLayerDistance(path, points, options.thickness);
    if (layers < options.thickness - LAYER_SLACK) faults.push(`its layers are only ${layers.toFixed(2)} mm apart`);
  }
  return faults.map((fault) => ({
    code: 'PATH_UNSOUND',
    where: 'digits',
    message: `the path of the strip is not sound: ${fault}.`,
    kind: 'refused',
  }));
}

function pointsOn({ course, element }: CoursePiece): readonly PathPoint[] {
  const count = Math.max(1, Math.ceil(element.length / PROOF_STEP));
  const at = (t: number): Point =>
    element.kind === 'line'
      ? { x: element.from.x + t * (element.to.x - element.from.x), y: element.from.y + t * (element.to.y - element.from.y) }
      : pointAtNormal(element.contact.body, element.fromNormal + t * (element.toNormal - element.fromNormal));
  return Array.from({ length: count }, (_, k) => ({ course, ...at(k / count) }));
}

/** Sum of the turns from each chord to the next, radians. */
function totalTurn(points: readonly Point[]): number {
  const headings = points.map((p, k) => {
    const next = points[(k + 1) % points.length] ?? p;
    return Math.atan2(next.y - p.y, next.x - p.x);
  });
  return headings.reduce((sum, heading, k) => {
    const turn = heading - (headings.at(k - 1) ?? heading);
    return sum + turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  }, 0);
}

/** Whether two chords that are no neighbours meet; chords are taken in the order of their left ends, so that few pairs are tried. */
function crossesItself(points: readonly Point[]): boolean {
  const chords = points.map((from, k) => {
    const to = points[(k + 1) % points.length] ?? from;
    return { k, from, to, minX: Math.min(from.x, to.x), maxX: Math.max(from.x, to.x) };
  });
  const sorted = chords.toSorted((a, b) => a.minX - b.minX);
  return sorted.some((one, i) => {
    for (let j = i + 1; j < sorted.length; j++) {
      const other = sorted[j] as typeof one;
      if (other.minX > one.maxX) return false;
      const steps = Math.abs(one.k - other.k);
      if (steps > 1 && steps < points.length - 1 && cross(one.from, one.to, other.from, other.to)) return true;
    }
    return false;
  });
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** How far the neutral line comes nearer to a digit than half the sheet and the clearance allow, at its worst. mm */
function deepestEntry({ hand }: StripPath, points: readonly Point[], offset: number): number {
  let worst = 0;
  for (const s of hand.sections) {
    const reach = s.halfWidth + offset;
    for (const p of points) {
      if (Math.abs(p.x - s.x) >= reach) continue;
      const from = { x: p.x - s.x, y: p.y - s.y };
      if (leastDistanceTo(s, from, offset) >= offset - BODY_SLACK / 2) continue;
      worst = Math.max(worst, offset - distanceToEllipse(s.halfWidth, s.standingHalfDepth, from));
    }
  }
  return worst;
}

/**
 * A distance that a point has at least from a digit, mm: from a straight line that touches the digit, square to the ellipse through the point that is larger than the digit by
 * `offset` each way. Of a point that is so far from the digit it is nearly the distance itself.
 */
function leastDistanceTo({ halfWidth: a, standingHalfDepth: b }: StandingSection, { x, y }: Point, offset: number): number {
  const [nx, ny] = [x / (a + offset) ** 2, y / (b + offset) ** 2];
  const size = Math.sqrt(nx * nx + ny * ny);
  return size === 0 ? Number.NEGATIVE_INFINITY : (nx * x + ny * y - Math.sqrt((a * nx) ** 2 + (b * ny) ** 2)) / size;
}

/** Least distance between the two courses from the first digit's centre to the last one's; `enough` where they are nowhere nearer. mm */
function leastLayerDistance({ hand }: StripPath, points: readonly PathPoint[], enough: number): number {
  const low = hand.sections[0]?.x ?? 0;
  const high = hand.sections.at(-1)?.x ?? 0;
  const within = points.filter((p) => p.x >= low && p.x <= high);
  const inner = within.filter((p) => p.course === 'inner').toSorted((a, b) => a.x - b.x);
  let least = enough;
  for (const p of within) {
    if (p.course !== 'outer') continue;
    // In the order of x, only the chords within the least distance found so far can be nearer.
    for (let k = lastBefore(inner, p.x - least); k + 1 < inner.length; k++) {
      const [from, to] = [inner[k] as Point, inner[k + 1] as Point];
      if (from.x > p.x + least) break;
      least = Math.min(least, distanceToSegment(p, from, to));
    }
  }
  return least;
}

/** Place of the last point before x, 0 where there is none; points in the order of x. */
function lastBefore(points: readonly Point[], x: number): number {
  let [low, high] = [0, points.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] as Point).x < x) low = middle + 1;
    else high = middle;
  }
  return Math.max(0, low - 1);
}
