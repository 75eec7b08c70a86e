import type { Speech } from '../../words/speech.ts';
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
export function uprightMarks(path: StripPath, flat: FlatStrip, options: StripSettings, { hand, strip }: Speech): readonly UprightMark[] {
  const { lettering, mark } = strip;
  const at = (u: number) => flattened(u, options);
  const marks: UprightMark[] = [];
  for (const pass of path.passes) {
    marks.push({
      v: at(pass.u),
      role: `midline-${pass.aspect}`,
      title: mark.midline(hand.short[pass.digit], hand.aspect[pass.aspect], hand.layer[pass.layer]),
      dashes: DASHES[pass.aspect],
      reach: 'across',
      words: [lettering.digit[pass.digit], lettering.aspect[pass.aspect]],
    });
  }
  for (const web of path.webCrossings) {
    marks.push({
      v: at(web.u),
      role: 'web-crossing',
      title: mark.web(hand.short[web.between[0]], hand.short[web.between[1]], hand.layer[web.layer]),
      dashes: DASHES.web,
      reach: 'across',
      words: [lettering.web, ''],
    });
  }
  for (const turn of path.borderTurns) {
    marks.push({
      v: at(turn.u),
      role: 'border-turn',
      title: mark.border(hand.border[turn.border], hand.finger[turn.digit]),
      dashes: DASHES.border,
      reach: 'across',
      words: [lettering.border[turn.border].first, lettering.border[turn.border].second],
    });
  }
  return [...marks, ...seamMarks(flat, options, strip)].sort((a, b) => a.v - b.v);
}

function seamMarks(flat: FlatStrip, options: StripSettings, { lettering, mark }: Speech['strip']): readonly UprightMark[] {
  const { seam, trim } = endAllowances(options);
  const tick = { dashes: DASHES.dorsal, reach: 'ticks' } as const;
  const marks: UprightMark[] = [
    { v: 0, role: 'seam', title: mark.seamStart, words: ['', lettering.seam], ...tick },
    { v: flat.seamEnd, role: 'seam', title: mark.seamEnd, words: [lettering.seam, ''], ...tick },
  ];
  const limit = { role: 'overlap-limit', dashes: DASHES.limit, reach: 'across' } as const;
  if (seam > 0 && options.seam !== 'pinch') {
    marks.push(
      { ...limit, v: seam, title: mark.overlapStart, words: [lettering.overlap, ''] },
      { ...limit, v: flat.seamEnd - seam, title: mark.overlapEnd, words: ['', lettering.overlap] },
    );
  }
  if (trim > 0)
    marks.push({
      v: flat.end - trim,
      role: 'trim',
      title: mark.trim,
      words: ['', lettering.trim],
      dashes: DASHES.limit,
      reach: 'across',
    });
  return marks;
}
