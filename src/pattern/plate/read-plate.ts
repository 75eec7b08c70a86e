import * as z from 'zod';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { digitsIn } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { formWords, lateForm, readSmallFile } from '../../units/form-problems.ts';
import { plain } from '../../units/number.ts';
import { failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { fileId, plainLine } from '../../units/text-form.ts';
import { type OptionSource, optionProblem, optionsForm, readOptionTable } from '../option-table.ts';
import { PLATE_ANGLE, PLATE_FACES, type PlateDesign, type PlateFaces } from './plate-design.ts';
import { LEAST_NOTCH, PLATE_OPTION_TABLE, type PlateOptions } from './plate-options.ts';

/** The form of an object of plate options, for presets and for the JSON Schema. */
const plateOptionsForm = lateForm(() => optionsForm(PLATE_OPTION_TABLE));

/** JSON Schema of an options file for a plate. */
export function plateOptionsJsonSchema(): object {
  return z.toJSONSchema(plateOptionsForm(), { io: 'input' });
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

const degrees = z.number().min(PLATE_ANGLE.low).max(PLATE_ANGLE.high);

/** A plate file, `knucklewright/plate@1`. */
const plateForm = lateForm(() =>
  z.strictObject({
    schema: z.literal('knucklewright/plate@1'),
    id: fileId().describe('Name of the plate, used in file names'),
    title: plainLine(80).min(1).optional().describe('What the plate does, in words'),
    faces: z.enum(PLATE_FACES).describe('dorsal stops MP extension, palmar stops MP flexion, both hold the joint still'),
    digits: z
      .union([z.array(z.enum(DIGITS)).min(1).max(DIGITS.length), z.literal('target-and-neighbours')])
      .describe('Digits whose MP joints are held, neighbours from radial to ulnar; or the digit to be treated with its neighbours'),
    angle: degrees.optional().describe('MP flexion in degrees; without it the angle is asked for, or taken from the plan'),
    angles: z.strictObject({ from: degrees, to: degrees }).optional().describe('Angles that the plate is meant for; others are warned of'),
    options: plateOptionsForm().optional().describe('Options that differ from the defaults; flags win over them'),
  }),
);

/** A plate by its file: what a design needs, with the digits and the angle still open where the hand decides. */
export interface PlatePreset {
  readonly id: string;
  readonly title: string;
  readonly faces: PlateFaces;
  readonly digits: readonly DigitName[] | 'target-and-neighbours';
  readonly angle: number | null;
  readonly angles: { readonly from: number; readonly to: number } | null;
  readonly options: Readonly<Record<string, unknown>>;
}

const FORM = {
  schema: 'knucklewright/plate@1',
  code: 'PLATE_FORM',
  whole: 'the plate',
  advice:
    'A plate file looks like {"schema": "knucklewright/plate@1", "id": "…", "faces": "dorsal", "digits": ["ring", "little"], "angle": 45}.',
} as const;

/** JSON Schema of a plate file. */
export function plateJsonSchema(): object {
  return z.toJSONSchema(plateForm(), { io: 'input' });
}

/** A plate preset from parsed JSON, checked against the form; `source` names the file in messages. */
export function readPlate(json: unknown, source: string): Result<PlatePreset> {
  const read = readSmallFile(plateForm(), json, source, FORM);
  if (!read.ok) return read;
  const { id, title, faces, digits, angle, angles, options } = read.value;
  return success({
    id,
    title: title ?? id,
    faces,
    digits: digits === 'target-and-neighbours' ? digits : DIGITS.filter((digit) => digits.includes(digit)),
    angle: angle ?? null,
    angles: angles ?? null,
    options: options ?? {},
  });
}

/** A design as a drawing carries it: every digit and the angle named. */
export const carriedDesign = lateForm(() => {
  const { id, title, faces } = plateForm().shape;
  return z.strictObject({
    id,
    title: title.unwrap(),
    faces,
    digits: z.array(z.enum(DIGITS)).min(1).max(DIGITS.length),
    angle: degrees,
  });
});

/** The design that a drawing carries, checked against its form; `source` names the drawing in messages. */
export function readDesign(json: unknown, source: string): Result<PlateDesign> {
  const read = carriedDesign().safeParse(json);
  if (!read.success) {
    return failure(
      ...read.error.issues.map((issue) => ({
        code: 'PLATE_FORM',
        where: ['plate', ...issue.path].join('.'),
        message: `${source}: ${['plate', ...issue.path].join('.')} ${formWords(issue, json)}. Draw the plate again from the hand file.`,
        kind: 'input' as const,
      })),
    );
  }
  return success({ ...read.data, digits: DIGITS.filter((digit) => read.data.digits.includes(digit)) });
}

/** What a person, or a plan, says beside the preset; null where nothing was said. */
interface PlateChoice {
  readonly digits: readonly DigitName[] | null;
  readonly angle: number | null;
  /** The plan's angle for this hand, degrees: used when neither person nor preset names one. */
  readonly planned: number | null;
}

/** The design for a hand: the person's digits and angle before the preset's, the plan's angle last. Warns outside the preset's angles. */
export function designFor(hand: Hand, preset: PlatePreset, choice: PlateChoice): Result<PlateDesign> {
  const problems: Problem[] = [];
  const digits = choice.digits ?? (preset.digits === 'target-and-neighbours' ? targetAndNeighbours(hand) : preset.digits);
  if (!digits) {
    const message = `target: plate "${preset.id}" takes in the digit to be treated and its neighbours, but the hand file names no target. Add "target", or name the digits.`;
    problems.push({ code: 'NO_TARGET', where: 'target', message, kind: 'input' });
  }
  const angle = choice.angle ?? preset.angle ?? choice.planned;
  if (angle === null) {
    const message = `angle: plate "${preset.id}" has no MP angle of its own. Give one, ${PLATE_ANGLE.low} to ${PLATE_ANGLE.high} degrees.`;
    problems.push({ code: 'PLATE_ANGLE', where: 'angle', message, kind: 'input' });
  }
  if (!digits || angle === null) return failure(...problems);
  const { angles } = preset;
  const warnings: Warning[] = [];
  if (angles && (angle < angles.from || angle > angles.to)) {
    warnings.push({
      code: 'PLATE_ANGLE_UNUSUAL',
      where: 'angle',
      message: `an MP angle of ${plain(angle, 1)} degrees lies outside the ${plain(angles.from)} to ${plain(angles.to)} that plate "${preset.id}" is meant for`,
      value: angle,
      limit: angle < angles.from ? angles.from : angles.to,
      next: 'go on if that is what you want',
    });
  }
  return success({ id: preset.id, title: preset.title, faces: preset.faces, digits, angle }, warnings);
}

/** The target with its measured neighbours, from radial to ulnar; null without a target. */
function targetAndNeighbours(hand: Hand): readonly DigitName[] | null {
  const target = hand.target?.digit;
  if (!target) return null;
  const at = DIGITS.indexOf(target);
  return digitsIn(hand.digits).filter((digit) => Math.abs(DIGITS.indexOf(digit) - at) <= 1);
}
