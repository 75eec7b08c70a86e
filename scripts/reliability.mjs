// Tries what must hold and writes the figures to docs/reliability.md. Usage: node scripts/reliability.mjs [--cases N] [--night] [--part PART]...
// N hostile inputs for each fuzzed door (100,000); with --night every writer is killed, not draw and the case alone. Hours, and a quiet machine.
// A part (files, faults, doors) can be tried alone, and of the faults one test of tests/faults (--fault NAME); what it found waits in out/reliability, and the text is written of all that is there.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleTests, load, root } from './bundle-tests.mjs';

const PARTS = { files: hostileFiles, faults: madeFaults, doors: fuzzedDoors };
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '100000' },
    night: { type: 'boolean', default: false },
    part: { type: 'string', multiple: true, default: Object.keys(PARTS) },
    fault: { type: 'string', multiple: true, default: ['killed', 'case-at-call', 'strace'] },
  },
});
const folder = join(root, 'out', 'reliability');
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

mkdirSync(folder, { recursive: true });
// `--part none` writes the text of what is there.
for (const part of values.part.filter((name) => name in PARTS)) {
  console.log(part);
  writeFileSync(join(folder, `${part}.json`), JSON.stringify(await PARTS[part]()));
}
const found = (part) => (existsSync(join(folder, `${part}.json`)) ? JSON.parse(readFileSync(join(folder, `${part}.json`), 'utf8')) : null);
const [hostile, faults, doors] = Object.keys(PARTS).map(found);
const sum = (list, of) => list.reduce((total, one) => total + of(one), 0);
const most = (list, of) => list.reduce((a, b) => (of(b) > of(a) ? b : a));
const sections = [
  hostile === null ? 'Hostile files were not tried.' : aboutFiles(hostile),
  faults === null ? 'No faults were made.' : aboutFaults(faults),
  doors === null ? 'No doors were fuzzed.' : aboutDoors(doors),
];
writeFileSync(
  join(root, 'docs', 'reliability.md'),
  `# Reliability, as measured

Made by \`node scripts/reliability.mjs\` with Node ${process.version}. Seconds are of the processor, by the kernel's count of the command and all that it began; a busy machine adds to
them.

${sections.join('\n\n')}
`,
);
const held = (hostile ?? []).every(({ ok }) => ok) && (faults?.held ?? true) && (doors?.rows ?? []).every((door) => door.held);
console.log(`docs/reliability.md written; ${held ? 'all held' : 'NOT all held'}`);
process.exitCode = held ? 0 : 1;

function aboutFiles(files) {
  const slowest = most(files, ({ seconds }) => seconds);
  const largest = most(files, ({ megabytes }) => megabytes);
  return `## Files that are made to hold the program up

${files.length} files of up to 1 MB (\`tests/hostile/hostile-files.ts\`), each read by the built command. Allowed are 5 s and 500 MB, and no fault; ${files.filter(({ ok }) => ok).length} of ${files.length} held.
The slowest was "${slowest.name}" (${slowest.seconds.toFixed(1)} s), the largest in memory "${largest.name}" (${largest.megabytes.toFixed(0)} MB).

| file | command | exit | s | MB |
| --- | --- | --- | --- | --- |
${files.map((one) => `| ${one.name}${one.ok ? '' : ' **did not hold**'} | ${one.command} | ${one.exit} | ${one.seconds.toFixed(1)} | ${one.megabytes.toFixed(0)} |`).join('\n')}`;
}

function aboutFaults({ rows, held: all, tests }) {
  return `## Kills and faults of the disk

${sum(rows, ({ count }) => count)} times a program was killed at a call of the disk, its write torn, what it had not flushed lost, or a call failed (${tests.join(', ')}). After each the next command ran,
and what was there was compared: every visit that was said to be kept is there once, every file is old or new, a mixed set is found. ${all ? 'All held.' : '**Not all held.**'}

| kind | of | times |
| --- | --- | --- |
${rows.map(({ kind, of, count }) => `| ${kind} | ${of} | ${count} |`).join('\n')}`;
}

function aboutDoors({ rows, seed, cases }) {
  const slowest = most(rows, ({ slowestMs }) => slowestMs);
  return `## Fuzzed doors

${rows.length} ways into the program, ${cases} hostile inputs each, seed ${seed}; ${rows.filter(({ held: one }) => one).length} held. The slowest input took ${slowest.slowestMs} ms of the processor (${slowest.name}; 2,000 are allowed).

| door | inputs | slowest, ms |
| --- | --- | --- |
${rows.map(({ name, cases: own, slowestMs, held: one }) => `| ${name}${one ? '' : ' **broken**'} | ${own} | ${slowestMs} |`).join('\n')}`;
}

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
  const tests = values.fault.map((name) => `tests/faults/${name}.test.ts`);
  const night = values.night ? { KNUCKLEWRIGHT_KILLS: '200', KNUCKLEWRIGHT_NIGHTLY: '1' } : {};
  const { stdout, held } = run(['node_modules/vitest/vitest.mjs', 'run', ...tests], { KNUCKLEWRIGHT_TELL: '1', ...night });
  const rows = [...stdout.matchAll(/faults: (\d+) \| ([^|\n]+) \| ([^|\n]+)/g)].map(([, count, kind, of]) => ({
    count: Number(count),
    kind,
    of,
  }));
  if (rows.length === 0) throw new Error(stdout);
  return { rows, held, tests };
}

function fuzzedDoors() {
  const { stdout } = run(['scripts/fuzz-nightly.mjs', '--cases', values.cases]);
  // What broke is told with its recipe.
  process.stdout.write(stdout);
  const rows = [...stdout.matchAll(/^(held {2}|BROKEN) (.+?) +(\d+) cases, [\d.]+ s, slowest (\d+) ms/gm)].map(
    ([, state, name, cases, slowestMs]) => ({
      held: state !== 'BROKEN',
      name,
      cases: Number(cases),
      slowestMs: Number(slowestMs),
    }),
  );
  if (rows.length === 0) throw new Error(stdout);
  return { rows, seed: /seed (\d+)/.exec(stdout)?.[1] ?? '', cases: values.cases };
}
