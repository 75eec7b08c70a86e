import * as z from 'zod';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { type OptionSource, optionProblem, optionsForm, readOptionTable } from '../option-table.ts';
import { LEAST_NOTCH, PLATE_OPTION_TABLE, type PlateOptions } from './plate-options.ts';

/** The form of an object of plate options, for presets and for the JSON Schema. */
export const plateOptionsForm = optionsForm(PLATE_OPTION_TABLE);

/** JSON Schema of an options file for a plate. */
export function plateOptionsJsonSchema(): object {
  return z.toJSONSchema(plateOptionsForm, { io: 'input' });
}

/** Options from defaults and sources, later ones winning; every wrong key and value of every source at once. */
export function readPlateOptions(sources: readonly OptionSource[]): Result<PlateOptions> {
  const read = readOptionTable(PLATE_OPTION_TABLE, sources);
  if (!read.ok) return read;
  const options = read.value as unknown as PlateOptions;
  if (options.webNotch === 0 || options.webNotch >= LEAST_NOTCH) return success(options);
  const shown = `${plain(options.webNotch)} mm is too shallow to be rounded; use 0 for none, or ${LEAST_NOTCH} and more`;
  return failure(optionProblem('options', 'webNotch', shown));
}
