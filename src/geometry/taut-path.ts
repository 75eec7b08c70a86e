import { ANGLE_SOLVED, LENGTH_COMPARED, WRONG_TURN } from '../units/tolerance.ts';
import { type Body, edgeLength, pointAtNormal, reachIntegral, reachTurning, support } from './ellipse.ts';
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
 * Newton's method from a direction near the one looked for, at first the centre line. At a root the sine of the angle to that line is the difference of the reaches (their sum, for a crossed tangent)
 * over the distance, and the reach of an ellipse changes by no more than the difference of its axes a radian; where the miss so rises at every root
 * there is but one. Null where that is not sure, or where it has not settled.
 */
function byNewton(first: Body, firstSide: Side, second: Body, secondSide: Side, start: number): number | null {
  const dx = second.center.x - first.center.x;
  const dy = second.center.y - first.center.y;
  const [most1, most2] = [Math.max(first.a, first.b) + first.offset, Math.max(second.a, second.b) + second.offset];
  const [least1, least2] = [Math.min(first.a, first.b) + first.offset, Math.min(second.a, second.b) + second.offset];
  const across = firstSide === secondSide ? Math.max(most1 - least2, most2 - least1) : most1 + most2;
  const uneven = Math.abs(first.a - first.b) + Math.abs(second.a - second.b);
  if (dx * dx + dy * dy - across * across <= uneven * uneven) return null;
  let psi = start;
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
    if (Math.abs(psi - start) >= Math.PI / 2) return null;
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

/** A path that was laid, and from what. */
export interface LaidPath {
  readonly ok: true;
  readonly elements: readonly PathElement[];
  readonly length: number;
  readonly dropped: readonly Contact[];
  /** All that it was asked to pass, and the places in that list of those that it bends round. */
  readonly contacts: readonly Contact[];
  readonly kept: readonly number[];
  /** Of its lines, radians. */
  readonly directions: readonly number[];
}

export type TautPath = LaidPath | { readonly ok: false; readonly reason: string };

/** Where an open path starts and ends: at these outward normals (radians) of its first and last body. */
export interface OpenEnds {
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
  const kept = keptContacts(contacts, ends, directionOf);
  if (!kept) return { ok: false, reason: 'no taut path passes these bodies on their sides' };
  return { ok: true, ...laid(contacts, kept, ends, directionOf), dropped: contacts.filter((_, i) => !kept.includes(i)), contacts, kept };
}

function single(contacts: readonly Contact[], ends: OpenEnds | undefined): TautPath {
  const [contact] = contacts;
  if (!contact) return { ok: false, reason: 'no contacts' };
  const fromNormal = ends?.startNormal ?? 0;
  const toNormal = ends ? fromNormal + contact.side * turn(contact, fromNormal, ends.endNormal) : contact.side * 2 * Math.PI;
  const arc = arcOn(contact, fromNormal, toNormal);
  return { ok: true, elements: [arc], length: arc.length, dropped: [], contacts, kept: [0], directions: [] };
}

/**
 * The contacts that a taut path bends round, by their places in the list; null where there is no such choice. Tried from one contact to the next, the nearest first, so that
 * what turns the wrong way, or leaves out a body that sticks through, is not followed further.
 */
function keptContacts(contacts: readonly Contact[], ends: OpenEnds | undefined, directionOf: Directions): readonly number[] | null {
  const count = contacts.length;
  const isFree = (i: number) => contacts[i]?.hold === 'touch' && !(ends && (i === 0 || i === count - 1));
  const leads = (from: number, to: number): number | null => {
    const psi = directionOf(from, to);
    if (psi === null) return null;
    const { body, side } = contacts[from] as Contact;
    for (let i = (from + 1) % count; i !== to; i = (i + 1) % count) {
      const left = contacts[i] as Contact;
      if (stickOut(left, psi, tangentOffset(body, side, psi)) > LENGTH_COMPARED) return null;
    }
    return psi;
  };
  const follow = (kept: readonly number[], arriving: number | null): readonly number[] | null => {
    const from = kept.at(-1) as number;
    if (ends && from === count - 1)
      return isRightTurn(contacts[from] as Contact, arriving ?? ends.startNormal, ends.endNormal) ? kept : null;
    const [start = 0] = kept;
    for (let step = 1; step <= count; step++) {
      const to = (from + step) % count;
      if (to === start && (ends || kept.length < 2)) return null;
      const psi = leads(from, to);
      const before = arriving ?? ends?.startNormal ?? null;
      if (psi !== null && (before === null || isRightTurn(contacts[from] as Contact, before, psi + quarter(contacts[from] as Contact)))) {
        const found = to === start ? closes(kept, psi) : follow([...kept, to], psi + quarter(contacts[to] as Contact));
        if (found) return found;
      }
      if (to === start || !isFree(to)) return null;
    }
    return null;
  };
  // The turn at the first contact of a closed path is known when it comes back to it.
  const closes = (kept: readonly number[], psi: number) => {
    const first = contacts[kept[0] as number] as Contact;
    const leaving = directionOf(kept[0] as number, kept[1] as number) as number;
    return isRightTurn(first, psi + quarter(first), leaving + quarter(first)) ? kept.toSorted((i, j) => i - j) : null;
  };
  if (ends) return follow([0], null);
  const held = contacts.findIndex((_, i) => !isFree(i));
  if (held >= 0) return follow([held], null);
  for (let start = 0; start < count; start++) {
    const found = follow([start], null);
    if (found) return found;
  }
  return null;
}

/** From the direction of the path to the outward normal of a contact: a quarter turn, away from the body. */
function quarter(contact: Contact): number {
  return (-contact.side * Math.PI) / 2;
}

function isRightTurn(contact: Contact, arriving: number, leaving: number): boolean {
  const turned = turn(contact, arriving, leaving);
  return turned >= -WRONG_TURN && (contact.hold !== 'touch' || turned <= Math.PI + WRONG_TURN);
}

type Directions = (from: number, to: number) => number | null;

/** Direction of the path from one contact to another, by their places in the list, radians; null where none touches both. Each is solved once. */
function directionsBetween(contacts: readonly Contact[]): Directions {
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

/** The path round the contacts that are kept. */
function laid(contacts: readonly Contact[], kept: readonly number[], ends: OpenEnds | undefined, directionOf: Directions) {
  const list = kept.map((i) => contacts[i] as Contact);
  const spans = ends ? list.length - 1 : list.length;
  const directions = list.slice(0, spans).map((_, i) => directionOf(kept[i] as number, kept[(i + 1) % kept.length] as number) as number);
  const arcs = list.map((contact, i) => {
    const arriving = ends && i === 0 ? ends.startNormal : (directions[(i + spans - 1) % spans] as number) + quarter(contact);
    const leaving = ends && i === list.length - 1 ? ends.endNormal : (directions[i % spans] as number) + quarter(contact);
    return arcOn(contact, arriving, arriving + contact.side * Math.max(0, turn(contact, arriving, leaving)));
  });
  return { ...joined(list, arcs, spans), directions };
}

/** A path laid again round bodies that are a little elsewhere: these bodies, in the order of its contacts, and the directions of its lines, radians. */
export interface LaidAgain {
  readonly bodies: readonly Body[];
  readonly directions: readonly number[];
  /** Outward normals at which it comes to each contact that it bends round and leaves it, radians. */
  readonly normals: readonly (readonly [arriving: number, leaving: number])[];
}

/**
 * The path laid again where its bodies have moved or changed their shape a little: round the contacts that it bent round before, each line by Newton's method
 * from its former direction. Null where that method is not sure, where a contact would turn the wrong way or a body that was left out would stick through, so that it is no
 * taut path any more; the taut path is unique, so one that is is the one that `tautPath` finds.
 */
export function laidAgain(before: LaidPath, bodies: readonly Body[], ends?: OpenEnds): LaidAgain | null {
  const { contacts, kept } = before;
  const count = contacts.length;
  const directions: number[] = [];
  for (const [s, psiBefore] of before.directions.entries()) {
    const [i, j] = [kept[s] as number, kept[(s + 1) % kept.length] as number];
    const [from, to] = [contacts[i] as Contact, contacts[j] as Contact];
    const psi = byNewton(bodies[i] as Body, from.side, bodies[j] as Body, to.side, psiBefore);
    if (psi === null) return null;
    directions.push(psi);
    for (let k = (i + 1) % count; k !== j; k = (k + 1) % count) {
      const left = contacts[k] as Contact;
      const out = tangentOffset(bodies[i] as Body, from.side, psi) - tangentOffset(bodies[k] as Body, left.side, psi);
      if (left.side * out > LENGTH_COMPARED) return null;
    }
  }
  const spans = directions.length;
  const normals = kept.map((i, k) => {
    const out = quarter(contacts[i] as Contact);
    const arriving = ends && k === 0 ? ends.startNormal : (directions[(k + spans - 1) % spans] as number) + out;
    const leaving = ends && k === spans ? ends.endNormal : (directions[k % spans] as number) + out;
    return [arriving, leaving] as const;
  });
  const isTaut = normals.every(([arriving, leaving], k) => isRightTurn(contacts[kept[k] as number] as Contact, arriving, leaving));
  return isTaut ? { bodies, directions, normals } : null;
}

/**
 * Length of a path that was laid again. A line is as long as the way from centre to centre along it, and what lies between its ends and the centres' feet on it is the turning
 * of the reach H of each body; an arc is the integral of H and, between its ends, that same turning (Cauchy: the radius of curvature is H + H''). So the turnings cancel, but at open ends:
 * length = sum of (c' - c) along the lines + sum of the integrals of H over the turns.
 */
export function lengthLaidAgain({ contacts, kept }: LaidPath, again: LaidAgain, ends?: OpenEnds): number {
  const { bodies, directions, normals } = again;
  let length = 0;
  for (const [s, psi] of directions.entries()) {
    const [from, to] = [bodies[kept[s] as number] as Body, bodies[kept[(s + 1) % kept.length] as number] as Body];
    length += Math.cos(psi) * (to.center.x - from.center.x) + Math.sin(psi) * (to.center.y - from.center.y);
  }
  for (const [k, i] of kept.entries()) {
    const [contact, body] = [contacts[i] as Contact, bodies[i] as Body];
    const [arriving, leaving] = normals[k] as readonly [number, number];
    const turned = Math.max(0, turn(contact, arriving, leaving));
    length += contact.side * reachIntegral(body, arriving, arriving + contact.side * turned);
    if (ends && k === 0) length -= contact.side * reachTurning(body, arriving);
    if (ends && k === kept.length - 1) length += contact.side * reachTurning(body, leaving);
  }
  return length;
}

/** How far a body reaches across a line of direction psi at offset n·p, beyond the side where it belongs. */
function stickOut(contact: Contact, psi: number, lineOffset: number): number {
  return contact.side * (lineOffset - tangentOffset(contact.body, contact.side, psi));
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
