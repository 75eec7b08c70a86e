import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, type TestContext, vi } from 'vitest';
import { boxOf } from '../src/geometry/path.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { READ_DECIMALS } from '../src/units/number.ts';
import { drawOrder } from '../src/writers/draw-order.ts';
import { dxfWriterFor } from '../src/writers/dxf/dxf.ts';
import { DEFAULT_OUTPUT_SETTINGS, DXF_ARCS, DXF_FORMS, type DxfSettings } from '../src/writers/output-settings.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { BY_NIGHT } from './by-night.ts';
import { boxOfTrace, redrawTrace, type TracedPath, tracePdf } from './pdf-trace.ts';
import { differingPixels, inkedPixels, rasterise } from './picture.ts';
import { needsReader } from './readers.ts';

/** Readers outside the project measure what it writes, at both axes. LibreCAD prints on a grid of 1200 dpi, 0.021 mm. */
const MEASURED = 0.05;
const EXACT = 0.001;
/** A sheet's outermost strokes are letters and its plan, which are written to 0.01 mm: half of that at each side. mm */
const READ_STEP = 10 ** -READ_DECIMALS;
/** Widened from a hairline, so that the printed grid of 0.021 mm is far under a line's width in the picture. */
const STROKE = 0.4;
const DPI = 150;
/** Of the inked pixels, how many may differ visibly between Inkscape and librsvg. */
const DIFFERING_SHARE = 0.005;

// ezdxf takes its time over thousands of R12 polylines.
vi.setConfig({ testTimeout: 120_000 });

let scratch = '';

function textOf(result: ReturnType<typeof svgNodeWriter.write>): string {
  if (!result.ok || typeof result.value !== 'string') throw new Error(JSON.stringify(result));
  return result.value;
}

function saved(name: string, content: string): string {
  const file = join(scratch, name);
  writeFileSync(file, content);
  return file;
}

const dxfOf = (pattern: Pattern, dxf: Partial<DxfSettings> = {}) =>
  textOf(dxfWriterFor({ ...DEFAULT_OUTPUT_SETTINGS, dxf: { ...DEFAULT_OUTPUT_SETTINGS.dxf, ...dxf } }).write(pattern));

/** What was printed of each DXF: a reader takes seconds to load. */
const prints = new Map<string, readonly TracedPath[]>();

/** What LibreCAD prints of a DXF, mm, freed from the scale of its printing. */
function printed(label: string, dxf: string, scale: number): readonly TracedPath[] {
  const before = prints.get(dxf);
  if (before) return before;
  const file = saved(`${label}.dxf`, dxf);
  execFileSync('timeout', ['60', 'librecad', 'dxf2pdf', '-c', '-t', scratch, file], {
    env: { ...process.env, QT_QPA_PLATFORM: 'offscreen' },
    stdio: 'ignore',
  });
  const print = tracePdf(join(scratch, `${label}.pdf`), 1 / scale);
  prints.set(dxf, print);
  return print;
}

let scale: number | null = null;

/** LibreCAD prints everything a little short, by about 0.00016: measured with bare lines of 1000 mm, which none of our code has written. */
function printingScale(): number {
  if (scale !== null) return scale;
  const line = (x: number, y: number) => `0\nLINE\n8\n0\n10\n0\n20\n0\n11\n${x}\n21\n${y}\n`;
  const box = boxOfTrace(printed('ruler', `0\nSECTION\n2\nENTITIES\n${line(1000, 0)}${line(0, 1000)}0\nENDSEC\n0\nEOF\n`, 1));
  expect(Math.abs(box.width - box.height)).toBeLessThan(0.03);
  expect(Math.abs(box.width / 1000 - 1)).toBeLessThan(0.0003);
  scale = box.width / 1000;
  return scale;
}

/** Size of all that is drawn, from the pattern itself. */
function trueSize(pattern: Pattern): { width: number; height: number } {
  const order = drawOrder(pattern);
  if (!order.ok) throw new Error('no order');
  const items = order.value.flatMap((group) => group.items);
  const square = (c: { center: { x: number; y: number }; radius: number }) => ({
    closed: true,
    vertices: [
      { x: c.center.x - c.radius, y: c.center.y - c.radius, bulge: 0 },
      { x: c.center.x + c.radius, y: c.center.y + c.radius, bulge: 0 },
    ],
  });
  const box = boxOf(items.flatMap((item) => [...item.paths, ...item.circles.map(square)]));
  return { width: box.maxX - box.minX, height: box.maxY - box.minY };
}

