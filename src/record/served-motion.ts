import type { Lacking } from '../words/advice/course/course-figures.ts';
import type { Case, Made } from './case.ts';

/**
 * The PIP motion that a strip serves on the treated digit: its own MP joint in relative extension serves flexion, in relative flexion
 * extension (trial registration NCT06985459). A held digit is held as its place says, an enclosed one the other way by comparison.
 */
export function servedMotion(made: Extract<Made, { kind: 'strip' }>, digit: Case['digit']): Lacking | null {
  const own = made.block.places[digit];
  if (own === undefined) return null;
  if (own !== 'enclosed') return own === 'raised' ? 'flexion' : 'extension';
  return Object.values(made.block.places).includes('raised') ? 'extension' : 'flexion';
}
