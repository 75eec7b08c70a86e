import type { SheetPart } from '../src/sheet/plastic/layout.ts';
import { seeded } from '../src/units/chance.ts';

/** Sides of the sheet that is cut up, mm. */
export const CUT_SHEET = { id: 'sheet', along: 600, across: 400 };

/** A full sheet cut from edge to edge into so many parts of whole mm, in any order and turn: one sheet holds them, without waste. */
export function cutUpSheet(seed: number, count: number): readonly SheetPart[] {
  const random = seeded(seed);
  const rest: (readonly [number, number])[] = [[CUT_SHEET.along, CUT_SHEET.across]];
  while (rest.length < count) {
    // One of the three largest, between a quarter and three quarters of a side.
    rest.sort((a, b) => b[0] * b[1] - a[0] * a[1]);
    const [[length, width]] = rest.splice(Math.floor(random() * Math.min(3, rest.length)), 1) as [readonly [number, number]];
    const share = 0.25 + 0.5 * random();
    const isAlong = random() < length / (length + width);
    const cut = Math.round(share * (isAlong ? length : width));
    rest.push(isAlong ? [cut, width] : [length, cut], isAlong ? [length - cut, width] : [length, width - cut]);
  }
  return rest
    .map(([length, width], i) => ({ place: random(), id: `${i + 1}`, sides: random() < 0.5 ? [length, width] : [width, length] }))
    .sort((a, b) => a.place - b.place)
    .map(({ id, sides: [length = 0, width = 0] }) => ({ id, length, width }));
}
