import { expect, it } from 'vitest';
import { RowProgress } from './row-progress.ts';

const told = (isTTY: boolean) => {
  const lines: string[] = [];
  const terminal = { isTTY, write: (text: string) => lines.push(text) > 0 } as unknown as NodeJS.WriteStream;
  const progress = new RowProgress('hands.csv', terminal);
  for (let k = 1; k <= 1000; k++) progress.row(k + 1, k - 1, 1);
  progress.end();
  return lines;
};

it('tells how far a table is read at a terminal, not with every row, and nothing to a file', () => {
  const lines = told(true);
  expect(lines[0]).toBe('\rhands.csv: line 2, 0 hands done, 1 rows wrong');
  expect(lines.at(-1)).toBe('\n');
  expect(lines.length).toBeLessThan(100);
  expect(told(false)).toEqual([]);
});
