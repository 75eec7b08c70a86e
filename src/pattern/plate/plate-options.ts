import type { ChoiceEntry, NumberEntry, OptionTable } from '../option-entries.ts';
import { BEND_FORMS } from './bend-forms.ts';

/** Everything about a plate that the therapist may choose besides faces, digits and angle; lengths in mm, shares as fractions. */
export interface PlateOptions {
  readonly thickness: number;
  readonly skinClearance: number;
  readonly webGap: number;
  readonly wing: number;
  readonly sideWall: number;
  readonly cornerRadius: number;
  readonly pipClearance: number;
  readonly mpClearance: number;
  readonly webClearance: number;
  readonly coverShare: number;
  readonly wristClearance: number;
  readonly neutralShare: number;
  readonly palmarBendRadius: number;
  readonly faceGap: number;
  readonly webNotch: number;
  readonly trim: number;
  readonly strapWidth: number;
  readonly strapOverlap: number;
  readonly bend: BendChoice;
}

/** How the plate is folded over the MP joints; `auto` takes the way that costs sheet and fingers least. */
export const BEND_CHOICES = ['auto', ...BEND_FORMS] as const;
export type BendChoice = (typeof BEND_CHOICES)[number];

/** Smallest radius of a corner where the geometry has room; web notches are smaller. mm */
export const LEAST_CORNER_RADIUS = 6;

/**
 * The one table behind the options file, the command's flags and the page's fields. Defaults from the plate model (starting values); those it
 * does not name, and all ranges, are ours: common practice, no source.
 */
export const PLATE_NUMBER_OPTIONS: readonly NumberEntry<Exclude<keyof PlateOptions, 'bend'>>[] = [
  { key: 'thickness', unit: 'mm', default: 2.4, low: 1.2, high: 4.8, about: 'thickness of the sheet (3/32 in is 2.4)' },
  { key: 'skinClearance', unit: 'mm', default: 0.5, low: 0, high: 5, about: 'free space between skin and plate, padding included' },
  { key: 'webGap', unit: 'mm', default: 1, low: 0, high: 10, about: 'distance between neighbouring digits' },
  { key: 'wing', unit: 'mm', default: 12, low: 0, high: 25, about: 'how far the hand part wraps past the mid-lateral line' },
  {
    key: 'sideWall',
    unit: 'fraction',
    default: 0.5,
    low: 0,
    high: 0.7,
    about: "height of the finger part's side walls, share of the digit's depth",
  },
  { key: 'cornerRadius', unit: 'mm', default: 8, low: LEAST_CORNER_RADIUS, high: 15, about: 'radius of the corners where there is room' },
  {
    key: 'pipClearance',
    unit: 'mm',
    default: 5,
    low: 0,
    high: 15,
    about: 'distance from the distal edge to the PIP joint line, or to the PIP crease on the palmar side',
  },
  {
    key: 'mpClearance',
    unit: 'mm',
    default: 8,
    low: 0,
    high: 20,
    about: 'distance from the edge to the MP joint line of a digit that is left free',
  },
  { key: 'webClearance', unit: 'mm', default: 3, low: 0, high: 10, about: 'distance from a side wall to the web beside it' },
  { key: 'coverShare', unit: 'fraction', default: 0.6, low: 0.35, high: 0.85, about: 'share of the metacarpal length that is covered' },
  {
    key: 'wristClearance',
    unit: 'mm',
    default: 15,
    low: 5,
    high: 40,
    about: 'least distance from the proximal edge to the wrist crease',
  },
  {
    key: 'neutralShare',
    unit: 'fraction',
    default: 0.5,
    low: 0.3,
    high: 0.5,
    about: 'place of the neutral line in the thickness of a bend (K)',
  },
  { key: 'palmarBendRadius', unit: 'mm', default: 3, low: 1, high: 12, about: 'inside radius that a palmar plate is bent to' },
  { key: 'faceGap', unit: 'mm', default: 3, low: 1, high: 10, about: 'free space between the edges of the two faces when both are made' },
  {
    key: 'webNotch',
    unit: 'mm',
    default: 0,
    low: 0,
    high: 25,
    about: 'depth of the notches between the digits in the distal edge; 0 is none',
  },
  { key: 'trim', unit: 'mm', default: 0, low: 0, high: 20, about: 'spare length at the proximal edge, cut off when it fits' },
  { key: 'strapWidth', unit: 'mm', default: 25, low: 10, high: 50, about: 'width of the hook-and-loop straps' },
  { key: 'strapOverlap', unit: 'mm', default: 25, low: 10, high: 60, about: 'how far a strap lies over its hook at each end' },
];

export const PLATE_CHOICE_OPTIONS: readonly ChoiceEntry<'bend'>[] = [
  {
    key: 'bend',
    choices: BEND_CHOICES,
    default: 'auto',
    about:
      'bend over the MP joints: one straight line, split by a slot between ring and little finger, kinked at each joint, or what costs least',
  },
];

export const PLATE_OPTION_TABLE: OptionTable = { numbers: PLATE_NUMBER_OPTIONS, choices: PLATE_CHOICE_OPTIONS };

/** All defaults. */
export const DEFAULT_PLATE_OPTIONS: PlateOptions = Object.freeze(
  Object.fromEntries([...PLATE_NUMBER_OPTIONS, ...PLATE_CHOICE_OPTIONS].map((option) => [option.key, option.default])),
) as unknown as PlateOptions;

/** A notch must hold its round bottom and its two rounded corners. mm */
export const LEAST_NOTCH = 6;