/** What each reader makes of each pattern in every form; the files of tests share the patterns out, so that two of them run at once. */
export function readersAgreeOn(patterns: readonly (readonly [string, Pattern])[]): void {
  beforeAll(() => {
    scratch = mkdtempSync(join(tmpdir(), 'cutter-readers-'));
  });
  afterAll(() => rmSync(scratch, { recursive: true }));

  describe.each(patterns.map(([name, pattern], nth) => [name, nth, pattern] as const))('%s', (name, nth, pattern) => {
    /** By day every form on one of the patterns, by night on all. */
    const isTried = (form: number, arcs: number) => BY_NIGHT || (nth + form + arcs) % patterns.length === 0;
    const size = trueSize(pattern);
    const svg = textOf(svgNodeWriter.write(pattern));
    const page = { width: size.width + 10, height: size.height + 10 };

    const expectSize = (box: { width: number; height: number }, within: number) => {
      expect(Math.abs(box.width - size.width)).toBeLessThan(within);
      expect(Math.abs(box.height - size.height)).toBeLessThan(within);
    };

    function librecad(context: TestContext, label: string, dxf: string): readonly TracedPath[] {
      needsReader(context, 'librecad');
      needsReader(context, 'mupdf-tools');
      return printed(label, dxf, printingScale());
    }

    const svgPrints = new Map<string, readonly TracedPath[]>();

    function svgPrinted(context: TestContext, by: 'inkscape' | 'rsvg-convert'): readonly TracedPath[] {
      needsReader(context, by);
      needsReader(context, 'mupdf-tools');
      const before = svgPrints.get(by);
      if (before) return before;
      const source = saved(`${name}.svg`, svg);
      const target = join(scratch, `${name}-${by}.pdf`);
      const args =
        by === 'inkscape' ? [source, '--export-type=pdf', `--export-filename=${target}`] : ['--format=pdf', `--output=${target}`, source];
      execFileSync(by, args, { stdio: 'ignore' });
      const print = tracePdf(target);
      svgPrints.set(by, print);
      return print;
    }

    for (const [nthForm, form] of DXF_FORMS.entries()) {
      for (const [nthArcs, arcs] of DXF_ARCS.entries()) {
        // Every form on the plates, which have every kind of edge; the many edges of the others once for each form of file.
        if (!name.startsWith('plate') && arcs !== 'bulge') continue;
        if (!isTried(nthForm, nthArcs)) continue;
        it(`DXF ${form} with arcs as ${arcs}: ezdxf finds nothing to repair and measures the size`, (context) => {
          needsReader(context, 'ezdxf');
          const file = saved(`${name}-${form}-${arcs}.dxf`, dxfOf(pattern, { form, arcs }));
          const script = fileURLToPath(new URL('./readers/read_dxf.py', import.meta.url));
          const read = JSON.parse(execFileSync('/usr/bin/python3', [script, file], { encoding: 'utf8', maxBuffer: 1 << 28 }));
          expect([...read.errors, ...read.fixes]).toEqual([]);
          expect([read.units, read.measurement]).toEqual([4, 1]);
          const [[minX, minY], [maxX, maxY]] = read.extents;
          // Chords of arcs at the edge of the drawing lie up to the chord error inside.
          const exact = name === 'sheet' ? READ_STEP + EXACT : EXACT;
          expectSize({ width: maxX - minX, height: maxY - minY }, arcs === 'lines' ? 2 * DEFAULT_OUTPUT_SETTINGS.dxf.chordError : exact);
        });
      }

      if (!isTried(nthForm, 0)) continue;
      it(`DXF ${form}: LibreCAD prints it at 1:1`, (context) => {
        expectSize(boxOfTrace(librecad(context, `${name}-${form}`, dxfOf(pattern, { form }))), MEASURED);
      });
    }

    for (const [nthReader, by] of (['inkscape', 'rsvg-convert'] as const).entries()) {
      if (!isTried(nthReader, 0)) continue;
      it(`SVG: ${by} prints it at 1:1`, (context) => {
        expectSize(boxOfTrace(svgPrinted(context, by)), MEASURED);
      });
    }

    if (isTried(0, 0))
      it('the pictures of what Inkscape, librsvg and LibreCAD print are the same, and would show a shift of 0.1 mm', (context) => {
        const traces = [
          svgPrinted(context, 'inkscape'),
          svgPrinted(context, 'rsvg-convert'),
          librecad(context, `${name}-picture`, dxfOf(pattern)),
        ];
        const draw = (trace: readonly TracedPath[], shift = 0) =>
          rasterise(redrawTrace(trace, page.width, page.height, STROKE, shift), DPI);
        const [byInkscape, byLibrsvg, byLibrecad] = traces;
        if (!byInkscape || !byLibrsvg || !byLibrecad) throw new Error('a trace is missing');
        const picture = draw(byInkscape);
        const bound = DIFFERING_SHARE * inkedPixels(picture);
        expect(differingPixels(picture, draw(byLibrsvg))).toBeLessThanOrEqual(bound);
        expect(differingPixels(picture, draw(byLibrsvg, 0.1))).toBeGreaterThan(bound);
        // LibreCAD's grid of 0.021 mm shows; it must be far from what a shift of 0.1 mm shows.
        expect(differingPixels(picture, draw(byLibrecad))).toBeLessThan(differingPixels(picture, draw(byLibrecad, 0.1)) / 2);
      });
  });
}
