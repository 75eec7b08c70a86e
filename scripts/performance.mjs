// Writes docs/performance.md from one run on this machine: everything that `npm run bench` measures, and whole processes of ours against
// OpenSCAD and ezdxf. Ratios are what carries over to other machines. Usage: node scripts/build.mjs && node scripts/performance.mjs
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundleTests, load, root } from './bundle-tests.mjs';

const ROUNDS = 9;
const bench = spawnSync(process.execPath, ['scripts/bench.mjs'], { cwd: root, encoding: 'utf8' });
if (bench.status !== 0) throw new Error(`scripts/bench.mjs: ${bench.stderr}`);
// The bench pads names to 46 characters.
const benched = bench.stdout
  .trimEnd()
  .split('\n')
  .slice(1)
  .map((line) => [line.slice(0, 46).trim(), line.slice(46).trim()]);

const { equalWork } = await load(await bundleTests('tests/figures/figures.ts'), 'figures');
const work = equalWork();
const scratch = mkdtempSync(join(tmpdir(), 'performance-'));
const file = (name, content) => {
  const path = join(scratch, name);
  writeFileSync(path, content);
  return path;
};
const paths = file('paths.json', JSON.stringify(work.paths));
const scad = file('outline.scad', work.openscad);
const command = join(root, 'dist', 'knucklewright.js');
const demo = join(root, 'fixtures', 'demo-hand.json');
const flags = ['--block', 'ring-raised-in-four', '--formats', 'dxf', '--out', join(scratch, 'ours'), '--force'];
const processes = {
  empty: [process.execPath, '-e', '0'],
  ours: [process.execPath, command, 'draw', demo, ...flags],
  openscad: ['openscad', '-o', join(scratch, 'outline.dxf'), scad],
  python: ['/usr/bin/python3', '-c', 'import ezdxf'],
  ezdxf: ['/usr/bin/python3', join(root, 'tests/figures/write_outline.py'), paths, join(scratch, 'ezdxf.dxf')],
};
const times = Object.fromEntries(Object.keys(processes).map((name) => [name, []]));
// In turn, so that all see the same machine.
for (let round = 0; round < ROUNDS; round++) {
  for (const [name, [program, ...args]] of Object.entries(processes)) {
    const start = performance.now();
    const { status, error } = spawnSync(program, args, { stdio: 'ignore', env: { ...process.env, QT_QPA_PLATFORM: 'offscreen' } });
    if (status !== 0) times[name] = null;
    else times[name]?.push(performance.now() - start);
    if (error && error.code !== 'ENOENT') throw error;
  }
}
rmSync(scratch, { recursive: true });

const median = (list) => (list === null || list.length === 0 ? null : [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)]);
const ms = Object.fromEntries(Object.entries(times).map(([name, list]) => [name, median(list)]));
const shown = (value, unit) =>
  value === null || !Number.isFinite(value) ? 'not there on this machine' : `${value.toFixed(unit === 'ms' ? 0 : 2)} ${unit}`;
const ratio = (a, b) => (a === null || b === null ? null : a / b);
const rows = [
  ['our command: hand to DXF with marks, letters and section', shown(ms.ours, 'ms')],
  [`OpenSCAD: the cut outline alone, as a polygon, to DXF`, shown(ms.openscad, 'ms')],
  ['ours against OpenSCAD', shown(ratio(ms.ours, ms.openscad), 'times')],
  [`ezdxf in Python: the same ${work.paths.length} paths, already computed, to DXF`, shown(ms.ezdxf, 'ms')],
  ['ours against ezdxf', shown(ratio(ms.ours, ms.ezdxf), 'times')],
  ['Python loading ezdxf, nothing else', shown(ms.python, 'ms')],
  ['node -e 0', shown(ms.empty, 'ms')],
];
const table = (list) => list.map(([name, value]) => `| ${name} | ${value} |`).join('\n');
writeFileSync(
  join(root, 'docs', 'performance.md'),
  `# How fast it is

Written by \`node scripts/performance.mjs\` from one run, never by hand; nothing is judged by time. Times differ between machines, ratios in
one run differ less. This run: Node ${process.version}, ${availableParallelism()} processors, load ${loadavg()[0].toFixed(1)} when it ended, medians of ${ROUNDS} rounds taken in turn for
whole processes.

## Inside one process, against makerjs, and cold start

| what | measured |
| --- | --- |
${table(benched)}

## Whole processes, against OpenSCAD and ezdxf

Wall time. Ours reads and judges the hand, computes, proves, and writes; the others write what was computed.

| what | measured |
| --- | --- |
${table(rows)}
`,
);
console.log('docs/performance.md written');
