import { Argument, type InferArgument, type InferOptions, Option } from '@commander-js/extra-typings';

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
