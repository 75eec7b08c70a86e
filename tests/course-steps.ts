import { type NextSteps, nextSteps, type Step } from '../src/record/course/next-steps.ts';
import { type CourseNotes, type CourseVisit, sampleCourse } from './sample-course.ts';

export const EXTENSION = 'strip for extension, 20';
export const FLEXION = 'strip for flexion, 20';

/** What a written course suggests after its last visit. */
export function next(visits: readonly CourseVisit[], rest: Readonly<Record<string, unknown>> = {}): NextSteps {
  return nextSteps(sampleCourse(visits, rest));
}

export function rules(visits: readonly CourseVisit[], rest: Readonly<Record<string, unknown>> = {}): readonly Step['rule'][] {
  return next(visits, rest).steps.map(({ rule }) => rule);
}

export function step(visits: readonly CourseVisit[], rule: string): Step | undefined {
  return next(visits).steps.find((one) => one.rule === rule);
}

/** A visit a week with these motions, the first of which is the making. */
export function weekly(pips: readonly string[], made: string, notes: CourseNotes = {}): readonly CourseVisit[] {
  return pips.map((pip, k) => [7 * k, pip, k === 0 ? { made, ...notes } : notes]);
}
