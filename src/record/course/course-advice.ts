import { COURSE_WORDS } from '../../words/advice/course/course-words.ts';
import type { PlanSpeech } from '../../words/advice/plan/plan-words.ts';
import type { Language } from '../../words/language.ts';
import type { Case } from '../case.ts';
import { type NextSteps, nextSteps, type Step } from './next-steps.ts';
import { planNext } from './plan-next.ts';

/** A step with its words in the reader's language; rule, figures and urgency stay data. */
export type WordedStep = Step & {
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
    steps: steps.map((step) => ({
      ...step,
      title: words.action[step.action],
      when: step.urgency === undefined ? null : words.urgency[step.urgency],
      message: (words.message[step.rule] as (figures: Step['figures'], speech?: PlanSpeech) => string)(step.figures, speech),
      sourceText: words.source[step.source],
    })),
    reminders: reminders.map(({ reminder, figures }) => (words.reminder[reminder] as (given: typeof figures) => string)(figures)),
    slope,
    starting: words.starting,
  };
}
