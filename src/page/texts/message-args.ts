/** What a message is about, already worded in the reader's language. */
export interface MessageArgs {
  /** Field, with its digit: "Ring finger: width"; or the digit alone. */
  readonly name: string;
  /** Digit that the message is about, in words; empty where there is none. */
  readonly digit: string;
  /** Value that it quotes, with unit; empty where there is none. */
  readonly value: string;
  /** Limit that it names, with unit; empty where there is none. */
  readonly limit: string;
  /** Allowed or usual range of the field, with unit; empty where there is none. */
  readonly range: string;
}

export type Message = (said: MessageArgs) => string;

/** The same shape with every string left open, so that each language has exactly the texts of the others. */
export type Translations<T> = T extends string
  ? string
  : T extends (...values: infer V) => string
    ? (...values: V) => string
    : { readonly [K in keyof T]: Translations<T[K]> };
