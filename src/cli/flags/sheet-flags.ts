import { DEFAULT_MARGIN, type Paper, readMargin, readPaper } from '../../sheet/paper/paper.ts';
import { type ClinicLines, DEFAULT_SHEET_SETTINGS, NO_CLINIC, SHEET_PARTS, type SheetSettings } from '../../sheet/paper/sheet-settings.ts';
import { collect, type Result, success } from '../../units/result.ts';
import type { WithClinic } from './clinic-flag.ts';
import { languageFlag, readLanguageFlag } from './common-flags.ts';
import { type FlagsOf, flag, flagSet, ofFlag, readWords } from './flag.ts';

/** The flags about paper alone. */
export const paperFlags = flagSet(
  flag('--paper <paper>', 'PDF: a4, letter, a3, or width x height in mm as 200x300').default('a4'),
  flag('--paper-margin <length>', `PDF: what the printer leaves white on each side (default: ${DEFAULT_MARGIN} mm)`),
);

/** The flags of every command that prints patterns on paper. */
export const sheetFlags = flagSet(
  paperFlags,
  flag('--pages <list>', `PDF: pages to print, with commas between: ${SHEET_PARTS.join(', ')}`).default(
    DEFAULT_SHEET_SETTINGS.parts.join(','),
  ),
  flag('--area <area>', 'PDF: both: a page prints alike on A4 and on Letter where it fits; paper: all that the paper has')
    .choices(['both', 'paper'])
    .default('both'),
  languageFlag,
);
export type SheetFlags = Partial<FlagsOf<[typeof sheetFlags]>> & WithClinic;

/** How to print, from the flags, with all their problems at once. */
export function readSheetSettings(flags: SheetFlags): Result<SheetSettings> {
  const pages = flags.pages ?? DEFAULT_SHEET_SETTINGS.parts.join(',');
  const read = collect({ paper: readPaperFlags(flags), parts: readWords('--pages', pages, SHEET_PARTS, 'page', 'pages') });
  if (!read.ok) return read;
  const { paper, parts } = read.value;
  return success({
    ...DEFAULT_SHEET_SETTINGS,
    ...paper,
    parts,
    area: flags.area ?? DEFAULT_SHEET_SETTINGS.area,
    language: readLanguageFlag(flags.language),
    clinic: clinicLines(flags),
  });
}

/** What the clinic puts on its papers, from its own file. */
export function clinicLines({ fromClinic }: Partial<FlagsOf<[typeof paperFlags]>> & WithClinic): ClinicLines {
  return fromClinic?.lines ?? NO_CLINIC;
}

/** The paper and what stays white on each side, mm. */
export function readPaperFlags(flags: Partial<FlagsOf<[typeof paperFlags]>>): Result<{ readonly paper: Paper; readonly margin: number }> {
  const margin = flags.paperMargin === undefined ? success(DEFAULT_MARGIN) : readMargin(flags.paperMargin);
  const paper = readPaper(flags.paper ?? 'a4', margin.ok ? margin.value : DEFAULT_MARGIN);
  return ofFlag(collect({ paper, margin }));
}
