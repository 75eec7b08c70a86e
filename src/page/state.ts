import type { Place } from '../block/block.ts';
import { DIGITS, type DigitName, type Side, type WebName } from '../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS, type PalmFieldId } from '../hand/fields.ts';
import type { StopSign } from '../hand/signs.ts';
import type { PlateFaces } from '../pattern/plate/plate-design.ts';
import type { BendChoice } from '../pattern/plate/plate-options.ts';
import { DEFAULT_STRIP_OPTIONS, NUMBER_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import type { CaseFile } from '../record/case-schema.ts';
import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import type { Language } from './texts/languages.ts';

export type DecimalSign = '.' | ',';

/** Which digits a plate takes in: all that were measured, or the treated one with its neighbours. */
export const PLATE_DIGITS = ['measured', 'neighbours'] as const;
export type PlateDigits = (typeof PLATE_DIGITS)[number];

/** Motions that are asked for as two numbers: of the treated PIP joint, of the same joint of the other hand, of the treated MP joint. */
export const MOTION_IDS = ['active', 'passive', 'other', 'mpActive', 'mpPassive'] as const;
export type MotionId = (typeof MOTION_IDS)[number];

/** A motion as it is typed, degrees: what is lacking to straight, and how far the joint bends. */
export interface TypedMotion {
  readonly lacks: string;
  readonly bends: string;
}

/** How a bare number in the row of circumferences is meant: in the unit of the page, or as a ring size. */
export const ROUND_NOTATIONS = ['length', 'EU', 'US', 'UK'] as const;
export type RoundNotation = (typeof ROUND_NOTATIONS)[number];

/** Everything a person typed or chose about the case; numbers stay as they were typed. */
export interface Entries {
  readonly code: string;
  readonly side: Side | '';
  readonly note: string;
  readonly invented: boolean;
  /** Figures of the example are, or may be, among the entries: nothing here is a patient's until the page is emptied. */
  readonly example: boolean;
  readonly digits: Readonly<Record<DigitName, Readonly<Record<DigitFieldId, string>>>>;
  readonly roundIn: RoundNotation;
  readonly palm: Readonly<Record<PalmFieldId, string>>;
  /** Setbacks of the webs, by their names. */
  readonly webs: Readonly<Record<WebName, string>>;
  readonly target: DigitName | '';
  readonly motion: Readonly<Record<MotionId, TypedMotion>>;
  readonly diagnosis: string;
  readonly weeks: string;
  /** `''` until it was answered whether there is a stop sign; never answered in advance. */
  readonly stop: '' | 'none' | 'some';
  readonly stopSigns: readonly StopSign[];
  readonly flags: Readonly<Record<'swelling' | 'sensation' | 'hardEndFeel' | 'unprotectedRepair', boolean>>;
  readonly hypermobile: readonly DigitName[];
  /** What an opened hand file says that the page does not ask for, kept since advice rests on it. */
  readonly boutonniere: boolean;
  readonly centralSlip: '' | 'intact' | 'torn';
  readonly absent: readonly DigitName[];
  /** The clinician has examined the hand and takes on what would be refused. */
  readonly clinicianConfirms: boolean;
  /** Whose hand an unmeasured one is taken for in the pictures. */
  readonly sizeGroup: 'adult' | 'child';
  /** `auto`: what the plan suggests first. `own`: `places`. `plate`: a plate. Else the id of a block of the library. */
  readonly block: string;
  readonly places: Readonly<Record<DigitName, Place | 'out'>>;
  readonly options: Readonly<Record<Exclude<keyof StripOptions, 'pipClearance'>, string>>;
  readonly date: string;
  /** What plate, if it is one; without an angle the plan's is taken. */
  readonly plate: { readonly faces: PlateFaces; readonly digits: PlateDigits; readonly angle: string; readonly bend: BendChoice };
  /** How it is printed: the paper, and what the two 100 mm bars of a print measured. */
  readonly print: Readonly<Record<'paper' | 'across' | 'along', string>>;
  /** A visit that is being written down. */
  readonly visit: Readonly<Record<VisitEntry, string>>;
}

/** What a visit asks for; answers are ids, `''` is not asked yet. */
export const VISIT_ENTRIES = [
  'date',
  'pain',
  'skin',
  'sensation',
  'colour',
  'infection',
  'deformity',
  'crpsSigns',
  'lacks',
  'bends',
  'passiveLacks',
  'passiveBends',
  'mpLacks',
  'mpBends',
  'repeated',
  'wear',
  'wearAgreed',
  'fits',
  'redirects',
  'rater',
  'weaning',
  'comment',
  'made',
  'correcting',
] as const;
export type VisitEntry = (typeof VISIT_ENTRIES)[number];

/** What is asked first at a visit: is anything wrong today? */
export const HARM_ENTRIES = [
  'date',
  'pain',
  'skin',
  'sensation',
  'colour',
  'infection',
  'deformity',
  'crpsSigns',
] as const satisfies readonly VisitEntry[];

export const EMPTY_VISIT = Object.fromEntries(VISIT_ENTRIES.map((id) => [id, ''])) as Readonly<Record<VisitEntry, string>>;

export interface Settings {
  readonly language: Language;
  readonly unit: LengthUnit;
  readonly decimal: DecimalSign;
}

/** CSS pixels per true mm, as set with a card, and the pixel ratio at that moment. */
export interface ScreenSize {
  readonly pixelsPerMm: number;
  readonly pixelRatio: number;
}

/** The page as it is opened. */
export interface PageState {
  readonly entries: Entries;
  readonly settings: Settings;
  /** The case that is open. */
  readonly file: CaseFile | null;
  readonly screen: ScreenSize | null;
  /** Entries are kept in this browser. */
  readonly keep: boolean;
}

/** 96 CSS pixels are one inch (CSS Values and Units). */
export const CSS_PIXELS_PER_MM = 96 / 25.4;

/** CSS pixels per true mm that a screen may be set to: from coarse walls to phones. */
export const SCREEN_RANGE = { from: 2, to: 12 } as const;

/** Turn of the moulded view, degrees: about the upright axis, and up. A little from above and from the side, so that depth can be seen. */
export interface Rotation {
  readonly across: number;
  readonly up: number;
}

const FRONT: Rotation = { across: -24, up: 42 };

/** A right hand is seen as the mirror image of a left one. */
export function frontOf(side: Side): Rotation {
  return side === 'right' ? { ...FRONT, across: -FRONT.across } : FRONT;
}

function empty<Id extends string>(fields: Readonly<Record<Id, unknown>>): Record<Id, string> {
  return Object.fromEntries(Object.keys(fields).map((id) => [id, ''])) as Record<Id, string>;
}

/** The usual options as text, with the sign that is in use; what there is none of, or is left to the program as long as no number stands there, is empty. */
export function usualOptions(decimal: DecimalSign): Entries['options'] {
  const entries = Object.entries(DEFAULT_STRIP_OPTIONS).map(([key, value]) => [
    key,
    typeof value === 'number' ? plain(value, 4).replace('.', decimal) : NUMBER_OPTIONS.some((o) => o.key === key) ? '' : String(value),
  ]);
  return Object.fromEntries(entries) as Entries['options'];
}

export function emptyEntries(decimal: DecimalSign): Entries {
  return {
    code: '',
    side: '',
    note: '',
    invented: false,
    example: false,
    digits: Object.fromEntries(DIGITS.map((digit) => [digit, empty(DIGIT_FIELDS)])) as Entries['digits'],
    roundIn: 'length',
    palm: empty(PALM_FIELDS),
    webs: { 'index-long': '', 'long-ring': '', 'ring-little': '' },
    target: '',
    motion: Object.fromEntries(MOTION_IDS.map((id) => [id, { lacks: '', bends: '' }])) as unknown as Entries['motion'],
    diagnosis: '',
    weeks: '',
    stop: '',
    stopSigns: [],
    flags: { swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false },
    hypermobile: [],
    boutonniere: false,
    centralSlip: '',
    absent: [],
    clinicianConfirms: false,
    sizeGroup: 'adult',
    block: 'auto',
    places: { index: 'enclosed', long: 'raised', ring: 'enclosed', little: 'out' },
    options: usualOptions(decimal),
    date: '',
    plate: { faces: 'dorsal', digits: 'measured', angle: '', bend: 'auto' },
    print: { paper: 'a4', across: '', along: '' },
    visit: EMPTY_VISIT,
  };
}

/** Another arrangement: what was read on a paper strip was read along the path of the one before, and does not go with it. */
export function withArrangement({ options }: Entries, chosen: Partial<Pick<Entries, 'block' | 'places'>>): Partial<Entries> {
  return { ...chosen, options: { ...options, paperReading: '' } };
}

/** The entries with one field changed, by its path: `code`, `digits.ring.width`, `motion.active.lacks`, `trim`. */
export function setEntry(entries: Entries, where: string, text: string): Partial<Entries> {
  const [first = '', second = '', third = ''] = where.split('.');
  const digit = DIGITS.find((d) => d === second);
  const motion = MOTION_IDS.find((id) => id === second);
  if (first === 'digits' && digit) return { digits: { ...entries.digits, [digit]: { ...entries.digits[digit], [third]: text } } };
  if (first === 'motion' && motion) return { motion: { ...entries.motion, [motion]: { ...entries.motion[motion], [third]: text } } };
  if (first === 'plate') return { plate: { ...entries.plate, [second]: text } };
  if (first === 'print') return { print: { ...entries.print, [second]: text } };
  if (first === 'visit') return { visit: { ...entries.visit, [second]: text } };
  if (first === 'webSetback') return { webs: { ...entries.webs, [second]: text } };
  if (first in PALM_FIELDS) return { palm: { ...entries.palm, [first]: text } };
  if (first in entries.options) return { options: { ...entries.options, [first]: text } };
  return { [first]: text };
}

/** What stands in the field of a path; empty where there is no such field. */
export function typedAt(entries: Entries, where: string): string {
  const parts = where.split('.');
  let at: unknown = entries;
  if (parts.length === 1 && parts[0] !== undefined) {
    if (Object.hasOwn(entries.palm, parts[0])) at = entries.palm;
    else if (Object.hasOwn(entries.options, parts[0])) at = entries.options;
  } else if (parts[0] === 'webSetback') {
    at = entries.webs;
    parts.shift();
  }
  for (const part of parts)
    at = typeof at === 'object' && at !== null && Object.hasOwn(at, part) ? (at as Record<string, unknown>)[part] : undefined;
  return typeof at === 'string' ? at : '';
}
