import { WHOM_TO_ASK } from '../block/hand-notes.ts';
import type { PlanNote } from '../block/plan-notes.ts';
import type { Warning } from '../units/result.ts';
import { sayAsk, sayPlanNote } from '../words/advice/plan/say-plan.ts';
import { capital } from '../words/hand-words.ts';
import { unmeasuredEnd } from './hand-file.ts';
import { type Mend, mendFor } from './mends.ts';
import { goToField } from './parts/focus.ts';
import type { Entries } from './state.ts';
import type { Store } from './store.ts';
import type { Texts } from './texts/english.ts';
import { fieldName, fieldOf, type Sentence, sayWarning } from './translate-messages.ts';

/** One thing to look at before it is made: in short, in full, and what mends it. */
export interface Look {
  readonly id: string;
  readonly short: string;
  readonly full: Sentence;
  readonly mend: Mend | null;
  /** Nothing can be made before it is mended. */
  readonly stops: boolean;
}

const own = (text: string): Sentence => ({ text, english: false });

/** Everything to look at, gravest first: the stop signs until they are answered, what is wrong, what calls for care, what is not measured. */
export function looksOf(store: Store): readonly Look[] {
  const { derived, entries, texts } = store;
  const words = texts.value;
  const now = derived.value;
  const looks: Look[] = [];
  if (entries.value.stop === '' && (entries.value.target !== '' || now.drawn !== null))
    looks.push({
      id: 'stop',
      short: words.stop.unanswered,
      full: own(`${words.stop.unanswered}: ${words.stop.list}.`),
      mend: { label: words.look.goTo, apply: () => goToField(store, 'stop') },
      stops: false,
    });
  if (entries.value.stop === 'some')
    looks.push({
      id: 'stopped',
      short: words.stop.stopped,
      full: own(stoppedWords(store)),
      mend: { label: words.look.goTo, apply: () => (store.panel.value = 'stop') },
      stops: true,
    });
  const said = (now.plan?.notes ?? []).map((note) => note.rule as string);
  for (const fault of store.faults.value)
    if (!said.includes(fault.problem.code))
      looks.push({
        id: `${fault.problem.code} ${fault.field}`,
        short: fault.sentence.text,
        full: fault.sentence,
        mend: mendFor(store, fault.problem, fault.field),
        stops: true,
      });
  for (const note of now.plan?.notes ?? []) if (note.level !== 'note') looks.push(noteLook(store, note));
  looks.push(...halfMeasured(store));
  const warnings = now.drawn?.warnings ?? now.plan?.warnings ?? [];
  for (const warning of warnings) if (warning.code !== 'ESTIMATED') looks.push(warningLook(store, warning));
  const estimated = now.average ? [] : warnings.filter((w) => w.code === 'ESTIMATED');
  const [first] = estimated;
  if (first)
    looks.push({
      id: 'estimated',
      short: words.look.estimated(estimated.length),
      full: own(words.look.estimatedFull(estimated.map((w) => fieldName(w.where ?? '', words)).join('; '))),
      mend: { label: words.look.measureNext, apply: () => goToField(store, first.where ?? '') },
      stops: false,
    });
  return looks;
}

/** That nothing is suggested or printed, and whom the signs that stand ask for, each once. */
export function stoppedWords({ entries, settings, texts }: Store): string {
  const asked = new Set(entries.value.stopSigns.map((sign) => WHOM_TO_ASK[sign]));
  return [texts.value.stop.stopped, ...[...asked].map((ask) => sayAsk(ask, settings.value.language))].join(' ');
}

/** A note of the plan, in full in the reader's language, with the place where what it asks for is given. */
function noteLook(store: Store, note: PlanNote): Look {
  const text = sayPlanNote(note, store.settings.value.language);
  const where = NOTE_FIELDS[note.rule];
  const words = store.texts.value.look;
  const mend =
    note.level === 'confirm'
      ? mendFor(store, { code: note.rule, where: '', message: '', kind: 'refused' }, 'flags')
      : where === undefined
        ? null
        : { label: words.goTo, apply: () => goToField(store, where) };
  return { id: note.rule, short: text, full: own(text), mend, stops: note.level === 'stop' || note.level === 'confirm' };
}

/** Where what a note asks for is given. */
const NOTE_FIELDS: Readonly<Partial<Record<PlanNote['rule'], string>>> = {
  MEASURE_PASSIVE: 'motion.passive.lacks',
  MEASURE_MP: 'motion.mpPassive.lacks',
  MEASURE_AGAIN: 'motion.active.lacks',
  STILL_UNSURE: 'motion.active.lacks',
  PASSIVE_ALIKE: 'motion.passive.lacks',
  CENTRAL_SLIP: 'weeks',
  BOUTONNIERE_MEASURE: 'motion.passive.lacks',
  SENSATION: 'flags',
  SWELLING: 'flags',
  HYPERMOBILE: 'flags',
};

function warningLook(store: Store, warning: Warning): Look {
  const full = sayWarning(warning, store.speaker.value);
  const where = warning.where === undefined ? null : fieldOf(warning.where, store.entries.value);
  const goTo = where === null ? null : { label: store.texts.value.look.goTo, apply: () => goToField(store, where) };
  return { id: `${warning.code} ${warning.where ?? ''} ${warning.message}`, short: full.text, full, mend: goTo, stops: false };
}

/**
 * What is said of a motion of which one end was typed: the other is taken as full, or, where what was typed lacks nothing to speak of, asked for.
 * Null where both ends were typed or none.
 */
export function halfMotionWords(entries: Entries, { finger }: Texts): string | null {
  const { lacks, bends } = entries.motion.active;
  if ((lacks.trim() === '') === (bends.trim() === '')) return null;
  const isAsked = unmeasuredEnd(entries) !== null;
  if (bends.trim() === '') return isAsked ? finger.bendToo : finger.notBent;
  return isAsked ? finger.straightenToo : finger.notStraightened;
}

/** A motion of which one end was typed, with the press that says that the other is full. */
function halfMeasured(store: Store): readonly Look[] {
  const entries = store.entries.value;
  const words = store.texts.value;
  const text = halfMotionWords(entries, words);
  if (text === null) return [];
  const end = entries.motion.active.bends.trim() === '' ? 'bends' : 'lacks';
  return [
    {
      id: 'half',
      short: text,
      full: own(`${capital(text)}.`),
      mend: {
        label: end === 'bends' ? words.look.bendsFull : words.look.straightFull,
        apply: () => {
          store.type(`motion.active.${end}`, end === 'bends' ? '100' : '0');
          store.commit();
        },
      },
      stops: false,
    },
  ];
}
