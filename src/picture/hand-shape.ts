import { semiAxisFromPerimeter } from '../geometry/ellipse.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import { averageDigit } from '../hand/estimate.ts';
import type { DigitMeasures, PalmMeasures } from '../hand/hand.ts';
import { CREASE_TO_JOINT } from '../pattern/free-flexion.ts';

/** Webs between fingers, each named by the two that it lies between. */
export const WEB_NAMES = ['index-long', 'long-ring', 'ring-little'] as const;
export type WebName = (typeof WEB_NAMES)[number];

/** What is known of a hand that is to be drawn, mm; whatever is missing is drawn as in an average hand of this size. */
export interface DrawableHand {
  readonly digits: Readonly<Partial<Record<DigitName, Partial<DigitMeasures>>>>;
  readonly palm?: PalmMeasures & { readonly thumbWebSetback?: number };
  /** How far each web lies nearer to the wrist than the foremost. */
  readonly webSetback?: Readonly<Partial<Record<WebName, number>>>;
  /** Digits that the hand has not. */
  readonly absent?: readonly DigitName[];
}

/** One finger as it is drawn; lengths mm, levels mm along the hand, distal positive, 0 at the foremost web. */
export interface FingerShape {
  readonly digit: DigitName;
  /** Breadth and half the depth at mid proximal phalanx; breadth at the PIP joint. */
  readonly width: number;
  readonly halfDepth: number;
  readonly pipWidth: number;
  readonly rootWidth: number;
  /** Levels of the crease at the root, of the MP joint line, of the PIP crease and of the PIP joint line. */
  readonly root: number;
  readonly mp: number;
  readonly pipCrease: number;
  readonly pip: number;
  /** From joint to joint, and from the DIP joint to the tip of the pulp. */
  readonly proximal: number;
  readonly middle: number;
  readonly distal: number;
}

/** A whole hand in the proportions in which it is drawn. */
export interface HandShape {
  readonly fingers: readonly FingerShape[];
  /** Levels of the webs and of the thumb's web; of the wrist crease. */
  readonly webs: Readonly<Record<WebName, number>>;
  readonly thumbWeb: number;
  readonly wrist: number;
  readonly breadth: number;
  readonly depth: number;
  /** Measured size over that of an average adult. */
  readonly scale: number;
}

/**
 * Means of bone lengths, mm: Buryanov & Kotiuk, Int J Morphol 2010;28:755-758, second-hand. `distal` is bone and pulp beyond it. Only their ratios to
 * the proximal phalanx are used.
 */
const BONES: Readonly<Record<DigitName, { readonly proximal: number; readonly middle: number; readonly distal: number }>> = {
  index: { proximal: 39.78, middle: 22.38, distal: 15.82 + 3.84 },
  long: { proximal: 44.63, middle: 26.33, distal: 17.4 + 3.95 },
  ring: { proximal: 41.37, middle: 25.65, distal: 17.3 + 3.95 },
  little: { proximal: 32.74, middle: 18.11, distal: 15.96 + 3.73 },
};
/** The thumb's, from the same source: metacarpal, proximal phalanx, distal phalanx and pulp. Before its MP joint it is part of the palm. */
export const THUMB_BONES = { metacarpal: 46.22, proximal: 31.57, distal: 21.67 + 5.67 } as const;

/** Means of women and men, ANSUR II, Gordon et al. 2014, NATICK/TR-15/007. mm */
const MEAN_BREADTH = (78.15 + 88.26) / 2;
const MEAN_PALM_LENGTH = (108.7 + 116.46) / 2;
const MEAN_DEPTH = (26.5 + 31.3) / 2;
/** Proximal digital crease to MP joint, the middle of 14 to 20 mm. Bugbee & Botte, Clin Orthop 1993. */
const CREASE_TO_MP = 17;
/** Web setbacks over hand breadth: web heights of Greiner 1991, NATICK/TR-92/011, second-hand, and the breadths above. */
const WEB_SHARE: Readonly<Record<WebName, number>> = { 'index-long': 0, 'long-ring': 0.004, 'ring-little': 0.159 };
/** Thumb web behind the long finger's MP joint over metacarpal length: web height 62.8 of 91.7, Greiner 1991, second-hand. */
const THUMB_WEB_SHARE = 0.302;
/** Breadth of a digit over that of a circle of its circumference; PIP joint over mid phalanx. For pictures only, from memory. */
const WIDTH_OF_ROUND = 0.965;
const PIP_SHARE = 1.06;
const ROOT_SHARE = 1.04;
/** What a finger's depth may be drawn as, in widths: measures that contradict each other still make a picture. */
const DRAWN_DEPTH = { from: 0.75, to: 1.3 };

