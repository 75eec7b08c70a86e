import type { Block } from '../../block/block.ts';
import type { ChosenBlock } from '../../block/choose-block.ts';
import { blockById, blocks } from '../../block/library.ts';
import { readBlock } from '../../block/read-block.ts';
import { readJson } from '../../files/read-file.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { PLATE_ANGLE, PLATE_FACES } from '../../pattern/plate/plate-design.ts';
import { plateById, plateOfFaces, plates } from '../../pattern/plate/plate-names.ts';
import { type PlatePreset, readPlate } from '../../pattern/plate/read-plate.ts';
import { parseDegrees } from '../../units/angle.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { didYouMean } from '../../units/typed-name.ts';
import { flagProblem, readWords } from './flag.ts';

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
  if (known.ok) return success({ block: known.value, why: { kind: 'named' } });
  if (!/[/\\.]/.test(name)) return known;
  const json = await readJson(name);
  const block = json.ok ? readBlock(json.value, name) : json;
  return block.ok ? success({ block: block.value, why: { kind: 'read', file: name } }) : block;
}

/** The block that --block names, or null for auto. */
export async function blockOrAuto(name: string): Promise<Result<Block | null>> {
  if (name === 'auto') return success(null);
  const named = await namedBlock(name);
  return named.ok ? success(named.value.block) : named;
}

/** A face by its name, a plate of the library by its id, or of a file by its path. A bare face takes in all four digits. */
export async function namedPlate(name: string): Promise<Result<PlatePreset>> {
  const faces = PLATE_FACES.find((known) => known === name);
  const known = faces ? plateOfFaces(faces) : plateById(name);
  if (known) return success(known);
  if (!/[/\\.]/.test(name)) {
    const names = [...PLATE_FACES, ...plates().map((plate) => plate.id)];
    const hint = didYouMean(name, names, 'a plate file can be named, or one of');
    return failure(flagProblem('--plate', `there is no plate ${quote(name)}${hint}`));
  }
  const json = await readJson(name);
  return json.ok ? readPlate(json.value, name) : json;
}

/** The digits of --digits from index to little, or null where it is not given. */
export function readDigitsFlag(list: string | undefined): Result<readonly DigitName[] | null> {
  return list === undefined ? success(null) : readWords('--digits', list, DIGITS, 'digit', 'digits');
}

/** The MP angle of --angle, or null where it is not given; degrees. */
export function readAngleFlag(text: string | undefined): Result<number | null> {
  if (text === undefined) return success(null);
  const angle = parseDegrees(text);
  if (angle.ok && angle.degrees <= PLATE_ANGLE.high) return success(angle.degrees);
  const why = angle.ok ? `${text} is out of range` : angle.reason;
  return failure(flagProblem('--angle', `${why}; ${PLATE_ANGLE.low} to ${PLATE_ANGLE.high} degrees is allowed`));
}
