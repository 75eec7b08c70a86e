import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { CaseFile } from '../record/case-schema.ts';
import { type Derived, type Drawn, derive, NOTHING_YET } from './derive.ts';
import { type Format, formatFor } from './format.ts';
import { committed, type History, NO_HISTORY, recorded, redone, rewrittenHistory, type StepAbout, undone } from './history.ts';
import { NEEDED_MOTIONS, neededMotions } from './needed-motion.ts';
import {
  CSS_PIXELS_PER_MM,
  type Entries,
  type PageState,
  type Rotation,
  type ScreenSize,
  type Settings,
  setEntry,
  typedAt,
  withArrangement,
} from './state.ts';
import type { Texts } from './texts/english.ts';
import { LANGUAGES } from './texts/languages.ts';
import { type Fault, faultsOf, type Speaker } from './translate-messages.ts';

/** What may stand in the middle column in place of the measures. */
export const PANELS = ['more', 'stop', 'ways', 'look', 'figures', 'options', 'files', 'about', 'chart'] as const;
export type Panel = (typeof PANELS)[number];
export const TURNS = ['finger', 'measure', 'make'] as const;
export type Turn = (typeof TURNS)[number];
/** A visit is written down harm first, pain with it, then motion and wear; then what follows from it. On a narrow screen one part is shown at a time. */
export const VISIT_PARTS = ['harm', 'pain', 'motion', 'wear', 'next'] as const;
export type VisitPart = (typeof VISIT_PARTS)[number];
export type Picture = 'hand' | 'section' | 'flat';

/** The state of the page and all that follows from it. Views read signals and are drawn anew when what they read has changed. */
export interface Store {
  readonly entries: ReadonlySignal<Entries>;
  readonly settings: ReadonlySignal<Settings>;
  readonly history: ReadonlySignal<History>;
  /** The case that is open, and whether the page shows visits or the design. */
  readonly file: ReadonlySignal<CaseFile | null>;
  readonly mode: Signal<'design' | 'visits'>;
  readonly derived: ReadonlySignal<Derived>;
  /** The last pattern that could be drawn, and whether it is the one of the present entries. */
  readonly shown: ReadonlySignal<Drawn | null>;
  readonly current: ReadonlySignal<boolean>;
  readonly texts: ReadonlySignal<Texts>;
  readonly format: ReadonlySignal<Format>;
  readonly speaker: ReadonlySignal<Speaker>;
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** Paths of the fields of motion that a rule asks for; they stand still while a motion is being typed, and stay while the active one does. */
  readonly needed: ReadonlySignal<readonly string[]>;

  /** Path of the field that has the focus, e.g. `digits.ring.width`. */
  readonly focus: Signal<string>;
  /** Paths of the fields that were left with something typed in them; their errors are shown. */
  readonly left: Signal<readonly string[]>;
  /** Everything that is wrong is shown: somebody asked to print or save. */
  readonly checked: Signal<boolean>;
  readonly panel: Signal<Panel | null>;
  /** The window is so narrow that one turn is shown at a time; its menu is open. */
  readonly narrow: Signal<boolean>;
  readonly menu: Signal<boolean>;
  readonly middle: Signal<'fingers' | 'palm'>;
  /** On a narrow screen one turn is shown at a time, and one row of the grid. */
  readonly turn: Signal<Turn>;
  readonly row: Signal<number>;
  /** On a narrow screen one part of a visit is shown at a time. */
  readonly visitPart: Signal<VisitPart>;
  /** The drawn hand is turned once for all measures of the back. */
  readonly aspect: Signal<'palm' | 'back'>;
  readonly picture: Signal<Picture>;
  /** Null: the front view, which is another one for a left and for a right hand. */
  readonly rotation: Signal<Rotation | null>;
  /** The moulded view is being turned by the mouse. */
  readonly dragging: Signal<boolean>;
  readonly zoom: Signal<number | 'actual'>;
  readonly wholeSheet: Signal<boolean>;
  readonly screen: Signal<ScreenSize | null>;
  readonly cardPixelsPerMm: Signal<number>;
  readonly pixelRatio: Signal<number>;
  readonly keep: Signal<boolean>;
  /** Said in the polite status line. */
  readonly said: Signal<string>;
  /** The result as it was last said there, so that the same is not said twice. */
  readonly saidResult: Signal<string>;
  /** The last save, beside its button. */
  readonly saved: Signal<string>;
  /** Why a file was not opened or saved. */
  readonly fileProblems: Signal<readonly string[]>;
  /** Entries or case changed since they were last saved or opened. */
  readonly changed: Signal<boolean>;

  /** Changes the entries; one step of the history a field or choice. */
  enter(about: StepAbout, change: (now: Entries) => Partial<Entries>): void;
  /** Another arrangement; that a reading of the paper strip went with the one before is said. */
  arrange(about: StepAbout, chosen: Partial<Pick<Entries, 'block' | 'places'>>): void;
  /** Changes the text of one field. */
  type(where: string, text: string): void;
  /** The field was left or Enter was pressed: what comes next is another step. */
  commit(): void;
  undo(): StepAbout | null;
  redo(): StepAbout | null;
  /** Fills entries that nobody typed yet, as a proposal; no step of the history. */
  fill(change: (now: Entries) => Entries): void;
  /** Other settings; entries and every step of the history are written anew for them, so that what comes back is the length it was. No step itself. */
  set(settings: Settings, rewrite: (entries: Entries) => Entries): void;
  /** Another case or another person: the history ends. */
  replace(entries: Entries, file: CaseFile | null): void;
  record(file: CaseFile | null): void;
  /** Works everything out from the very last entries, plan included; for whatever reads the page in order to act on it. */
  settle(): Derived;
}

