import { dirname, isAbsolute, join } from 'node:path';
import * as z from 'zod';
import { readJson } from '../files/read-file.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { CUTTER_IDS } from '../sheet/cutter/cutter-ids.ts';
import { readPaper } from '../sheet/paper/paper.ts';
import type { ClinicLines } from '../sheet/paper/sheet-settings.ts';
import { readSheetSize } from '../sheet/plastic/sheet-size.ts';
import { formProblems, lateForm, newerVersion } from '../units/form-problems.ts';
import { getOwn } from '../units/json-text.ts';
import { escapeInvisible } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { plainLine } from '../units/text-form.ts';
import { LANGUAGE_IDS } from '../words/language.ts';

const CLINIC_SCHEMA = 'knucklewright/clinic@1';
const LONGEST_LINE = 70;
const MOST_LINES = 4;

/** What a clinic always works with, `knucklewright/clinic@1`; bare lengths in mm. A laser's permission is not among it: it is given for one sheet at a time. */
const clinicForm = lateForm(() => {
  const line = plainLine(LONGEST_LINE);
  const length = z.union([z.number().positive(), z.string().max(40)]);
  return z.strictObject({
    schema: z.literal(CLINIC_SCHEMA),
    note: line.optional().describe('One line about the file'),
    paper: z.string().max(40).optional().describe('Paper of the printer: a4, letter, a3, or width x height in mm as 200x300'),
    language: z.enum(LANGUAGE_IDS).optional().describe('Language of what is printed'),
    thickness: length.optional().describe('Thickness of the sheet, mm, or a string with its own unit'),
    skinClearance: z
      .union([z.number().min(0), z.string().max(40)])
      .optional()
      .describe('Free space between skin and plastic, mm'),
    sheet: z.string().max(40).optional().describe('Sheet of plastic as 457x610 or 18inx24in; its grain runs along the longer side'),
    cutter: z
      .string()
      .min(1)
      .max(400)
      .optional()
      .describe(
        'Cutter profile by its id, or a profile file, its path from the folder of this file. A laser is allowed for each sheet anew',
      ),
    shelf: z.string().min(1).max(400).optional().describe('Table of the strips in stock (CSV), its path from the folder of this file'),
    letterhead: z.array(line).max(MOST_LINES).optional().describe('Lines for the head of what a patient takes home'),
    telephone: line.optional().describe('Telephone for what a patient takes home'),
  });
});

/** A clinic's file as it is used: what stands for flags, what for options, and what is printed. */
export interface ClinicSettings {
  readonly path: string;
  readonly flags: Readonly<Partial<Record<ClinicFlag, string>>>;
  readonly options: Readonly<Partial<Record<ClinicOption, number | string>>>;
  readonly lines: ClinicLines;
}

/** Keys that say what a flag of their name would. */
export const CLINIC_FLAGS = ['paper', 'language', 'sheet', 'cutter', 'shelf'] as const;
export type ClinicFlag = (typeof CLINIC_FLAGS)[number];
/** Keys that say what an options file would. */
export const CLINIC_OPTIONS = ['thickness', 'skinClearance'] as const;
export type ClinicOption = (typeof CLINIC_OPTIONS)[number];

export function clinicJsonSchema(): object {
  return { ...z.toJSONSchema(clinicForm(), { io: 'input' }), title: 'What a clinic always works with' };
}

/** The clinic's file at a path; every fault of form and value at once, each with the file's name. */
export async function readClinicFile(path: string): Promise<Result<ClinicSettings>> {
  const json = await readJson(path);
  return json.ok ? readClinic(json.value, path) : json;
}

/** A clinic's file from parsed JSON. Fails with the problems of `formProblems`, `CLINIC_LASER`, `FILE_NEWER`, and those of its values. */
export function readClinic(json: unknown, path: string): Result<ClinicSettings> {
  const newer = newerVersion(json, CLINIC_SCHEMA, path);
  if (newer) return failure(newer);
  const named = (problem: Problem): Problem => ({ ...problem, message: `${escapeInvisible(path)}: ${problem.message}` });
  if (LASER_KEYS.some((key) => getOwn(json, key) !== undefined)) {
    const message =
      'a laser is allowed for one sheet at a time, with --material and --material-allows-laser; a clinic file cannot allow it.';
    return failure(named({ code: 'CLINIC_LASER', where: 'materialAllowsLaser', message, kind: 'input' }));
  }
  const form = clinicForm();
  const read = form.safeParse(json);
  if (!read.success) {
    const known = (at: readonly PropertyKey[]) => (at.length === 0 ? Object.keys(form.shape) : []);
    return failure(...formProblems(read.error.issues, json, { known, hint: () => 'See: knucklewright schema clinic.' }).map(named));
  }
  const { paper, language, thickness, skinClearance, sheet, cutter, shelf, letterhead, telephone } = read.data;
  const options = present({ thickness, skinClearance });
  const values = [
    paper === undefined ? null : readPaper(paper),
    sheet === undefined ? null : readSheetSize(sheet, 'sheet'),
    readStripOptions([{ origin: 'clinic', values: options }]),
  ];
  const problems = values.flatMap((value) => (value === null || value.ok ? [] : value.problems));
  if (problems.length > 0) return failure(...problems.map(named));
  const beside = (file: string) => (isAbsolute(file) ? file : join(dirname(path), file));
  const isPath = (name: string) => !CUTTER_IDS.some((id) => id === name) && /[/\\.]/.test(name);
  return success({
    path,
    flags: present({
      paper,
      language,
      sheet,
      cutter: cutter !== undefined && isPath(cutter) ? beside(cutter) : cutter,
      shelf: shelf === undefined ? undefined : beside(shelf),
    }),
    options,
    lines: { letterhead: letterhead ?? [], telephone: telephone ?? '' },
  });
}

const LASER_KEYS = ['materialAllowsLaser', 'material-allows-laser'];

function present<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
