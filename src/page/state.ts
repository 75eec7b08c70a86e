import type { Place } from '../block/block.ts';
import { DIGITS, type DigitName, type Side, type WebName } from '../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId, PALM_FIELDS, type PalmFieldId, TARGET_FIELDS, type TargetFieldId } from '../hand/fields.ts';
import type { PlateFaces } from '../pattern/plate/plate-design.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import type { CaseFile } from '../record/case-schema.ts';
import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import type { Language } from './texts/languages.ts';

export type DecimalSign = '.' | ',';

/** Which digits a plate takes in: all that were measured, or the treated one with its neighbours. */
export const PLATE_DIGITS = ['measured', 'neighbours'] as const;
export type PlateDigits = (typeof PLATE_DIGITS)[number];

/** Everything a person typed or chose about the case; numbers stay as they were typed. */
export interface Entries {
  readonly code: string;
  readonly side: Side | '';
  readonly note: string;
  readonly invented: boolean;
  readonly digits: Readonly<Record<DigitName, Readonly<Record<DigitFieldId, string>>>>;
  readonly palm: Readonly<Record<PalmFieldId, string>>;
  /** Setbacks of the webs, as a hand file gave them. */
  readonly webs: Readonly<Record<WebName, string>>;
  readonly target: DigitName | '';
  readonly deficits: Readonly<Record<TargetFieldId, string>>;
  readonly flags: Readonly<Record<'swelling' | 'sensation' | 'hardEndFeel' | 'unprotectedRepair', boolean>>;
  readonly hypermobile: readonly DigitName[];
  /** The clinician has examined the hand and takes on what would be refused. */
  readonly clinicianConfirms: boolean;
  /** `auto`: what the plan suggests first. `own`: `places`. `plate`: a plate. Else the id of a block of the library. */
  readonly block: string;
  readonly places: Readonly<Record<DigitName, Place | 'out'>>;
  readonly options: Readonly<Record<Exclude<keyof StripOptions, 'pipClearance'>, string>>;
  readonly date: string;
  /** What plate, if it is one; without an angle the plan's is taken. */
  readonly plate: { readonly faces: PlateFaces; readonly digits: PlateDigits; readonly angle: string };
  /** How it is printed: the paper, and what the two 100 mm bars of a print measured. */
  readonly print: Readonly<Record<'paper' | 'across' | 'along', string>>;
  /** A visit that is being written down. */
  readonly visit: Readonly<Record<VisitEntry, string>>;
}

export type VisitEntry = 'date' | 'wear' | 'pipActive' | 'pipPassive' | 'fits' | 'redirects' | 'marksOnSkin' | 'comment' | 'made';

export const EMPTY_VISIT: Entries['visit'] = {
  date: '',
  wear: '',
  pipActive: '',
  pipPassive: '',
  fits: '',
  redirects: '',
  marksOnSkin: '',
  comment: '',
  made: '',
};

export interface Settings {
  readonly language: Language;
  readonly unit: LengthUnit;
  readonly decimal: DecimalSign;
}

/** How things are shown at the moment; nothing of it is part of the case. */
export interface Viewing {
  /** Path of the field that has the focus, e.g. `digits.ring.width`. */
  readonly focus: string;
  /** Paths of the fields that were left with something typed in them. */
  readonly left: readonly string[];
  /** The person asked for a check, so every problem is shown. */
  readonly checked: boolean;
  /** 1 fits the width; `actual` is true millimetres. */
  readonly zoom: number | 'actual';
  readonly wholeSheet: boolean;
  /** Turn of the moulded view, degrees: about the upright axis, and up. */
  readonly turn: { readonly across: number; readonly up: number };
  /** CSS pixels per true mm, as set with a card, and the pixel ratio at that moment; null before. */
  readonly screen: { readonly pixelsPerMm: number; readonly pixelRatio: number } | null;
  readonly cardPixelsPerMm: number;
  readonly keep: boolean;
  /** Said in the polite status line. */
  readonly said: string;
  /** Why a file was not opened. */
  readonly fileProblems: readonly string[];
  /** Entries changed since they were last saved or opened. */
  readonly changed: boolean;
}

export interface PageState {
  readonly entries: Entries;
  readonly settings: Settings;
  readonly viewing: Viewing;
  /** The case that is open. */
  readonly file: CaseFile | null;
}

/** 96 CSS pixels are one inch (CSS Values and Units). */
export const CSS_PIXELS_PER_MM = 96 / 25.4;

/** CSS pixels per true mm that a screen may be set to: from coarse walls to phones. */
export const SCREEN_RANGE = { from: 2, to: 12 } as const;

/** Front view, a little from above and from the side, so that depth can be seen. */
export const FRONT = { across: -24, up: 22 } as const;

function empty<Id extends string>(fields: Readonly<Record<Id, unknown>>): Record<Id, string> {
  return Object.fromEntries(Object.keys(fields).map((id) => [id, ''])) as Record<Id, string>;
}

/** The usual options as text, in the unit and with the sign that are in use. */
export function usualOptions(decimal: DecimalSign): Entries['options'] {
  const entries = Object.entries(DEFAULT_STRIP_OPTIONS).map(([key, value]) => [
    key,
    typeof value === 'number' ? plain(value, 4).replace('.', decimal) : String(value),
  ]);
  return Object.fromEntries(entries) as Entries['options'];
}

export function emptyEntries(decimal: DecimalSign): Entries {
  return {
    code: '',
    side: '',
    note: '',
    invented: false,
    digits: Object.fromEntries(DIGITS.map((digit) => [digit, empty(DIGIT_FIELDS)])) as Entries['digits'],
    palm: empty(PALM_FIELDS),
    webs: { 'index-long': '', 'long-ring': '', 'ring-little': '' },
    target: '',
    deficits: empty(TARGET_FIELDS),
    flags: { swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false },
    hypermobile: [],
    clinicianConfirms: false,
    block: 'auto',
    places: { index: 'enclosed', long: 'raised', ring: 'enclosed', little: 'out' },
    options: usualOptions(decimal),
    date: '',
    plate: { faces: 'dorsal', digits: 'measured', angle: '' },
    print: { paper: 'a4', across: '', along: '' },
    visit: EMPTY_VISIT,
  };
}

export const FRESH_VIEWING: Viewing = {
  focus: '',
  left: [],
  checked: false,
  zoom: 1,
  wholeSheet: false,
  turn: FRONT,
  screen: null,
  cardPixelsPerMm: CSS_PIXELS_PER_MM,
  keep: false,
  said: '',
  fileProblems: [],
  changed: false,
};

/** The entries with one field changed, by its path: `code`, `digits.ring.width`, `target.pipFlexionDeficit`, `trim`. */
export function setEntry(entries: Entries, where: string, text: string): Partial<Entries> {
  const [first = '', second = '', third = ''] = where.split('.');
  const digit = DIGITS.find((d) => d === second);
  if (first === 'digits' && digit) return { digits: { ...entries.digits, [digit]: { ...entries.digits[digit], [third]: text } } };
  if (first === 'plate') return { plate: { ...entries.plate, [second]: text } };
  if (first === 'print') return { print: { ...entries.print, [second]: text } };
  if (first === 'visit') return { visit: { ...entries.visit, [second]: text } };
  if (first === 'target') return { deficits: { ...entries.deficits, [second]: text } };
  if (first === 'webSetback') return { webs: { ...entries.webs, [second]: text } };
  if (first in PALM_FIELDS) return { palm: { ...entries.palm, [first]: text } };
  if (first in entries.options) return { options: { ...entries.options, [first]: text } };
  return { [first]: text };
}
