import { h, options, render } from 'preact';
import { createHTMLWindow, createSVGWindow } from 'svgdom';
import { App } from '../../src/page/app.tsx';
import type { PageState } from '../../src/page/state.ts';
import { createStore, PANELS, type Store } from '../../src/page/store.ts';
import { hold } from './must-hold.ts';

/** A window of the SVG writer's library, which is enough of a browser for preact to build the page's tree in. */
const window = createHTMLWindow();
/** Nothing has a size here. */
class ResizeObserver {
  observe(): void {}
  disconnect(): void {}
}
/** The page's SVG writer draws in the browser's own window, which is one for SVG here as in the command. */
Object.assign(window.document, { activeElement: window.document.documentElement });
Object.assign(globalThis, { document: window.document, window: createSVGWindow(), devicePixelRatio: 1, ResizeObserver });

/** Effects wait for a frame, which never comes here; they would keep every tree that was drawn. Run when the tree is gone, they are dropped. */
let effects: (() => void) | null = null;
options.requestAnimationFrame = (flush) => {
  effects = flush;
};

/** Every element and attribute that the page is made of; nothing of it runs, loads or leads away. */
const ELEMENTS = new Set(
  `a aside button caption circle desc details div fieldset figcaption figure footer g h1 h2 h3 header input label legend li main nav option output p path pre rect
   section select span strong summary svg table tbody td text th thead title tr ul`.split(/\s+/),
);
const ATTRIBUTES =
  /^(?:aria-[a-z]+|accept|auto(?:complete|capitalize)|checked|class|colspan|cx|cy|d|disabled|font-size|for|height|href|id|inputmode|lang|max|maxlength|min|name|placeholder|preserveAspectRatio|r|role|rx|ry|scope|selected|spellcheck|start|step|stroke-width|style|tabindex|text-anchor|title|transform|type|value|viewBox|width|x|x1|x2|y|y1|y2)$/i;
const NUMBERS = /^(?:d|viewBox|x|y|x1|x2|y1|y2|cx|cy|r|rx|ry|width|height|font-size|stroke-width)$/;
const PLAIN = /^[MLAQCHVZmlaqchvz\d., -]*$/;
const STYLE = /^(?:[a-z-]+: ?-?\d+(?:\.\d+)?(?:px|%)?;? ?)*$/;
const MISMADE = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /;
/** What a person typed is shown in its own field as it is; everywhere else such characters are made visible. */
const UNSAFE = /[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u;

/** Draws the whole page, each panel and the visits, as a browser is told to, and checks what stands in it. */
export function checkShown(state: PageState, left: readonly string[], given: string): void {
  const store = createStore(state);
  store.left.value = left;
  store.settle();
  for (const panel of [null, ...PANELS]) {
    store.panel.value = panel;
    checkDrawn(store, given);
  }
  store.panel.value = null;
  store.mode.value = 'visits';
  store.narrow.value = true;
  checkDrawn(store, given);
}

function checkDrawn(store: Store, given: string): void {
  const root = window.document.createElement('div');
  try {
    render(h(App, { store }), root);
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
