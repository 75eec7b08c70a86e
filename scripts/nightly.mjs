// The long checks, one after the other: every test with another seed, 200 kills, drawings of other programs made anew, an installation without scripts, and all that docs/reliability.md
// counts. Hours, and a quiet machine. Usage: node scripts/nightly.mjs [flags of scripts/reliability.mjs]
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { provideReaders } from './readers.mjs';

const cwd = fileURLToPath(new URL('..', import.meta.url));
const seed = Math.floor(Math.random() * 2 ** 31);
const CHECKS = [
  [
    `every test (all hostile files, kernel calls, a release from two clones with it), properties with the seed ${seed}`,
    ['node_modules/vitest/vitest.mjs', 'run'],
    { FC_SEED: String(seed), KNUCKLEWRIGHT_NIGHTLY: '1' },
  ],
  ['200 kills at random', ['node_modules/vitest/vitest.mjs', 'run', 'tests/case-killed.test.ts'], { KNUCKLEWRIGHT_KILLS: '200' }],
  ['drawings of other programs, made anew', ['scripts/foreign-drawings.mjs', 'out/foreign']],
  [
    'inspect reads them',
    ['node_modules/vitest/vitest.mjs', 'run', 'tests/inspect-foreign.test.ts'],
    { KNUCKLEWRIGHT_FOREIGN: 'out/foreign' },
  ],
  ['installation without scripts', ['scripts/clean-install.mjs']],
  // Hostile files, a large table, faults at each call of the disk for every writer, 100,000 hostile inputs a target.
  ['docs/reliability.md, made anew', ['scripts/reliability.mjs', '--night', ...process.argv.slice(2)]],
];
await provideReaders({ night: true });
const failed = CHECKS.filter(([name, args, environment = {}]) => {
  console.log(`\n== ${name}`);
  const begun = performance.now();
  const { status } = spawnSync(process.execPath, args, { cwd, stdio: 'inherit', env: { ...process.env, ...environment } });
  console.log(`== ${((performance.now() - begun) / 60_000).toFixed(0)} min`);
  return status !== 0;
});
console.log(`\n${CHECKS.length - failed.length} passed, ${failed.length} failed${failed.map(([name]) => `: ${name}`).join('')}`);
process.exitCode = failed.length > 0 ? 1 : 0;
