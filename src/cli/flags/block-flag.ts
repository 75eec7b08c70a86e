import type { Block } from '../../block/block.ts';
import type { ChosenBlock } from '../../block/choose-block.ts';
import { blockById, blocks } from '../../block/library.ts';
import { readBlock } from '../../block/read-block.ts';
import { readJson } from '../../files/read-file.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { didYouMean } from '../../units/typed-name.ts';
import { flagProblem } from './flag-problem.ts';

/** A block of the library by its id. */
export function libraryBlock(id: string): Result<Block> {
  const known = blockById(id);
  if (known) return success(known);
  const ids = blocks().map((block) => block.id);
  return failure(flagProblem('--block', `there is no block ${quote(id)}${didYouMean(id, ids, 'the blocks are')}`));
}

/** A block of the library by its id, or of a file by its path. */
export async function namedBlock(name: string): Promise<Result<ChosenBlock>> {
  const known = libraryBlock(name);
  if (known.ok) return success({ block: known.value, why: 'named by --block' });
  if (!/[/\\.]/.test(name)) return known;
  const json = await readJson(name);
  const block = json.ok ? readBlock(json.value, name) : json;
  return block.ok ? success({ block: block.value, why: `read from ${name}` }) : block;
}

/** The block that --block names, or null for auto. */
export async function blockOrAuto(name: string): Promise<Result<Block | null>> {
  if (name === 'auto') return success(null);
  const named = await namedBlock(name);
  return named.ok ? success(named.value.block) : named;
}
