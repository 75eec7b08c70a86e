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
