import type { Problem, Result, Warning } from '../../src/units/result.ts';

/** More messages than this help nobody. */
const MOST_MESSAGES = 200;
/** A message that a person can still read. */
const LONGEST_MESSAGE = 2000;
/** Control characters, direction characters and broken surrogates have no place in a terminal or a report. */
const UNSAFE = /[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u;
const MISMADE = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /;

/** Throws with the reason unless the condition holds. */
export function hold(condition: boolean, reason: () => string): asserts condition {
  if (!condition) throw new Error(reason());
}

/** A result is a value without a number that is not finite, or problems that a person can read. The value, or null. */
export function readable<T>(result: Result<T>, given: string): T | null {
  if (result.ok) {
    finite(result.value);
    checkMessages(result.warnings, given);
    return result.value;
  }
  hold(result.problems.length > 0, () => 'it fails without a problem');
  checkMessages(result.problems, given);
  return null;
}

/** `given`: what the person wrote, in which words like NaN may stand and be quoted back. */
function checkMessages(messages: readonly (Problem | Warning)[], given: string): void {
  hold(messages.length <= MOST_MESSAGES, () => `${messages.length} messages`);
  for (const { code, message } of messages) {
    hold(/^[A-Z][A-Z0-9_]+$/.test(code), () => `code ${code}`);
    hold(message.length > 10 && message.length <= LONGEST_MESSAGE, () => `${code}: a message of ${message.length} characters`);
    hold(!UNSAFE.test(message), () => `${code}: unsafe character in ${JSON.stringify(message)}`);
    const odd = MISMADE.exec(message)?.[0];
    hold(odd === undefined || given.includes(odd), () => `${code}: ${JSON.stringify(message)}`);
  }
}

/** No number in the value is infinite or none at all, however deep. */
export function finite(value: unknown): void {
  const open: unknown[] = [value];
  while (open.length > 0) {
    const next = open.pop();
    if (typeof next === 'number') hold(Number.isFinite(next), () => `a number that is not finite: ${next}`);
    else if (typeof next === 'object' && next !== null) for (const inner of Object.values(next)) open.push(inner);
  }
}

const PROTOTYPES = [Object.prototype, Array.prototype, String.prototype, Number.prototype, Function.prototype];
const CLEAN = PROTOTYPES.map((prototype) => Reflect.ownKeys(prototype).length);

/** Nobody has added anything to what all objects inherit. */
export function unpolluted(): void {
  for (const [k, prototype] of PROTOTYPES.entries()) {
    hold(Reflect.ownKeys(prototype).length === CLEAN[k], () => `a prototype was polluted: ${String(Reflect.ownKeys(prototype))}`);
  }
}
