import { describe, expect, it } from 'vitest';
import { readShelf, type ShelfStrip, shelfAfter, shelfText, takeFromShelf } from './shelf.ts';

const strip = (id: string, length: number, width: number, count = 1): ShelfStrip => ({ id, length, width, count });
const need = (id: string, length: number, width = 20) => ({ id, length, width });

describe('the shelf', () => {
  it('is read with decimal commas, units and other columns, every fault with its line', () => {
    const read = readShelf('id;length;width;count;where\nA;182,5;33;4;drawer\n;18 cm;20;0;\n', 'shelf.csv');
    expect(read.ok && read.value).toEqual([strip('A', 182.5, 33, 4), strip('SHELF-2', 180, 20, 0)]);
    const wrong = readShelf('length,width,count\nlong,20,1\n180,20,-1\n', 'shelf.csv');
    expect(wrong.ok ? [] : wrong.problems.map(({ where }) => where)).toEqual(['line 2, length', 'line 3, count']);
    expect(readShelf('length,count\n1,1\n', 's.csv')).toMatchObject({
      problems: [{ message: 's.csv: header: has no width; a shelf has the columns length,width,count.' }],
    });
  });

  it('gives the shortest strip that is long and wide enough, and says what to cut off', () => {
    const shelf = [strip('LONG', 210, 33), strip('NARROW', 185, 20), strip('WIDE', 185, 33), strip('NONE', 181, 33, 0)];
    const [taken] = takeFromShelf(shelf, [need('A', 180.8, 32.5)]);
    expect(taken).toMatchObject({ from: { id: 'WIDE' } });
    expect(taken?.cutOff).toBeCloseTo(4.2, 9);
    expect(takeFromShelf(shelf, [need('A', 180)])[0]?.from?.id).toBe('NARROW');
  });

  it('serves as many as it can, whatever their order', () => {
    // One after the other in this order, the short one would take the long strip and leave the other without.
    const shelf = [strip('A', 180, 20), strip('B', 200, 20)];
    for (const needed of [
      [need('1', 150), need('2', 190)],
      [need('2', 190), need('1', 150)],
    ])
      expect(
        takeFromShelf(shelf, needed)
          .map(({ wanted, from }) => `${wanted.id}${from?.id}`)
          .sort(),
      ).toEqual(['1A', '2B']);
  });

  it('says what is left and what to cut anew, in a table that is the next shelf', () => {
    const shelf = [strip('A', 180, 20, 3), strip('B', 200, 20, 1)];
    const after = shelfAfter(shelf, takeFromShelf(shelf, [need('1', 170), need('2', 171), need('3', 240.2, 32.5)]));
    expect(after).toEqual([
      { ...strip('A', 180, 20, 1), anew: 2 },
      { ...strip('B', 200, 20, 1), anew: 0 },
      { ...strip('3', 241, 33, 0), anew: 1 },
    ]);
    const read = readShelf(shelfText(after), 'shelf-after.csv');
    expect(read.ok && read.value.map(({ id, count }) => [id, count])).toEqual([
      ['A', 1],
      ['B', 1],
      ['3', 0],
    ]);
  });
});
