import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { arcOf, boxOf, type LineArcPath, type Point, segmentsOf } from '../src/geometry/path.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { shiftPart } from '../src/pattern/place-marks.ts';
import { readPaper } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import { PENS, pdfWriter } from '../src/writers/pdf/pdf.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { tried } from './by-night.ts';
import { laidSheet } from './cutter-patterns.ts';
import { presetPlate } from './demo-plate.ts';
import { DEMO_HAND, LARGE_HAND, stripOf } from './pdf-samples.ts';
import { differingPixels, inkedPixels, type Picture, rasterise } from './picture.ts';
import { drawPage, pageSizes, pageText, type TracedPath, type TracedStep, tracePaths } from './read-pdf.ts';
import { needsReader } from './readers.ts';
import { samplePattern } from './sample-pattern.ts';

/** What the issue asks of bars, card and outline; mutool prints six digits, so 0.0001 mm on a page. */
const DRAWN_WITHIN = 0.01;
/** Output rule 4. */
const ARC_WITHIN = 0.001;
const DPI = 600;
/** Of the inked pixels, how many may differ: two renderers at 0.042 mm a pixel. */
const DIFFERING_SHARE = 0.0001;

const scratch = mkdtempSync(join(tmpdir(), 'pdf-'));
afterAll(() => rmSync(scratch, { recursive: true }));

let count = 0;
function fileOf(pattern: Pattern, settings: Partial<SheetSettings> = {}): string {
  const written = pdfWriter({ ...DEFAULT_SHEET_SETTINGS, ...settings }).write(pattern);
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  const file = join(scratch, `${count++}.pdf`);
  writeFileSync(file, written.value);
  return file;
}

const demo = stripOf(DEMO_HAND, 'ring-lowered-in-three', '2026-03-31');
const ALL_PARTS = ['pattern', 'making', 'handout'] as const;
const near = (a: number, b: number, within: number) => Math.abs(a - b) <= within;
const points = (path: TracedPath | undefined): readonly Point[] => path?.subpaths.flatMap((s) => s.map((step) => step.to)) ?? [];
const widths = (path: TracedPath) => Math.round(path.width * 1000) / 1000;

/** The straight strokes of the width of the bars: one across, one along. */
function barsOn(file: string, page: number): readonly Point[] {
  const bars = tracePaths(file, page).filter((p) => p.kind === 'stroke' && widths(p) === PENS.bar.width);
  expect(bars).toHaveLength(2);
  return bars.map((bar) => {
    const [from, to] = points(bar) as [Point, Point];
    return { x: to.x - from.x, y: to.y - from.y };
  });
}

describe('page sizes by pdfinfo', () => {
  // A4 and A3: ISO 216. Letter: ANSI/ASME Y14.1. pdfinfo prints six digits of points.
  const papers = [
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
    ['a3', 297, 420],
    ['150x180', 150, 180],
  ] as const;
  it.each(tried(papers, ([name]) => name === 'letter' || name === '150x180'))('%s is true on every page', (name, width, height) => {
    const paper = readPaper(name);
    if (!paper.ok) throw new Error(JSON.stringify(paper.problems));
    const sizes = pageSizes(fileOf(demo, { paper: paper.value, parts: ALL_PARTS }));
    expect(sizes.length).toBeGreaterThanOrEqual(3);
    for (const size of sizes) {
      expect([...size].sort((a, b) => a - b)[0]).toBeCloseTo(width, 2);
      expect([...size].sort((a, b) => a - b)[1]).toBeCloseTo(height, 2);
      expect(size).toEqual(sizes[0]);
    }
  });
});

