import type { Pen } from '../pen.ts';

/** How many numbers each command takes. */
const COUNTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const FLAG = /[01]/y;
const BETWEEN = /[\s,]*/y;

/**
 * Draws SVG path data (SVG 1.1, chapter 8.3) with the pen. Returns what is wrong with the text, null when nothing is; as SVG asks, all before
 * the fault is drawn.
 */
export function drawPathData(data: string, pen: Pen): string | null {
  let position = 0;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = position;
    const found = pattern.exec(data);
    if (found) position = pattern.lastIndex;
    return found ? found[0] : null;
  };
  let command = '';
  let previous = '';
  let control = { x: 0, y: 0 };
  for (take(BETWEEN); position < data.length; take(BETWEEN)) {
    const letter = data[position] ?? '';
    if (/[a-zA-Z]/.test(letter)) {
      if (COUNTS[letter.toUpperCase()] === undefined) return `unknown command ${letter}`;
      command = letter;
      position++;
    } else if (command === '' || command === 'Z' || command === 'z') return 'a number without a command';
    if (previous === '' && command.toUpperCase() !== 'M') return 'it does not begin with a move';
    const kind = command.toUpperCase();
    const values: number[] = [];
    for (let k = 0; k < (COUNTS[kind] ?? 0); k++) {
      take(BETWEEN);
      const text = kind === 'A' && (k === 3 || k === 4) ? take(FLAG) : take(NUMBER);
      const value = text === null ? Number.NaN : Number(text);
      if (!Number.isFinite(value)) return `command ${command} lacks a number at character ${position}`;
      values.push(value);
    }
    control = drawCommand(kind, command !== kind, values, pen, control, previous);
    previous = kind;
    // More pairs after a move are lines.
    if (kind === 'M') command = command === 'M' ? 'L' : 'l';
  }
  return null;
}

/** Returns the control point that a following smooth command mirrors, or where the pen is. */
function drawCommand(
  kind: string,
  relative: boolean,
  values: readonly number[],
  pen: Pen,
  control: { x: number; y: number },
  previous: string,
) {
  const from = pen.at();
  const [dx, dy] = relative ? [from.x, from.y] : [0, 0];
  const v = (k: number) => (values[k] ?? 0) + (k % 2 === 0 ? dx : dy);
  const mirrored = (kinds: string) =>
    kinds.includes(previous) && previous !== '' ? { x: 2 * from.x - control.x, y: 2 * from.y - control.y } : from;
  switch (kind) {
    case 'M':
      pen.move(v(0), v(1));
      break;
    case 'L':
      pen.line(v(0), v(1));
      break;
    case 'H':
      pen.line(v(0), from.y);
      break;
    case 'V':
      pen.line(from.x, (values[0] ?? 0) + dy);
      break;
    case 'C':
      pen.cubic(v(0), v(1), v(2), v(3), v(4), v(5));
      return { x: v(2), y: v(3) };
    case 'S': {
      const c = mirrored('CS');
      pen.cubic(c.x, c.y, v(0), v(1), v(2), v(3));
      return { x: v(0), y: v(1) };
    }
    case 'Q':
      pen.quadratic(v(0), v(1), v(2), v(3));
      return { x: v(0), y: v(1) };
    case 'T': {
      const c = mirrored('QT');
      pen.quadratic(c.x, c.y, v(0), v(1));
      return c;
    }
    case 'A': {
      const [rx = 0, ry = 0, turn = 0, large = 0, sweep = 0, x = 0, y = 0] = values;
      drawArc(pen, Math.abs(rx), Math.abs(ry), (turn * Math.PI) / 180, large === 1, sweep === 1, x + dx, y + dy);
      break;
    }
    case 'Z':
      pen.close();
      break;
  }
  return pen.at();
}

/** From the ends of an arc to its centre: SVG 1.1, appendix F.6.5; radii that are too small grow until they reach (F.6.6). */
function drawArc(pen: Pen, radiusX: number, radiusY: number, turn: number, large: boolean, positive: boolean, x: number, y: number): void {
  const from = pen.at();
  if (from.x === x && from.y === y) return;
  if (radiusX === 0 || radiusY === 0) {
    pen.line(x, y);
    return;
  }
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const hx = (from.x - x) / 2;
  const hy = (from.y - y) / 2;
  const [px, py] = [c * hx + s * hy, -s * hx + c * hy];
  const reach = Math.sqrt((px / radiusX) ** 2 + (py / radiusY) ** 2);
  const grow = Math.max(1, reach);
  const [rx, ry] = [radiusX * grow, radiusY * grow];
  const lack = Math.max(0, 1 / Math.min(1, reach / grow) ** 2 - 1);
  const k = (large === positive ? -1 : 1) * Math.sqrt(lack);
  const [ux, uy] = [(k * rx * py) / ry, (-k * ry * px) / rx];
  const cx = c * ux - s * uy + (from.x + x) / 2;
  const cy = s * ux + c * uy + (from.y + y) / 2;
  const start = Math.atan2((py - uy) / ry, (px - ux) / rx);
  const end = Math.atan2((-py - uy) / ry, (-px - ux) / rx);
  const raw = end - start;
  const turned = raw - 2 * Math.PI * Math.floor(raw / (2 * Math.PI));
  const sweep = positive ? turned : turned - 2 * Math.PI;
  pen.ellipse(cx, cy, rx, ry, turn, start, sweep);
  // Ends are where the file says, not where the rounded radius leads.
  if (Math.hypot(pen.at().x - x, pen.at().y - y) > 0) pen.settle(x, y);
}
