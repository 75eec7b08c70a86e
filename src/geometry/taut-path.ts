import { ANGLE_SOLVED, LENGTH_COMPARED, WRONG_TURN } from '../units/tolerance.ts';
import { type Body, edgeLength, pointAtNormal, support } from './ellipse.ts';
import type { Point } from './path.ts';
import { rootBetween } from './root.ts';

/** +1: the body lies on the left of the directed path, -1: on its right. */
export type Side = 1 | -1;

/** Sign changes are looked for in this many steps when the plain bracket has none (bodies that overlap at an odd slant). */
const SCAN_STEPS = 90;

/** Where a line of direction `psi` (radians), tangent to a body on the given side, crosses its own left normal: n·p of the line. */
function tangentOffset(body: Body, side: Side, psi: number): number {
  const nx = -Math.sin(psi);
  const ny = Math.cos(psi);
  return nx * body.center.x + ny * body.center.y - side * support(body, nx, ny);
}

/**
 * Direction (radians) of the line that leaves `first` and arrives at `second`, tangent to both with each on its side.
 * Null when there is none: one body swallows the other, or a crossed tangent is asked of bodies that overlap.
 */
function bitangentDirection(first: Body, firstSide: Side, second: Body, secondSide: Side): number | null {
  const centreLine = Math.atan2(second.center.y - first.center.y, second.center.x - first.center.x);
  const quick = byNewton(first, firstSide, second, secondSide, centreLine);
  if (quick !== null) return quick;
  const miss = (psi: number) => tangentOffset(first, firstSide, psi) - tangentOffset(second, secondSide, psi);
  const low = centreLine - Math.PI / 2;
  const plain = rootBetween(miss, low, low + Math.PI, ANGLE_SOLVED);
  if (plain !== null) return plain;
  const step = Math.PI / SCAN_STEPS;
  for (let k = 0; k < SCAN_STEPS; k++) {
    const from = low + k * step;
    if (miss(from) < 0 && miss(from + step) >= 0) return rootBetween(miss, from, from + step, ANGLE_SOLVED);
  }
  return null;
}

const NEWTON_STEPS = 12;

/**
 * Newton's method from the centre line. At a root the sine of the angle to that line is the difference of the reaches (their sum, for a crossed tangent)
 * over the distance, and the reach of an ellipse changes by no more than the difference of its axes a radian; where the miss so rises at every root
 * there is but one. Null where that is not sure, or where it has not settled.
 */
function byNewton(first: Body, firstSide: Side, second: Body, secondSide: Side, centreLine: number): number | null {
  const dx = second.center.x - first.center.x;
  const dy = second.center.y - first.center.y;
  const [most1, most2] = [Math.max(first.a, first.b) + first.offset, Math.max(second.a, second.b) + second.offset];
  const [least1, least2] = [Math.min(first.a, first.b) + first.offset, Math.min(second.a, second.b) + second.offset];
  const across = firstSide === secondSide ? Math.max(most1 - least2, most2 - least1) : most1 + most2;
  const uneven = Math.abs(first.a - first.b) + Math.abs(second.a - second.b);
  if (dx * dx + dy * dy - across * across <= uneven * uneven) return null;
  let psi = centreLine;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const nx = -Math.sin(psi);
    const ny = Math.cos(psi);
    const [h1, h2] = [Math.sqrt((first.a * nx) ** 2 + (first.b * ny) ** 2), Math.sqrt((second.a * nx) ** 2 + (second.b * ny) ** 2)];
    const miss = secondSide * (h2 + second.offset) - firstSide * (h1 + first.offset) - nx * dx - ny * dy;
    // Of the reach of an ellipse, by the angle: (a² - b²) sin cos over itself; a point has none.
    const turning = -nx * ny;
    const rise1 = h1 === 0 ? 0 : ((first.a * first.a - first.b * first.b) * turning) / h1;
    const rise2 = h2 === 0 ? 0 : ((second.a * second.a - second.b * second.b) * turning) / h2;
    const rise = secondSide * rise2 - firstSide * rise1 + ny * dx - nx * dy;
    if (!(rise > 0)) return null;
    const move = -miss / rise;
    psi += move;
    if (Math.abs(psi - centreLine) >= Math.PI / 2) return null;
    if (Math.abs(move) <= ANGLE_SOLVED) return psi;
  }
  return null;
}

/** A body that the path must pass on the given side, in the order of the path. */
export interface Contact {
  readonly body: Body;
  readonly side: Side;
  /**
   * `round`: the path always goes round it (a border digit), turning by 0..360 degrees.
   * `touch`: touched only where the path bends round it, turning by 0..180; the path comes and goes on it in one sense of x.
   * `pin`: a point that the path goes through, whichever way it bends there.
   */
  readonly hold: 'round' | 'touch' | 'pin';
  /** What the contact belongs to; carried through to the elements. */
  readonly name: string;
}

