import { describe, expect, it } from 'vitest';
import { CUT_LIST_SCHEMA } from './cut-list.ts';
import { readCutList } from './read-cut-list.ts';
import { readStock } from './read-stock.ts';
import { readTable } from './read-table.ts';
import { readShelf } from './shelf.ts';

const processorSeconds = (work: () => void) => {
  const before = process.cpuUsage();
  work();
  return process.cpuUsage(before).user / 1e6;
};

describe('tables that are longer than any workshop needs', () => {
  it('are refused after one row more than may be, not read to the end', () => {
    const rows = 'a,1,1\n'.repeat(500_000);
    const seconds = processorSeconds(() => {
      expect(readStock(`id,along,across\n${rows}`, 'stock.csv')).toMatchObject({ ok: false, problems: [{ code: 'STOCK' }] });
    });
    // To the end it took five seconds; a busy machine does not change processor time so much.
    expect(seconds).toBeLessThan(2);
    expect(readCutList(`id,length,width\n${rows}`, 'list.csv')).toMatchObject({ ok: false, problems: [{ code: 'CUT_LIST' }] });
  });

  it('with a header that is none get one message, not one for each row', () => {
    const read = readCutList(`999\n${'comment 1/2 [x]\n999\n'.repeat(30_000)}`, 'list.csv');
    expect(read.ok ? [] : read.problems).toEqual([expect.objectContaining({ where: 'header' })]);
    // A number as a cell's name makes the engine keep a long list for each row.
    const table = readTable('id,999\nA,1\n', ['id'], 10, (message) => ({ code: 'TABLE', where: '', message, kind: 'input' }));
    expect(table).toEqual({ ok: true, value: { header: ['id', '999'], rows: [{ line: 2, cells: { id: 'A' } }] }, warnings: [] });
  });
  it('with a fault in every row get fifty messages', () => {
    const stock = readStock(`id,along,across\n${'a,0,x\n'.repeat(5000)}`, 'stock.csv');
    expect(stock.ok ? 0 : stock.problems.length).toBe(50);
  });
});

it('a list in JSON with a name twice in one piece is refused: readers would take one or the other', () => {
  const piece =
    '{"id":"A","code":"A","side":null,"block":null,"plate":null,"length":150,"width":20,"quantity":1,"marks":[],"warnings":[],"invented":true,"hand":null}';
  const list = (pieces: string) => `{"schema":"${CUT_LIST_SCHEMA}","units":"mm","settings":{},\n"pieces":[${pieces}]}`;
  expect(readCutList(list(piece), 'list.json')).toMatchObject({ ok: true, value: { pieces: [{ quantity: 1 }] } });
  expect(readCutList(list(piece.replace('"quantity":1', '"quantity":1,"quantity":7')), 'list.json')).toMatchObject({
    ok: false,
    problems: [{ code: 'JSON_NAME_TWICE', message: expect.stringContaining('list.json: line 2: "quantity" stands twice') }],
  });
  expect(readCutList(list(piece).slice(0, -1), 'list.json')).toMatchObject({ ok: false, problems: [{ code: 'JSON_SYNTAX' }] });
});

it('a table from a spreadsheet is read alike by all: semicolons, commas in figures, names of columns in any case, empty rows', () => {
  const size = { id: 'A', length: 182.5, width: 36 };
  expect(readShelf('Id;Length;Width;Count\nA;182,5;36;2\n;;;\n', 'shelf.csv')).toMatchObject({ ok: true, value: [{ ...size, count: 2 }] });
  expect(readCutList('Id;Length;Width\nA;182,5;36\n;;\n', 'list.csv')).toMatchObject({ ok: true, value: { pieces: [size] } });
  const stock = readStock('Id;Along;Across\nA;182,5;36\n;;\n', 'stock.csv');
  expect(stock).toMatchObject({ ok: true, value: [{ id: 'A', along: 182.5, across: 36 }] });
});
