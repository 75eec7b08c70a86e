import { blockJsonSchema } from '../block/read-block.ts';
import { handJsonSchema } from '../hand/hand-schema.ts';
import { plateJsonSchema } from '../pattern/plate/read-plate.ts';
import { plateOptionsJsonSchema } from '../pattern/plate/read-plate-options.ts';
import { optionsJsonSchema } from '../pattern/strip/read-options.ts';
import { caseJsonSchema, visitJsonSchema } from '../record/case-schema.ts';
import { cutterJsonSchema } from '../sheet/cutter/cutter-profile.ts';

/** JSON Schema of a kind of input file. */
export function schemaOf(kind: string): object {
  switch (kind) {
    case 'hand':
      return handJsonSchema();
    case 'block':
      return blockJsonSchema();
    case 'options':
      return optionsJsonSchema();
    case 'plate':
      return plateJsonSchema();
    case 'plate-options':
      return plateOptionsJsonSchema();
    case 'case':
      return caseJsonSchema();
    case 'visit':
      return visitJsonSchema();
    case 'cutter':
      return cutterJsonSchema();
    default:
      throw new RangeError(`no schema of "${kind}"`);
  }
}
