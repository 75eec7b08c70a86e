import * as z from 'zod';
import { parseDegrees } from '../../units/degrees-text.ts';
import { parseLength } from '../../units/length.ts';
import { nearest } from '../../units/nearest.ts';
import { isWritable, plain } from '../../units/number.ts';
import { quote, visible } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { CHOICE_OPTIONS, DEFAULT_STRIP_OPTIONS, NUMBER_OPTIONS, type NumberOption, type StripOptions } from './strip-options.ts';

const shape = Object.fromEntries([
  ...NUMBER_OPTIONS.map((o) => [
    o.key,
    (o.unit === 'mm' ? z.union([z.number().min(o.low).max(o.high), z.string()]) : z.number().min(o.low).max(o.high))
      .optional()
      .describe(
        `${o.about}; ${o.unit === 'mm' ? 'mm, or a string with its own unit' : o.unit}, ${o.low} to ${o.high}, default ${o.byDefault}`,
      ),
  ]),
  ...CHOICE_OPTIONS.map((o) => [
    o.key,
    z
      .enum(o.choices as [string, ...string[]])
      .optional()
      .describe(`${o.about}; default ${o.byDefault}`),
  ]),
]);

/** JSON Schema of an options file. */
export function optionsJsonSchema(): object {
  return z.toJSONSchema(z.strictObject(shape), { io: 'input' });
}

/** Where option values were written, first the weakest: an options file, then the flags. `origin` names it in messages. */
export interface OptionSource {
  readonly origin: string;
  readonly values: unknown;
}

const KEYS: readonly string[] = [...NUMBER_OPTIONS, ...CHOICE_OPTIONS].map((o) => o.key);
/** Keys that are read; more are in no options file, and a message about each helps nobody. */
const MOST_KEYS = 60;

/** Options from defaults and sources, later ones winning; every wrong key and value of every source at once. */
export function readStripOptions(sources: readonly OptionSource[]): Result<StripOptions> {
  const problems: Problem[] = [];
  const merged: Record<string, unknown> = { ...DEFAULT_STRIP_OPTIONS };
  for (const { origin, values } of sources) {
    if (typeof values !== 'object' || values === null || Array.isArray(values)) {
      problems.push(problem(origin, '', `must be an object such as {"width": 20}, not ${quote(values)}`));
      continue;
    }
    const entries = Object.entries(values);
    for (const [key, value] of entries.slice(0, MOST_KEYS)) {
      const read = readOption(origin, key, value);
      if (read.ok) merged[key] = read.value;
      else problems.push(...read.problems);
    }
    if (entries.length > MOST_KEYS)
      problems.push(problem(origin, '', `has ${entries.length - MOST_KEYS} more keys; only ${KEYS.length} are options`));
  }
  const options = merged as unknown as StripOptions;
  if (problems.length === 0 && options.minimumWidth > options.width) {
    problems.push(
      problem(
        'options',
        'minimumWidth',
        `${plain(options.minimumWidth)} mm is more than the strip's width of ${plain(options.width)} mm; make it smaller or the strip wider`,
      ),
    );
  }
  return problems.length > 0 ? failure(...problems) : success(options);
}

function readOption(origin: string, key: string, value: unknown): Result<number | string> {
  const number = NUMBER_OPTIONS.find((o) => o.key === key);
  if (number) return readNumber(origin, number, value);
  const choice = CHOICE_OPTIONS.find((o) => o.key === key);
  if (choice) {
    if (typeof value === 'string' && choice.choices.includes(value)) return success(value);
    return failure(problem(origin, key, `is ${quote(value)}; it can be ${choice.choices.join(' or ')}`));
  }
  const near = nearest(key, KEYS);
  return failure(
    problem(origin, visible(key), `is not an option${near ? `; did you mean ${near}?` : `; the options are ${KEYS.join(', ')}`}`),
  );
}

function readNumber(origin: string, option: NumberOption, value: unknown): Result<number> {
  const unit = option.unit === 'fraction' ? '' : ` ${option.unit}`;
  const range = `${plain(option.low)} to ${plain(option.high)}${unit} is allowed`;
  if (typeof value !== 'number' && typeof value !== 'string')
    return failure(problem(origin, option.key, `is ${quote(value)}; a number is needed, ${range}`));
  const parsed = parseValue(option, value);
  if (!parsed.ok) return failure(problem(origin, option.key, `is ${parsed.reason}; ${range}`));
  if (parsed.value < option.low || parsed.value > option.high)
    return failure(problem(origin, option.key, `is ${isWritable(parsed.value) ? plain(parsed.value, 4) : quote(value)}${unit}; ${range}`));
  return success(parsed.value);
}

function parseValue(option: NumberOption, value: number | string): { ok: true; value: number } | { ok: false; reason: string } {
  if (option.unit === 'mm') {
    const length = parseLength(value, 'mm', { zero: true });
    return length.ok ? { ok: true, value: length.mm } : length;
  }
  if (option.unit === 'degrees') {
    const angle = parseDegrees(value);
    return angle.ok ? { ok: true, value: angle.degrees } : angle;
  }
  // A shrinking sheet has a negative stretch, so the sign is read here and nowhere else.
  const fraction =
    typeof value === 'number' ? value : /^-?\d*[.,]?\d+$/.test(value.trim()) ? Number(value.trim().replace(',', '.')) : Number.NaN;
  return Number.isFinite(fraction) ? { ok: true, value: fraction } : { ok: false, reason: `${quote(value)}, not a number such as 0.05` };
}

function problem(origin: string, key: string, message: string): Problem {
  return { code: 'OPTION', where: key, message: `${origin}${key === '' ? '' : `: ${key}`} ${message}.`, kind: 'input' };
}
