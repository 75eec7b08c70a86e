import { type Field, type Range, TARGET_FIELDS } from './fields.ts';

/** The joints of a finger, from the hand outwards. */
export const JOINTS = ['mp', 'pip', 'dip'] as const;
export type Joint = (typeof JOINTS)[number];

export const JOINT_NAMES: Readonly<Record<Joint, string>> = { mp: 'MP', pip: 'PIP', dip: 'DIP' };

/** What is read on a joint, active or passive. A joint has a deficit or goes beyond straight, never both. */
export const MOTION_KEYS = ['extensionDeficit', 'hyperextension', 'flexion'] as const;
export type MotionKey = (typeof MOTION_KEYS)[number];

/** The target's own field: PIP deficits have one range in the whole program. */
const PIP_DEFICIT = TARGET_FIELDS.pipExtensionDeficit;
const { spread } = PIP_DEFICIT;

const HOW: Readonly<Record<MotionKey, string>> = {
  extensionDeficit: 'Goniometer on the back of the joint, straightened as far as it goes: degrees short of straight.',
  hyperextension: 'Goniometer on the back of the joint: degrees that it goes beyond straight.',
  flexion: 'Goniometer on the back of the joint, bent as far as it goes: degrees from straight.',
};
const LABELS: Readonly<Record<MotionKey, string>> = {
  extensionDeficit: 'extension deficit',
  hyperextension: 'hyperextension',
  flexion: 'flexion',
};

const AAOS = 'AAOS-type tables: MP 0 to 90, PIP 0 to 100';
const TAM = 'worked cases of total active motion in teaching material: normal flexion MP 85, PIP 110, DIP 65';
const MEMORY = 'from memory, wide enough for a lax or a stiff joint';

function field(joint: Joint, key: MotionKey, refuse: Range, typical: Range, source: string): Field {
  const label = `${JOINT_NAMES[joint]} ${LABELS[key]}`;
  return { id: `${joint}.${key}`, label, unit: 'degrees', howToMeasure: HOW[key], refuse, typical, spread, source };
}

/**
 * What may be read on each joint, degrees. Outside `refuse` a value is refused, outside `typical` it is read with a warning.
 * The PIP joint's deficit has the range of the hand file's target.
 */
export const GONIOMETRY_FIELDS: Readonly<Record<Joint, Readonly<Record<MotionKey, Field>>>> = {
  mp: {
    extensionDeficit: field('mp', 'extensionDeficit', { from: 0, to: 90 }, { from: 0, to: 60 }, `${AAOS}; ${MEMORY}`),
    hyperextension: field('mp', 'hyperextension', { from: 0, to: 60 }, { from: 0, to: 45 }, MEMORY),
    flexion: field('mp', 'flexion', { from: 0, to: 120 }, { from: 0, to: 100 }, `${AAOS}; ${MEMORY}`),
  },
  pip: {
    extensionDeficit: field('pip', 'extensionDeficit', PIP_DEFICIT.refuse, PIP_DEFICIT.typical, PIP_DEFICIT.source),
    hyperextension: field('pip', 'hyperextension', { from: 0, to: 45 }, { from: 0, to: 25 }, MEMORY),
    flexion: field('pip', 'flexion', { from: 0, to: 130 }, { from: 0, to: 115 }, `${AAOS}; ${TAM}; ${MEMORY}`),
  },
  dip: {
    extensionDeficit: field('dip', 'extensionDeficit', { from: 0, to: 90 }, { from: 0, to: 60 }, `${TAM}; ${MEMORY}`),
    hyperextension: field('dip', 'hyperextension', { from: 0, to: 45 }, { from: 0, to: 25 }, MEMORY),
    flexion: field('dip', 'flexion', { from: 0, to: 110 }, { from: 0, to: 90 }, `${TAM}; ${MEMORY}`),
  },
};

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
