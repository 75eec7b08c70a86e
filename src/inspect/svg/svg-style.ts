import type { XmlElement } from './xml-tree.ts';

/** What an element hands down to those in it. */
export interface Style {
  readonly stroke: string;
  readonly fill: string;
  readonly strokeWidth: string;
  readonly dashes: string;
  readonly visibility: string;
  readonly shown: boolean;
}

/** What SVG takes when nothing is said. */
export const INITIAL_STYLE: Style = { stroke: 'none', fill: 'black', strokeWidth: '1', dashes: 'none', visibility: 'visible', shown: true };

/** The element's own style over its parent's, from attributes and the style attribute (which wins). Rules of style sheets are not read. */
export function styleOf(element: XmlElement, parent: Style): Style {
  const own = declarations(element.attributes.style ?? '');
  const value = (name: string, inherited: string) => {
    const found = own.get(name) ?? element.attributes[name];
    return found === undefined || found === 'inherit' ? inherited : found.trim();
  };
  return {
    stroke: value('stroke', parent.stroke),
    fill: value('fill', parent.fill),
    strokeWidth: value('stroke-width', parent.strokeWidth),
    dashes: value('stroke-dasharray', parent.dashes),
    visibility: value('visibility', parent.visibility),
    shown: parent.shown && value('display', 'inline') !== 'none',
  };
}

function declarations(style: string): ReadonlyMap<string, string> {
  const pairs = style.split(';').flatMap((part): [string, string][] => {
    const colon = part.indexOf(':');
    return colon < 0
      ? []
      : [
          [
            part.slice(0, colon).trim(),
            part
              .slice(colon + 1)
              .replace(/!important/, '')
              .trim(),
          ],
        ];
  });
  return new Map(pairs);
}
