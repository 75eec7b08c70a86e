import { type LineArcPath, type Point, polyline, vertex } from '../../geometry/path.ts';
import type { SheetSpeech, SheetWords } from '../../words/sheet-words.ts';
import { type PageLayer, type PageStroke, text } from './page.ts';

/** Length of the two bars on every page, mm. */
export const BAR = 100;
/** ISO/IEC 7810, ID-1: every bank card. mm; the radius may be 2.88 to 3.48. */
export const CARD = { width: 85.6, height: 53.98, radius: 3.18 } as const;

const END_TICK = 4;
const TICK = 2;
const QUARTER_BULGE = Math.SQRT2 - 1;
const SMALL = 1.9;

/** The two bars, sharing their zero at `corner`: one across to the right, one along upwards, with a tick each 10 mm. */
export function scaleBars(corner: Point, w: SheetWords): PageLayer {
  const across = (d: number, off: number): Point => ({ x: corner.x + d, y: corner.y + off });
  const along = (d: number, off: number): Point => ({ x: corner.x + off, y: corner.y + d });
  const bar = (at: typeof across, role: string): readonly PageStroke[] => [
    { pen: 'bar', role, paths: [polyline([at(0, 0), at(BAR, 0)])], circles: [] },
    { pen: 'rule', role: `${role}-ticks`, paths: ticks(at), circles: [] },
  ];
  return {
    clip: null,
    strokes: [...bar(across, 'bar-across'), ...bar(along, 'bar-along')],
    texts: [
      text(w.across, corner.x + BAR / 2, corner.y + 2.6, SMALL, { align: 'center' }),
      text(w.along, corner.x + 2.6 + SMALL, corner.y + BAR / 2 + 6, SMALL, {
        align: 'center',
        angle: 90,
      }),
    ],
  };
}

function ticks(at: (d: number, off: number) => Point): readonly LineArcPath[] {
  return Array.from({ length: BAR / 10 + 1 }, (_, k) => polyline([at(10 * k, 0), at(10 * k, k === 0 || k === BAR / 10 ? END_TICK : TICK)]));
}

/** The outline of a bank card with its lower left corner at (x, y), and what to do with it written inside at the top. */
export function cardOutline(x: number, y: number, { w, fixed }: SheetSpeech): PageLayer {
  const middle = x + CARD.width / 2;
  const top = y + CARD.height;
  return {
    clip: null,
    strokes: [{ pen: 'rule', role: 'card', paths: [roundedRectangle(x, y, CARD.width, CARD.height, CARD.radius)], circles: [] }],
    texts: [
      text(w.card, middle, top - 4.4, SMALL, { align: 'center' }),
      text(`ISO/IEC 7810 ID-1, ${fixed(CARD.width, 2)} x ${fixed(CARD.height, 2)} mm`, middle, top - 7.8, SMALL, { align: 'center' }),
    ],
  };
}

function roundedRectangle(x: number, y: number, width: number, height: number, r: number): LineArcPath {
  const [right, top] = [x + width, y + height];
  return {
    closed: true,
    vertices: [
      vertex(x + r, y),
      vertex(right - r, y, QUARTER_BULGE),
      vertex(right, y + r),
      vertex(right, top - r, QUARTER_BULGE),
      vertex(right - r, top),
      vertex(x + r, top, QUARTER_BULGE),
      vertex(x, top - r),
      vertex(x, y + r, QUARTER_BULGE),
    ],
  };
}
