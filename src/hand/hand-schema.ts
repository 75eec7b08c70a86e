import * as z from 'zod';
import { LENGTH_UNITS } from '../units/length.ts';
import { LONGEST_CODE } from './case-code.ts';
import { DIGITS, SIDES, WEBS, type WebName } from './digits.ts';
import { DIGIT_FIELDS, type Field, FLAG_MEANINGS, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS, type WebFieldId } from './fields.ts';
import { CENTRAL_SLIP, STOP_SIGN_MEANINGS, STOP_SIGNS } from './signs.ts';
import { TARGET_MOTION_MEANINGS, type TargetMotion, targetMotionFields } from './target-motion.ts';

export const HAND_SCHEMA_ID = 'knucklewright/hand@1';
export const LONGEST_NOTE = 300;
/** Fewest digits that any strip goes around. */
export const FEWEST_DIGITS = 3;
export const LONGEST_DIAGNOSIS = 120;
export const MOST_READINGS = 9;
export const MOST_WEEKS = 5200;

/**
 * Line breaks, control and direction characters and what XML cannot hold have no place in a note. Written so that it means the
 * same with and without the Unicode flag, since readers of the JSON Schema differ in that; broken surrogates need it, and stand apart.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it refuses
const NOTE_PATTERN = /^[^\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufffe\uffff]*$/;
const BROKEN_SURROGATE = /\p{Cs}/u;
const ONE_LINE = 'one line without control characters';

const typed = z.union([z.number(), z.string().meta({ maxLength: 40 })]);

function measure({ howToMeasure, refuse, unit }: Field) {
  const how = unit === 'mm' ? ' A number in the file\'s units, or text such as "84.5 mm".' : '';
  return typed.describe(`${howToMeasure} ${refuse.from} to ${refuse.to} ${unit}.${how}`);
}

type Forms<Fields extends Readonly<Record<string, Field>>> = {
  [Id in keyof Fields]: Fields[Id] extends { readonly needed: 'always' } ? typeof typed : z.ZodOptional<typeof typed>;
};

/** The form of each measurement of a table. */
function forms<Fields extends Readonly<Record<string, Field>>>(fields: Fields): Forms<Fields> {
  const all = Object.values(fields).map((field) => [field.id, field.needed === 'always' ? measure(field) : measure(field).optional()]);
  return Object.fromEntries(all) as Forms<Fields>;
}

/** The form of what is measured at each web: an object by the webs' names. */
function webForm(field: Field) {
  const byWeb = Object.fromEntries(WEBS.map((web) => [web, measure(field).optional()])) as Record<WebName, z.ZodOptional<typeof typed>>;
  return z.strictObject(byWeb).optional().describe(field.howToMeasure);
}
const webForms = Object.fromEntries(Object.entries(WEB_FIELDS).map(([id, field]) => [id, webForm(field)])) as Record<
  WebFieldId,
  ReturnType<typeof webForm>
>;

export const digitSchema = z.strictObject(forms(DIGIT_FIELDS));

export const digitsSchema = z
  .strictObject({
    index: digitSchema.optional(),
    long: digitSchema.optional(),
    ring: digitSchema.optional(),
    little: digitSchema.optional(),
  })
  .describe(`The digits that were measured: at least ${FEWEST_DIGITS}, or all that there are where some are absent.`)
  .meta({ minProperties: 1 });

function motion(of: TargetMotion) {
  const fields = targetMotionFields(of);
  return z
    .strictObject({
      extensionDeficit: measure(fields.extensionDeficit).optional(),
      hyperextension: measure(fields.hyperextension).optional(),
      flexion: measure(fields.flexion).optional(),
    })
    .describe(`${TARGET_MOTION_MEANINGS[of]} Degrees; short of straight or beyond it, not both.`)
    .optional();
}

const readings = z.number().int().min(1).max(MOST_READINGS).optional();

