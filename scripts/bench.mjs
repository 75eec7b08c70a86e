// Measures, never judges: prints ratios taken in one run on this machine. Figures differ between machines; ratios differ less.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { handTable, timedProcess } from './timed-process.mjs';

// The modules under measurement, bundled as the command bundles them.
const bundle = join('dist', 'bench-modules.mjs');
await build({
  stdin: {
    contents: `
      export { makePattern } from './src/pattern/make-pattern.ts';
      export { DEFAULT_STRIP_OPTIONS } from './src/pattern/strip/strip-options.ts';
      export { blocks } from './src/block/library.ts';
      export { normHands } from './src/hand/norm-hands.ts';
      export { seeded, seededNormal } from './src/units/chance.ts';
      export { parseHandText } from './src/hand/read-hand.ts';
      export { segmentsOf, arcOf } from './src/geometry/path.ts';
      export { svgNodeWriter } from './src/writers/svg/svg-node.ts';
      export { dxfWriter } from './src/writers/dxf/dxf.ts';`,
    resolveDir: process.cwd(),
    loader: 'ts',
  },
  outfile: bundle,
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
});
const ours = await import(`../${bundle}`);
const { Bench } = await import('tinybench');
const { default: makerjs } = await import('makerjs');
const { readFileSync } = await import('node:fs');

const text = readFileSync('fixtures/demo-hand.json', 'utf8');
const block = ours.blocks().find((b) => b.id === 'ring-raised-in-four');
const request = () => ({ kind: 'strip', hand: ours.parseHandText(text).value, block, options: ours.DEFAULT_STRIP_OPTIONS, date: null });
const { pattern } = ours.makePattern(request()).value;

/** The same outline, marks and letters as a makerjs model: equal work for its exporters. */
function makerModel() {
  const paths = {};
  let n = 0;
  const add = (path) => {
    for (const segment of ours.segmentsOf(path)) {
      const arc = ours.arcOf(segment);
      const deg = (r) => (r * 180) / Math.PI;
      const [from, to] = !arc
        ? [0, 0]
        : arc.sweep > 0
          ? [arc.startAngle, arc.startAngle + arc.sweep]
          : [arc.startAngle + arc.sweep, arc.startAngle];
      paths[`p${n++}`] = arc
        ? new makerjs.paths.Arc([arc.center.x, arc.center.y], arc.radius, deg(from), deg(to))
        : new makerjs.paths.Line([segment.from.x, segment.from.y], [segment.to.x, segment.to.y]);
    }
  };
  for (const part of pattern.parts) add(part.outline);
  return { units: makerjs.unitType.Millimeter, paths };
}
const model = makerModel();
const outlineOnly = { ...pattern, parts: pattern.parts.map((p) => ({ ...p, marks: [], labels: [] })), beside: { marks: [], labels: [] } };

const bench = new Bench({ time: 800, warmupTime: 200 });
bench
  .add('hand text to Pattern', () => ours.makePattern(request()))
  .add('Pattern to SVG', () => ours.svgNodeWriter.write(pattern))
  .add('Pattern to DXF', () => ours.dxfWriter.write(pattern))
  .add('outline to SVG', () => ours.svgNodeWriter.write(outlineOnly))
  .add('outline to SVG, makerjs', () => makerjs.exporter.toSVG(model))
  .add('outline to DXF', () => ours.dxfWriter.write(outlineOnly))
  .add('outline to DXF, makerjs', () => makerjs.exporter.toDXF(model));
await bench.run();
rmSync(bundle);

const median = new Map(bench.tasks.map((task) => [task.name, task.result.latency.p50]));
const row = (name, value) => console.log(`${name.padEnd(46)} ${value}`);
console.log(`Node ${process.version}, one run, medians`);
for (const [name, ms] of median) row(name, `${ms.toFixed(3)} ms`);
row('SVG of the outline against makerjs', `${(median.get('outline to SVG') / median.get('outline to SVG, makerjs')).toFixed(2)} times`);
row('DXF of the outline against makerjs', `${(median.get('outline to DXF') / median.get('outline to DXF, makerjs')).toFixed(2)} times`);

/** Median wall times of whole processes, taken in turn so that both see the same machine. */
function coldStart(commands, rounds = 15) {
  const times = commands.map(() => []);
  for (let round = 0; round < rounds; round++) {
    for (const [k, args] of commands.entries()) {
      const start = process.hrtime.bigint();
      spawnSync(process.execPath, args, { stdio: 'ignore' });
      times[k].push(Number(process.hrtime.bigint() - start) / 1e6);
    }
  }
  return times.map((list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)]);
}
const command = join('dist', 'knucklewright.js');
const demo = join('fixtures', 'demo-hand.json');
const [empty, version, report, files] = coldStart([
  ['-e', '0'],
  [command, '--version'],
  [command, 'draw', demo, '--json'],
  [command, 'draw', demo, '--out', join('out', 'bench'), '--force'],
]);
row('cold start, node -e 0', `${empty.toFixed(0)} ms`);
row('cold start of the command against node -e 0', `${(version / empty).toFixed(2)} times`);
row('draw --json against node -e 0', `${(report / empty).toFixed(2)} times`);
row('draw with SVG and DXF against node -e 0', `${(files / empty).toFixed(2)} times`);

const MANY = 2000;
const BATCH_ROUNDS = 3;
const scratch = mkdtempSync(join(tmpdir(), 'bench-'));
try {
  const table = join(scratch, 'hands.csv');
  writeFileSync(table, handTable(ours.normHands('mixed', MANY, ours.seededNormal(ours.seeded(9))).hands));
  const flags = ['--block', 'ring-lowered-in-four', '--files', 'none', '--json'];
  // Taken in turn, so that both see the same machine; each in a folder of its own, since a rerun takes over what is there.
  const runs = Array.from({ length: BATCH_ROUNDS }, (_, k) => ({
    nothing: timedProcess(['-e', '0']),
    batch: timedProcess([command, 'batch', table, ...flags, '--out', join(scratch, `out-${k}`)]),
  }));
  const middle = (of) => runs.map(of).sort((a, b) => a - b)[Math.floor(runs.length / 2)];
  const what = `batch of ${MANY} hands, cut list alone`;
  row(`${what}`, `${middle(({ batch }) => batch.seconds).toFixed(1)} s`);
  row(`${what}, processor`, `${middle(({ batch }) => batch.cpuSeconds).toFixed(1)} s`);
  const ratio = middle(({ batch }) => batch.cpuSeconds) / middle(({ nothing }) => nothing.cpuSeconds);
  row('its processor time against node -e 0', `${ratio.toFixed(0)} times`);
} finally {
  rmSync(scratch, { recursive: true });
}
