import { heldPlace, type Place } from '../../block/block.ts';
import { type Body, pointAtNormal } from '../../geometry/ellipse.ts';
import type { Point } from '../../geometry/path.ts';
import {
  type Contact,
  type LaidAgain,
  type LaidPath,
  laidAgain,
  lengthLaidAgain,
  type OpenEnds,
  type PathElement,
  type Side,
  tautPath,
} from '../../geometry/taut-path.ts';
import type { DigitName } from '../../hand/digits.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { LENGTH_COMPARED, WRONG_TURN } from '../../units/tolerance.ts';
import { type Course, type CoursePiece, locateOnCourse, type OnCourse, splitIntoCourses } from './strip-courses.ts';
import type { StripSettings } from './strip-options.ts';
import type { StandingHand, StandingSection, Web } from './strip-sections.ts';

/** A digit's midline where one course passes it. u in mm along the neutral line from the seam. */
export interface Pass {
  readonly digit: DigitName;
  readonly layer: Course;
  /** Which side of the digit the course runs on. */
  readonly aspect: 'dorsal' | 'palmar';
  readonly u: number;
  readonly point: Point;
}

export interface WebCrossing {
  readonly between: readonly [DigitName, DigitName];
  readonly layer: Course;
  readonly u: number;
}

/** The neutral line of the strip round the digits, seen end-on. mm; x radial to ulnar, y dorsal. */
export interface StripPath {
  readonly hand: StandingHand;
  readonly held: 'raised' | 'lowered';
  readonly pathLength: number;
  /** In the order of u; the first begins at the seam. */
  readonly pieces: readonly CoursePiece[];
  readonly passes: readonly Pass[];
  readonly webCrossings: readonly WebCrossing[];
  readonly borderTurns: readonly { readonly digit: DigitName; readonly border: 'radial' | 'ulnar'; readonly u: number }[];
  readonly seam: Point;
  /** Free space between the outer layer and where it would rest on each held digit, mm; empty when tacked. */
  readonly standOff: readonly { readonly digit: DigitName; readonly distance: number }[];
}

/** The band laid taut, before it is asked where it passes what. */
interface TautBand {
  readonly held: 'raised' | 'lowered';
  readonly length: number;
  readonly seamX: number;
  readonly pieces: readonly CoursePiece[];
  readonly order: ContactOrder;
  readonly inner: LaidPath;
  readonly round: Round;
}

/** The whole round of the band. */
interface Round {
  readonly path: LaidPath;
  /** Where on the inner course the outer one is tacked onto it; null where it is not. */
  readonly tack: OnCourse | null;
  /** The digit under the tack as the outer course may touch it, if there is one. */
  readonly under: Contact | null;
  /** Whether none of the digits next to the tack was left out. */
  readonly isWhole: boolean;
}

/** Lays the band taut round the standing digits. Refused only when digits stand so that no band passes between them. */
export function stripPath(hand: StandingHand, options: StripSettings): Result<StripPath> {
  const band = tautBand(hand, options);
  if (!band.ok) return band;
  const { held, length, seamX, pieces } = band.value;
  const at = (course: Course, x: number) => {
    const found = locateOnCourse(pieces, course, x);
    if (!found) throw new Error(`course ${course} does not pass x = ${x}`);
    return { u: wrapped(found.u, length), point: found.point };
  };
  const courses: readonly Course[] = ['outer', 'inner'];
  const passes = hand.sections.flatMap((s) =>
    courses.map((layer): Pass => ({ digit: s.digit, layer, aspect: aspectOf(s.place, layer, held), ...at(layer, s.x) })),
  );
  const webCrossings = hand.webs.flatMap((web: Web) =>
    courses.map((layer): WebCrossing => ({ between: web.between, layer, u: at(layer, web.x).u })),
  );
  const byU = (a: { u: number }, b: { u: number }) => a.u - b.u;
  return success({
    hand,
    held,
    pathLength: length,
    pieces,
    passes: passes.sort(byU),
    webCrossings: webCrossings.sort(byU),
    borderTurns: borderTurns(hand.sections, pieces),
    seam: at('outer', seamX).point,
    standOff: options.closure === 'tacked' ? [] : standOff(hand.sections, options, passes),
  });
}

/** Length of the band that `stripPath` lays, mm, without the rest of it; null where that is refused. */
export function stripPathLength(hand: StandingHand, options: StripSettings): number | null {
  const band = tautBand(hand, options);
  return band.ok ? band.value.length : null;
}

/**
 * The same for digits that stand a little elsewhere than those of one hand, in a fraction of the time: the band of that hand is laid again round them. Null where
 * that is not surely their taut band; then `stripPathLength` tells.
 */
