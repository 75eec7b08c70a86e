import { DASHES, type DashPattern } from '../dashes.ts';
import type { StripSettings } from './strip-options.ts';
import { endAllowances, type FlatStrip, flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';

/** A line across the strip at v, with words that run along it on its two sides. v in mm from the seam mark. */
export interface UprightMark {
  readonly v: number;
  readonly role: string;
  /** Full name, for the table and for readers. */
  readonly title: string;
  readonly dashes: DashPattern;
  /** `ticks`: drawn at the two edges only. */
  readonly reach: 'across' | 'ticks';
  /** Words before and after the line, in the direction of v. */
  readonly words: readonly [string, string];
}

/** All marks across the strip in the order of v: passes, web crossings, border turns, seam, overlap and trim limits. */
export function uprightMarks(path: StripPath, flat: FlatStrip, options: StripSettings): readonly UprightMark[] {
  const at = (u: number) => flattened(u, options);
  const marks: UprightMark[] = [];
  for (const pass of path.passes) {
    marks.push({
      v: at(pass.u),
      role: `midline-${pass.aspect}`,
      title: `${pass.digit} midline, ${pass.aspect}, ${pass.layer} layer`,
      dashes: DASHES[pass.aspect],
      reach: 'across',
      words: [pass.digit.toUpperCase(), pass.aspect.toUpperCase()],
    });
  }
  for (const web of path.webCrossings) {
    marks.push({
      v: at(web.u),
      role: 'web-crossing',
      title: `web ${web.between.join('-')}, ${web.layer} layer`,
      dashes: DASHES.web,
      reach: 'across',
      words: ['WEB', ''],
    });
  }
  for (const turn of path.borderTurns) {
    marks.push({
      v: at(turn.u),
      role: 'border-turn',
      title: `${turn.border} border of the ${turn.digit} finger`,
      dashes: DASHES.border,
      reach: 'across',
      words: [turn.border.toUpperCase(), 'BORDER'],
    });
  }
  return [...marks, ...seamMarks(flat, options)].sort((a, b) => a.v - b.v);
}

function seamMarks(flat: FlatStrip, options: StripSettings): readonly UprightMark[] {
  const { seam, trim } = endAllowances(options);
  const tick = { dashes: DASHES.dorsal, reach: 'ticks' } as const;
  const marks: UprightMark[] = [
    { v: 0, role: 'seam', title: 'seam, starting end', words: ['', 'SEAM'], ...tick },
    { v: flat.seamEnd, role: 'seam', title: 'seam, finishing end', words: ['SEAM', ''], ...tick },
  ];
  const limit = { role: 'overlap-limit', dashes: DASHES.limit, reach: 'across' } as const;
  if (seam > 0 && options.seam === 'lap') {
    marks.push(
      { ...limit, v: seam, title: 'overlap ends, starting end', words: ['OVERLAP', ''] },
      { ...limit, v: flat.seamEnd - seam, title: 'overlap begins, finishing end', words: ['', 'OVERLAP'] },
    );
  }
  if (trim > 0)
    marks.push({
      v: flat.end - trim,
      role: 'trim',
      title: 'trim to here when it fits',
      words: ['', 'TRIM'],
      dashes: DASHES.limit,
      reach: 'across',
    });
  return marks;
}