/** The proportions in which a hand is drawn: its own measures where they are known, else an average adult's at its size. */
export function handShape(hand: DrawableHand): HandShape {
  const scale = sizeOf(hand);
  const breadth = hand.palm?.handBreadth ?? MEAN_BREADTH * scale;
  const webs = webLevels(hand, breadth);
  const present = DIGITS.filter((digit) => !hand.absent?.includes(digit));
  const fingers = present.map((digit) => fingerShape(digit, hand, webs, scale));
  const metacarpalLength = hand.palm?.metacarpalLength ?? ((MEAN_PALM_LENGTH - CREASE_TO_MP) / MEAN_BREADTH) * breadth;
  const mp = fingerShape('long', hand, webs, scale).mp;
  return {
    fingers,
    webs,
    thumbWeb: mp - (hand.palm?.thumbWebSetback ?? THUMB_WEB_SHARE * metacarpalLength),
    wrist: mp - metacarpalLength,
    breadth,
    depth: hand.palm?.mpDepth ?? (MEAN_DEPTH / MEAN_BREADTH) * breadth,
    scale,
  };
}

/** The middle of the digits' ratios to average ones, so that one swollen digit does not count; from the breadth where no digit is known. */
function sizeOf(hand: DrawableHand): number {
  const ratios = DIGITS.flatMap((digit) => {
    const measures = hand.digits[digit];
    const average = averageDigit(digit).circumference;
    if (measures?.circumference !== undefined) return [measures.circumference / average];
    return measures?.width === undefined ? [] : [(measures.width * Math.PI) / WIDTH_OF_ROUND / average];
  }).toSorted((a, b) => a - b);
  if (ratios.length === 0) return hand.palm?.handBreadth === undefined ? 1 : hand.palm.handBreadth / MEAN_BREADTH;
  const half = ratios.length / 2;
  const middle = ratios.slice(Math.ceil(half) - 1, Math.floor(half) + 1);
  return middle.reduce((sum, ratio) => sum + ratio, 0) / middle.length;
}

function webLevels(hand: DrawableHand, breadth: number): Readonly<Record<WebName, number>> {
  const setbacks = WEB_NAMES.map((web) => hand.webSetback?.[web] ?? WEB_SHARE[web] * breadth);
  const least = Math.min(...setbacks);
  return Object.fromEntries(WEB_NAMES.map((web, k) => [web, least - (setbacks[k] ?? 0)])) as Record<WebName, number>;
}

/** Level of the crease at a finger's root: the mean of its two webs, of a border finger its one web. */
function rootLevel(digit: DigitName, webs: Readonly<Record<WebName, number>>): number {
  if (digit === 'index') return webs['index-long'];
  if (digit === 'little') return webs['ring-little'];
  return digit === 'long' ? (webs['index-long'] + webs['long-ring']) / 2 : (webs['long-ring'] + webs['ring-little']) / 2;
}

function fingerShape(digit: DigitName, hand: DrawableHand, webs: Readonly<Record<WebName, number>>, scale: number): FingerShape {
  const measures = hand.digits[digit] ?? {};
  const average = averageDigit(digit);
  const circumference =
    measures.circumference ?? (measures.width ? (measures.width * Math.PI) / WIDTH_OF_ROUND : average.circumference * scale);
  const width = measures.width ?? (circumference / Math.PI) * WIDTH_OF_ROUND;
  const depth = (semiAxisFromPerimeter(width / 2, circumference) ?? 0) / (width / 2);
  const drawnDepth = Math.min(DRAWN_DEPTH.to, Math.max(DRAWN_DEPTH.from, depth));
  const { dorsalLength: length, palmarRoom: room } = average;
  const proximal = measures.dorsalLength ?? (measures.palmarRoom === undefined ? length * scale : (measures.palmarRoom * length) / room);
  const palmarRoom = measures.palmarRoom ?? (proximal * room) / length;
  const root = rootLevel(digit, webs);
  const pip = root + palmarRoom + CREASE_TO_JOINT;
  const bones = BONES[digit];
  return {
    digit,
    width,
    halfDepth: (drawnDepth * width) / 2,
    pipWidth: width * (measures.pipCircumference === undefined ? PIP_SHARE : clampShare(measures.pipCircumference / circumference)),
    rootWidth: width * (measures.rootCircumference === undefined ? ROOT_SHARE : clampShare(measures.rootCircumference / circumference)),
    root,
    mp: pip - proximal,
    pipCrease: root + palmarRoom,
    pip,
    proximal,
    middle: (proximal * bones.middle) / bones.proximal,
    distal: (proximal * bones.distal) / bones.proximal,
  };
}

/** A measure in the middle of being typed must not draw a monster. */
function clampShare(share: number): number {
  return Math.min(1.35, Math.max(0.8, share));
}
