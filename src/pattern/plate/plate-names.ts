import type { Speech } from '../../words/speech.ts';
import type { PlateDesign } from './plate-design.ts';
import { plateById, plateOfFaces } from './plate-library.ts';
import type { PlateFigures } from './plate-report.ts';
import type { Strap } from './plate-straps.ts';

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

/** Where a strap goes. */
export function strapPlace({ id }: Strap, { frame }: PlateFigures, speech: Speech): string {
  const { strap } = speech.plate;
  if (id === 'A') return strap.hand;
  return strap.fingers(
    digitRange(
      frame.row.digits.map((d) => d.digit),
      speech,
    ),
  );
}

function digitRange(digits: PlateDesign['digits'], { hand: names, plate: w }: Speech): string {
  const [first, last] = [digits[0], digits.at(-1)];
  if (!first || !last) return '';
  return first === last ? names.finger[first] : w.strap.range(names.short[first], names.short[last]);
}
