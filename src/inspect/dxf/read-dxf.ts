import type { Box } from '../../geometry/path.ts';
import { quote } from '../../units/quote.ts';
import type { Colour } from '../colour.ts';
import {
  type Budget,
  type Finding,
  LIMITS,
  LimitReached,
  type ReadCurve,
  type ReadDrawing,
  type ReadLayer,
  type ReadText,
} from '../drawing.ts';
import { type Affine, compose, IDENTITY, newPen } from '../pen.ts';
import { drawEntity, type EntityDrawing } from './dxf-entity.ts';
import { type DxfObject, type DxfTag, dxfSections, objectsOf, value, values } from './dxf-tags.ts';

/** Codes of $INSUNITS (DXF reference): name and mm. */
const UNITS: Readonly<Record<string, readonly [string, number]>> = {
  1: ['in', 25.4],
  2: ['ft', 304.8],
  4: ['mm', 1],
  5: ['cm', 10],
  6: ['m', 1000],
  8: ['microinch', 25.4e-6],
  9: ['mil', 0.0254],
  10: ['yd', 914.4],
  13: ['micron', 1e-3],
  14: ['dm', 100],
};

interface Reading {
  readonly budget: Budget;
  readonly curves: ReadCurve[];
  readonly texts: ReadText[];
  readonly findings: Finding[];
  readonly blocks: ReadonlyMap<string, { readonly base: readonly [number, number]; readonly entities: readonly DxfObject[] }>;
  readonly layers: ReadonlyMap<string, DeclaredLayer>;
  readonly used: Set<string>;
  readonly unread: Map<string, number>;
  flattened: number;
  raised: number;
}

interface DeclaredLayer {
  readonly hidden: boolean;
  readonly dashed: boolean;
  readonly colour: Colour;
}

/** A DXF as a drawing in mm, from its own tags alone: lines, arcs, circles, polylines, ellipses, splines and blocks of the model space. */
export function readDxf(tags: Iterable<DxfTag>, budget: Budget): ReadDrawing {
  const { sections, comments, findings: structure } = dxfSections(tags);
  const findings: Finding[] = [...structure];
  const header = headerOf(sections.get('HEADER') ?? []);
  const { unit, mmPerUnit } = readUnits(header, findings);
  const reading: Reading = {
    budget,
    curves: [],
    texts: [],
    findings,
    blocks: readBlocks(sections.get('BLOCKS') ?? []),
    layers: readLayers(sections.get('TABLES') ?? []),
    used: new Set(),
    unread: new Map(),
    flattened: 0,
    raised: 0,
  };
  const matrix: Affine = [mmPerUnit, 0, 0, mmPerUnit, 0, 0];
  drawAll(objectsOf(sections.get('ENTITIES') ?? []), matrix, null, 0, reading);
  for (const [kind, count] of reading.unread) findings.push({ code: 104, message: `${count} ${kind} not read: a cutter cannot follow it` });
  if (reading.raised > 0) findings.push({ code: 314, message: `${reading.raised} entities do not lie flat (z is not 0)` });
  const declared = [...reading.layers].map(([name]): ReadLayer => ({ name, declared: true }));
  const undeclared = [...reading.used].filter((name) => !reading.layers.has(name)).map((name): ReadLayer => ({ name, declared: false }));
  return {
    format: 'dxf',
    version: header.get('$ACADVER')?.[0] ?? null,
    unit,
    mmPerUnit,
    frame: extents(header, mmPerUnit),
    layers: [...declared, ...undeclared],
    curves: reading.curves,
    texts: reading.texts,
    notes: comments,
    flattened: reading.flattened,
    findings,
  };
}

function headerOf(tags: readonly (readonly [number, string])[]): ReadonlyMap<string, readonly string[]> {
  const header = new Map<string, string[]>();
  let current: string[] = [];
  for (const [code, text] of tags) {
    if (code === 9) {
      current = [];
      header.set(text, current);
    } else current.push(text);
  }
  return header;
}

