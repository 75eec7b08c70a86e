// Tries what must hold and writes the figures to docs/reliability.md. Usage: node scripts/reliability.mjs [--cases N] [--night] [--hands N] [--part PART]...
// N hostile inputs for each fuzz target (100,000); with --night every writer is killed, not draw and the case alone. Hours, and a quiet machine.
// A table of N hands (100,000) is batched, stopped and gone on with.
// A part (files, table, faults, targets) can be tried alone, of the faults some tests of tests/faults (--fault NAME), of the targets some (--target NAME). What was found waits in
// out/reliability, or in another folder (--found FOLDER), with the day and the commit: a test or a target that is tried again takes the place of its rows there, and the text is
// written of all that is there. A test of faults that was run by hand with KNUCKLEWRIGHT_TELL=1, writer by writer (vitest's -t) or through the night, is taken from what it printed
// (--part faults --fault NAME --log FILE...), of the same commit.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleTests, load, root } from './bundle-tests.mjs';

const PARTS = { files: hostileFiles, table: manyHands, faults: madeFaults, targets: fuzzedTargets };
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '100000' },
    night: { type: 'boolean', default: false },
    hands: { type: 'string', default: '100000' },
    part: { type: 'string', multiple: true, default: Object.keys(PARTS) },
    fault: { type: 'string', multiple: true, default: ['killed', 'case-at-call', 'strace'] },
    target: { type: 'string', multiple: true, default: [] },
    log: { type: 'string', multiple: true, default: [] },
    found: { type: 'string', default: join(root, 'out', 'reliability') },
  },
});
const folder = values.found;
/** The day and the commit of what is tried now. */
const when = `${new Date().toISOString().slice(0, 10)}, ${git('rev-parse', '--short', 'HEAD')}${git('status', '--porcelain') === '' ? '' : ' and changes'}`;
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
const [hostile, table, faults, targets] = Object.keys(PARTS).map(found);
const sum = (list, of) => list.reduce((total, one) => total + of(one), 0);
const most = (list, of) => list.reduce((a, b) => (of(b) > of(a) ? b : a));
const sections = [
  hostile === null ? 'Hostile files were not tried.' : aboutFiles(hostile),
  table === null ? 'No large table was batched.' : aboutTable(table),
  faults === null ? 'No faults were made.' : aboutFaults(faults),
  targets === null ? 'No target was fuzzed.' : aboutTargets(targets),
];
writeFileSync(
  join(root, 'docs', 'reliability.md'),
  `# Reliability, as measured

Made by \`node scripts/reliability.mjs\` with Node ${process.version}, in parts: each says the day and the commit. Seconds are of the processor, by the kernel's count of the command and
all that it began; a busy machine adds to them.

${sections.join('\n\n')}
`,
);
const held =
  (hostile?.files ?? []).every(({ ok }) => ok) &&
  (table?.ok ?? true) &&
  (faults?.tests ?? []).every((test) => test.held) &&
  (targets?.rows ?? []).every((target) => target.held);
console.log(`docs/reliability.md written; ${held ? 'all held' : 'NOT all held'}`);
process.exitCode = held ? 0 : 1;

function git(...args) {
  return execFileSync('git', args, { cwd: root, encoding: 'utf8' }).trim();
}

/** What was found of a part, here or in an earlier run; null where it was not tried. */
function found(part) {
  const path = join(folder, `${part}.json`);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null;
}

function aboutFiles({ files, when }) {
  const slowest = most(files, ({ seconds }) => seconds);
  const largest = most(files, ({ megabytes }) => megabytes);
  return `## Files that are made to hold the program up

${when}. ${files.length} files of up to 1 MB (\`tests/hostile/hostile-files.ts\`), each read by the built command. Allowed are 5 s and 500 MB, and no fault; ${files.filter(({ ok }) => ok).length} of ${files.length} held.
The slowest was "${slowest.name}" (${slowest.seconds.toFixed(1)} s), the largest in memory "${largest.name}" (${largest.megabytes.toFixed(0)} MB).

| file | command | exit | s | MB |
| --- | --- | --- | --- | --- |
${files.map((one) => `| ${one.name}${one.ok ? '' : ' **did not hold**'} | ${one.command} | ${one.exit} | ${one.seconds.toFixed(1)} | ${one.megabytes.toFixed(0)} |`).join('\n')}`;
}

