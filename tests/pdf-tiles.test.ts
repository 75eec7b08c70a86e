import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type LineArcPath, type Point, vertex } from '../src/geometry/path.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { PAPERS, readPaper } from '../src/sheet/paper/paper.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../src/sheet/paper/sheet-settings.ts';
import { layOutForPdf, PENS, pdfWriter } from '../src/writers/pdf/pdf.ts';
import { inkedPixels, type Picture } from './picture.ts';
import { drawPage, type PixelBox, pageSizes, tracePaths } from './read-pdf.ts';
import { needsReader } from './readers.ts';
import { samplePattern } from './sample-pattern.ts';

/** An angle piece with a rounded inner corner: of its six tiles the upper right one would be empty. mm */
const QUARTER = Math.SQRT2 - 1;
const ANGLE: LineArcPath = {
  closed: true,
  vertices: [vertex(0, 0), vertex(250, 0), vertex(250, 30), vertex(150, 30, -QUARTER), vertex(120, 60), vertex(120, 90), vertex(0, 90)],
};
const pattern: Pattern = {
  ...samplePattern,
  title: 'angle piece',
  parts: [{ id: 'angle', title: 'angle', outline: ANGLE, holes: [], marks: [], labels: [] }],
  beside: { marks: [], labels: [] },
  extents: { minX: 0, minY: 0, maxX: 250, maxY: 90 },
};
const DPI = 600;

