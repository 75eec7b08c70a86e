import type { Problem } from '../../units/result.ts';

/** A flag whose value cannot be used; the message is a sentence without its full stop; a question keeps its mark. */
export function flagProblem(where: string, message: string): Problem {
  return { code: 'FLAG', where, message: `${where}: ${message}${message.endsWith('?') ? '' : '.'}`, kind: 'input' };
}
