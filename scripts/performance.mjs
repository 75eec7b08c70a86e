// Writes docs/performance.md from one run on this machine: builds, then runs every bench of the project, and whole processes of ours against
// OpenSCAD and ezdxf. Ratios are what carries over to other machines. Usage: node scripts/performance.mjs [instances of each kind of cut list]
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserPath } from './browser.mjs';
import { bundleTests, load, root } from './bundle-tests.mjs';

const ROUNDS = 9;
const NOT_THERE = 'not there on this machine';
const instances = process.argv.slice(2, 3);
const loadBefore = loadavg()[0];
const figures = await load(await bundleTests('tests/figures/figures.ts'), 'figures');
const scratch = mkdtempSync(join(tmpdir(), 'performance-'));
try {
  ran('build.mjs');
  const insideOne = benched(ran('bench.mjs'));
  const whole = wholeProcesses();
  const sheets = JSON.parse(
    ran('bench-sheets.mjs', ...instances)
      .trimEnd()
      .split('\n')
      .at(-1),
  );
  const page = pageFigures();
  const written = text({ insideOne, whole, sheets, page });
  if (/NaN|undefined/.test(written)) throw new Error('a figure is missing; docs/performance.md is left as it was');
  writeFileSync(join(root, 'docs', 'performance.md'), written);
} finally {
  rmSync(scratch, { recursive: true });
}
console.log('docs/performance.md written');

/** What a script of this folder prints. Throws where it fails. */
function ran(script, ...args) {
  console.log(`scripts/${script}`);
  const { status, stdout, stderr } = spawnSync(process.execPath, [join('scripts', script), ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (status !== 0) throw new Error(`scripts/${script}: ${stderr.slice(0, 2000)}`);
  return stdout;
}

/** The bench pads names to 46 characters and begins with a line about itself. */
function benched(printed) {
  return printed
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => [line.slice(0, 46).trim(), line.slice(46).trim()]);
}

/** Lines of the bench of the page, as name and value; without a browser a single line that says so. */
function pageFigures() {
  if (browserPath() === undefined) return [['the page in Chromium', NOT_THERE]];
  return ran('bench-page.mjs')
    .trimEnd()
    .split('\n')
    .map((line) => line.split(/: (.*)/).slice(0, 2));
}

function wholeProcesses() {
  const work = figures.equalWork();
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
  const ms = medians(processes);
  return [
    ['our command: hand to DXF with marks, letters and section', shown(ms.ours, 'ms')],
    [`OpenSCAD: the cut outline alone, as a polygon, to DXF`, shown(ms.openscad, 'ms')],
    ['ours against OpenSCAD', shown(ratio(ms.ours, ms.openscad), 'times')],
    [`ezdxf in Python: the same ${work.paths.length} paths, already computed, to DXF`, shown(ms.ezdxf, 'ms')],
    ['ours against ezdxf', shown(ratio(ms.ours, ms.ezdxf), 'times')],
    ['Python loading ezdxf, nothing else', shown(ms.python, 'ms')],
    ['node -e 0', shown(ms.empty, 'ms')],
  ];
}

/** Median wall times, ms, taken in turn so that all see the same machine; null for a program that is not there. */
function medians(processes) {
  console.log('whole processes');
  const times = Object.fromEntries(Object.keys(processes).map((name) => [name, []]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, [program, ...args]] of Object.entries(processes)) {
      const start = performance.now();
      const { status, error } = spawnSync(program, args, { stdio: 'ignore', env: { ...process.env, QT_QPA_PLATFORM: 'offscreen' } });
      if (status !== 0) times[name] = null;
      else times[name]?.push(performance.now() - start);
      if (error && error.code !== 'ENOENT') throw error;
    }
  }
  if (times.ours === null) throw new Error('our own command failed');
  const median = (list) => (list === null ? null : [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)]);
  return Object.fromEntries(Object.entries(times).map(([name, list]) => [name, median(list)]));
}

function shown(value, unit) {
  return value === null || !Number.isFinite(value) ? NOT_THERE : `${value.toFixed(unit === 'ms' ? 0 : 2)} ${unit}`;
}

function ratio(a, b) {
  return a === null || b === null ? null : a / b;
}