describe('bars and card by mutool', () => {
  it('stand on every page with something at true size: 100 mm across, 100 mm along, and an ID-1 card', (context) => {
    needsReader(context, 'mupdf-tools');
    const file = fileOf(stripOf(LARGE_HAND, 'long-raised-in-four'), { parts: ALL_PARTS });
    const pages = pageSizes(file).length;
    expect(pages).toBe(6);
    // What is only read (the storyboard, the patient's sheet) has none: nothing on it is at true size, so there is nothing to check by them.
    const read = Array.from({ length: pages }, (_, k) => k + 1).filter((page) => !pageText(file, page).includes('Print at 100 %'));
    expect(read).toHaveLength(3);
    for (let page = 1; page <= pages; page++) {
      if (read.includes(page)) continue;
      const [across, along] = barsOn(file, page) as [Point, Point];
      expect(near(across.x, 100, DRAWN_WITHIN) && near(across.y, 0, DRAWN_WITHIN)).toBe(true);
      expect(near(along.y, 100, DRAWN_WITHIN) && near(along.x, 0, DRAWN_WITHIN)).toBe(true);
      // ISO/IEC 7810, ID-1: 85.60 x 53.98 mm, corner radius 2.88 to 3.48.
      const cards = tracePaths(file, page).filter((p) => p.kind === 'stroke' && p.subpaths.length === 1);
      const box = cards.map((card) => boxOf([{ closed: true, vertices: points(card).map((p) => ({ ...p, bulge: 0 })) }]));
      const card = box.find((b) => near(b.maxX - b.minX, 85.6, DRAWN_WITHIN) && near(b.maxY - b.minY, 53.98, DRAWN_WITHIN));
      expect(card).toBeDefined();
    }
  });

  it('print at 100 mm on the printer that a corrected file was made for', (context) => {
    needsReader(context, 'mupdf-tools');
    const file = fileOf(demo, { orientation: 'portrait', correction: { across: 97.1, along: 99.8 } });
    const [across, along] = barsOn(file, 1) as [Point, Point];
    // What the printer that printed 100 mm as 97.1 and 99.8 makes of them.
    expect(across.x * 0.971).toBeCloseTo(100, 2);
    expect(along.y * 0.998).toBeCloseTo(100, 2);
    expect(pageSizes(file)[0]?.[0]).toBeCloseTo(210, 2);
    expect(pageText(file, 1)).toContain('bars that measured 97.1 mm across and 99.8 mm along');
  });
});

/** How far a traced subpath lies from a path of ours that was moved by `shift`; its corners must be there in order. mm */
function distanceFrom(steps: readonly TracedStep[], path: LineArcPath, shift: Point): { corners: number; arcs: number } {
  let [corners, arcs, at] = [0, 0, 0];
  for (const segment of segmentsOf(path)) {
    const arc = arcOf(segment);
    const end = { x: segment.to.x + shift.x, y: segment.to.y + shift.y };
    // A cubic that ends at the segment's end is its last.
    for (;;) {
      const from = steps[at]?.to;
      const step = steps[++at];
      if (!from || !step) return { corners: Number.POSITIVE_INFINITY, arcs };
      if (arc && step.handles) {
        const [p, q] = step.handles;
        for (let t = 0; t <= 1; t += 1 / 32) {
          const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
          const x = a * from.x + b * p.x + c * q.x + d * step.to.x - shift.x;
          const y = a * from.y + b * p.y + c * q.y + d * step.to.y - shift.y;
          arcs = Math.max(arcs, Math.abs(Math.hypot(x - arc.center.x, y - arc.center.y) - arc.radius));
        }
      }
      const off = Math.hypot(step.to.x - end.x, step.to.y - end.y);
      if (!arc || off < 0.05) {
        corners = Math.max(corners, off);
        break;
      }
    }
  }
  return { corners, arcs };
}

describe('outline by mutool', () => {
  it.each([
    ['demo strip', demo],
    ['sample with holes and arcs both ways', samplePattern],
    ['largest strip on A3', stripOf(LARGE_HAND, 'long-and-ring-raised-in-four')],
    ['palmar plate', presetPlate('mp-immobilisation-palmar').pattern],
    ['sheet of strips and plates, on paper as large', laidSheet(), '900x600'],
  ] as const)('is the pattern itself, moved as a whole: %s', (_, pattern, name: string = 'a3') => {
    const paper = readPaper(name);
    if (!paper.ok) throw new Error(JSON.stringify(paper.problems));
    const file = fileOf(pattern, { paper: paper.value, area: 'paper', parts: ['pattern'] });
    const cut = tracePaths(file, 1).filter((p) => p.kind === 'stroke' && widths(p) === PENS.CUT.width);
    const paths = pattern.parts.flatMap((part) => [...part.holes, part.outline].map((path) => ({ path, part })));
    for (const { path, part } of paths) {
      const best = cut
        .flatMap((traced) => traced.subpaths)
        .map((steps) => {
          const first = path.vertices[0] as Point;
          const shift = { x: (steps[0]?.to.x ?? 0) - first.x, y: (steps[0]?.to.y ?? 0) - first.y };
          return { shift, ...distanceFrom(steps, path, shift) };
        })
        .sort((a, b) => a.corners - b.corners)[0];
      expect(best?.corners, part.title).toBeLessThan(DRAWN_WITHIN);
      expect(best?.arcs, part.title).toBeLessThan(ARC_WITHIN);
    }
  });
});

