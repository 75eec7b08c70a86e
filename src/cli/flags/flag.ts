import { Argument, type InferArgument, type InferOptions, Option } from '@commander-js/extra-typings';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';

/** A flag as commander's option; its value has the type that its declaration says: a string, one of its choices, or true. */
export function flag<const Usage extends string>(usage: Usage, about: string): Option<Usage> {
  return new Option(usage, about);
}

/** An argument: `<needed>`, `[optional]`, `[several...]`. */
export function argument<const Usage extends string>(usage: Usage, about: string): Argument<Usage> {
  return new Argument(usage, about);
}

/** Flags that are made from a table at run time or that belong together, with the type of the values they give. */
export interface FlagSet<Values extends object> {
  readonly options: readonly AnyOption[];
  /** Never there at run time: it carries the type. */
  readonly values?: Values;
}

export function flagSet<const Entries extends readonly FlagEntry[]>(...entries: Entries): FlagSet<FlagsOf<Entries>> {
  return { options: optionsOf(entries) };
}

// biome-ignore lint/suspicious/noExplicitAny: an option of any kind; its type parameters stand in no variance that `unknown` would fit.
export type AnyOption = Option<any, any, any, any, any, any>;
// biome-ignore lint/suspicious/noExplicitAny: the same of an argument.
export type AnyArgument = Argument<any, any, any, any, any>;
export type FlagEntry = AnyOption | FlagSet<object>;

export function optionsOf(entries: readonly FlagEntry[]): readonly AnyOption[] {
  return entries.flatMap((entry) => ('options' in entry ? entry.options : [entry]));
}

type ValuesOf<Entry> =
  Entry extends FlagSet<infer Values>
    ? Values
    : Entry extends Option<infer Usage, infer Preset, infer Default, infer Coerced, infer Mandatory, infer Choices>
      ? InferOptions<unknown, Usage, Default, Coerced, Mandatory, Preset, Choices>
      : never;
type Together<Union> = (Union extends unknown ? (one: Union) => void : never) extends (all: infer All) => void ? All : never;

/** The values that commander gives for flags, by their names in camel case. */
export type FlagsOf<Entries extends readonly FlagEntry[]> =
  Together<{ [K in keyof Entries]: ValuesOf<Entries[K]> }[number]> extends infer All extends object
    ? { readonly [K in keyof All]: All[K] }
    : object;

/** The values that commander gives for arguments, in their order. */
export type ArgumentsOf<Entries extends readonly AnyArgument[]> = {
  [K in keyof Entries]: Entries[K] extends Argument<infer Usage, infer Default, infer Coerced, infer Required, infer Choices>
    ? InferArgument<Usage, Default, Coerced, Required, Choices>
    : never;
};

/** The same problem where a flag gave the value. */
export function ofFlag<T>(read: Result<T>): Result<T> {
  return read.ok ? read : failure(...read.problems.map((problem) => ({ ...problem, kind: 'usage' as const })));
}

/** A flag whose value cannot be used; the message is a sentence without its full stop; a question keeps its mark. */
export function flagProblem(where: string, message: string): Problem {
  return { code: 'FLAG', where, message: `${where}: ${message}${message.endsWith('?') ? '' : '.'}`, kind: 'usage' };
}

/** Words from a list with commas between, whatever their order and letter case, in the order of `known`; at least one. */
export function readWords<Word extends string>(
  flag: string,
  list: string,
  known: readonly Word[],
  one: string,
  several: string,
): Result<readonly Word[]> {
  const asked = list
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  const unknown = [...new Set(asked)].filter((word) => !known.some((w) => w === word));
  if (unknown.length === 0 && asked.length > 0) return success(known.filter((word) => asked.includes(word)));
  const what = unknown.length > 0 ? `unknown ${several} (${unknown.slice(0, 5).map(quote).join(', ')})` : `no ${one}`;
  return failure(flagProblem(flag, `${quote(list)} names ${what}; the ${several} are ${known.join(', ')}`));
}
