import { visible } from '../units/quote.ts';
import type { HandWords } from '../words/hand-words.ts';
import { type Entries, typedAt } from './state.ts';
import type { Texts } from './texts/english.ts';
import { fieldName } from './translate-messages.ts';

/** What a step changed: path of the field or name of the act, and what stood there afterwards. */
export interface StepAbout {
  readonly where: string;
  readonly value: string;
}

interface Step {
  readonly before: Entries;
  readonly after: Entries;
  readonly about: StepAbout;
}

/** What can be undone and redone, and the field that is being typed in, whose changes are one step. */
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly open: string | null;
}

export const NO_HISTORY: History = { past: [], future: [], open: null };

/** Steps that can be undone; far more than one sitting has. */
const MOST_STEPS = 400;

/** The history after a change: one step a field, however many keys it took; a field typed back to what it was leaves no step. */
export function recorded(history: History, before: Entries, after: Entries, about: StepAbout): History {
  const last = history.past.at(-1);
  const goesOn = last !== undefined && history.open === about.where && last.about.where === about.where;
  const step: Step = { before: goesOn ? last.before : before, after, about };
  const earlier = goesOn ? history.past.slice(0, -1) : history.past;
  const isSame = JSON.stringify(step.before) === JSON.stringify(after);
  return { past: (isSame ? earlier : [...earlier, step]).slice(-MOST_STEPS), future: [], open: about.where };
}

/** The field was left or its value committed: what comes next there is another step. */
export function committed(history: History): History {
  return history.open === null ? history : { ...history, open: null };
}

/** The entries and history one step back, and what was undone; null where nothing is left. */
export function undone(history: History): { readonly entries: Entries; readonly history: History; readonly about: StepAbout } | null {
  const step = history.past.at(-1);
  if (!step) return null;
  return {
    entries: step.before,
    history: { past: history.past.slice(0, -1), future: [step, ...history.future], open: null },
    about: step.about,
  };
}

/** The entries and history one step forward again, and what was redone; null where nothing was undone. */
export function redone(history: History): { readonly entries: Entries; readonly history: History; readonly about: StepAbout } | null {
  const [step, ...future] = history.future;
  if (!step) return null;
  return { entries: step.after, history: { past: [...history.past, step], future, open: null }, about: step.about };
}

/** The history after another unit or decimal sign was chosen: each step holds the same lengths, and says them as they would now be typed. */
export function rewrittenHistory(history: History, rewrite: (entries: Entries) => Entries): History {
  const anew = ({ before, after, about }: Step): Step => {
    const [next, isTyped] = [rewrite(after), typedAt(after, about.where) === about.value];
    return { before: rewrite(before), after: next, about: isTyped ? { ...about, value: typedAt(next, about.where) } : about };
  };
  return { past: history.past.map(anew), future: history.future.map(anew), open: null };
}

/** Fields whose value alone says what was changed. */
const VALUE_ALONE = /^(?:block|options|stop|flags|hypermobile|clinicianConfirms|invented|visit|middle)\b/;
const LONGEST = 40;

/** What a step changed, in words: "Ring finger: width 16.5". */
export function stepWords({ where, value }: StepAbout, texts: Texts): string {
  const shown = visible(value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value);
  if (VALUE_ALONE.test(where)) return shown;
  const digit = /^places\.(\w+)$/.exec(where)?.[1] as keyof HandWords['first'] | undefined;
  const names: Record<string, string> = {
    roundIn: texts.measure.roundIn,
    sizeGroup: texts.measure.whose,
    'print.paper': texts.files.paper,
    'plate.faces': texts.plate.faces,
    'plate.digits': texts.plate.digits,
    'plate.bend': texts.plate.bendWay,
  };
  const name = digit && digit in texts.hand.first ? texts.hand.first[digit] : (names[where] ?? fieldName(where, texts));
  return `${name} ${shown}`.trim();
}
