import fc from 'fast-check';
import { blocks } from '../../src/block/library.ts';
import { flattened } from '../../src/geometry/path.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { layStrip } from '../../src/pattern/strip/lay-strip.ts';
import { stripFigures } from '../../src/pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, NUMBER_OPTIONS, type StripOptions } from '../../src/pattern/strip/strip-options.ts';
import { handJson, type Measures, WORKED } from '../hands.ts';
import { edgesAt } from './drawn-strip.ts';
import { type Band, modelledBand, mostDistal } from './modelled-band.ts';
import { type Digit, type ModelledHand, modelledHand, NAMES, type Name, type Setting, USUAL } from './modelled-hand.ts';
import { distanceTo, plainProximal } from './plain-edges.ts';

/** Anywhere in a range, evenly, its ends too. */
const within = (low: number, high: number) => fc.integer({ min: 0, max: 1000 }).map((k) => low + ((high - low) * k) / 1000);
const option = (key: string) => {
  const found = NUMBER_OPTIONS.find((o) => o.key === key);
  if (!found) throw new Error(key);
  return within(found.low, found.high);
};
/** Hands of any size about the worked one, their webs as staggered as on hands of their size or of any other, and every option of the edges anywhere in its range. */
export const anyCase = fc.record({
  scale: within(0.6, 1.5),
  own: fc.array(within(0.9, 1.1), { minLength: 4, maxLength: 4 }),
  stagger: fc.tuple(within(0, 3), within(0, 3), within(4, 18)),
  /** The size of a hand that has webs as staggered; null for this one's. */
  websOf: fc.oneof(fc.constant(null), within(0.6, 1.5)),
  block: fc.constantFrom(...blocks()),
  closure: fc.constantFrom('tacked' as const, 'spanning' as const),
  outline: fc.constantFrom<StripOptions['outline']>('staggered', 'straight'),
  seam: fc.constantFrom<StripOptions['seam']>('lap', 'opening', 'pinch'),
  differential: within(1, 30),
  width: fc.oneof(option('width'), fc.constant('auto' as const)),
  minimumWidth: fc.oneof(within(5, 12), fc.constant('auto' as const)),
  freeFlexion: option('freeFlexion'),
  proximalGap: option('proximalGap'),
  seamAllowance: option('seamAllowance'),
  trim: option('trim'),
  stretch: option('stretch'),
});

/** What rounding may take off a corner, with what the slow band is off. */
const OFF = 0.7;
/** How straight the edge of a straight strip is. */
const STRAIGHT_OFF = 0.001;
/**
 * The shear that is said may be so little under that of the steepest ramp between webs and midlines. It may be over it: corners are moved for arcs which a
 * straight strip has not, so that of short steep ramps the warning comes sooner.
 */
const SHEAR_OFF = 0.02;
/** Ramps are looked at over so many mm. */
const RAMP = 0.25;
/** How much nearer to the crease than said the edge may lie: what the slow band is off, where an edge rises beside a relief. */
const NEARER = 0.05;
/** The foot of a relief with the arc at its end reaches so far beside its digit, mm. */
const BESIDE = 4;
/** The least width counts as kept. */
export const WIDTH_OFF = 0.05;
/** The width that a warning says is the strip's within this, mm. */
export const WIDTH_SAID_OFF = 0.1;
/** Whether a lap that ends at the side of a digit covers any of it is left open. */
const LAP_OFF = 0.05;
/** Arcs are looked at as chords within this, mm. */
export const CHORDS = 0.005;
/** So near to its ends the strip has its own corners, for which others are moved, always away from the web. */
export const ENDS = 6;
/** The round corners of its ends reach so far along it, mm. */
const END_CORNERS = 2.5;
const MOVED = 12;

/** An edge counts as short of the wanted flexion from here on, degrees. */
const SHORT = 0.5;
/** What round corners beside a relief may leave over the least width where it stands in the way, mm. */
const WIDTH_LEFT = 0.8;

export type Case = typeof anyCase extends fc.Arbitrary<infer One> ? One : never;

