import type { Case } from '../record/case.ts';
import type { Measure, PrintedSheet } from '../sheet/paper/page.ts';
import { layOutReport } from '../sheet/paper/report-pages.ts';
import type { ClinicLines, SheetSettings } from '../sheet/paper/sheet-settings.ts';
import { failure, type Result } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { caseLetter } from './case-letter.ts';

/** Heights of the chart that are tried, mm, tallest first; then a letter without one. Under the last its letters cannot be read. */
const CHART_HEIGHTS = [85, 75, 65, 56, null] as const;

/** The letter on a case on one page, under the clinic's letterhead where there is one, its chart as tall as leaves it there. Fails as `caseLetter` and `layOutReport`, or with `LETTER_TOO_LONG`. */
export function layOutLetter(
  record: Case,
  language: Language,
  settings: Pick<SheetSettings, 'paper' | 'margin' | 'area'>,
  measure: Measure,
  clinic: ClinicLines,
): Result<PrintedSheet> {
  for (const height of CHART_HEIGHTS) {
    const letter = caseLetter(record, language, height);
    const sheet = letter.ok ? layOutReport({ ...letter.value, over: headOf(clinic) }, settings, measure) : letter;
    if (!sheet.ok || sheet.value.pages.length === 1) return sheet;
  }
  const message = 'the letter does not fit on one page of this paper; choose a larger one, or print the full report without --letter';
  return failure({ code: 'LETTER_TOO_LONG', where: '--paper', message, kind: 'input' });
}

function headOf({ letterhead, telephone }: ClinicLines): readonly string[] {
  return telephone === '' ? letterhead : [...letterhead, telephone];
}