/** How long typing must pause before the plan is worked out anew, ms. */
const PAUSE = 150;

export function createStore(first: PageState, pixelRatio = 1): Store {
  const entries = signal(first.entries);
  const settings = signal(first.settings);
  const history = signal<History>(NO_HISTORY);
  const file = signal(first.file);
  // Plan and cards take longest; they follow the first paint.
  const derived = signal(derive(first.entries, first.settings, NOTHING_YET));
  const shown = signal<Drawn | null>(derived.peek().drawn);
  const changed = signal(false);
  const left = signal<readonly string[]>([]);
  let pause: ReturnType<typeof setTimeout> | undefined;

  const texts = computed<Texts>(() => LANGUAGES[settings.value.language]);
  const format = computed(() => formatFor(settings.value, texts.value));
  const speaker = computed<Speaker>(() => ({ texts: texts.value, format: format.value, entries: entries.value }));

  let asked: readonly string[] = [];
  let askedOf = '';
  const needed = computed(() => {
    const { target, motion } = entries.value;
    if (history.value.open?.startsWith('motion.active.')) return asked;
    const found = neededMotions(derived.value.plan, entries.value);
    // What is asked of a motion stays while that motion does: half a number typed there may bring another rule, and its field must not go away.
    const of = JSON.stringify([target, motion.active]);
    asked = of === askedOf ? NEEDED_MOTIONS.filter((where) => found.includes(where) || asked.includes(where)) : found;
    askedOf = of;
    return asked;
  });

  function follow(next: Derived): void {
    derived.value = next;
    if (next.drawn) shown.value = next.drawn;
    clearTimeout(pause);
    if (!next.settled) pause = setTimeout(settle, PAUSE);
  }

  function settle(): Derived {
    clearTimeout(pause);
    if (!derived.peek().settled) batch(() => follow(derive(entries.peek(), settings.peek())));
    return derived.peek();
  }

  function apply(next: Entries, steps: History): void {
    batch(() => {
      entries.value = next;
      history.value = steps;
      changed.value = true;
      follow(derive(next, settings.peek(), derived.peek()));
    });
  }

  const store: Store = {
    entries,
    settings,
    history,
    file,
    mode: signal(first.file ? 'visits' : 'design'),
    derived,
    shown,
    current: computed(() => derived.value.drawn !== null),
    texts,
    format,
    speaker,
    faults: computed(() => faultsOf(derived.value.problems, speaker.value)),
    needed,
    focus: signal(''),
    left,
    checked: signal(false),
    panel: signal<Panel | null>(null),
    narrow: signal(false),
    menu: signal(false),
    middle: signal<'fingers' | 'palm'>('fingers'),
    turn: signal<Turn>('finger'),
    row: signal(0),
    visitPart: signal<VisitPart>('harm'),
    aspect: signal<'palm' | 'back'>('palm'),
    picture: signal<Picture>('hand'),
    rotation: signal<Rotation | null>(null),
    dragging: signal(false),
    zoom: signal<number | 'actual'>(1),
    wholeSheet: signal(false),
    screen: signal(first.screen),
    cardPixelsPerMm: signal(CSS_PIXELS_PER_MM),
    pixelRatio: signal(pixelRatio),
    keep: signal(first.keep),
    said: signal(''),
    saidResult: signal(''),
    saved: signal(''),
    fileProblems: signal<readonly string[]>([]),
    changed,
    enter(about, change) {
      const now = entries.peek();
      const next = { ...now, ...change(now) };
      apply(next, recorded(history.peek(), now, next, about));
    },
    arrange(about, chosen) {
      const wasRead = entries.peek().options.paperReading.trim() !== '';
      store.enter(about, (now) => withArrangement(now, chosen));
      if (wasRead) store.said.value = texts.peek().head.readingEmptied;
    },
    type(where, text) {
      if (typedAt(entries.peek(), where) === text) return;
      store.enter({ where, value: text }, (now) => setEntry(now, where, text));
    },
    commit() {
      history.value = committed(history.peek());
    },
    fill(change) {
      entries.value = change(entries.peek());
    },
    undo: () => step(undone(history.peek())),
    redo: () => step(redone(history.peek())),
    set(nextSettings, rewrite) {
      const next = rewrite(entries.peek());
      batch(() => {
        settings.value = nextSettings;
        entries.value = next;
        history.value = rewrittenHistory(history.peek(), rewrite);
        follow(derive(next, nextSettings, derived.peek()));
      });
    },
    replace(next, nextFile) {
      batch(() => {
        shown.value = null;
        file.value = nextFile;
        left.value = [];
        store.checked.value = false;
        store.panel.value = null;
        store.saved.value = '';
        store.fileProblems.value = [];
        store.visitPart.value = 'harm';
        beginAnew();
        apply(next, NO_HISTORY);
        changed.value = false;
      });
    },
    record(next) {
      file.value = next;
      changed.value = true;
    },
    settle,
  };

  /** What was gone to, turned and looked at of the hand before. */
  function beginAnew(): void {
    store.focus.value = '';
    store.middle.value = 'fingers';
    store.row.value = 0;
    store.aspect.value = 'palm';
    store.picture.value = 'hand';
    store.rotation.value = null;
    store.zoom.value = 1;
    store.wholeSheet.value = false;
    store.saidResult.value = '';
  }

  function step(to: ReturnType<typeof undone>): StepAbout | null {
    if (!to) return null;
    apply(to.entries, to.history);
    return to.about;
  }

  return store;
}