function readUnits(header: ReadonlyMap<string, readonly string[]>, findings: Finding[]): { unit: string | null; mmPerUnit: number } {
  const code = header.get('$INSUNITS')?.[0]?.trim();
  const [unit, mmPerUnit] = (code !== undefined && UNITS[code]) || [null, 1];
  if (unit === null) {
    const why = code === undefined ? '$INSUNITS is missing' : `$INSUNITS is ${code}`;
    findings.push({ code: 201, message: `no unit is stated (${why}): one unit is taken as 1 mm, other programs take an inch` });
  } else if (unit !== 'mm') findings.push({ code: 202, message: `the unit is ${unit}, not mm (read as ${mmPerUnit} mm each)` });
  const system = header.get('$MEASUREMENT')?.[0]?.trim();
  const metric = unit !== null && !['in', 'ft', 'yd', 'mil', 'microinch'].includes(unit);
  if (unit !== null && system !== undefined && (system === '1') !== metric) {
    findings.push({ code: 206, message: `$MEASUREMENT ${system} says ${system === '1' ? 'metric' : 'imperial'}, the unit is ${unit}` });
  }
  return { unit, mmPerUnit };
}

function extents(header: ReadonlyMap<string, readonly string[]>, mm: number): Box | null {
  const [low, high] = ['$EXTMIN', '$EXTMAX'].map((name) => (header.get(name) ?? []).slice(0, 2).map((text) => Number(text) * mm));
  const [minX, minY, maxX, maxY] = [...(low ?? []), ...(high ?? [])];
  if (minX === undefined || minY === undefined || maxX === undefined || maxY === undefined) return null;
  // Programs that have not computed the extents write them inside out.
  return maxX > minX && maxY > minY ? { minX, minY, maxX, maxY } : null;
}

function readLayers(tags: readonly (readonly [number, string])[]): ReadonlyMap<string, DeclaredLayer> {
  const layers = new Map<string, DeclaredLayer>();
  for (const object of objectsOf(tags)) {
    if (object.kind !== 'LAYER') continue;
    const lineType = value(object, 6) ?? 'CONTINUOUS';
    const number = Number(value(object, 62) ?? 7);
    const off = number < 0 || (Number(value(object, 70) ?? 0) & 1) === 1;
    layers.set(value(object, 2) ?? '', {
      hidden: off,
      dashed: !/^(continuous|bylayer|byblock)$/i.test(lineType),
      colour: colourOf(object, Math.abs(number)),
    });
  }
  return layers;
}

/** Colour numbers that stand for the layer's and the block's own colour (DXF reference, group 62). */
const BY_LAYER = 256;
const BY_BLOCK = 0;

/** Group 420 is a true colour and wins over the number. */
function colourOf(object: DxfObject, aci: number): Colour {
  const rgb = Number(value(object, 420) ?? Number.NaN);
  const hex = Number.isInteger(rgb) && rgb >= 0 ? `#${(rgb & 0xffffff).toString(16).padStart(6, '0')}` : null;
  return { hex, aci: hex === null && aci >= 1 && aci <= 255 ? aci : null };
}

function readBlocks(tags: readonly (readonly [number, string])[]): Reading['blocks'] {
  const blocks = new Map<string, { base: readonly [number, number]; entities: DxfObject[] }>();
  let current: DxfObject[] | null = null;
  for (const object of objectsOf(tags)) {
    if (object.kind === 'BLOCK') {
      current = [];
      const [x = 0, y = 0] = [10, 20].map((code) => Number(value(object, code) ?? 0));
      blocks.set(value(object, 2) ?? '', { base: [x, y], entities: current });
    } else if (object.kind === 'ENDBLK') current = null;
    else current?.push(object);
  }
  return blocks;
}

function drawAll(objects: readonly DxfObject[], matrix: Affine, layer: string | null, depth: number, reading: Reading): void {
  for (let k = 0; k < objects.length; k++) {
    const object = objects[k] as DxfObject;
    reading.budget.item();
    // The paper space is a printed page, not the drawing.
    if (value(object, 67) === '1') continue;
    const own = value(object, 8) ?? '0';
    // What lies on layer 0 of a block takes the layer of its INSERT.
    const on = own === '0' && layer !== null ? layer : own;
    if (object.kind === 'INSERT') insert(object, matrix, on, depth, reading);
    else if (object.kind === 'TEXT' || object.kind === 'MTEXT' || object.kind === 'ATTDEF' || object.kind === 'ATTRIB') {
      reading.used.add(on);
      reading.texts.push({ layer: on, text: textOf(object, reading.budget) });
    } else if (object.kind === 'POLYLINE') {
      const vertices: DxfObject[] = [];
      while (k + 1 < objects.length && objects[k + 1]?.kind === 'VERTEX') {
        reading.budget.item();
        vertices.push(objects[++k] as DxfObject);
      }
      if (objects[k + 1]?.kind === 'SEQEND') k++;
      else reading.findings.push({ code: 106, message: 'a POLYLINE has no SEQEND' });
      draw(object, vertices, matrix, on, reading);
    } else if (object.kind !== 'SEQEND') draw(object, [], matrix, on, reading);
  }
}

