import { describe, expect, it } from 'vitest';
import { readCutList } from './read-cut-list.ts';
import { readStock } from './read-stock.ts';

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

  it('with a fault in every row get fifty messages', () => {
    const stock = readStock(`id,along,across\n${'a,0,x\n'.repeat(5000)}`, 'stock.csv');
    expect(stock.ok ? 0 : stock.problems.length).toBe(50);
  });
});
