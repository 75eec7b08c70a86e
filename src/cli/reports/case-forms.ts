import * as z from 'zod';
import { DIGITS, SIDES } from '../../hand/digits.ts';
import { handSchema } from '../../hand/hand-schema.ts';
import { CHANGE_STATES, CRPS_SIGNS, SKIN_STATES } from '../../hand/signs.ts';
import { amendmentSchema, CLOSE_REASONS, closedSchema, PLATE_FACES } from '../../record/case-schema.ts';
import { blockForm, byDigit, count, figure, pair, reportForm, reportFormWithClinic, warnings } from './report-form.ts';

const day = z.iso.date();
const lacking = z.enum(['extension', 'flexion']);
const motion = z.strictObject({ extensionDeficit: figure.describe('negative: beyond straight'), flexion: figure });
const joint = z.strictObject({ active: motion.optional(), passive: motion.optional() });

const total = z
  .strictObject({
    degrees: figure,
    comparedWith: z.enum(['otherHand', 'normal']),
    reference: figure,
    percent: figure,
    grade: z.string(),
    scheme: z.string(),
  })
  .nullable();
const totals = { totalActiveMotion: total, totalPassiveMotion: figure.nullable() };

const who = { code: z.string(), side: z.enum(SIDES), digit: z.enum(DIGITS), invented: z.boolean() };

const made = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('strip'),
      block: blockForm,
      differential: figure.nullable(),
      geometryVersion: z.string(),
      flatLength: figure.nullable(),
    }),
    z.strictObject({
      kind: z.literal('plate'),
      faces: z.enum(PLATE_FACES),
      mpAngle: figure,
      geometryVersion: z.string(),
      flatLength: figure.nullable(),
    }),
  ])
  .nullable();

const noted = z
  .strictObject({
    pain: figure.nullable(),
    skin: z.enum(SKIN_STATES).nullable(),
    sensation: z.enum(CHANGE_STATES).nullable(),
    colour: z.enum(CHANGE_STATES).nullable(),
    infection: z.boolean().nullable(),
    deformity: z.boolean().nullable(),
    crpsSigns: z.array(z.enum(CRPS_SIGNS)).nullable(),
    fits: z.boolean().nullable(),
    redirects: z.boolean().nullable(),
    wear: figure.nullable(),
    wearAgreed: figure.nullable(),
    rater: z.string().nullable(),
    repeated: z.boolean().nullable(),
    measuredDifferential: figure.nullable(),
    freePip: figure.nullable(),
    pencil: z.strictObject({ without: motion.nullable(), with: motion.nullable() }).nullable(),
    closedAt: figure.nullable(),
    weaning: z.boolean().nullable(),
    goal: figure.nullable(),
    comment: z.string().nullable(),
  })
  .describe('null where it was not noted, which is neither no nor zero');

const visit = z.strictObject({
  date: day,
  goniometry: z.strictObject({ mp: joint, pip: z.strictObject({ active: motion, passive: motion.optional() }), dip: joint }),
  otherHand: z.strictObject({ mp: motion.optional(), pip: motion.optional(), dip: motion.optional() }),
  measures: z.strictObject({ digits: byDigit(z.record(z.string(), figure)), palm: z.record(z.string(), figure) }),
  made,
  noted,
  ...totals,
});

const wholeCase = {
  ...who,
  note: z.string().nullable(),
  hand: handSchema.nullable(),
  closed: closedSchema.nullable(),
  amendments: z.array(amendmentSchema),
  visits: z.array(visit),
};

const slope = z
  .strictObject({
    motion: lacking,
    degreesPerWeek: figure,
    low: figure,
    high: figure,
    standardError: figure,
    visits: count,
    between: pair(day),
    goalBy: z.strictObject({ date: day, earliest: day, latest: day.nullable() }).nullable(),
  })
  .nullable();

const spread = z.strictObject({ count, median: figure, spread: figure, least: figure, most: figure }).nullable();

export const CASE_FORMS = {
  'knucklewright/case-show-report@1': reportForm('knucklewright/case-show-report@1', { ...wholeCase, warnings }),
  'knucklewright/case-add-report@1': reportFormWithClinic('knucklewright/case-add-report@1', wholeCase),
  'knucklewright/case-amend-report@1': reportFormWithClinic('knucklewright/case-amend-report@1', wholeCase),
  'knucklewright/case-close-report@1': reportForm('knucklewright/case-close-report@1', wholeCase),
  'knucklewright/case-next-report@1': reportFormWithClinic('knucklewright/case-next-report@1', {
    ...who,
    closed: closedSchema.nullable(),
    steps: z.array(
      z.strictObject({
        rule: z.string(),
        action: z.string(),
        urgency: z.string().optional(),
        message: z.string(),
        source: z.string(),
        figures: z.record(z.string(), z.json()).describe('what the rule was computed from; goes by the rule'),
      }),
    ),
    reminders: z.array(z.string()),
    slope,
    believedChange: z.strictObject({ source: z.string() }),
    ...totals,
    cautions: z.array(z.string()),
    warnings,
  }),
  'knucklewright/case-fit-report@1': reportForm('knucklewright/case-fit-report@1', {
    cases: count,
    leftOut: z.array(z.string()),
    invented: z.boolean(),
    strips: z.array(
      z.strictObject({
        code: z.string(),
        date: day,
        block: z.string(),
        closedAt: figure,
        paperReading: figure.nullable(),
        drawnWith: figure.nullable(),
        wouldMeet: figure.nullable(),
      }),
    ),
    byModel: spread,
    byPaper: spread,
    clearance: spread,
    fewest: count,
    suggested: z.strictObject({ skinClearance: figure }).nullable(),
    warnings,
  }),
  'knucklewright/audit@1': reportFormWithClinic('knucklewright/audit@1', {
    gained: count,
    medianWeeks: figure.nullable(),
    reasons: z.strictObject(Object.fromEntries(CLOSE_REASONS.map((reason) => [reason, count]))),
    open: count,
    tooFewVisits: count,
    invented: z.boolean(),
    cases: z.array(
      z.strictObject({
        code: z.string(),
        invented: z.boolean(),
        motion: lacking,
        before: figure,
        after: figure,
        gained: z.boolean(),
        weeks: figure.nullable(),
        strips: count,
        plates: count,
        reason: z.enum(CLOSE_REASONS),
      }),
    ),
    limits: z.array(z.string()),
    file: z.string().nullable(),
    warnings,
  }),
} as const;
