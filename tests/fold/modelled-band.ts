import { CLEARANCE, chordSum, type Digit, halved, type ModelledHand, type Name, type Setting, THICKNESS, USUAL } from './modelled-hand.ts';

/** The band round the digits, computed from nothing of the program: a string pulled tight over profiles on a grid; and how far its distal edge may reach. mm */
const SEAM = 15;
const STEP = 0.02;

export interface BandPoint {
  readonly u: number;
  readonly x: number;
  readonly y: number;
  /** `border`: on the outer half of a border digit. */
  readonly course: 'outer' | 'inner' | 'border';
}

export interface Band {
  readonly length: number;
  /** u of the two border turns. */
  readonly radialTurn: number;
  readonly ulnarTurn: number;
  /** Both courses from the first digit's midline to the last one's; u along the band from the seam. */
  readonly outer: readonly BandPoint[];
  readonly inner: readonly BandPoint[];
  readonly at: (u: number) => BandPoint;
  /** Once round from the seam in small straight pieces: how long each is, and by how much the next one turns from it round which digit, radians. */
  readonly steps: readonly Step[];
}

export interface Step {
  readonly length: number;
  readonly turn: number;
  readonly on: Name | null;
}

/** The band pulled tight: both courses on a grid, the border digits gone round by half their offset edge. */
export function modelledBand(hand: ModelledHand, setting: Setting): Band {
  const { thickness, clearance } = setting.lying ?? USUAL;
  const R0 = clearance + thickness / 2;
  // Lowered digits are laid as raised ones, upside down.
  const flip = Object.values(setting.places).includes('lowered') ? -1 : 1;
  const digits = hand.digits.map((d) => ({ ...d, y: flip * d.y }));
  const [first, last] = [digits[0] as Digit, digits.at(-1) as Digit];
  const count = Math.round((last.x - first.x) / STEP);
  const grid = Array.from({ length: count + 1 }, (_, k) => first.x + ((last.x - first.x) * k) / count);
  const none = grid.map(() => Number.POSITIVE_INFINITY);
  const isHeld = (d: Digit) => d.place !== 'enclosed';
  const floor = profile(
    grid,
    digits.filter((d) => !isHeld(d)),
    () => R0,
    1,
  );
  const roof = profile(grid, digits.filter(isHeld), () => R0, -1);
  const inner = taut(grid, floor, roof, first.y + first.cut + R0, last.y + last.cut + R0);
  const held = digits.filter(isHeld).map((d) => d.x);
  const middle = (Math.min(...held) + Math.max(...held)) / 2;
  const over = profile(grid, digits, (d) => (isHeld(d) ? R0 + thickness : R0), -1);
  const ends = [first.y - first.cut - R0, last.y - last.cut - R0] as const;
  const down = none.map(() => Number.NEGATIVE_INFINITY);
  let outer: readonly Spot[];
  let tackX = Number.NaN;
  if (setting.closure === 'spanning') outer = taut(grid, down, over, ...ends);
  else {
    const [y, next] = [heightOn(inner, middle), heightOn(inner, middle + 0.01)];
    const slope = Math.atan2(next - y, 0.01);
    const tack = { x: middle + thickness * Math.sin(slope), y: y - thickness * Math.cos(slope) };
    tackX = tack.x;
    const k = grid.findIndex((x) => x > tack.x);
    const left = [...grid.slice(0, k), tack.x];
    const right = [tack.x, ...grid.slice(k)];
    outer = [
      ...taut(
        left,
        left.map(() => Number.NEGATIVE_INFINITY),
        [...over.slice(0, k), tack.y],
        ends[0],
        tack.y,
      ),
      ...taut(
        right,
        right.map(() => Number.NEGATIVE_INFINITY),
        [tack.y, ...over.slice(k)],
        tack.y,
        ends[1],
      ).slice(1),
    ];
  }
  return numbered(outer, inner, middle, digits, tackX, flip, R0);
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Greatest (way 1) or least (way -1) height of the bodies' offset edges over each x of a grid. */
export function profile(grid: readonly number[], digits: readonly Digit[], offset: (d: Digit) => number, way: 1 | -1): number[] {
  const edge = grid.map(() => (way > 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY));
  for (const d of digits) {
    const r = offset(d);
    const spots = Array.from({ length: 6001 }, (_, k) => {
      const t = Math.PI - (Math.PI * k) / 6000;
      const [nx, ny] = [d.cut * Math.cos(t), d.a * Math.sin(t)];
      const size = Math.hypot(nx, ny);
      return { x: d.x + d.a * Math.cos(t) + (r * nx) / size, y: d.y + way * (d.cut * Math.sin(t) + (r * ny) / size) };
    });
    let k = 0;
    for (const [i, x] of grid.entries()) {
      if (x < (spots[0]?.x ?? 0) || x > (spots.at(-1)?.x ?? 0)) continue;
      while (k + 2 < spots.length && (spots[k + 1] as Spot).x < x) k++;
      const [p, q] = [spots[k] as Spot, spots[k + 1] as Spot];
      const y = q.x === p.x ? p.y : p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x);
      edge[i] = way > 0 ? Math.max(edge[i] as number, y) : Math.min(edge[i] as number, y);
    }
  }
  return edge;
}

