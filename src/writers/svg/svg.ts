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

/** Colours of our own layers. */
export const SVG_LAYER_COLOURS: Readonly<Record<Layer, string>> = {
  CUT: DEFAULT_OUTPUT_SETTINGS.layers.CUT.colour,
  MARK: DEFAULT_OUTPUT_SETTINGS.layers.MARK.colour,
  INFO: DEFAULT_OUTPUT_SETTINGS.layers.INFO.colour,
};

/**
 * SVG at full scale: size and viewBox in mm, 1 user unit = 1 mm, no transform, hairlines, no fill, attributes only. Groups `part-1`, ...
 * and `beside` hold the groups `part-1-MARK`, `part-1-INFO`, `part-1-CUT`; each outline, hole, mark and label is one path with its role
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
  svg.attr({ width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}` });
  titled(svg, pattern.title);
  line(svg);
  describe(svg, 'desc', cleanText(cuttingNotes(pattern).join(' ')));
  line(svg);
  describe(svg, 'metadata', embeddedText(pattern.inputs)).attr('id', 'inputs');
  line(svg);
  for (const group of groups) drawGroup(svg, group, extents, settings);
  // In text, svgdom escapes quotes and browsers do not. Attributes hold only numbers and tokens, so that no escaped quote is one of theirs.
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg().replaceAll('&quot;', '"')}\n`;
}

function drawGroup(svg: Svg, group: DrawnGroup, extents: Box, settings: OutputSettings): void {
  const outer = svg.group().attr('id', group.id);
  if (group.part !== null) outer.attr('data-part', token(group.part));
  titled(outer, group.title);
  for (const layer of ['MARK', 'INFO', 'CUT'] as const) {
    const items = group.items.filter((item) => item.layer === layer);
    if (items.length === 0) continue;
    line(outer);
    const style = settings.layers[layer];
    const inner = outer.group().attr({ id: `${group.id}-${style.name}`, 'data-layer': style.name });
    for (const item of items) drawItem(inner, item, extents, { stroke: style.colour, 'stroke-width': plain(settings.stroke, 3) });
    line(inner);
  }
  line(outer);
  line(svg);
}

function drawItem(parent: Container, item: DrawnItem, extents: Box, pen: Readonly<Record<'stroke' | 'stroke-width', string>>): void {
  const data = svgPathData(item.paths, item.circles, extents);
  // A blank label has no strokes, and a path without data is nothing to draw.
  if (data === '') return;
  line(parent);
  const path = parent.path(data);
  path.attr({ fill: 'none', ...pen, 'data-role': token(item.role) });
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
