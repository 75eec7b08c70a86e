import * as z from 'zod';
import { CASE_FORMS } from './reports/case-forms.ts';
import { DRAWING_FORMS } from './reports/drawing-forms.ts';
import { FILE_FORMS } from './reports/file-forms.ts';
import { LIST_FORMS } from './reports/list-forms.ts';
import { PLAN_FORMS } from './reports/plan-form.ts';

/**
 * The form of all that `--json` prints, by the name and version that stand in it. Lengths in mm, angles in degrees, shares from 0 to 1.
 * A version changes when a key goes or changes its meaning, not when one is added.
 */
export const REPORT_FORMS: Readonly<Record<string, z.ZodType>> = {
  ...PLAN_FORMS,
  ...DRAWING_FORMS,
  ...LIST_FORMS,
  ...CASE_FORMS,
  ...FILE_FORMS,
};

/** JSON Schema (draft 2020-12) of each report, by its name and version. */
export function reportSchemas(): Readonly<Record<string, object>> {
  return Object.fromEntries(
    Object.entries(REPORT_FORMS).map(([name, form]) => [name, { ...z.toJSONSchema(form, { io: 'input' }), title: name }]),
  );
}
