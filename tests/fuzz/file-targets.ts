import * as fc from 'fast-check';
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import demoPlateHand from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { blocks } from '../../src/block/library.ts';
import { readBlock } from '../../src/block/read-block.ts';
import { parseHandText } from '../../src/hand/read-hand.ts';
import { planHand } from '../../src/pattern/plan-hand.ts';
import { readStripOptions } from '../../src/pattern/strip/read-options.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { parseJsonText } from '../../src/units/json-text.ts';
import { type ByteMutation, byteMutations, type JsonMutation, jsonMutations, mutateBytes, mutateJson } from './damage.ts';
import { bomb, bombText } from './hostile.ts';
import { readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

/** How a hostile file is made: a valid one, mutated as JSON or as bytes, or a bomb by name. */
export type FileRecipe =
  | { readonly base: number; readonly json: readonly JsonMutation[] }
  | { readonly base: number; readonly bytes: readonly ByteMutation[] }
  | { readonly bomb: string };

/** Mostly small mutations; a bomb takes a thousand times as long. */
export const fileRecipes: fc.Arbitrary<FileRecipe> = fc.oneof(
  { weight: 60, arbitrary: fc.record({ base: fc.nat(20), json: jsonMutations }) },
  { weight: 39, arbitrary: fc.record({ base: fc.nat(20), bytes: byteMutations }) },
  { weight: 1, arbitrary: bomb },
);

/** The text that a file made so would be read as. */
export function fileText(recipe: FileRecipe, valid: readonly unknown[]): string {
  if ('bomb' in recipe) return bombText(recipe.bomb);
  const base = valid[recipe.base % valid.length];
  if ('json' in recipe) return JSON.stringify(mutateJson(base, recipe.json)) ?? '';
  return mutatedText(typeof base === 'string' ? base : JSON.stringify(base, null, 2), recipe.bytes);
}

/** A text with mutated bytes, read as files are read. */
export function mutatedText(text: string, mutations: readonly ByteMutation[]): string {
  return new TextDecoder().decode(mutateBytes(Buffer.from(text, 'utf8'), mutations));
}

const joint = { extensionDeficit: 20, flexion: 85 };
/** A hand of which everything that can be is measured and said. */
export const WHOLE_HAND = {
  ...demoPlateHand,
  digits: Object.fromEntries(
    Object.entries(demoPlateHand.digits).map(([digit, measures]) => [
      digit,
      { mpSetback: 0, ...measures, pipCircumference: measures.circumference + 4, rootCircumference: measures.circumference + 3 },
    ]),
  ),
  webSetback: demoHand.webSetback,
  target: {
    ...demoPlateHand.target,
    ...{ pipExtensionDeficitPassive: 10, pipFlexionDeficitPassive: 15 },
    ...{ mpActive: joint, mpPassive: joint, pipActive: { ...joint, extensionDeficit: 30, flexion: 80 }, pipPassive: joint },
    otherHandPip: { hyperextension: 5, flexion: 100 },
    ...{ readings: { extension: 3, flexion: 2 }, diagnosis: 'stiff after a sprain', weeks: 6, boutonniere: false },
    ...{ centralSlip: 'intact', stopSigns: [], surgeonAgrees: true },
  },
  flags: { hypermobile: ['ring', 'little'], swelling: true, sensation: false, hardEndFeel: false, unprotectedRepair: false },
  absent: [],
  child: false,
};

const HANDS: readonly unknown[] = [
  demoHand,
  WHOLE_HAND,
  { ...demoHand, target: { ...demoHand.target, pipFlexionDeficit: 30, pipExtensionDeficit: 20 } },
  {
    schema: 'knucklewright/hand@1',
    code: 'TEST-02',
    side: 'right',
    units: 'in',
    digits: {
      index: { width: '17,5 mm', circumference: 'ring 57' },
      long: { width: '11/16 in', circumference: 'US 7' },
      ring: { width: '1.65 cm', circumference: '53 mm', palmarRoom: '25 mm', dorsalLength: '45 mm', pipCircumference: '58 mm' },
    },
    handBreadth: '78 mm',
    handCircumference: '187 mm',
    target: { digit: 'long', pipExtensionDeficit: '0', pipFlexionDeficit: '25°', pipFlexionDeficitPassive: 10 },
    flags: { hypermobile: ['ring'], swelling: true, hardEndFeel: true },
  },
];

const BLOCKS: readonly unknown[] = blocks().map((b) => ({
  schema: 'knucklewright/block@1',
  id: b.id,
  title: b.title,
  places: { ...b.places },
}));

const OPTIONS: readonly unknown[] = [
  { ...DEFAULT_STRIP_OPTIONS },
  { width: '3/4 in', thickness: '1/16 in', differential: '15°', stretch: '-0,05', closure: 'spanning', seam: 'pinch', trim: 0 },
];

/** Targets for the JSON files that a person hands in. */
export const FILE_TARGETS: readonly Target[] = [
  target<FileRecipe>({
    name: 'hand',
    holds: 'a hand file is read to a finite hand that can be planned for, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, HANDS);
      const hand = readable(parseHandText(text, 'hand.json'), text);
      if (hand) for (const clinicianConfirms of [false, true]) readable(planHand(hand, DEFAULT_STRIP_OPTIONS, { clinicianConfirms }), text);
    },
  }),
  target<FileRecipe>({
    name: 'block',
    holds: 'a block file is read to a block that keeps the rules, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, BLOCKS);
      const json = readable(parseJsonText(text, 'block.json'), text);
      if (json !== null) readable(readBlock(json, 'block.json'), text);
    },
  }),
  target<FileRecipe>({
    name: 'options',
    holds: 'an options file is read to options in their ranges, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, OPTIONS);
      const json = readable(parseJsonText(text, 'options.json'), text);
      readable(
        readStripOptions([
          { origin: 'options.json', values: json },
          { origin: 'flags', values: { width: '20 mm' } },
        ]),
        text,
      );
    },
  }),
];
