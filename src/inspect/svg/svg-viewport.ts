import { type Affine, compose } from '../affine.ts';

/** A rectangle in user units; x to the right, y down. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The four numbers of a viewBox; null when it is not there, cannot be read or is empty. */
export function readViewBox(text: string | undefined): Rectangle | null {
  const numbers = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x = 0, y = 0, width = 0, height = 0] = numbers;
  return numbers.length === 4 && numbers.every(Number.isFinite) && width > 0 && height > 0 ? { x, y, width, height } : null;
}

/** How a viewBox lies in a viewport by preserveAspectRatio (SVG 1.1, 7.8); the map from the viewBox's units to the viewport's. */
export function fitViewBox(box: Rectangle, viewport: Rectangle, preserveAspectRatio = 'xMidYMid'): Affine {
  const [sx, sy] = [viewport.width / box.width, viewport.height / box.height];
  const words = preserveAspectRatio.trim().split(/\s+/);
  const align = (words[0] === 'defer' ? words[1] : words[0]) || 'xMidYMid';
  if (align === 'none') return compose([sx, 0, 0, sy, viewport.x, viewport.y], [1, 0, 0, 1, -box.x, -box.y]);
  const s = words.includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
  const share = (word: string) => (word === 'Min' ? 0 : word === 'Max' ? 1 : 0.5);
  const x = viewport.x + (viewport.width - s * box.width) * share(align.slice(1, 4));
  const y = viewport.y + (viewport.height - s * box.height) * share(align.slice(5, 8));
  return compose([s, 0, 0, s, x, y], [1, 0, 0, 1, -box.x, -box.y]);
}
