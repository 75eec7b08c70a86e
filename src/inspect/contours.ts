import { type Point, type Segment, segmentLength } from '../geometry/path.ts';
import type { Budget, DeclaredSettings, ReadCurve } from './drawing.ts';

/** A closed way of the cutter. */
export interface Contour {
  readonly layer: string;
  readonly segments: readonly Segment[];
  /** How many loose pieces it was put together from. */
  readonly pieces: number;
  readonly leadIn: boolean;
  readonly bridges: number;
  /** Place in the file of its last piece. */
  readonly order: number;
  /** Places in the list of the curves that it consists of. */
  readonly curves: readonly number[];
}

/** A way of the cutter that does not close. */
export interface OpenRun {
  readonly layer: string;
  readonly segments: readonly Segment[];
  /** Places in the list of the curves that it consists of. */
  readonly curves: readonly number[];
  readonly from: Point;
  readonly to: Point;
  /** Distance of its ends, mm. */
  readonly gap: number;
}

/** Ends nearer than this belong together: writers round to 0.01 mm or finer. mm */
export const JOINED = 0.01;
/** Slack for the width of a stated bridge, mm: a bridge on an arc is measured along the arc, here along its chord. */
const BRIDGE_SLACK = 0.05;

interface Piece {
  readonly layer: string;
  readonly segments: readonly Segment[];
  readonly count: number;
  readonly leadIn: boolean;
  readonly order: number;
  /** Places in the list of the curves that it consists of. */
  readonly curves: readonly number[];
}

/** Closed contours, also those made of loose pieces end to end, entered by a lead-in, or interrupted by stated bridges; and what stays open. */
export function contoursOf(
  curves: readonly ReadCurve[],
  stated: DeclaredSettings,
  budget: Budget,
): { readonly contours: readonly Contour[]; readonly open: readonly OpenRun[] } {
  const contours: Contour[] = [];
  const loose: Piece[] = [];
  for (const [order, { layer, segments, closed }] of curves.entries()) {
    const piece: Piece = { layer, segments, count: 1, leadIn: false, order, curves: [order] };
    if (closed && segments.length > 0) contours.push(closedFrom(piece, 0));
    else if (segments.length > 0) loose.push(piece);
  }
  const chained = chain(loose, { least: 0, most: JOINED }, budget);
  for (const piece of chained.closed) contours.push(closedFrom(piece, 0));
  const open: Piece[] = [];
  for (const piece of chained.open) {
    const entered = withoutLeadIn(piece, stated) ?? loop(piece) ?? loop(backward(piece));
    if (entered && entered.segments.length > 1 && distance(...endsOf(entered)) <= JOINED) contours.push(closedFrom(entered, 0));
    else if (!entered) open.push(piece);
    else if (entered.segments.length > 0) open.push(entered);
  }
  const bridge = stated.bridge > 0 ? stated.bridge + (stated.kerf ?? 0) : 0;
  const bridged = bridge > 0 ? chain(open, { least: bridge - BRIDGE_SLACK, most: bridge + BRIDGE_SLACK }, budget) : { closed: [], open };
  for (const piece of bridged.closed) contours.push(closedFrom({ ...piece, count: 1 }, piece.curves.length));
  const runs = bridged.open.map((piece): OpenRun => {
    const [from, to] = endsOf(piece);
    return { layer: piece.layer, segments: piece.segments, curves: piece.curves, from, to, gap: distance(from, to) };
  });
  return { contours, open: runs };
}

function closedFrom({ layer, segments, count, leadIn, order, curves }: Piece, bridges: number): Contour {
  return { layer, segments, pieces: count, leadIn, bridges, order, curves };
}

/** A run that ends on one of its own corners is a loop behind a lead-in; null when it is not. */
function loop(piece: Piece): Piece | null {
  const [, end] = endsOf(piece);
  const at = piece.segments.findIndex((segment, k) => k + 1 < piece.segments.length && distance(segment.from, end) <= JOINED);
  return at < 0 ? null : { ...piece, segments: piece.segments.slice(at), leadIn: at > 0 };
}