/** The shortest line between two bounds on a grid from one height to another: it goes on in a straight line as long as any fits, and bends where none does. */
export function taut(grid: readonly number[], low: readonly number[], high: readonly number[], from: number, to: number): Spot[] {
  const last = grid.length - 1;
  const at = (bounds: readonly number[], k: number) => (k === last ? to : (bounds[k] as number));
  const line: Spot[] = [{ x: grid[0] as number, y: from }];
  let i = 0;
  while (i < last) {
    const { x, y } = line.at(-1) as Spot;
    let [steepest, flattest] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    let [lowAt, highAt] = [i + 1, i + 1];
    let next = last;
    let height = to;
    for (let j = i + 1; j <= last; j++) {
      const run = (grid[j] as number) - x;
      const [a, b] = [(at(low, j) - y) / run, (at(high, j) - y) / run];
      if (a > flattest) {
        [next, height] = [highAt, at(high, highAt)];
        break;
      }
      if (b < steepest) {
        [next, height] = [lowAt, at(low, lowAt)];
        break;
      }
      if (b <= flattest) [flattest, highAt] = [b, j];
      if (a >= steepest) [steepest, lowAt] = [a, j];
    }
    line.push({ x: grid[next] as number, y: height });
    i = next;
  }
  return line;
}

export function heightOn(line: readonly Spot[], x: number): number {
  const k = Math.max(
    1,
    line.findIndex((p) => p.x >= x),
  );
  const [p, q] = [line[k - 1] as Spot, line[k] as Spot];
  return p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x);
}

/** The same line with a point at least every 0.1 mm. */
function dense(line: readonly Spot[]): Spot[] {
  return line.flatMap((p, k) => {
    const next = line[k + 1];
    const count = next ? Math.max(1, Math.ceil(Math.hypot(next.x - p.x, next.y - p.y) / 0.1)) : 1;
    return Array.from({ length: count }, (_, i) => {
      const t = i / count;
      return next ? { x: p.x + t * (next.x - p.x), y: p.y + t * (next.y - p.y) } : p;
    });
  });
}

/** The turns of a line at its corners, each on the digit whose edge it lies nearest to; where it is bonded to the other layer it may kink freely. */
function stepsOf(line: readonly Spot[], digits: readonly Digit[], tackX: number, R0: number): Step[] {
  return line.slice(1).map((to, k) => {
    const from = line[k] as Spot;
    const next = line[k + 2];
    const turn = next ? Math.atan2(next.y - to.y, next.x - to.x) - Math.atan2(to.y - from.y, to.x - from.x) : 0;
    const off = (d: Digit) => Math.abs(Math.hypot((to.x - d.x) / (d.a + R0), (to.y - d.y) / (d.cut + R0)) - 1);
    const nearest = digits.reduce((one, other) => (off(other) < off(one) ? other : one));
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    return {
      length,
      turn: turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)),
      on: Math.abs(to.x - tackX) < 1e-9 ? null : nearest.name,
    };
  });
}

/** Round the outer half of a border digit. */
function borderSteps(d: Digit, R0: number): Step[] {
  const count = 2000;
  const normalAt = (k: number) => {
    const t = -Math.PI / 2 + (Math.PI * k) / count;
    return Math.atan2(d.a * Math.sin(t), d.cut * Math.cos(t));
  };
  return Array.from({ length: count }, (_, k) => {
    const [s, t] = [k, k + 1].map((i) => -Math.PI / 2 + (Math.PI * i) / count) as [number, number];
    const turn = normalAt(k + 1) - normalAt(k);
    return { length: Math.hypot(d.a * (Math.cos(t) - Math.cos(s)), d.cut * (Math.sin(t) - Math.sin(s))) + R0 * turn, turn, on: d.name };
  });
}

