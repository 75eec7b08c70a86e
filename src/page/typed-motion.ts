import { BEYOND_STRAIGHT, parseDegrees } from '../units/angle.ts';
import { plain } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { type Entries, MOTION_IDS, type TypedMotion, typedAt } from './state.ts';

/** A field of a motion: blank, an angle in degrees (below 0 where the joint goes beyond straight), a sign that may mean either, or no angle. */
type ReadAngle = { readonly kind: 'blank' | 'sign' | 'unreadable' } | { readonly kind: 'degrees'; readonly degrees: number };

const SIGN = /^\s*[-+−–]/;

/** What the person typed for one end of a motion. A sign is asked about: - and + are used both for a deficit and for hyperextension. */
export function readAngle(text: string): ReadAngle {
  if (text.trim() === '') return { kind: 'blank' };
  if (SIGN.test(text)) return { kind: 'sign' };
  const tidy = text.trim();
  const beyond = BEYOND_STRAIGHT.test(tidy);
  const parsed = parseDegrees(tidy.replace(BEYOND_STRAIGHT, ''));
  if (!parsed.ok) return { kind: 'unreadable' };
  return { kind: 'degrees', degrees: beyond ? -parsed.degrees || 0 : parsed.degrees };
}

const NEUTRAL_ZERO = /^\s*(\d{1,3})\s*[-–/]\s*(\d{1,3})\s*[-–/]\s*(\d{1,3})\s*$/;

/**
 * A whole motion typed into one field in neutral-zero notation (AO: extension-0-flexion): 0-25-85 lacks 25 to straight and bends to 85,
 * 10-0-85 goes 10 beyond straight. Null where it is none.
 * @param beyond the reader's word for an angle beyond straight
 */
export function readNeutralZero(text: string, beyond = 'hyper'): TypedMotion | null {
  const [, first, second, third] = NEUTRAL_ZERO.exec(text) ?? [];
  if (first === undefined || second === undefined || third === undefined) return null;
  if (Number(first) === 0) return { lacks: String(Number(second)), bends: String(Number(third)) };
  return Number(second) === 0 ? { lacks: `${beyond} ${Number(first)}`, bends: String(Number(third)) } : null;
}

/** A motion shown back in neutral-zero notation: "0-25-85", "10-0-85"; null until both ends can be read. */
export function neutralZero(motion: TypedMotion): string | null {
  const [lacks, bends] = [readAngle(motion.lacks), readAngle(motion.bends)];
  if (lacks.kind !== 'degrees' || bends.kind !== 'degrees') return null;
  const flexion = plain(bends.degrees, 1);
  return lacks.degrees < 0 ? `${plain(-lacks.degrees, 1)}-0-${flexion}` : `0-${plain(lacks.degrees, 1)}-${flexion}`;
}

/** A typed end of a motion with the word for beyond straight in another language. */
export function withBeyondWord(text: string, beyond: string): string {
  return BEYOND_STRAIGHT.test(text.trim()) ? text.trim().replace(BEYOND_STRAIGHT, `${beyond} `) : text;
}

/** Paths of both ends of the motion that a field belongs to: `motion.active.lacks`, `visit.passiveBends`; null for a field of no motion. */
export function endsOfMotion(where: string): { readonly lacks: string; readonly bends: string } | null {
  const [, stem, end] = /^(motion\.\w+\.|visit\.(?:passive|mp)?)(lacks|bends)$/i.exec(where) ?? [];
  if (stem === undefined || end === undefined) return null;
  return /^[LB]/.test(end) ? { lacks: `${stem}Lacks`, bends: `${stem}Bends` } : { lacks: `${stem}lacks`, bends: `${stem}bends` };
}

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
