import * as z from 'zod';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { type OptionSource, optionProblem, optionsForm, readOptionTable } from '../option-table.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS, RETIRED_OPTIONS, type StripOptions } from './strip-options.ts';

export type { OptionSource } from '../option-table.ts';

const TABLE = { numbers: NUMBER_OPTIONS, choices: CHOICE_OPTIONS, retired: RETIRED_OPTIONS };

/** JSON Schema of an options file. */
export function optionsJsonSchema(): object {
  return z.toJSONSchema(optionsForm(TABLE), { io: 'input' });
}

/** Options from defaults and sources, later ones winning; every wrong key and value of every source at once. */
export function readStripOptions(sources: readonly OptionSource[]): Result<StripOptions> {
  const read = readOptionTable(TABLE, sources);
  if (!read.ok) return read;
  const options = read.value as unknown as StripOptions;
  if (options.minimumWidth === 'auto' || options.width === 'auto' || options.minimumWidth <= options.width) return success(options);
  const minimum = `${plain(options.minimumWidth)} mm is more than the strip's width of ${plain(options.width)} mm`;
  return failure(optionProblem('options', 'minimumWidth', `${minimum}; make it smaller or the strip wider`));
}
