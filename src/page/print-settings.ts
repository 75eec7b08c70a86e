import { PAPERS } from '../sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type PrintedBars, type SheetSettings } from '../sheet/paper/sheet-settings.ts';
import { type LengthUnit, parseLength } from '../units/length.ts';
import type { Entries } from './state.ts';

/** The sheet as it is printed before any correction. */
export function sheetSettings({ paper }: Entries['print']): SheetSettings {
  return { ...DEFAULT_SHEET_SETTINGS, paper: PAPERS[paper as keyof typeof PAPERS] ?? PAPERS.a4 };
}

/** What the two bars measured, mm; null until both can be read. */
export function printedBars({ across, along }: Entries['print']): PrintedBars | null {
  const [one, other] = [parseLength(across, 'mm'), parseLength(along, 'mm')];
  return one.ok && other.ok ? { across: one.mm, along: other.mm } : null;
}

/** The bars as they are read: a bare length is in the page's unit. */
export function printIn(print: Entries['print'], unit: LengthUnit): Entries['print'] {
  const own = (text: string) =>
    unit !== 'mm' && /^[\d.,/ ½¼¾-]+$/.test(text.trim()) && text.trim() !== '' ? `${text.trim()} ${unit}` : text;
  return { ...print, across: own(print.across), along: own(print.along) };
}
