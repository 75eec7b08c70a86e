// Writes docs/accuracy.md from runs: comparisons and what the model leaves out (tests/figures), and what real readers measure in the files.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';
import { bundleTests, load, root } from './bundle-tests.mjs';

const DPI = 1200;
const PIXEL = 25.4 / DPI;
/** Width of the lines in our SVG: ink reaches half of it beyond the outline, on each side. */
const STROKE = 0.1;

const { accuracyText, sampleFiles } = await load(await bundleTests('tests/figures/figures.ts'), 'figures');
const sample = await sampleFiles();
const scratch = mkdtempSync(join(tmpdir(), 'accuracy-'));
const file = (name, content) => {
  const path = join(scratch, name);
  writeFileSync(path, content);
  return path;
};
const svg = file('strip.svg', sample.svg);
const outlineSvg = file('outline.svg', sample.outlineSvg);
const dxf = file('strip.dxf', sample.dxf);

/** What each reader measures: the format, its name, what it looked at, true size and measured size in mm, and how finely it can. */
const measured = [
  ['DXF', 'ezdxf', 'cut outline', sample.outline, byEzdxf, '0.0001 mm (chords)'],
  ['SVG', 'resvg', 'cut outline', sample.outline, byResvg, `${PIXEL.toFixed(3)} mm (a pixel at ${DPI} dpi)`],
  ['SVG', 'rsvg-convert', 'cut outline', sample.outline, byRsvg, `${PIXEL.toFixed(3)} mm (a pixel at ${DPI} dpi)`],
  ['SVG', 'rsvg-convert to PDF, pdfinfo', 'whole drawing', sample.drawing, byPdfinfo, '0.0004 mm (6 digits of points)'],
  ['SVG', 'rsvg-convert to PDF, mutool trace', 'cut outline', sample.outline, byMutool, '0.001 mm (ends of lines and arcs)'],
  ['SVG', 'inkscape', 'cut outline', sample.outline, byInkscape, '0.001 mm'],
];
const rows = measured.map(([format, reader, what, truth, measure, fineness]) => {
  const found = measure();
  const name = `| ${format} | ${reader} | ${what} | ${truth.map((mm) => mm.toFixed(4)).join(' x ')}`;
  if (found === null) return `${name} | not there on this machine | | ${fineness} |`;
  const apart = Math.max(...found.map((mm, k) => Math.abs(mm - truth[k])));
  return `${name} | ${found.map((mm) => mm.toFixed(4)).join(' x ')} | ${apart.toFixed(4)} | ${fineness} |`;
});
rmSync(scratch, { recursive: true });

writeFileSync(
  join(root, 'docs/accuracy.md'),
  `# How exact it is

Written by \`node scripts/accuracy.mjs\` from runs, never by hand; a test compares the first two parts with a run of today.

${accuracyText()}
## What real readers measure

The strip ring-raised-in-four of the demo hand, as other programs read our files. Sizes in mm, width x height.

| format | reader | of what | true | measured | apart by | can tell |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`,
);
console.log('docs/accuracy.md written');

function output(command, ...args) {
  const { status, stdout } = spawnSync(command, args, {
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, QT_QPA_PLATFORM: 'offscreen' },
  });
  return status === 0 ? stdout : null;
}

function byEzdxf() {
  const text = output('/usr/bin/python3', join(root, 'tests/figures/cut_extents.py'), dxf);
  return text === null ? null : JSON.parse(text);
}

function byResvg() {
  const options = { fitTo: { mode: 'zoom', value: DPI / 96 }, background: '#ffffff', font: { loadSystemFonts: false } };
  return inkSize(new Resvg(sample.outlineSvg, options).render());
}

function byRsvg() {
  const png = join(scratch, 'outline.png');
  const done = output(
    'rsvg-convert',
    `--dpi-x=${DPI}`,
    `--dpi-y=${DPI}`,
    '--background-color=white',
    '--unlimited',
    `--output=${png}`,
    outlineSvg,
  );
  if (done === null) return null;
  const { width, height, data } = PNG.sync.read(readFileSync(png));
  return inkSize({ width, height, pixels: data });
}

/** Size of what is darker than half grey, less the line's own width. */
function inkSize({ width, height, pixels }) {
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (pixels[4 * (y * width + x)] >= 128) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return [(right - left + 1) * PIXEL - STROKE, (bottom - top + 1) * PIXEL - STROKE];
}

function pdfOf(source) {
  const pdf = join(scratch, 'printed.pdf');
  return output('rsvg-convert', '--format=pdf', `--output=${pdf}`, source) === null ? null : pdf;
}

function byPdfinfo() {
  const pdf = pdfOf(svg);
  const size = pdf && /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(output('pdfinfo', pdf) ?? '');
  return size ? size.slice(1, 3).map((points) => (Number(points) / 72) * 25.4) : null;
}

function byMutool() {
  const pdf = pdfOf(outlineSvg);
  const trace = pdf && output('mutool', 'trace', pdf);
  if (!trace) return null;
  // Each path has its own matrix to points, 1/72 inch.
  const xs = [];
  const ys = [];
  for (const [, matrix, body] of trace.matchAll(/<stroke_path[^>]*transform="([^"]*)"[^>]*>([\s\S]*?)<\/stroke_path>/g)) {
    const [a, b, c, d, e, f] = matrix.split(' ').map(Number);
    for (const [, x, y] of body.matchAll(/\b(?:x|x3)="([^"]*)" (?:y|y3)="([^"]*)"/g)) {
      xs.push(a * x + c * y + e);
      ys.push(b * x + d * y + f);
    }
  }
  return xs.length > 0 ? [xs, ys].map((list) => ((Math.max(...list) - Math.min(...list)) / 72) * 25.4) : null;
}

function byInkscape() {
  const text = output('inkscape', '--query-id=part-1-CUT', '--query-width', '--query-height', svg);
  const sizes = text?.trim().split(/\s+/).map(Number);
  // Its box is that of the ink, in user units of 1/96 inch.
  return sizes?.length === 2 && sizes.every(Number.isFinite) ? sizes.map((px) => (px / 96) * 25.4 - STROKE) : null;
}
