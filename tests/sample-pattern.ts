import { type LineArcPath, polyline, type Vertex, vertex } from '../src/geometry/path.ts';
import type { Label, Mark, Pattern } from '../src/pattern/pattern.ts';

/** An invented drawing that has everything a writer must carry: lines, arcs both ways, holes, circles, dashes, labels at every align and turn. */

/** Bulge of a quarter circle. */
const QUARTER = Math.SQRT2 - 1;

/** A rectangle with rounded corners, counter-clockwise, and a hollow of radius 12 in its upper edge (an arc the other way). */
function hollowedBar(x: number, y: number, width: number, height: number, corner: number): LineArcPath {
  const right = x + width;
  const top = y + height;
  const middle = x + width * 0.4;
  const vertices: Vertex[] = [
    vertex(x + corner, y),
    vertex(right - corner, y, QUARTER),
    vertex(right, y + corner),
    vertex(right, top - corner, QUARTER),
    vertex(right - corner, top),
    vertex(middle + 9, top, -0.45),
    vertex(middle - 9, top),
    vertex(x + corner, top, QUARTER),
    vertex(x, top - corner),
    vertex(x, y + corner, QUARTER),
  ];
  return { closed: true, vertices };
}

/** A round hole as a closed path, clockwise as holes are. */
function roundHole(x: number, y: number, radius: number): LineArcPath {
  return { closed: true, vertices: [vertex(x + radius, y, -1), vertex(x - radius, y, -1)] };
}

/** A slot with half-round ends, clockwise: its last segment is an arc. */
function slot(x: number, y: number, length: number, radius: number): LineArcPath {
  return {
    closed: true,
    vertices: [vertex(x, y + radius), vertex(x + length, y + radius, -1), vertex(x + length, y - radius), vertex(x, y - radius, -1)],
  };
}

function dashes(x: number, y: number, length: number): LineArcPath[] {
  const count = Math.floor(length / 4);
  return Array.from({ length: count }, (_, i) =>
    polyline([
      { x, y: y + 4 * i },
      { x, y: y + 4 * i + 2.5 },
    ]),
  );
}

const mark = (role: string, title: string, paths: readonly LineArcPath[], layer: Mark['layer'] = 'MARK'): Mark => ({
  layer,
  role,
  title,
  paths,
  circles: [],
});

const label = (text: string, x: number, y: number, rest: Partial<Label> = {}): Label => ({
  layer: 'MARK',
  text,
  at: { x, y },
  height: 2.5,
  align: 'left',
  angle: 0,
  ...rest,
});

export const samplePattern: Pattern = {
  kind: 'strip',
  title: 'Sample strip & gauge <left>',
  parts: [
    {
      id: 'strip',
      title: 'Sample strip',
      outline: hollowedBar(5, 40, 110.123, 22.5, 6),
      holes: [roundHole(105, 51, 2.2), slot(80, 51, 9, 1.5)],
      marks: [
        mark('midline-palmar', 'ring midline, palmar pass', dashes(20, 42, 18)),
        {
          ...mark('tack', 'tack', [{ closed: false, vertices: [vertex(60, 45, 0.8), vertex(70, 45, -0.3), vertex(75, 45)] }]),
          circles: [],
        },
        { ...mark('turn', 'border turn', []), circles: [{ center: { x: 30, y: 48 }, radius: 3.3333 }] },
        mark('fold', 'fold line', [
          polyline([
            { x: 88, y: 41 },
            { x: 90, y: 45 },
            { x: 88, y: 46 },
          ]),
        ]),
        mark(
          'grain',
          'roll direction',
          [
            polyline([
              { x: 35, y: 58 },
              { x: 45, y: 58 },
            ]),
          ],
          'INFO',
        ),
      ],
      labels: [label('LEFT HAND', 60, 50, { align: 'center' }), label('R 3', 112, 50, { align: 'right', angle: 90, height: 2 })],
    },
    {
      id: 'gauge',
      title: 'Sample gauge',
      outline: { closed: true, vertices: [vertex(5, 5), vertex(35, 5, 0.3), vertex(5, 30)] },
      holes: [],
      marks: [],
      labels: [label('45', 9, 8)],
    },
  ],
  beside: {
    marks: [
      mark('reference-frame', 'frame 50 mm wide', [
        polyline(
          [
            { x: 65, y: 2 },
            { x: 115, y: 2 },
            { x: 115, y: 38 },
            { x: 65, y: 38 },
          ],
          true,
        ),
      ]),
      {
        ...mark('section-digit', 'ring, seen end-on', [{ closed: true, vertices: [vertex(40, 10, 0.6), vertex(55, 12, 0.7)] }], 'INFO'),
        circles: [{ center: { x: 50, y: 30 }, radius: 5 }],
      },
    ],
    labels: [label('dorsal', 50, 20, { layer: 'INFO', align: 'center', angle: -15 })],
  },
  extents: { minX: 0, minY: 0, maxX: 120, maxY: 67.5 },
  inputs: {
    schema: 'knucklewright/inputs@1',
    geometryVersion: 'sample',
    date: '2026-01-31',
    hand: { code: 'SAMPLE-01', note: 'Längste "Zeile" <&> \u0007\n ]] end', values: [17.5, 57, -0.125] },
    filler: 'what travels with a file may be longer than one comment line; '.repeat(8),
  },
  warnings: [],
};
