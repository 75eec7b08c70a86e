import * as z from 'zod';
import { PLACES } from '../block/block.ts';
import { LONGEST_CODE } from '../hand/case-code.ts';
import { DIGITS, SIDES } from '../hand/digits.ts';
import { digitSchema, handSchema } from '../hand/hand-schema.ts';
import { GONIOMETRY_FIELDS, JOINT_NAMES, type Joint, type MotionKey } from './goniometry-fields.ts';

export const CASE_VERSION = 1;
export const CASE_SCHEMA_ID = `knucklewright/case@${CASE_VERSION}` as const;

/** More visits than one course of treatment has; with the longest comments the file stays under the size that is read. */
export const MOST_VISITS = 400;
/** mm; no flat pattern of a strip or a plate is longer. */
export const LONGEST_FLAT = 600;
const HOURS_A_DAY = 24;

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

export const seenSchema = z.strictObject({
  fits: z.boolean().optional().describe('Whether it fits.'),
  redirects: z.boolean().optional().describe('Whether it redirects the motion to the PIP joint.'),
  marksOnSkin: z.boolean().optional().describe('Whether it leaves marks on the skin that stay.'),
  comment: note.describe('One line of at most 300 characters; never who the person is.'),
});

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
  seen: seenSchema.optional().describe('What was seen of the one worn until this visit.'),
  wearHoursPerDay: z.number().min(0).max(HOURS_A_DAY).optional().describe('Hours worn a day since the visit before, 0 to 24.'),
});

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
});

/** A visit as it stands in a case file or in a visit file, right in form. */
export type VisitFile = z.infer<typeof visitSchema>;
/** A case file as it stands on disk, right in form. */
export type CaseFile = z.infer<typeof caseSchema>;
export type MadeFile = NonNullable<VisitFile['made']>;

/** JSON Schema (draft 2020-12) of the case file. */
export function caseJsonSchema(): Record<string, unknown> {
  const whole = caseSchema.extend({ hand: handSchema.optional() });
  return { ...z.toJSONSchema(whole, { io: 'input' }), title: 'Case: visits and what was made', description: `Schema ${CASE_SCHEMA_ID}` };
}

/** JSON Schema (draft 2020-12) of a single visit, as `case add --visit` reads it. */
export function visitJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(visitSchema, { io: 'input' }), title: 'One visit of a case' };
}
