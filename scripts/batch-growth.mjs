// How the processor time of a batch grows with the number of hands: from the sheet bench's own rows, or measured here where it has none.
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle-tests.mjs';

/** Smaller batches; the bench of sheets measures the one of 10,000. */
const SMALLER = [10, 100, 1000];

/**
 * Rows {hands, seconds, cpuSeconds, peakMb?} in order, the exponent over all of them and over the last two.
 * @param batch what scripts/bench-sheets.mjs says of its batch
 * @param figures the bundle of tests/figures/figures.ts
 * @param scratch a folder for files that are gone afterwards
 */
export function growthOf(batch, { handsTable, exponentOf }, scratch) {
  const rows = batch.growth ?? [
    ...SMALLER.map((hands) => ({ hands, ...timed(hands, handsTable, scratch) })),
    { hands: batch.rows, seconds: batch.listSeconds, cpuSeconds: batch.listCpuSeconds },
  ];
  return { rows, exponent: batch.exponent ?? exponentOf(rows), lastDecade: exponentOf(rows.slice(-2)) };
}

/** Time of a whole batch command that writes the cut list alone, as the sheet bench does. */
function timed(hands, handsTable, scratch) {
  console.log(`batch of ${hands}`);
  const table = join(scratch, `hands-${hands}.csv`);
  writeFileSync(table, handsTable(hands));
  const flags = [
    '--block',
    'ring-lowered-in-four',
    '--files',
    'none',
    '--formats',
    'svg',
    '--out',
    join(scratch, `batch-${hands}`),
    '--json',
  ];
  const command = [process.execPath, join(root, 'dist', 'knucklewright.js'), 'batch', table, ...flags];
  const from = performance.now();
  const { status, stderr } = spawnSync('bash', ['-c', 'TIMEFORMAT="%U %S"; time "$@"', 'bash', ...command], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (status !== 0) throw new Error(`batch of ${hands}: ${stderr.slice(0, 500)}`);
  const times = stderr.trimEnd().split('\n').at(-1).split(' ').map(Number);
  return { seconds: (performance.now() - from) / 1000, cpuSeconds: times.reduce((sum, s) => sum + s, 0) };
}
