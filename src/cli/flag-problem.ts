import type { Problem } from '../units/result.ts';

/** A flag whose value cannot be used; the message is a sentence without its full stop. */
export function flagProblem(where: string, message: string): Problem {
  return { code: 'FLAG', where, message: `${where}: ${message}.`, kind: 'input' };
}
