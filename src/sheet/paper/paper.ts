import type { Box } from '../../geometry/path.ts';
import { parseLength } from '../../units/length.ts';
import { plain } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';

/** A sheet of paper, mm, in portrait: width is the shorter side. */
export interface Paper {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

export type Orientation = 'portrait' | 'landscape';

/** A4 and A3 after ISO 216, Letter after ANSI/ASME Y14.1. */
export const PAPERS = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
  a3: { name: 'A3', width: 297, height: 420 },
} as const satisfies Record<string, Paper>;

/** Free margin on every side, mm: more than the 4 to 6 that office printers cannot print (common practice, no source). */
export const DEFAULT_MARGIN = 10;
const SMALLEST_MARGIN = 3;
const LARGEST_MARGIN = 50;

/** Least printable area, mm, the shorter side first: two 100 mm bars, the card outline and a strip's width of pattern above them. */
export const LEAST_PRINTABLE = { short: 103, long: 130 } as const;
const LARGEST_SIDE = 2000;

/** A paper by its name (`a4`, `letter`, `a3`) or as `WxH` in mm; the way round does not matter. The message says what is possible. */
export function readPaper(text: string, margin: number = DEFAULT_MARGIN): Result<Paper> {
  const name = text.trim().toLowerCase();
  const known = Object.hasOwn(PAPERS, name) ? PAPERS[name as keyof typeof PAPERS] : null;
  if (known) return sized(known, text, margin);
  const sides = name.split(/[x×]/).map((side) => parseLength(side.trim(), 'mm'));
  const [a, b] = sides;
  if (sides.length !== 2 || !a?.ok || !b?.ok) {
    return problem(`${quote(text)} is not a paper; use a4, letter, a3, or width x height in mm as 200x300`);
  }
  const [width, height] = a.mm < b.mm ? [a.mm, b.mm] : [b.mm, a.mm];
  return sized({ name: `${plain(width)} x ${plain(height)} mm`, width, height }, text, margin);
}

function sized(paper: Paper, text: string, margin: number): Result<Paper> {
  const { short, long } = LEAST_PRINTABLE;
  if (paper.height > LARGEST_SIDE) return problem(`${quote(text)} is larger than ${LARGEST_SIDE} mm; give millimetres`);
  if (paper.width - 2 * margin < short || paper.height - 2 * margin < long) {
    const least = `${plain(short + 2 * margin)} x ${plain(long + 2 * margin)} mm`;
    return problem(
      `${quote(text)} is too small for the 100 mm bars and the card outline with margins of ${plain(margin)} mm; use ${least} or larger`,
    );
  }
  return success(paper);
}

/** A printer margin in mm. */
export function readMargin(text: string): Result<number> {
  const read = parseLength(text, 'mm');
  if (!read.ok) return problem(`margin: ${read.reason}; give millimetres as 10`);
  if (read.mm < SMALLEST_MARGIN || read.mm > LARGEST_MARGIN) {
    return problem(`a margin of ${plain(read.mm)} mm is outside ${SMALLEST_MARGIN} to ${LARGEST_MARGIN} mm`);
  }
  return success(read.mm);
}

export function turned(paper: Paper, orientation: Orientation): { readonly width: number; readonly height: number } {
  return orientation === 'portrait' ? { width: paper.width, height: paper.height } : { width: paper.height, height: paper.width };
}

/**
 * The printable box of a page, mm from its lower left corner. `both`: the part of it that lies inside the printable areas of A4 and of
 * Letter when either is printed centred on the other; only these two papers have it, others use their own area.
 */
export function printableBox(paper: Paper, orientation: Orientation, margin: number, area: 'both' | 'paper'): Box {
  const page = turned(paper, orientation);
  const shared = area === 'both' && isOffice(paper);
  const papers = shared ? [PAPERS.a4, PAPERS.letter].map((p) => turned(p, orientation)) : [page];
  const width = Math.min(...papers.map((p) => p.width)) - 2 * margin;
  const height = Math.min(...papers.map((p) => p.height)) - 2 * margin;
  const minX = (page.width - width) / 2;
  const minY = (page.height - height) / 2;
  return { minX, minY, maxX: minX + width, maxY: minY + height };
}

/** Whether it is one of the two papers that are printed on each other. */
export function isOffice(paper: Paper): boolean {
  return paper.name === PAPERS.a4.name || paper.name === PAPERS.letter.name;
}

function problem(message: string): Result<never> {
  return failure({ code: 'PAPER', where: '--paper', message: `paper: ${message}.`, kind: 'input' });
}
