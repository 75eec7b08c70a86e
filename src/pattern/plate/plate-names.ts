import mpExtensionBlock from '../../../templates/plates/mp-extension-block.json' with { type: 'json' };
import mpImmobilisationDorsal from '../../../templates/plates/mp-immobilisation-dorsal.json' with { type: 'json' };
import mpImmobilisationPalmar from '../../../templates/plates/mp-immobilisation-palmar.json' with { type: 'json' };
import singleDigitWithNeighbours from '../../../templates/plates/single-digit-with-neighbours.json' with { type: 'json' };
import { DIGITS } from '../../hand/digits.ts';
import type { Speech } from '../../words/speech.ts';
import type { PlateDesign, PlateFaces } from './plate-design.ts';
import type { Strap } from './plate-straps.ts';
import { type PlatePreset, readPlate } from './read-plate.ts';

const FILES: readonly unknown[] = [mpImmobilisationDorsal, mpImmobilisationPalmar, mpExtensionBlock, singleDigitWithNeighbours];

let loaded: readonly PlatePreset[] | null = null;

/** The plates that come with the program, from `templates/plates`. Throws only if a shipped file is broken. */
export function plates(): readonly PlatePreset[] {
  loaded ??= FILES.map((file) => {
    const plate = readPlate(file, 'templates/plates');
    if (!plate.ok) throw new Error(plate.problems.map((p) => p.message).join('\n'));
    return plate.value;
  });
  return loaded;
}

/** The plate of that id, or undefined. */
export function plateById(id: string): PlatePreset | undefined {
  return plates().find((plate) => plate.id === id);
}

/** A plate that is nothing but its faces: all four digits, the angle asked for or taken from the plan. */
export function plateOfFaces(faces: PlateFaces): PlatePreset {
  const title = faces === 'both' ? 'MP immobilisation, dorsal and palmar plate' : `MP ${faces} plate`;
  return { id: `plate-${faces}`, title, faces, digits: DIGITS, angle: null, angles: null, options: {} };
}

/** A plate's name; one of the clinic's own keeps the title that it was given. */
export function plateName({ id, title, faces }: PlateDesign, { plate: w, language }: Speech): string {
  const own = plateById(id) ?? plateOfFaces(faces);
  const known = own.id === id && own.title === title ? (w.title as Readonly<Record<string, string>>)[id] : undefined;
  return language === 'en' ? title : (known ?? title);
}

/** What it holds: "MP 45 degrees, index to little". */
export function holdsIn({ digits, angle }: Pick<PlateDesign, 'digits' | 'angle'>, speech: Speech): string {
  return speech.plate.holds(speech.number(angle, 1), digitRange(digits, speech));
}

/** Where a strap goes round the hand or the digits that are held. */
export function strapPlace({ id }: Strap, digits: PlateDesign['digits'], speech: Speech): string {
  const { strap } = speech.plate;
  if (id === 'A') return strap.hand;
  return strap.fingers(digitRange(digits, speech));
}

function digitRange(digits: PlateDesign['digits'], { hand: names, plate: w }: Speech): string {
  const [first, last] = [digits[0], digits.at(-1)];
  if (!first || !last) return '';
  return first === last ? names.finger[first] : w.strap.range(names.short[first], names.short[last]);
}