/** The beginning of a text; long ones stand in pieces, the last of them in group 1. */
function textOf(object: DxfObject, budget: Budget): string {
  let text = '';
  for (const piece of [...values(object, 3).slice(0, LONGEST_TEXT), value(object, 1) ?? '']) {
    if (text.length >= LONGEST_TEXT) break;
    text += piece;
  }
  budget.characters(text.length);
  return text.slice(0, LONGEST_TEXT);
}

const LONGEST_TEXT = 500;
/** Drawing an entity takes for each of its tags about as long as reading so many characters. */
const CHARACTERS_A_TAG = 8;

function draw(object: DxfObject, vertices: readonly DxfObject[], matrix: Affine, layer: string, reading: Reading): void {
  reading.budget.characters(CHARACTERS_A_TAG * object.tags.length);
  // An extrusion along -z shows the entity from behind.
  const mirrored = Number(value(object, 230) ?? 1) < 0 && object.kind !== 'LINE' && object.kind !== 'SPLINE' && object.kind !== 'ELLIPSE';
  const { pen, drawn } = newPen(mirrored ? compose(matrix, [-1, 0, 0, 1, 0, 0]) : matrix, reading.budget);
  const result: EntityDrawing = drawEntity(object, vertices, pen);
  if (result === 'unknown') {
    if (object.kind !== 'POINT' && object.kind !== 'VIEWPORT') reading.unread.set(object.kind, (reading.unread.get(object.kind) ?? 0) + 1);
    return;
  }
  if (result !== null) {
    reading.findings.push({ code: 107, message: `${object.kind} on ${layer}: ${result}` });
    return;
  }
  reading.used.add(layer);
  reading.flattened += drawn.flattened;
  if ([30, 31, 38].some((code) => values(object, code).some((text) => Math.abs(Number(text)) > 1e-6))) reading.raised++;
  const declared = reading.layers.get(layer);
  const lineType = value(object, 6);
  const number = Number(value(object, 62) ?? BY_LAYER);
  const byLayer = value(object, 420) === undefined && (number === BY_LAYER || number === BY_BLOCK);
  const colour = byLayer ? (declared?.colour ?? null) : colourOf(object, number);
  for (const run of drawn.runs) {
    reading.curves.push({
      layer,
      kind: object.kind,
      closed: run.closed,
      segments: run.segments,
      strokeWidth: null,
      colour,
      dashed: lineType === undefined ? declared?.dashed === true : !/^(continuous|bylayer|byblock)$/i.test(lineType),
      hidden: declared?.hidden === true || value(object, 60) === '1',
      flattened: drawn.flattened > 0,
    });
  }
}

function insert(object: DxfObject, matrix: Affine, layer: string, depth: number, reading: Reading): void {
  const name = value(object, 2) ?? '';
  const block = reading.blocks.get(name);
  if (!block) {
    reading.findings.push({ code: 105, message: `INSERT refers to the block ${quote(name)}, which is not in the file` });
    return;
  }
  if (depth >= LIMITS.reuse) throw new LimitReached(`blocks stand more than ${LIMITS.reuse} deep in each other`);
  const n = (code: number, otherwise: number) => Number(value(object, code) ?? otherwise);
  const angle = (n(50, 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [sx, sy] = [n(41, 1), n(42, 1)];
  const [columns, rows] = [Math.max(1, n(70, 1)), Math.max(1, n(71, 1))];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      reading.budget.item();
      const shift: Affine = compose([c, s, -s, c, n(10, 0), n(20, 0)], [1, 0, 0, 1, column * n(44, 0), row * n(45, 0)]);
      const placed = compose(shift, compose([sx, 0, 0, sy, 0, 0], [1, 0, 0, 1, -block.base[0], -block.base[1]]));
      drawAll(block.entities, compose(matrix, compose(placed, IDENTITY)), layer, depth + 1, reading);
    }
  }
}
