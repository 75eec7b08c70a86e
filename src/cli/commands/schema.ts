import { blockJsonSchema } from '../../block/read-block.ts';
import { handColumnsText } from '../../hand/hand-columns.ts';
import { handJsonSchema } from '../../hand/hand-schema.ts';
import { plateJsonSchema, plateOptionsJsonSchema } from '../../pattern/plate/read-plate.ts';
import { optionsJsonSchema } from '../../pattern/strip/read-options.ts';
import { caseJsonSchema, visitJsonSchema } from '../../record/case-schema.ts';
import { cutterJsonSchema } from '../../sheet/cutter/cutter-profile.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { clinicJsonSchema } from '../clinic-file.ts';
import { defineCommand } from '../define-command.ts';
import { argument, flagProblem } from '../flags/flag.ts';
import { REPORT_FORMS, reportSchemas } from '../report-schemas.ts';

/** JSON Schema of each kind of input file. */
export const SCHEMAS = {
  hand: handJsonSchema,
  block: blockJsonSchema,
  options: optionsJsonSchema,
  plate: plateJsonSchema,
  'plate-options': plateOptionsJsonSchema,
  cutter: cutterJsonSchema,
  clinic: clinicJsonSchema,
  case: caseJsonSchema,
  visit: visitJsonSchema,
} as const;
const KINDS = [...(Object.keys(SCHEMAS) as (keyof typeof SCHEMAS)[]), 'csv', 'report'] as const;

/** `schema`: what a file that the program reads must look like, and what its reports are. */
export const schema = defineCommand({
  name: 'schema',
  group: 'What it knows',
  about:
    'print the JSON Schema of a file that knucklewright reads; for csv, the columns of a table of hands; for report, what --json prints',
  examples: ['schema hand', 'schema report'],
  args: [
    argument('<kind>', 'which file').choices(KINDS),
    argument('[report]', 'for report: one of them, as plan or "case fit"; all without it'),
  ],
  flags: [],
  read: ([kind, report]) => readReport(kind, report),
  make: ({ kind, report }) => {
    if (kind === 'csv') return success(handColumnsText());
    const all = reportSchemas();
    const printed = kind !== 'report' ? SCHEMAS[kind]() : report === null ? all : all[report];
    return success(`${JSON.stringify(printed, null, 2)}\n`);
  },
  report: { text: (text) => text },
});

type Kind = (typeof KINDS)[number];

/** A report by its name, whole or without program, version and the word report: `knucklewright/case-fit-report@1` is `case fit`. */
function readReport(kind: Kind, typed: string | undefined): Result<{ readonly kind: Kind; readonly report: string | null }> {
  if (typed === undefined) return success({ kind, report: null });
  if (kind !== 'report') return failure(flagProblem('[report]', `is for schema report; schema ${kind} has one form`));
  const shortOf = (name: string) =>
    name
      .replace(/^knucklewright\//, '')
      .replace(/@\d+$/, '')
      .replace(/-report$/, '')
      .replaceAll('-', ' ');
  const names = Object.keys(REPORT_FORMS);
  const report = names.find((name) => shortOf(name) === shortOf(typed));
  if (report !== undefined) return success({ kind, report });
  return failure(flagProblem('[report]', `there is no report ${quote(typed)}; there are ${names.map(shortOf).join(', ')}`));
}
