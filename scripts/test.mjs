// Everything that must hold before a change goes in: readers, lint, types, build, tests. Later steps run even when an earlier one fails.
// Each of lint, types and build counts as one passed or failed; the last line is the total.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { provideReaders } from './readers.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const COUNTS = /^(\d+) passed, (\d+) failed, (\d+) skipped$/;
const total = { passed: 0, failed: 0, skipped: 0 };

// What needs no reader goes on meanwhile; the tests of src, too, while readers are installed, which keeps no processor busy for long.
const named = process.argv.slice(2);
const VITEST = ['node_modules/vitest/vitest.mjs', 'run'];
const OF_SRC = ['--project', 'unit', '--project', 'mocked'];
let installing = true;
const readers = provideReaders().finally(() => {
  installing = false;
});
await Promise.all([step('build', ['scripts/build.mjs']), lintAndTypes()]);
const early = installing && named.length === 0;
if (early) await tests([...VITEST, ...OF_SRC]);
if ((await readers).length > 0 && process.env.CI) {
  console.log('FAILED readers: in CI every reader must be there');
  total.failed++;
}
process.env.KNUCKLEWRIGHT_BUILT = '1';
await tests(early ? [...VITEST, '--project', 'whole', '--project', 'browser'] : [...VITEST, ...named]);

process.exitCode = total.failed > 0 ? 1 : 0;
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);

async function lintAndTypes() {
  await step('lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.']);
  await step('types', ['node_modules/typescript/bin/tsc', '--noEmit']);
}

async function step(name, command) {
  const { code } = await run(command);
  console.log(`${code === 0 ? 'passed' : 'FAILED'} ${name}`);
  if (code === 0) total.passed++;
  else total.failed++;
}

async function tests(command) {
  const { code, output } = await run(command);
  const counts = output.trimEnd().split('\n').at(-1)?.match(COUNTS);
  const [passed, failed, skipped] = (counts ?? ['', 0, 0, 0]).slice(1).map(Number);
  total.passed += passed;
  total.skipped += skipped;
  // A run that broke before or after its tests counts as a failure of its own.
  total.failed += code !== 0 || !counts ? Math.max(failed, 1) : failed;
}

/** Runs a script of Node in the project's root, shows what it prints and returns that with the exit code. */
function run(args) {
  return new Promise((done) => {
    const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    child.stdout.setEncoding('utf8').on('data', (text) => {
      output += text;
      process.stdout.write(text);
    });
    child.on('error', (error) => done({ code: 1, output: String(error) }));
    child.on('close', (code) => done({ code, output }));
  });
}
