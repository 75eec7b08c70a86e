// How large other programs find our files: for each sample, format and reader the size they measure, in mm.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';
import { root } from './bundle-tests.mjs';

const DPI = 1200;
const PIXEL = 25.4 / DPI;
const BY_PIXELS = `${PIXEL.toFixed(3)} mm (a pixel at ${DPI} dpi)`;
const BY_POINTS = '0.001 mm (six digits of points)';
const BY_CURVES = '0.001 mm (six digits of points, curves by 256 chords)';
/** Seen in the traces: every coordinate that librsvg and Inkscape print is a multiple of 1/256 point, which is 0.0014 mm. */
const BY_GRID = '0.0014 mm (it prints on a grid of 1/256 point)';
/** Width of the lines in our SVG: ink reaches half of it beyond the outline, on each side. */
const STROKE = 0.1;
/** Room round the outline that is drawn of a page. mm */
const MARGIN = 1;

/**
 * Rows of the table: format, reader, what it looked at, true size, measured size (null where the reader is not there), how finely it can tell.
 * @param figures the bundle of tests/figures/figures.ts
 * @param scratch a folder for files that are gone afterwards
 */
export function readerSizes(sample, figures, scratch) {
  const { PENS, drawPage, pageSizes, strokedBox } = figures;
  const file = (name, content) => {
    const path = join(scratch, `${sample.name}-${name}`);
    writeFileSync(path, content);
    return path;
  };
  const svg = file('whole.svg', sample.svg);
  const outlineSvg = file('outline.svg', sample.outlineSvg);
  const pdf = file('whole.pdf', sample.pdf);
  const outlinePdf = file('outline.pdf', sample.outlinePdf);
  const dxfs = Object.entries(sample.outlineDxf).map(([form, text]) => [form, file(`outline-${form}.dxf`, text)]);
  const rows = [];
  const add = (format, reader, what, truth, measure, fineness) => {
    let found = null;
    try {
      found = measure();
    } catch (error) {
      // A reader that is not there; whatever else goes wrong must not pass for that.
      if (error.code !== 'ENOENT') throw error;
    }
    rows.push({ format, reader, what, truth, found, fineness });
  };
  for (const [form, path] of dxfs) {
    const whole = file(`whole-${form}.dxf`, sample.dxf[form]);
    add(`DXF ${form}`, 'ezdxf', 'cut outline', sample.outline, () => byEzdxf(whole), '0.0001 mm (chords)');
    add(
      `DXF ${form}`,
      'LibreCAD, printed into a PDF (mutool)',
      'cut outline',
      sample.outline,
      () => byLibrecad(path, scratch, strokedBox),
      '0.021 mm (its printing grid of 1200 dpi)',
    );
  }
  const printed = (source, by) => () => sizeOf(strokedBox(printedPdf(source, by, scratch), null));
  add('SVG', 'resvg', 'cut outline', sample.outline, () => byResvg(sample.outlineSvg), BY_PIXELS);
  add('SVG', 'librsvg, drawn', 'cut outline', sample.outline, () => byRsvg(outlineSvg, scratch), BY_PIXELS);
  add('SVG', 'librsvg, printed into a PDF (mutool)', 'cut outline', sample.outline, printed(outlineSvg, 'rsvg-convert'), BY_GRID);
  const whole = () => portrait(pageSizes(printedPdf(svg, 'rsvg-convert', scratch))[0]);
  add('SVG', 'librsvg, printed into a PDF (poppler, pdfinfo)', 'whole drawing', portrait(sample.drawing), whole, BY_POINTS);
  add('SVG', 'Inkscape, asked', 'cut outline', sample.outline, () => byInkscape(svg), '0.001 mm');
  add('SVG', 'Inkscape, printed into a PDF (mutool)', 'cut outline', sample.outline, printed(outlineSvg, 'inkscape'), BY_GRID);
  const cut = () => strokedBox(outlinePdf, PENS.CUT.width);
  add('our PDF', 'poppler (pdfinfo)', 'page 1, the shorter side first', sample.paper, () => portrait(pageSizes(pdf)[0]), BY_POINTS);
  add('our PDF', 'mutool', 'cut outline', sample.outline, () => sizeOf(cut()), BY_CURVES);
  add('our PDF', 'poppler (pdftoppm)', 'cut outline', sample.outline, () => byPoppler(outlinePdf), BY_PIXELS);
  return rows;

  function byPoppler(path) {
    const box = strokedBox(path, PENS.CUT.width);
    const [, height] = pageSizes(path)[0];
    const px = (mm) => Math.floor(mm / PIXEL);
    const crop = {
      x: px(box.minX - MARGIN),
      y: px(height - box.maxY - MARGIN),
      width: px(box.maxX - box.minX + 2 * MARGIN),
      height: px(box.maxY - box.minY + 2 * MARGIN),
    };
    return inkSize(drawPage(path, 1, DPI, crop), PENS.CUT.width);
  }
}

