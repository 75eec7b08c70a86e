import type { StripNeed } from '../../block/deficit-kind.ts';
import { type NextArrangement, nextArrangements, type Tried } from '../../block/next-arrangement.ts';
import { planHand } from '../../pattern/plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import type { CourseRule } from '../../words/advice/course/course-figures.ts';
import { COURSE_WORDS } from '../../words/advice/course/course-words.ts';
import type { PlanSpeech } from '../../words/advice/plan/plan-words.ts';
import type { Language } from '../../words/language.ts';
import type { Case, Made } from '../case.ts';
import { deficitsOf, servedMotion } from './course.ts';
import { type NextSteps, nextSteps, type Step } from './next-steps.ts';

/** A step with its words in the reader's language; rule, figures and urgency stay data. */
type WordedStep = Step & {
  /** "Stop", "Keep": for the head of the step. */
  readonly title: string;
  /** "the same day", of a stop; "only once that has cleared", of what would have the device worn on, or changed, under a stop or a pause. */
  readonly when: string | null;
  /** What to do and why, with the figures, in whole sentences. */
  readonly message: string;
  /** Where the rule is from. */
  readonly sourceText: string;
};

export interface CourseAdvice extends Pick<NextSteps, 'slope'> {
  /** The first leads and is to be shown as such; the rest are notes. Empty for a case without visits. */
  readonly steps: readonly WordedStep[];
  /** What to ask and what to bear in mind, in whole sentences. */
  readonly reminders: readonly string[];
  /** "A starting point; the clinician decides." */
  readonly starting: string;
}

/**
 * What to do after the last visit of a case, in a language: the same for command, page, report and letter. The language changes words only,
 * never a step or its order.
 * @param speech how the reader knows the blocks; by their ids where it is not given
 */
export function courseAdvice(record: Case, language: Language, speech?: PlanSpeech): CourseAdvice {
  const found = nextSteps(record);
  // The plan computes strips, so it is asked only where its answer is said.
  const asksPlan = found.steps.some(({ rule }) => rule === 'IDLE' || rule === 'PLATEAU');
  return worded(asksPlan ? nextSteps(record, planNext(record)) : found, language, speech);
}

/** Rules that would have the device worn on, or changed: under a stop or a pause they wait. */
const WAIT_FOR_HARM: readonly CourseRule[] = ['RELAPSE', 'WEAN', 'GOAL', 'MP_STIFF', 'SWITCH', 'TEACH', 'IDLE', 'PLATEAU'];

/** Steps and reminders that were found, in the words of a language. */
function worded({ steps, reminders, slope }: NextSteps, language: Language, speech?: PlanSpeech): CourseAdvice {
  const words = COURSE_WORDS[language];
  const gains = steps.some(({ rule }) => rule === 'GAINING');
  const isLaidOff = steps[0]?.action === 'stop' || steps[0]?.action === 'pause';
  const whenOf = ({ rule, urgency }: Step) =>
    isLaidOff && WAIT_FOR_HARM.includes(rule) ? words.afterHarm : urgency === undefined ? null : words.urgency[urgency];
  const saidOf = (step: Step, leads: boolean) => {
    if (!leads && step.rule === 'GAINING') return { title: words.beside.gaining, message: words.beside.GAINING(step.figures) };
    // A gain that is sure and slow is no standstill, and no word against keeping on.
    if (gains && step.rule === 'PLATEAU') return { title: words.beside.slow, message: words.beside.PLATEAU(step.figures, speech) };
    if (gains && step.rule === 'REFER') return { title: words.beside.slow, message: words.beside.REFER(step.figures) };
    if (!leads && step.rule === 'PAUSE') return { title: words.action.pause, message: words.beside.PAUSE(step.figures) };
    const say = words.message[step.rule] as (figures: Step['figures'], speech?: PlanSpeech) => string;
    return { title: words.action[step.action], message: say(step.figures, speech) };
  };
  return {
    steps: steps.map((step, k) => ({
      ...step,
      ...saidOf(step, k === 0),
      when: whenOf(step),
      sourceText: words.source[step.source],
    })),
    reminders: reminders.map(({ reminder, figures }) => (words.reminder[reminder] as (given: typeof figures) => string)(figures)),
    slope,
    starting: words.starting,
  };
}

const NEED = { extension: 'pipExtension', flexion: 'pipFlexion' } as const satisfies Record<string, StripNeed>;

/**
 * What the plan would try after the strips of a case, first to last, as far as the next arrangement: the ladder of `plan` for the hand that the case
 * was opened with and what its PIP joint lacks now. Empty where that cannot be told: no hand kept, no strip in use, or a plan that now serves another
 * motion or none.
 */
export function planNext(record: Case): readonly NextArrangement[] {
  const { hand, digit, visits } = record;
  const deficits = deficitsOf(record).at(-1);
  const made = visits.flatMap((visit) => (visit.made === null ? [] : [visit.made]));
  const last = made.at(-1);
  const served = last?.kind === 'strip' ? servedMotion(last, digit) : null;
  if (hand === null || deficits === undefined || served === null) return [];
  const target = { ...hand.target, digit, pipExtensionDeficit: deficits.extension, pipFlexionDeficit: deficits.flexion };
  const plan = planHand({ ...hand, target }, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: true, anyway: true });
  return plan.ok && plan.value.stripNeed === NEED[served] && plan.value.suggestions.length > 0
    ? nextArrangements(plan.value, made.map(tried))
    : [];
}

/** A differential that was not noted counts as the usual one. */
function tried(made: Made): Tried {
  if (made.kind === 'plate') return { kind: 'plate', degrees: made.mpAngle };
  return { kind: 'strip', block: made.block, differential: made.differential ?? DEFAULT_STRIP_OPTIONS.differential };
}
