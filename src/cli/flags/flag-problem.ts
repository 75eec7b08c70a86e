import { failure, type Problem, type Result } from '../../units/result.ts';

/** The same problem where a flag gave the value. */
export function ofFlag<T>(read: Result<T>): Result<T> {
  return read.ok ? read : failure(...read.problems.map((problem) => ({ ...problem, kind: 'usage' as const })));
}

/** A flag whose value cannot be used; the message is a sentence without its full stop; a question keeps its mark. */
export function flagProblem(where: string, message: string): Problem {
  return { code: 'FLAG', where, message: `${where}: ${message}${message.endsWith('?') ? '' : '.'}`, kind: 'usage' };
}
