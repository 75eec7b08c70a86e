import { DIGITS } from '../../hand/digits.ts';
import { digitsIn } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import type { Problem } from '../../units/result.ts';
import { fittedPlate, NEAREST_TO_PIP } from './fitted-plate.ts';
import type { PlateDesign } from './plate-design.ts';
import type { PlateOptions } from './plate-options.ts';

/** A change of a plate that was refused, with which it can be made. */
export interface TriedChange {
  readonly words: string;
  readonly design: PlateDesign;
  readonly options: PlateOptions;
}

const ANGLE_STEP = 5;

/** Whether hand, design and options leave room for a plate, without drawing it. */
export function plateFits(hand: Hand, design: PlateDesign, options: PlateOptions): boolean {
  return fittedPlate(hand, design, options).ok;
}

/** The smallest change, of those that a therapist would make first, with which a refused plate can be made; null where none of them helps. */
export function triedChange(hand: Hand, design: PlateDesign, options: PlateOptions): TriedChange | null {
  for (const change of changes(hand, design, options)) if (plateFits(hand, change.design, change.options)) return change;
  return null;
}

function* changes(hand: Hand, design: PlateDesign, options: PlateOptions): Generator<TriedChange> {
  const with_ = (words: string, more: Partial<PlateDesign>, set: Partial<PlateOptions> = {}): TriedChange => ({
    words,
    design: { ...design, ...more },
    options: { ...options, ...set },
  });
  if (options.pipClearance > NEAREST_TO_PIP) yield with_(`pipClearance ${NEAREST_TO_PIP} mm`, {}, { pipClearance: NEAREST_TO_PIP });
  for (const digit of digitsIn(hand.digits)) {
    const digits = DIGITS.filter((d) => d === digit || design.digits.includes(d));
    const places = digits.map((d) => DIGITS.indexOf(d));
    if (digits.length > design.digits.length && places.every((place, k) => k === 0 || place === (places[k - 1] as number) + 1))
      yield with_(`the ${digit} finger taken in`, { digits });
  }
  for (const digits of [design.digits.slice(0, -1), design.digits.slice(1)])
    if (digits.length > 0) yield with_(`only ${digits.join(', ')} held`, { digits });
  for (let angle = ANGLE_STEP * Math.ceil(design.angle / ANGLE_STEP) - ANGLE_STEP; angle >= 0; angle -= ANGLE_STEP)
    yield with_(`an MP angle of ${plain(angle, 1)} degrees`, { angle });
  if (design.faces !== 'dorsal') yield with_('a dorsal plate', { faces: 'dorsal' });
  yield with_('coverShare 0.85 and wristClearance 5 mm', {}, { coverShare: 0.85, wristClearance: 5 });
}

/** The problems of a refused plate, the first with the change that was tried and works. */
export function withTriedChange(problems: readonly Problem[], hand: Hand, design: PlateDesign, options: PlateOptions): readonly Problem[] {
  const [first, ...others] = problems;
  if (first?.code !== 'PLATE_NO_ROOM') return problems;
  const change = triedChange(hand, design, options);
  if (!change) return [{ ...first, message: `${first.message} No single change that was tried makes room: measure again.` }, ...others];
  return [{ ...first, message: `${first.message} Tried, and it can be made: with ${change.words}.` }, ...others];
}
