import { type ComponentType, h, options, render } from 'preact';
import { createHTMLWindow, createSVGWindow } from 'svgdom';
import type { Derived } from '../../src/page/derive.ts';
import { formatFor } from '../../src/page/format.ts';
import type { PageState } from '../../src/page/state.ts';
import type { Actions, Page } from '../../src/page/store.ts';
import { LANGUAGES } from '../../src/page/texts/languages.ts';
import { App } from '../../src/page/view/app.tsx';
import { CaseView } from '../../src/page/view/case-view.tsx';
import { type View, viewOf } from '../../src/page/view/view.ts';
import { hold } from './must-hold.ts';

/** A window of the SVG writer's library, which is enough of a browser for preact to build the page's tree in. */
const window = createHTMLWindow();
/** The page's SVG writer draws in the browser's own window, which is one for SVG here as in the command. */
Object.assign(globalThis, { document: window.document, window: createSVGWindow(), devicePixelRatio: 1 });

/** Effects wait for a frame, which never comes here; they would keep every tree that was drawn. Run when the tree is gone, they are dropped. */
let effects: (() => void) | null = null;
options.requestAnimationFrame = (flush) => {
  effects = flush;
};

/** Every element and attribute that the page is made of; nothing of it runs, loads or leads away. */
const ELEMENTS = new Set(
  `a button caption circle desc details div ellipse fieldset footer form g h1 h2 h3 h4 header input label legend li line main ol option p path rect
   section select span strong summary svg table tbody td text th thead title tr ul`.split(/\s+/),
);
const ATTRIBUTES =
  /^(?:aria-[a-z]+|accept|auto(?:complete|capitalize)|checked|class|cx|cy|d|font-size|for|height|href|id|inputmode|lang|max|maxlength|min|name|novalidate|r|role|rx|ry|scope|selected|spellcheck|start|step|stroke-width|style|tabindex|text-anchor|transform|type|value|viewBox|width|x|x1|x2|y|y1|y2)$/i;
const NUMBERS = /^(?:d|viewBox|x|y|x1|x2|y1|y2|cx|cy|r|rx|ry|width|height|font-size|stroke-width)$/;
const PLAIN = /^[MLAQCHVZmlaqchvz\d., -]*$/;
const STYLE = /^(?:[a-z-]+: ?-?\d+(?:\.\d+)?(?:px|%)?;? ?)*$/;
const MISMADE = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /;
/** What a person typed is shown in its own field as it is; everywhere else such characters are made visible. */
const UNSAFE = /[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u;

const idle: Actions = {
  enter: () => {},
  set: () => {},
  view: () => {},
  replace: () => {},
  record: () => {},
  settle: () => {
    throw new Error('nobody presses a button here');
  },
};

/** Draws the whole page, and the case if one is open, as a browser is told to, and checks what stands in it. */
export function checkShown(state: PageState, derived: Derived, given: string): void {
  const texts = LANGUAGES[state.settings.language];
  const page: Page = {
    state,
    derived,
    shown: derived.drawn,
    current: derived.drawn !== null,
    texts,
    format: formatFor(state.settings, texts),
    act: idle,
  };
  checkDrawn(App, { page }, given);
  if (state.file !== null) checkDrawn(CaseView, { view: viewOf(page) }, given);
}

function checkDrawn(part: ComponentType<{ page: Page }> | ComponentType<{ view: View }>, props: object, given: string): void {
  const root = window.document.createElement('div');
  try {
    render(h(part as ComponentType<object>, props), root);
    for (const child of root.childNodes) checkNode(child, given);
  } finally {
    render(null, root);
    effects?.();
    effects = null;
  }
}

/** Nothing in the tree runs, loads or leads away, every number is plain and every word readable. */
export function checkNode(node: Node, given: string): void {
  if (node.nodeType === window.document.TEXT_NODE) {
    checkWords('a text', node.nodeValue ?? '', given);
    return;
  }
  const element = node as Element;
  const name = element.nodeName.toLowerCase();
  hold(ELEMENTS.has(name), () => `the element ${name}`);
  for (const { nodeName: attribute, nodeValue } of element.attributes) {
    const value = String(nodeValue);
    const shown = `${name} ${attribute}=${JSON.stringify(value.slice(0, 120))}`;
    hold(ATTRIBUTES.test(attribute), () => `the attribute ${shown}`);
    if (NUMBERS.test(attribute)) hold(PLAIN.test(value), () => `no plain numbers: ${shown}`);
    if (attribute === 'style') hold(STYLE.test(value), () => `the style ${shown}`);
    if (attribute === 'href') hold(/^#[\w-]+$/.test(value), () => `a way out: ${shown}`);
    if (attribute !== 'value') checkWords(shown, value, given);
  }
  for (const child of element.childNodes) checkNode(child, given);
}

function checkWords(what: string, words: string, given: string): void {
  hold(!UNSAFE.test(words), () => `an unsafe character in ${what}: ${JSON.stringify(words.slice(0, 200))}`);
  const odd = MISMADE.exec(words)?.[0];
  hold(odd === undefined || given.includes(odd), () => `${odd} in ${what}: ${JSON.stringify(words.slice(0, 200))}`);
}
