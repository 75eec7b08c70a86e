import { type Box, segmentBox, unionBox } from '../../geometry/path.ts';
import { quote } from '../../units/quote.ts';
import { type Colour, hexOf } from '../colour.ts';
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
import { type Affine, apply, compose, determinant, largestScale, newPen, type Pen } from '../pen.ts';
import { drawPathData } from './svg-path-data.ts';
import { INITIAL_STYLE, type OwnStyle, type Style, type StyleSheet, styleOf, styleSheet } from './svg-style.ts';
import { fitViewBox, type Rectangle, readSvgLength, readTransform, readViewBox, type SvgLength, userNumber } from './svg-viewport.ts';
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
/** Rounding of written coordinates at a clip, mm. */
const CLIP_ROUNDING = 0.05;

interface Reading {
  readonly budget: Budget;
  readonly curves: ReadCurve[];
  readonly texts: ReadText[];
  readonly layers: Map<string, ReadLayer>;
  readonly findings: Finding[];
  readonly byId: ReadonlyMap<string, XmlElement>;
  readonly sheet: StyleSheet;
  /** Kinds that were met and are not read. */
  readonly unread: Map<string, number>;
  flattened: number;
}

interface Place {
  readonly matrix: Affine;
  readonly style: Style;
  readonly layer: string | null;
  readonly reuse: number;
  /** Size of the innermost viewport in user units, which percentages are of. */
  readonly viewport: { readonly width: number; readonly height: number };
}