describe('a sheet of plastic by mutool and pdftotext', () => {
  it('begins with its plan and lists, of which nothing has the pen of a cut, and goes on with the parts', (context) => {
    needsReader(context, 'mupdf-tools');
    needsReader(context, 'poppler');
    const sheet = laidSheet();
    const file = fileOf(sheet, { parts: ['pattern', 'making'] });
    const count = pageSizes(file).length;
    const isPlan = (page: number) => pageText(file, page).includes('to be read, not to be cut by');
    const plans = Array.from({ length: count }, (_, k) => k + 1).filter(isPlan);
    expect(plans).toEqual(plans.map((_, k) => k + 1));
    expect(count).toBeGreaterThan(plans.length);
    for (const page of plans) expect(tracePaths(file, page).filter((p) => widths(p) === PENS.CUT.width)).toEqual([]);
    const outlines = tracePaths(file, 1).filter((p) => p.subpaths.length === 1 && (p.subpaths[0]?.length ?? 0) > 8);
    expect(outlines.length).toBeGreaterThanOrEqual(sheet.parts.length);
    const flat = (words: string) => words.replace(/\s+/g, '');
    const read = flat(plans.map((page) => pageText(file, page)).join(''));
    // A line's number hangs before it in a column of its own, which pdftotext reads by itself.
    for (const line of sheet.lists?.flatMap((list) => list.lines) ?? []) {
      const [, number = '', words = ''] = /^(\d+(?= {2}| [a-z]))?(.*)$/.exec(line) ?? [];
      expect(read).toContain(flat(words));
      expect(read).toContain(number);
    }
    expect(sheet.lists?.map((list) => list.lines.length).every((length) => length > 0)).toBe(true);
    const handsFirst = fileOf(sheet, { parts: ['making'] });
    expect(pageSizes(handsFirst)).toHaveLength(plans.length);
  });
});

describe('file by qpdf, pdfinfo and pdftotext', () => {
  it('is sound, has no scaling, no pictures, real text and what must be on every page', (context) => {
    needsReader(context, 'qpdf');
    const file = fileOf(demo, { parts: ALL_PARTS });
    expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
    const json = execFileSync('qpdf', ['--json', file], { encoding: 'utf8', maxBuffer: 1e8 });
    expect(json).toContain('"/PrintScaling": "/None"');
    expect(json).not.toContain('"/Image"');
    const pages = pageSizes(file).length;
    for (let page = 1; page <= pages; page++) {
      const words = pageText(file, page);
      expect(words).toMatch(/INVENTED|Invented/);
      // The patient's sheet carries no code, and what is only read no word of how to print.
      if (page === pages) continue;
      for (const part of ['DEMO-01', 'LEFT HAND', 'Ring finger lowered', `page ${page} of ${pages}`]) expect(words).toContain(part);
      if (!words.includes('step by step')) expect(words).toContain('Print at 100 %, actual size');
    }
    const making = Array.from({ length: pages }, (_, k) => pageText(file, k + 1)).join(' ');
    for (const part of [
      // The path of 152.700 of geometry 2 (docs/model.md), with 15 of lap and 10 of trim; the seam's other end half a lap after it. 20 wide, its edges staggered by the web's 12.5.
      '177.7 mm long, 32.5 mm wide',
      '160.2 seam, finishing end',
      'Fit check',
      '65 to 71 C, under a minute',
      'Water at 60 C burns',
      'Wear it for this long each day:',
    ]) {
      expect(making).toContain(part);
    }
  });

  it('shows every character of its font as itself', () => {
    // Windows code page 1252, which ISO 32000-1 (annex D) calls WinAnsiEncoding: ASCII, Latin-1 without the soft hyphen, and 27 more.
    const from = (first: number, last: number) => Array.from({ length: last - first + 1 }, (_, k) => String.fromCharCode(first + k));
    const latin = [...from(0x21, 0x7e), ...from(0xa1, 0xac), ...from(0xae, 0xff), ...'€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ'].join('');
    const pattern: Pattern = {
      ...samplePattern,
      title: 'all',
      parts: samplePattern.parts.map((p) => ({
        ...p,
        labels: [{ layer: 'MARK', text: latin, at: { x: 5, y: 40 }, height: 1, align: 'left', angle: 0 }],
      })),
    };
    const read = pageText(fileOf(pattern, { parts: ['pattern'] }), 1).replace(/\s/g, '');
    expect(read).toContain(latin.replace(/\s/g, ''));
  });
});

