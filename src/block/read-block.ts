import * as z from 'zod';
import { DIGITS } from '../hand/digits.ts';
import { readSmallFile } from '../units/form-problems.ts';
import { failure, type Result, success } from '../units/result.ts';
import { fileId, plainLine } from '../units/text-form.ts';
import { type Block, blockProblems, PLACES } from './block.ts';

const place = z.enum(PLACES);

/** A block file, `knucklewright/block@1`. */
export const BlockFile = z.strictObject({
  schema: z.literal('knucklewright/block@1'),
  id: fileId().describe('Name of the block, used in file names'),
  title: plainLine(80).min(1).optional().describe('What the block does, in words'),
  places: z
    .strictObject({ index: place.optional(), long: place.optional(), ring: place.optional(), little: place.optional() })
    .describe('Place of each digit that the strip takes in: enclosed, raised or lowered'),
});

const FORM = {
  schema: 'knucklewright/block@1',
  code: 'BLOCK_FORM',
  whole: 'the block',
  advice:
    'A block file looks like {"schema": "knucklewright/block@1", "id": "my-block", "places": {"index": "enclosed", "long": "raised", "ring": "enclosed"}}.',
} as const;

/** JSON Schema of a block file. */
export function blockJsonSchema(): object {
  return z.toJSONSchema(BlockFile, { io: 'input' });
}

/** A block from parsed JSON, checked against the form (exit 1) and the rules (exit 3); `source` names the file in messages. */
export function readBlock(json: unknown, source: string): Result<Block> {
  const read = readSmallFile(BlockFile, json, source, FORM);
  if (!read.ok) return read;
  const { id, title, places } = read.value;
  const kept = Object.fromEntries(DIGITS.flatMap((digit) => (places[digit] === undefined ? [] : [[digit, places[digit]]])));
  const block: Block = { id, title: title ?? id, places: kept };
  const problems = blockProblems(block);
  return problems.length > 0 ? failure(...problems) : success(block);
}
