import mpExtensionBlock from '../../../templates/plates/mp-extension-block.json' with { type: 'json' };
import mpImmobilisationDorsal from '../../../templates/plates/mp-immobilisation-dorsal.json' with { type: 'json' };
import mpImmobilisationPalmar from '../../../templates/plates/mp-immobilisation-palmar.json' with { type: 'json' };
import singleDigitWithNeighbours from '../../../templates/plates/single-digit-with-neighbours.json' with { type: 'json' };
import { DIGITS } from '../../hand/digits.ts';
import type { PlateFaces } from './plate-design.ts';
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
