import { DIGITS } from '../hand/digits.ts';
import { plain } from '../units/number.ts';
import type { ChartWords } from '../words/record/chart-words.ts';
import type { Made, MadeStrip } from './case.ts';

/** What was made, in words: "strip ring-raised-in-three, differential 20 degrees, 159.9 mm long". */
export function madeText(made: Made): string {
  const length = made.flatLength === null ? '' : `, ${plain(made.flatLength, 1)} mm long`;
  if (made.kind === 'plate') {
    const faces = made.faces === 'both' ? 'dorsal and palmar' : made.faces;
    return `${faces} plate, MP at ${plain(made.mpAngle)} degrees${length}`;
  }
  const differential = made.differential === null ? '' : `, differential ${plain(made.differential)} degrees`;
  return `strip ${made.block.id}${differential}${length}`;
}

/** A to Z, then AA, AB, ...: the name of the k-th thing made in a case, from 0. */
export function madeLetter(k: number): string {
  const last = String.fromCharCode(65 + (k % 26));
  return k < 26 ? last : madeLetter(Math.floor(k / 26) - 1) + last;
}

/** Everything made in a case, in order, each with its letter and the index of its visit. */
export function madeInOrder(visits: readonly { readonly made: Made | null }[]): readonly { letter: string; visit: number; made: Made }[] {
  const found = visits.flatMap(({ made }, visit) => (made === null ? [] : [{ visit, made }]));
  return found.map((one, k) => ({ letter: madeLetter(k), ...one }));
}

/** Which digits of a strip are held apart from the others, above or below them. */
export function heldDigits({ block: { places } }: Pick<MadeStrip, 'block'>) {
  const placed = DIGITS.filter((one) => places[one] !== undefined);
  const held = placed.filter((one) => places[one] !== 'enclosed');
  return { held, higher: held.some((one) => places[one] === 'raised'), others: placed.filter((one) => places[one] === 'enclosed') };
}

/** What was made, for paper: "strip: ring lower than long and little, differential 20 degrees, 159.9 mm long". */
export function madeOnPaper(made: Made, words: ChartWords): string {
  const { flatLength: length } = made;
  if (made.kind === 'plate') return words.plate({ faces: made.faces, mpAngle: made.mpAngle, length });
  return words.strip({ ...heldDigits(made), differential: made.differential, length });
}
