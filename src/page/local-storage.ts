import { PLACES } from '../block/block.ts';
import { DIGITS, SIDES } from '../hand/digits.ts';
import { STOP_SIGNS } from '../hand/signs.ts';
import { PLATE_FACES } from '../pattern/plate/plate-design.ts';
import { BEND_CHOICES } from '../pattern/plate/plate-options.ts';
import type { CaseFile } from '../record/case-schema.ts';
import { readCase } from '../record/read-case.ts';
import { getOwn } from '../units/json-text.ts';
import { LENGTH_UNITS } from '../units/length.ts';
import {
  type Entries,
  emptyEntries,
  type PageState,
  PLATE_DIGITS,
  ROUND_NOTATIONS,
  SCREEN_RANGE,
  type ScreenSize,
  type Settings,
} from './state.ts';
import { LANGUAGES, type Language } from './texts/languages.ts';

/** What this browser keeps between visits, only while the person's switch is on: the entries, and the case that they belong to. */
export interface Kept {
  readonly version: 2;
  readonly entries: Entries;
  readonly settings: Settings;
  readonly screen: ScreenSize | null;
  /** As it stood in its file; read anew when it is taken up. */
  readonly file: CaseFile | null;
}

/** The name under which it is kept. */
export const KEPT_AS = 'knucklewright-entries';

/** What was kept, or null. What cannot be read is left where it is and counts as nothing. */
export function readKept(): Kept | null {
  try {
    const text = localStorage.getItem(KEPT_AS);
    return text === null ? null : keptOf(text);
  } catch {
    // Browsers differ in whether a page from a file may keep anything, and say so by throwing.
    return null;
  }
}

/** What a kept text stands for; null where it is not of the form in which this page keeps. Throws where it is not JSON. */
export function keptOf(text: string): Kept | null {
  const value: unknown = JSON.parse(text);
  const entries = ofForm(asEnteredToday(getOwn(value, 'entries')), emptyEntries('.')) as Entries | undefined;
  const settings = keptSettings(getOwn(value, 'settings'));
  const screen = keptScreen(getOwn(value, 'screen'));
  const file = keptFile(getOwn(value, 'file'));
  const isWhole =
    getOwn(value, 'version') === 2 && entries !== undefined && settings !== null && screen !== undefined && file !== undefined;
  return isWhole && isOffered(entries) ? { version: 2, entries, settings, screen, file } : null;
}

/** Entries that were kept before a plate's bend could be chosen have the usual one; a paper strip that was not read was written as `none`, today it is empty. */
function asEnteredToday(entries: unknown): unknown {
  if (typeof entries !== 'object' || entries === null) return entries;
  const [plate, options] = [getOwn(entries, 'plate'), getOwn(entries, 'options')];
  const isUnread = typeof options === 'object' && getOwn(options, 'paperReading') === 'none';
  return {
    ...entries,
    ...(typeof plate === 'object' && plate !== null && getOwn(plate, 'bend') === undefined ? { plate: { ...plate, bend: 'auto' } } : {}),
    ...(isUnread ? { options: { ...options, paperReading: '' } } : {}),
  };
}

/** The page as it was when it was kept. */
export function stateOf({ entries, settings, screen, file }: Kept): PageState {
  return { entries, settings, screen, file, keep: true };
}

/** Whether it could be kept. */
export function writeKept(kept: Kept): boolean {
  try {
    localStorage.setItem(KEPT_AS, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}

export function forgetKept(): void {
  try {
    localStorage.removeItem(KEPT_AS);
  } catch {
    // Nothing could be kept in the first place.
  }
}

function keptSettings(value: unknown): Settings | null {
  const languages = Object.keys(LANGUAGES) as Language[];
  const language = languages.find((known) => known === getOwn(value, 'language'));
  const unit = LENGTH_UNITS.find((known) => known === getOwn(value, 'unit'));
  const decimal = (['.', ','] as const).find((known) => known === getOwn(value, 'decimal'));
  return language && unit && decimal ? { language, unit, decimal } : null;
}

/** Undefined where it is no case that holds. */
function keptFile(value: unknown): CaseFile | null | undefined {
  if (value === null) return null;
  const read = readCase(value);
  return read.ok ? read.value.file : undefined;
}

/** Undefined where it is no screen that can have been set. */
function keptScreen(value: unknown): Kept['screen'] | undefined {
  if (value === null) return null;
  const [pixelsPerMm, pixelRatio] = [getOwn(value, 'pixelsPerMm'), getOwn(value, 'pixelRatio')];
  if (typeof pixelsPerMm !== 'number' || typeof pixelRatio !== 'number') return undefined;
  const isSet = pixelsPerMm >= SCREEN_RANGE.from && pixelsPerMm <= SCREEN_RANGE.to && pixelRatio > 0 && Number.isFinite(pixelRatio);
  return isSet ? { pixelsPerMm, pixelRatio } : undefined;
}

/**
 * The value with the keys of a form and no others, where it is of that form: the same kinds under the same keys, lists of texts as lists of
 * texts. Else undefined.
 */
function ofForm(value: unknown, form: unknown): unknown {
  if (Array.isArray(form)) return Array.isArray(value) && value.every((entry) => typeof entry === 'string') ? value : undefined;
  if (typeof form !== 'object' || form === null) return typeof value === typeof form ? value : undefined;
  const kept = Object.entries(form).map(([key, inner]) => [key, ofForm(getOwn(value, key), inner)] as const);
  return kept.some(([, inner]) => inner === undefined) ? undefined : Object.fromEntries(kept);
}

/** Whether everything that is chosen, not typed, is something that the page offers. */
function isOffered({ side, target, places, plate, hypermobile, stop, stopSigns, roundIn, sizeGroup }: Entries): boolean {
  const digits: readonly string[] = DIGITS;
  const signs: readonly string[] = STOP_SIGNS;
  return (
    ['', 'none', 'some'].includes(stop) &&
    stopSigns.every((sign) => signs.includes(sign)) &&
    ROUND_NOTATIONS.includes(roundIn) &&
    ['adult', 'child'].includes(sizeGroup) &&
    ['', ...SIDES].includes(side) &&
    ['', ...DIGITS].includes(target) &&
    Object.values(places).every((place) => ['out', ...PLACES].includes(place)) &&
    PLATE_FACES.includes(plate.faces) &&
    PLATE_DIGITS.includes(plate.digits) &&
    BEND_CHOICES.includes(plate.bend) &&
    hypermobile.every((digit) => digits.includes(digit))
  );
}