/** Straight from one contact to the next. */
interface LineElement {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

/** Along a body's edge; normals (radians) are the body's outward ones, increasing when the body is on the left. */
export interface ArcElement {
  readonly kind: 'arc';
  readonly contact: Contact;
  readonly fromNormal: number;
  readonly toNormal: number;
  readonly length: number;
}

export type PathElement = LineElement | ArcElement;

export type TautPath =
  | { readonly ok: true; readonly elements: readonly PathElement[]; readonly length: number; readonly dropped: readonly Contact[] }
  | { readonly ok: false; readonly reason: string };

/** Where an open path starts and ends: at these outward normals (radians) of its first and last body. */
interface OpenEnds {
  readonly startNormal: number;
  readonly endNormal: number;
}

/**
 * The shortest path that passes each body on its side: bitangent lines and arcs of the bodies' edges, exact.
 * Closed when `ends` is absent (its first element is the arc on the first contact), else open from the first to the last contact.
 * Contacts that would bend the path the wrong way are not contacts; they are left out and returned in `dropped`.
 * The shortest path is unique, so the first choice of contacts that turns rightly everywhere and lets no dropped body stick through is it.
 * Fails (`ok: false`) when no such choice exists: bodies overlap where the path must cross between them.
 */
export function tautPath(contacts: readonly Contact[], ends?: OpenEnds): TautPath {
  if (contacts.length === 0) return { ok: false, reason: 'no contacts' };
  if (contacts.length === 1) return single(contacts, ends);
  const directionOf = directionsBetween(contacts);
  const likely = likelyChoice(contacts, ends, directionOf);
  const first = likely && through(contacts, likely, ends, directionOf);
  if (first) return first;
  for (const kept of choices(contacts, ends)) {
    const found = through(contacts, kept, ends, directionOf);
    if (found) return found;
  }
  return { ok: false, reason: 'no taut path passes these bodies on their sides' };
}

function single(contacts: readonly Contact[], ends: OpenEnds | undefined): TautPath {
  const [contact] = contacts;
  if (!contact) return { ok: false, reason: 'no contacts' };
  const fromNormal = ends?.startNormal ?? 0;
  const toNormal = ends ? fromNormal + contact.side * turn(contact, fromNormal, ends.endNormal) : contact.side * 2 * Math.PI;
  const arc = arcOn(contact, fromNormal, toNormal);
  return { ok: true, elements: [arc], length: arc.length, dropped: [] };
}

/**
 * The choice that is nearly always it: all contacts, less those at which the path through the others would bend the wrong way, one after the other.
 * Null where a line is missing. Only `through` says whether it is right.
 */
function likelyChoice(
  contacts: readonly Contact[],
  ends: OpenEnds | undefined,
  directionOf: (from: number, to: number) => number | null,
): readonly number[] | null {
  const kept = contacts.map((_, i) => i);
  for (let at = 0, right = 0; right < kept.length && kept.length > 2; ) {
    const i = kept[at] as number;
    const contact = contacts[i] as Contact;
    const isEnd = ends !== undefined && (at === 0 || at === kept.length - 1);
    let isRight = contact.hold !== 'touch' || isEnd;
    if (!isRight) {
      const arriving = directionOf(kept.at(at - 1) as number, i);
      const leaving = directionOf(i, kept[(at + 1) % kept.length] as number);
      if (arriving === null || leaving === null) return null;
      const turned = contact.side * (leaving - arriving);
      isRight = turned >= -WRONG_TURN && turned <= Math.PI + WRONG_TURN;
    }
    if (isRight) {
      right++;
      at = (at + 1) % kept.length;
    } else {
      kept.splice(at, 1);
      right = 0;
      at = (at + kept.length - 1) % kept.length;
    }
  }
  return kept;
}

/** Index lists of contacts to keep, fewest dropped first; only `touch` contacts are ever dropped, and not at the ends of an open path. */
function* choices(contacts: readonly Contact[], ends: OpenEnds | undefined): Generator<readonly number[]> {
  const all = contacts.map((_, i) => i);
  const free = all.filter((i) => contacts[i]?.hold === 'touch' && !(ends && (i === 0 || i === contacts.length - 1)));
  for (let count = 0; count <= free.length && contacts.length - count >= 2; count++) {
    for (const gone of combinations(free, count)) yield all.filter((i) => !gone.includes(i));
  }
}

function* combinations(items: readonly number[], count: number, from = 0): Generator<readonly number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= items.length - count; i++) {
    for (const rest of combinations(items, count - 1, i + 1)) yield [items[i] as number, ...rest];
  }
}

/** Direction of the path from one contact to another, by their places in the list, radians; null where none touches both. Each is solved once. */
function directionsBetween(contacts: readonly Contact[]): (from: number, to: number) => number | null {
  const known: (number | null | undefined)[] = [];
  return (i, j) => {
    const at = i * contacts.length + j;
    const found = known[at];
    if (found !== undefined) return found;
    const [from, to] = [contacts[i] as Contact, contacts[j] as Contact];
    const psi = bitangentDirection(from.body, from.side, to.body, to.side);
    known[at] = psi === null ? null : onItsBranch(psi, from.body.center, to.body.center);
    return known[at] as number | null;
  };
}

