import * as z from 'zod';
import { PLATE_FACES } from '../../record/case-schema.ts';
import { blockForm, byDigit, count, digit, digits, figure, pair, reportFormWithClinic, warnings, writtenFiles } from './report-form.ts';

const layer = z.enum(['outer', 'inner']);
const aspect = z.enum(['dorsal', 'palmar']);
const face = z.enum(['dorsal', 'palmar']);

/** What `draw` may take from a shelf. */
export const takenForm = z.strictObject({
  id: z.string(),
  from: z.string().nullable().describe('the strip of the shelf; null where none serves'),
  cutOff: figure,
});

const drawn = { why: z.string(), shelf: takenForm.optional(), warnings, files: writtenFiles };

const strip = {
  pathLength: figure,
  flatLength: figure,
  flatWidth: figure,
  block: blockForm,
  closure: z.enum(['tacked', 'spanning']),
  passes: z.array(z.strictObject({ digit, layer, aspect, u: figure.describe('along the strip from its start') })),
  webCrossings: z.array(z.strictObject({ between: pair(digit), layer, u: figure })),
  borderTurns: z.array(z.strictObject({ digit, border: z.enum(['radial', 'ulnar']), u: figure })),
  sections: byDigit(z.strictObject({ depth: figure })),
  loops: z.array(z.strictObject({ digits, innerCircumference: figure, isoRingSize: count })),
  relief: z.array(z.strictObject({ digit, depth: figure })),
  outline: z.enum(['staggered', 'straight']),
  edges: z.array(
    z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('web'), between: pair(digit), layer, u: figure, proximal: figure, distal: figure }),
      z.strictObject({ kind: z.literal('midline'), digit, aspect, layer, u: figure, proximal: figure, distal: figure }),
    ]),
  ),
  straightWidth: figure,
  pull: z.strictObject({ between: pair(digit), difference: figure, shear: figure }).nullable(),
  taper: byDigit(figure),
  curve: figure,
  paperTrial: z.strictObject({ reading: figure, skinClearance: figure }).nullable(),
  freePipFlexion: byDigit(figure),
  standOff: z.array(z.strictObject({ digit, distance: figure })),
  lengthBand95: pair(figure),
  estimated: z.array(z.string()).describe('measurements that were estimated, not taken'),
};

const cost = z.strictObject({ stretch: figure, shear: figure, miss: figure, swing: figure, cost: figure }).nullable();

const plateFace = z.strictObject({
  face,
  width: figure,
  length: figure,
  area: figure.describe('mm2'),
  handWidth: figure,
  fingerWidth: figure,
  bend: z.strictObject({
    asked: z.enum(['auto', 'straight', 'split', 'kinked']),
    form: z.enum(['straight', 'split', 'kinked']),
    costs: z.strictObject({ straight: cost, split: cost, kinked: cost }),
    columns: z.array(z.strictObject({ digit, x: figure, y: figure })),
    parts: z.array(z.strictObject({ digits, insideRadius: figure, length: figure, before: figure, oblique: figure, turned: figure })),
  }),
  digits: z.array(z.strictObject({ digit, beyondBend: figure, shortened: figure })),
  smallestRadius: figure,
  webRadius: figure.nullable(),
  fold: z.strictObject({
    stretch: figure,
    shear: figure,
    leastGap: figure,
    leastAt: digit,
    worstGap: figure,
    worstAt: digit,
    mpMiss: figure,
    swing: figure,
    thumbClearance: figure.nullable(),
    pipClearance: figure,
    wristClearance: figure,
    sideMiss: figure.nullable(),
    points: count,
  }),
});

const plate = {
  plate: z.strictObject({ id: z.string(), faces: z.enum(PLATE_FACES), digits }),
  angle: figure,
  angleRange: pair(figure),
  section: z.strictObject({ breadth: figure, circumference: figure, thickness: figure }),
  mpDepth: figure,
  cover: figure,
  wristFree: figure,
  pipClearance: figure,
  palmarBendRadius: figure,
  faces: z.array(plateFace),
  freePipFlexion: byDigit(figure),
  straps: z.array(z.strictObject({ id: z.enum(['A', 'B']), where: z.string(), width: figure, length: figure })),
  estimated: z.array(z.string()),
};

/** `draw` and `redraw`: a strip or a plate. */
const drawnForm = (schema: string) =>
  z.union([reportFormWithClinic(schema, { ...strip, ...drawn }), reportFormWithClinic(schema, { ...plate, ...drawn })]);

export const DRAWING_FORMS = {
  'knucklewright/draw-report@1': drawnForm('knucklewright/draw-report@1'),
  'knucklewright/redraw-report@1': drawnForm('knucklewright/redraw-report@1'),
} as const;
