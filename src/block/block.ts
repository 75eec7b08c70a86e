import { DIGITS, type DigitName } from '../hand/digits.ts';
import type { Problem } from '../units/result.ts';

/**
 * Where the band runs at a digit: `enclosed` one layer dorsal and one palmar; `raised` both layers palmar, the MP joint held in
 * relative extension; `lowered` both layers dorsal, the MP joint held in relative flexion.
 */
export const PLACES = ['enclosed', 'raised', 'lowered'] as const;

export type Place = (typeof PLACES)[number];

/** MP flexion that each place gives, in differentials; negative is extension. */
export const RELATIVE_FLEXION: Readonly<Record<Place, number>> = { enclosed: 0, raised: -1, lowered: 1 };

/** Layers of the strip on the palmar side of a digit. */
export const PALMAR_LAYERS: Readonly<Record<Place, number>> = { enclosed: 1, raised: 2, lowered: 0 };

/** Which digits the strip takes in, and the place of each. */
export interface Block {
  readonly id: string;
  readonly title: string;
  readonly places: Readonly<Partial<Record<DigitName, Place>>>;
}

/** One digit of a block with its place. */
export interface PlacedDigit {
  readonly digit: DigitName;
  readonly place: Place;
}

/** The block's digits from radial to ulnar. */
export function placedDigits(block: Pick<Block, 'places'>): readonly PlacedDigit[] {
  return DIGITS.flatMap((digit) => {
    const place = block.places[digit];
    return place === undefined ? [] : [{ digit, place }];
  });
}

/** How the block holds its held digits; a valid block holds them all one way. */
export function heldPlace(block: Pick<Block, 'places'>): 'raised' | 'lowered' {
  return Object.values(block.places).includes('raised') ? 'raised' : 'lowered';
}

/** The digits that are held, from radial to ulnar. In a valid block they are neighbours, since both borders are enclosed. */
export function heldDigits(block: Pick<Block, 'places'>): readonly DigitName[] {
  return placedDigits(block).flatMap(({ digit, place }) => (place === 'enclosed' ? [] : [digit]));
}

/** Whether a block holds all that another one holds, the same way, and has the digit that is treated, where the other one has it, in the same place. */
export function serves(other: Block, block: Block, treated: DigitName | undefined): boolean {
  const holds = heldDigits(block).every((held) => other.places[held] === block.places[held]);
  return holds && (treated === undefined || block.places[treated] === undefined || other.places[treated] === block.places[treated]);
}

const refused = (code: string, block: Block, message: string): Problem => ({
  code,
  where: 'block.places',
  message: `block "${block.id}": ${message}`,
  kind: 'refused',
});

/** The rules of a block; an empty list when it can be made. Each problem states its rule. */
export function blockProblems(block: Block): readonly Problem[] {
  const placed = placedDigits(block);
  const names = placed.map(({ digit }) => digit);
  const problems: Problem[] = [];
  if (placed.length < 3) {
    const seen = names.length === 0 ? 'none' : names.join(', ');
    problems.push(
      refused('BLOCK_COUNT', block, `a strip takes three or four digits, this block has ${placed.length} (${seen}). Add a neighbour.`),
    );
  }
  const first = names[0];
  const last = names.at(-1);
  if (first !== undefined && last !== undefined) {
    const gap = DIGITS.slice(DIGITS.indexOf(first), DIGITS.indexOf(last)).find((digit) => !names.includes(digit));
    if (gap) {
      problems.push(
        refused(
          'BLOCK_NEIGHBOURS',
          block,
          `the digits must be neighbours, but ${gap} between ${first} and ${last} is missing. Give ${gap} a place.`,
        ),
      );
    }
    for (const border of placed.filter(({ digit }) => digit === first || digit === last)) {
      if (border.place !== 'enclosed') {
        const rule = `both border digits must be enclosed or the band slips off, but ${border.digit} is ${border.place}. Enclose it, or add its neighbour as the border.`;
        problems.push(refused('BLOCK_BORDER', block, rule));
      }
    }
  }
  const places = new Set(placed.map(({ place }) => place));
  if (!places.has('raised') && !places.has('lowered')) {
    problems.push(
      refused('BLOCK_HOLDS_NONE', block, 'at least one digit must be raised or lowered, or nothing changes. Hold a middle digit.'),
    );
  }
  if (places.has('raised') && places.has('lowered')) {
    problems.push(
      refused(
        'BLOCK_MIXED',
        block,
        'raised and lowered digits cannot be mixed: both layers would cross in one web space. Hold them all one way.',
      ),
    );
  }
  return problems;
}
