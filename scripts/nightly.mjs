// The long checks, one after the other: 100,000 hostile inputs a door, 200 kills a command, an installation without scripts.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const cwd = fileURLToPath(new URL('..', import.meta.url));
const CHECKS = [
  ['fuzz, 100,000 cases a door', ['scripts/fuzz-nightly.mjs', ...process.argv.slice(2)]],
  ['200 kills', ['node_modules/vitest/vitest.mjs', 'run', 'tests/faults/killed.test.ts'], { KNUCKLEWRIGHT_KILLS: '200' }],
  ['installation without scripts', ['scripts/clean-install.mjs']],
  ['licences', ['scripts/licences.mjs']],
];
const failed = CHECKS.filter(([name, args, environment = {}]) => {
  console.log(`\n== ${name}`);
  return spawnSync(process.execPath, args, { cwd, stdio: 'inherit', env: { ...process.env, ...environment } }).status !== 0;
});
console.log(`\n${CHECKS.length - failed.length} passed, ${failed.length} failed${failed.map(([name]) => `: ${name}`).join('')}`);
process.exitCode = failed.length > 0 ? 1 : 0;
