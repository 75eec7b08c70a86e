import type { DrawnStrip, Spot } from './drawn-strip.ts';
import type { Band } from './modelled-band.ts';
import { type Digit, GAP, type ModelledHand, type Name, type Setting } from './modelled-hand.ts';

/** A line across the flat strip: where it crosses level 0, and the way the strip goes there. */
interface Across {
  readonly u: number;
  readonly at: Spot;
  readonly heading: number;
}

/** How far the two ends of a line across the strip may come to lie apart along the band; mm. */
const ASKEW = 0.3;
/** What is laid flat beyond both seams, mm. */
const BEYOND = 40;

/**
 * A drawn strip that is curved for tapering fingers, laid straight: rolled off the modelled fingers, cones as round as measured at their roots, line after line
 * with the turn that each small piece of the band makes on its cone. What the layout computes at a stroke is summed here in small steps from the string's own points.
 * `taper` is half the angle of a digit's cone, radians.
 */
export function rolledStraight(drawn: DrawnStrip, hand: ModelledHand, band: Band, taper: (digit: Digit) => number): DrawnStrip {
  const seam = drawn.lines.get('seam, starting end');
  const closing = drawn.lines.get('seam, finishing end');
  if (!seam || !closing) throw new Error('no seam');
  const way = Math.sign(closing[0].x - seam[0].x);
  // Laid so that u runs to the right; a strip that runs to the left is looked at in a mirror.
  const seen = (p: Spot): Spot => ({ x: way * p.x, y: p.y });
  const [low, high] = seam.map(seen) as [Spot, Spot];
  const up = Math.atan2(high.y - low.y, high.x - low.x);
  let zero = 0;
  let lines: readonly Across[] = [];
  const laid = (p: Spot): Spot => unrolled(seen(p), lines);
  // Where 0 lies along the seam's line is not in the file; the proximal edges at all webs and midlines tell.
  for (let round = 0; round < 4; round++) {
    const first = { x: low.x + zero * Math.cos(up), y: low.y + zero * Math.sin(up) };
    lines = rolled(hand, band, taper, first, up - Math.PI / 2);
    const off = [...drawn.lines].flatMap(([title, [end]]) => {
      const level =
        hand.webs.find((w) => title.startsWith(`web ${w.between},`))?.level ??
        hand.digits.find((d) => title.startsWith(`${d.name} midline,`))?.midline;
      return level === undefined ? [] : [level + GAP - laid(end).y];
    });
    zero -= off.sort((a, b) => a - b)[Math.floor(off.length / 2)] ?? 0;
  }
  const across = [...drawn.lines].filter(([title]) => /^web |midline|border of|^seam, /.test(title));
  const straight = new Map(across.map(([title, [a, b]]) => [title, [laid(a), laid(b)] as const]));
  for (const [title, [a, b]] of straight)
    if (Math.abs(a.x - b.x) > ASKEW) throw new Error(`${title}: its ends lie ${Math.abs(a.x - b.x).toFixed(2)} apart along the band`);
  const back = ({ x, y }: Spot): Spot => ({ x: way * x, y });
  return {
    marks: new Map([...straight].map(([title, [a, b]]) => [title, (way * (a.x + b.x)) / 2])),
    lines: new Map([...straight].map(([title, [a, b]]) => [title, [back(a), back(b)] as const])),
    outline: drawn.outline.map((p) => back(laid(p))),
  };
}

/** The lines across the strip, one after the other, from BEYOND before the seam to BEYOND after its other end. */
function rolled(hand: ModelledHand, band: Band, taper: (digit: Digit) => number, first: Spot, heading: number): readonly Across[] {
  const steps = band.steps;
  const count = steps.length;
  const go = (from: Across, step: Band['steps'][number], sign: 1 | -1): Across => {
    const digit = hand.digits.find((d) => d.name === step.on);
    const turn = digit ? Math.abs(step.turn) * Math.sin(taper(digit)) : 0;
    const level = digit ? digit.root + digit.room / 2 : 0;
    const next = from.heading + sign * turn;
    const middle = (from.heading + next) / 2;
    // The level at which the finger was measured moves on by the band's own length; the line stays square to the way.
    const own = { x: from.at.x - level * Math.sin(from.heading), y: from.at.y + level * Math.cos(from.heading) };
    const moved = { x: own.x + sign * step.length * Math.cos(middle), y: own.y + sign * step.length * Math.sin(middle) };
    const at = { x: moved.x + level * Math.sin(next), y: moved.y - level * Math.cos(next) };
    return { u: from.u + sign * step.length, at, heading: next };
  };
  const start: Across = { u: 0, at: first, heading };
  const ahead = [start];
  for (let k = 0; (ahead.at(-1) as Across).u < band.length + BEYOND; k++)
    ahead.push(go(ahead.at(-1) as Across, steps[k % count] as Band['steps'][number], 1));
  const behind = [start];
  for (let k = count - 1; (behind.at(-1) as Across).u > -BEYOND; k--)
    behind.push(go(behind.at(-1) as Across, steps[((k % count) + count) % count] as Band['steps'][number], -1));
  return [...behind.slice(1).reverse(), ...ahead];
}

/** The place on the band that a point of the drawing comes to lie on: u and level. */
function unrolled(p: Spot, lines: readonly Across[]): Spot {
  const along = ({ at, heading }: Across) => (p.x - at.x) * Math.cos(heading) + (p.y - at.y) * Math.sin(heading);
  // The strip is a long way from bending back on itself, so the last line that it lies beyond is found by halving.
  let [from, to] = [0, lines.length - 1];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (along(lines[middle] as Across) >= 0) from = middle;
    else to = middle;
  }
  const [a, b] = [lines[from] as Across, lines[to] as Across];
  const [before, after] = [along(a), along(b)];
  const t = before === after ? 0 : before / (before - after);
  const across = ({ at, heading }: Across) => -(p.x - at.x) * Math.sin(heading) + (p.y - at.y) * Math.cos(heading);
  return { x: a.u + t * (b.u - a.u), y: across(a) + t * (across(b) - across(a)) };
}

/** Half the angle of each digit's cone from its two circumferences and the distance between them. */
export function taperOf({ measures }: Setting, roots: Readonly<Record<Name, number>>): (digit: Digit) => number {
  return (digit) => {
    const [, round, room] = measures[digit.name];
    const [radius, rootRadius] = [round, roots[digit.name]].map((c) => c / 2 / Math.PI) as [number, number];
    return Math.atan2(rootRadius - radius, room / 2);
  };
}
