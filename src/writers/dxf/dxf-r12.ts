import type { Box } from '../../geometry/path.ts';
import { COORDINATE_DECIMALS, fixed } from '../../units/number.ts';
import type { LayerStyle } from '../output-settings.ts';
import type { DxfPoint, DxfShape } from './dxf-shapes.ts';

/** A shape on its layer, in file order. */
export interface LayeredShape {
  readonly layer: string;
  readonly shape: DxfShape;
}

type Pair = readonly [code: number, value: string];

/**
 * A DXF of Release 12 (AC1009) without handles: tables LTYPE, LAYER and STYLE, POLYLINE with bulges, ended by SEQEND. $INSUNITS came later
 * than R12; readers of R12 skip what they do not know, and those that know it learn the unit. From the published DXF reference.
 */
export function dxfR12(comments: readonly string[], extents: Box, layers: readonly LayerStyle[], shapes: readonly LayeredShape[]): string {
  const pairs: Pair[] = [
    ...comments.map((text): Pair => [999, text]),
    ...section('HEADER', header(extents)),
    ...section('TABLES', [...table('LTYPE', [continuous]), ...table('LAYER', layers.map(layerEntry)), ...table('STYLE', [standardStyle])]),
    ...section('BLOCKS', []),
    ...section('ENTITIES', shapes.flatMap(entity)),
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
}

function section(name: string, content: readonly Pair[]): readonly Pair[] {
  return [[0, 'SECTION'], [2, name], ...content, [0, 'ENDSEC']];
}

function header({ minX, minY, maxX, maxY }: Box): readonly Pair[] {
  const corner = (name: string, x: number, y: number): readonly Pair[] => [
    [9, name],
    ...place(10, [coordinate(x), coordinate(y)]),
    [30, coordinate(0)],
  ];
  const low = (name: string): readonly Pair[] => [[9, name], ...place(10, [coordinate(minX), coordinate(minY)])];
  const high = (name: string): readonly Pair[] => [[9, name], ...place(10, [coordinate(maxX), coordinate(maxY)])];
  return [
    ...([
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSUNITS'],
      [70, '4'],
      [9, '$MEASUREMENT'],
      [70, '1'],
    ] satisfies Pair[]),
    ...corner('$EXTMIN', minX, minY),
    ...corner('$EXTMAX', maxX, maxY),
    ...low('$LIMMIN'),
    ...high('$LIMMAX'),
  ];
}

function table(name: string, entries: readonly (readonly Pair[])[]): readonly Pair[] {
  return [[0, 'TABLE'], [2, name], [70, String(entries.length)], ...entries.flat(), [0, 'ENDTAB']];
}

const continuous: readonly Pair[] = [
  [0, 'LTYPE'],
  [2, 'CONTINUOUS'],
  [70, '0'],
  [3, 'Solid line'],
  [72, '65'],
  [73, '0'],
  [40, '0.0'],
];

const standardStyle: readonly Pair[] = [
  [0, 'STYLE'],
  [2, 'STANDARD'],
  [70, '0'],
  [40, '0.0'],
  [41, '1.0'],
  [50, '0.0'],
  [71, '0'],
  [42, '2.5'],
  [3, 'txt'],
  [4, ''],
];

function layerEntry({ name, dxfColour }: LayerStyle): readonly Pair[] {
  return [
    [0, 'LAYER'],
    [2, name],
    [70, '0'],
    [62, String(dxfColour)],
    [6, 'CONTINUOUS'],
  ];
}

function entity({ layer, shape }: LayeredShape): readonly Pair[] {
  const on: Pair = [8, layer];
  switch (shape.kind) {
    case 'line':
      return [[0, 'LINE'], on, ...place(10, shape.from), ...place(11, shape.to)];
    case 'circle':
      return [[0, 'CIRCLE'], on, ...place(10, shape.center), [40, shape.radius]];
    case 'arc':
      return [[0, 'ARC'], on, ...place(10, shape.center), [40, shape.radius], [50, shape.start], [51, shape.end]];
    case 'polyline': {
      const origin = coordinate(0);
      const start: readonly Pair[] = [
        [0, 'POLYLINE'],
        on,
        [66, '1'],
        ...place(10, [origin, origin]),
        [30, origin],
        [70, shape.closed ? '1' : '0'],
      ];
      const vertices = shape.points.flatMap((p): readonly Pair[] => [
        [0, 'VERTEX'],
        on,
        ...place(10, p),
        ...(p[2] === undefined ? [] : [[42, p[2]] satisfies Pair]),
      ]);
      return [...start, ...vertices, [0, 'SEQEND'], on];
    }
  }
}

/** x under the code, y under the code + 10. */
function place(code: number, [x, y]: DxfPoint): readonly Pair[] {
  return [
    [code, x],
    [code + 10, y],
  ];
}

function coordinate(value: number): string {
  return fixed(value, COORDINATE_DECIMALS);
}
