import { readFileSync } from 'node:fs';
import type { Hand } from '../src/hand/hand.ts';
import { parseHandText } from '../src/hand/read-hand.ts';
import { type MadePlate, makePattern } from '../src/pattern/make-pattern.ts';
import { PLATE_FACES } from '../src/pattern/plate/plate-design.ts';
import { plateById, plateOfFaces } from '../src/pattern/plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS, type PlateOptions } from '../src/pattern/plate/plate-options.ts';
import { designFor, type PlatePreset } from '../src/pattern/plate/read-plate.ts';
import type { Language } from '../src/words/language.ts';

/** The invented demonstration hand with its palm measured. */
export function demoPlateHand(): Hand {
  const text = readFileSync(new URL('../fixtures/demo-hand-plate.json', import.meta.url), 'utf8');
  const hand = parseHandText(text);
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  return hand.value;
}

/** A preset of the library, or the plate of one face or both by the id that it has then. */
export function presetOf(id: string): PlatePreset {
  const faces = PLATE_FACES.find((f) => id === `plate-${f}`);
  const preset = faces ? plateOfFaces(faces) : plateById(id);
  if (!preset) throw new Error(`no plate ${id}`);
  return preset;
}

const usualHand = demoPlateHand();
const plates = new Map<string, MadePlate>();

/** A plate of the library on a hand, at an angle where the preset names none; of the demonstration hand the same one again, whose pictures are drawn once. Throws when it cannot be made. */
export function presetPlate(
  id: string | PlatePreset,
  angle: number | null = null,
  hand = usualHand,
  options: Partial<PlateOptions> = {},
  language: Language = 'en',
): MadePlate {
  const key = JSON.stringify([id, angle, options, language]);
  const before = hand === usualHand ? plates.get(key) : undefined;
  if (before) return before;
  const preset = typeof id === 'string' ? presetOf(id) : id;
  const design = designFor(hand, preset, { digits: null, angle, planned: 45 });
  if (!design.ok) throw new Error(design.problems.map((p) => p.message).join('\n'));
  const made = makePattern({
    kind: 'plate',
    hand,
    plate: design.value,
    options: { ...DEFAULT_PLATE_OPTIONS, ...options },
    date: null,
    language,
  });
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join('\n'));
  if (hand === usualHand) plates.set(key, made.value);
  return made.value;
}
