import { blockJsonSchema } from '../../block/read-block.ts';
import { handColumnsText } from '../../hand/hand-columns.ts';
import { handJsonSchema } from '../../hand/hand-schema.ts';
import { plateJsonSchema } from '../../pattern/plate/read-plate.ts';
import { plateOptionsJsonSchema } from '../../pattern/plate/read-plate-options.ts';
import { optionsJsonSchema } from '../../pattern/strip/read-options.ts';
import { caseJsonSchema, visitJsonSchema } from '../../record/case-schema.ts';
import { cutterJsonSchema } from '../../sheet/cutter/cutter-profile.ts';
import { success } from '../../units/result.ts';
import { clinicJsonSchema } from '../clinic-file.ts';
import { type Command, defineCommand } from '../define-command.ts';
import { argument } from '../flags/flag.ts';
import { reportSchemas } from '../report-schemas.ts';

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
export function schemaOf(all: () => Promise<readonly Command[]>) {
  return defineCommand({
    name: 'schema',
    group: 'What it knows',
    about:
      'print the JSON Schema of a file that knucklewright reads; for csv, the columns of a table of hands; for report, what --json prints',
    examples: ['schema hand', 'schema report'],
    args: [argument('<kind>', 'which file').choices(KINDS)],
    flags: [],
    read: ([kind]) => success(kind),
    make: async (kind) => {
      if (kind === 'csv') return success(handColumnsText());
      return success(`${JSON.stringify(kind === 'report' ? reportSchemas(await all()) : SCHEMAS[kind](), null, 2)}\n`);
    },
    report: { text: (text) => text },
  });
}
