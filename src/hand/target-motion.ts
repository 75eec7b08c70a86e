import type { Field } from './fields.ts';
import { GONIOMETRY_FIELDS, type Joint, MOTION_KEYS, type MotionKey } from './goniometry-fields.ts';

/** A joint's motion as it was read, degrees; what was not read is absent. Short of straight or beyond it, never both. */
export type JointReading = Readonly<Partial<Record<MotionKey, number>>>;

/** What may be read of the treated finger, and of the same finger of the other hand, besides the PIP deficits. */
export const TARGET_MOTIONS = ['mpActive', 'mpPassive', 'pipActive', 'pipPassive', 'otherHandPip'] as const;
export type TargetMotion = (typeof TARGET_MOTIONS)[number];

export const TARGET_MOTION_MEANINGS: Readonly<Record<TargetMotion, string>> = {
  mpActive: 'MP joint of the treated finger, moved by the person.',
  mpPassive: 'MP joint of the treated finger, moved by the examiner: a plate stays inside this range.',
  pipActive: 'PIP joint of the treated finger, moved by the person; stands in for the two active deficits where they are left out.',
  pipPassive: 'PIP joint of the treated finger, moved by the examiner; stands in for the two passive deficits where they are left out.',
  otherHandPip: 'PIP joint of the same finger of the other hand, moved by the person: what flexion and hyperextension are compared with.',
};

const JOINT_OF: Readonly<Record<TargetMotion, Joint>> = {
  mpActive: 'mp',
  mpPassive: 'mp',
  pipActive: 'pip',
  pipPassive: 'pip',
  otherHandPip: 'pip',
};

/** Ranges and how to measure, degrees. */
export function targetMotionFields(motion: TargetMotion): Readonly<Record<MotionKey, Field>> {
  return GONIOMETRY_FIELDS[JOINT_OF[motion]];
}

/** Every place of a hand file's target that holds such an angle. */
export function targetMotionPaths(): readonly { readonly motion: TargetMotion; readonly key: MotionKey; readonly field: Field }[] {
  return TARGET_MOTIONS.flatMap((motion) => MOTION_KEYS.map((key) => ({ motion, key, field: targetMotionFields(motion)[key] })));
}

/** Flexion of a PIP joint when nothing of the other hand is known: AAOS-type tables. degrees */
export const PIP_FLEXION_NORM = 100;

/** Degrees short of straight; 0 where it goes beyond, undefined where neither was read. */
export function shortOfStraight(reading: JointReading | undefined): number | undefined {
  return reading?.extensionDeficit ?? (reading?.hyperextension === undefined ? undefined : 0);
}

/** Degrees short of the flexion that is expected, never negative; undefined where flexion was not read. */
export function shortOfFlexion(reading: JointReading | undefined, expected: number): number | undefined {
  return reading?.flexion === undefined ? undefined : Math.max(0, expected - reading.flexion);
}
