import { DIGITS, type DigitName } from './digits.ts';

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** What the tool knows about one measurement. Lengths in mm, angles in degrees. */
export interface Field {
  readonly id: string;
  /** Follows the digit's name where there is one: "ring width". */
  readonly label: string;
  readonly unit: 'mm' | 'degrees';
  readonly howToMeasure: string;
  /** Outside it a value is refused. Holds from a small child of six to a very large or badly swollen adult hand. */
  readonly refuse: Range;
  /** Outside it a value is read with a warning; inside it a value counts as plausible. */
  readonly typical: Range;
  /** Standard deviation of one careful measurement, in the field's unit. */
  readonly spread: number;
  /** Where the ranges come from. */
  readonly source: string;
  /** `always`: in every hand file; `estimated`: known of every hand, since it is estimated where it was not measured. Without it: optional. */
  readonly needed?: 'always' | 'estimated';
  /** A ring size may be given in place of a length. */
  readonly ringSizes?: true;
}

/**
 * The tables below are all that the tool knows of a measurement. Form and JSON Schema of the hand file, types, reading, columns of a table of
 * hands, page fields and spreads follow from them: a new measurement is a new entry here, its name in `src/words/hand-words.ts`, and how it is taken in `src/page/texts`.
 */

const MEMORY = 'from memory, no open table was readable';
const CHILDREN = 'the lower ends, for children, are from memory';

const width = {
  id: 'width',
  label: 'width',
  unit: 'mm',
  howToMeasure:
    'Caliper across the digit from side to side, half-way between the web and the PIP crease, touching the skin without denting it.',
  refuse: { from: 8, to: 35 },
  typical: { from: 10.5, to: 26 },
  spread: 0.5,
  needed: 'always',
  source: `${MEMORY}; PIP breadths of Greiner 1991 (NATICK/TR-92/011, second-hand) bound it for adults`,
} as const satisfies Field;

const circumference = {
  id: 'circumference',
  label: 'circumference',
  unit: 'mm',
  howToMeasure:
    'Narrow paper tape or ring sizer around the digit at the same level as the width, snug. A ring size may be given, as ring 54 or US 7.',
  refuse: { from: 25, to: 110 },
  typical: { from: 32, to: 85 },
  spread: 1,
  ringSizes: true,
  needed: 'always',
  source: `${MEMORY}; PIP circumferences of Greiner 1991 (NATICK/TR-92/011, second-hand) bound it for adults`,
} as const satisfies Field;

const palmarRoom = {
  id: 'palmarRoom',
  label: 'palmar room',
  unit: 'mm',
  howToMeasure: 'Palm side, digit straight: from the crease at the root of the digit to the PIP crease, along the middle of the digit.',
  refuse: { from: 8, to: 50 },
  typical: { from: 11, to: 38 },
  spread: 1,
  needed: 'estimated',
  source: `web to PIP crease computed from Greiner 1991 (second-hand), means 18 to 29; ${CHILDREN}`,
} as const satisfies Field;

const dorsalLength = {
  id: 'dorsalLength',
  label: 'dorsal length',
  unit: 'mm',
  howToMeasure: 'Back of the digit: from the MP joint line to the PIP joint line. Bend both joints a little to feel the lines.',
  refuse: { from: 16, to: 75 },
  typical: { from: 21, to: 60 },
  spread: 1.5,
  needed: 'estimated',
  source: `proximal phalanx of Buryanov & Kotiuk 2010 (second-hand), means 33 to 45; ${CHILDREN}`,
} as const satisfies Field;

const pipCircumference = {
  id: 'pipCircumference',
  label: 'PIP circumference',
  unit: 'mm',
  howToMeasure: 'Tape or ring sizer around the thickest part of the PIP joint, digit straight. Tells whether a closed loop passes over it.',
  refuse: { from: 28, to: 120 },
  typical: { from: 36, to: 90 },
  spread: 1,
  ringSizes: true,
  source: `Greiner 1991 (NATICK/TR-92/011, second-hand), means 51 to 70; ${CHILDREN}`,
} as const satisfies Field;

const rootCircumference = {
  id: 'rootCircumference',
  label: 'root circumference',
  unit: 'mm',
  howToMeasure:
    'Tape or ring sizer around the digit at the crease at its root, digit straight, snug. With the circumference it tells how much the digit tapers.',
  refuse: { from: 25, to: 120 },
  typical: { from: 32, to: 95 },
  spread: 1,
  ringSizes: true,
  source: `${MEMORY}; set round the ranges of the circumference`,
} as const satisfies Field;