function aboutTable({ when, hands, made, wrongRows, whole, shown, stoppedWith, left, again, same, ok }) {
  return `## A table of very many hands

${when}. A batch of ${hands} invented hands, one row of a thousand wrong (\`tests/hostile/many-hands.ts\`): ${made} made, ${wrongRows} rows left out. A second batch of the same table was stopped in its middle by Ctrl-C
at a terminal, and run again: it has to end as a shell expects, leave nothing hidden, take over what was made, and come to the same lists byte for byte.
${ok ? 'It did.' : '**It did not.**'}

| what | found |
| --- | --- |
| in one go | ${whole.seconds.toFixed(0)} s of the processor, ${whole.megabytes.toFixed(0)} MB at most |
| times that the terminal was told how far it is, before Ctrl-C | ${shown} |
| exit at Ctrl-C | ${stoppedWith} |
| hidden files left | ${left} |
| run again | ${again.reused} rows taken over, ${again.made} made, ${again.seconds.toFixed(0)} s of the processor, ${again.megabytes.toFixed(0)} MB at most |
| lists | ${same ? 'the same' : 'others'} |`;
}

function aboutFaults({ tests }) {
  const rows = tests.flatMap((test) => test.rows);
  const files = [...new Set(tests.map(({ name }) => `tests/faults/${name}.test.ts`))].join(', ');
  return `## Kills and faults of the disk

${[...new Set(tests.map((test) => test.when))].join('; ')}. ${sum(rows, ({ count }) => count)} times a program was killed at a call of the disk, its write torn, what it had not flushed lost, or a call failed (${files}). After each the next command ran,
and what was there was compared: every visit that was said to be kept is there once, every file is old or new, a mixed set is found. ${tests.every((test) => test.held) ? 'All held.' : '**Not all held.**'}

| kind | of | times |
| --- | --- | --- |
${rows.map(({ kind, of, count }) => `| ${kind} | ${of} | ${count} |`).join('\n')}`;
}

function aboutTargets({ rows }) {
  const slowest = most(rows, ({ slowestMs }) => slowestMs);
  return `## Hostile inputs

${rows.length} ways into the program (\`tests/fuzz\`), hostile inputs as many as the table says; ${rows.filter((row) => row.held).length} held. The slowest input took ${slowest.slowestMs} ms of the processor (${slowest.name}; 2,000 are allowed).
A bomb is the same text each time; where the same one was drawn again, it was not fed again.

| way in | inputs | of them fed | seed | slowest, ms | day, commit |
| --- | --- | --- | --- | --- | --- |
${rows.map((row) => `| ${row.name}${row.held ? '' : ' **broken**'} | ${row.cases} | ${row.cases - (row.repeated ?? 0)} | ${row.seed} | ${row.slowestMs} | ${row.when} |`).join('\n')}`;
}

async function hostileFiles() {
  const folder = await bundleTests('tests/hostile/hostile-files.ts', 'tests/hostile/measured.ts');
  const { HOSTILE_FILES } = await load(folder, 'hostile-files');
  const { measured } = await load(folder, 'measured');
  const scratch = mkdtempSync(join(tmpdir(), 'hostile-'));
  const tried = HOSTILE_FILES.map((file) => {
    const { exit, seconds, megabytes, out, err } = measured(file, scratch, root);
    const ok = seconds < 5 && megabytes < 500 && [0, 1, 3].includes(exit) && !/FAULT/.test(out + err);
    return { name: file.name, command: file.command, exit, seconds, megabytes, ok };
  });
  rmSync(scratch, { recursive: true });
  return { when, files: tried };
}

