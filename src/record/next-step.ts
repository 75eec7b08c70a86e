import { plain } from '../units/number.ts';
import type { Case, Made } from './case.ts';
import { type CircumferenceChange, circumferenceChanges } from './circumference-change.ts';
import {
  ANGLE_STEP,
  COURSE_RULES,
  type CourseRule,
  DIFFERENTIAL_RANGE,
  MP_RANGE,
  STALLED_VISITS,
  SWELLING_CHANGE,
} from './course-rules.ts';
import { MEASURING_ERROR } from './goniometry-fields.ts';
import { type Lacking, MOTIONS, nothingMoved, type PipChange, pipChange, servedMotion, wornLast } from './progress.ts';

export type NextAction = 'keep' | 'change' | 'remeasure' | 'refer' | 'wait';

/** One thing to do, with the rule that says so. */
export interface NextStep {
  readonly action: NextAction;
  readonly rule: CourseRule;
  readonly ruleSays: string;
  readonly source: string;
  /** What it means here, with the figures. */
  readonly message: string;
  /** For a change: which angle, from what, and the range to try, degrees. */
  readonly change?: AngleChange;
}

export interface AngleChange {
  readonly what: 'differential' | 'mpAngle';
  readonly toward: Lacking;
  readonly from: number;
  readonly to: readonly [low: number, high: number];
}

export interface NextSteps {
  /** Active PIP motion from the visit before to the last one; null with fewer than two visits. */
  readonly pip: PipChange | null;
  readonly between: readonly [string, string] | null;
  /** In order of weight. Never empty. */
  readonly steps: readonly NextStep[];
  /** Circumferences measured at the last visit and before. */
  readonly circumferences: readonly CircumferenceChange[];
}

/**
 * What the last visits suggest; a starting point, the clinician decides. Swelling and a stall come first, and while either stands no
 * angle is changed: a block that no longer fits, or that has done nothing for three visits, tells nothing about its angle.
 */
export function nextSteps(record: Case): NextSteps {
  const circumferences = circumferenceChanges(record);
  const [before, last] = record.visits.slice(-2);
  const swelling = swellingSteps(circumferences);
  if (before === undefined || last === undefined) {
    const wait = step(
      'wait',
      'TOO_FEW_VISITS',
      `There ${record.visits.length === 1 ? 'is one visit' : 'is no visit'}; see the person again.`,
    );
    return { pip: null, between: null, steps: [...swelling, wait], circumferences };
  }
  const pip = pipChange(record, before, last);
  const first = [...swelling, ...stallSteps(record, pip)];
  return { pip, between: [before.date, last.date], steps: first.length > 0 ? first : [angleStep(record, pip)], circumferences };
}

function swellingSteps(changes: readonly CircumferenceChange[]): readonly NextStep[] {
  const moved = changes.filter(({ before, after }) => Math.abs(after - before) >= SWELLING_CHANGE);
  if (moved.length === 0) return [];
  const figures = moved.map(({ label, before, after, measured }) => {
    const since = measured[0] === 'opening' ? 'the opening of the case' : measured[0];
    return `${label} ${plain(before)} to ${plain(after)} mm since ${since}`;
  });
  return [step('remeasure', 'REMEASURE_SWELLING', `${figures.join('; ')}. Measure the whole hand again and make the next one from that.`)];
}

function stallSteps(record: Case, pip: PipChange): readonly NextStep[] {
  const run = record.visits.slice(-STALLED_VISITS);
  const lacks = MOTIONS.some((motion) => pip[motion].deficit >= MEASURING_ERROR);
  if (run.length < STALLED_VISITS || !lacks || !nothingMoved(run)) return [];
  const dates = `${run[0]?.date} to ${run.at(-1)?.date}`;
  return [step('refer', 'REFER_NO_CHANGE', `No PIP motion changed by ${MEASURING_ERROR} degrees in ${STALLED_VISITS} visits, ${dates}.`)];
}

