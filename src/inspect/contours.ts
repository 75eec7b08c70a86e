import type { Point } from '../geometry/path.ts';
import { type Segment, segmentLength } from '../geometry/segment.ts';
import type { DeclaredSettings } from './declared-settings.ts';
import type { Budget, ReadCurve } from './drawing.ts';

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
  const chained = chain(loose, (gap) => gap <= JOINED, budget);
  contours.push(...chained.closed.map((piece) => closedFrom(piece, 0)));
  const open: Piece[] = [];
  for (const piece of chained.open) {
    const entered = withoutLeadIn(piece, stated) ?? loop(piece) ?? loop(backward(piece));
    if (entered && entered.segments.length > 1 && distance(...endsOf(entered)) <= JOINED) contours.push(closedFrom(entered, 0));
    else if (!entered) open.push(piece);
    else if (entered.segments.length > 0) open.push(entered);
  }
  const bridge = stated.bridge > 0 ? stated.bridge + (stated.kerf ?? 0) : 0;
  const bridged = bridge > 0 ? chain(open, (gap) => Math.abs(gap - bridge) <= BRIDGE_SLACK, budget) : { closed: [], open };
  contours.push(...bridged.closed.map((piece) => closedFrom({ ...piece, count: 1 }, piece.curves.length)));
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

/** Puts pieces of one layer together where an end meets another's: from each piece on as far as it goes, first forward, then backward. */
function chain(
  pieces: readonly Piece[],
  joins: (gap: number) => boolean,
  budget: Budget,
): { readonly closed: Piece[]; readonly open: Piece[] } {
  const left = new Set(pieces);
  const grid = new Map<string, Piece[]>();
  // Cells of 2 mm: an end is looked for in its cell and the eight around it, which takes in every gap that a bridge may have.
  const cell = (p: Point) => [Math.floor(p.x / CELL), Math.floor(p.y / CELL)] as const;
  for (const piece of pieces) {
    for (const end of endsOf(piece)) {
      const key = cell(end).join(' ');
      const list = grid.get(key);
      if (list) list.push(piece);
      else grid.set(key, [piece]);
    }
  }
  const next = (from: Point, layer: string): { piece: Piece; turned: boolean } | null => {
    const [cx, cy] = cell(from);
    const reach = Math.ceil(LARGEST_GAP / CELL);
    let best: { piece: Piece; turned: boolean; gap: number } | null = null;
    for (let x = cx - reach; x <= cx + reach; x++) {
      for (let y = cy - reach; y <= cy + reach; y++) {
        for (const piece of grid.get(`${x} ${y}`) ?? []) {
          budget.compare();
          if (!left.has(piece) || piece.layer !== layer) continue;
          for (const [k, end] of endsOf(piece).entries()) {
            const gap = distance(from, end);
            if (joins(gap) && (best === null || gap < best.gap)) best = { piece, turned: k === 1, gap };
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
    let whole = piece;
    for (let side = 0; side < 2; side++) {
      for (let found = next(endsOf(whole)[1], whole.layer); found && !isClosed(whole, joins); found = next(endsOf(whole)[1], whole.layer)) {
        left.delete(found.piece);
        budget.compare(whole.segments.length / EDGES_COPIED_AS_ONE);
        whole = joined(whole, found.turned ? backward(found.piece) : found.piece);
      }
      if (isClosed(whole, joins)) break;
      whole = backward(whole);
    }
    (isClosed(whole, joins) ? closed : open).push(whole);
  }
  return { closed, open };
}

const CELL = 2;
const LARGEST_GAP = 12;
/** Putting a run together copies its edges, which takes so much less than comparing a pair. */
const EDGES_COPIED_AS_ONE = 50;

function isClosed(piece: Piece, joins: (gap: number) => boolean): boolean {
  const [from, to] = endsOf(piece);
  return (piece.segments.length > 1 || piece.segments[0]?.bulge !== 0) && joins(distance(from, to));
}

function joined(one: Piece, other: Piece): Piece {
  return {
    layer: one.layer,
    segments: [...one.segments, ...other.segments],
    count: one.count + other.count,
    leadIn: one.leadIn || other.leadIn,
    order: Math.max(one.order, other.order),
    curves: [...one.curves, ...other.curves],
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
