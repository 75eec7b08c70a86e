import type { Box } from '../../geometry/path.ts';
import { type Affine, compose, determinant, largestScale } from '../affine.ts';
import {
  type Budget,
  type Finding,
  LIMITS,
  LimitReached,
  type ReadCurve,
  type ReadDrawing,
  type ReadLayer,
  type ReadText,
  Unreadable,
} from '../drawing.ts';
import { newPen, type Pen } from '../pen.ts';
import { drawPathData } from './svg-path-data.ts';
import { INITIAL_STYLE, type Style, styleOf } from './svg-style.ts';
import { readTransform } from './svg-transform.ts';
import { readSvgLength, type SvgLength, userNumber } from './svg-units.ts';
import { type XmlElement, xmlTree } from './xml-tree.ts';

/** Elements that draw nothing by themselves. */
const SILENT = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'linearGradient',
  'radialGradient',
  'filter',
  'style',
  'script',
  'metadata',
  'title',
  'desc',
  'namedview',
]);
const GROUPS = new Set(['svg', 'g', 'a', 'switch']);
const SHAPES = new Set(['path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse']);
const NO_LAYER = '(no layer)';

interface Reading {
  readonly budget: Budget;
  readonly curves: ReadCurve[];
  readonly texts: ReadText[];
  readonly layers: Map<string, ReadLayer>;
  readonly findings: Finding[];
  readonly byId: ReadonlyMap<string, XmlElement>;
  /** Kinds that were met and are not read. */
  readonly unread: Map<string, number>;
  flattened: number;
}

interface Place {
  readonly matrix: Affine;
  readonly style: Style;
  readonly layer: string | null;
  readonly reuse: number;
}

/** An SVG as a drawing in mm, y up, from its own text alone. */
export function readSvg(text: string, budget: Budget): ReadDrawing {
  const root = xmlTree(text, budget);
  if (root.name !== 'svg') throw new Unreadable(`the outermost element is <${root.name}>, not <svg>`);
  const byId = new Map<string, XmlElement>();
  index(root, byId);
  const reading: Reading = { budget, curves: [], texts: [], layers: new Map(), findings: [], byId, unread: new Map(), flattened: 0 };
  const { matrix, frame, unit, mmPerUnit } = readFrame(root, reading.findings);
  const style = styleOf(root, INITIAL_STYLE);
  for (const child of root.children) walk(child, { matrix, style, layer: null, reuse: 0 }, reading);
  for (const [kind, count] of reading.unread)
    reading.findings.push({ code: 104, message: `${count} <${kind}> not read: a cutter cannot follow it` });
  if (has(root, 'style'))
    reading.findings.push({
      code: 105,
      message: 'a style sheet (<style>) is not read; cutters often do not read it either: colours and widths may be lost',
    });
  return {
    format: 'svg',
    version: root.attributes.version ?? null,
    unit,
    mmPerUnit,
    frame,
    layers: [...reading.layers.values()],
    curves: reading.curves,
    texts: reading.texts,
    notes: root.children.flatMap((child) => (child.name === 'title' || child.name === 'desc' ? [child.text] : [])),
    flattened: reading.flattened,
    findings: reading.findings,
  };
}

function index(element: XmlElement, byId: Map<string, XmlElement>): void {
  const { id } = element.attributes;
  if (id !== undefined && !byId.has(id)) byId.set(id, element);
  for (const child of element.children) index(child, byId);
}

function has(element: XmlElement, name: string): boolean {
  return element.name === name || element.children.some((child) => has(child, name));
}