const mpSetback = {
  id: 'mpSetback',
  label: 'MP setback',
  unit: 'mm',
  howToMeasure: 'Back of the hand, fingers straight: how far this MP joint line lies nearer to the wrist than that of the long finger.',
  refuse: { from: 0, to: 30 },
  typical: { from: 0, to: 22 },
  spread: 1.5,
  source: MEMORY,
} as const satisfies Field;

/** Measured on each digit, in the order of measuring. */
export const DIGIT_FIELDS = { width, circumference, palmarRoom, dorsalLength, pipCircumference, rootCircumference, mpSetback } as const;
export type DigitFieldId = keyof typeof DIGIT_FIELDS;

const webSetback = {
  id: 'webSetback',
  label: 'web setback',
  unit: 'mm',
  howToMeasure:
    'Fingers straight and together, ruler along the long finger: how far this web lies nearer to the wrist than the web that lies foremost.',
  refuse: { from: 0, to: 30 },
  typical: { from: 0, to: 22 },
  spread: 1.5,
  source: `web heights of Greiner 1991 (NATICK/TR-92/011, second-hand), means to 14; ranges and spread ${MEMORY}`,
} as const satisfies Field;

/** Measured at each web between two digits. */
export const WEB_FIELDS = { webSetback } as const;
export type WebFieldId = keyof typeof WEB_FIELDS;

const handBreadth = {
  id: 'handBreadth',
  label: 'hand breadth',
  unit: 'mm',
  howToMeasure: 'Caliper across the metacarpal heads, from index to little, without the thumb, hand flat.',
  refuse: { from: 45, to: 120 },
  typical: { from: 52, to: 104 },
  spread: 1,
  source: `ANSUR II (Gordon et al. 2014, NATICK/TR-15/007): 78.15 SD 3.84 and 88.26 SD 4.39; ${CHILDREN}`,
} as const satisfies Field;

const handCircumference = {
  id: 'handCircumference',
  label: 'hand circumference',
  unit: 'mm',
  howToMeasure: 'Tape around the metacarpal heads, without the thumb, hand flat.',
  refuse: { from: 105, to: 310 },
  typical: { from: 122, to: 279 },
  spread: 2,
  source: `ANSUR II (Gordon et al. 2014): 186.55 SD 8.82 and 212.28 SD 10.24; EN ISO 21420 size 11 (second-hand) is 279; ${CHILDREN}`,
} as const satisfies Field;

const metacarpalLength = {
  id: 'metacarpalLength',
  label: 'metacarpal length',
  unit: 'mm',
  howToMeasure: 'Back of the hand: from the wrist crease to the MP joint line of the long finger.',
  refuse: { from: 40, to: 135 },
  typical: { from: 52, to: 120 },
  spread: 2,
  source: `palm length of ANSUR II (108.70 SD 5.94, 116.46 SD 6.23) less 14 to 20 (Bugbee & Botte 1993); ${CHILDREN}`,
} as const satisfies Field;

const mpDepth = {
  id: 'mpDepth',
  label: 'MP depth',
  unit: 'mm',
  howToMeasure: 'Caliper from the skin on the back to the skin of the palm at the MP joint of the long finger.',
  refuse: { from: 12, to: 60 },
  typical: { from: 16, to: 45 },
  spread: 1,
  source: MEMORY,
} as const satisfies Field;

const mpDorsalRadius = {
  id: 'mpDorsalRadius',
  label: 'MP dorsal radius',
  unit: 'mm',
  howToMeasure:
    'Side of the index MP joint: mark the point that stays still while the joint bends; from there straight to the skin on the back of the knuckle.',
  refuse: { from: 4, to: 30 },
  typical: { from: 6, to: 18 },
  spread: 1,
  source: MEMORY,
} as const satisfies Field;

const thumbWebSetback = {
  id: 'thumbWebSetback',
  label: 'thumb web setback',
  unit: 'mm',
  howToMeasure:
    'Thumb held away from the hand: how far the skin of the thumb web, beside the index metacarpal, lies nearer to the wrist than the MP joint line of the long finger.',
  refuse: { from: 5, to: 70 },
  typical: { from: 12, to: 45 },
  spread: 2,
  source: `web heights of Greiner 1991 (NATICK/TR-92/011, second-hand) and palm lengths of ANSUR II (Gordon et al. 2014); ${CHILDREN}`,
} as const satisfies Field;

