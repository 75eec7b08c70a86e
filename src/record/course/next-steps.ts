import { SIGMA } from '../../block/figures.ts';
import type { NextArrangement } from '../../block/next-arrangement.ts';
import { HARM_KEYS } from '../../hand/signs.ts';
import type {
  CourseFigures,
  CourseReminder,
  CourseReminders,
  CourseRule,
  CourseSource,
  Slope,
} from '../../words/advice/course/course-figures.ts';
import { type Case, ratersOf } from '../case.ts';
import { type Course, courseOf, lossOf, MOTIONS, servedSlope } from './course.ts';
import { COURSE_RULES, type CourseAction, type Urgency, USUAL_GOAL } from './course-rules.ts';
import { CRPS_PAIN, leftOff, pause } from './harm.ts';

/** A rule that applies, with what it was computed from. */
export type Step = {
  readonly [R in CourseRule]: {
    readonly rule: R;
    readonly action: CourseAction;
    /** Only of a stop. */
    readonly urgency?: Urgency;
    readonly source: CourseSource;
    readonly figures: CourseFigures[R];
  };
}[CourseRule];

export type Reminder = { readonly [R in CourseReminder]: { readonly reminder: R; readonly figures: CourseReminders[R] } }[CourseReminder];

/** What a case suggests after its last visit. */
export interface NextSteps {
  /** Every rule that applies in the order of its weight: the first leads, the rest are notes. Empty for a case without visits. */
  readonly steps: readonly Step[];
  /** What was not asked, and what to bear in mind. */
  readonly reminders: readonly Reminder[];
  /** Of the motion that the device in use serves, since it was made; null before there are readings on two days. */
  readonly slope: Slope | null;
}

/**
 * What the visits of a case suggest; the clinician decides. The order in which visits stand in the file does not matter, only their days.
 * @param nextBlocks what the plan would try after the strip in use
 */
export function nextSteps(record: Case, nextBlocks: readonly NextArrangement[] = []): NextSteps {
  const course = courseOf(record, USUAL_GOAL, undefined, nextBlocks);
  if (course === null) return { steps: [], reminders: [], slope: null };
  const steps: Step[] = [];
  for (const entry of COURSE_RULES) {
    const figures = entry.test(course, steps.length > 0);
    if (figures === null) continue;
    const { rule, source, urgency } = entry;
    // Weaning for the second time in vain is for whoever sent the patient.
    const action = rule === 'RELAPSE' && (figures as CourseFigures['RELAPSE']).again ? 'refer' : entry.action;
    steps.push(ownSource({ rule, action, ...(urgency && { urgency }), source, figures } as Step));
  }
  return { steps, reminders: remindersOf(course, steps), slope: servedSlope(course) };
}

/** A pause that rests on no motion owes nothing to the measuring error, nor does a stop without signs of CRPS to what is known of them. */
function ownSource(step: Step): Step {
  const owes =
    step.rule === 'PAUSE'
      ? step.figures.causes.some(({ cause }) => cause === 'motion' || cause === 'bothMotions')
      : step.rule !== 'STOP_RING' || step.figures.signs.some(({ sign }) => sign === 'crps');
  return owes ? step : { ...step, source: 'noSource' };
}

/**
 * One reading that is good by chance makes an honest one look like a loss at the next visit, so such a reading is taken again: the first with a
 * device, and one that is two standard deviations better than at the visit before, unless a gain is sure. A pause asks for it itself.
 */
function measureAgain(course: Course, steps: readonly Step[]): CourseReminders['MEASURE_AGAIN'] | null {
  const { last, before, lastIndex, device } = course;
  if (last.noted.repeated === true || pause(course)?.measureAgain) return null;
  if (device.start === lastIndex) return { why: 'making' };
  if (steps.some(({ rule }) => rule === 'GAINING')) return null;
  const better = 2 * SIGMA[ratersOf([before ?? undefined, last])];
  const [most] = MOTIONS.map((motion) => lossOf(course, motion, lastIndex - 1, 'lastVisit')).toSorted((a, b) => a.lost - b.lost);
  return most !== undefined && -most.lost >= better ? { why: 'better', gain: most } : null;
}

function remindersOf(course: Course, steps: readonly Step[]): readonly Reminder[] {
  const { last, before, device, lastIndex, justMade, weaning } = course;
  const reminders: Reminder[] = [];
  // Where pain was asked and is little, the signs of CRPS are not asked for.
  const isHurt = last.noted.pain === null || last.noted.pain >= CRPS_PAIN;
  const missing = HARM_KEYS.filter((key) => last.noted[key] === null && (key !== 'crpsSigns' || isHurt));
  if (missing.length > 0) reminders.push({ reminder: 'HARM_NOT_NOTED', figures: { missing } });
  const off = leftOff(course, lastIndex);
  // Under a stop nothing is said of beginning again after a pause.
  if (off !== null && before !== null && !(off === 'pause' && steps[0]?.action === 'stop'))
    reminders.push({ reminder: off === 'stop' ? 'AFTER_STOP' : 'AFTER_PAUSE', figures: { on: before.date } });
  const again = measureAgain(course, steps);
  if (again !== null) reminders.push({ reminder: 'MEASURE_AGAIN', figures: again });
  if (device.made === null) reminders.push({ reminder: 'DEVICE_NOT_NOTED', figures: {} });
  if (device.made !== null && !justMade && !weaning && last.noted.wear === null)
    reminders.push({ reminder: 'WEAR_NOT_NOTED', figures: {} });
  if (device.made?.kind === 'plate' && last.goniometry.mp.passive === undefined)
    reminders.push({ reminder: 'MP_NOT_MEASURED', figures: {} });
  return reminders;
}
