import * as fc from 'fast-check';
import { boxOf, signedArea } from '../../src/geometry/path.ts';
import { DIGITS, SIDES } from '../../src/hand/digits.ts';
import { PALM_FIELDS } from '../../src/hand/fields.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import { PLATE_ANGLE, PLATE_FACES, type PlateFaces } from '../../src/pattern/plate/plate-design.ts';
import { PLATE_NUMBER_OPTIONS } from '../../src/pattern/plate/plate-options.ts';
import { designFor, readPlate, readPlateOptions } from '../../src/pattern/plate/read-plate.ts';
import { parseJsonText } from '../../src/units/json-text.ts';
import dorsal from '../../templates/plates/mp-extension-block.json' with { type: 'json' };
import { type FileRecipe, fileRecipes, fileText } from './file-targets.ts';
import { anyCharacters, HOSTILE_TEXTS } from './hostile.ts';
import { between, fingers, someOptions } from './measurable.ts';
import { finite, hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';
import { checkWritten } from './written.ts';

/** What is read of a palm, mm: the tape round it follows from the breadth, so that most are possible ones. */
const palm = fc
  .record(
    {
      handBreadth: between(45, 120),
      round: between(2.1, 3),
      metacarpalLength: between(40, 135),
      mpDepth: between(12, 60),
    },
    { requiredKeys: ['round'] },
  )
  .map(({ round, ...measured }) => {
    const breadth = measured.handBreadth;
    const { from, to } = PALM_FIELDS.handCircumference.refuse;
    return breadth === undefined ? measured : { ...measured, handCircumference: Math.min(to, Math.max(from, breadth * round)) };
  });

interface PlateRecipe {
  readonly digits: Readonly<Record<string, object>>;
  readonly palm: Readonly<Record<string, number | undefined>>;
  readonly setbacks: readonly number[];
  readonly side: string;
  readonly title: string;
  readonly faces: PlateFaces;
  /** The first of the held digits, and how many. */
  readonly held: readonly [number, number];
  readonly angle: number;
  readonly options: object;
  /** 0: made and not only read, which takes a hundred times as long. */
  readonly make: number;
  /** 0: written as well. */
  readonly write: number;
}

const plateRecipes: fc.Arbitrary<PlateRecipe> = fc.record({
  digits: fingers,
  palm: fc.oneof({ weight: 3, arbitrary: palm }, { weight: 2, arbitrary: fc.constant({}) }),
  setbacks: fc.oneof(
    { weight: 2, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(between(0, 30), { minLength: DIGITS.length, maxLength: DIGITS.length }) },
  ),
  side: fc.constantFrom(...SIDES),
  title: fc.oneof(
    { weight: 2, arbitrary: fc.constant('MP plate') },
    { weight: 1, arbitrary: fc.oneof(fc.constantFrom(...HOSTILE_TEXTS), anyCharacters(40)) },
  ),
  faces: fc.constantFrom(...PLATE_FACES),
  held: fc.tuple(fc.nat(DIGITS.length - 1), fc.integer({ min: 1, max: DIGITS.length })),
  angle: between(PLATE_ANGLE.low, PLATE_ANGLE.high),
  options: fc.oneof(
    { weight: 2, arbitrary: someOptions({ numbers: PLATE_NUMBER_OPTIONS, choices: [] }) },
    { weight: 3, arbitrary: fc.constant({}) },
  ),
  make: fc.nat(11),
  write: fc.nat(9),
});

/** Targets of plates: the presets, and the drawing of any measurable hand. */
export const PLATE_TARGETS: readonly Target[] = [
  target<FileRecipe>({
    name: 'plate',
    holds: 'a plate preset is read, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, [dorsal]);
      const json = readable(parseJsonText(text, 'plate.json'), text);
      if (json !== null) readable(readPlate(json, 'plate.json'), text);
    },
  }),
  target<PlateRecipe>({
    name: 'draw plate',
    holds: 'any measurable hand with any allowed plate gives finite, sound, writable faces, or a refusal that says why',
    recipes: plateRecipes,
    feed(recipe) {
      const given = JSON.stringify(recipe);
      const digits = Object.fromEntries(
        Object.entries(recipe.digits).map(([digit, measures], k) => [
          digit,
          { ...measures, ...(recipe.setbacks[k] === undefined ? {} : { mpSetback: recipe.setbacks[k] }) },
        ]),
      );
      const file = { schema: 'knucklewright/hand@1', code: 'TEST-01', side: recipe.side, units: 'mm', digits, ...recipe.palm };
      const hand = readable(readHand(file, 'hand.json'), given);
      const [first, count] = recipe.held;
      const plate = { ...dorsal, title: recipe.title, faces: recipe.faces, digits: DIGITS.slice(first, first + count) };
      const preset = readable(readPlate(plate, 'plate.json'), given);
      const options = readable(readPlateOptions([{ origin: 'options.json', values: recipe.options }]), given);
      if (!hand || !preset || !options) return;
      const design = readable(designFor(hand, preset, { digits: null, angle: recipe.angle, planned: null }), given);
      if (!design || recipe.make !== 0) return;
      const made = readable(makePattern({ kind: 'plate', hand, plate: design, options, date: null }), given);
      if (!made) return;
      const { pattern, report } = made;
      finite(made);
      hold(report.faces.length === (recipe.faces === 'both' ? 2 : 1), () => `${report.faces.length} faces of ${recipe.faces}`);
      for (const part of pattern.parts) {
        const box = boxOf([part.outline]);
        const area = signedArea(part.outline);
        hold(area > 0 && area <= (box.maxX - box.minX) * (box.maxY - box.minY) + 1e-6, () => `an area of ${area} in its box`);
      }
      if (recipe.write === 0) checkWritten(pattern, given);
    },
  }),
];
