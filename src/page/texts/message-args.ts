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
