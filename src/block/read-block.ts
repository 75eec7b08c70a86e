import * as z from 'zod';
import { DIGITS } from '../hand/digits.ts';
import { formWords, newerVersion } from '../units/form-problems.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { type Block, blockProblems, PLACES } from './block.ts';

const place = z.enum(PLACES);

/** A block file, `knucklewright/block@1`. */
export const BlockFile = z.strictObject({
  schema: z.literal('knucklewright/block@1'),
  id: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, digits and single hyphens')
    .max(48)
    .describe('Name of the block, used in file names'),
  title: z
    .string()
    .min(1)
    .max(80)
    .regex(/^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*$/u, 'one line of plain text')
    .optional()
    .describe('What the block does, in words'),
  places: z
    .strictObject({ index: place.optional(), long: place.optional(), ring: place.optional(), little: place.optional() })
    .describe('Place of each digit that the strip takes in: enclosed, raised or lowered'),
});

/** JSON Schema of a block file. */
export function blockJsonSchema(): object {
  return z.toJSONSchema(BlockFile, { io: 'input' });
}

/** A block from parsed JSON, checked against the form (exit 1) and the rules (exit 3); `source` names the file in messages. */
export function readBlock(json: unknown, source: string): Result<Block> {
  const newer = newerVersion(json, 'knucklewright/block@1', source);
  if (newer) return failure(newer);
  const read = BlockFile.safeParse(json);
  if (!read.success) {
    return failure(...read.error.issues.map((issue) => formProblem(issue, json, source)));
  }
  const { id, title, places } = read.data;
  const kept = Object.fromEntries(DIGITS.flatMap((digit) => (places[digit] === undefined ? [] : [[digit, places[digit]]])));
  const block: Block = { id, title: title ?? id, places: kept };
  const problems = blockProblems(block);
  return problems.length > 0 ? failure(...problems) : success(block);
}

const LOOKS_LIKE =
  'A block file looks like {"schema": "knucklewright/block@1", "id": "my-block", "places": {"index": "enclosed", "long": "raised", "ring": "enclosed"}}.';

function formProblem(issue: z.core.$ZodIssue, json: unknown, source: string): Problem {
  const where = issue.path.map(String).join('.');
  const message = `${source}: ${where || 'the block'} ${formWords(issue, json)}. ${LOOKS_LIKE}`;
  return { code: 'BLOCK_FORM', where, message, kind: 'input' };
}
