import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';
import { describe, expect } from 'vitest';
import { DEMO_FILE, inBrowser, noStopSign, openDemo, openPanel, PLATE_DEMO_FILE, saved, show } from './browser.ts';

/** Ink of a picture, a byte a pixel. */
interface Ink {
  readonly width: number;
  readonly height: number;
  readonly dots: Uint8Array;
}

/** Brightness below which a dot is ink: the page has tints for plastic and paper but strong lines, the file white and fine grey lines. */
const INK_OF_PAGE = 170;
const INK_OF_FILE = 230;
/** How far ink may lie from ink of the other picture, mm: the page's lines are up to 0.7 mm thick at this size, and a screenshot begins at a whole dot. */
const OFF = 0.5;
const SHIFT = 1.5;
/** Antialiasing may lose a dot of a crossing or an end here and there. */
const LOST_SHARE = 0.001;

function inkOf(width: number, height: number, pixels: Uint8Array, below: number): Ink {
  const dots = new Uint8Array(width * height);
  for (let i = 0; i < dots.length; i++) {
    const [r = 255, g = 255, b = 255] = pixels.subarray(4 * i, 4 * i + 3);
    dots[i] = 0.299 * r + 0.587 * g + 0.114 * b < below ? 1 : 0;
  }
  return { width, height, dots };
}

/** Share of the ink of `a`, moved right by `shift` dots, that has no ink of `b` within `reach` dots. */
function lostShare(a: Ink, b: Ink, reach: number, shift = 0): number {
  const near = (x: number, y: number) => {
    for (let v = Math.max(0, y - reach); v <= Math.min(b.height - 1, y + reach); v++)
      for (let u = Math.max(0, x - reach); u <= Math.min(b.width - 1, x + reach); u++) if (b.dots[v * b.width + u] === 1) return true;
    return false;
  };
  let ink = 0;
  let lost = 0;
  for (let y = 0; y < a.height; y++)
    for (let x = 0; x < a.width; x++) {
      if (a.dots[y * a.width + x] !== 1) continue;
      ink++;
      if (!near(x + shift, y)) lost++;
    }
  expect(ink).toBeGreaterThan(1000);
  return lost / ink;
}

describe('the picture of the pattern', () => {
  for (const [name, file] of [
    ['a strip', DEMO_FILE],
    ['a plate', PLATE_DEMO_FILE],
  ] as const) {
    inBrowser(
      `shows of ${name} the lines of the saved SVG as another renderer draws it, and would show a shift of 1.5 mm`,
      async (open) => {
        const { page } = await open({ deviceScaleFactor: 3, colorScheme: 'light', viewport: { width: 1440, height: 4000 } });
        await openDemo(page, file);
        await noStopSign(page);
        await openPanel(page, 'files');
        await show(page, 'flat');
        await page.getByRole('button', { name: 'the whole drawing' }).click();
        // What stands beside the parts is drawn, and the line over the picture, which comes after a pause, has moved it for the last time.
        await page.waitForFunction(() => (document.querySelector('#pattern-picture .layer-INFO')?.getAttribute('d') ?? '').length > 1000);
        await page.getByRole('status').filter({ hasText: 'Drawn:' }).waitFor();
        const picture = page.locator('#pattern-picture');
        const shown = PNG.sync.read(await picture.screenshot());
        const svg = (await saved(page, '#save-svg')).content.toString();
        const drawn = new Resvg(svg, { fitTo: { mode: 'width', value: shown.width }, background: '#ffffff' }).render();
        expect(Math.abs(drawn.height - shown.height)).toBeLessThanOrEqual(3);
        const byPage = inkOf(shown.width, shown.height, shown.data, INK_OF_PAGE);
        const byOther = inkOf(drawn.width, drawn.height, drawn.pixels, INK_OF_FILE);
        const [, millimetres = '0'] = /<svg\b[^>]*\bwidth="([\d.]+)mm"/.exec(svg) ?? [];
        const perMm = shown.width / Number(millimetres);
        const reach = Math.ceil(OFF * perMm);
        expect(lostShare(byPage, byOther, reach)).toBeLessThan(LOST_SHARE);
        expect(lostShare(byOther, byPage, reach)).toBeLessThan(LOST_SHARE);
        expect(lostShare(byPage, byOther, reach, Math.round(SHIFT * perMm))).toBeGreaterThan(100 * LOST_SHARE);
      },
    );
  }
});