const scratch = mkdtempSync(join(tmpdir(), 'tiles-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function smallPaper(): SheetSettings {
  const paper = readPaper('130x165');
  if (!paper.ok) throw new Error(JSON.stringify(paper.problems));
  return { ...DEFAULT_SHEET_SETTINGS, paper: paper.value, parts: ['pattern'], orientation: 'portrait' };
}

function write(name: string, settings: SheetSettings): string {
  const written = pdfWriter(settings).write(pattern);
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  const file = join(scratch, name);
  writeFileSync(file, written.value);
  return file;
}

function sheet(settings: SheetSettings) {
  const laid = layOutForPdf(pattern, settings);
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value;
}

describe('a pattern in five tiles', () => {
  const laid = sheet(smallPaper());
  const drawings = laid.pages.map((page) => page.layers.find((layer) => layer.clip !== null));
  /** Where the drawing's own (0, 0) lies on each page. */
  const origins = drawings.map((layer) => layer?.strokes.find((s) => s.role === 'outline')?.paths[0]?.vertices[0] as Point);

  it('has five pages of one orientation, none empty', () => {
    expect(laid.pages).toHaveLength(5);
    expect(laid.tiled).toBe(true);
    expect(new Set(laid.pages.map((page) => page.width)).size).toBe(1);
    for (const layer of drawings) expect(layer?.clip).toBeDefined();
  });

  it('shows each shared register cross at the same point of the drawing, to 1e-6 mm, on the two neighbours or more', () => {
    const seen = new Map<string, Point[]>();
    for (const [k, page] of laid.pages.entries()) {
      const origin = origins[k] as Point;
      for (const layer of page.layers) {
        const cross = layer.strokes.find((s) => s.role === 'register-cross');
        const arm = cross?.paths[0]?.vertices;
        const name = layer.texts[0]?.text;
        if (!arm?.[0] || !arm[1] || name === undefined) continue;
        const at = { x: (arm[0].x + arm[1].x) / 2 - origin.x, y: arm[0].y - origin.y };
        seen.set(name, [...(seen.get(name) ?? []), at]);
      }
    }
    expect(seen.size).toBeGreaterThanOrEqual(8);
    for (const [name, at] of seen) {
      expect(at.length, name).toBeGreaterThanOrEqual(2);
      for (const p of at) expect(Math.hypot(p.x - (at[0]?.x ?? 0), p.y - (at[0]?.y ?? 0))).toBeLessThan(1e-6);
    }
  });

  it('overlaps its neighbours by 10 mm or more', () => {
    const windows = drawings.map((layer, k) => {
      const clip = layer?.clip;
      const origin = origins[k] as Point;
      return clip
        ? { minX: clip.minX - origin.x, maxX: clip.maxX - origin.x, minY: clip.minY - origin.y, maxY: clip.maxY - origin.y }
        : null;
    });
    const sorted = windows.flatMap((w) => (w && w.minY < 0 ? [w] : [])).sort((a, b) => a.minX - b.minX);
    expect(sorted.length).toBe(3);
    for (const [k, w] of sorted.entries()) if (k > 0) expect((sorted[k - 1]?.maxX ?? 0) - w.minX).toBeGreaterThanOrEqual(10);
  });

  it('draws the crosses where they were laid, by mutool', (context) => {
    needsReader(context, 'mupdf-tools');
    const file = write('five.pdf', smallPaper());
    for (const [k, page] of laid.pages.entries()) {
      const traced = tracePaths(file, k + 1).flatMap((path) => path.subpaths);
      for (const cross of page.layers.flatMap((layer) => layer.strokes).filter((s) => s.role === 'register-cross')) {
        for (const arm of cross.paths) {
          const [from, to] = [arm.vertices[0], arm.vertices[1]] as [Point, Point];
          const off = traced.map(([a, b]) =>
            a && b ? Math.hypot(a.to.x - from.x, a.to.y - from.y) + Math.hypot(b.to.x - to.x, b.to.y - to.y) : Number.POSITIVE_INFINITY,
          );
          expect(Math.min(...off)).toBeLessThan(0.001);
        }
      }
    }
  });

  it('put together from its rasters is the one-page picture', (context) => {
    needsReader(context, 'poppler');
    needsReader(context, 'mupdf-tools');
    const tiles = write('five.pdf', smallPaper());
    const whole = write('whole.pdf', { ...smallPaper(), paper: PAPERS.a3 });
    expect(pageSizes(whole)).toHaveLength(1);
    const px = (mm: number) => Math.round((mm / 25.4) * DPI);
    // A blank sheet with its (0, 0), lower left, 2 mm inside.
    const [width, height] = [px(254), px(94)];
    const letters: PixelBox[] = [];
    const assembled: Picture = { width, height, pixels: new Uint8Array(width * height * 4).fill(255) };
    const pageHeight = laid.pages[0]?.height ?? 0;
    for (const [k, layer] of drawings.entries()) {
      const clip = layer?.clip;
      const origin = origins[k] as Point;
      if (!clip) throw new Error('a tile has a window');
      // The frame of the tile is left out: it is not of the pattern.
      const inside = { minX: clip.minX + 0.5, minY: clip.minY + 0.5, maxX: clip.maxX - 0.5, maxY: clip.maxY - 0.5 };
      const box = {
        x: px(inside.minX),
        y: px(pageHeight - inside.maxY),
        width: px(inside.maxX - inside.minX),
        height: px(inside.maxY - inside.minY),
      };
      const at = { x: box.x - px(origin.x) + px(2), y: box.y - px(pageHeight - origin.y) + px(92) };
      for (const name of laid.pages[k]?.layers.filter((l) => l.strokes[0]?.role === 'register-cross').flatMap((l) => l.texts) ?? []) {
        const corner = { x: px(name.at.x - 0.3) - box.x + at.x, y: px(pageHeight - name.at.y - 2.5) - box.y + at.y };
        letters.push({ ...corner, width: px(3), height: px(3) });
      }
      paste(erased(drawPage(tiles, k + 1, DPI, box)), assembled, at.x, at.y);
    }
    const outline = tracePaths(whole, 1).find((p) => Math.abs(p.width - PENS.CUT.width) < 0.001);
    const first = outline?.subpaths[0]?.[0]?.to as Point;
    const wholeHeight = pageSizes(whole)[0]?.[1] ?? 0;
    const one = erased(drawPage(whole, 1, DPI, { x: px(first.x) - px(2), y: px(wholeHeight - first.y) - px(92), width, height }));
    for (const picture of [one, assembled]) for (const letter of letters) blank(picture, letter);
    expect(inkedPixels(one)).toBeGreaterThan(80_000);
    expect(stray(assembled, one)).toBe(0);
    expect(stray(one, assembled)).toBe(0);
    // It would show a tile laid wrong by 0.25 mm.
    const shifted: Picture = { width, height, pixels: new Uint8Array(width * height * 4).fill(255) };
    paste(one, shifted, px(0.25), 0);
    expect(stray(shifted, one)).toBeGreaterThan(1000);
  });
});

/** The pattern without greys: only black lines as wide as CUT are compared, crosses and frames are `rule` greys. */
function erased(picture: Picture): Picture {
  const pixels = new Uint8Array(picture.pixels);
  const whole = wholePixels(pixels);
  for (let i = 0; i < whole.length; i++) if ((pixels[4 * i] ?? 255) >= DARK) whole[i] = WHITE;
  return { ...picture, pixels };
}

const WHITE = 0xffffffff;
/** The same memory, a number a pixel: millions of them are looked at. */
const wholePixels = (pixels: Uint8Array) => new Uint32Array(pixels.buffer, pixels.byteOffset, pixels.length / 4);

/** Below this a pixel is of a black line; the greys of other pens begin at 64. */
const DARK = 48;
/** Pixels of rounding when a raster is laid on another: half for each, and half for the edge of a line. */
const REACH = 2;

/** Takes the letter beside a register cross away, and the same place of the whole picture, which has no crosses. */
function blank(picture: Picture, box: PixelBox): void {
  for (let y = Math.max(0, box.y); y < Math.min(picture.height, box.y + box.height); y++) {
    const from = 4 * (y * picture.width + Math.max(0, box.x));
    picture.pixels.fill(255, from, 4 * (y * picture.width + Math.min(picture.width, box.x + box.width)));
  }
}

function paste(from: Picture, onto: Picture, dx: number, dy: number): void {
  const [source, target] = [wholePixels(from.pixels), wholePixels(onto.pixels)];
  for (let y = Math.max(0, -dy); y < Math.min(from.height, onto.height - dy); y++) {
    for (let x = Math.max(0, -dx); x < Math.min(from.width, onto.width - dx); x++) {
      const i = y * from.width + x;
      if ((from.pixels[4 * i] ?? 255) < 255) target[(y + dy) * onto.width + x + dx] = source[i] ?? WHITE;
    }
  }
}

/** How many inked pixels of `a` have no ink of `b` within `REACH` pixels. */
function stray(a: Picture, b: Picture): number {
  let count = 0;
  const inked = (p: Picture, x: number, y: number) => (p.pixels[4 * (y * p.width + x)] ?? 255) < 255;
  for (let y = REACH; y < a.height - REACH; y++) {
    for (let x = REACH; x < a.width - REACH; x++) {
      if (!inked(a, x, y)) continue;
      let found = false;
      for (let dy = -REACH; dy <= REACH && !found; dy++)
        for (let dx = -REACH; dx <= REACH && !found; dx++) found = inked(b, x + dx, y + dy);
      if (!found) count++;
    }
  }
  return count;
}
