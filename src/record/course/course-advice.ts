import type { StripNeed } from '../../block/deficit-kind.ts';
import { type NextArrangement, nextArrangements, type Tried } from '../../block/next-arrangement.ts';
import { planHand } from '../../pattern/plan-hand.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
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
  /** "the same day"; only of a stop. */
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

/** Steps and reminders that were found, in the words of a language. */
function worded({ steps, reminders, slope }: NextSteps, language: Language, speech?: PlanSpeech): CourseAdvice {
  const words = COURSE_WORDS[language];
  return {
    steps: steps.map((step, k) => ({
      ...step,
      title: words.action[step.action],
      when: step.urgency === undefined ? null : words.urgency[step.urgency],
      message: (words.message[step.rule] as (figures: Step['figures'], speech?: PlanSpeech) => string)(step.figures, speech),
      // Under a stop, a pause or any other change a gain is a fact and no word to go on.
      ...(step.rule === 'GAINING' && k > 0 ? { title: words.gainBeside.title, message: words.gainBeside.message(step.figures) } : {}),
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
