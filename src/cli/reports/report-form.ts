import * as z from 'zod';
import { PLACES } from '../../block/block.ts';
import { DIGITS } from '../../hand/digits.ts';

/** Lengths, areas, angles and shares as reports give them: three decimals at most. */
export const figure = z.number();
export const count = z.int().min(0);
export const digit = z.enum(DIGITS);
export const digits = z.array(digit);
export const pair = <T extends z.ZodType>(of: T) => z.tuple([of, of]);

/** A value for some of the digits. */
export const byDigit = <T extends z.ZodType>(of: T) =>
  z.strictObject({ index: of.optional(), long: of.optional(), ring: of.optional(), little: of.optional() });

export const places = byDigit(z.enum(PLACES));
export const blockForm = z.strictObject({ id: z.string(), places });

export const warningForm = z.strictObject({
  code: z.string().describe('stable, as VALUE_UNUSUAL'),
  message: z.string(),
  where: z.string().optional(),
  value: figure.optional(),
  limit: figure.optional(),
  next: z.string().optional().describe('what to do about it'),
});
export const warnings = z.array(warningForm);

export const writtenFile = z.strictObject({
  path: z.string(),
  name: z.string().optional(),
  format: z.enum(['svg', 'dxf', 'pdf', 'txt']),
  bytes: count,
  width: figure.describe('of the drawing or page, mm'),
  height: figure,
  about: z.string().optional().describe('pages and paper of a PDF, in words'),
  pages: z.strictObject({ count, paper: z.string(), orientation: z.enum(['portrait', 'landscape']), tiled: z.boolean() }).optional(),
});
export const writtenFiles = z.array(writtenFile);

const valuesFrom = z
  .strictObject({
    file: z.string().nullable().describe("the clinic's file"),
    values: z.record(z.string(), z.strictObject({ from: z.enum(['flag', 'options', 'clinic', 'default']), value: z.unknown().optional() })),
  })
  .describe("where the values came from that a clinic's file may hold");

/** A report of fixed form under its name and version; any other key is refused. */
export function reportForm<Shape extends z.core.$ZodLooseShape>(schema: string, shape: Shape) {
  return z.strictObject({ schema: z.literal(schema), ...shape });
}

/** The same of a command in whose values a clinic's file may have a say. */
export function reportFormWithClinic<Shape extends z.core.$ZodLooseShape>(schema: string, shape: Shape) {
  return reportForm(schema, { ...shape, valuesFrom });
}
