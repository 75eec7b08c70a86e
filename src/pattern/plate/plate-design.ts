import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { digitsIn } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { shortOfStraight } from '../../hand/target-motion.ts';
import { plain } from '../../units/number.ts';
import type { Problem } from '../../units/result.ts';

/** A dorsal plate stops MP extension, a palmar one MP flexion, both together hold the joint still. */
export const PLATE_FACES = ['dorsal', 'palmar', 'both'] as const;
export type PlateFaces = (typeof PLATE_FACES)[number];
/** One side of the hand. */
export type Face = 'dorsal' | 'palmar';

/** What plate is wanted. */
export interface PlateDesign {
  readonly id: string;
  readonly title: string;
  readonly faces: PlateFaces;
  /** The digits whose MP joints are held, neighbours, from radial to ulnar. */
  readonly digits: readonly DigitName[];
  /** MP flexion, degrees. */
  readonly angle: number;
}

/** MP angles that a plate is made for, degrees; the joint's own motion in AAOS-type tables. */
export const PLATE_ANGLE = { low: 0, high: 90 } as const;

export function facesOf(faces: PlateFaces): readonly Face[] {
  return faces === 'both' ? ['dorsal', 'palmar'] : [faces];
}

/** What is wrong with a design for this hand; an empty list when it can be tried. */
export function designProblems(hand: Hand, { digits, angle }: PlateDesign): readonly Problem[] {
  const problems: Problem[] = [];
  const add = (code: string, where: string, message: string, kind: Problem['kind'] = 'input') =>
    problems.push({ code, where, message: `${where}: ${message}`, kind });
  if (!(angle >= PLATE_ANGLE.low && angle <= PLATE_ANGLE.high)) {
    add(
      'PLATE_ANGLE',
      'angle',
      `an MP angle of ${String(angle)} degrees cannot be made; ${PLATE_ANGLE.low} to ${PLATE_ANGLE.high} is allowed.`,
    );
  }
  const motion = passiveMotion(hand, digits);
  if (motion && (angle < motion.from || angle > motion.to)) {
    const { digit, from, to } = motion;
    const nearest = angle < from ? from : to;
    add(
      'PLATE_ANGLE_FORCES',
      'angle',
      `at ${plain(angle, 1)} degrees the plate would force the ${digit} finger's MP joint, whose passive motion was measured from ${plain(from, 1)} to ${plain(to, 1)} degrees. Use ${plain(nearest, 1)} degrees, or measure target.mpPassive again.`,
      'refused',
    );
  }
  const places = digits.map((digit) => DIGITS.indexOf(digit));
  const first = places[0];
  if (first === undefined) add('PLATE_DIGITS', 'digits', `a plate needs at least one digit of ${DIGITS.join(', ')}.`);
  else if (places.some((place, k) => place !== first + k)) {
    add(
      'PLATE_DIGITS',
      'digits',
      `the digits must be neighbours, each once, from radial to ulnar (${DIGITS.join(', ')}); these are ${digits.join(', ')}.`,
    );
  }
  for (const digit of digits) {
    if (hand.digits[digit]) continue;
    const measured = digitsIn(hand.digits).join(', ');
    add(
      'DIGIT_NOT_MEASURED',
      `digits.${digit}`,
      `the plate takes in the ${digit} finger, but the hand file has no measurements of it, only of ${measured}. Measure it, or leave it out.`,
    );
  }
  return problems;
}

/** The passive MP motion of the treated finger, degrees of flexion, where it was read and the plate holds that finger. */
function passiveMotion({ target }: Hand, digits: readonly DigitName[]) {
  const read = target?.mpPassive;
  if (!target || !read || !digits.includes(target.digit)) return null;
  return { digit: target.digit, from: shortOfStraight(read) ?? PLATE_ANGLE.low, to: read.flexion ?? PLATE_ANGLE.high };
}

/** "MP 45 degrees, index to ring": what the plate holds, for titles. */
export function holdsInWords({ digits, angle }: Pick<PlateDesign, 'digits' | 'angle'>): string {
  const first = digits[0] ?? '';
  const last = digits.at(-1) ?? '';
  return `MP ${plain(angle, 1)} degrees, ${first === last ? `${first} finger` : `${first} to ${last}`}`;
}