/** From user units to mm with y up, and what the size says about units. */
function readFrame(root: XmlElement, findings: Finding[]): { matrix: Affine; frame: Box | null; unit: string | null; mmPerUnit: number } {
  const { width, height, viewBox, preserveAspectRatio = 'xMidYMid', transform } = root.attributes;
  const size = [width, height].map((text) => (text === undefined ? null : readSvgLength(text)));
  const box =
    viewBox === undefined
      ? null
      : viewBox
          .trim()
          .split(/[\s,]+/)
          .map(Number);
  if (box && !(box.length === 4 && box.every(Number.isFinite) && (box[2] ?? 0) > 0 && (box[3] ?? 0) > 0)) {
    findings.push({ code: 107, message: `the viewBox "${viewBox?.slice(0, 60)}" cannot be read` });
  }
  if (transform !== undefined) findings.push({ code: 209, message: 'the outermost element has a transform: many programs leave it out' });
  const [left = 0, top = 0, boxWidth = 0, boxHeight = 0] = box?.every(Number.isFinite) ? box : [];
  const [w, h] = size as [SvgLength | null, SvgLength | null];
  const px = 25.4 / 96;
  if (w?.mm == null || h?.mm == null || w.mm <= 0 || h.mm <= 0) {
    findings.push({
      code: 201,
      message: 'no size with a unit: one user unit is taken as 1/96 inch, other programs take 1/90 or 1/72 inch or 1 mm',
    });
    const frame = box ? { minX: 0, minY: 0, maxX: boxWidth * px, maxY: boxHeight * px } : null;
    return { matrix: [px, 0, 0, -px, -left * px, (top + boxHeight) * px], frame, unit: null, mmPerUnit: px };
  }
  const unit = w.unit === '' ? null : w.unit;
  if (w.unit !== h.unit) findings.push({ code: 203, message: `width is in ${w.unit || 'px'}, height in ${h.unit || 'px'}` });
  if (unit === null || unit === 'px')
    findings.push({ code: 201, message: 'the size is in pixels: programs take 96, 90 or 72 to the inch' });
  else if (unit !== 'mm')
    findings.push({ code: 202, message: `the size is in ${unit}, not in mm (read as ${w.mm.toFixed(3)} x ${h.mm.toFixed(3)} mm)` });
  const frame = { minX: 0, minY: 0, maxX: w.mm, maxY: h.mm };
  if (boxWidth <= 0 || boxHeight <= 0) {
    if (unit !== null && unit !== 'px')
      findings.push({ code: 204, message: 'no viewBox: one user unit is 1/96 inch whatever the size says' });
    return { matrix: [px, 0, 0, -px, 0, h.mm], frame, unit, mmPerUnit: px };
  }
  const [sx, sy] = [w.mm / boxWidth, h.mm / boxHeight];
  // The written sizes are rounded; 0.01 mm over the whole drawing is no distortion.
  const uneven = Math.abs(sx - sy) * Math.max(boxWidth, boxHeight) > 0.01;
  if (uneven)
    findings.push({
      code: 203,
      message: `size and viewBox differ in shape: along x one unit is ${sx.toFixed(5)} mm, along y ${sy.toFixed(5)} mm`,
    });
  if (unit === 'mm' && Math.abs(sx - 1) * boxWidth > 0.01) {
    findings.push({
      code: 204,
      message: `one user unit is ${sx.toFixed(5)} mm: programs that look only at the viewBox draw it ${(1 / sx).toFixed(3)} times as large`,
    });
  }
  if (uneven && preserveAspectRatio.includes('none'))
    return { matrix: [sx, 0, 0, -sy, -left * sx, h.mm + top * sy], frame, unit, mmPerUnit: sx };
  const s = preserveAspectRatio.includes('slice') ? Math.max(sx, sy) : Math.min(sx, sy);
  const share = (name: string) => (name.includes('Min') ? 0 : name.includes('Max') ? 1 : 0.5);
  const dx = (w.mm - s * boxWidth) * share(preserveAspectRatio.slice(0, 4)) - left * s;
  const dy = (h.mm - s * boxHeight) * share(preserveAspectRatio.slice(4)) - top * s;
  return { matrix: [s, 0, 0, -s, dx, h.mm - dy], frame, unit, mmPerUnit: s };
}

function walk(element: XmlElement, place: Place, reading: Reading): void {
  reading.budget.item();
  if (SILENT.has(element.name)) return;
  const { attributes } = element;
  const own = attributes.transform === undefined ? null : readTransform(attributes.transform);
  if (attributes.transform !== undefined && !own)
    reading.findings.push({ code: 107, message: `the transform "${attributes.transform.slice(0, 60)}" cannot be read` });
  const matrix = own ? compose(place.matrix, own) : place.matrix;
  const here: Place = { ...place, matrix, style: styleOf(element, place.style), layer: layerOf(element, place.layer) };
  if (GROUPS.has(element.name)) {
    const inner = element.name === 'svg' ? { ...here, matrix: nested(element, matrix) } : here;
    for (const child of element.children) walk(child, inner, reading);
  } else if (element.name === 'use') reuse(element, here, reading);
  else if (SHAPES.has(element.name)) shape(element, here, reading);
  else if (element.name === 'text') {
    register(here, reading);
    reading.texts.push({ layer: here.layer ?? NO_LAYER, text: allText(element).trim().slice(0, 200) });
  } else reading.unread.set(element.name, (reading.unread.get(element.name) ?? 0) + 1);
}

/** The innermost group that says it is a layer; else the outermost group with an id. */
function layerOf(element: XmlElement, inherited: string | null): string | null {
  if (element.name !== 'g' && element.name !== 'svg') return inherited;
  const { id, 'data-layer': named, 'inkscape:groupmode': mode, 'inkscape:label': label } = element.attributes;
  if (named !== undefined) return named;
  if (mode === 'layer') return label ?? id ?? inherited;
  return inherited ?? id ?? null;
}

function nested(element: XmlElement, matrix: Affine): Affine {
  const { x, y, width, height, viewBox } = element.attributes;
  const moved = compose(matrix, [1, 0, 0, 1, userNumber(x), userNumber(y)]);
  const [left = 0, top = 0, w = 0, h = 0] =
    viewBox
      ?.trim()
      .split(/[\s,]+/)
      .map(Number) ?? [];
  if (!(w > 0 && h > 0 && userNumber(width) > 0 && userNumber(height) > 0)) return moved;
  const s = Math.min(userNumber(width) / w, userNumber(height) / h);
  return compose(moved, [s, 0, 0, s, (userNumber(width) - s * w) / 2 - s * left, (userNumber(height) - s * h) / 2 - s * top]);
}

