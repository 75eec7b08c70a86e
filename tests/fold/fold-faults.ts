import { type DrawnStrip, edgesAt } from './drawn-strip.ts';
import { type Band, modelledBand, mostDistal } from './modelled-band.ts';
import { type Digit, GAP, type ModelledHand, modelledHand, type Setting, THICKNESS } from './modelled-hand.ts';

/** How far a mark may lie from what it names, once folded; mm. */
const MARK_OFF = 0.3;
/** What rounding may take off a corner of an edge. */
const ROUNDED_OFF = 0.65;
/** Where the edge runs this straight over so far to both sides no corner was rounded, mm. */
const STRAIGHT = 0.05;
const BESIDE = 1.5;
const LAYER_SLACK = 0.1;
const EDGE_SLACK = 0.02;
/** Said to a tenth of a degree. */
const ROUNDED_ANGLE = 0.05;
/** PIP flexion that is asked for, degrees. */
const FREE = 100;

/** Folds a drawn strip round the modelled digits and says what does not lie where it should; empty when all does. */
export function foldFaults(
  strip: DrawnStrip,
  setting: Setting,
  hand: ModelledHand = modelledHand(setting),
  band: Band = modelledBand(hand, setting),
): readonly string[] {
  const faults: string[] = [];
  const seam = strip.marks.get('seam, starting end') ?? Number.NaN;
  const closing = strip.marks.get('seam, finishing end') ?? Number.NaN;
  const way = Math.sign(closing - seam);
  if (Math.abs(Math.abs(closing - seam) - band.length) > MARK_OFF)
    faults.push(`${Math.abs(closing - seam).toFixed(2)} long from seam to seam, ${band.length.toFixed(2)} round the digits`);
  if (!outsideUp(setting, way)) faults.push('folded with its outside up it would run the wrong way round the hand');
  for (const [title, x] of strip.marks) {
    const u = (x - seam) * way;
    const wrapped = u < 0 ? u + band.length : u > band.length ? u - band.length : u;
    const place = band.at(wrapped);
    const fault = markFault(title, wrapped, place, hand, band);
    if (fault) faults.push(fault);
  }
  faults.push(...edgeFaults(strip, { hand, band }, setting, { seam, way }));
  const least = Math.min(...band.outer.map((p) => Math.min(...near(band.inner, p.x).map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));
  if (least < THICKNESS - LAYER_SLACK) faults.push(`layers ${least.toFixed(2)} apart`);
  return faults;
}

function near<P extends { x: number }>(line: readonly P[], x: number): readonly P[] {
  return line.filter((q) => Math.abs(q.x - x) < THICKNESS + 1);
}

/** On a left hand x (ulnar), y (dorsal) and z (distal) are right-handed. Outside up and distal up, the strip's x, y and the reader's direction are as well. */
function outsideUp({ side, places }: Setting, way: number): boolean {
  const raised = Object.values(places).includes('raised');
  // From the seam the band runs radially (-x), with its outside palmar (-y) on raised digits, dorsal (+y) on lowered ones: (-x) x z against the outside.
  const outside = raised ? -1 : 1;
  // (-1, 0, 0) x (0, 0, 1) = (0, 1, 0).
  const crossed = 1;
  return way * crossed * outside * (side === 'left' ? 1 : -1) > 0;
}

function markFault(
  title: string,
  u: number,
  place: { x: number; course: string },
  hand: ModelledHand,
  band: { radialTurn: number; ulnarTurn: number },
): string | null {
  const midline = /^(\w+) midline, (dorsal|palmar), (outer|inner) layer$/.exec(title);
  const web = /^web (\w+-\w+), (outer|inner) layer$/.exec(title);
  const border = /^(radial|ulnar) border of/.exec(title);
  if (border) {
    const off = Math.abs(u - (border[1] === 'radial' ? band.radialTurn : band.ulnarTurn));
    return off > MARK_OFF ? `${title}: ${off.toFixed(2)} off` : null;
  }
  if (!midline && !web) return null;
  const x = midline ? hand.digits.find((d) => d.name === midline[1])?.x : hand.webs.find((w) => w.between === web?.[1])?.x;
  const off = Math.abs(place.x - (x ?? Number.NaN));
  if (place.course !== (midline ? midline[3] : web?.[2]) && off > 1e-6) return `${title}: on the ${place.course} course`;
  return off <= MARK_OFF ? null : `${title}: ${off.toFixed(2)} off`;
}

function edgeFaults(
  strip: DrawnStrip,
  { hand, band }: { hand: ModelledHand; band: Band },
  setting: Setting,
  { seam, way }: { seam: number; way: number },
): readonly string[] {
  const raised = Object.values(setting.places).includes('raised');
  const faults: string[] = [];
  // Nothing in the file says where 0 is along the digits; the person lays the proximal edge a gap beyond webs and roots, so it is taken from all of them.
  const levels = [...strip.marks].flatMap(([title, x]) => {
    const web = hand.webs.find((w) => title.startsWith(`web ${w.between},`));
    const digit = hand.digits.find((d) => title.startsWith(`${d.name} midline,`));
    const level = web?.level ?? digit?.midline;
    const low = (beside: number) => edgesAt(strip, x + beside).low;
    const bend = Math.abs(low(-BESIDE) + low(BESIDE) - 2 * low(0));
    return level === undefined ? [] : [{ title, bend, off: level + GAP - low(0) }];
  });
  const straight = levels.filter(({ bend }) => bend < STRAIGHT);
  const offs = (straight.length > 0 ? straight : levels).map((w) => w.off).sort((one, other) => one - other);
  const zero = offs[Math.floor(offs.length / 2)] ?? Number.NaN;
  for (const { title, off } of levels)
    if (Math.abs(off - zero) > ROUNDED_OFF) faults.push(`${title}: proximal edge ${(off - zero).toFixed(2)} off its level`);
  const limits = new Map(
    hand.digits.map((d) => {
      const said = setting.free[d.name] ?? 100;
      const isHeld = setting.mayBeHeld || said < FREE - ROUNDED_ANGLE;
      return [d, mostDistal(d, band, said - ROUNDED_ANGLE, setting.closure, undefined, isHeld)];
    }),
  );
  for (let u = 0.25; u < band.length; u += 0.5) {
    const place = band.at(u);
    const { low, high } = edgesAt(strip, seam + way * u);
    const web = hand.webs.find((w) => place.course !== 'border' && Math.abs(place.x - w.x) < w.half);
    if (web && low + zero <= web.level) faults.push(`u ${u}: proximal edge over the web ${web.between}`);
    const border = place.course === 'border' ? hand.digits.at(place.x < (hand.webs[0]?.x ?? 0) ? 0 : -1) : undefined;
    if (border && low + zero <= border.midline) faults.push(`u ${u}: proximal edge over the web outside the ${border.name} finger`);
    const digit = hand.digits.find((d) => place.course !== 'border' && Math.abs(place.x - d.x) <= d.a - EDGE_SLACK);
    if (digit && isPalmar(digit, place.course, raised)) {
      const over = high + zero - (limits.get(digit) ?? Number.NaN);
      if (!(over <= EDGE_SLACK)) faults.push(`u ${u}: distal edge ${over.toFixed(2)} too far over the ${digit.name} finger`);
    }
  }
  return faults;
}

function isPalmar(digit: Digit, course: string, raised: boolean): boolean {
  if (digit.place !== 'enclosed') return digit.place === 'raised';
  return (course === 'outer') === raised;
}
