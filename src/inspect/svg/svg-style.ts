import type { StyleSheet } from './style-sheet.ts';
import type { XmlElement } from './xml-tree.ts';

/** What an element hands down to those in it. */
export interface Style {
  readonly stroke: string;
  readonly fill: string;
  readonly color: string;
  readonly strokeWidth: string;
  readonly dashes: string;
  readonly visibility: string;
  readonly shown: boolean;
}

/** What holds for the element alone. */
export interface OwnStyle {
  readonly clip: string;
  readonly mask: string;
  readonly overflow: string | null;
  readonly transform: string | null;
}

/** What SVG takes when nothing is said. */
export const INITIAL_STYLE: Style = {
  stroke: 'none',
  fill: 'black',
  color: 'black',
  strokeWidth: '1',
  dashes: 'none',
  visibility: 'visible',
  shown: true,
};

/** The element's style over its parent's: the style attribute wins over the style sheets, these over presentation attributes. */
export function styleOf(element: XmlElement, parent: Style, sheet: StyleSheet): Style & OwnStyle {
  const styled = sheet.of(element);
  const said = (name: string) => styled.get(name) ?? element.attributes[name];
  const value = (name: string, inherited: string) => {
    const found = said(name);
    return found === undefined || found === 'inherit' ? inherited : found.trim();
  };
  return {
    stroke: value('stroke', parent.stroke),
    fill: value('fill', parent.fill),
    color: value('color', parent.color),
    strokeWidth: value('stroke-width', parent.strokeWidth),
    dashes: value('stroke-dasharray', parent.dashes),
    visibility: value('visibility', parent.visibility),
    shown: parent.shown && value('display', 'inline') !== 'none',
    clip: value('clip-path', 'none'),
    mask: value('mask', 'none'),
    overflow: said('overflow')?.trim() ?? null,
    transform: styled.get('transform') ?? null,
  };
}
