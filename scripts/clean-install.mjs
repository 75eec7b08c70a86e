// Proves that no package needs to run a script of its own: clones the last commit, installs without scripts, builds and draws.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const clone = mkdtempSync(join(tmpdir(), 'clean-'));
process.on('exit', () => rmSync(clone, { recursive: true, force: true }));
const run = (command, ...args) => execFileSync(command, args, { cwd: clone, stdio: ['ignore', 'ignore', 'inherit'] });

execFileSync('git', ['clone', '--quiet', '--depth', '1', `file://${root}`, clone], { stdio: 'inherit' });
run('npm', 'ci', '--ignore-scripts', '--no-audit', '--no-fund');
run(process.execPath, 'scripts/build.mjs');
run(process.execPath, 'dist/knucklewright.js', 'draw', 'fixtures/demo-hand.json', '--out', 'out');
console.log(`installed without scripts, built, and drew ${readdirSync(join(clone, 'out')).join(', ')}`);