/** Takes a stated lead-in (a quarter circle, as an arc or as short lines) off either end; null when there is none. */
function withoutLeadIn(piece: Piece, { leadIn }: DeclaredSettings): Piece | null {
  if (leadIn === 0) return null;
  for (const run of [piece, backward(piece)]) {
    const [from] = endsOf(run);
    let passed = 0;
    for (const [k, segment] of run.segments.entries()) {
      passed += segmentLength(segment);
      if (passed < 0.98 * leadIn * (Math.PI / 2)) continue;
      const quarter = passed < 1.01 * leadIn * (Math.PI / 2) && Math.abs(distance(from, segment.to) - leadIn * Math.SQRT2) <= JOINED;
      if (quarter) return { ...run, segments: run.segments.slice(k + 1), leadIn: true };
      break;
    }
  }
  return null;
}

/** Gaps over which ends belong together, mm. */
interface Joins {
  readonly least: number;
  readonly most: number;
}

/** Puts pieces of one layer together where an end meets another's: from each piece on as far as it goes, first forward, then backward. */
function chain(pieces: readonly Piece[], joins: Joins, budget: Budget): { readonly closed: Piece[]; readonly open: Piece[] } {
  const left = new Set(pieces);
  const grid = new Map<string, Piece[]>();
  // Cells as wide as the widest gap: an end is looked for in its own and the eight around it.
  const cell = (p: Point) => [Math.floor(p.x / joins.most), Math.floor(p.y / joins.most)] as const;
  for (const piece of pieces) {
    for (const end of endsOf(piece)) {
      const key = cell(end).join(' ');
      const list = grid.get(key);
      if (list) list.push(piece);
      else grid.set(key, [piece]);
    }
  }
  const next = (from: Point, layer: string): { piece: Piece; turned: boolean } | null => {
    budget.compare(CELLS_AS_PAIRS);
    const [cx, cy] = cell(from);
    let best: { piece: Piece; turned: boolean; gap: number } | null = null;
    for (const dx of AROUND) {
      for (const dy of AROUND) {
        for (const piece of grid.get(`${cx + dx} ${cy + dy}`) ?? []) {
          budget.compare();
          if (!left.has(piece) || piece.layer !== layer) continue;
          for (const [k, end] of endsOf(piece).entries()) {
            const gap = distance(from, end);
            if (gap >= joins.least && gap <= joins.most && (best === null || gap < best.gap)) best = { piece, turned: k === 1, gap };
          }
        }
      }
    }
    return best;
  };
  const closed: Piece[] = [];
  const open: Piece[] = [];
  for (const piece of pieces) {
    if (!left.delete(piece)) continue;
    // Pieces in the order in which they are run through; put together once, when all are found.
    let run: Piece[] = [piece];
    for (let side = 0; side < 2 && !isClosed(run, joins); side++) {
      for (let found = next(endOf(run), piece.layer); found && !isClosed(run, joins); found = next(endOf(run), piece.layer)) {
        left.delete(found.piece);
        run.push(found.turned ? backward(found.piece) : found.piece);
      }
      if (!isClosed(run, joins)) run = run.map(backward).reverse();
    }
    (isClosed(run, joins) ? closed : open).push(joined(run));
  }
  return { closed, open };
}

const AROUND = [-1, 0, 1];
/** Looking into nine cells takes about as long as comparing so many pairs. */
const CELLS_AS_PAIRS = 2;

function endOf(run: readonly Piece[]): Point {
  return endsOf(run.at(-1) as Piece)[1];
}

function isClosed(run: readonly Piece[], { least, most }: Joins): boolean {
  const [first] = run as [Piece];
  const gap = distance(endsOf(first)[0], endOf(run));
  return (run.length > 1 || first.segments.length > 1 || first.segments[0]?.bulge !== 0) && gap >= least && gap <= most;
}

function joined(run: readonly Piece[]): Piece {
  const [first] = run as [Piece];
  return {
    layer: first.layer,
    segments: run.flatMap(({ segments }) => segments),
    count: run.reduce((sum, { count }) => sum + count, 0),
    leadIn: run.some(({ leadIn }) => leadIn),
    order: run.reduce((last, { order }) => Math.max(last, order), 0),
    curves: run.flatMap(({ curves }) => curves),
  };
}

function backward(piece: Piece): Piece {
  return {
    ...piece,
    segments: piece.segments.map(({ from, to, bulge }) => ({ from: to, to: from, bulge: bulge === 0 ? 0 : -bulge })).reverse(),
  };
}

function endsOf({ segments }: Piece): readonly [Point, Point] {
  const [first, last] = [segments[0], segments.at(-1)];
  return [first?.from ?? { x: 0, y: 0 }, last?.to ?? { x: 0, y: 0 }];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