function numbered(
  outer: readonly Spot[],
  inner: readonly Spot[],
  middle: number,
  digits: readonly Digit[],
  tackX: number,
  flip: number,
  R0: number,
): Band {
  const [first, last] = [digits[0] as Digit, digits.at(-1) as Digit];
  const half = (d: Digit) => chordSum(d.a, d.cut) / 2 + Math.PI * R0;
  const seam = { x: middle, y: heightOn(outer, middle) };
  const radially = dense([seam, ...outer.filter((p) => p.x < middle).toReversed()]);
  const ulnarly = dense([...outer.filter((p) => p.x > middle).toReversed(), seam]);
  const run = (line: readonly Spot[], start: number, course: BandPoint['course']): BandPoint[] => {
    let u = start;
    return line.map((p, k) => {
      const before = line[k - 1];
      if (before) u += Math.hypot(p.x - before.x, p.y - before.y);
      return { u, x: p.x, y: flip * p.y, course };
    });
  };
  const one = run(radially, 0, 'outer');
  const two = run(dense(inner), (one.at(-1)?.u ?? 0) + half(first), 'inner');
  const three = run(ulnarly, (two.at(-1)?.u ?? 0) + half(last), 'outer');
  const all = [...one, ...two, ...three];
  const length = three.at(-1)?.u ?? 0;
  const at = (u: number): BandPoint => {
    let [before, k] = [-1, all.length - 1];
    while (k - before > 1) {
      const half = (before + k) >> 1;
      if ((all[half] as BandPoint).u >= u - 1e-9) k = half;
      else before = half;
    }
    const [p, q] = [all[Math.max(0, k - 1)] as BandPoint, all[Math.max(0, k)] as BandPoint];
    if (p.course !== q.course) return { u, x: p.x, y: 0, course: 'border' };
    const t = q.u === p.u ? 0 : (u - p.u) / (q.u - p.u);
    return { u, x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y), course: p.course };
  };
  return {
    length,
    radialTurn: (one.at(-1)?.u ?? 0) + half(first) / 2,
    ulnarTurn: (two.at(-1)?.u ?? 0) + half(last) / 2,
    outer: [...one, ...three],
    inner: two,
    at,
    steps: [
      ...stepsOf(radially, digits, tackX, R0),
      ...borderSteps(first, R0),
      ...stepsOf(dense(inner), digits, Number.NaN, R0),
      ...borderSteps(last, R0),
      ...stepsOf(ulnarly, digits, tackX, R0),
    ],
  };
}

/** Where the distal edge may be at most over a palmar pass of a digit, so that its PIP joint bends as far as it is said to before its middle phalanx meets the edge; `lap`: how far the ends overlap to each side of the seam. */
export function mostDistal(
  digit: Digit,
  band: Band,
  said: number,
  closure: Setting['closure'],
  lap = SEAM / 2,
  isHeld = said < 99.9,
): number {
  const lapped = palmarUnderLap(digit, band, lap);
  const layers = (digit.place === 'raised' ? 2 : 1) + (lapped ? 1 : 0);
  const standOff = Math.max(0, Math.min(...standOffs(digit, band)));
  const high = digit.b + CLEARANCE + layers * THICKNESS + (digit.place === 'raised' && closure === 'spanning' ? standOff : 0);
  const free = (e: number) => 180 - ((Math.atan2(high, e + 2.5) + Math.asin((0.5 * digit.b) / Math.hypot(e + 2.5, high))) * 180) / Math.PI;
  const e = halved((distance) => free(distance) - said, -60, 60);
  // The edge keeps 2 mm off the crease; where the least width stands in the way, as it does where less than the usual 100 degrees is free, it comes nearer.
  return digit.root + digit.room - (isHeld ? e : Math.max(2, e));
}

/** Whether the ends that lie over each other to both sides of the seam cover any of a digit's palmar side. */
function palmarUnderLap(digit: Digit, band: Band, lap: number): boolean {
  const isPalmar = (course: readonly BandPoint[]) => course.some((p) => Math.abs(p.x - digit.x) < 0.2 && p.y < digit.y);
  const [outer, inner] = [isPalmar(band.outer), isPalmar(band.inner)];
  for (let away = 0; away < lap; away += 0.02)
    for (const u of [away, band.length - away]) {
      const p = band.at(u);
      if (Math.abs(p.x - digit.x) >= digit.a) continue;
      const isInner = p.course === 'border' ? u > band.radialTurn && u < band.ulnarTurn : p.course === 'inner';
      if (isInner ? inner : outer) return true;
    }
  return false;
}

function standOffs(digit: Digit, band: Band): readonly number[] {
  const under = band.outer.filter((p) => Math.abs(p.x - digit.x) < 0.2);
  return under.map((p) => Math.abs(p.y - digit.y) - (digit.cut + CLEARANCE + 1.5 * THICKNESS));
}