/** What of a strip's edges does not lie where the measures want it, looked at every half millimetre; null where there is no strip. */
export function edgeFaults({ scale, own, stagger, websOf, block, closure, ...chosen }: Case, shift = 0): readonly string[] | null {
  const webs = stagger.map((mm) => mm * (websOf ?? scale)) as [number, number, number];
  const { width, minimumWidth } = chosen;
  // A least width over the width is refused where options are read.
  const asked = width === 'auto' || minimumWidth === 'auto' ? chosen : { ...chosen, minimumWidth: Math.min(width, minimumWidth) };
  const measures = Object.fromEntries(
    NAMES.map((name, k) => [name, WORKED[name].map((mm) => mm * scale * (own[k] ?? 1))]),
  ) as unknown as Readonly<Record<Name, Measures>>;
  const webSetback = { 'index-long': webs[0], 'long-ring': webs[1], 'ring-little': webs[2] };
  const read = readHand({ ...handJson(measures), webSetback });
  const laid = read.ok ? layStrip(read.value, block, { ...DEFAULT_STRIP_OPTIONS, ...asked, closure }) : null;
  if (!laid?.ok || !read.ok) return null;
  const { settings, flat, freePip } = laid.value;
  const { proximalGap, differential } = asked;
  const isStraight = asked.outline === 'straight';
  const { places } = block;
  const lying = { ...USUAL, proximalGap };
  const setting: Setting = {
    side: 'left',
    measures,
    webSetback: webs,
    places,
    closure,
    differential,
    width: settings.width,
    free: freePip,
    lying,
  };
  const hand = modelledHand(setting);
  const band = modelledBand(hand, setting);
  const wanted = plainProximal(hand, band, proximalGap, asked.stretch);
  const drawn = { marks: new Map(), lines: new Map(), outline: flattened(flat.outline, CHORDS).vertices };
  const lap = asked.seam === 'pinch' ? 0 : (asked.seamAllowance / 2) * (1 + settings.stretch);
  const spotsFrom = (ends: number) => {
    const found: { readonly v: number; readonly low: number; readonly high: number }[] = [];
    for (let v = flat.start + ends; v < flat.end - ends; v += 0.5) {
      const { low, high } = edgesAt(drawn, v);
      found.push({ v, low: low + shift, high: high + shift });
    }
    return found;
  };
  const widthsOf = (of: ReturnType<typeof spotsFrom>) => {
    const proximal = of.map(({ v, low }) => ({ x: v, y: low }));
    return of.map(({ v, high }) => distanceTo(proximal, { x: v, y: high }));
  };
  const spots = spotsFrom(ENDS);
  const widths = widthsOf(spots);
  const faults: string[] = [];
  const palmarSpots = new Map<Name, number[]>();
  // A ramp beside a digit may be what keeps its relief up, near an end of the strip too.
  const wider = spotsFrom(END_CORNERS);
  const widthsThere = widthsOf(wider);
  for (const [k, { v }] of wider.entries()) {
    for (const beside of [-BESIDE, 0, BESIDE]) {
      const digit = palmarAt(hand, band, places, (v + beside) * (1 + settings.stretch));
      if (digit) palmarSpots.set(digit.name, [...(palmarSpots.get(digit.name) ?? []), widthsThere[k] ?? 0]);
    }
  }
  const limits = new Map(
    hand.digits.map((digit) => {
      const said = freePip[digit.name] ?? 0;
      // Whether the least width stands in the way of less than is wanted is looked at below.
      const isHeld =
        said < asked.freeFlexion - SHORT || Math.min(...(palmarSpots.get(digit.name) ?? [])) < settings.minimumWidth + WIDTH_LEFT;
      const most = (more: number) => mostDistal(digit, band, said, closure, lap + more, isHeld);
      return [digit.name, Math.max(most(-LAP_OFF), most(LAP_OFF))];
    }),
  );
  const palmar = new Set<Name>();
  for (const [k, { v, low, high }] of spots.entries()) {
    const u = v * (1 + settings.stretch);
    const place = band.at(u - band.length * Math.floor(u / band.length));
    const fault = (what: string, off: number) => faults.push(`${what} by ${off.toFixed(2)} at v ${v}, ${place.course} course`);
    if (isStraight && Math.abs(low) > STRAIGHT_OFF) fault('the edge is not straight', low);
    // A straight strip is pulled to where a staggered one lies.
    const pulled = isStraight ? wanted.moved(u) : 0;
    const off = low + pulled - wanted.level(u);
    // What rounding takes off a corner is square to the edge.
    const slope = (spots[k + 1]?.low ?? low) - (spots[k - 1]?.low ?? low);
    if (off * Math.cos(Math.atan(slope)) < -OFF) fault('too near to a web', off);
    const isMoved = v < flat.start + MOVED || v > flat.end - MOVED;
    const over = low + pulled - wanted.moved(u);
    if (!isMoved && over > OFF) fault('too far from a web', over);
    const digit = palmarAt(hand, band, places, u);
    if (!digit || freePip[digit.name] === undefined) continue;
    palmar.add(digit.name);
    const near = high + pulled - (limits.get(digit.name) ?? Number.NaN);
    if (!(near <= NEARER)) fault(`too far over the ${digit.name} finger`, near);
  }
  const level = (v: number) => wanted.moved(v * (1 + settings.stretch));
  const ramps: number[] = [];
  for (let v = flat.start; v < flat.end - RAMP; v += RAMP) ramps.push(Math.abs(level(v + RAMP) - level(v)) / RAMP);
  const steepest = Math.max(...ramps);
  const steeper = (laid.value.edges.pull?.shear ?? 0) - steepest;
  if (isStraight && !(steeper >= -SHEAR_OFF))
    faults.push(`the shear is said to be ${(-steeper).toFixed(3)} under the steepest ramp's ${steepest.toFixed(3)}`);
  const least = Math.min(...widths);
  // Where the strip cannot keep its least width the program says by how much it misses it.
  const told = stripFigures(read.value, block, { ...DEFAULT_STRIP_OPTIONS, ...asked, closure });
  const said = told.ok ? told.value.warnings.find((w) => w.code === 'STRIP_UNDER_LEAST_WIDTH') : undefined;
  const isNarrow = least < settings.minimumWidth - WIDTH_OFF;
  if ((isNarrow || said) && !(Math.abs(Number(said?.value) - least) <= WIDTH_SAID_OFF))
    faults.push(`the strip is ${least.toFixed(2)} wide for ${settings.minimumWidth}, and the warning says ${said?.value}`);
  for (const name of palmar)
    if ((freePip[name] ?? 0) < asked.freeFlexion - SHORT && least > settings.minimumWidth + WIDTH_LEFT)
      faults.push(
        `the ${name} finger is left ${freePip[name]?.toFixed(1)} for ${asked.freeFlexion}, although the strip is ${least.toFixed(2)} wide`,
      );
  return faults;
}

/** The digit that the band passes on its palmar side at u. */
function palmarAt(hand: ModelledHand, band: Band, places: object, u: number): Digit | undefined {
  const { x, course } = band.at(u - band.length * Math.floor(u / band.length));
  const digit = hand.digits.find((d) => course !== 'border' && Math.abs(x - d.x) < d.a - 0.05);
  return digit && isPalmar(digit.place, course, places) ? digit : undefined;
}

function isPalmar(place: string, course: string, places: object): boolean {
  if (place !== 'enclosed') return place === 'raised';
  return (course === 'outer') === Object.values(places).includes('raised');
}
