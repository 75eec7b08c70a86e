import { blockProblems } from '../block/block.ts';
import { type ReadMeasures, readMeasures } from '../hand/read-measures.ts';
import { CRPS_SIGNS } from '../hand/signs.ts';
import { GONIOMETRY_FIELDS, JOINT_NAMES, JOINTS, type Joint, MOTION_KEYS } from '../hand/target-motion.ts';
import { NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { getOwn } from '../units/json-text.ts';
import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import type { JointMotion, Made, Motion, Visit } from './case.ts';
import { caseProblems, commentProblem, knownKeys } from './case-problems.ts';
import { type MadeFile, type VisitFile, visitSchema } from './case-schema.ts';
import { flatVisit } from './migrate.ts';

/** What the form says of a motion and of the two kinds of it. */
type MotionFile = VisitFile['goniometry']['pip']['active'];

/**
 * A visit from parsed JSON, as in a visit file, of this version or the first. Same problems and warnings as the visits of `readCase`, all at once.
 * @param source name of the file, set before each message
 */
export function readVisit(given: unknown, source?: string): Result<{ readonly visit: Visit; readonly file: VisitFile }> {
  const json = flatVisit(given);
  const form = visitSchema.safeParse(json);
  const prefix = source === undefined ? '' : `${source}: `;
  const told = (problems: readonly Problem[]) => problems.map((p) => ({ ...p, message: `${prefix}${p.message}` }));
  const known = (path: readonly PropertyKey[]) => knownKeys(visitSchema, path);
  if (!form.success) return failure(...told([...caseProblems(form.error.issues, json, known), ...measureProblems(json, '')]));
  const visit = checkVisit(form.data, '');
  return visit.ok ? success({ visit: visit.value, file: form.data }, visit.warnings) : failure(...told(visit.problems));
}

/**
 * The values of a visit that is right in form. Problems: `MOTION_AMBIGUOUS` (neither or both of deficit and hyperextension),
 * `MOTION_IMPOSSIBLE` (bent less than straightened), `COMMENT_TELLS_WHO`, those of a block, and those of the hand's measurements.
 * Warnings: `VALUE_UNUSUAL`, `PASSIVE_BELOW_ACTIVE`, and those of the measurements.
 * @param where path of the visit, e.g. `visits.2`; empty for a visit file
 */
export function checkVisit(file: VisitFile, where: string): Result<Visit> {
  const at = (path: string) => (where === '' ? path : `${where}.${path}`);
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  const motion = (given: MotionFile | undefined, joint: Joint, path: string): Motion | undefined => {
    if (given === undefined) return undefined;
    const read = readMotion(given, joint, at(path));
    if (read.ok) warnings.push(...read.warnings);
    else problems.push(...read.problems);
    return read.ok ? read.value : undefined;
  };
  const jointMotion = (joint: Joint): JointMotion => {
    const given = file.goniometry[joint];
    const active = motion(given?.active, joint, `goniometry.${joint}.active`);
    const passive = motion(given?.passive, joint, `goniometry.${joint}.passive`);
    warnings.push(...passiveWarnings(active, passive, joint, at(`goniometry.${joint}`)));
    return { ...(active && { active }), ...(passive && { passive }) };
  };
  const [mp, { active, passive }, dip] = [jointMotion('mp'), jointMotion('pip'), jointMotion('dip')];
  const otherHand: Partial<Record<Joint, Motion>> = {};
  for (const joint of JOINTS) {
    const other = motion(file.otherHand?.[joint], joint, `otherHand.${joint}`);
    if (other) otherHand[joint] = other;
  }
  const pencil = file.pencil && {
    without: motion(file.pencil.without, 'pip', 'pencil.without') ?? null,
    with: motion(file.pencil.with, 'pip', 'pencil.with') ?? null,
  };
  const measures = readVisitMeasures(file, where);
  problems.push(...measures.problems, ...madeProblems(file.made, at('made')), ...commentProblem(file.comment, at('comment')));
  warnings.push(...measures.warnings);
  if (active === undefined || problems.length > 0) return failure(...problems);
  const visit: Visit = {
    date: file.date,
    goniometry: { mp, pip: { active, ...(passive && { passive }) }, dip },
    otherHand,
    measures: { digits: measures.digits, palm: measures.palm },
    made: file.made === undefined ? null : made(file.made),
    noted: {
      pain: file.pain ?? null,
      skin: file.skin ?? null,
      sensation: file.sensation ?? null,
      colour: file.colour ?? null,
      infection: file.infection ?? null,
      deformity: file.deformity ?? null,
      crpsSigns: file.crpsSigns === undefined ? null : CRPS_SIGNS.filter((sign) => file.crpsSigns?.includes(sign)),
      fits: file.fits ?? null,
      redirects: file.redirects ?? null,
      wear: file.wear ?? null,
      wearAgreed: file.wearAgreed ?? null,
      rater: file.rater ?? null,
      repeated: file.repeated ?? null,
      measuredDifferential: file.measuredDifferential ?? null,
      freePip: file.freePip ?? null,
      pencil: pencil ?? null,
      closedAt: file.closedAt ?? null,
      weaning: file.weaning ?? null,
      goal: file.goal ?? null,
      comment: file.comment ?? null,
    },
  };
  return success(visit, warnings);
}

/** A motion that is right in form as a signed deficit; see `checkVisit` for its problems. */
function readMotion(given: MotionFile, joint: Joint, where: string): Result<Motion> {
  const { extensionDeficit, hyperextension, flexion } = given;
  const problem = (code: string, message: string) => failure<Motion>({ code, where, message: `${where}: ${message}`, kind: 'input' });
  if (extensionDeficit !== undefined && hyperextension !== undefined) {
    return problem(
      'MOTION_AMBIGUOUS',
      'has both an extension deficit and hyperextension; a joint is short of straight or beyond it. Give one.',
    );
  }
  if (extensionDeficit === undefined && hyperextension === undefined) {
    return problem('MOTION_AMBIGUOUS', 'has no extension; give "extensionDeficit" (0 for straight), or "hyperextension".');
  }
  const motion = { extensionDeficit: extensionDeficit ?? (-(hyperextension ?? 0) || 0), flexion };
  if (flexion < motion.extensionDeficit) {
    const message = `flexion ${plain(flexion)} is less than the extension deficit ${plain(motion.extensionDeficit)}: it would bend less than it straightens. Both count from straight.`;
    return problem('MOTION_IMPOSSIBLE', message);
  }
  return success(motion, unusual(given, joint, where));
}

function unusual(given: MotionFile, joint: Joint, where: string): Warning[] {
  return MOTION_KEYS.flatMap((key): Warning[] => {
    const value = given[key];
    const { typical, label, howToMeasure } = GONIOMETRY_FIELDS[joint][key];
    if (value === undefined || (value >= typical.from && value <= typical.to)) return [];
    const limit = value < typical.from ? typical.from : typical.to;
    const message = `${where}.${key}: ${label} ${plain(value)} degrees is unusual; ${typical.from} to ${typical.to} is plausible`;
    return [
      { code: 'VALUE_UNUSUAL', message, where: `${where}.${key}`, value, limit, next: `Measure again; go on if it is so. ${howToMeasure}` },
    ];
  });
}

/** Degrees by which passive motion may be read short of active before one of them is taken for a slip. Common practice, no source. */
const PASSIVE_SHORT = 5;

/** Passive motion goes at least as far as active. */
function passiveWarnings(active: Motion | undefined, passive: Motion | undefined, joint: Joint, where: string): Warning[] {
  if (!active || !passive) return [];
  const short = Math.max(active.flexion - passive.flexion, passive.extensionDeficit - active.extensionDeficit);
  if (short <= PASSIVE_SHORT) return [];
  const message = `${where}: passive ${JOINT_NAMES[joint]} motion is ${plain(short)} degrees less than active; it should go at least as far`;
  return [{ code: 'PASSIVE_BELOW_ACTIVE', message, where, value: short, limit: PASSIVE_SHORT, next: 'Look whether the two were swapped.' }];
}

/** The measurements of a visit by the hand module's reader, with the visit's path set before theirs. */
function readVisitMeasures(file: Pick<VisitFile, 'measures'>, where: string): ReadMeasures {
  const read = readMeasures(file.measures ?? {}, file.measures?.units ?? null);
  const path = where === '' ? 'measures' : `${where}.measures`;
  const moved = <T extends { readonly message: string; readonly where?: string }>(told: T): T => ({
    ...told,
    where: `${path}.${told.where ?? ''}`,
    message: `${path}.${told.message}`,
  });
  return { ...read, problems: read.problems.map(moved), warnings: read.warnings.map(moved) };
}

/** Problems of the measurements of a visit that is wrong in form elsewhere, so that they need not wait for the next run. */
export function measureProblems(visit: unknown, where: string): readonly Problem[] {
  const measures = getOwn(visit, 'measures');
  const units = getOwn(measures, 'units');
  if (units !== 'mm' && units !== 'cm' && units !== 'in') return [];
  const file = { measures: measures as { readonly units: LengthUnit } };
  return readVisitMeasures(file, where).problems;
}

function madeProblems(given: MadeFile | undefined, where: string): readonly Problem[] {
  if (given?.kind !== 'strip') return [];
  const block = { id: given.block.id, title: given.block.id, places: placesOf(given) };
  const rules = blockProblems(block).map((p): Problem => ({ ...p, where, message: `${where}: ${p.message}`, kind: 'input' }));
  return [...rules, ...differentialProblems(getOwn(given.options, 'differential'), `${where}.options.differential`)];
}

/** The one option that is computed with later; a number that no strip can have is a slip or damage. */
function differentialProblems(value: unknown, where: string): readonly Problem[] {
  const range = NUMBER_OPTIONS.find(({ key }) => key === 'differential');
  if (typeof value !== 'number' || !range || (value >= range.low && value <= range.high)) return [];
  const message = `${where}: ${quote(value)} is out of range; ${range.low} to ${range.high} degrees is allowed.`;
  return [{ code: 'FIELD_OUT_OF_RANGE', where, message, kind: 'input' }];
}

function made(file: MadeFile): Made {
  const { geometryVersion, flatLength = null } = file;
  if (file.kind === 'plate') return { kind: 'plate', faces: file.faces, mpAngle: file.mpAngle, geometryVersion, flatLength };
  const differential = getOwn(file.options, 'differential');
  return {
    kind: 'strip',
    block: { id: file.block.id, places: placesOf(file) },
    differential: typeof differential === 'number' ? differential : null,
    geometryVersion,
    flatLength,
  };
}

function placesOf({ block }: Extract<MadeFile, { kind: 'strip' }>) {
  return Object.fromEntries(Object.entries(block.places).filter(([, place]) => place !== undefined));
}
