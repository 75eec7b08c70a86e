import * as z from 'zod';
import { PLACES } from '../block/block.ts';
import { LONGEST_CODE } from '../hand/case-code.ts';
import { DIGITS, SIDES } from '../hand/digits.ts';
import { digitSchema, handSchema } from '../hand/hand-schema.ts';
import { CHANGE_STATES, CRPS_SIGNS, SKIN_STATES } from '../hand/signs.ts';
import { GONIOMETRY_FIELDS, JOINT_NAMES, type Joint, type MotionKey } from '../hand/target-motion.ts';

export const CASE_VERSION = 2;
export const CASE_SCHEMA_ID = `knucklewright/case@${CASE_VERSION}` as const;

/** More visits than one course of treatment has; with the longest comments the file stays under the size that is read. */
export const MOST_VISITS = 400;
/** mm; no flat pattern of a strip or a plate is longer. */
export const LONGEST_FLAT = 600;
const HOURS_A_DAY = 24;
const MOST_PAIN = 10;
const MOST_DIFFERENTIAL = 60;
const MOST_PIP_FLEXION = 130;
/** mm; the trim mark stands within the overlap. */
const FARTHEST_TRIM = 50;
const MOST_GOAL = 60;

const FIRST_DATE = '2000-01-01';
const LAST_DATE = '2099-12-31';

const dateSchema = z.iso
  .date({ abort: true })
  .refine((date) => date >= FIRST_DATE && date <= LAST_DATE)
  .describe('Day of the visit, as 2026-03-31.');

function angle(joint: Joint, key: MotionKey) {
  const { howToMeasure, refuse, label } = GONIOMETRY_FIELDS[joint][key];
  return z.number().min(refuse.from).max(refuse.to).describe(`${label}, ${refuse.from} to ${refuse.to} degrees. ${howToMeasure}`);
}

function motion(joint: Joint) {
  return z
    .strictObject({
      extensionDeficit: angle(joint, 'extensionDeficit').optional(),
      hyperextension: angle(joint, 'hyperextension').optional(),
      flexion: angle(joint, 'flexion'),
    })
    .describe(
      `${JOINT_NAMES[joint]} motion: flexion, and either the extension deficit or how far it goes beyond straight. Never a minus sign.`,
    );
}

function joint(name: Joint) {
  return z.strictObject({ active: motion(name).optional(), passive: motion(name).optional() });
}

const {
  note,
  code: _code,
  schema: _schema,
  side: _side,
  invented: _invented,
  digits: _digits,
  target: _target,
  flags: _flags,
  ...ofTheHand
} = handSchema.shape;
const { units, ...palm } = ofTheHand;
const partDigit = digitSchema.partial();

/** Measurements taken again at a visit: any of the hand file's, all optional. Read by the hand module's own reader. */
export const measuresSchema = z.strictObject({
  units,
  digits: z
    .strictObject({ index: partDigit.optional(), long: partDigit.optional(), ring: partDigit.optional(), little: partDigit.optional() })
    .optional(),
  ...palm,
});

const place = z.enum(PLACES);
const plainOptions = z
  .record(z.string().regex(/^[A-Za-z]{1,40}$/), z.union([z.number(), z.string().max(60), z.boolean()]))
  .describe('The options it was made with, as in an options file.');
const flatLength = z.number().positive().max(LONGEST_FLAT).optional().describe('Length of the flat pattern, mm.');
const geometryVersion = z
  .string()
  .regex(/^[0-9A-Za-z.-]{1,20}$/)
  .describe('Version of the geometry that drew it.');

export const madeStripSchema = z.strictObject({
  kind: z.literal('strip'),
  block: z.strictObject({
    id: z
      .string()
      .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
      .max(48),
    places: z.strictObject({ index: place.optional(), long: place.optional(), ring: place.optional(), little: place.optional() }),
  }),
  options: plainOptions,
  geometryVersion,
  flatLength,
});

export const PLATE_FACES = ['dorsal', 'palmar', 'both'] as const;

export const madePlateSchema = z.strictObject({
  kind: z.literal('plate'),
  faces: z.enum(PLATE_FACES),
  mpAngle: z.number().min(0).max(90).describe('MP flexion that the plate holds, degrees.'),
  options: plainOptions,
  geometryVersion,
  flatLength,
});

