import { type Affine, compose, IDENTITY } from '../affine.ts';

const CALL = /\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)/y;

/** The affine map of a transform attribute (SVG 1.1, chapter 7.6); null when it cannot be read. */
export function readTransform(text: string): Affine | null {
  let all: Affine = IDENTITY;
  let position = 0;
  const end = text.trimEnd().length;
  while (position < end) {
    CALL.lastIndex = position;
    const [, name = '', list = ''] = CALL.exec(text) ?? [];
    if (name === '') return null;
    position = CALL.lastIndex;
    const values = list
      .split(/[\s,]+/)
      .filter((word) => word !== '')
      .map(Number);
    const one = values.every(Number.isFinite) ? single(name, values) : null;
    if (!one) return null;
    all = compose(all, one);
  }
  return all;
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
