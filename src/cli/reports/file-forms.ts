import * as z from 'zod';
import { ROLES } from '../../inspect/roles.ts';
import { count, digits, figure, places, reportForm, reportFormWithClinic, warnings, writtenFiles } from './report-form.ts';

const box = z.strictObject({ width: figure, height: figure }).nullable();

const inspected = {
  file: z.string(),
  format: z.string(),
  version: z.string().nullable(),
  unit: z.string().nullable(),
  mmPerUnit: z.number().describe('all its decimals'),
  frame: box.describe('page, viewBox or declared extents'),
  size: box.describe('of all that is drawn'),
  layers: z.array(z.strictObject({ name: z.string(), role: z.enum(ROLES), curves: count, length: figure, colours: z.array(z.string()) })),
  parts: z.array(z.strictObject({ layer: z.string(), width: figure, height: figure, holes: count, cutLength: figure })),
  closedContours: count,
  openContours: count,
  kerf: figure.nullable(),
  lines: count,
  arcs: count,
  flattened: count,
  flatteningError: figure,
  shortestEdge: figure.nullable(),
  cutLength: figure,
  markLength: figure,
  texts: count,
  findings: z.array(
    z.strictObject({
      code: z.int(),
      message: z.string(),
      severity: z.enum(['stop', 'look', 'note']),
      at: z.strictObject({ x: figure, y: figure }).optional(),
    }),
  ),
};

const acrossAndAlong = z.strictObject({ across: z.number(), along: z.number() });
const faces = z.enum(['dorsal', 'palmar', 'both']);

export const FILE_FORMS = {
  'knucklewright/inspect-report@1': reportForm('knucklewright/inspect-report@1', inspected).describe('one file by its name'),
  'knucklewright/inspections@1': reportForm('knucklewright/inspections@1', { files: z.array(z.strictObject(inspected)) }).describe(
    'several files, or standard input',
  ),
  'knucklewright/print-check-report@1': reportFormWithClinic('knucklewright/print-check-report@1', {
    across: figure,
    along: figure,
    verdict: z.enum(['pass', 'compensate', 'reprint']),
    errors: acrossAndAlong.describe('as shares of 100 mm'),
    factors: acrossAndAlong.describe('by which the corrected drawing is larger, with 6 decimals'),
    advice: z.string(),
    warnings,
    files: writtenFiles,
  }),
  'knucklewright/kerf-test@1': reportFormWithClinic('knucklewright/kerf-test@1', { material: z.string(), files: writtenFiles, warnings }),
  'knucklewright/blocks-report@1': reportForm('knucklewright/blocks-report@1', {
    blocks: z.array(z.strictObject({ id: z.string(), title: z.string(), places })),
  }),
  'knucklewright/plates-report@1': reportForm('knucklewright/plates-report@1', {
    plates: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        faces,
        digits: z.union([digits, z.literal('target-and-neighbours')]),
        angle: figure.nullable(),
        angles: z.strictObject({ from: figure, to: figure }).nullable(),
        options: z.record(z.string(), z.json()).describe('as in a file of options'),
      }),
    ),
  }),
  'knucklewright/version@1': reportForm('knucklewright/version@1', {
    version: z.string(),
    digest: z.string().describe('SHA-256 over names and contents of the installed files'),
    files: count,
    released: z.boolean(),
    date: z.string().nullable(),
  }).describe('knucklewright --version --json'),
  'knucklewright/errors@1': reportForm('knucklewright/errors@1', {
    errors: z
      .array(
        z.strictObject({
          code: z.string().describe('stable, as FIELD_OUT_OF_RANGE'),
          where: z.string().describe('path of the input, a flag or a file; empty for the whole file'),
          message: z.string(),
          kind: z.enum(['usage', 'input', 'refused']).describe('exit 2, 1, 3'),
          limit: figure.optional().describe('a value that would do'),
        }),
      )
      .min(1),
    exit: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  }).describe('in place of a report, where a command with --json stops'),
} as const;
