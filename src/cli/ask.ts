import { createInterface } from 'node:readline';
import { quote } from '../units/quote.ts';

/** What a person is asked for when a flag does not say it. */
export interface Question {
  readonly key: string;
  readonly label: string;
  /** How to answer and what is allowed. */
  readonly hint: string;
  readonly required: boolean;
  /** Answered by one key, y or n, without Enter; only at a terminal. */
  readonly oneKey?: boolean;
  /** Passed over when another question got this answer. */
  readonly unless?: { readonly key: string; readonly value: unknown };
  /** The answer as it goes on, or why it cannot be taken (a sentence without its full stop). */
  readonly read: (text: string) => { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string };
}

/** Where questions go and answers come from: a terminal, or streams in a test. */
export interface Talk {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
  readonly terminal: boolean;
}

let isSilent = false;

/** Nobody is asked, at a terminal either, while `silent`. */
export function neverAsk(silent: boolean): void {
  isSilent = silent;
}

/** The person's terminal, or null when input or messages go elsewhere. Questions go to stderr, so that stdout stays the result's. */
export function personsTerminal(): Talk | null {
  return !isSilent && process.stdin.isTTY && process.stderr.isTTY ? { input: process.stdin, output: process.stderr, terminal: true } : null;
}

/**
 * Asks one after the other, each until its answer can be taken; an empty answer passes over a question that is not required. The answers
 * by key, or null when the person ended the input: then nothing may be written.
 */
export async function askAll(questions: readonly Question[], talk: Talk): Promise<ReadonlyMap<string, unknown> | null> {
  const answers = new Map<string, unknown>();
  if (questions.length === 0) return answers;
  const lines = createInterface({ input: talk.input, output: talk.output, terminal: talk.terminal });
  try {
    const typed = lines[Symbol.asyncIterator]();
    for (const question of questions) {
      if (question.unless && answers.get(question.unless.key) === question.unless.value) continue;
      const answer = await askOne(question, lines, typed, talk);
      if (answer === null) return null;
      if (answer.given) answers.set(question.key, answer.value);
    }
    return answers;
  } finally {
    lines.close();
  }
}

type Answer = { readonly given: true; readonly value: unknown } | { readonly given: false };

async function askOne(
  question: Question,
  lines: ReturnType<typeof createInterface>,
  typed: AsyncIterator<string>,
  { input, output, terminal }: Talk,
): Promise<Answer | null> {
  const { label, hint, required, oneKey = false } = question;
  output.write(`\n${label}${required ? '' : ' (Enter passes over)'}\n  ${hint}\n`);
  for (;;) {
    lines.setPrompt('> ');
    lines.prompt();
    const stopListening = oneKey && terminal ? enterAfterOneKey(input, lines) : null;
    const line = await typed.next();
    stopListening?.();
    if (line.done) return null;
    const text = line.value.trim();
    if (text === '' && !required) return { given: false };
    const read = text === '' ? ({ ok: false, reason: 'this is needed' } as const) : question.read(text);
    if (read.ok) return { given: true, value: read.value };
    output.write(`  ${read.reason}.\n`);
  }
}

/** Presses Enter for the person once y or n stands alone on the line; gives back what ends that. */
function enterAfterOneKey(input: NodeJS.ReadableStream, lines: ReturnType<typeof createInterface>): () => void {
  const onKey = () => {
    if (/^[yn]$/i.test(lines.line)) lines.write(null, { name: 'return' });
  };
  input.on('keypress', onKey);
  return () => input.off('keypress', onKey);
}

/** Reads "yes" or "no". */
export function readYesNo(text: string): ReturnType<Question['read']> {
  const word = text.trim().toLowerCase();
  if (word === 'yes' || word === 'y') return { ok: true, value: true };
  if (word === 'no' || word === 'n') return { ok: true, value: false };
  return { ok: false, reason: `${quote(word)} is neither yes nor no` };
}
