import type { InferArgument, InferOptions, Argument as TypedArgument, Option as TypedOption } from '@commander-js/extra-typings';
import { Argument, Option } from 'commander';

/** A flag as commander's option; its value has the type that its declaration says: a string, one of its choices, or true. */
export function flag<const Usage extends string>(usage: Usage, about: string): TypedOption<Usage> {
  return new Option(usage, about) as unknown as TypedOption<Usage>;
}

/** An argument: `<needed>`, `[optional]`, `[several...]`. */
export function argument<const Usage extends string>(usage: Usage, about: string): TypedArgument<Usage> {
  return new Argument(usage, about) as unknown as TypedArgument<Usage>;
}

/** Flags that are made from a table at run time or that belong together, with the type of the values they give. */
export interface FlagSet<Values extends object> {
  readonly options: readonly Option[];
  /** Never there at run time: it carries the type. */
  readonly values?: Values;
}

export function flagSet<const Entries extends readonly FlagEntry[]>(...entries: Entries): FlagSet<FlagsOf<Entries>> {
  return { options: optionsOf(entries) };
}

// biome-ignore lint/suspicious/noExplicitAny: an option of any kind; its type parameters stand in no variance that `unknown` would fit.
type AnyOption = TypedOption<any, any, any, any, any, any>;
// biome-ignore lint/suspicious/noExplicitAny: the same of an argument.
export type AnyArgument = TypedArgument<any, any, any, any, any>;
export type FlagEntry = AnyOption | FlagSet<object>;

export function optionsOf(entries: readonly FlagEntry[]): readonly Option[] {
  return entries.flatMap((entry) => ('options' in entry ? entry.options : [entry as unknown as Option]));
}

type ValuesOf<Entry> =
  Entry extends FlagSet<infer Values>
    ? Values
    : Entry extends TypedOption<infer Usage, infer Preset, infer Default, infer Coerced, infer Mandatory, infer Choices>
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
  [K in keyof Entries]: Entries[K] extends TypedArgument<infer Usage, infer Default, infer Coerced, infer Required, infer Choices>
    ? InferArgument<Usage, Default, Coerced, Required, Choices>
    : never;
};
