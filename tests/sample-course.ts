import type { Joint } from '../src/hand/target-motion.ts';
import type { Case } from '../src/record/case.ts';
import { parseMotion } from '../src/record/motion-text.ts';
import { addDays } from '../src/units/day.ts';
import { caseOf, fileOf } from './sample-case.ts';

/** What a visit of a written course may say besides its day and active PIP motion; motion as it is typed, "25/85". */
export interface CourseNotes {
  readonly passive?: string;
  readonly mpPassive?: string;
  readonly other?: string;
  /** "strip for extension, 20", "strip for flexion, 20", "plate at 60". */
  readonly made?: string;
  /** mm, of the treated finger. */
  readonly girth?: number;
  readonly pipGirth?: number;
  readonly [noted: string]: unknown;
}

export type CourseVisit = readonly [day: number, pip: string, notes?: CourseNotes];

const FIRST_DAY = '2026-01-05';

function motion(text: string, joint: Joint): unknown {
  const read = parseMotion(text, joint);
  if (!read.ok) throw new Error(`${text}: ${read.reason}`);
  return read.motion;
}

function made(text: string): unknown {
  const strip = /^strip for (extension|flexion), (\d+)$/.exec(text);
  if (strip) {
    const ring = strip[1] === 'extension' ? 'lowered' : 'raised';
    const block = { id: `ring-${ring}-in-three`, places: { long: 'enclosed', ring, little: 'enclosed' } };
    return { kind: 'strip', block, options: { differential: Number(strip[2]) }, geometryVersion: '1', flatLength: 160 };
  }
  const plate = /^plate at (\d+)$/.exec(text);
  if (!plate) throw new Error(`"${text}" is neither a strip nor a plate`);
  return { kind: 'plate', faces: 'dorsal', mpAngle: Number(plate[1]), options: {}, geometryVersion: '1' };
}

/** A visit file; `day` counts from the first day of the course, 5 January 2026. */
export function courseVisit([day, pip, notes = {}]: CourseVisit): Record<string, unknown> {
  const { passive, mpPassive, other, made: device, girth, pipGirth, ...noted } = notes;
  const girths = {
    ...(girth === undefined ? {} : { circumference: girth }),
    ...(pipGirth === undefined ? {} : { pipCircumference: pipGirth }),
  };
  return {
    date: addDays(FIRST_DAY, day),
    goniometry: {
      pip: { active: motion(pip, 'pip'), ...(passive === undefined ? {} : { passive: motion(passive, 'pip') }) },
      ...(mpPassive === undefined ? {} : { mp: { passive: motion(mpPassive, 'mp') } }),
    },
    ...(other === undefined ? {} : { otherHand: { pip: motion(other, 'pip') } }),
    ...(device === undefined ? {} : { made: made(device) }),
    ...(Object.keys(girths).length === 0 ? {} : { measures: { units: 'mm', digits: { ring: girths } } }),
    ...noted,
  };
}

type Rest = Readonly<Record<string, unknown>>;

export const courseFile = (visits: readonly CourseVisit[], rest: Rest = {}) => fileOf(visits.map(courseVisit), rest);
/** The case of an invented course of a ring finger. Throws with its problems when it makes none. */
export const sampleCourse = (visits: readonly CourseVisit[], rest: Rest = {}): Case => caseOf(courseFile(visits, rest));
