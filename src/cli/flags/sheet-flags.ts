import { type Command, Option } from 'commander';
import { DEFAULT_MARGIN, readMargin, readPaper } from '../../sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, SHEET_PARTS, type SheetPart, type SheetSettings } from '../../sheet/paper/sheet-settings.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';

/** The flags of every command that prints on paper, as commander gives them. */
export interface SheetFlags {
  readonly paper?: string;
  readonly paperMargin?: string;
  readonly pages?: string;
  readonly area?: string;
}

export function addSheetFlags(command: Command): void {
  command
    .option('--paper <paper>', 'PDF: a4, letter, a3, or width x height in mm as 200x300', 'a4')
    .option('--paper-margin <length>', `PDF: what the printer leaves white on each side (default: ${DEFAULT_MARGIN} mm)`)
    .option('--pages <list>', `PDF: pages to print, with commas between: ${SHEET_PARTS.join(', ')}`, DEFAULT_SHEET_SETTINGS.parts.join(','))
    .addOption(
      new Option('--area <area>', 'PDF: both: a page prints alike on A4 and on Letter where it fits; paper: all that the paper has')
        .choices(['both', 'paper'])
        .default('both'),
    );
}

/** How to print, from the flags, with all their problems at once. */
export function readSheetSettings(flags: SheetFlags): Result<SheetSettings> {
  const margin = flags.paperMargin === undefined ? success(DEFAULT_MARGIN) : readMargin(flags.paperMargin);
  const paper = readPaper(flags.paper ?? 'a4', margin.ok ? margin.value : DEFAULT_MARGIN);
  const parts = readParts(flags.pages ?? DEFAULT_SHEET_SETTINGS.parts.join(','));
  const problems: Problem[] = [margin, paper, parts].flatMap((r) => (r.ok ? [] : r.problems));
  if (!margin.ok || !paper.ok || !parts.ok) return failure(...problems);
  const area = flags.area === 'paper' ? 'paper' : 'both';
  return success({ ...DEFAULT_SHEET_SETTINGS, paper: paper.value, margin: margin.value, parts: parts.value, area });
}

function readParts(list: string): Result<readonly SheetPart[]> {
  const asked = list
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  const unknown = asked.filter((word) => !SHEET_PARTS.some((part) => part === word));
  if (unknown.length > 0 || asked.length === 0) {
    const what = unknown.length > 0 ? `unknown pages (${unknown.join(', ')})` : 'no page';
    return failure({
      code: 'FLAG',
      where: '--pages',
      message: `--pages: "${list}" names ${what}; the pages are ${SHEET_PARTS.join(', ')}.`,
      kind: 'input',
    });
  }
  return success(SHEET_PARTS.filter((part) => asked.includes(part)));
}
