import { heightOn, profile, type Spot, taut } from './modelled-band.ts';
import { type Digit, type ModelledHand, type Setting, USUAL } from './modelled-hand.ts';

/** Distance between the places at which the string is held off the fingers, mm. */
const STEP = 0.02;

/** The band's length by a string pulled tight between the outermost points of the two border fingers, above and below; mm. Null where no string passes. */
export interface SlowPath {
  readonly length: number;
  /** How near the inner course comes to the held digit that it comes least near to, mm: more than 0, it holds nothing there. */
  readonly slack: number;
}

export function slowPath(hand: ModelledHand, setting: Setting): SlowPath | null {
  const { thickness, clearance } = setting.lying ?? USUAL;
  const offset = clearance + thickness / 2;
  // Lowered digits are laid as raised ones, upside down.
  const flip = Object.values(setting.places).includes('lowered') ? -1 : 1;
  const digits = hand.digits.map((d) => ({ ...d, y: flip * d.y }));
  const isHeld = (d: Digit) => d.place !== 'enclosed';
  const [first, last] = [digits[0] as Digit, digits.at(-1) as Digit];
  const [left, right] = [first.x - first.a - offset, last.x + last.a + offset];
  const count = Math.round((right - left) / STEP);
  const grid = Array.from({ length: count + 1 }, (_, k) => left + ((right - left) * k) / count);
  const free = digits.filter((d) => !isHeld(d));
  const floor = profile(grid, free, () => offset, 1);
  const held = digits.filter(isHeld);
  const roof = profile(grid, held, () => offset, -1);
  if (floor.some((low, k) => low > (roof[k] as number))) return null;
  const inner = taut(grid, floor, roof, first.y, last.y);
  // With a thick layer the string lies beside a thin finger, further out than the finger's own half width.
  const slackAt = (d: Digit) => {
    const own = profile(grid, [d], () => offset, -1);
    return Math.min(...grid.flatMap((x, k) => (Math.abs(x - d.x) < d.a + offset ? [(own[k] as number) - heightOn(inner, x)] : [])));
  };
  const slack = Math.max(...held.map(slackAt));
  const under = profile(grid, digits, (d) => offset + (isHeld(d) ? thickness : 0), -1);
  const open = (line: readonly unknown[]) => line.map(() => Number.NEGATIVE_INFINITY);
  if (setting.closure === 'spanning') return { length: lengthOf(inner) + lengthOf(taut(grid, open(grid), under, first.y, last.y)), slack };
  const middle = (Math.min(...held.map((d) => d.x)) + Math.max(...held.map((d) => d.x))) / 2;
  const [y, next] = [heightOn(inner, middle), heightOn(inner, middle + 0.01)];
  const slope = Math.atan2(next - y, 0.01);
  const tack = { x: middle + thickness * Math.sin(slope), y: y - thickness * Math.cos(slope) };
  const k = grid.findIndex((x) => x > tack.x);
  const [before, after] = [
    [...grid.slice(0, k), tack.x],
    [tack.x, ...grid.slice(k)],
  ];
  const one = taut(before, open(before), [...under.slice(0, k), tack.y], first.y, tack.y);
  const two = taut(after, open(after), [tack.y, ...under.slice(k)], tack.y, last.y);
  return { length: lengthOf(inner) + lengthOf(one) + lengthOf(two), slack };
}

function lengthOf(line: readonly Spot[]): number {
  return line.slice(1).reduce((sum, p, k) => sum + Math.hypot(p.x - (line[k] as Spot).x, p.y - (line[k] as Spot).y), 0);
}
