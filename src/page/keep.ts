import { LENGTH_UNITS } from '../units/length.ts';
import { own } from '../units/own.ts';
import { type Entries, emptyEntries, FRESH_VIEWING, type PageState, type Settings, type Viewing } from './state.ts';
import { LANGUAGES } from './texts/languages.ts';

/** What this browser keeps between visits, only while the person's switch is on. */
export interface Kept {
  readonly version: 1;
  readonly entries: Entries;
  readonly settings: Settings;
  readonly screen: Viewing['screen'];
}

const KEY = 'knucklewright-entries';

/** What was kept, or null. What cannot be read is left where it is and counts as nothing. */
export function readKept(): Kept | null {
  try {
    const text = localStorage.getItem(KEY);
    return text === null ? null : keptOf(text);
  } catch {
    // Browsers differ in whether a page from a file may keep anything, and say so by throwing.
    return null;
  }
}

/** What a kept text stands for; null where it is not of the form in which this page keeps. Throws where it is not JSON. */
export function keptOf(text: string): Kept | null {
  const value: unknown = JSON.parse(text);
  return isKept(value) ? value : null;
}

/** The page as it was when it was kept; the case is kept nowhere. */
export function stateOf({ entries, settings, screen }: Kept): PageState {
  return {
    entries: { ...emptyEntries(settings.decimal), ...entries },
    settings,
    viewing: { ...FRESH_VIEWING, screen, keep: true },
    file: null,
  };
}

/** Whether it could be kept. */
export function writeKept(kept: Kept): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}

export function forgetKept(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing could be kept in the first place.
  }
}

function isKept(value: unknown): value is Kept {
  const settings = own(value, 'settings');
  return (
    own(value, 'version') === 1 &&
    sameForm(own(value, 'entries'), emptyEntries('.')) &&
    String(own(settings, 'language')) in LANGUAGES &&
    LENGTH_UNITS.some((unit) => unit === own(settings, 'unit')) &&
    ['.', ','].includes(String(own(settings, 'decimal')))
  );
}

/** Whether a value has the form of another: the same kinds under the same keys, lists of texts as lists of texts. */
function sameForm(value: unknown, form: unknown): boolean {
  if (Array.isArray(form)) return Array.isArray(value) && value.every((entry) => typeof entry === 'string');
  if (typeof form !== 'object' || form === null) return typeof value === typeof form;
  return Object.entries(form).every(([key, inner]) => sameForm(own(value, key), inner));
}
