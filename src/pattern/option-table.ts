import * as z from 'zod';
import { parseDegrees } from '../units/angle.ts';
import { parseLength } from '../units/length.ts';
import { isWritable, plain } from '../units/number.ts';
import { quote, visible } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { didYouMean } from '../units/typed-name.ts';
import { type NumberEntry, type OptionTable, usualValue } from './option-entries.ts';

/** Where option values were written, first the weakest: an options file, then the flags. `origin` names it in messages. */
export interface OptionSource {
  readonly origin: string;
  readonly values: unknown;
}

/** The table as a form of zod: strict, every key optional. */
export function optionsForm({ numbers, choices }: OptionTable) {
  return z.strictObject(
    Object.fromEntries([
      ...numbers.map((o) => {
        const number = z.number().min(o.low).max(o.high);
        const unit = o.unit === 'mm' ? 'mm, or a string with its own unit' : o.unit;
        const about = `${o.about}; ${unit}, ${o.low} to ${o.high}, default ${usualValue(o)}`;
        const value = o.unit === 'mm' ? z.union([number, z.string()]) : o.word ? z.union([number, z.literal(o.word)]) : number;
        return [o.key, value.optional().describe(about)];
      }),
      ...choices.map((o) => [
        o.key,
        z
          .enum(o.choices as [string, ...string[]])
          .optional()
          .describe(`${o.about}; default ${o.default}`),
      ]),
    ]),
  );
}

/** Keys that are read; more are in no options file, and a message about each helps nobody. */
const MOST_KEYS = 60;

/** Options from defaults and sources, later ones winning; every wrong key and value of every source at once. */
export function readOptionTable(table: OptionTable, sources: readonly OptionSource[]): Result<Record<string, unknown>> {
  const problems: Problem[] = [];
  const merged: Record<string, unknown> = Object.fromEntries([...table.numbers, ...table.choices].map((o) => [o.key, usualValue(o)]));
  for (const { origin, values } of sources) {
    if (typeof values !== 'object' || values === null || Array.isArray(values)) {
      const first = table.numbers[0];
      problems.push(optionProblem(origin, '', `must be an object such as {"${first?.key}": ${first?.default}}, not ${quote(values)}`));
      continue;
    }
    const entries = Object.entries(values);
    if (entries.length > MOST_KEYS)
      problems.push(optionProblem(origin, '', `has ${entries.length} keys; the first ${MOST_KEYS} were read`));
    for (const [key, value] of entries.slice(0, MOST_KEYS)) {
      const read = readOption(table, origin, key, value);
      if (read.ok) merged[key] = read.value;
      else problems.push(...read.problems);
    }
  }
  return problems.length > 0 ? failure(...problems) : success(merged);
}

/** The origin of what was typed as flags: wrong usage, where a file would be wrong input. */
export const FLAGS = 'flags';

/** A problem with an option; the message is a sentence without its full stop. */
export function optionProblem(origin: string, key: string, message: string): Problem {
  const kind = origin === FLAGS ? 'usage' : 'input';
  return { code: 'OPTION', where: key, message: `${origin}${key === '' ? '' : `: ${key}`} ${message}.`, kind };
}

function readOption(table: OptionTable, origin: string, key: string, value: unknown): Result<number | string> {
  const number = [...table.numbers, ...(table.retired ?? [])].find((o) => o.key === key);
  if (number?.word && value === number.word) return success(number.word);
  if (number) return readNumber(origin, number, value);
  const choice = table.choices.find((o) => o.key === key);
  if (choice) {
    if (typeof value === 'string' && choice.choices.includes(value)) return success(value);
    return failure(optionProblem(origin, key, `is ${quote(value)}; it can be ${choice.choices.join(' or ')}`));
  }
  const keys = [...table.numbers, ...table.choices].map((o) => o.key);
  return failure(optionProblem(origin, visible(key), `is not an option${didYouMean(key, keys, 'the options are')}`));
}

function readNumber(origin: string, option: NumberEntry, value: unknown): Result<number> {
  const unit = option.unit === 'fraction' ? '' : ` ${option.unit}`;
  const range = `${plain(option.low)} to ${plain(option.high)}${unit}${option.word ? ` or ${option.word}` : ''} is allowed`;
  if (typeof value !== 'number' && typeof value !== 'string')
    return failure(optionProblem(origin, option.key, `is ${quote(value)}; a number is needed, ${range}`));
  const parsed = parseValue(option, value);
  if (!parsed.ok) return failure(optionProblem(origin, option.key, `is ${parsed.reason}; ${range}`));
  if (parsed.value < option.low || parsed.value > option.high)
    return failure(
      optionProblem(origin, option.key, `is ${isWritable(parsed.value) ? plain(parsed.value, 4) : quote(value)}${unit}; ${range}`),
    );
  return success(parsed.value);
}

function parseValue(option: NumberEntry, value: number | string): { ok: true; value: number } | { ok: false; reason: string } {
  if (option.unit === 'mm') {
    // A reading may lie on either side of zero; no other length can be negative.
    const minus = option.low < 0 && /^-/.test(String(value).trim());
    const size = minus ? (typeof value === 'number' ? -value : value.trim().slice(1)) : value;
    const length = parseLength(size, 'mm', { zero: true });
    return length.ok ? { ok: true, value: minus ? -length.mm : length.mm } : length;
  }
  if (option.unit === 'degrees') {
    const angle = parseDegrees(value);
    return angle.ok ? { ok: true, value: angle.degrees } : angle;
  }
  // A shrinking sheet has a negative stretch, so the sign is read here.
  const fraction =
    typeof value === 'number' ? value : /^-?\d*[.,]?\d+$/.test(value.trim()) ? Number(value.trim().replace(',', '.')) : Number.NaN;
  return Number.isFinite(fraction) ? { ok: true, value: fraction } : { ok: false, reason: `${quote(value)}, not a number such as 0.05` };
}
