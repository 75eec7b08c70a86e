import { type ChoiceEntry, type NumberEntry, usualValue } from '../option-entries.ts';

/** Everything about a strip that the therapist may choose; lengths in mm, differential in degrees, stretch as a fraction. */
export interface StripOptions {
  /** `auto`: the widest of `AUTO_WIDTHS` that the palmar reliefs leave wide enough. */
  readonly width: number | 'auto';
  readonly thickness: number;
  readonly skinClearance: number;
  readonly webGap: number;
  readonly crossingPlay: number;
  readonly proximalGap: number;
  readonly freeFlexion: number;
  /** `auto`: by the size of the hand. */
  readonly minimumWidth: number | 'auto';
  readonly differential: number;
  readonly closure: 'tacked' | 'spanning';
  /** `auto`: a lap, left to open and closed with a strap where the loop cannot pass the PIP joint. */
  readonly seam: 'auto' | 'lap' | 'opening' | 'pinch';
  readonly seamAllowance: number;
  readonly trim: number;
  readonly stretch: number;
  /** Where the starting end of a paper strip lay on its scale, mm, + longer; `none`: no paper trial was made. */
  readonly paperReading: number | 'none';
  readonly outline: 'staggered' | 'straight';
  /** Retired: what the first version asked for in place of `freeFlexion`. */
  readonly pipClearance?: number;
}

/** What a strip is drawn with: the options with all that was left to the program decided, lengths in mm. */
export interface StripSettings extends Omit<StripOptions, 'width' | 'minimumWidth' | 'seam'> {
  readonly seam: Exclude<StripOptions['seam'], 'auto'>;
  readonly width: number;
  readonly minimumWidth: number;
  /** Drawn for a paper trial: no allowance at the starting end, room for the scale at the other. */
  readonly paper?: true;
}

type ChoiceKey = 'closure' | 'seam' | 'outline';
type NumberKey = Exclude<keyof StripOptions, ChoiceKey | 'pipClearance'>;

export type NumberOption = NumberEntry<NumberKey>;
export type ChoiceOption = ChoiceEntry<ChoiceKey>;

/**
 * The one table behind the options file, the command's flags and the page's fields.
 * Defaults are those of docs/model.md (starting values, common practice where no source is named); the ranges are ours, wide enough
 * for children and for thick sheet.
 */
export const NUMBER_OPTIONS: readonly NumberOption[] = [
  {
    key: 'width',
    unit: 'mm',
    default: 20,
    word: 'auto',
    low: 8,
    high: 40,
    about: 'width of the strip along the digits; auto takes the widest of 20, 18, 15, 12 that the reliefs leave two thirds of',
  },
  { key: 'thickness', unit: 'mm', default: 2.4, low: 0.8, high: 4.8, about: 'thickness of the sheet (3/32 in is 2.4)' },
  { key: 'skinClearance', unit: 'mm', default: 0.5, low: 0, high: 3, about: 'free space between skin and strip' },
  { key: 'webGap', unit: 'mm', default: 1, low: 0, high: 10, about: 'distance between neighbouring digits where no layer crosses' },
  { key: 'crossingPlay', unit: 'mm', default: 0.5, low: 0, high: 5, about: 'extra room in a web where a layer crosses' },
  { key: 'proximalGap', unit: 'mm', default: 2, low: 0, high: 10, about: 'distance from the web to the proximal edge of the strip' },
  {
    key: 'freeFlexion',
    unit: 'degrees',
    default: 100,
    low: 70,
    high: 115,
    about: 'PIP flexion that the distal edge leaves free, as far as the least width allows',
  },
  {
    key: 'minimumWidth',
    unit: 'mm',
    default: 10,
    word: 'auto',
    low: 5,
    high: 40,
    about: 'narrowest that the palmar relief may leave; auto is 10, and 8 for a hand under 65 broad',
  },
  { key: 'differential', unit: 'degrees', default: 20, low: 1, high: 45, about: 'MP angle between held and enclosed digits' },
  { key: 'seamAllowance', unit: 'mm', default: 15, low: 0, high: 40, about: 'overlap of a lap seam, or each tab of a pinch seam' },
  { key: 'trim', unit: 'mm', default: 10, low: 0, high: 50, about: 'spare length at the finishing end, cut off when it fits' },
  {
    key: 'stretch',
    unit: 'fraction',
    default: 0,
    low: -0.1,
    high: 0.3,
    about: 'how much the warm sheet is stretched in draping (0.05 is 5 %)',
  },
  {
    key: 'paperReading',
    unit: 'mm',
    default: 0,
    word: 'none',
    low: -15,
    high: 15,
    about: 'where the starting end of the paper strip lies on its scale, + where more length is needed',
  },
];

export const CHOICE_OPTIONS: readonly ChoiceOption[] = [
  {
    key: 'closure',
    choices: ['tacked', 'spanning'],
    default: 'tacked',
    about: 'outer layer pressed and bonded to the inner one at the held digits, or left taut across them',
  },
  {
    key: 'outline',
    choices: ['staggered', 'straight'],
    default: 'staggered',
    about: 'edges that follow the webs, or a straight piece that is pulled to follow them',
  },
  {
    key: 'seam',
    choices: ['auto', 'lap', 'opening', 'pinch'],
    default: 'auto',
    about:
      'ends laid over each other and bonded, or left to open and closed with a strap, or pinched together and trimmed; auto opens where a closed loop cannot pass the PIP joint',
  },
];

/** Read in files of the first version; the default is what they were drawn with where they do not say. */
export const RETIRED_OPTIONS: readonly NumberEntry<'pipClearance'>[] = [
  { key: 'pipClearance', unit: 'mm', default: 3, low: 0, high: 10, about: 'distance from the distal edge to the PIP crease, palmar' },
];

/** All defaults. */
export const DEFAULT_STRIP_OPTIONS: StripOptions = Object.freeze(
  Object.fromEntries([...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((option) => [option.key, usualValue(option)])),
) as unknown as StripOptions;
