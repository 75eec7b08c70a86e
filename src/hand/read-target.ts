import { getOwn } from '../units/json-text.ts';
import { plain } from '../units/number.ts';
import type { Problem, Warning } from '../units/result.ts';
import { TARGET_FIELDS } from './fields.ts';
import type { Target } from './hand.ts';
import type { HandFile } from './hand-schema.ts';
import type { ReadMeasures } from './read-measures.ts';
import { PIP_FLEXION_NORM, shortOfFlexion, shortOfStraight, TARGET_MOTIONS } from './target-motion.ts';

/** Two ways of saying one motion may lie apart by what one reading is rounded to: goniometers are read by fives. degrees */
const ROUNDED_TO = 5;

/** The four PIP deficits as they follow from the motion that was read, degrees; what was not read is absent. */
function fromMotion({ motions }: Pick<ReadMeasures, 'motions'>): ReadMeasures['target'] {
  const { pipActive, pipPassive } = motions;
  const { degrees } = flexionExpected({ motions });
  const found = {
    pipExtensionDeficit: shortOfStraight(pipActive),
    pipFlexionDeficit: shortOfFlexion(pipActive, degrees),
    pipExtensionDeficitPassive: shortOfStraight(pipPassive),
    pipFlexionDeficitPassive: shortOfFlexion(pipPassive, degrees),
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}

/** The flexion that the finger is held against: the other hand's where it is known. */
function flexionExpected({ motions }: Pick<ReadMeasures, 'motions'>): NonNullable<Target['flexionExpected']> {
  const other = motions.otherHandPip?.flexion;
  return other === undefined ? { degrees: PIP_FLEXION_NORM, from: 'norm' } : { degrees: other, from: 'otherHand' };
}

/** The target of a file that is right in form; null where it names none, or not what its PIP joint lacks. A deficit that is named goes before one that follows from the motion. */
export function readTarget(file: HandFile, measures: Pick<ReadMeasures, 'target' | 'motions'>): Target | null {
  if (file.target === undefined) return null;
  const { pipExtensionDeficit, pipFlexionDeficit, ...passive } = { ...fromMotion(measures), ...measures.target };
  if (pipExtensionDeficit === undefined || pipFlexionDeficit === undefined) return null;
  const { digit, readings, diagnosis, weeks, boutonniere, centralSlip, stopSigns, surgeonAgrees } = file.target;
  const follows = measures.target.pipFlexionDeficit === undefined;
  return {
    digit,
    pipExtensionDeficit,
    pipFlexionDeficit,
    ...passive,
    ...measures.motions,
    ...(follows ? { flexionExpected: flexionExpected(measures) } : {}),
    ...(readings === undefined ? {} : { readings: { ...readings } }),
    ...(diagnosis === undefined ? {} : { diagnosis }),
    ...(weeks === undefined ? {} : { weeks }),
    ...(boutonniere === undefined ? {} : { boutonniere }),
    ...(centralSlip === undefined ? {} : { centralSlip }),
    ...(stopSigns === undefined ? {} : { stopSigns: [...new Set(stopSigns)] }),
    ...(surgeonAgrees === undefined ? {} : { surgeonAgrees }),
  };
}

/** Whether a joint's angle is there and not 0; what is no angle at all is told where it is read. */
function isSet(value: unknown): boolean {
  return typeof value === 'number' ? value !== 0 : typeof value === 'string' && Number.parseFloat(value.replace(',', '.')) !== 0;
}

/** `FIELD_MISSING` for a deficit that neither stands there nor follows; `MOTION_CONTRADICTS` for a joint both short of straight and beyond it. */
export function targetProblems(json: unknown): Problem[] {
  const target = getOwn(json, 'target');
  if (typeof target !== 'object' || target === null || Array.isArray(target)) return [];
  const has = (...path: readonly string[]) => path.reduce<unknown>(getOwn, target) !== undefined;
  const missing = [
    { id: 'pipExtensionDeficit', follows: has('pipActive', 'extensionDeficit') || has('pipActive', 'hyperextension') },
    { id: 'pipFlexionDeficit', follows: has('pipActive', 'flexion') },
  ] as const;
  const problems = missing.flatMap(({ id, follows }): Problem[] => {
    if (follows || has(id)) return [];
    const message = `target.${id}: missing; expected a number of degrees. ${TARGET_FIELDS[id].howToMeasure}`;
    return [{ code: 'FIELD_MISSING', where: `target.${id}`, message, kind: 'input' }];
  });
  for (const motion of TARGET_MOTIONS) {
    const beyond = getOwn(getOwn(target, motion), 'hyperextension');
    const short = getOwn(getOwn(target, motion), 'extensionDeficit');
    if (!isSet(beyond) || !isSet(short)) continue;
    const message = `target.${motion}: the joint stays short of straight or goes beyond it, not both. Give one of extensionDeficit and hyperextension.`;
    problems.push({ code: 'MOTION_CONTRADICTS', where: `target.${motion}`, message, kind: 'input' });
  }
  return problems;
}

/** `MOTION_DIFFERS` where a deficit that is named is not the one that follows from the motion. */
export function targetWarnings(measures: Pick<ReadMeasures, 'target' | 'motions'>): Warning[] {
  const follows = fromMotion(measures);
  return Object.values(TARGET_FIELDS).flatMap(({ id, label }): Warning[] => {
    const named = measures.target[id];
    const other = follows[id];
    if (named === undefined || other === undefined || Math.abs(named - other) <= ROUNDED_TO) return [];
    const where = `target.${id}`;
    const message = `${where}: the ${label} is given as ${plain(named)} degrees, but the motion that was read leaves ${plain(other)}; the ${plain(named)} counts`;
    return [{ code: 'MOTION_DIFFERS', message, where, value: named, limit: other, next: 'Check both; take one of them out.' }];
  });
}
