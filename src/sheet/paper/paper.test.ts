import { describe, expect, it } from 'vitest';
import { LEAST_PRINTABLE, PAPERS, printableBox, readMargin, readPaper } from './paper.ts';

const size = (text: string) => {
  const paper = readPaper(text);
  return paper.ok ? [paper.value.width, paper.value.height] : paper.problems.map((p) => p.message);
};

describe('readPaper(text, margin)', () => {
  // ISO 216: A4 210 x 297, A3 297 x 420. ANSI/ASME Y14.1: Letter 8.5 x 11 in.
  it.each([
    ['a4', [210, 297]],
    [' A3 ', [297, 420]],
    ['Letter', [8.5 * 25.4, 11 * 25.4]],
    ['200x300', [200, 300]],
    ['300 x 200', [200, 300]],
    ['8.5in x 14in', [215.9, 355.6]],
    ['148×210', [148, 210]],
  ])('reads %j', (text, expected) => {
    for (const [i, side] of size(text).entries()) expect(side).toBeCloseTo(expected[i] ?? Number.NaN, 9);
  });

  it.each(['a5x', '200', '200x', 'x', '200x300x400', '-200x300', 'toString', ''])('refuses %j and says what is possible', (text) => {
    expect(readPaper(text)).toMatchObject({ ok: false, problems: [{ code: 'PAPER', kind: 'input' }] });
    expect(size(text)[0]).toContain('width x height in mm');
  });

  it('refuses paper too small for bars and card, and says the least for these margins', () => {
    expect(size('100x150')[0]).toContain('123 x 150 mm or larger');
    expect(size('123x150')).toEqual([123, 150]);
    expect(readPaper('123x150', 11).ok).toBe(false);
    expect(LEAST_PRINTABLE.short).toBeGreaterThanOrEqual(100);
    expect(size('3000x200')[0]).toContain('larger than 2000 mm');
  });
});

describe('readMargin(text)', () => {
  it('reads millimetres and refuses what no printer or no page can have', () => {
    expect(readMargin('12,5')).toMatchObject({ ok: true, value: 12.5 });
    expect(readMargin('2')).toMatchObject({ ok: false });
    expect(readMargin('51')).toMatchObject({ ok: false });
    expect(readMargin('wide')).toMatchObject({ ok: false });
  });
});

describe('printableBox(paper, orientation, margin, area)', () => {
  it('is the paper less its margins', () => {
    expect(printableBox(PAPERS.a3, 'landscape', 10, 'both')).toEqual({ minX: 10, minY: 10, maxX: 410, maxY: 287 });
    expect(printableBox(PAPERS.a4, 'portrait', 5, 'paper')).toEqual({ minX: 5, minY: 5, maxX: 205, maxY: 292 });
  });

  it.each(['portrait', 'landscape'] as const)('of both lies inside A4 and inside Letter, printed centred on the other, %s', (way) => {
    for (const paper of [PAPERS.a4, PAPERS.letter]) {
      const box = printableBox(paper, way, 10, 'both');
      const [w, h] = way === 'portrait' ? [paper.width, paper.height] : [paper.height, paper.width];
      for (const other of [PAPERS.a4, PAPERS.letter]) {
        const [ow, oh] = way === 'portrait' ? [other.width, other.height] : [other.height, other.width];
        const [dx, dy] = [(ow - w) / 2, (oh - h) / 2];
        expect(box.minX + dx).toBeGreaterThanOrEqual(10 - 1e-9);
        expect(box.minY + dy).toBeGreaterThanOrEqual(10 - 1e-9);
        expect(box.maxX + dx).toBeLessThanOrEqual(ow - 10 + 1e-9);
        expect(box.maxY + dy).toBeLessThanOrEqual(oh - 10 + 1e-9);
      }
    }
  });
});
