import type { Plan } from '../block/plan.ts';
import type { DigitName } from '../hand/digits.ts';
import { digitsIn } from '../hand/fields.ts';
import type { Hand } from '../hand/hand.ts';
import { makePlate, type Plate } from '../pattern/plate/plate.ts';
import { PLATE_ANGLE, type PlateDesign } from '../pattern/plate/plate-design.ts';
import { plateOfFaces } from '../pattern/plate/plate-names.ts';
import type { PlateOptions } from '../pattern/plate/plate-options.ts';
import { designFor, type PlatePreset, readPlateOptions } from '../pattern/plate/read-plate.ts';
import { parseDegrees } from '../units/angle.ts';
import type { LengthUnit } from '../units/length.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { optionValues } from './rewrite-entries.ts';
import type { Entries } from './state.ts';

/** A plate that could be drawn, with what it was drawn from. */
export interface DrawnPlate extends Plate {
  readonly kind: 'plate';
  readonly hand: Hand;
  readonly design: PlateDesign;
  readonly options: PlateOptions;
  readonly date: string | null;
  readonly warnings: readonly Warning[];
}

/** Whether the entries ask for a plate: the person chose it, or the plan suggests it and nothing was chosen. */
export function wantsPlate(entries: Entries, plan: Plan | null): boolean {
  return entries.block === 'plate' || (entries.block === 'auto' && plan?.order[0] === 'plate');
}

/**
 * The plate of the entries, round the digits that were measured or the treated one and its neighbours, with every problem at once. The sheet is the strip's.
 * @param asked the fingers whose fields are asked for; of an average hand the plate takes in no others, as it will when they are measured
 */
export function drawPlate(
  hand: Hand,
  plan: Plan | null,
  entries: Entries,
  unit: LengthUnit,
  date: string | null,
  asked: readonly DigitName[],
  language: Language = 'en',
): Result<DrawnPlate> {
  const angle = typedAngle(entries.plate.angle);
  const options = readPlateOptions([
    { origin: '', values: { thickness: optionValues(entries, unit).thickness, bend: entries.plate.bend } },
  ]);
  const problems: Problem[] = [
    ...(angle.ok ? [] : angle.problems),
    // The strip's field has another range, so its words would be wrong here.
    ...(options.ok ? [] : options.problems.map((p) => ({ ...p, code: 'PLATE_OPTION' }))),
  ];
  if (!angle.ok || !options.ok) return failure(...problems);
  const preset = plateOfFaces(entries.plate.faces);
  const shape: PlatePreset = entries.plate.digits === 'neighbours' ? { ...preset, digits: 'target-and-neighbours' } : preset;
  const digits = entries.plate.digits === 'neighbours' ? null : digitsIn(hand.digits).filter((digit) => asked.includes(digit));
  const choice = { digits, angle: angle.value, planned: plan?.plate?.degrees ?? null };
  const design = designFor(hand, shape, choice);
  if (!design.ok) return design;
  const made = makePlate(hand, design.value, options.value, date, language);
  if (!made.ok) return made;
  const warnings = [...(plan?.warnings ?? []), ...design.warnings, ...made.warnings];
  return success({ ...made.value, kind: 'plate', hand, design: design.value, options: options.value, date, warnings }, warnings);
}

/** Null where nothing was typed. */
function typedAngle(text: string): Result<number | null> {
  if (text.trim() === '') return success(null);
  const angle = parseDegrees(text);
  if (angle.ok && angle.degrees >= PLATE_ANGLE.low && angle.degrees <= PLATE_ANGLE.high) return success(angle.degrees);
  return failure({
    code: 'PLATE_ANGLE',
    where: 'angle',
    message: `angle: ${PLATE_ANGLE.low} to ${PLATE_ANGLE.high} degrees.`,
    kind: 'input',
  });
}