function table(heads, rows) {
  return [heads, heads.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

/** How near the layouts come to a known optimum, kind by kind. */
function qualityTable(bars) {
  const heads = [
    'kind of cut list',
    'optimum',
    'to the optimum',
    'proved',
    'worst',
    'first fit: to the optimum',
    'first fit: worst',
    'HiGHS in 10 s',
  ];
  const rows = bars.map((b) => [
    b.name,
    `${b.bars} bars`,
    `${b.optimal} of ${b.instances}`,
    `${b.proven} of ${b.instances}`,
    `+${b.worst}`,
    `${b.firstFitOptimal} of ${b.instances}`,
    `+${b.firstFitWorst}`,
    b.highsOptimal === null || b.highsOptimal === undefined ? '' : `${b.highsOptimal} of ${b.highsOf}`,
  ]);
  const times = bars.map((b) => [b.name, `${b.meanMs.toFixed(0)} ms`, `${b.mostMs.toFixed(0)} ms`, `${b.meanCpuMs.toFixed(0)} ms`]);
  const all = bars.reduce((sum, b) => sum + b.instances, 0);
  const optimal = bars.reduce((sum, b) => sum + b.optimal, 0);
  return `${optimal} of ${all} cut lists (${((100 * optimal) / all).toFixed(1)} %) to the optimum, which is known since the instances were made from it; at worst ${Math.max(...bars.map((b) => b.worst))} more bars than that.

${table(heads, rows)}

${table(['kind', 'mean', 'longest', 'mean, of the processor'], times)}`;
}

/** Bars of kinds that the search was not tuned to, against the proved bound. */
function unseenTable(families) {
  const heads = ['kind', 'at the proved bound', 'worst above it', 'of the processor, at most'];
  const rows = families.map((f) => [
    f.name,
    `${f.proven} of ${f.instances}`,
    `${f.worstPercent.toFixed(2)} %`,
    `${f.mostCpuMs.toFixed(0)} ms`,
  ]);
  return `Kinds that the search was not tuned to, drawn by chance; their optimum is not known, only that it is not below the bound.\n\n${table(heads, rows)}`;
}

/** Full sheets cut into parts and laid again, side by side with packers. */
function boxTable(boxes) {
  const methods = Object.keys(boxes[0].one);
  const cell = (b, name) => `${b.one[name]} of ${b.instances}, ${b.meanCpuMs[name].toFixed(0)} ms`;
  const rows = boxes.map((b) => [`${b.parts} parts`, ...methods.map((name) => cell(b, name))]);
  return `Full sheets cut edge to edge into parts, laid again: how often on one sheet, and the mean of the processor. maxrects-packer lays freely, which shears cannot cut.\n\n${table(['sheet', ...methods], rows)}`;
}

/** The sheet bench's batches. The start of the program, the same for all, is taken off before the power is sought. */
function growthTable({ growth, startCpuSeconds }) {
  const own = growth.map(({ rows, cpuSeconds }) => ({ hands: rows, cpuSeconds: Math.max(0.001, cpuSeconds - startCpuSeconds) }));
  const power = (batches) => figures.exponentOf(batches).toFixed(2);
  const cells = growth.map(({ rows, seconds, cpuSeconds, megabytes }) => [
    String(rows),
    `${seconds.toFixed(1)} s`,
    `${cpuSeconds.toFixed(1)} s`,
    `${((1000 * cpuSeconds) / rows).toFixed(1)} ms`,
    `${megabytes.toFixed(0)} MB`,
  ]);
  const [first, last] = [growth[0], growth.at(-1)];
  return `Processor time, without the ${startCpuSeconds.toFixed(2)} s that the command takes to start, grows as the ${power(own)}th power of the number of hands from ${first.rows} to ${last.rows} (least squares of the logarithms), and as the ${power(own.slice(-2))}th over the last ten times; 1 is in proportion. Of ${last.rows} hands ${last.made} were made and ${last.refused} refused.

${table(['hands', 'time', 'of the processor', 'of the processor, a hand', 'memory at most'], cells)}`;
}

function text({ insideOne, whole, sheets, page }) {
  const { batch, sizes } = sheets;
  const more = [
    ['the same again, taking over what is there', batch.rerunSeconds, (s) => `${s.toFixed(1)} s`],
    ['a hand with an SVG of its own, of the processor', batch.eachCpuMsPerHand, (ms) => `${ms.toFixed(0)} ms`],
    [`${sizes.sizes} stock sizes for ${sizes.lengths} lengths, steps of 0.1 mm`, sizes.ms, (ms) => `${ms.toFixed(0)} ms`],
  ].map(([what, value, words]) => [what, words(value)]);
  return `# How fast it is

Written by \`node scripts/performance.mjs\` from one run, never by hand; nothing is judged by time. Times differ between machines, ratios in
one run differ less. This run: Node ${process.version}, ${availableParallelism()} processors, load ${loadBefore.toFixed(1)} when it began and ${loadavg()[0].toFixed(1)} when it ended${loadBefore > 0.5 ? ' (the machine was not quiet when it began: times are too long)' : ''}.

## Inside one process, against makerjs, and cold start

${table(['what', 'measured'], insideOne)}

## Whole processes, against OpenSCAD and ezdxf

Wall time, medians of ${ROUNDS} rounds taken in turn. Ours reads and judges the hand, computes, proves, and writes; the others write what was computed.

${table(['what', 'measured'], whole)}

## Many hands

${growthTable(batch)}

${table(['what', 'measured'], more)}

## Sheets and bars: how near to the optimum

${qualityTable(sheets.bars)}

${unseenTable(sheets.unseen)}

${boxTable(sheets.boxes)}

## The page, in Chromium

${table(['what', 'measured'], page)}
`;
}