export const targetSchema = z.strictObject({
  digit: z.enum(DIGITS).describe('The digit whose PIP joint is treated.'),
  ...forms(TARGET_FIELDS),
  mpActive: motion('mpActive'),
  mpPassive: motion('mpPassive'),
  pipActive: motion('pipActive'),
  pipPassive: motion('pipPassive'),
  otherHandPip: motion('otherHandPip'),
  readings: z
    .strictObject({ extension: readings, flexion: readings })
    .optional()
    .describe('How often each motion was measured, where the deficit is the mean of several readings; 1 to 9.'),
  diagnosis: z
    .string()
    .max(LONGEST_DIAGNOSIS)
    .regex(NOTE_PATTERN, ONE_LINE)
    .refine((text) => !BROKEN_SURROGATE.test(text), ONE_LINE)
    .optional()
    .describe('What the finger has, in a few words; never who the person is.'),
  weeks: z.number().min(0).max(MOST_WEEKS).optional().describe(`Weeks since the injury or operation, 0 to ${MOST_WEEKS}.`),
  boutonniere: z.boolean().optional().describe('The finger has a boutonniere deformity.'),
  centralSlip: z.enum(CENTRAL_SLIP).optional().describe('Outcome of the central slip test: intact or torn.'),
  stopSigns: z
    .array(z.enum(STOP_SIGNS))
    .max(STOP_SIGNS.length)
    .optional()
    .describe(`Signs that stop any suggestion. ${STOP_SIGNS.map((sign) => `${sign}: ${STOP_SIGN_MEANINGS[sign]}`).join(' ')}`),
  surgeonAgrees: z
    .boolean()
    .optional()
    .describe('The surgeon has agreed to a device in spite of an open wound, pins or a doubtful central slip.'),
});

export const flagsSchema = z.strictObject({
  hypermobile: z.array(z.enum(DIGITS)).max(DIGITS.length).optional().describe(FLAG_MEANINGS.hypermobile),
  swelling: z.boolean().optional().describe(FLAG_MEANINGS.swelling),
  sensation: z.boolean().optional().describe(FLAG_MEANINGS.sensation),
  hardEndFeel: z.boolean().optional().describe(FLAG_MEANINGS.hardEndFeel),
  unprotectedRepair: z.boolean().optional().describe(FLAG_MEANINGS.unprotectedRepair),
});

/**
 * The form of a hand file. Its values are checked by `readHand`, which also reads lengths, ranges, the case code and what the
 * fields say of each other.
 */
export const handSchema = z.strictObject({
  schema: z.literal(HAND_SCHEMA_ID),
  code: z
    .string()
    .meta({ pattern: `^[A-Z0-9-]{1,${LONGEST_CODE}}$` })
    .describe('Case code: capital letters, digits, hyphens; never a name or a date of birth.'),
  side: z.enum(SIDES),
  units: z.enum(LENGTH_UNITS).describe('Unit of every length that is a bare number.'),
  invented: z.literal(true).optional().describe('Marks a made-up hand.'),
  note: z
    .string()
    .max(LONGEST_NOTE)
    .regex(NOTE_PATTERN, ONE_LINE)
    .refine((text) => !BROKEN_SURROGATE.test(text), ONE_LINE)
    .optional()
    .describe('One line about the measuring; never who the person is.'),
  digits: digitsSchema,
  absent: z
    .array(z.enum(DIGITS))
    .max(DIGITS.length - 1)
    .optional()
    .describe('Digits that the hand does not have; they are neither measured nor asked for.'),
  child: z.boolean().optional().describe("A child's hand."),
  ...webForms,
  ...forms(PALM_FIELDS),
  target: targetSchema.optional(),
  flags: flagsSchema.optional(),
});

/** A hand file as it stands on disk, right in form. */
export type HandFile = z.infer<typeof handSchema>;

/** JSON Schema (draft 2020-12) of the hand file, for editors and other programs. */
export function handJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(handSchema, { io: 'input' }), title: 'Hand measurements', description: `Schema ${HAND_SCHEMA_ID}` };
}
