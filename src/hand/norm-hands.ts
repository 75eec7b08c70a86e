import { type Result, success } from '../units/result.ts';
import { DIGITS, type DigitName } from './digits.ts';
import type { Hand } from './hand.ts';
import { HAND_SCHEMA_ID } from './hand-schema.ts';
import type { NormGroup } from './norm-groups.ts';
import { readHand } from './read-hand.ts';

export type Sex = Exclude<NormGroup, 'mixed'>;

interface Spread {
  readonly mean: number;
  readonly sd: number;
}

/** Published figures of the hand as a whole, mm: ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, computed from its public raw data. */
const HAND: Readonly<
  Record<
    Sex,
    { readonly breadth: Spread; readonly circumference: Spread; readonly length: Spread; readonly ratio90: readonly [number, number] }
  >
> = {
  female: {
    breadth: { mean: 78.15, sd: 3.84 },
    circumference: { mean: 186.55, sd: 8.82 },
    length: { mean: 181.08, sd: 10.06 },
    ratio90: [2.31, 2.48],
  },
  male: {
    breadth: { mean: 88.26, sd: 4.39 },
    circumference: { mean: 212.28, sd: 10.24 },
    length: { mean: 193.28, sd: 9.95 },
    ratio90: [2.33, 2.49],
  },
};

/** Mean circumference at mid proximal phalanx, mm: no open table was readable, from memory. */
const PHALANX_CIRCUMFERENCE: Readonly<Record<Sex, Readonly<Record<DigitName, number>>>> = {
  female: { index: 56, long: 55, ring: 51, little: 45 },
  male: { index: 64, long: 62, ring: 58, little: 51 },
};
/** Spread of a digit's circumference as a share of its mean, from memory. */
const CIRCUMFERENCE_SPREAD = 0.055;

/** Breadth over circumference at the PIP joint, Greiner 1991, NATICK/TR-92/011, second-hand; where women's is missing, men's. */
const BREADTH_RATIO: Readonly<Record<Sex, Readonly<Record<DigitName, number>>>> = {
  female: { index: 19.9 / 61.2, long: 19.3 / 61.3, ring: 21.4 / 64.9, little: 19.2 / 57.8 },
  male: { index: 23.0 / 68.4, long: 22.5 / 69.6, ring: 21.4 / 64.9, little: 19.2 / 57.8 },
};
/** How much that ratio differs between digits of one size, as a share; from memory. */
const RATIO_SPREAD = 0.02;

/** Mean length of the proximal phalanx, both sexes, mm: Buryanov & Kotiuk, Int J Morphol 2010;28:755-758, second-hand. */
const PHALANX_LENGTH: Readonly<Record<DigitName, number>> = { index: 39.78, long: 44.63, ring: 41.37, little: 32.74 };
/** Mean distance from web to PIP crease, mm: computed from Greiner 1991, second-hand; the ring finger's is the mean of its two sides. */
const WEB_TO_CREASE: Readonly<Record<Sex, Readonly<Record<DigitName, number>>>> = {
  female: { index: 25.6, long: 27.4, ring: (19.7 + 32.1) / 2, little: 17.8 },
  male: { index: 27.2, long: 29.2, ring: (21.1 + 34.4) / 2, little: 18.8 },
};
/** Correlation of hand length with hand breadth, from memory. */
const LENGTH_WITH_BREADTH = 0.6;
/** Two-sided 90 % of a normal distribution. */
const NORMAL_90 = 1.644853627;

/** What a drawing of norm hands rests on, for whoever uses its figures. */
export const NORM_SOURCES: readonly string[] = [
  'published: hand breadth, circumference and length of ANSUR II (Gordon et al. 2014, NATICK/TR-15/007), with the correlation of breadth and circumference that its ratios imply',
  'published, second-hand: digit breadth over circumference and web to PIP crease (Greiner 1991), phalanx lengths (Buryanov & Kotiuk 2010)',
  'MEMORY GRADE, not checked against a table: circumference of the proximal phalanges (index to little 56, 55, 51, 45 women; 64, 62, 58, 51 men; spread 5.5 %), spread of breadth over circumference 2 %, correlation of hand length with breadth 0.6',
];

