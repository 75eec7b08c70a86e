import * as z from 'zod';
import { NEEDS } from '../../block/deficit-kind.ts';
import { SIDES } from '../../hand/digits.ts';
import { blockForm, byDigit, digit, figure, pair, reportFormWithClinic, warnings } from './report-form.ts';

/** Figures go by the rule: one more key each, a figure, a word, a list or null. */
const figuresOfRule = z.json();

const note = z
  .object({ rule: z.string(), level: z.enum(['stop', 'confirm', 'first', 'caution', 'note']), source: z.string(), message: z.string() })
  .catchall(figuresOfRule);
const notes = z.array(note);
const motions = z.array(z.enum(['strip', 'plate']));
const reason = z.strictObject({ code: z.string(), message: z.string() });
const term = z.strictObject({ weight: figure, about: z.string(), source: z.string() });

const terms = <T extends z.ZodType>(of: T) =>
  z.strictObject({ rotation: of, hold: of, neighbours: of, freePip: of, length: of, layers: of });

const nextStep = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('differential'), from: figure, to: figure }),
  z.strictObject({ kind: z.literal('block'), block: z.string(), differential: figure }),
  z.strictObject({ kind: z.literal('plate'), degrees: figure }),
  z.strictObject({ kind: z.literal('refer') }),
]);

const strips = {
  suggestions: z
    .array(
      z.strictObject({
        block: blockForm,
        title: z.string(),
        differential: figure,
        score: figure,
        terms: terms(figure),
        reasons: z.array(z.object({ rule: z.string(), message: z.string() }).catchall(figuresOfRule)),
        flatLength: figure,
        freePipFlexion: byDigit(figure),
        next: z.string(),
        nextSteps: z.array(nextStep),
        warnings,
      }),
    )
    .describe('best first'),
  notMakeable: z.array(z.strictObject({ block: blockForm, reasons: z.array(reason) })),
};

const need = z.enum(NEEDS);
const mpRange = pair(figure).nullable();

export const PLAN_FORMS = {
  'knucklewright/plan-report@1': reportFormWithClinic('knucklewright/plan-report@1', {
    code: z.string(),
    side: z.enum(SIDES),
    invented: z.boolean(),
    // Each motion has readings and marks of its own besides.
    target: z.object({ digit, pipExtensionDeficit: figure, pipFlexionDeficit: figure }).catchall(figuresOfRule),
    need,
    lacking: z.strictObject({ extension: figure, flexion: figure }).describe('chance that the motion lacks, 0 to 1'),
    order: motions.describe('first to last'),
    stops: notes,
    first: notes,
    ...strips,
    mpAngle: figure.nullable(),
    mpRange,
    mpReasoning: z.string().nullable(),
    mpNext: z.string().nullable(),
    alternatives: z.array(
      z.strictObject({ motion: z.enum(['extension', 'flexion']), need, order: motions, mpAngle: figure.nullable(), mpRange, ...strips }),
    ),
    cautions: notes,
    notes,
    refusals: z.array(reason),
    warnings,
    checkBefore: z.string().nullable(),
    always: z.array(z.string()),
    scoring: terms(term),
  }),
} as const;
