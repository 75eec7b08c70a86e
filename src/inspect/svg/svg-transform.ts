import { type Affine, compose, IDENTITY } from '../affine.ts';

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
