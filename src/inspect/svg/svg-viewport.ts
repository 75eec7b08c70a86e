import { type Affine, compose, IDENTITY } from '../pen.ts';

/** Millimetres in one of each unit; 96 px are one inch (CSS Values and Units). */
const MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, q: 0.25, px: 25.4 / 96 };
/** No two neighbours take the same letters, so that a text is read in one way only, however long. */
const LENGTH = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z%]*)$/;

export interface SvgLength {
  readonly value: number;
  /** Lower case; empty when none is written. */
  readonly unit: string;
  /** Null for percentages and units that depend on a font. */
  readonly mm: number | null;
}

/** A length attribute; null when it cannot be read. Without a unit it is in CSS pixels. */
export function readSvgLength(text: string): SvgLength | null {
  const [, number, unit = ''] = LENGTH.exec(text.trim()) ?? [];
  const value = Number(number);
  if (number === undefined || !Number.isFinite(value)) return null;
  const factor = MM[unit === '' ? 'px' : unit.toLowerCase()];
  return { value, unit: unit.toLowerCase(), mm: factor === undefined ? null : value * factor };
}

/** A number in user units, from an attribute that may carry a unit; 0 when missing or unreadable. */
export function userNumber(text: string | undefined): number {
  const length = text === undefined ? null : readSvgLength(text);
  if (!length) return 0;
  return length.unit === '' || length.mm === null ? length.value : length.mm / (25.4 / 96);
}

const SPACE = /\s*/y;
const NAME = /[a-zA-Z]*/y;
const LIST = /\s*\(([^()]*)\)/y;

/** The affine map of a transform attribute (SVG 1.1, chapter 7.6); null when it cannot be read. */
export function readTransform(text: string): Affine | null {
  let all: Affine = IDENTITY;
  let position = 0;
  // Each of these takes what it takes in one way only, so that no text is tried in many.
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = position;
    const found = pattern.exec(text);
    if (found) position += found[0].length;
    return found;
  };
  for (;;) {
    take(SPACE);
    if (position >= text.length) return all;
    if (text[position] === ',') {
      position++;
      take(SPACE);
    }
    const name = take(NAME)?.[0] ?? '';
    const list = take(LIST)?.[1];
    if (name === '' || list === undefined) return null;
    const values = list
      .split(/[\s,]+/)
      .filter((word) => word !== '')
      .map(Number);
    const one = values.every(Number.isFinite) ? single(name, values) : null;
    if (!one) return null;
    all = compose(all, one);
  }
}

function single(name: string, values: readonly number[]): Affine | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = values;
  const angle = (a * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return values.length === 6 ? [a, b, c, d, e, f] : null;
    case 'translate':
      return [1, 0, 0, 1, a, b];
    case 'scale':
      return [a, 0, 0, values.length > 1 ? b : a, 0, 0];
    case 'rotate': {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return [cos, sin, -sin, cos, b - b * cos + c * sin, c - b * sin - c * cos];
    }
    case 'skewX':
      return [1, 0, Math.tan(angle), 1, 0, 0];
    case 'skewY':
      return [1, Math.tan(angle), 0, 1, 0, 0];
    default:
      return null;
  }
}

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
