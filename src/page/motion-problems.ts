import { plain } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { type Entries, MOTION_IDS, typedAt } from './state.ts';
import { readAngle } from './typed-motion.ts';

/** A finger joint's motion, degrees: no more than this in either direction counts as a reading. */
export const MOTION_RANGE = { lacks: { from: 0, to: 120 }, bends: { from: 0, to: 140 }, beyond: 40 } as const;

/**
 * What is wrong with the motions as they were typed, in the reader's own two numbers. `MOTION_SIGN`: plus and minus are used both for a
 * deficit and for hyperextension, so a sign is asked about. `MOTION_UNREADABLE`, `MOTION_OUT_OF_RANGE`, `MOTION_IMPOSSIBLE` (bends to less than it lacks).
 */
export function motionProblems(entries: Entries): readonly Problem[] {
  const ends = MOTION_IDS.flatMap((id) => (['lacks', 'bends'] as const).map((end) => [`motion.${id}.${end}`, end] as const));
  const problems = ends.flatMap(([where, end]) => endProblems(typedAt(entries, where), where, end));
  for (const id of MOTION_IDS) {
    const [lacks, bends] = [readAngle(entries.motion[id].lacks), readAngle(entries.motion[id].bends)];
    if (lacks.kind === 'degrees' && bends.kind === 'degrees' && bends.degrees < lacks.degrees) {
      const message = `motion.${id}.bends: it bends to ${plain(bends.degrees)} but lacks ${plain(lacks.degrees)} to straight; both count from straight.`;
      problems.push({ code: 'MOTION_IMPOSSIBLE', where: `motion.${id}.bends`, message, kind: 'input' });
    }
  }
  return problems;
}

/** The problem of one typed end of a motion, at its path; none where it is blank. */
export function endProblems(text: string, where: string, end: 'lacks' | 'bends'): Problem[] {
  const read = readAngle(text);
  const problem = (code: string, why: string): Problem[] => [{ code, where, message: `${where}: ${quote(text)} ${why}.`, kind: 'input' }];
  if (read.kind === 'sign') return problem('MOTION_SIGN', 'has a sign; write 10 for 10 lacking, hyper 10 for 10 beyond straight');
  if (read.kind === 'unreadable') return problem('MOTION_UNREADABLE', 'is not a number of degrees');
  if (read.kind !== 'degrees') return [];
  const { to } = MOTION_RANGE[end];
  const from = end === 'lacks' ? -MOTION_RANGE.beyond : 0;
  return read.degrees < from || read.degrees > to ? problem('MOTION_OUT_OF_RANGE', `is out of range; 0 to ${to} degrees is allowed`) : [];
}
