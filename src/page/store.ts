import type { CaseFile } from '../record/case-schema.ts';
import type { Derived, Drawn } from './derive.ts';
import { derive, NOTHING_YET } from './derive.ts';
import { type Format, formatFor } from './format.ts';
import { forgetKept, writeKept } from './local-storage.ts';
import type { Entries, PageState, Settings, Viewing } from './state.ts';
import type { Texts } from './texts/english.ts';
import { LANGUAGES } from './texts/languages.ts';

/** What every view is given: the state, what follows from it, the words, and the ways to change it. */
export interface Page {
  readonly state: PageState;
  readonly derived: Derived;
  /** The last strip that could be drawn, and whether it is the one of the present entries. */
  readonly shown: Drawn | null;
  readonly current: boolean;
  readonly texts: Texts;
  readonly format: Format;
  readonly act: Actions;
}

export interface Actions {
  /** Changes are worked out from the present entries: several may come before the page is drawn again. */
  enter(change: (now: Entries) => Partial<Entries>): void;
  set(change: Partial<Settings>, entries?: Entries): void;
  view(change: Partial<Viewing> | ((now: Viewing) => Partial<Viewing>)): void;
  replace(entries: Entries, viewing: Partial<Viewing>): void;
  /** Another case, or the case with something added; null closes it. */
  record(file: CaseFile | null): void;
  /** Works out everything from the very last entries, draws it and returns it; for whatever reads the page in order to act on it. */
  settle(): Page;
}

/** How long typing must pause before the plan is worked out anew, ms. */
const PAUSE = 150;

/**
 * Holds the state and redraws the page once a frame after any change. The state goes one way: actions change it, the view is drawn from it.
 */
export function startPage(first: PageState, draw: (page: Page) => void): void {
  let state = first;
  // Plan and cards take longest; they follow the first paint.
  let derived = derive(state.entries, state.settings, NOTHING_YET);
  let shown = derived.drawn;
  let waiting = false;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const act: Actions = {
    enter: (change) => {
      apply({ ...state, entries: { ...state.entries, ...change(state.entries) }, viewing: { ...state.viewing, changed: true } });
    },
    set: (change, entries = state.entries) => apply({ ...state, entries, settings: { ...state.settings, ...change } }),
    view: (change) => {
      const next = typeof change === 'function' ? change(state.viewing) : change;
      apply({ ...state, viewing: { ...state.viewing, ...next } });
    },
    replace: (entries, viewing) => {
      shown = null;
      apply({ ...state, entries, viewing: { ...state.viewing, left: [], checked: false, ...viewing } });
    },
    record: (file) => apply({ ...state, file }),
    settle,
  };

  function apply(next: PageState): void {
    const before = state;
    state = next;
    const same = next.entries === before.entries && next.settings.unit === before.settings.unit;
    if (!same) {
      derived = derive(next.entries, next.settings, derived);
      shown = derived.drawn ?? shown;
      clearTimeout(pause);
      if (!derived.settled) pause = setTimeout(settle, PAUSE);
    }
    keep(before);
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      drawNow();
    });
  }

  function keep(before: PageState): void {
    const { entries, settings, viewing } = state;
    if (!viewing.keep) {
      if (before.viewing.keep) forgetKept();
      return;
    }
    const changed =
      !before.viewing.keep || entries !== before.entries || settings !== before.settings || viewing.screen !== before.viewing.screen;
    if (changed && !writeKept({ version: 1, entries, settings, screen: viewing.screen })) {
      state = { ...state, viewing: { ...viewing, keep: false, said: LANGUAGES[settings.language].trials.cannotKeep } };
    }
  }

  function settle(): Page {
    clearTimeout(pause);
    if (!derived.settled) {
      derived = derive(state.entries, state.settings);
      shown = derived.drawn ?? shown;
    }
    return drawNow();
  }

  function drawNow(): Page {
    const texts: Texts = LANGUAGES[state.settings.language];
    document.documentElement.lang = state.settings.language;
    document.title = texts.title;
    const page: Page = { state, derived, shown, current: derived.drawn !== null, texts, format: formatFor(state.settings, texts), act };
    draw(page);
    return page;
  }

  // Zooming the page changes the pixel ratio, on which the true size hangs.
  addEventListener('resize', () => act.view({}));
  addEventListener('beforeunload', (event) => {
    // The switch keeps entries, not the case.
    if (state.viewing.changed && (!state.viewing.keep || state.file !== null)) event.preventDefault();
  });
  drawNow();
  requestAnimationFrame(() => setTimeout(settle));
}
