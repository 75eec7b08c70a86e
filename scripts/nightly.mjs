// The long checks, one after the other: every test with another seed, 100,000 hostile inputs a target, faults at each call of the disk, 200 kills, an installation without scripts.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const cwd = fileURLToPath(new URL('..', import.meta.url));
const seed = Math.floor(Math.random() * 2 ** 31);
const CHECKS = [
  [
    `every test (all hostile files, kernel calls, a release from two clones with it), properties with the seed ${seed}`,
    ['node_modules/vitest/vitest.mjs', 'run'],
    { FC_SEED: String(seed), KNUCKLEWRIGHT_NIGHTLY: '1' },
  ],
  ['fuzz, 100,000 cases a target', ['scripts/fuzz-nightly.mjs', ...process.argv.slice(2)]],
  [
    'faults at each call of the disk for every writer, 200 kills at random',
    ['node_modules/vitest/vitest.mjs', 'run', 'tests/faults/killed.test.ts', 'tests/case-killed.test.ts'],
    { KNUCKLEWRIGHT_KILLS: '200' },
  ],
  ['drawings of other programs, made anew', ['scripts/foreign-drawings.mjs', 'out/foreign']],
  [
    'inspect reads them',
    ['node_modules/vitest/vitest.mjs', 'run', 'tests/inspect-foreign.test.ts'],
    { KNUCKLEWRIGHT_FOREIGN: 'out/foreign' },
  ],
  [
    'the odds of docs/advice.md, simulated anew',
    ['node_modules/vitest/vitest.mjs', 'run', 'src/record/course/course-odds.test.ts'],
    { KNUCKLEWRIGHT_ODDS: 'all' },
  ],
  ['installation without scripts', ['scripts/clean-install.mjs']],
  ['docs/reliability.md, made anew', ['scripts/reliability.mjs']],
];
const failed = CHECKS.filter(([name, args, environment = {}]) => {
  console.log(`\n== ${name}`);
  return spawnSync(process.execPath, args, { cwd, stdio: 'inherit', env: { ...process.env, ...environment } }).status !== 0;
});
console.log(`\n${CHECKS.length - failed.length} passed, ${failed.length} failed${failed.map(([name]) => `: ${name}`).join('')}`);
process.exitCode = failed.length > 0 ? 1 : 0;
