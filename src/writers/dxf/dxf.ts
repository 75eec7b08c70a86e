import Drawing from 'dxf-writer';
import Handle from 'dxf-writer/src/Handle.js';
import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Layer, Pattern } from '../../pattern/pattern.ts';
import { setIdOf } from '../../pattern/set-id.ts';
import { COORDINATE_DECIMALS, fixed, plain } from '../../units/number.ts';
import { type Result, success } from '../../units/result.ts';
import { drawOrder } from '../draw-order.ts';
import { DXF_SET, dxfComments } from '../inputs-text.ts';
import { DEFAULT_OUTPUT_SETTINGS, type LayerStyle, type OutputSettings } from '../output-settings.ts';
import type { PatternWriter } from '../writer.ts';
import { dxfR12, type LayeredShape } from './dxf-r12.ts';
import { type DxfShape, dxfShapes } from './dxf-shapes.ts';

/** Colour indices of our own layers. */
export const DXF_LAYER_COLOURS: Readonly<Record<Layer, number>> = {
  CUT: DEFAULT_OUTPUT_SETTINGS.layers.CUT.dxfColour,
  MARK: DEFAULT_OUTPUT_SETTINGS.layers.MARK.dxfColour,
  INFO: DEFAULT_OUTPUT_SETTINGS.layers.INFO.dxfColour,
};

/** The layer that every DXF has; its list of shapes is written first. */
const FIRST_LAYER = '0';

interface Shape {
  readonly layer: { readonly name: string };
}

/** The part of the library that is used. It copies values into the file as they are, so it is given numbers already written as text. */
interface DxfDrawing {
  readonly layers: Readonly<Record<string, { readonly shapes: Shape[] }>>;
  setUnits(unit: 'Millimeters'): void;
  header(name: string, values: readonly (readonly [code: number, value: string])[]): void;
  addLayer(name: string, colour: number, lineType: string): void;
  setActiveLayer(name: string): void;
  drawLine(x1: string, y1: string, x2: string, y2: string): void;
  drawCircle(x: string, y: string, radius: string): void;
  drawArc(x: string, y: string, radius: string, start: string, end: string): void;
  drawPolyline(points: readonly (readonly (string | undefined)[])[], closed: boolean): void;
  toDxfString(): string;
}

/**
 * DXF in ASCII, mm, in the form and with the arcs that the settings ask for (see `dxfShapes`): AC1021 with LWPOLYLINE, or AC1009 with
 * POLYLINE. Declared layers, no splines, no text entities. Title, kerf and inputs stand in comments (group 999) before the header.
 */
export function dxfWriterFor(settings: OutputSettings): PatternWriter {
  return {
    format: 'dxf',
    extension: 'dxf',
    write(pattern: Pattern): Result<string> {
      const groups = drawOrder(pattern, settings);
      if (!groups.ok) return groups;
      const shapes = groups.value.flatMap((group) =>
        group.items.flatMap((item) =>
          dxfShapes(item, settings.dxf).map((shape): LayeredShape => ({ layer: settings.layers[item.layer].name, shape })),
        ),
      );
      const layers = (['CUT', 'MARK', 'INFO'] as const).map((layer) => settings.layers[layer]).filter((layer) => layer.omit !== true);
      const comments = dxfComments(pattern.title, pattern.inputs, notes(pattern, settings));
      if (settings.dxf.form === 'r12') return success(dxfR12(comments, pattern.extents, layers, shapes));
      const drawing = emptyDrawing(pattern, layers);
      for (const { layer, shape } of shapes) inFileOrder(drawing, layer, () => drawShape(drawing, shape));
      return success(`${comments.map((comment) => `999\n${comment}\n`).join('')}${withoutDefaults(drawing.toDxfString())}\n`);
    },
  };
}

/**
 * Groups, code and value, that say what an entity has without them (DXF reference, common group codes; LINE, ARC, CIRCLE, LWPOLYLINE): that of its
 * layer, height 0, open. The owner (330) is no default, though it is the same for all: without it ezdxf has something to repair.
 */
const DEFAULTS: ReadonlySet<string> = new Set(['6\nByLayer', '62\n256', '370\n-1', '30\n0', '31\n0', '70\n0']);

/** The entities without the groups that say a default; a quarter of the bytes of letters. */
function withoutDefaults(dxf: string): string {
  const heading = '\nENTITIES\n';
  const from = dxf.indexOf(heading) + heading.length;
  const to = dxf.indexOf('0\nENDSEC', from);
  let kept = '';
  let keptTo = 0;
  for (let at = from; at < to; ) {
    const end = dxf.indexOf('\n', dxf.indexOf('\n', at) + 1);
    if (DEFAULTS.has(dxf.slice(at, end))) {
      kept += dxf.slice(keptTo, at);
      keptTo = end + 1;
    }
    at = end + 1;
  }
  return kept + dxf.slice(keptTo);
}

/** The writer for our own defaults. */
export const dxfWriter: PatternWriter = dxfWriterFor(DEFAULT_OUTPUT_SETTINGS);

function notes(pattern: Pattern, { dxf }: OutputSettings): readonly string[] {
  const arcs = {
    bulge: [],
    entities: ['edges as separate LINE and ARC entities, end to end.'],
    lines: [`arcs as short lines, at most ${plain(dxf.chordError, 4)} mm from the arc.`],
  }[dxf.arcs];
  return [...cuttingNotes(pattern), ...arcs];
}

function emptyDrawing(pattern: Pattern, layers: readonly LayerStyle[]): DxfDrawing {
  // The library counts handles in one static counter; from 0 each time, the same pattern has the same bytes.
  Handle.seed = 0;
  const drawing = new Drawing() as unknown as DxfDrawing;
  const { minX, minY, maxX, maxY } = pattern.extents;
  drawing.setUnits('Millimeters');
  drawing.header('MEASUREMENT', [[70, '1']]);
  drawing.header('PROJECTNAME', [[1, DXF_SET + setIdOf(pattern.inputs)]]);
  drawing.header('EXTMIN', corner(minX, minY));
  drawing.header('EXTMAX', corner(maxX, maxY));
  for (const { name, dxfColour } of layers) drawing.addLayer(name, dxfColour, 'CONTINUOUS');
  return drawing;
}

function corner(x: number, y: number): readonly (readonly [number, string])[] {
  return [
    [10, fixed(x, COORDINATE_DECIMALS)],
    [20, fixed(y, COORDINATE_DECIMALS)],
    [30, fixed(0, COORDINATE_DECIMALS)],
  ];
}

/** The library writes layer by layer. A shape keeps its layer when it moves to the first layer's list, and there the order is ours. */
function inFileOrder(drawing: DxfDrawing, layer: string, draw: () => void): void {
  drawing.setActiveLayer(layer);
  draw();
  const shapes = drawing.layers[layer]?.shapes.splice(0) ?? [];
  drawing.layers[FIRST_LAYER]?.shapes.push(...shapes);
}

function drawShape(drawing: DxfDrawing, shape: DxfShape): void {
  if (shape.kind === 'line') drawing.drawLine(shape.from[0], shape.from[1], shape.to[0], shape.to[1]);
  else if (shape.kind === 'circle') drawing.drawCircle(shape.center[0], shape.center[1], shape.radius);
  else if (shape.kind === 'arc') drawing.drawArc(shape.center[0], shape.center[1], shape.radius, shape.start, shape.end);
  else drawing.drawPolyline(shape.points, shape.closed);
}
