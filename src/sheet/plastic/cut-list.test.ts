import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvLine } from './csv-text.ts';
import { CUT_LIST_JSON_END, type CutPiece, cutListHeader, cutListJsonHead, cutListLine } from './cut-list.ts';
import { readCutList } from './read-cut-list.ts';
import { readStock, stockText } from './read-stock.ts';

const piece: CutPiece = {
  id: 'A-1-left-x',
  code: 'A-1',
  side: 'left',
  block: 'x',
  plate: null,
  length: 187.25,
  width: 20,
  quantity: 2,
  marks: [{ at: 12.5, role: 'seam', title: 'seam, "lap"' }],
  warnings: ['ESTIMATED'],
  invented: true,
  hand: null,
};

describe('csvLine', () => {
  it('is read back as it was by another reader, but for what a spreadsheet would run', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), (cells) => {
        const [read = []] = parse(`${csvLine(cells)}\n`, { relax_column_count: true, skip_empty_lines: false }) as string[][];
        expect(read.map((cell, i) => (cells[i] !== cell ? cell.replace(/^'/, '') : cell))).toEqual(cells);
      }),
    );
  });

  it.each(['=1+1', '+A1', '-A1', '@SUM(A1)', '\t=1', '  =1', '\r=1', '-1+1', '=HYPERLINK("x")'])('disarms %j', (cell) => {
    const [[read = ''] = []] = parse(`${csvLine([cell])}\n`, {}) as string[][];
    expect(read).toBe(`'${cell}`);
  });

  it.each(['-1', '-12.5', 12.5, -3, 'plain'])('leaves %j as it is', (cell) => {
    expect(csvLine([cell])).toBe(String(cell));
  });
});

describe('readCutList', () => {
  it('reads JSON and CSV that were written by this program', () => {
    const json = `${cutListJsonHead({ options: {} })}\n${JSON.stringify(piece)}${CUT_LIST_JSON_END}`;
    expect(readCutList(json, 'x')).toMatchObject({ ok: true, value: { pieces: [piece] } });
    const csv = `${cutListHeader()}\n${cutListLine(piece)}\n`;
    expect(readCutList(csv, 'x')).toMatchObject({ ok: true, value: { pieces: [{ ...piece, marks: [] }], settings: null } });
  });

  it.each(['length,width\n168,20\n', '\uFEFFlength;width;quantity\r\n168,0;20 mm;1\r\n', 'width,length\n2 cm,"168,0"\n'])(
    'reads %j from elsewhere',
    (text) => {
      expect(readCutList(text, 'x')).toMatchObject({
        ok: true,
        value: { pieces: [{ id: 'PIECE-1', length: 168, width: 20, quantity: 1 }] },
      });
    },
  );

  it.each([
    ['length,width\n168,x\n170,20,3\n', ''],
    ['length,width\n168,x\n-5,20\n', 'line 2, width'],
    ['length,width,quantity\n168,20,1.5\n', 'line 2, quantity'],
    ['length,width,id\n168,20,A\n170,20,A\n', 'id'],
    ['length,breadth\n168,20\n', 'header'],
    ['length,width\n', ''],
    ['{"schema":"other"}', 'schema'],
    ['{', ''],
  ])('refuses %j, saying where', (text, where) => {
    const read = readCutList(text, 'x');
    expect(read.ok ? [] : read.problems.map((p) => p.where)).toContain(where);
  });
});

describe('readStock', () => {
  it('reads what stockText wrote', () => {
    const stock = [{ id: 'R1', along: 610, across: 35.5 }];
    expect(readStock(stockText(stock), 'x')).toMatchObject({ ok: true, value: stock });
  });

  it.each(['id,along\nR,1\n', 'id,along,across\nR,1,x\n', 'id,along,across\nR,10,10\nR,10,10\n', 'id,along,across\nR,6000,10\n'])(
    'refuses %j',
    (text) => {
      expect(readStock(text, 'x').ok).toBe(false);
    },
  );
});
