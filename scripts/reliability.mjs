// Tries what must hold and writes the figures to docs/reliability.md. Usage: node scripts/reliability.mjs [--cases N] [--night]
// N hostile inputs for each fuzzed door (100,000); with --night every writer is killed, not draw and the case alone. Hours, and a quiet machine.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleTests, load, root } from './bundle-tests.mjs';

const { values } = parseArgs({ options: { cases: { type: 'string', default: '100000' }, night: { type: 'boolean', default: false } } });
const run = (args, environment = {}) => {
  const { stdout, status } = spawnSync(process.execPath, args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64e6,
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, NO_COLOR: '1', ...environment },
  });
  return { stdout, held: status === 0 };
};

console.log('hostile files');
const hostile = await hostileFiles();
console.log('faults');
const faults = madeFaults();
console.log('fuzzed doors');
const doors = fuzzedDoors();

const sum = (list, of) => list.reduce((total, one) => total + of(one), 0);
const most = (list, of) => list.reduce((a, b) => (of(b) > of(a) ? b : a));
const slowest = most(hostile, ({ seconds }) => seconds);
const largest = most(hostile, ({ megabytes }) => megabytes);
const slowestDoor = most(doors.rows, ({ slowestMs }) => slowestMs);

writeFileSync(
  join(root, 'docs', 'reliability.md'),
  `# Reliability, as measured

Made by \`node scripts/reliability.mjs --cases ${values.cases}${values.night ? ' --night' : ''}\` with Node ${process.version}; seconds are of the processor, by the kernel's count of the
command and all that it began. A busy machine adds to them.

## Files that are made to hold the program up

${hostile.length} files of up to 1 MB (\`tests/hostile/hostile-files.ts\`), each read by the built command. Allowed are 5 s and 500 MB, and no fault. ${hostile.filter(({ ok }) => ok).length} of ${hostile.length} held.
The slowest was ${slowest.name} (${slowest.seconds.toFixed(1)} s), the largest in memory ${largest.name} (${largest.megabytes.toFixed(0)} MB).

| file | command | exit | s | MB |
| --- | --- | --- | --- | --- |
${hostile.map((one) => `| ${one.name}${one.ok ? '' : ' **did not hold**'} | ${one.command} | ${one.exit} | ${one.seconds.toFixed(1)} | ${one.megabytes.toFixed(0)} |`).join('\n')}

## Kills and faults of the disk

${sum(faults.rows, ({ count }) => count)} times a program was killed at a call of the disk, its write torn, what it had not flushed lost, or a call failed. After each the next command ran and what was there was
compared: every visit that was said to be kept is there once, every file is old or new, a mixed set is found. ${faults.held ? 'All held.' : '**Not all held.**'}

| kind | of | times |
| --- | --- | --- |
${faults.rows.map(({ kind, of, count }) => `| ${kind} | ${of} | ${count} |`).join('\n')}

## Fuzzed doors

${doors.rows.length} ways into the program, ${values.cases} hostile inputs each, seed ${doors.seed}; ${doors.rows.filter(({ held }) => held).length} held. The slowest input took ${slowestDoor.slowestMs} ms of the processor (${slowestDoor.name}; 2,000 are allowed).

| door | inputs | slowest, ms |
| --- | --- | --- |
${doors.rows.map(({ name, cases, slowestMs, held }) => `| ${name}${held ? '' : ' **broken**'} | ${cases} | ${slowestMs} |`).join('\n')}
`,
);
const held = hostile.every(({ ok }) => ok) && faults.held && doors.rows.every((door) => door.held);
console.log(`docs/reliability.md written; ${held ? 'all held' : 'NOT all held'}`);
process.exitCode = held ? 0 : 1;

async function hostileFiles() {
  const folder = await bundleTests('tests/hostile/hostile-files.ts', 'tests/hostile/measured.ts');
  const { HOSTILE_FILES } = await load(folder, 'hostile-files');
  const { measured } = await load(folder, 'measured');
  const scratch = mkdtempSync(join(tmpdir(), 'hostile-'));
  const found = HOSTILE_FILES.map((file) => {
    const { exit, seconds, megabytes, out, err } = measured(file, scratch, root);
    const ok = seconds < 5 && megabytes < 500 && [0, 1, 3].includes(exit) && !/FAULT/.test(out + err);
    return { name: file.name, command: file.command, exit, seconds, megabytes, ok };
  });
  rmSync(scratch, { recursive: true });
  return found;
}

function madeFaults() {
  const tests = ['killed', 'case-at-call', 'strace'].map((name) => `tests/faults/${name}.test.ts`);
  const night = values.night ? { KNUCKLEWRIGHT_KILLS: '200', KNUCKLEWRIGHT_NIGHTLY: '1' } : {};
  const { stdout, held } = run(['node_modules/vitest/vitest.mjs', 'run', ...tests], { KNUCKLEWRIGHT_TELL: '1', ...night });
  const rows = [...stdout.matchAll(/faults: (\d+) \| ([^|\n]+) \| ([^|\n]+)/g)].map(([, count, kind, of]) => ({
    count: Number(count),
    kind,
    of,
  }));
  if (rows.length === 0) throw new Error(stdout);
  return { rows, held };
}

function fuzzedDoors() {
  const { stdout } = run(['scripts/fuzz-nightly.mjs', '--cases', values.cases]);
  const rows = [...stdout.matchAll(/^(held {2}|BROKEN) (.+?) +(\d+) cases, [\d.]+ s, slowest (\d+) ms/gm)].map(
    ([, state, name, cases, slowestMs]) => ({
      held: state !== 'BROKEN',
      name,
      cases: Number(cases),
      slowestMs: Number(slowestMs),
    }),
  );
  if (rows.length === 0) throw new Error(stdout);
  return { rows, seed: /seed (\d+)/.exec(stdout)?.[1] ?? '' };
}
