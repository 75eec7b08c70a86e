import { arcOf, type Box, type LineArcPath, type Point, segmentsOf } from '../../geometry/path.ts';
import { READ_DECIMALS, shortest } from '../../units/number.ts';
import { arcEnds, sweepFlag } from './svg-path.ts';

/** Steps in a millimetre: differences of whole steps are exact, so that rounding does not add up along a path. */
const STEPS = 10 ** READ_DECIMALS;

/**
 * SVG path data of what is read and never cut, letters above all: 0.01 mm, relative commands and implied separators (SVG 1.1, 8.3.9), under half
 * the bytes of `svgPathData`. mm with y down, 0 at the upper left of `extents`. Null where a path is too short to be seen at 0.01 mm.
 */
export function svgShortPathData(paths: readonly LineArcPath[], extents: Box): string | null {
  const place = (p: Point) => ({ x: Math.round((p.x - extents.minX) * STEPS), y: Math.round((extents.maxY - p.y) * STEPS) });
  let at = { x: 0, y: 0 };
  let data = '';
  let command = '';
  let last = '';
  const write = (next: string, numbers: readonly number[]) => {
    // A command need not be said again, and a pair after a move is a line. A sign parts two numbers, and so does a second point.
    const said = next === command || (command === 'm' && next === 'l');
    if (!said) data += next;
    for (const [k, value] of numbers.entries()) {
      const text = shortest(value, READ_DECIMALS);
      const isApart = (k === 0 && !said) || text.startsWith('-') || (text.startsWith('.') && last.includes('.'));
      data += isApart ? text : ` ${text}`;
      last = text;
    }
    command = next;
  };
  /** Draws to a place, unless the pen is there; `arc` is what SVG asks of an arc before its end. */
  const draw = (arc: readonly number[], end: Point) => {
    const to = place(end);
    const [dx, dy] = [(to.x - at.x) / STEPS, (to.y - at.y) / STEPS];
    at = to;
    if (dx === 0 && dy === 0) return;
    if (arc.length > 0) write('a', [...arc, dx, dy]);
    else if (dy === 0) write('h', [dx]);
    else if (dx === 0) write('v', [dy]);
    else write('l', [dx, dy]);
  };
  for (const path of paths) {
    const segments = segmentsOf(path);
    const [first] = segments;
    if (!first) continue;
    const start = place(first.from);
    if (data === '') write('M', [start.x / STEPS, start.y / STEPS]);
    else write('m', [(start.x - at.x) / STEPS, (start.y - at.y) / STEPS]);
    at = start;
    // Z draws the last straight line of a closed path.
    const drawn = path.closed && segments.at(-1)?.bulge === 0 ? segments.slice(0, -1) : segments;
    for (const segment of drawn) {
      const arc = arcOf(segment);
      for (const end of arcEnds(segment)) draw(arc ? [arc.radius, arc.radius, 0, 0, sweepFlag(segment)] : [], end);
    }
    if (command === 'm' || command === 'M') return null;
    if (path.closed) {
      data += 'z';
      command = 'z';
      at = start;
    }
  }
  return data;
}
