import type { Budget } from '../drawing.ts';
import type { XmlElement } from './xml-tree.ts';

/** Declarations of one rule with what decides between rules (CSS 2.1, 6.4.3): how specific it is, then the later one. */
interface Rule {
  readonly tag: string | null;
  readonly id: string | null;
  readonly classes: readonly string[];
  readonly weight: number;
  readonly declarations: ReadonlyMap<string, string>;
}

export interface StyleSheet {
  /** What the element's own style and, under it, the sheet say: the winning value for each property. */
  of(element: XmlElement): ReadonlyMap<string, string>;
  /** Selectors that are not read: those with combinators, attributes, pseudo-classes, and rules within @-rules. */
  readonly unread: readonly string[];
}

const COMPOUND = /^(?:\*|([A-Za-z][\w-]*))?((?:[.#][\w-]+)*)$/;
/** A style sheet longer than this is no drawing program's. Characters. */
const LONGEST = 1_000_000;

/** The style sheets of a drawing as one: rules of type, class and identity, the kinds that drawing programs write. */
export function styleSheet(texts: readonly string[], budget: Budget): StyleSheet {
  const rules: Rule[] = [];
  const unread: string[] = [];
  for (const { selectors, body } of blocksOf(withoutComments(texts.join('\n').slice(0, LONGEST)))) {
    if (selectors.startsWith('@')) {
      if (!/^@(charset|namespace|import)\b/i.test(selectors)) unread.push(selectors);
      continue;
    }
    const declarations = declarationsOf(body);
    for (const selector of selectors.split(',').map((one) => one.trim())) {
      const [matched, tag = null, marks = ''] = COMPOUND.exec(selector) ?? [];
      if (matched === undefined || selector === '') unread.push(selector);
      else {
        const named = marks.match(/[.#][\w-]+/g) ?? [];
        const classes = named.filter((mark) => mark.startsWith('.')).map((mark) => mark.slice(1));
        const ids = named.filter((mark) => mark.startsWith('#')).map((mark) => mark.slice(1));
        if (ids.length > 1) continue;
        const weight = 10_000 * ids.length + 100 * classes.length + (tag === null ? 0 : 1);
        rules.push({ tag, id: ids[0] ?? null, classes, weight, declarations });
      }
    }
  }
  // A stable sort keeps the later of equal rules behind, where it wins.
  const sorted = [...rules].sort((a, b) => a.weight - b.weight);
  const places = new Map<string, number[]>();
  for (const [place, rule] of sorted.entries()) {
    const list = places.get(keyOf(rule));
    if (list) list.push(place);
    else places.set(keyOf(rule), [place]);
  }
  const ruled = (element: XmlElement): ReadonlyMap<string, string> => {
    const found = new Map<string, string>();
    const own = new Set((element.attributes.class ?? '').split(/\s+/));
    const keys = [`#${element.attributes.id ?? ''}`, ...[...own].map((name) => `.${name}`), element.name, '*'];
    const candidates = sorted.length === 0 ? [] : keys.flatMap((key) => places.get(key) ?? []);
    budget.characters(CHARACTERS_A_RULE * candidates.length);
    for (const place of candidates.sort((a, b) => a - b)) {
      const { tag, id, classes, declarations } = sorted[place] as Rule;
      if ((tag !== null && tag !== element.name) || (id !== null && id !== element.attributes.id)) continue;
      if (classes.every((name) => own.has(name))) for (const [property, value] of declarations) found.set(property, value);
    }
    return found;
  };
  // An element that is used again has the same style again.
  const known = new Map<XmlElement, ReadonlyMap<string, string>>();
  return {
    unread: [...new Set(unread)],
    of(element) {
      const before = known.get(element);
      if (before) return before;
      const all = new Map([...ruled(element), ...declarationsOf(element.attributes.style ?? '')]);
      known.set(element, all);
      return all;
    },
  };
}

/** Trying a rule takes about as long as reading so many characters. */
const CHARACTERS_A_RULE = 20;

/** What an element must have for the rule to be tried on it. */
function keyOf({ tag, id, classes }: Rule): string {
  if (id !== null) return `#${id}`;
  return classes[0] === undefined ? (tag ?? '*') : `.${classes[0]}`;
}

function withoutComments(text: string): string {
  const parts = text.split('/*');
  return [parts[0] ?? '', ...parts.slice(1).map((part) => (part.includes('*/') ? part.slice(part.indexOf('*/') + 2) : ''))].join(' ');
}

/** Selectors and body of each rule at the outermost level; an @-rule has its whole block as body. */
function blocksOf(text: string): readonly { readonly selectors: string; readonly body: string }[] {
  const blocks: { selectors: string; body: string }[] = [];
  let depth = 0;
  let from = 0;
  let selectors = '';
  for (let k = 0; k < text.length; k++) {
    const c = text[k];
    if (c === ';' && depth === 0) from = k + 1;
    else if (c === '{') {
      if (depth++ === 0) {
        selectors = text.slice(from, k).trim();
        from = k + 1;
      }
    } else if (c === '}' && depth > 0 && --depth === 0) {
      blocks.push({ selectors, body: text.slice(from, k) });
      from = k + 1;
    }
  }
  return blocks;
}

/** Property and value pairs of a style attribute or of a rule's body. */
function declarationsOf(text: string): ReadonlyMap<string, string> {
  const pairs = text.split(';').flatMap((part): [string, string][] => {
    const colon = part.indexOf(':');
    const value = part.slice(colon + 1).replace(/!important/i, '');
    return colon < 0 ? [] : [[part.slice(0, colon).trim().toLowerCase(), value.trim()]];
  });
  return new Map(pairs);
}

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