async function manyHands() {
  const { triedManyHands } = await load(await bundleTests('tests/hostile/many-hands.ts'), 'many-hands');
  const scratch = mkdtempSync(join(tmpdir(), 'many-hands-'));
  const tried = await triedManyHands(Number(values.hands), scratch, root);
  rmSync(scratch, { recursive: true });
  const { hands, made, wrongRows, shown, stoppedWith, left, again, same } = tried;
  const all = made + wrongRows === hands && again.reused + again.made === made;
  // Between a quarter and three quarters: stopped in the middle, and nothing made twice.
  const middle = again.reused > made / 4 && again.reused < (3 * made) / 4;
  return { when, ...tried, ok: all && middle && shown > 0 && stoppedWith === 130 && left === 0 && same };
}

/** Each test's rows know its name, so that one that is tried again replaces its own. */
function madeFaults() {
  const night = values.night ? { KNUCKLEWRIGHT_KILLS: '200', KNUCKLEWRIGHT_NIGHTLY: '1' } : {};
  const tests = values.fault.map((name) => {
    const file = `tests/faults/${name}.test.ts`;
    const tell = { KNUCKLEWRIGHT_TELL: '1', ...night };
    const { stdout, held } = values.log.length > 0 ? printed(file) : run(['node_modules/vitest/vitest.mjs', 'run', file], tell);
    const rows = [...stdout.matchAll(/faults: (\d+) \| ([^|\n]+) \| ([^|\n]+)/g)].map(([, count, kind, of]) => ({
      count: Number(count),
      kind,
      of,
    }));
    if (rows.length === 0 || !held) process.stdout.write(stdout);
    if (rows.length === 0) throw new Error(`${name} made no faults`);
    return { when, name, held, rows };
  });
  const isAnew = (name, { kind, of }) =>
    tests.some((test) => test.name === name && test.rows.some((row) => row.kind === kind && row.of === of));
  // A log may be of some writers alone: the rows of the others stay, with their day.
  const before = (found('faults')?.tests ?? [])
    .filter(({ name }) => values.log.length > 0 || !values.fault.includes(name))
    .map((test) => ({ ...test, rows: test.rows.filter((row) => !isAnew(test.name, row)) }))
    .filter(({ rows }) => rows.length > 0);
  return { tests: [...before, ...tests] };
}

/** What runs of a test file wrote into the logs that were named; each must have come to its end. */
function printed(file) {
  const texts = values.log.map((path) => readFileSync(path, 'utf8'));
  for (const [k, text] of texts.entries())
    if (!text.includes(file) || !/^\d+ passed, \d+ failed/m.test(text)) throw new Error(`${values.log[k]} is no whole run of ${file}`);
  return { stdout: texts.join('\n'), held: texts.every((text) => /^[1-9]\d* passed, 0 failed/m.test(text)) };
}

function fuzzedTargets() {
  const named = values.target.flatMap((name) => ['--target', name]);
  const { stdout } = run(['scripts/fuzz-nightly.mjs', '--cases', values.cases, ...named]);
  // What broke is told with its recipe.
  process.stdout.write(stdout);
  const seed = /seed (\d+)/.exec(stdout)?.[1] ?? '';
  const rows = [...stdout.matchAll(/^(held {2}|BROKEN) (.+?) +(\d+) cases, (\d+) of them a bomb again, [\d.]+ s, slowest (\d+) ms/gm)].map(
    ([, state, name, cases, repeated, slowestMs]) => ({
      held: state !== 'BROKEN',
      name,
      cases: Number(cases),
      repeated: Number(repeated),
      slowestMs: Number(slowestMs),
      seed,
      when,
    }),
  );
  if (rows.length === 0) throw new Error(stdout);
  const again = new Map(rows.map((row) => [row.name, row]));
  const before = values.target.length > 0 ? (found('targets')?.rows ?? []) : [];
  return {
    rows: [...before.map((row) => again.get(row.name) ?? row), ...rows.filter(({ name }) => !before.some((row) => row.name === name))],
  };
}