/** Measured on the hand as a whole; only a plate needs them. */
export const PALM_FIELDS = { handBreadth, handCircumference, metacarpalLength, mpDepth, mpDorsalRadius, thumbWebSetback } as const;
export type PalmFieldId = keyof typeof PALM_FIELDS;

/** AAOS-type tables give PIP motion 0 to 100; joints that go past straight or further than 100 are why the limit is 120. */
const DEFICIT_RANGES = { refuse: { from: 0, to: 120 }, typical: { from: 0, to: 100 } } as const;
/** Standard deviation of one reading of a finger joint by one rater, degrees, and where that is from. */
export const GONIOMETRY_SPREAD = 3.5;
export const GONIOMETRY_SPREAD_SOURCE =
  'common practice, between 3 or less (8 raters, 13 patients: Engstrand et al., Am J Occup Ther 2012;66:98) and 4 to 11 (20 volunteers on two days, all hand joints: Reissner et al., J Orthop Surg Res 2019;14:173); abstracts seen';
const GONIOMETRY = {
  unit: 'degrees',
  spread: GONIOMETRY_SPREAD,
  source: `PIP motion 0 to 100 of AAOS-type tables; spread: ${GONIOMETRY_SPREAD_SOURCE}`,
  ...DEFICIT_RANGES,
} as const;

/** What the target's PIP joint lacks, degrees, never negative. */
export const TARGET_FIELDS = {
  pipExtensionDeficit: {
    id: 'pipExtensionDeficit',
    label: 'PIP extension deficit',
    howToMeasure: 'Goniometer on the back of the PIP joint, the person straightens it: degrees short of straight.',
    ...GONIOMETRY,
  },
  pipFlexionDeficit: {
    id: 'pipFlexionDeficit',
    label: 'PIP flexion deficit',
    howToMeasure: 'Goniometer on the back of the PIP joint, the person bends it: degrees short of the other hand, or of 100.',
    ...GONIOMETRY,
  },
  pipExtensionDeficitPassive: {
    id: 'pipExtensionDeficitPassive',
    label: 'passive PIP extension deficit',
    howToMeasure: 'As the active one, while you straighten the joint as far as it goes.',
    ...GONIOMETRY,
  },
  pipFlexionDeficitPassive: {
    id: 'pipFlexionDeficitPassive',
    label: 'passive PIP flexion deficit',
    howToMeasure: 'As the active one, while you bend the joint as far as it goes.',
    ...GONIOMETRY,
  },
} as const satisfies Record<string, Field>;
export type TargetFieldId = keyof typeof TARGET_FIELDS;

/** What each flag of the hand file says when it is set. */
export const FLAG_MEANINGS = {
  hypermobile: 'Digits whose MP or CMC joint is hypermobile.',
  swelling: 'Swelling that changes over the day or the week.',
  sensation: 'Sensation is reduced in the hand.',
  hardEndFeel: 'The treated PIP joint has a hard end-feel.',
  unprotectedRepair: 'A tendon or ligament repair, or a fracture, that is not yet protected enough to be moved freely.',
} as const;

/** The values of a table's measurements, mm or degrees: those known of every hand, and those that may be missing. */
export type ValuesOf<Fields extends Readonly<Record<string, Field>>> = {
  readonly [Id in keyof Fields as Fields[Id] extends { readonly needed: string } ? Id : never]: number;
} & {
  readonly [Id in keyof Fields as Fields[Id] extends { readonly needed: string } ? never : Id]?: number;
};

/** Whether a digit's measurement goes round it, so that a ring size may stand for it. */
export function isRound(id: string): boolean {
  return Object.values<Field>(DIGIT_FIELDS).some((field) => field.id === id && field.ringSizes);
}

/** Path of a digit's field in the hand file, e.g. `digits.ring.width`. */
export function digitPath(digit: DigitName, field: DigitFieldId): string {
  return `digits.${digit}.${field}`;
}

/** Digits of a record that has entries by digit, from radial to ulnar. */
export function digitsIn(record: Readonly<Partial<Record<DigitName, unknown>>>): DigitName[] {
  return DIGITS.filter((digit) => record[digit] !== undefined);
}
