import '../units/configure-zod.ts';
import { effect } from '@preact/signals';
import { h, render } from 'preact';
import { App } from './app.tsx';
import { resultSentence, standInWords } from './arrangement-words.ts';
import { forgetKept, KEPT_AS, readKept, stateOf, writeKept } from './local-storage.ts';
import { freshEntries } from './rewrite-entries.ts';
import { redo, undo } from './sections/head/head.tsx';
import type { PageState } from './state.ts';
import { createStore, type Store } from './store.ts';
import { LANGUAGES, languageFor } from './texts/languages.ts';

/** Under this width one turn is shown at a time. */
const NARROW = '(max-width: 599.98px)';
/** How long after a committed value the result is said, ms; nothing is said while typing. */
const SAID_AFTER = 1000;

/** What was kept on this computer, or an empty page in the browser's language; inches and Letter where the browser is set to the United States. */
function firstState(): PageState {
  const kept = readKept();
  if (kept) return stateOf(kept);
  const language = languageFor(navigator.languages);
  const isUnitedStates = navigator.language.toLowerCase() === 'en-us';
  const settings = {
    language,
    unit: isUnitedStates ? ('in' as const) : ('mm' as const),
    decimal: LANGUAGES[language].decimal === ',' ? (',' as const) : ('.' as const),
  };
  const fresh = freshEntries(settings);
  return {
    entries: { ...fresh, print: { ...fresh.print, paper: isUnitedStates ? 'letter' : 'a4' } },
    settings,
    file: null,
    screen: null,
    keep: false,
  };
}

const root = document.getElementById('page');
if (!root) throw new Error('the page has no place to be drawn in');
const store = createStore(firstState(), devicePixelRatio);
const narrow = matchMedia(NARROW);
store.narrow.value = narrow.matches;
narrow.addEventListener('change', () => {
  store.narrow.value = narrow.matches;
});
render(h(App, { store }), root);
follow(store);
// The plan takes longest; it comes after the first paint.
requestAnimationFrame(() => setTimeout(() => store.settle()));

/** What happens outside the page's own tree: language, keys, keeping, leaving, and saying the result. */
function follow(page: Store): void {
  effect(() => {
    document.documentElement.lang = page.settings.value.language;
    document.title = page.texts.value.title;
  });
  keepEntries(page);
  sayResults(page);
  // Zooming the page changes the pixel ratio, on which the true size hangs.
  addEventListener('resize', () => {
    page.pixelRatio.value = devicePixelRatio;
  });
  addEventListener('beforeunload', (event) => {
    if (page.changed.peek() && !page.keep.peek() && !page.entries.peek().example) event.preventDefault();
  });
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const isRedo = key === 'y' || (key === 'z' && event.shiftKey);
    if (key !== 'z' && !isRedo) return;
    // In a field that is being typed in the keys are the browser's own.
    const at = document.activeElement;
    const isTyping = at instanceof HTMLInputElement && at.type === 'text' && page.history.peek().open === at.name;
    if (isTyping) return;
    event.preventDefault();
    if (isRedo) redo(page);
    else undo(page);
  });
}

/** While the switch is on, the entries and their case are kept; off, nothing is. */
function keepEntries(page: Store): void {
  let wasOn = page.keep.peek();
  effect(() => {
    const kept = {
      version: 2 as const,
      entries: page.entries.value,
      settings: page.settings.value,
      screen: page.screen.value,
      file: page.file.value,
    };
    if (!page.keep.value) {
      if (wasOn) forgetKept();
      wasOn = false;
      return;
    }
    wasOn = true;
    if (!writeKept(kept)) {
      page.keep.value = false;
      page.said.value = page.texts.peek().files.cannotKeep;
    }
  });
  // Two windows that keep would each write over what the other kept: the one that kept last goes on, the other says that it stops.
  addEventListener('storage', ({ key }) => {
    if (!page.keep.peek() || (key !== null && key !== KEPT_AS)) return;
    wasOn = false;
    page.keep.value = false;
    page.said.value = page.texts.peek().files.keptElsewhere;
  });
}

/** The result in one sentence, once, a second after a value was committed, only when it differs from what was said last. */
function sayResults(page: Store): void {
  let pause: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const isTyping = page.history.value.open !== null;
    const derived = page.derived.value;
    const { drawn } = derived;
    clearTimeout(pause);
    // Under a stop sign nothing of what was said of a result holds.
    const last = page.saidResult.peek();
    const saysLast = () => last !== '' && page.said.peek().endsWith(last);
    if (page.entries.value.stop === 'some' && saysLast()) page.said.value = '';
    if (isTyping || drawn === null) return;
    const texts = page.texts.value;
    const sentence = resultSentence(drawn, texts, page.format.value);
    const whole = derived.average ? `${sentence}. ${standInWords(derived, texts)}` : texts.make.drawn(sentence);
    if (whole === last) return;
    // What was said of the result before is not so any more.
    if (saysLast()) page.said.value = '';
    const before = page.said.peek();
    pause = setTimeout(() => {
      page.saidResult.value = whole;
      // That entries are kept no longer, said meanwhile, must be seen.
      const { files, head } = page.texts.peek();
      const now = page.said.peek();
      // A reading that went with the former arrangement is told with the result without it.
      if (now === head.readingEmptied) page.said.value = `${now} ${whole}`;
      else if (now === before || (now !== files.keptElsewhere && now !== files.cannotKeep)) page.said.value = whole;
    }, SAID_AFTER);
  });
}
