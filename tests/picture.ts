import { Resvg } from '@resvg/resvg-js';
import pixelmatch from 'pixelmatch';

/** Pixels on white, 4 bytes each. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** CSS: 96 user units of an SVG without a viewBox are one inch. */
const CSS_DPI = 96;

/** An SVG drawn at true size by resvg, on white. Throws when it is not well-formed. */
export function rasterise(svg: string, dotsPerInch: number): Picture {
  const drawn = new Resvg(svg, {
    fitTo: { mode: 'zoom', value: dotsPerInch / CSS_DPI },
    background: '#ffffff',
    font: { loadSystemFonts: false },
  }).render();
  return { width: drawn.width, height: drawn.height, pixels: drawn.pixels };
}

/** How many pixels differ visibly (pixelmatch, its default threshold, antialiasing left out). Throws on different sizes. */
export function differingPixels(a: Picture, b: Picture): number {
  if (a.width !== b.width || a.height !== b.height) throw new Error(`sizes differ: ${a.width} x ${a.height}, ${b.width} x ${b.height}`);
  return pixelmatch(a.pixels, b.pixels, undefined, a.width, a.height);
}

/** How many pixels are not white. */
export function inkedPixels({ pixels }: Picture): number {
  let count = 0;
  for (let i = 0; i < pixels.length; i += 4) if ((pixels[i] ?? 255) < 255) count++;
  return count;
}