function reuse(element: XmlElement, place: Place, reading: Reading): void {
  const href = element.attributes.href ?? element.attributes['xlink:href'] ?? '';
  const target = href.startsWith('#') ? reading.byId.get(href.slice(1)) : undefined;
  if (!target) {
    reading.findings.push({ code: 105, message: `<use> refers to "${href.slice(0, 60)}", which is not in the file` });
    return;
  }
  if (place.reuse >= LIMITS.reuse) throw new LimitReached(`<use> stands more than ${LIMITS.reuse} deep in itself`);
  const matrix = compose(place.matrix, [1, 0, 0, 1, userNumber(element.attributes.x), userNumber(element.attributes.y)]);
  const inner = { ...place, matrix, reuse: place.reuse + 1 };
  if (target.name === 'symbol') for (const child of target.children) walk(child, inner, reading);
  else walk(target, inner, reading);
}

function register(place: Place, reading: Reading): void {
  const name = place.layer ?? NO_LAYER;
  if (!reading.layers.has(name)) reading.layers.set(name, { name, declared: place.layer !== null });
}

function shape(element: XmlElement, place: Place, reading: Reading): void {
  const { pen, drawn } = newPen(place.matrix, reading.budget);
  const fault = drawShape(element, pen);
  const layer = place.layer ?? NO_LAYER;
  if (fault) reading.findings.push({ code: 107, message: `<${element.name}> on ${layer}: ${fault}` });
  if (determinant(place.matrix) === 0)
    reading.findings.push({ code: 107, message: `<${element.name}> on ${layer}: its transform makes it flat` });
  register(place, reading);
  reading.flattened += drawn.flattened;
  const { style } = place;
  const width = style.stroke === 'none' ? 0 : userNumber(style.strokeWidth) * largestScale(place.matrix);
  for (const run of drawn.runs) {
    reading.curves.push({
      layer,
      kind: element.name,
      closed: run.closed,
      segments: run.segments,
      strokeWidth: width,
      dashed: style.dashes !== 'none' && /[1-9]/.test(style.dashes),
      hidden: !style.shown || style.visibility !== 'visible',
      flattened: drawn.flattened > 0,
    });
  }
}

/** Draws one of the basic shapes (SVG 1.1, chapter 9); returns what is wrong with it, or null. */
function drawShape({ name, attributes }: XmlElement, pen: Pen): string | null {
  const n = (key: string) => userNumber(attributes[key]);
  switch (name) {
    case 'path':
      return drawPathData(attributes.d ?? '', pen);
    case 'line':
      pen.move(n('x1'), n('y1'));
      pen.line(n('x2'), n('y2'));
      return null;
    case 'polyline':
    case 'polygon': {
      const values = (attributes.points ?? '')
        .split(/[\s,]+/)
        .filter((word) => word !== '')
        .map(Number);
      if (!values.every(Number.isFinite) || values.length % 2 === 1) return 'its points cannot be read';
      for (let k = 0; k + 1 < values.length; k += 2) (k === 0 ? pen.move : pen.line)(values[k] ?? 0, values[k + 1] ?? 0);
      if (name === 'polygon') pen.close();
      return null;
    }
    case 'rect':
      return drawRectangle(n('x'), n('y'), n('width'), n('height'), attributes, pen);
    default: {
      const [rx, ry] = name === 'circle' ? [n('r'), n('r')] : [n('rx'), n('ry')];
      if (!(rx > 0 && ry > 0)) return 'it has no radius';
      pen.move(n('cx') + rx, n('cy'));
      pen.ellipse(n('cx'), n('cy'), rx, ry, 0, 0, 2 * Math.PI);
      pen.settle(n('cx') + rx, n('cy'));
      pen.close();
      return null;
    }
  }
}

function drawRectangle(x: number, y: number, w: number, h: number, attributes: XmlElement['attributes'], pen: Pen): string | null {
  if (!(w > 0 && h > 0)) return 'it has no size';
  const given = [attributes.rx, attributes.ry].map((text) => (text === undefined || text === 'auto' ? null : userNumber(text)));
  const rx = Math.min(given[0] ?? given[1] ?? 0, w / 2);
  const ry = Math.min(given[1] ?? given[0] ?? 0, h / 2);
  const quarter = Math.PI / 2;
  const corner = (cx: number, cy: number, start: number) => {
    if (rx > 0 && ry > 0) pen.ellipse(cx, cy, rx, ry, 0, start, quarter);
  };
  const to = (px: number, py: number) => {
    if (Math.hypot(pen.at().x - px, pen.at().y - py) > 1e-12) pen.line(px, py);
  };
  pen.move(x + rx, y);
  to(x + w - rx, y);
  corner(x + w - rx, y + ry, -quarter);
  to(x + w, y + h - ry);
  corner(x + w - rx, y + h - ry, 0);
  to(x + rx, y + h);
  corner(x + rx, y + h - ry, quarter);
  to(x, y + ry);
  corner(x + rx, y + ry, Math.PI);
  pen.close();
  return null;
}

function allText(element: XmlElement): string {
  return element.text + element.children.map(allText).join(' ');
}