export function stripPathLengthsNear(hand: StandingHand, options: StripSettings): (sections: readonly StandingSection[]) => number | null {
  const band = tautBand(hand, options);
  if (!band.ok || !band.value.round.isWhole || hand.version === '1') return () => null;
  const { held, order, inner, round } = band.value;
  const { path, tack, under } = round;
  return (sections) => {
    const moved = ({ body }: Contact, k: number | undefined) =>
      k === undefined ? body : bodyOf(sections[k] as StandingSection, body.offset);
    const bodiesOf = ({ contacts }: LaidPath) => contacts.map((contact) => moved(contact, order.placeOf.get(contact)));
    if (tack === null) {
      const again = laidAgain(path, bodiesOf(path));
      return again && lengthLaidAgain(path, again);
    }
    const innerAgain = laidAgain(inner, bodiesOf(inner), INNER_ENDS);
    const at = innerAgain && placeAgain(inner, innerAgain, middleOfRun(sections));
    if (at?.contact !== tack.contact) return null;
    const { pin, ends } = tackOver(at, held, options);
    const bodies = path.contacts.map((contact) => (contact.hold === 'pin' ? pin.body : moved(contact, order.placeOf.get(contact))));
    const again = laidAgain(path, bodies, ends);
    return again && (under === null || leavesAlone(under, path, again, ends)) ? lengthLaidAgain(path, again, ends) : null;
  };
}

/**
 * Whether a path that begins or ends at the tack itself, and not on the digit under it, turns away from that digit there. Then it would bend round it the wrong
 * way, so that no path that touches it is taut; and the other way about.
 */
function leavesAlone(under: Contact, { contacts }: LaidPath, { directions }: LaidAgain, ends: OpenEnds): boolean {
  const normalOn = (direction: number | undefined) => (direction ?? Number.NaN) - (under.side * Math.PI) / 2;
  const startTurn = under.side * (normalOn(directions[0]) - ends.startNormal);
  const endTurn = under.side * (ends.endNormal - normalOn(directions.at(-1)));
  return (contacts[0] === under || startTurn < -WRONG_TURN) && (contacts.at(-1) === under || endTurn < -WRONG_TURN);
}

/** Where an inner course that was laid again passes x, if it does so on a line or straight over or under the middle of a digit. */
function placeAgain(inner: LaidPath, { bodies, normals, directions }: LaidAgain, x: number): Omit<OnCourse, 'u'> | null {
  const bodyAt = (k: number) => bodies[inner.kept[k] as number] as Body;
  for (const [k, [arriving, leaving]] of normals.entries()) {
    const body = bodyAt(k);
    const contact = inner.contacts[inner.kept[k] as number] as Contact;
    const over = (-contact.side * Math.PI) / 2;
    const isTouched = contact.side * (over - arriving) >= 0 && contact.side * (leaving - over) >= 0;
    if (isTouched && Math.abs(body.center.x - x) < LENGTH_COMPARED) return { point: pointAtNormal(body, over), direction: 0, contact };
    const [direction, next] = [directions[k], normals[k + 1]];
    if (direction === undefined || next === undefined) continue;
    const from = pointAtNormal(body, leaving);
    if (from.x < x && x < pointAtNormal(bodyAt(k + 1), next[0]).x)
      return { point: { x, y: from.y + Math.tan(direction) * (x - from.x) }, direction, contact: null };
  }
  return null;
}

/** The inner course alone begins and ends on the border digits where their normals are level. */
const INNER_ENDS: OpenEnds = { startNormal: Math.PI, endNormal: 0 };

function tautBand(hand: StandingHand, options: StripSettings): Result<TautBand> {
  const held = heldPlace({ places: Object.fromEntries(hand.sections.map((s) => [s.digit, s.place])) });
  const order = contactOrder(hand.sections, held, options);
  const seamX = middleOfRun(hand.sections);
  const inner = tautPath(order.inner, INNER_ENDS);
  if (!inner.ok) return noPath(inner.reason);
  const loose = hand.sections.filter((s) => s.place !== 'enclosed' && inner.dropped.some((c) => c.name === innerName(s)));
  if (loose.length > 0) return holdsNothing(loose, options);
  const round = options.closure === 'spanning' ? spanning(order) : tacked(hand, order, inner.elements, held, seamX, options);
  if (!round.ok) return round;
  const { path } = round.value;
  const pieces = startAt(splitIntoCourses(path.elements, 'closed'), seamX, path.length);
  if (!pieces) return noPath('the outer course does not reach the held digits');
  return success({ held, length: path.length, seamX, pieces, order, inner, round: round.value });
}

function spanning(order: ContactOrder): Result<Round> {
  const path = tautPath(order.closed(null));
  return path.ok ? success({ path, tack: null, under: null, isWhole: true }) : noPath(path.reason);
}