/** Everything of a visit but its day, motion, measurements and what was made; blank is never read as "no" or as zero. */
export const notedShape = {
  pain: z.number().min(0).max(MOST_PAIN).optional().describe('Pain at rest, 0 to 10: the mean of the last two days.'),
  skin: z.enum(SKIN_STATES).optional().describe('Skin under the device; marks that are gone in 20 minutes are ok.'),
  sensation: z.enum(CHANGE_STATES).optional().describe('Feeling: ok, changed and returned once it was off, or changed and stays.'),
  colour: z.enum(CHANGE_STATES).optional().describe('Colour and warmth: ok, changed and returned once it was off, or changed and stays.'),
  infection: z.boolean().optional().describe('Signs of infection.'),
  deformity: z.boolean().optional().describe('A new deformity or an unstable joint.'),
  crpsSigns: z
    .array(z.enum(CRPS_SIGNS))
    .max(CRPS_SIGNS.length)
    .optional()
    .describe('Swelling out of proportion, colour or warmth, sweating, touch that hurts, other joints that stiffen; [] for none.'),
  fits: z.boolean().optional().describe('Whether the device worn until this visit fits.'),
  redirects: z.boolean().optional().describe('Whether it redirects the motion to the PIP joint.'),
  wear: z.number().min(0).max(HOURS_A_DAY).optional().describe('Hours worn a day since the visit before, 0 to 24.'),
  wearAgreed: z.number().min(0).max(HOURS_A_DAY).optional().describe('Hours a day agreed from this visit on, 0 to 24.'),
  rater: z
    .string()
    .regex(/^[A-Za-z0-9]{1,4}$/)
    .optional()
    .describe('Who measured: a number or initials, at most four letters or digits; never a name.'),
  repeated: z.boolean().optional().describe('Whether PIP motion was measured three times in this visit and the mean is noted.'),
  measuredDifferential: z.number().min(0).max(MOST_DIFFERENTIAL).optional().describe('MP differential as measured in the device, degrees.'),
  freePip: z.number().min(0).max(MOST_PIP_FLEXION).optional().describe('PIP flexion left free by the device as seen, degrees.'),
  pencil: z
    .strictObject({ without: motion('pip').optional(), with: motion('pip').optional() })
    .optional()
    .describe('Pencil test: active PIP motion without and with the pencil.'),
  closedAt: z
    .number()
    .min(-FARTHEST_TRIM)
    .max(FARTHEST_TRIM)
    .optional()
    .describe('Where the finishing end was cut: mm from the trim mark, beyond it positive.'),
  weaning: z.boolean().optional().describe('Whether the device is being weaned off.'),
  goal: z.number().min(0).max(MOST_GOAL).optional().describe('The deficit with which the patient is content, degrees; the newest counts.'),
  comment: note.describe('One line of at most 300 characters; never who the person is.'),
};

export const visitSchema = z.strictObject({
  date: dateSchema,
  goniometry: z.strictObject({
    mp: joint('mp').optional(),
    pip: z.strictObject({ active: motion('pip'), passive: motion('pip').optional() }),
    dip: joint('dip').optional(),
  }),
  otherHand: z
    .strictObject({ mp: motion('mp').optional(), pip: motion('pip').optional(), dip: motion('dip').optional() })
    .optional()
    .describe('Active motion of the same digit on the other hand, for comparison; the newest given counts.'),
  measures: measuresSchema.optional(),
  made: z.discriminatedUnion('kind', [madeStripSchema, madePlateSchema]).optional().describe('What was made at this visit.'),
  ...notedShape,
});

/** A visit that was corrected or withdrawn, as it stood before. */
export const amendmentSchema = z.strictObject({
  kind: z.enum(['corrected', 'withdrawn']),
  on: dateSchema.optional().describe('Day of the correction; never taken from the clock.'),
  why: note.describe('Why; one line, never who the person is.'),
  was: visitSchema.describe('The visit as it stood before.'),
  becameDate: dateSchema.optional().describe('Day of the visit that stands in its place; none for a withdrawn one.'),
});

/** Why a case is closed: the goal was reached, no more was gained, it harmed, the person came no more, or another reason. */
export const CLOSE_REASONS = ['goal', 'plateau', 'harm', 'lost', 'other'] as const;
export type CloseReason = (typeof CLOSE_REASONS)[number];

export const closedSchema = z.strictObject({
  date: dateSchema.describe('Day on which it was closed; not before the last visit.'),
  reason: z
    .enum(CLOSE_REASONS)
    .describe('goal reached; plateau: no more was gained; harm; lost: came no more; or another reason, said in note.'),
  note: note.describe('One line; never who the person is.'),
});
export type ClosedFile = z.infer<typeof closedSchema>;

/** The form of a case file. Its values are checked by `readCase`. */
export const caseSchema = z.strictObject({
  schema: z.literal(CASE_SCHEMA_ID),
  code: z
    .string()
    .meta({ pattern: `^[A-Z0-9-]{1,${LONGEST_CODE}}$` })
    .describe('Case code: capital letters, digits, hyphens; never a name or a date of birth.'),
  side: z.enum(SIDES),
  digit: z.enum(DIGITS).describe('The digit whose PIP joint is treated. One case, one digit.'),
  invented: z.literal(true).optional().describe('Marks a made-up case.'),
  note,
  // Checked by `readHand`, whose messages know the fields.
  hand: z.unknown().optional().describe('The hand file that the case was opened with.'),
  visits: z.array(visitSchema).max(MOST_VISITS).describe('By date; those of one day in the order in which they were added.'),
  amendments: z
    .array(amendmentSchema)
    .max(MOST_VISITS)
    .optional()
    .describe('What was corrected or withdrawn, as it stood before, oldest first.'),
  closed: closedSchema.optional().describe('Where the case is closed: when, and why. No visit is added to a closed case.'),
});

/** A visit as it stands in a case file or in a visit file, right in form. */
export type VisitFile = z.infer<typeof visitSchema>;
/** A case file as it stands on disk, right in form. */
export type CaseFile = z.infer<typeof caseSchema>;
export type MadeFile = NonNullable<VisitFile['made']>;
export type AmendmentFile = z.infer<typeof amendmentSchema>;

/** JSON Schema (draft 2020-12) of the case file. */
export function caseJsonSchema(): Record<string, unknown> {
  const whole = caseSchema.extend({ hand: handSchema.optional() });
  return { ...z.toJSONSchema(whole, { io: 'input' }), title: 'Case: visits and what was made', description: `Schema ${CASE_SCHEMA_ID}` };
}

/** JSON Schema (draft 2020-12) of a single visit, as `case add --visit` reads it. */
export function visitJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(visitSchema, { io: 'input' }), title: 'One visit of a case' };
}