/** The parts alone, without letters, which each format draws in its own way. */
function unlettered(pattern: Pattern): Pattern {
  const { notes: _, ...rest } = pattern;
  return { ...rest, parts: pattern.parts.map((part) => ({ ...part, labels: [] })), beside: { marks: [], labels: [] } };
}

/** An SVG's hairlines drawn as wide as the PDF's pens, layer by layer. */
function asWideAsPdf(svg: string): string {
  return svg.replace(/stroke="(#\w+)" stroke-width="0.1"/g, (whole, colour) => {
    const pen = Object.values(PENS).find((p) => p.colour === colour);
    return pen ? `stroke="${colour}" stroke-width="${pen.width}"` : whole;
  });
}

function svgPicture(pattern: Pattern): Picture {
  const svg = svgNodeWriter.write(pattern);
  if (!svg.ok || typeof svg.value !== 'string') throw new Error(JSON.stringify(svg));
  return rasterise(asWideAsPdf(svg.value), DPI);
}

describe('page 1 by pdftoppm, laid over the SVG of the same parts at 600 dpi', () => {
  const pictured = [
    ['demo strip', () => unlettered(demo)],
    ['plate', () => unlettered(presetPlate('mp-immobilisation-dorsal').pattern)],
    ['sample', () => unlettered({ ...samplePattern, parts: samplePattern.parts.slice(0, 1) })],
  ] as const;
  // The largest picture by night; by day its outline alone, by mutool.
  it.each(tried(pictured, ([name]) => name !== 'plate'))('is the same picture: %s', (_, patternOf) => {
    const pattern = patternOf();
    const file = fileOf(pattern, { parts: ['pattern'] });
    const part = pattern.parts[0];
    if (!part) throw new Error('no part');
    const cut = tracePaths(file, 1).filter((p) => widths(p) === PENS.CUT.width);
    const first = points(cut.at(-1))[0] as Point;
    const vertex = part.outline.vertices[0] as Point;
    const moved = shiftPart(part, first.x - vertex.x, first.y - vertex.y);
    const box = boxOf([moved.outline]);
    const height = pageSizes(file)[0]?.[1] ?? Number.NaN;
    const px = (mm: number) => Math.floor((mm / 25.4) * DPI);
    const crop = {
      x: px(box.minX - 1),
      y: px(height - box.maxY - 1),
      width: px(box.maxX - box.minX + 2),
      height: px(box.maxY - box.minY + 2),
    };
    const mm = (pixels: number) => (pixels / DPI) * 25.4;
    const extents = {
      minX: mm(crop.x),
      maxX: mm(crop.x + crop.width),
      minY: height - mm(crop.y + crop.height),
      maxY: height - mm(crop.y),
    };
    const printed = drawPage(file, 1, DPI, crop);
    const drawn = (dx: number) => svgPicture({ ...pattern, parts: [shiftPart(moved, dx, 0)], extents });
    const same = drawn(0);
    const bound = DIFFERING_SHARE * inkedPixels(same);
    expect([printed.width, printed.height]).toEqual([same.width, same.height]);
    expect(inkedPixels(same)).toBeGreaterThan(50_000);
    expect(differingPixels(printed, same)).toBeLessThanOrEqual(bound);
    // It would show a drawing that is moved by 0.1 mm.
    expect(differingPixels(printed, drawn(0.1))).toBeGreaterThan(20 * bound);
  });
});
