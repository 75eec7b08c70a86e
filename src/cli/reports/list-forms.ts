import * as z from 'zod';
import { SIDES } from '../../hand/digits.ts';
import { takenForm } from './drawing-forms.ts';
import { count, digit, figure, reportFormWithClinic, warnings, writtenFiles } from './report-form.ts';

const share = figure.describe('0 to 1');

const sheets = {
  pieces: count,
  newSheets: count,
  atLeast: count.describe('no layout takes fewer new sheets'),
  verdict: z.string(),
  sheets: z.array(
    z.strictObject({ stock: z.string(), parts: count, utilisation: share, byOutline: z.boolean(), cuts: z.array(z.string()) }),
  ),
  cutCount: count.nullable(),
  narrower: z.strictObject({ gap: figure, newSheets: count }).nullable(),
  remnants: z.array(z.strictObject({ id: z.string(), along: figure, across: figure })),
  files: writtenFiles,
};

const sizePlan = z.strictObject({
  sizes: z.array(figure),
  widths: z.array(figure),
  served: z.array(count),
  cover: share,
  meanWaste: figure,
  wasteShare: share,
});

export const LIST_FORMS = {
  'knucklewright/batch-report@1': reportFormWithClinic('knucklewright/batch-report@1', {
    made: count,
    reused: count,
    wrongRows: count,
    files: count,
    lists: z.array(z.string()),
    sheets: z.strictObject(sheets).nullable(),
    shelf: z.array(takenForm).optional(),
    warnings,
  }),
  'knucklewright/sizes@1': reportFormWithClinic('knucklewright/sizes@1', {
    from: z.string(),
    sources: z.array(z.string()),
    hands: count,
    leftOut: z.array(z.strictObject({ code: z.string(), hands: count })),
    bias: z.string().optional(),
    best: z.enum(['length', 'sheets']),
    sheets: z.strictObject({ length: count, sheets: count }).nullable(),
    useTrim: figure,
    sizes: z.array(z.strictObject({ id: z.string(), serves: z.string(), length: figure, width: figure, served: count, pieces: count })),
    chosen: sizePlan,
    pieces: z.array(count),
    assignment: z.array(
      z.strictObject({
        code: z.string(),
        side: z.enum(SIDES).nullable(),
        size: z.string().nullable().describe('null: cut singly'),
        cutOff: figure,
        trimUsed: figure,
        relief: z.array(z.strictObject({ digit, depth: figure })),
        block: z.string().nullable(),
      }),
    ),
    singly: z.array(z.string()),
    all: z.array(sizePlan),
    files: z.array(z.string()),
    warnings,
  }),
  'knucklewright/sheets-report@1': reportFormWithClinic('knucklewright/sheets-report@1', { ...sheets, warnings }),
} as const;
