import { execFileSync } from 'node:child_process';

/** A stroked path of a PDF as mutool traces it: SVG path data in mm with y down, and every point that is surely on it. */
export interface TracedPath {
  readonly data: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

const MM_PER_POINT = 25.4 / 72;

/** The stroked paths of the first page of a PDF, mm times `scale`, y down, as the trace has it. */
export function tracePdf(file: string, scale = 1): readonly TracedPath[] {
  const trace = execFileSync('mutool', ['trace', file, '1'], { encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'ignore'] });
  return [...trace.matchAll(/<stroke_path([^>]*)>([\s\S]*?)<\/stroke_path>/g)].map(([, head = '', body = '']) => {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = (/transform="([^"]*)"/.exec(head)?.[1] ?? '').split(' ').map(Number);
    const place = (x: number, y: number): readonly [number, number] => [
      (a * x + c * y + e) * MM_PER_POINT * scale,
      (b * x + d * y + f) * MM_PER_POINT * scale,
    ];
    const points: (readonly [number, number])[] = [];
    const data = [...body.matchAll(/<(moveto|lineto|curveto|closepath)([^>]*)\/>/g)].map(([, kind = '', attributes = '']) => {
      const numbers = [...attributes.matchAll(/="([^"]*)"/g)].map(([, value]) => Number(value));
      const placed = Array.from({ length: numbers.length / 2 }, (_, k) => place(numbers[2 * k] ?? 0, numbers[2 * k + 1] ?? 0));
      const from = points.at(-1);
      const last = placed.at(-1);
      if (kind === 'curveto' && from) points.push(...farthest([from, ...placed]));
      if (last) points.push(last);
      const letter = { moveto: 'M', lineto: 'L', curveto: 'C', closepath: 'Z' }[kind];
      return `${letter}${placed.map(([x, y]) => `${x.toFixed(5)} ${y.toFixed(5)}`).join(' ')}`;
    });
    return { data: data.join(' '), points };
  });
}

/** The points of a cubic Bezier curve at which it turns back along x or y: where the derivative of its polynomial is 0. */
function farthest(controls: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const at = (t: number, axis: 0 | 1) => {
    const [p0 = 0, p1 = 0, p2 = 0, p3 = 0] = controls.map((point) => point[axis]);
    const u = 1 - t;
    return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
  };
  const turns = ([0, 1] as const).flatMap((axis) => {
    const [p0 = 0, p1 = 0, p2 = 0, p3 = 0] = controls.map((point) => point[axis]);
    const [a, b, c] = [p3 - 3 * p2 + 3 * p1 - p0, 2 * (p2 - 2 * p1 + p0), p1 - p0];
    const root = Math.sqrt(b * b - 4 * a * c);
    // A straight derivative has one root; dividing by twice c instead of a finds it too.
    return [(-b + root) / (2 * a), (-b - root) / (2 * a), (2 * c) / (-b + root), (2 * c) / (-b - root)];
  });
  return turns.filter((t) => t > 0 && t < 1).map((t) => [at(t, 0), at(t, 1)] as const);
}

export interface TracedBox {
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
}

/** Box of the points of all paths, mm. */
export function boxOfTrace(paths: readonly TracedPath[]): TracedBox {
  const points = paths.flatMap((path) => path.points);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const [minX, minY] = [least(xs), least(ys)];
  return { minX, minY, width: most(xs) - minX, height: most(ys) - minY };
}

/** The traced paths as an SVG in black, moved so that their box has a margin of 5 mm, for a picture of what a reader printed. */
export function redrawTrace(paths: readonly TracedPath[], width: number, height: number, stroke: number, shift = 0): string {
  const box = boxOfTrace(paths);
  const move = `translate(${5 - box.minX + shift} ${5 - box.minY})`;
  const drawn = paths.map((path) => `<path d="${path.data}"/>`).join('');
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`;
  return `${head}<g transform="${move}" fill="none" stroke="#000" stroke-width="${stroke}" stroke-linecap="round" stroke-linejoin="round">${drawn}</g></svg>`;
}
