import { PLACES, type Place } from '../block/block.ts';
import { DIGITS } from '../hand/digits.ts';
import { plain } from '../units/number.ts';
import type { Made } from './case.ts';

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

/** Where the digits of a strip lie: "ring lowered; long, little enclosed". */
export function blockText({ block }: Extract<Made, { kind: 'strip' }>): string {
  const at = (place: Place) => DIGITS.filter((digit) => block.places[digit] === place);
  return PLACES.toReversed()
    .flatMap((place) => (at(place).length === 0 ? [] : [`${at(place).join(', ')} ${place}`]))
    .join('; ');
}
