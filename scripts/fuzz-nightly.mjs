// Fuzzes every door of the program, each in a process of its own. Usage:
//   node scripts/fuzz-nightly.mjs [--cases N] [--seed S] [--door NAME]
// Without a seed one is drawn and printed; the same seed and number of cases give the same cases again.
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { bundleTests, load, root } from './bundle-tests.mjs';

const MOST_MEGABYTES = 512;
const { values } = parseArgs({
  options: { cases: { type: 'string', default: '100000' }, seed: { type: 'string' }, door: { type: 'string' } },
});
const seed = Number(values.seed ?? Math.floor(Math.random() * 2 ** 31));

const folder = await bundleTests('tests/fuzz/watch.ts', 'tests/fuzz/knock.ts', 'tests/fuzz/names.ts');
const { NAMES } = await load(folder, 'names');
const names = NAMES.filter((name) => values.door === undefined || name === values.door);
if (names.length === 0) throw new Error(`no door ${values.door}; the doors are ${NAMES.join(', ')}`);

console.log(`${names.length} doors, ${values.cases} cases each, seed ${seed}`);
const lanes = Math.min(names.length, 2, availableParallelism());
const found = (await Promise.all(Array.from({ length: lanes }, (_, lane) => knock(names.filter((_, k) => k % lanes === lane))))).flat();
const broken = found.filter(({ fault }) => fault !== null);
console.log(`${found.length - broken.length} doors held, ${broken.length} broken`);
process.exitCode = broken.length > 0 || found.length < names.length ? 1 : 0;

/** Has the doors knocked at in one process, prints what came of each as it comes, and returns it. */
function knock(doors) {
  const found = [];
  const tell = (result) => {
    found.push(result);
    const figures = `${result.cases} cases, ${result.seconds.toFixed(1)} s, slowest ${result.slowestMs.toFixed(0)} ms`;
    console.log(
      `${result.fault === null ? 'held  ' : 'BROKEN'} ${result.door.padEnd(12)} ${figures}${result.fault === null ? '' : `\n${result.fault}`}`,
    );
  };
  const line = (text) => {
    const result = JSON.parse(text);
    if (result.megabytes === undefined) tell(result);
    else if (result.megabytes <= MOST_MEGABYTES) console.log(`at most ${result.megabytes.toFixed(0)} MB for ${doors.join(', ')}`);
    else tell({ door: doors.join(', '), cases: 0, seconds: 0, slowestMs: 0, fault: `${result.megabytes.toFixed(0)} MB of memory` });
  };
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(folder, 'watch.mjs'), values.cases, String(seed), ...doors], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    createInterface({ input: child.stdout })
      .on('line', line)
      .on('close', () => done(found));
  });
}