function angleStep(record: Case, pip: PipChange): NextStep {
  const made = wornLast(record);
  const toward = lagging(record, made, pip);
  if (toward === null) return step('keep', 'KEEP', keepMessage(pip));
  const why = lagMessage(pip, toward);
  if (made === null) return step('change', 'CHANGE_ANGLE', `${why} What was made is not noted, so the angle to start from is not known.`);
  const from = made.kind === 'plate' ? made.mpAngle : made.differential;
  if (from === null) return step('change', 'CHANGE_ANGLE', `${why} The differential of the strip is not noted.`);
  const what = made.kind === 'plate' ? 'mpAngle' : 'differential';
  const sign = angleSign(record, made, toward);
  const range = made.kind === 'plate' ? MP_RANGE : DIFFERENTIAL_RANGE;
  const name = made.kind === 'plate' ? 'MP angle' : 'differential';
  const nearer = from + sign * ANGLE_STEP.from;
  if (nearer < range.from || nearer > range.to) {
    const rule = made.kind === 'plate' ? 'MP_LIMIT' : 'ANGLE_LIMIT';
    const message = `${why} The ${name} is ${plain(from)} degrees and cannot go ${ANGLE_STEP.from} further within ${range.from} to ${range.to}: choose again with knucklewright plan, or refer.`;
    return step('refer', rule, message);
  }
  const further = Math.min(range.to, Math.max(range.from, from + sign * ANGLE_STEP.to));
  const to: readonly [number, number] = [Math.min(nearer, further), Math.max(nearer, further)];
  const angles = to[0] === to[1] ? plain(to[0]) : `${plain(to[0])} to ${plain(to[1])}`;
  const message = `${why} Change the ${name} from ${plain(from)} to ${angles} degrees, toward PIP ${toward}.`;
  return { ...step('change', 'CHANGE_ANGLE', message), change: { what, toward, from, to } };
}

/**
 * The motion to change the angle for, or null. A strip has one motion to serve: that one when it lacks and does not gain, and the other
 * only when it got worse. A plate serves both: the one that lacks more and does not gain; of equals extension, the weaker motion.
 */
function lagging(record: Case, made: Made | null, pip: PipChange): Lacking | null {
  const lags = (motion: Lacking) => pip[motion].deficit >= MEASURING_ERROR && pip[motion].reading !== 'gained';
  const served = made?.kind === 'strip' ? servedMotion(made, record.digit) : null;
  if (served !== null) {
    const other = served === 'flexion' ? 'extension' : 'flexion';
    if (pip[other].reading === 'lost' && lags(other)) return other;
    return lags(served) ? served : null;
  }
  const behind = MOTIONS.filter(lags);
  if (behind.length === 2) return pip.flexion.deficit > pip.extension.deficit ? 'flexion' : 'extension';
  return behind[0] ?? null;
}

/** More differential does more for the motion that a strip serves; more MP flexion in a plate makes PIP extension easier. */
function angleSign(record: Case, made: Made, toward: Lacking): 1 | -1 {
  if (made.kind === 'plate') return toward === 'extension' ? 1 : -1;
  const served = servedMotion(made, record.digit);
  return served === null || served === toward ? 1 : -1;
}

function keepMessage(pip: PipChange): string {
  const gained = MOTIONS.filter((motion) => pip[motion].reading === 'gained');
  if (gained.length > 0)
    return `PIP ${gained.map((motion) => `${motion} gained ${plain(pip[motion].gain)} degrees`).join(' and ')}. Keep it as it is.`;
  return 'The motion it was made for lacks less than the measuring error. Keep it as it is, and wear it as judged.';
}

function lagMessage(pip: PipChange, motion: Lacking): string {
  const { gain, reading, deficit } = pip[motion];
  const change = reading === 'lost' ? `lost ${plain(-gain)} degrees` : 'did not change by more than the measuring error';
  return `PIP ${motion} ${change} and still lacks ${plain(deficit)}.`;
}

function step(action: NextAction, rule: CourseRule, message: string): NextStep {
  const { says, source } = COURSE_RULES[rule];
  return { action, rule, ruleSays: says, source, message };
}
