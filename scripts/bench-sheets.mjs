// Measures sheets and batches in one run: node scripts/bench-sheets.mjs [instances of each kind] [bars|unseen|boxes|sizes|batch ...]
// Prints a table and, last, one line of JSON with all figures. Instances have a known optimum by construction; the generator is ours.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { handTable, MEMORY, timedProcess } from './timed-process.mjs';

/** Rows of the tables whose times show how the work grows. */
const GROWTH = [10, 100, 1000, 10_000];

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const count = Number(process.argv[2] ?? 40);
const asked = process.argv.slice(3);
const wanted = (part) => asked.length === 0 || asked.includes(part);
const scratch = mkdtempSync(join(tmpdir(), 'bench-sheets-'));
const figures = { machine: `${cpus()[0]?.model ?? ''} x ${cpus().length}`, load: loadavg()[0], node: process.version };
try {
  const modules = await bundled();
  if (wanted('bars')) figures.bars = await bars(modules);
  if (wanted('unseen')) figures.unseen = unseen(modules);
  if (wanted('boxes')) figures.boxes = await boxes(modules);
  if (wanted('sizes')) figures.sizes = sizes(modules);
  if (wanted('batch')) figures.batch = batch(modules);
  console.log(JSON.stringify(figures));
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

/** The modules under measurement, from their sources. */
async function bundled() {
  const lines = [
    "export { cutBars } from './src/sheet/bars/cut-bars.ts';",
    "export { firstFitDecreasing } from './src/sheet/bars/greedy-bars.ts';",
    "export { fullBars, narrowRange, triplets } from './tests/bar-instances.ts';",
    "export { CUT_SHEET, cutUpSheet } from './tests/box-instances.ts';",
    "export { layOut } from './src/sheet/plastic/lay-out.ts';",
    "export { layoutFaults } from './src/sheet/plastic/layout-faults.ts';",
    "export { stockSizes } from './src/sheet/plastic/stock-sizes.ts';",
    "export { seeded, seededNormal } from './src/units/chance.ts';",
    "export { normHands } from './src/hand/norm-hands.ts';",
  ];
  const outfile = join(scratch, 'modules.mjs');
  await build({
    stdin: { contents: lines.join('\n'), resolveDir: root, loader: 'ts' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
  });
  return import(outfile);
}

async function bars({ cutBars, firstFitDecreasing, fullBars, narrowRange, triplets }) {
  const { default: load } = await import('highs');
  const highs = await load();
  const kinds = [
    [fullBars, 10],
    [fullBars, 20],
    [fullBars, 40],
    [fullBars, 80],
    [triplets, 20],
    [triplets, 40],
    [triplets, 83],
    [narrowRange, 17],
    [narrowRange, 20],
  ];
  const rows = [];
  for (const [make, bars] of kinds) {
    const row = {
      name: '',
      bars,
      instances: count,
      optimal: 0,
      proven: 0,
      worst: 0,
      firstFitOptimal: 0,
      firstFitWorst: 0,
      meanMs: 0,
      mostMs: 0,
      meanCpuMs: 0,
      mostCpuMs: 0,
      highsOptimal: null,
    };
    for (let i = 0; i < count; i++) {
      const instance = make(1000 + i, bars);
      row.name = instance.name;
      const from = performance.now();
      const cpuFrom = process.cpuUsage();
      const cut = cutBars(instance.lengths, instance.capacity);
      const ms = performance.now() - from;
      const spent = process.cpuUsage(cpuFrom);
      const cpu = (spent.user + spent.system) / 1000;
      check(cut, instance);
      const excess = cut.bars.length - instance.fewest;
      const firstFit = firstFitDecreasing(instance.lengths, instance.capacity).length - instance.fewest;
      row.optimal += excess === 0;
      row.proven += cut.bars.length === cut.atLeast;
      row.worst = Math.max(row.worst, excess);
      row.firstFitOptimal += firstFit === 0;
      row.firstFitWorst = Math.max(row.firstFitWorst, firstFit);
      row.meanMs += ms / count;
      row.mostMs = Math.max(row.mostMs, ms);
      row.meanCpuMs += cpu / count;
      row.mostCpuMs = Math.max(row.mostCpuMs, cpu);
    }
    // HiGHS on pieces and bars (Kantorovich's model) with ten seconds each, on the first three instances of the small kinds only.
    if (bars <= 20) {
      row.highsOptimal = [0, 1, 2].filter((i) => byHighs(highs, make(1000 + i, bars)) === bars).length;
      row.highsOf = 3;
    }
    console.log(
      `${row.name.padEnd(18)} optimum ${row.optimal}/${count} (proven ${row.proven}), worst +${row.worst}; first fit ${row.firstFitOptimal}/${count}, worst +${row.firstFitWorst}; ${row.meanMs.toFixed(0)} ms, at most ${row.mostMs.toFixed(0)} (of the processor ${row.meanCpuMs.toFixed(0)}, at most ${row.mostCpuMs.toFixed(0)})${row.highsOptimal === null ? '' : `; HiGHS 10 s: ${row.highsOptimal}/3`}`,
    );
    rows.push(row);
  }
  const optimal = rows.reduce((sum, row) => sum + row.optimal, 0);
  console.log(
    `bars: ${optimal} of ${rows.length * count} to the optimum (${((100 * optimal) / (rows.length * count)).toFixed(1)} %), worst +${Math.max(...rows.map((row) => row.worst))}`,
  );
  return rows;
}

/** Families that the search was not tuned to and whose optimum is not known: how far above the proved bound. */
function unseen({ cutBars, seeded, seededNormal }) {
  const tenthsRound190 = (random) => {
    const normal = seededNormal(random);
    return () => Math.round(10 * (190 + 15 * normal()));
  };
  const families = [
    ['three pieces a bar, 250', 10_000, 250, (random) => () => 2500 + Math.floor(1800 * random())],
    ['three pieces a bar, 1,000', 10_000, 1000, (random) => () => 2500 + Math.floor(1800 * random())],
    ['any length up to a bar, 200', 1000, 200, (random) => () => 1 + Math.floor(1000 * random())],
    ['strips round 190 mm by chance, 300', 6100, 300, tenthsRound190],
  ];
  return families.map(([name, capacity, pieces, drawFrom]) => {
    const row = { name, instances: Math.min(count, 10), pieces, proven: 0, worstPercent: 0, mostCpuMs: 0 };
    for (let i = 0; i < row.instances; i++) {
      const lengths = Array.from({ length: pieces }, drawFrom(seeded(500 + i)));
      const from = process.cpuUsage();
      const cut = cutBars(lengths, capacity);
      const spent = process.cpuUsage(from);
      check(cut, { lengths, capacity, fewest: cut.bars.length, name });
      row.proven += cut.bars.length === cut.atLeast;
      row.worstPercent = Math.max(row.worstPercent, 100 * (cut.bars.length / cut.atLeast - 1));
      row.mostCpuMs = Math.max(row.mostCpuMs, (spent.user + spent.system) / 1000);
    }
    console.log(
      `${name}: at the bound ${row.proven}/${row.instances}, at most ${row.worstPercent.toFixed(2)} % over it; ${row.mostCpuMs.toFixed(0)} ms of the processor at most`,
    );
    return row;
  });
}

/**
 * Full sheets cut edge to edge into so many parts, laid again by us and by two packers: how often one sheet is enough, as it was.
 * The first packer cuts edge to edge as we do; the second lays freely, which no shears can cut, and is there as a mark.
 */
async function boxes({ CUT_SHEET, cutUpSheet, layOut, layoutFaults }) {
  const { packer } = await import('guillotine-packer');
  // Its package names a script of another kind as its module.
  const { MaxRectsPacker } = await import('../node_modules/maxrects-packer/dist/maxrects-packer.mjs');
  const { along, across } = CUT_SHEET;
  const methods = {
    ours: (parts) => {
      const made = layOut({ parts, sheet: CUT_SHEET, remnants: [], rules: { gap: 0, margin: 0, grain: 'free' } });
      if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join());
      const faults = layoutFaults(made.value, CUT_SHEET, []);
      if (faults.length > 0) throw new Error(faults.join());
      return made.value.newSheets;
    },
    'guillotine-packer': (parts) => {
      const items = parts.map(({ id, length, width }) => ({ name: id, width: length, height: width }));
      return packer({ binWidth: along, binHeight: across, items }, { kerfSize: 0, allowRotation: true }).length;
    },
    'maxrects-packer': (parts) => {
      const free = new MaxRectsPacker(along, across, 0, { smart: false, pot: false, square: false, allowRotation: true });
      for (const { id, length, width } of parts) free.add(length, width, id);
      return free.bins.length;
    },
  };
  return [9, 12, 16].map((parts) => {
    const row = { parts, instances: Math.min(count, 30), one: {}, meanCpuMs: {} };
    for (const [name, sheetsOf] of Object.entries(methods)) {
      const from = process.cpuUsage();
      row.one[name] = Array.from({ length: row.instances }, (_, i) => sheetsOf(cutUpSheet(i + 1, parts))).filter(
        (sheets) => sheets === 1,
      ).length;
      const spent = process.cpuUsage(from);
      row.meanCpuMs[name] = (spent.user + spent.system) / 1000 / row.instances;
    }
    const words = Object.keys(methods).map((name) => `${name} ${row.one[name]}/${row.instances} (${row.meanCpuMs[name].toFixed(0)} ms)`);
    console.log(`a sheet cut into ${parts} parts, laid on one again: ${words.join('; ')}`);
    return row;
  });
}

/** Throws when a result is not a cutting of the instance, or its bound is above the known optimum. */
function check({ bars, atLeast }, { lengths, capacity, fewest, name }) {
  const sorted = (list) => [...list].sort((a, b) => a - b).join();
  if (sorted(bars.flat()) !== sorted(lengths)) throw new Error(`${name}: pieces lost`);
  if (bars.some((bar) => bar.reduce((a, b) => a + b, 0) > capacity)) throw new Error(`${name}: a bar is over-full`);
  if (atLeast > fewest || bars.length < fewest) throw new Error(`${name}: bound ${atLeast}, ${bars.length} bars, optimum ${fewest}`);
}

/** Fewest bars that HiGHS finds with one more than the optimum at hand; null when it finds none in time. */
function byHighs(highs, { lengths, capacity, fewest }) {
  const counts = new Map();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  const kinds = [...counts];
  const most = fewest + 1;
  const range = Array.from({ length: most }, (_, b) => b);
  const model = [
    'Minimize',
    ` bars: ${range.map((b) => `u${b}`).join(' + ')}`,
    'Subject To',
    ...kinds.map(([, n], k) => ` c${k}: ${range.map((b) => `x${k}_${b}`).join('\n + ')} = ${n}`),
    ...range.map((b) => ` r${b}: ${kinds.map(([length], k) => `${length} x${k}_${b}`).join('\n + ')} - ${capacity} u${b} <= 0`),
    ...range.slice(1).map((b) => ` s${b}: u${b - 1} - u${b} >= 0`),
    'Bounds',
    ...range.map((b) => ` u${b} <= 1`),
    'General',
    ...range.map((b) => `u${b}`),
    ...kinds.flatMap((_, k) => range.map((b) => `x${k}_${b}`)),
    'End',
  ].join('\n');
  const solved = highs.solve(model, { time_limit: 10 });
  const used = range.map((b) => Math.round(solved.Columns[`u${b}`]?.Primal ?? Number.NaN));
  const total = used.reduce((a, b) => a + b, 0);
  return Number.isFinite(total) ? total : null;
}

function sizes({ stockSizes, seeded, seededNormal }) {
  const normal = seededNormal(seeded(4));
  const lengths = Array.from({ length: 10_000 }, () => 190 + 15 * normal());
  const from = performance.now();
  const found = stockSizes({ lengths, most: 12, cover: 0.95, step: 0.1 });
  const ms = performance.now() - from;
  if (!found.ok || found.value.length !== 12) throw new Error('sizes: no answer');
  console.log(`sizes: 10,000 lengths, 12 sizes, steps of 0.1 mm: ${ms.toFixed(0)} ms`);
  return { lengths: lengths.length, sizes: 12, ms };
}

/** Tables of up to 10,000 drawn hands through the built command, cut list alone; then a few hundred with files, for the cost of a hand. */
function batch({ normHands, seeded, seededNormal }) {
  const table = join(scratch, 'hands.csv');
  const write = (rows) => writeFileSync(table, handTable(normHands('mixed', rows, seededNormal(seeded(9))).hands));
  const command = join(root, 'dist', 'knucklewright.js');
  const timed = (args) => timedProcess(['--import', MEMORY, command, ...args]);
  const run = (name, files) => {
    const flags = [
      'batch',
      table,
      '--block',
      'ring-lowered-in-four',
      '--files',
      files,
      '--formats',
      'svg',
      '--out',
      join(scratch, name),
      '--json',
    ];
    const { stdout, ...figures } = timed(flags);
    return { ...figures, ...JSON.parse(stdout) };
  };
  const figure = ({ seconds, cpuSeconds, megabytes }) =>
    `${seconds.toFixed(1)} s, ${cpuSeconds.toFixed(1)} s of the processor, ${megabytes.toFixed(0)} MB at most`;
  const start = timed(['--version']);
  const growth = GROWTH.map((rows) => {
    write(rows);
    const ran = run(`list-${rows}`, 'none');
    console.log(`batch: ${rows} rows, cut list alone: ${figure(ran)} (${ran.made} made, ${ran.wrongRows} refused)`);
    return { rows, seconds: ran.seconds, cpuSeconds: ran.cpuSeconds, megabytes: ran.megabytes, made: ran.made, refused: ran.wrongRows };
  });
  // From one table to the next, the time that the command takes to start taken off; 1 is in proportion.
  const exponents = growth.slice(1).map(({ cpuSeconds, rows }, k) => {
    const before = growth[k];
    const own = (seconds) => Math.max(0.001, seconds - start.cpuSeconds);
    return Math.log(own(cpuSeconds) / own(before.cpuSeconds)) / Math.log(rows / before.rows);
  });
  console.log(
    `batch: start alone ${start.cpuSeconds.toFixed(2)} s of the processor; growth exponents ${exponents.map((e) => e.toFixed(2)).join(', ')}`,
  );
  const again = run(`list-${GROWTH.at(-1)}`, 'none');
  console.log(`batch: the same again: ${figure(again)} (${again.reused} taken over)`);
  write(200);
  const each = run('each', 'each');
  console.log(
    `batch: 200 rows with an SVG each: ${figure(each)}, ${((1000 * each.cpuSeconds) / 200).toFixed(0)} ms of the processor a hand`,
  );
  return {
    startCpuSeconds: start.cpuSeconds,
    growth,
    exponents,
    rerunSeconds: again.seconds,
    eachCpuMsPerHand: (1000 * each.cpuSeconds) / 200,
  };
}
