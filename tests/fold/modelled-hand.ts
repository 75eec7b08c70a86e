import type { Measures } from '../hands.ts';

/**
 * The digits as docs/model.md describes them, computed plainly and slowly and from nothing of the program: perimeters by summing chords. x from radial to ulnar, y dorsal, z distal with 0 at the foremost web; mm.
 */
export const NAMES = ['index', 'long', 'ring', 'little'] as const;
export type Name = (typeof NAMES)[number];
export type Place = 'enclosed' | 'raised' | 'lowered';

export interface Setting {
  readonly side: 'left' | 'right';
  readonly measures: Readonly<Record<Name, Measures>>;
  readonly webSetback: readonly [number, number, number];
  readonly places: Readonly<Partial<Record<Name, Place>>>;
  readonly closure: 'tacked' | 'spanning';
  readonly differential: number;
  readonly width: number;
  /** PIP flexion, degrees, that the strip says it leaves each digit. */
  readonly free: Readonly<Partial<Record<Name, number>>>;
  /** Of a thin finger the least width may hold the edge nearer to the crease than 2 mm, however far the joint is left free. */
  readonly mayBeHeld?: true;
  /** Of the sheet and how it lies; the usual where it does not say. mm */
  readonly lying?: Lying;
}

export interface Lying {
  readonly thickness: number;
  readonly clearance: number;
  readonly webGap: number;
  readonly play: number;
  readonly proximalGap: number;
}

export const THICKNESS = 2.4;
export const CLEARANCE = 0.5;
export const GAP = 2;
export const USUAL: Lying = { thickness: THICKNESS, clearance: CLEARANCE, webGap: 1, play: 0.5, proximalGap: GAP };

export interface Digit {
  readonly name: Name;
  readonly place: Place;
  readonly x: number;
  readonly y: number;
  readonly a: number;
  readonly b: number;
  /** As the plane square to the mean direction cuts it. */
  readonly cut: number;
  readonly root: number;
  /** The level behind which the band may not pass its midlines: its root, or of a border digit the web outside the block, where that lies further distal. */
  readonly midline: number;
  readonly room: number;
}

export interface WebSpace {
  readonly between: string;
  readonly x: number;
  readonly half: number;
  readonly level: number;
}

export interface ModelledHand {
  readonly digits: readonly Digit[];
  readonly webs: readonly WebSpace[];
}

export function chordSum(a: number, b: number): number {
  let sum = 0;
  const count = 4000;
  for (let k = 0; k < count; k++) {
    const [s, t] = [(2 * Math.PI * k) / count, (2 * Math.PI * (k + 1)) / count];
    sum += Math.hypot(a * (Math.cos(t) - Math.cos(s)), b * (Math.sin(t) - Math.sin(s)));
  }
  return sum;
}

export function halved(f: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let k = 0; k < 60; k++) {
    const middle = (from + to) / 2;
    if (f(middle) < 0) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

export function modelledHand({ measures, webSetback, places, differential, width, lying = USUAL }: Setting): ModelledHand {
  const names = NAMES.filter((name) => places[name] !== undefined);
  const flexion = (name: Name) => ({ enclosed: 0, raised: -1, lowered: 1 })[places[name] ?? 'enclosed'] * ((differential * Math.PI) / 180);
  const mean = names.reduce((sum, name) => sum + flexion(name), 0) / names.length;
  const foremost = Math.min(...webSetback);
  const level = (k: number) => foremost - (webSetback[k] ?? 0);
  const digits: Digit[] = [];
  const webs: WebSpace[] = [];
  for (const name of names) {
    const [wide, round, room, dorsal] = measures[name];
    const a = wide / 2;
    const b = halved((half) => chordSum(a, half) - round, 0, round / 4);
    const theta = flexion(name) - mean;
    const k = NAMES.indexOf(name);
    const beside = [k - 1, k].filter((w) => w >= 0 && w < 3).map(level);
    const before = digits.at(-1);
    const place = places[name] ?? 'enclosed';
    const crosses = before && (before.place === 'enclosed') !== (place === 'enclosed');
    const gap = crosses ? Math.max(lying.webGap, 2 * lying.clearance + lying.thickness + lying.play) : lying.webGap;
    const x = before ? before.x + before.a + gap + a : 0;
    if (before) webs.push({ between: `${before.name}-${name}`, x: before.x + before.a + gap / 2, half: gap / 2, level: level(k - 1) });
    const lever = dorsal - 2.5 - room + lying.proximalGap + width / 2;
    const root = beside.reduce((sum, l) => sum + l, 0) / beside.length;
    // On its outer half a border digit is not to be passed nearer than the web there.
    const outside = [name === names[0] ? k - 1 : -1, name === names.at(-1) ? k : -1].filter((w) => w >= 0 && w < 3).map(level);
    const midline = Math.max(root, ...outside);
    digits.push({ name, place, x, y: -lever * Math.tan(theta), a, b, cut: b / Math.cos(theta), root, midline, room });
  }
  return { digits, webs };
}