function through(
  contacts: readonly Contact[],
  kept: readonly number[],
  ends: OpenEnds | undefined,
  directionOf: (from: number, to: number) => number | null,
): TautPath | null {
  const list = kept.map((i) => contacts[i] as Contact);
  const spans = ends ? list.length - 1 : list.length;
  const directions: number[] = [];
  for (let i = 0; i < spans; i++) {
    const psi = directionOf(kept[i] as number, kept[(i + 1) % kept.length] as number);
    if (psi === null) return null;
    directions.push(psi);
  }
  const normals: (readonly [from: number, to: number])[] = [];
  for (const [i, contact] of list.entries()) {
    // The outward normal of a contact is a quarter turn from the path's direction, away from the body.
    const quarter = (-contact.side * Math.PI) / 2;
    const arriving = ends && i === 0 ? ends.startNormal : (directions[(i + spans - 1) % spans] as number) + quarter;
    const leaving = ends && i === list.length - 1 ? ends.endNormal : (directions[i % spans] as number) + quarter;
    const turned = turn(contact, arriving, leaving);
    if (turned < -WRONG_TURN || (contact.hold === 'touch' && turned > Math.PI + WRONG_TURN)) return null;
    normals.push([arriving, arriving + contact.side * Math.max(0, turned)]);
  }
  const dropped = contacts.filter((_, i) => !kept.includes(i));
  for (const [i] of contacts.entries()) {
    if (kept.includes(i)) continue;
    const before = lastBelow(kept, i, Boolean(ends));
    const psi = directions[before];
    const contact = contacts[i] as Contact;
    const neighbour = list[before] as Contact;
    if (psi === undefined || stickOut(contact, psi, tangentOffset(neighbour.body, neighbour.side, psi)) > LENGTH_COMPARED) return null;
  }
  const arcs = list.map((contact, i) => arcOn(contact, ...(normals[i] as readonly [number, number])));
  return { ok: true, ...joined(list, arcs, spans), dropped };
}

/** How far a body reaches across a line of direction psi at offset n·p, beyond the side where it belongs. */
function stickOut(contact: Contact, psi: number, lineOffset: number): number {
  return contact.side * (lineOffset - tangentOffset(contact.body, contact.side, psi));
}

/** Position in `kept` of the last kept index below i; the last of all when none is (closed paths wrap round). */
function lastBelow(kept: readonly number[], i: number, open: boolean): number {
  for (let k = kept.length - 1; k >= 0; k--) if ((kept[k] as number) < i) return k;
  return open ? 0 : kept.length - 1;
}

/**
 * A direction without whole turns taken out of it: within 90 degrees of the centre line, whose own angle is -90..90 degrees toward larger x
 * and 90..270 back. So a turn on a course is the plain difference of two directions, and one of more than 180 cannot pass for a small one.
 */
function onItsBranch(psi: number, from: Point, to: Point): number {
  const centreLine = Math.atan2(to.y - from.y, to.x - from.x);
  return to.x < from.x && centreLine < 0 ? psi + 2 * Math.PI : psi;
}

/** Turn between two normals in the sense of the contact's side (radians): plain for `touch`, where less than 0 or more than 180 degrees is wrong; 0..360 for `round`. */
function turn(contact: Contact, from: number, to: number): number {
  if (contact.hold === 'pin') return 0;
  const full = 2 * Math.PI;
  const raw = contact.side * (to - from);
  return contact.hold === 'round' ? raw - full * Math.floor(raw / full) : raw;
}

function arcOn(contact: Contact, fromNormal: number, toNormal: number): ArcElement {
  return { kind: 'arc', contact, fromNormal, toNormal, length: edgeLength(contact.body, fromNormal, toNormal) };
}

function joined(list: readonly Contact[], arcs: readonly ArcElement[], spans: number) {
  const elements: PathElement[] = [];
  for (const [i, arc] of arcs.entries()) {
    elements.push(arc);
    if (i >= spans) continue;
    const next = arcs[(i + 1) % list.length] as ArcElement;
    const from = pointAtNormal(arc.contact.body, arc.toNormal);
    const to = pointAtNormal(next.contact.body, next.fromNormal);
    elements.push({ kind: 'line', from, to, length: Math.hypot(to.x - from.x, to.y - from.y) });
  }
  return { elements, length: elements.reduce((sum, e) => sum + e.length, 0) };
}

/** Perimeter of the convex hull of bodies given from left to right: the taut band round all of them. */
export function hullPerimeter(bodies: readonly Body[]): number | null {
  if (bodies.length < 2) {
    const [body] = bodies;
    return body ? edgeLength(body, 0, 2 * Math.PI) : null;
  }
  const last = bodies.length - 1;
  const there = bodies.map((body, i): Contact => ({ body, side: 1, hold: i === 0 || i === last ? 'round' : 'touch', name: `below ${i}` }));
  const back = bodies.slice(1, -1).map((body, i): Contact => ({ body, side: 1, hold: 'touch', name: `above ${i + 1}` }));
  const path = tautPath([...there, ...back.reverse()]);
  return path.ok ? path.length : null;
}