const portrait = (size) => [...size].sort((a, b) => a - b);
const sizeOf = (box) => (box === null ? null : [box.maxX - box.minX, box.maxY - box.minY]);

function output(command, ...args) {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    encoding: 'utf8',
    timeout: 120_000,
    env: { ...process.env, QT_QPA_PLATFORM: 'offscreen' },
  });
  if (error) throw error;
  if (status !== 0) throw new Error(`${command} ${args.join(' ')}: ${stderr.slice(0, 500)}`);
  return stdout;
}

function byEzdxf(path) {
  if (spawnSync('/usr/bin/python3', ['-c', 'import ezdxf']).status !== 0) return null;
  return JSON.parse(output('/usr/bin/python3', join(root, 'tests/figures/cut_extents.py'), path));
}

/** LibreCAD prints everything a little short; by how much, two bare lines of 1000 mm say, which none of our code has written. */
const scales = new Map();
function byLibrecad(path, scratch, strokedBox) {
  const print = (source) => {
    output('librecad', 'dxf2pdf', '-c', '-t', scratch, source);
    return sizeOf(strokedBox(source.replace(/\.dxf$/, '.pdf'), null));
  };
  if (!scales.has(scratch)) {
    const line = (x, y) => `0\nLINE\n8\n0\n10\n0\n20\n0\n11\n${x}\n21\n${y}\n`;
    const ruler = join(scratch, 'ruler.dxf');
    writeFileSync(ruler, `0\nSECTION\n2\nENTITIES\n${line(1000, 0)}${line(0, 1000)}0\nENDSEC\n0\nEOF\n`);
    scales.set(
      scratch,
      print(ruler).map((mm) => mm / 1000),
    );
  }
  const size = print(path);
  return size.map((mm, k) => mm / scales.get(scratch)[k]);
}

/** What LibreCAD made of 1000 mm across and along, or null where it was not there. */
export function librecadScale(scratch) {
  return scales.get(scratch) ?? null;
}

function byResvg(outlineSvg) {
  const options = { fitTo: { mode: 'zoom', value: DPI / 96 }, background: '#ffffff', font: { loadSystemFonts: false } };
  return inkSize(new Resvg(outlineSvg, options).render(), STROKE);
}

function byRsvg(outlineSvg, scratch) {
  const png = join(scratch, 'outline.png');
  output('rsvg-convert', `--dpi-x=${DPI}`, `--dpi-y=${DPI}`, '--background-color=white', '--unlimited', `--output=${png}`, outlineSvg);
  const { width, height, data } = PNG.sync.read(readFileSync(png));
  return inkSize({ width, height, pixels: data }, STROKE);
}

/** Size of what is darker than half grey, less the line's own width. mm */
function inkSize({ width, height, pixels }, stroke) {
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
  return [(right - left + 1) * PIXEL - stroke, (bottom - top + 1) * PIXEL - stroke];
}

function printedPdf(source, by, scratch) {
  const target = join(scratch, 'printed.pdf');
  if (by === 'inkscape') output('inkscape', source, '--export-type=pdf', `--export-filename=${target}`);
  else output('rsvg-convert', '--format=pdf', `--output=${target}`, source);
  return target;
}

function byInkscape(svg) {
  const text = output('inkscape', '--query-id=part-1-CUT', '--query-width', '--query-height', svg);
  const sizes = text.trim().split(/\s+/).map(Number);
  if (sizes.length !== 2 || !sizes.every(Number.isFinite)) throw new Error(`inkscape says ${text}`);
  // Its box is that of the ink, in user units of 1/96 inch.
  return sizes.map((px) => (px / 96) * 25.4 - STROKE);
}
