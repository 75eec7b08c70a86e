// Fuzzes every target of the program, or those that are named, in that order, each in a process of its own, or with --together a lane's in one.
// Usage: node scripts/fuzz-nightly.mjs [--cases N] [--seed S] [--lanes N] [--together] [--target NAME]...
// Without a seed one is drawn and printed; the same seed and number of cases give the same cases again.
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { bundleTests, load, root } from './bundle-tests.mjs';

const MOST_MEGABYTES = 512;
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '100000' },
    seed: { type: 'string' },
    lanes: { type: 'string', default: '2' },
    together: { type: 'boolean', default: false },
    target: { type: 'string', multiple: true, default: [] },
  },
});
const seed = Number(values.seed ?? Math.floor(Math.random() * 2 ** 31));

const folder = await bundleTests('tests/fuzz/watch.ts', 'tests/fuzz/run.ts', 'tests/fuzz/names.ts');
const { NAMES } = await load(folder, 'names');
const names = values.target.length > 0 ? values.target : NAMES;
const unknown = names.filter((name) => !NAMES.includes(name));
if (unknown.length > 0) throw new Error(`no target ${unknown.join(', ')}; the targets are ${NAMES.join(', ')}`);

console.log(`${names.length} targets, ${values.cases} cases each, seed ${seed}`);
const lanes = Math.min(names.length, Number(values.lanes), availableParallelism());
const waiting = values.together
  ? Array.from({ length: lanes }, (_, k) => names.filter((_, at) => at % lanes === k))
  : names.map((name) => [name]);
const found = (await Promise.all(Array.from({ length: lanes }, lane))).flat();
const broken = found.filter(({ fault }) => fault !== null);
console.log(`${found.length - broken.length} targets held, ${broken.length} broken`);
process.exitCode = broken.length > 0 || found.length < names.length ? 1 : 0;

/** Takes the targets that wait, one after the other. */
async function lane() {
  const found = [];
  for (let group = waiting.shift(); group !== undefined; group = waiting.shift()) found.push(...(await runTargets(group)));
  return found;
}

/** Has targets run in a process of their own, whose memory is theirs alone; prints what came of them, and returns it. */
function runTargets(group) {
  const found = [];
  const tell = (result) => {
    found.push(result);
    const figures = `${result.cases} cases, ${result.repeated} of them a bomb again, ${result.seconds.toFixed(1)} s, slowest ${result.slowestMs.toFixed(0)} ms`;
    console.log(
      `${result.fault === null ? 'held  ' : 'BROKEN'} ${result.target.padEnd(12)} ${figures}${result.fault === null ? '' : `\n${result.fault}`}`,
    );
  };
  const line = (text) => {
    const result = JSON.parse(text);
    if (result.megabytes === undefined) tell(result);
    else if (result.megabytes <= MOST_MEGABYTES) console.log(`at most ${result.megabytes.toFixed(0)} MB for ${group.join(', ')}`);
    else
      tell({
        target: group.join(', '),
        cases: 0,
        repeated: 0,
        seconds: 0,
        slowestMs: 0,
        fault: `${result.megabytes.toFixed(0)} MB of memory`,
      });
  };
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(folder, 'watch.mjs'), values.cases, String(seed), ...group], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    createInterface({ input: child.stdout })
      .on('line', line)
      .on('close', () => done(found));
  });
}