/**
 * The outer layer pressed onto the inner one at the middle of the run (model rule 9): from the tack, one thickness off the inner course along its
 * normal, round the whole block and back to it. The held digits keep the outer layer off themselves on both sides of the tack.
 */
function tacked(
  hand: StandingHand,
  order: ContactOrder,
  innerElements: readonly PathElement[],
  held: 'raised' | 'lowered',
  seamX: number,
  options: StripSettings,
): Result<Round> {
  const found = locateOnCourse(splitIntoCourses(innerElements, 'inner'), 'inner', seamX);
  if (!found) return noPath('the inner course does not reach the held digits');
  if (hand.version === '1') {
    const upright = { x: seamX, y: found.point.y + (held === 'raised' ? -1 : 1) * options.thickness };
    const path = tautPath(order.closed([pinned(upright)]));
    return path.ok ? success({ path, tack: found, under: null, isWhole: true }) : noPath(path.reason);
  }
  const { pin, ends } = tackOver(found, held, options);
  const run = order.heldOuter;
  const under = found.contact ? run.find((c) => c.name === outerNameOf(found.contact)) : undefined;
  // A held digit lies on that side of the tack on which the inner course touches it.
  const isRadial = (c: Contact) =>
    innerElements.some(
      (e) => e.kind === 'arc' && outerNameOf(e.contact) === c.name && pointAtNormal(e.contact.body, e.toNormal).x <= seamX,
    );
  const radialSide = run.filter((c) => c !== under && isRadial(c));
  const ulnarSide = run.filter((c) => c !== under && !isRadial(c));
  // The digit under the tack, or next to it, is left again where the layer would have to bend round it the wrong way. The kink at the tack lets a
  // digit reach across the prolonged line of the next span without being in its way, which only the proof of the path can tell.
  const starts = under
    ? [
        [under, ...radialSide],
        [pin, ...radialSide],
      ]
    : [
        [pin, ...radialSide],
        [pin, ...radialSide.slice(1)],
      ];
  const finishes = under
    ? [
        [...ulnarSide, under],
        [...ulnarSide, pin],
      ]
    : [
        [...ulnarSide, pin],
        [...ulnarSide.slice(0, -1), pin],
      ];
  for (const [i, start] of starts.entries()) {
    for (const [j, finish] of finishes.entries()) {
      const path = tautPath([...start, ...order.afterRun, ...finish], ends);
      if (path.ok) return success({ path, tack: found, under: under ?? null, isWhole: under !== undefined || i + j === 0 });
    }
  }
  return noPath('the outer layer cannot be pressed onto the inner one there');
}

/** The tack over a place of the inner course: one thickness off it along its normal, away from the digits; the outer course begins and ends there. */
function tackOver(
  { point, direction }: Pick<OnCourse, 'point' | 'direction'>,
  held: 'raised' | 'lowered',
  { thickness }: StripSettings,
): { readonly pin: Contact; readonly ends: OpenEnds } {
  const away = held === 'raised' ? -1 : 1;
  const pin = pinned({ x: point.x - away * thickness * Math.sin(direction), y: point.y + away * thickness * Math.cos(direction) });
  // The outer course comes the other way, so its normal at the tack is the inner course's, on the side away from the digits.
  const normal = direction + (away * Math.PI) / 2 + (away < 0 ? 2 * Math.PI : 0);
  return { pin, ends: { startNormal: normal, endNormal: normal } };
}

/** Which side of a digit a course runs on: the outer course is the palmar one when digits are raised, the dorsal one when lowered. */
function aspectOf(place: Place, layer: Course, held: 'raised' | 'lowered'): 'dorsal' | 'palmar' {
  if (place === 'raised') return 'palmar';
  if (place === 'lowered') return 'dorsal';
  return (layer === 'outer') === (held === 'raised') ? 'palmar' : 'dorsal';
}

interface ContactOrder {
  /** Which of the sections each contact belongs to. */
  readonly placeOf: ReadonlyMap<Contact, number>;
  readonly inner: readonly Contact[];
  /** The held digits as the outer course meets them, from ulnar to radial. */
  readonly heldOuter: readonly Contact[];
  /** All that the path meets after the run of held digits until it comes back to it. */
  readonly afterRun: readonly Contact[];
  /** The whole round; `atRun` replaces the outer contacts of the held run, null leaves them. */
  readonly closed: (atRun: readonly Contact[] | null) => readonly Contact[];
}

const innerName = (s: StandingSection) => `${s.digit} inner`;
const outerNameOf = (inner: Contact | null) => inner?.name.replace(/ inner$/, ' outer');

