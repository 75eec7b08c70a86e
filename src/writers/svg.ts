import { type Container, type Element, Svg, withWindow } from '@svgdotjs/svg.js';
import type { Box } from '../geometry/path.ts';
import type { Layer, Pattern } from '../pattern/pattern.ts';
import { COORDINATE_DECIMALS, fixed } from '../units/number.ts';
import { type Result, success } from '../units/result.ts';
import { cleanText } from './clean-text.ts';
import { type DrawnGroup, type DrawnItem, fileOrder } from './file-order.ts';
import { inputsToText } from './inputs-text.ts';
import { svgPathData } from './svg-path.ts';
import type { PatternWriter } from './writer.ts';

/** Hairline that cutters take for a cut and printers still print, mm. */
const HAIRLINE = '0.1';

/** Black and two greys; the lightest keeps a contrast of 4.5 to 1 on white (WCAG 2.2, 1.4.3), so that it prints and reads. */
export const SVG_LAYER_COLOURS: Readonly<Record<Layer, string>> = { CUT: '#000000', MARK: '#404040', INFO: '#767676' };

/**
 * SVG at full scale: size and viewBox in mm, 1 user unit = 1 mm, no transform, hairlines, no fill, attributes only. Groups `part-1`, ...
 * and `beside` hold the groups `part-1-MARK`, `part-1-INFO`, `part-1-CUT`; each outline, hole, mark and label is one path with its role
 * in `data-role`, its meaning in `<title>`. `<metadata>` carries the inputs as JSON. The bytes are the same in Node and in a page.
 * @param window the page's own, or svgdom's in Node
 */
export function svgWriter(window: Window): PatternWriter {
  return {
    format: 'svg',
    extension: 'svg',
    write(pattern: Pattern): Result<string> {
      const groups = fileOrder(pattern);
      return groups.ok ? success(withWindow(window, () => document(pattern, groups.value))) : groups;
    },
  };
}

function document(pattern: Pattern, groups: readonly DrawnGroup[]): string {
  const { extents } = pattern;
  const width = fixed(extents.maxX - extents.minX, COORDINATE_DECIMALS);
  const height = fixed(extents.maxY - extents.minY, COORDINATE_DECIMALS);
  const svg = new Svg();
  svg.attr({ width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}` });
  titled(svg, pattern.title);
  line(svg);
  describe(svg, 'metadata', inputsToText(pattern.inputs)).attr('id', 'inputs');
  line(svg);
  for (const group of groups) drawGroup(svg, group, extents);
  // In text, svgdom escapes quotes and browsers do not. Attributes hold only numbers and tokens, so that no escaped quote is one of theirs.
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg().replaceAll('&quot;', '"')}\n`;
}

function drawGroup(svg: Svg, group: DrawnGroup, extents: Box): void {
  const outer = svg.group().attr('id', group.id);
  if (group.part !== null) outer.attr('data-part', token(group.part));
  titled(outer, group.title);
  for (const layer of ['MARK', 'INFO', 'CUT'] as const) {
    const items = group.items.filter((item) => item.layer === layer);
    if (items.length === 0) continue;
    line(outer);
    const inner = outer.group().attr({ id: `${group.id}-${layer}`, 'data-layer': layer });
    for (const item of items) drawItem(inner, item, extents);
    line(inner);
  }
  line(outer);
  line(svg);
}

function drawItem(parent: Container, item: DrawnItem, extents: Box): void {
  const data = svgPathData(item.paths, item.circles, extents);
  // A blank label has no strokes, and a path without data is nothing to draw.
  if (data === '') return;
  line(parent);
  const path = parent.path(data);
  path.attr({ fill: 'none', stroke: SVG_LAYER_COLOURS[item.layer], 'stroke-width': HAIRLINE, 'data-role': token(item.role) });
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
