import type { Command } from './define-command.ts';

/** What `--json` prints, by command: the schema that each report names, and the form of errors; for a program that reads them. */
export function reportSchemas(commands: readonly Command[]): object {
  return {
    units: 'lengths in mm with 3 decimals at most, angles in degrees, shares from 0 to 1',
    reports: Object.fromEntries(commands.flatMap(({ name, reportSchema }) => (reportSchema === null ? [] : [[name, reportSchema]]))),
    inEach: {
      schema: 'the name and version of the report; a version changes when a key goes or changes its meaning, not when one is added',
      warnings: '[{ code, message, where, value, limit, next }] where there are any to be said',
      valuesFrom:
        "{ file, values: { name: { from: 'flag' | 'options' | 'clinic' | 'default', value } } } where a clinic's file may have a say",
    },
    errors: {
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      properties: {
        schema: { const: 'knucklewright/errors@1' },
        errors: {
          type: 'array',
          minItems: 1,
          items: {
            type: 'object',
            properties: {
              code: { type: 'string', description: 'stable, as FIELD_OUT_OF_RANGE' },
              where: { type: 'string', description: 'path of the input, a flag or a file; empty for the whole file' },
              message: { type: 'string' },
              kind: { enum: ['usage', 'input', 'refused'], description: 'exit 2, 1, 3' },
              limit: { type: 'number', description: 'a value that would do' },
            },
            required: ['code', 'where', 'message', 'kind'],
          },
        },
        exit: { enum: [1, 2, 3] },
      },
      required: ['schema', 'errors', 'exit'],
    },
  };
}
