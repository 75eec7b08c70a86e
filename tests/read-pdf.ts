import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { PNG } from 'pngjs';
import type { Point } from '../src/geometry/path.ts';
import type { Picture } from './picture.ts';

/** 1 in = 25.4 mm = 72 pt (ISO 32000, user space). */
export const MM_PER_POINT = 25.4 / 72;

/** A path as a reader of PDF found it: every point that it goes through or is drawn towards, mm from the page's lower left corner. */
export interface TracedPath {
  readonly kind: 'stroke' | 'fill';
  /** Line width, mm; 0 for a filled path. */
  readonly width: number;
  /** One entry for each subpath: its end points in order, curves with their two handles before. */
  readonly subpaths: readonly (readonly TracedStep[])[];
}

export interface TracedStep {
  readonly to: Point;
  readonly handles: readonly [Point, Point] | null;
}

/** Every path that `mutool trace` reports on a page (from 1), in file order. */
export function tracePaths(file: string, page: number): readonly TracedPath[] {
  const trace = execFileSync('mutool', ['trace', file, String(page)], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
    maxBuffer: 1e8,
  });
  const height = Number(/mediabox="[\d.]+ [\d.]+ [\d.]+ ([\d.]+)"/.exec(trace)?.[1]);
  return [...trace.matchAll(/<(stroke|fill)_path ([^>]*)>([\s\S]*?)<\/\1_path>/g)].map(([, kind, attributes = '', body = '']) => {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = (/transform="([^"]*)"/.exec(attributes)?.[1] ?? '').split(' ').map(Number);
    // mutool's y runs down from the upper edge.
    const at = (x: number, y: number): Point => ({
      x: (a * x + c * y + e) * MM_PER_POINT,
      y: (height - (b * x + d * y + f)) * MM_PER_POINT,
    });
    const subpaths: TracedStep[][] = [];
    for (const [, verb, rest = ''] of body.matchAll(/<(moveto|lineto|curveto) ([^>]*)\/>/g)) {
      const n = Object.fromEntries([...rest.matchAll(/([xy]\d?)="([-\d.e]+)"/g)].map(([, key = '', value]) => [key, Number(value)]));
      if (verb === 'moveto') subpaths.push([{ to: at(n.x ?? Number.NaN, n.y ?? Number.NaN), handles: null }]);
      else if (verb === 'lineto') subpaths.at(-1)?.push({ to: at(n.x ?? Number.NaN, n.y ?? Number.NaN), handles: null });
      else {
        const [p, q, r] = [1, 2, 3].map((k) => at(n[`x${k}`] ?? Number.NaN, n[`y${k}`] ?? Number.NaN)) as [Point, Point, Point];
        subpaths.at(-1)?.push({ to: r, handles: [p, q] });
      }
    }
    const width = kind === 'stroke' ? Number(/linewidth="([\d.]+)"/.exec(attributes)?.[1]) * MM_PER_POINT : 0;
    return { kind: kind === 'stroke' ? 'stroke' : 'fill', width, subpaths };
  });
}

/** Page sizes in mm as `pdfinfo` prints them. */
export function pageSizes(file: string): readonly (readonly [width: number, height: number])[] {
  const info = execFileSync('pdfinfo', ['-f', '1', '-l', '-1', file], { encoding: 'utf8' });
  return [...info.matchAll(/Page +\d+ size:\s+([\d.]+) x ([\d.]+) pts/g)].map(([, w, h]) => [
    Number(w) * MM_PER_POINT,
    Number(h) * MM_PER_POINT,
  ]);
}

/** The text of a page as `pdftotext` reads it, white space run together. */
export function pageText(file: string, page: number): string {
  const { mtimeMs, size } = statSync(file);
  const key = [file, mtimeMs, size].join(' ');
  let pages = texts.get(key);
  if (!pages) {
    const all = execFileSync('pdftotext', ['-enc', 'UTF-8', file, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
    // It ends each page with a form feed.
    pages = all.split('\f').map((words) => words.replace(/\s+/g, ' '));
    texts.set(key, pages);
  }
  return pages[page - 1] ?? '';
}

/** The pages of each file that was read, which is read once. */
const texts = new Map<string, readonly string[]>();

/** A part of a page in pixels, from its upper left corner. */
export interface PixelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part of a page drawn by `pdftoppm`. */
export function drawPage(file: string, page: number, dpi: number, box: PixelBox): Picture {
  const crop = ['-x', box.x, '-y', box.y, '-W', box.width, '-H', box.height].map(String);
  const only = ['-f', String(page), '-l', String(page), '-singlefile'];
  const png = execFileSync('pdftoppm', ['-r', String(dpi), ...crop, ...only, '-png', file], { maxBuffer: 1e9 });
  const { width, height, data } = PNG.sync.read(png);
  return { width, height, pixels: data };
}