/** A hand as drawn, with the whole-hand figures that it was drawn from, mm. */
export interface NormHand {
  readonly hand: Hand;
  readonly sex: Sex;
  readonly breadth: number;
  readonly circumference: number;
  readonly length: number;
}

/**
 * `count` adult hands with the published means and spreads (normal distributions), women and men in turn when mixed. `normal` gives standard normal
 * numbers; the same row of them gives the same hands. A hand that `readHand` refuses is drawn again; `redrawn` tells how many were.
 */
export function normHands(
  group: NormGroup,
  count: number,
  normal: () => number,
): { readonly hands: readonly NormHand[]; readonly redrawn: number } {
  const hands: NormHand[] = [];
  let redrawn = 0;
  while (hands.length < count) {
    const sex: Sex = group === 'mixed' ? (hands.length % 2 === 0 ? 'female' : 'male') : group;
    const drawn = drawHand(sex, hands.length + 1, normal);
    if (drawn.ok) hands.push(drawn.value);
    else if (++redrawn > count + 100) throw new RangeError(`norm hands are refused: ${drawn.problems[0]?.message ?? ''}`);
  }
  return { hands, redrawn };
}

/** Correlation of breadth and circumference under which their ratio has the published P5 and P95 (first-order spread of a ratio). */
export function breadthCircumferenceCorrelation(sex: Sex): number {
  const { breadth, circumference, ratio90 } = HAND[sex];
  const b = breadth.sd / breadth.mean;
  const c = circumference.sd / circumference.mean;
  const r = (ratio90[1] - ratio90[0]) / (2 * NORMAL_90) / (circumference.mean / breadth.mean);
  return (b * b + c * c - r * r) / (2 * b * c);
}

function drawHand(sex: Sex, number: number, normal: () => number): Result<NormHand> {
  const { breadth, circumference, length } = HAND[sex];
  const zBreadth = normal();
  const zCircumference = correlated(zBreadth, breadthCircumferenceCorrelation(sex), normal());
  const zLength = correlated(zBreadth, LENGTH_WITH_BREADTH, normal());
  const handBreadth = breadth.mean + breadth.sd * zBreadth;
  const handCircumference = circumference.mean + circumference.sd * zCircumference;
  const handLength = length.mean + length.sd * zLength;
  // Thick hands have thick digits: the hand's own share of the spread is common to all, the rest is each digit's.
  const common = circumference.sd / circumference.mean;
  const own = Math.sqrt(CIRCUMFERENCE_SPREAD ** 2 - common ** 2);
  const meanLength = (HAND.female.length.mean + HAND.male.length.mean) / 2;
  const digits = Object.fromEntries(
    DIGITS.map((digit) => {
      const round = PHALANX_CIRCUMFERENCE[sex][digit] * (1 + common * zCircumference + own * normal());
      const dorsalLength = (PHALANX_LENGTH[digit] * handLength) / meanLength;
      const room = (WEB_TO_CREASE[sex][digit] * handLength) / length.mean;
      return [
        digit,
        {
          circumference: round,
          width: round * BREADTH_RATIO[sex][digit] * (1 + RATIO_SPREAD * normal()),
          dorsalLength,
          palmarRoom: room,
        },
      ];
    }),
  );
  const read = readHand({ schema: HAND_SCHEMA_ID, code: `NORM-${number}`, side: 'right', units: 'mm', invented: true, digits });
  return read.ok ? success({ hand: read.value, sex, breadth: handBreadth, circumference: handCircumference, length: handLength }) : read;
}

function correlated(z: number, correlation: number, other: number): number {
  return correlation * z + Math.sqrt(1 - correlation ** 2) * other;
}