/** Contacts in the order of travel: outer course to the radial border, round it, inner course, round the ulnar border, back. */
function contactOrder(sections: readonly StandingSection[], held: 'raised' | 'lowered', options: StripSettings): ContactOrder {
  const layer = options.skinClearance + options.thickness / 2;
  // Travelled radially on the palmar side (raised) the path runs clockwise, digits on its right; mirrored when lowered.
  const around: Side = held === 'raised' ? -1 : 1;
  const through: Side = held === 'raised' ? 1 : -1;
  const placeOf = new Map<Contact, number>();
  const contact = (s: StandingSection, name: string, side: Side, offset: number, hold: Contact['hold'] = 'touch'): Contact => {
    const made = { body: bodyOf(s, offset), side, hold, name };
    placeOf.set(made, sections.indexOf(s));
    return made;
  };
  const last = sections.length - 1;
  const radial = contact(sections[0] as StandingSection, 'radial border', around, layer, 'round');
  const ulnar = contact(sections[last] as StandingSection, 'ulnar border', around, layer, 'round');
  const between = sections.slice(1, last);
  const inner = between.map((s) => contact(s, innerName(s), s.place === 'enclosed' ? around : through, layer));
  const isHeld = (s: StandingSection) => s.place !== 'enclosed';
  const firstHeld = between.findIndex(isHeld);
  const lastHeld = between.findLastIndex(isHeld);
  const outer = (list: readonly StandingSection[], offset: number) =>
    list.map((s) => contact(s, `${s.digit} outer`, around, offset)).reverse();
  const heldOuter = outer(between.slice(firstHeld, lastHeld + 1), layer + options.thickness);
  const afterRun = [...outer(between.slice(0, firstHeld), layer), radial, ...inner, ulnar, ...outer(between.slice(lastHeld + 1), layer)];
  return {
    placeOf,
    inner: [radial, ...inner, ulnar],
    heldOuter,
    afterRun,
    closed: (atRun) => [...(atRun ?? heldOuter), ...afterRun],
  };
}

function bodyOf(s: StandingSection, offset: number): Body {
  return { center: { x: s.x, y: s.y }, a: s.halfWidth, b: s.standingHalfDepth, offset };
}

function pinned(point: Point): Contact {
  return { body: { center: point, a: 0, b: 0, offset: 0 }, side: 1, hold: 'pin', name: 'tack' };
}

/** Middle of the run of held digits; the borders are enclosed, so a valid block has one run. */
function middleOfRun(sections: readonly StandingSection[]): number {
  const held = sections.filter((s) => s.place !== 'enclosed').map((s) => s.x);
  return (Math.min(...held) + Math.max(...held)) / 2;
}

/** Turns the closed path so that u = 0 is where its outer course passes the seam. */
function startAt(pieces: readonly CoursePiece[], seamX: number, length: number): readonly CoursePiece[] | null {
  const found = locateOnCourse(pieces, 'outer', seamX);
  if (!found) return null;
  return pieces
    .map((piece) => ({ ...piece, u: piece.u - found.u }))
    .map((piece) => (piece.u < 0 ? { ...piece, u: piece.u + length } : piece));
}

/** u in 0..length, with the end of the band counted as its start. */
function wrapped(u: number, length: number): number {
  const rest = u - length * Math.floor(u / length);
  return length - rest < 1e-9 ? 0 : rest;
}

function borderTurns(sections: readonly StandingSection[], pieces: readonly CoursePiece[]): StripPath['borderTurns'] {
  const turn = (border: 'radial' | 'ulnar') => pieces.find((piece) => piece.startsAt === border)?.u ?? Number.NaN;
  const digitAt = (k: number) => (sections.at(k) as StandingSection).digit;
  return [
    { digit: digitAt(0), border: 'radial', u: turn('radial') },
    { digit: digitAt(-1), border: 'ulnar', u: turn('ulnar') },
  ];
}

function standOff(sections: readonly StandingSection[], options: StripSettings, passes: readonly Pass[]): StripPath['standOff'] {
  return sections.flatMap((s) => {
    const pass = passes.find((p) => p.digit === s.digit && p.layer === 'outer');
    if (s.place === 'enclosed' || !pass) return [];
    const resting = s.standingHalfDepth + options.skinClearance + 1.5 * options.thickness;
    return [{ digit: s.digit, distance: Math.max(0, Math.abs(pass.point.y - s.y) - resting) }];
  });
}

function holdsNothing(loose: readonly StandingSection[], { differential, paper }: StripSettings): Result<never> {
  const names = loose.map((s) => s.digit).join(' and ');
  return failure({
    code: 'HOLDS_NOTHING',
    where: 'differential',
    message: `differential: at ${plain(differential, 1)} degrees the ${paper ? 'paper strip' : 'strip'} runs straight past the ${names} finger and would hold nothing.`,
    kind: 'refused',
  });
}

function noPath(reason: string): Result<never> {
  return failure({
    code: 'NO_PATH',
    where: 'digits',
    message: `the strip cannot be laid round these digits: ${reason}.`,
    kind: 'refused',
  });
}
