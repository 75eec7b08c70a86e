import type { Sentence } from '../translate-messages.ts';

/** A sentence, marked as English where the page has none in the reader's language. */
export function Spoken({ sentence }: { readonly sentence: Sentence }) {
  return sentence.english ? <span lang="en">{sentence.text}</span> : <span>{sentence.text}</span>;
}
