import { readJson } from '../../files/read-file.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { PLATE_ANGLE, PLATE_FACES } from '../../pattern/plate/plate-design.ts';
import { plateById, plateOfFaces, plates } from '../../pattern/plate/plate-library.ts';
import { type PlatePreset, readPlate } from '../../pattern/plate/read-plate.ts';
import { parseDegrees } from '../../units/angle.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { didYouMean } from '../../units/typed-name.ts';
import { flagProblem } from './flag-problem.ts';
import { readWords } from './read-words.ts';

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
