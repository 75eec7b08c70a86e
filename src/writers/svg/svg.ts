import { type Container, type Element, Svg, withWindow } from '@svgdotjs/svg.js';
import type { Box } from '../../geometry/path.ts';
import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Layer, Pattern } from '../../pattern/pattern.ts';
import { COORDINATE_DECIMALS, fixed, plain } from '../../units/number.ts';
import { type Result, success } from '../../units/result.ts';
import { cleanText } from '../clean-text.ts';
import { type DrawnGroup, type DrawnItem, drawOrder } from '../draw-order.ts';
import { embeddedText } from '../inputs-text.ts';
import { DEFAULT_OUTPUT_SETTINGS, type OutputSettings } from '../output-settings.ts';
import type { PatternWriter } from '../writer.ts';
import { svgPathData } from './svg-path.ts';
import { svgShortPathData } from './svg-short-path.ts';

/** Colours of our own layers. */
export const SVG_LAYER_COLOURS: Readonly<Record<Layer, string>> = {
  CUT: DEFAULT_OUTPUT_SETTINGS.layers.CUT.colour,
  MARK: DEFAULT_OUTPUT_SETTINGS.layers.MARK.colour,
  INFO: DEFAULT_OUTPUT_SETTINGS.layers.INFO.colour,
};

/**
 * SVG at full scale: size and viewBox in mm, 1 user unit = 1 mm, no transform, hairlines, no fill, attributes only. Groups `part-1`, ...
 * and `beside` hold the groups `part-1-MARK`, `part-1-INFO`, `part-1-CUT`, or, layer by layer, the groups `MARK`, `INFO`, `CUT` hold those of the parts;
 * all of them are layers to a drawing program (its attribute `groupmode`). Each outline, hole, mark and label is one path with its role
 * in `data-role`, its meaning in `<title>`. `<desc>` says what the kerf is, `<metadata>` carries the inputs as JSON. The bytes are the same in Node and in a page.
 * @param window the page's own, or svgdom's in Node
 */
export function svgWriter(window: Window, settings: OutputSettings = DEFAULT_OUTPUT_SETTINGS): PatternWriter {
  return {
    format: 'svg',
    extension: 'svg',
    write(pattern: Pattern): Result<string> {
      const groups = drawOrder(pattern, settings);
      return groups.ok ? success(withWindow(window, () => document(pattern, groups.value, settings))) : groups;
    },
  };
}

function document(pattern: Pattern, groups: readonly DrawnGroup[], settings: OutputSettings): string {
  const { extents } = pattern;
  const width = fixed(extents.maxX - extents.minX, COORDINATE_DECIMALS);
  const height = fixed(extents.maxY - extents.minY, COORDINATE_DECIMALS);
  const svg = new Svg();
  svg.attr({ width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}`, 'xmlns:inkscape': LAYERS_NAMESPACE });
  titled(svg, pattern.title);
  line(svg);
  describe(svg, 'desc', cleanText(cuttingNotes(pattern).join(' ')));
  line(svg);
  describe(svg, 'metadata', embeddedText(pattern.inputs)).attr('id', 'inputs');
  line(svg);
  if (settings.order === 'layer-by-layer') for (const layer of LAYERS) drawLayer(svg, layer, groups, extents, settings);
  else for (const group of groups) drawGroup(svg, group, extents, settings);
  // In text, svgdom escapes quotes and browsers do not. Attributes hold only numbers and tokens, so that no escaped quote is one of theirs.
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg().replaceAll('&quot;', '"')}\n`;
}

/** Inkscape's namespace for layers; other programs pass over it. */
const LAYERS_NAMESPACE = 'http://www.inkscape.org/namespaces/inkscape';
const LAYERS = ['MARK', 'INFO', 'CUT'] as const;

/** A group that drawing programs list as a layer. */
function layerGroup(parent: Container, id: string, label: string): Container {
  return parent.group().attr({ id, 'inkscape:groupmode': 'layer', 'inkscape:label': token(label) });
}

/** One layer of all groups, for machines that change their tool between layers. */
function drawLayer(svg: Svg, layer: Layer, groups: readonly DrawnGroup[], extents: Box, settings: OutputSettings): void {
  const style = settings.layers[layer];
  const filled = groups.filter((group) => group.items.some((item) => item.layer === layer));
  if (filled.length === 0) return;
  const outer = layerGroup(svg, style.name, style.name).attr('data-layer', style.name);
  for (const group of filled) {
    line(outer);
    const inner = outer.group().attr('id', group.id);
    if (group.part !== null) inner.attr('data-part', token(group.part));
    titled(inner, group.title);
    drawItems(inner, group, layer, extents, settings);
  }
  line(outer);
  line(svg);
}

function drawItems(parent: Container, group: DrawnGroup, layer: Layer, extents: Box, settings: OutputSettings): void {
  const pen = { fill: 'none', stroke: settings.layers[layer].colour, 'stroke-width': plain(settings.stroke, 3) };
  // What a machine follows says its pen at each path; what is only read says it once.
  if (layer === 'INFO') parent.attr(pen);
  for (const item of group.items) if (item.layer === layer) drawItem(parent, item, extents, layer === 'INFO' ? {} : pen);
  line(parent);
}

function drawGroup(svg: Svg, group: DrawnGroup, extents: Box, settings: OutputSettings): void {
  const outer = layerGroup(svg, group.id, group.id);
  if (group.part !== null) outer.attr('data-part', token(group.part));
  titled(outer, group.title);
  for (const layer of LAYERS) {
    if (!group.items.some((item) => item.layer === layer)) continue;
    line(outer);
    const { name } = settings.layers[layer];
    drawItems(layerGroup(outer, `${group.id}-${name}`, name).attr('data-layer', name), group, layer, extents, settings);
  }
  line(outer);
  line(svg);
}

function drawItem(parent: Container, item: DrawnItem, extents: Box, pen: Readonly<Record<string, string>>): void {
  const isRead = (item.role === 'label' || item.layer === 'INFO') && item.circles.length === 0;
  const data = (isRead ? svgShortPathData(item.paths, extents) : null) ?? svgPathData(item.paths, item.circles, extents);
  // A blank label has no strokes, and a path without data is nothing to draw.
  if (data === '') return;
  line(parent);
  const path = parent.path(data);
  path.attr({ ...pen, 'data-role': token(item.role) });
  if (item.title !== '') titled(path, item.title);
}

/** An id as an attribute that needs no escaping: browsers differ in what they escape there. */
export function token(text: string): string {
  return text.replace(/[^A-Za-z0-9_-]+/g, '-');
}

export function titled(parent: Element, text: string): void {
  describe(parent, 'title', cleanText(text));
}

export function describe(parent: Element, name: 'title' | 'metadata' | 'desc', text: string): Element {
  // The library types `element(name)` as returning its own parent; it returns the new child.
  return (parent.element(name) as Element).words(text);
}

/** Starts a new line in the file; white space between elements means nothing in SVG. */
export function line(parent: Element): void {
  parent.node.appendChild(parent.node.ownerDocument.createTextNode('\n'));
}