/** An SVG as a drawing in mm, y up, from its own text alone. */
export function readSvg(text: string, budget: Budget): ReadDrawing {
  const root = xmlTree(text, budget);
  if (root.name !== 'svg') throw new Unreadable(`the outermost element is <${root.name}>, not <svg>`);
  const byId = new Map<string, XmlElement>();
  index(root, byId);
  const sheet = styleSheet(textsOf(root, 'style'), budget);
  const findings: Finding[] = [];
  const reading: Reading = { budget, curves: [], texts: [], layers: new Map(), findings, byId, sheet, unread: new Map(), flattened: 0 };
  const { matrix, frame, unit, mmPerUnit } = readFrame(root, findings);
  const style = styleOf(root, INITIAL_STYLE, sheet);
  const box = readViewBox(root.attributes.viewBox);
  const viewport = box ?? (frame ? { width: frame.maxX / mmPerUnit, height: frame.maxY / mmPerUnit } : { width: 0, height: 0 });
  for (const child of root.children) walk(child, { matrix, style, layer: null, reuse: 0, viewport }, reading);
  for (const [kind, count] of reading.unread)
    reading.findings.push({ code: 104, message: `${count} <${kind}> not read: a cutter cannot follow it` });
  if (sheet.unread.length > 0) {
    const shown = sheet.unread.slice(0, 3).map((selector) => JSON.stringify(selector.slice(0, 40)));
    findings.push({
      code: 109,
      message: `${sheet.unread.length} rules of the style sheet are not read (${shown.join(', ')}): colours and widths may be others`,
    });
  }
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

function textsOf(element: XmlElement, name: string): readonly string[] {
  return element.name === name ? [element.text] : element.children.flatMap((child) => textsOf(child, name));
}

/** From user units to mm with y up, and what the size says about units. */
function readFrame(root: XmlElement, findings: Finding[]): { matrix: Affine; frame: Box | null; unit: string | null; mmPerUnit: number } {
  const { width, height, viewBox, preserveAspectRatio = 'xMidYMid', transform } = root.attributes;
  const size = [width, height].map((text) => (text === undefined ? null : readSvgLength(text)));
  const box = readViewBox(viewBox);
  if (viewBox !== undefined && !box) findings.push({ code: 107, message: `the viewBox ${quote(viewBox)} cannot be read` });
  if (transform !== undefined) findings.push({ code: 209, message: 'the outermost element has a transform: many programs leave it out' });
  const { x: left, y: top, width: boxWidth, height: boxHeight } = box ?? { x: 0, y: 0, width: 0, height: 0 };
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
  const paper: Rectangle = { x: 0, y: 0, width: w.mm, height: h.mm };
  const fitted = fitViewBox({ x: left, y: top, width: boxWidth, height: boxHeight }, paper, preserveAspectRatio);
  // y up from the lower edge of the paper.
  return { matrix: compose([1, 0, 0, -1, 0, h.mm], fitted), frame, unit, mmPerUnit: fitted[0] };
}

function walk(element: XmlElement, place: Place, reading: Reading): void {
  reading.budget.item();
  if (SILENT.has(element.name)) return;
  const { attributes } = element;
  const style = styleOf(element, place.style, reading.sheet);
  const transform = style.transform ?? attributes.transform;
  reading.budget.characters(transform?.length ?? 0);
  const own = transform === undefined ? null : readTransform(transform);
  if (transform !== undefined && !own) reading.findings.push({ code: 107, message: `the transform ${quote(transform)} cannot be read` });
  const matrix = own ? compose(place.matrix, own) : place.matrix;
  const here: Place = { ...place, matrix, style, layer: layerOf(element, place.layer) };
  const before = reading.curves.length;
  if (element.name === 'svg') inViewport(element, element, here, style.overflow, reading);
  else if (GROUPS.has(element.name)) for (const child of element.children) walk(child, here, reading);
  else if (element.name === 'use') reuse(element, here, reading);
  else if (SHAPES.has(element.name)) shape(element, here, reading);
  else if (element.name === 'text') {
    register(here, reading);
    const text = allText(element);
    reading.budget.characters(text.length);
    reading.texts.push({ layer: here.layer ?? NO_LAYER, text: text.trim().slice(0, 200) });
  } else reading.unread.set(element.name, (reading.unread.get(element.name) ?? 0) + 1);
  clipped(style, here, before, reading);
}

/** The innermost group that says it is a layer; else the outermost group with an id. */
function layerOf(element: XmlElement, inherited: string | null): string | null {
  if (element.name !== 'g' && element.name !== 'svg') return inherited;
  const { id, 'data-layer': named, 'inkscape:groupmode': mode, 'inkscape:label': label } = element.attributes;
  if (named !== undefined) return named;
  if (mode === 'layer') return label ?? id ?? inherited;
  return inherited ?? id ?? null;
}

/** Content of an <svg> or <symbol> in its own viewport, which cuts off what lies outside unless `overflow` is visible (SVG 1.1, 14.3.3). */
function inViewport(content: XmlElement, sized: XmlElement, place: Place, overflow: string | null, reading: Reading): void {
  const { attributes } = sized;
  const length = (text: string | undefined, whole: number) =>
    text === undefined || text === 'auto' ? whole : text.trim().endsWith('%') ? (Number.parseFloat(text) / 100) * whole : userNumber(text);
  // Where a <use> places a symbol, its own x and y are already in the matrix.
  const at = sized === content ? { x: userNumber(attributes.x), y: userNumber(attributes.y) } : { x: 0, y: 0 };
  const width = length(attributes.width ?? content.attributes.width, place.viewport.width);
  const height = length(attributes.height ?? content.attributes.height, place.viewport.height);
  const viewport: Rectangle = { ...at, width, height };
  const box = readViewBox(content.attributes.viewBox);
  const inner =
    box && width > 0 && height > 0
      ? fitViewBox(box, viewport, content.attributes.preserveAspectRatio)
      : ([1, 0, 0, 1, at.x, at.y] as const);
  const before = reading.curves.length;
  for (const child of content.children)
    walk(child, { ...place, matrix: compose(place.matrix, inner), viewport: box ?? { width, height } }, reading);
  if (overflow === 'visible' || overflow === 'auto' || !(width > 0 && height > 0)) return;
  const cut = beyond(viewport, place.matrix, before, reading);
  if (cut > CLIP_ROUNDING)
    reading.findings.push({
      code: 108,
      message: `<${content.name}> cuts off up to ${cut.toFixed(2)} mm of what is drawn in it: a machine may cut it all the same`,
    });
}

/** How far the curves drawn since `from` lie outside a rectangle of user units, mm; the rectangle must not be turned, else nothing is certain. */
function beyond({ x, y, width, height }: Rectangle, matrix: Affine, from: number, reading: Reading): number {
  const edges = reading.curves.slice(from).flatMap((curve) => (curve.hidden ? [] : curve.segments));
  if (edges.length === 0) return 0;
  if (Math.abs(matrix[1]) + Math.abs(matrix[2]) > 1e-9 && Math.abs(matrix[0]) + Math.abs(matrix[3]) > 1e-9) return Number.POSITIVE_INFINITY;
  const [a, b] = [apply(matrix, { x, y }), apply(matrix, { x: x + width, y: y + height })];
  const box = unionBox(edges.map(segmentBox));
  return Math.max(
    Math.min(a.x, b.x) - box.minX,
    Math.min(a.y, b.y) - box.minY,
    box.maxX - Math.max(a.x, b.x),
    box.maxY - Math.max(a.y, b.y),
  );
}

/** A clip that leaves everything as it is does nothing; one that may take something away is said, and so is every mask over something. */
function clipped({ clip, mask }: OwnStyle, place: Place, from: number, reading: Reading): void {
  if (reading.curves.length === from) return;
  if (mask !== 'none')
    reading.findings.push({
      code: 108,
      message: `a mask (${mask.slice(0, 40)}) may hide some of what is drawn: a machine cuts it all the same`,
    });
  if (clip === 'none') return;
  const id = /^url\(\s*['"]?#([^'")]+)['"]?\s*\)$/.exec(clip)?.[1];
  const path = id === undefined ? undefined : reading.byId.get(id);
  const [only, more] = path?.children ?? [];
  const whole = only?.name === 'rect' && more === undefined && path?.attributes.clipPathUnits !== 'objectBoundingBox';
  const own = (element: XmlElement | undefined) =>
    element?.attributes.transform === undefined ? undefined : readTransform(element.attributes.transform);
  const [outer, inner] = [own(path), own(only)];
  let cut = Number.POSITIVE_INFINITY;
  if (whole && only && outer !== null && inner !== null) {
    const n = (key: string) => userNumber(only.attributes[key]);
    const matrix = [outer, inner].reduce<Affine>((sum, next) => (next ? compose(sum, next) : sum), place.matrix);
    cut = beyond({ x: n('x'), y: n('y'), width: n('width'), height: n('height') }, matrix, from, reading);
  }
  if (cut > CLIP_ROUNDING)
    reading.findings.push({
      code: 108,
      message: `a clip (${clip.slice(0, 40)}) may take some of what is drawn away: a machine cuts it all the same`,
    });
}

function reuse(element: XmlElement, place: Place, reading: Reading): void {
  const href = element.attributes.href ?? element.attributes['xlink:href'] ?? '';
  const target = href.startsWith('#') ? reading.byId.get(href.slice(1)) : undefined;
  if (!target) {
    reading.findings.push({ code: 105, message: `<use> refers to ${quote(href)}, which is not in the file` });
    return;
  }
  if (place.reuse >= LIMITS.reuse) throw new LimitReached(`<use> stands more than ${LIMITS.reuse} deep in itself`);
  const matrix = compose(place.matrix, [1, 0, 0, 1, userNumber(element.attributes.x), userNumber(element.attributes.y)]);
  const style = styleOf(target, place.style, reading.sheet);
  const inner = { ...place, matrix, reuse: place.reuse + 1 };
  if (target.name === 'symbol') inViewport(target, element, { ...inner, style }, style.overflow, reading);
  else walk(target, inner, reading);
}

function register(place: Place, reading: Reading): void {
  const name = place.layer ?? NO_LAYER;
  if (!reading.layers.has(name)) reading.layers.set(name, { name, declared: place.layer !== null });
}

function shape(element: XmlElement, place: Place, reading: Reading): void {
  const { d = '', points = '' } = element.attributes;
  reading.budget.characters(d.length + points.length);
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
      colour: colourOf(style),
      dashed: style.dashes !== 'none' && /[1-9]/.test(style.dashes),
      hidden: !style.shown || style.visibility !== 'visible',
      flattened: drawn.flattened > 0,
    });
  }
}

function colourOf({ stroke, fill, color }: Style): Colour | null {
  const painted = stroke === 'none' ? fill : stroke;
  const hex = hexOf(painted.toLowerCase() === 'currentcolor' ? color : painted);
  return hex === null ? null : { hex, aci: null };
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
