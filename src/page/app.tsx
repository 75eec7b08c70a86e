import { useComputed } from '@preact/signals';
import type { ComponentType } from 'preact';
import { resultSentence } from './arrangement-words.ts';
import type { Drawn } from './derive.ts';
import { looksOf, stoppedWords } from './looks.ts';
import { focusNext } from './parts/focus.ts';
import { StoreContext, useStore } from './parts/store-context.ts';
import { savePattern } from './save-files.ts';
import { AboutPanel } from './sections/about/about-panel.tsx';
import { FiguresPanel } from './sections/figures/figures-panel.tsx';
import { FilesPanel } from './sections/files/files-panel.tsx';
import { FingerSection } from './sections/finger/finger-section.tsx';
import { Head } from './sections/head/head.tsx';
import { LookPanel } from './sections/look/look-panel.tsx';
import { MakeSection } from './sections/make/make-section.tsx';
import { MeasureSection } from './sections/measure/measure-section.tsx';
import { MorePanel } from './sections/more/more-panel.tsx';
import { OptionsPanel } from './sections/options/options-panel.tsx';
import { Printout } from './sections/printout/printout.tsx';
import { StopPanel } from './sections/stop/stop-panel.tsx';
import { ChartPanel, Course } from './sections/visits/course.tsx';
import { VisitBar, VisitTabs } from './sections/visits/visit-bar.tsx';
import { VisitForm } from './sections/visits/visit-form.tsx';
import { WaysPanel } from './sections/ways/ways-panel.tsx';
import { type Panel, type Store, TURNS } from './store.ts';

/** Length and width of the flat piece, in few letters. */
function FigureLine({ shown }: { readonly shown: Drawn }) {
  const format = useStore().format.value;
  const sizes =
    shown.kind === 'strip'
      ? [[shown.report.flatLength, shown.report.flatWidth] as const]
      : shown.report.faces.map((f) => [f.length, f.width] as const);
  return <>{sizes.map(([length, width]) => `${format.mm(length, 0)} x ${format.mm(width, 0)}`).join(', ')}</>;
}

const PANELS: Readonly<Record<Panel, ComponentType>> = {
  more: MorePanel,
  stop: StopPanel,
  ways: WaysPanel,
  look: LookPanel,
  figures: FiguresPanel,
  options: OptionsPanel,
  files: FilesPanel,
  about: AboutPanel,
  chart: ChartPanel,
};

/** One screen: three turns side by side, or one at a time where the window is narrow. */
export function App({ store }: { readonly store: Store }) {
  return (
    <StoreContext.Provider value={store}>
      <Page />
    </StoreContext.Provider>
  );
}

function Page() {
  const store = useStore();
  const texts = store.texts.value;
  const isNarrow = store.narrow.value;
  const isDesign = store.mode.value === 'design';
  const isCase = store.file.value !== null;
  return (
    <>
      <button type="button" class="skip" id="skip-finger" onClick={() => skip(store, 'finger')}>
        {texts.head.skipToFinger}
      </button>
      <button type="button" class="skip" id="skip-result" onClick={() => skip(store, 'make')}>
        {texts.head.skipToResult}
      </button>
      <Head />
      <FileProblems />
      {isNarrow ? isDesign ? <TurnTabs /> : isCase ? <VisitTabs /> : null : null}
      {isDesign ? <Design /> : <Visits />}
      <footer>
        <p class="status" role="status" aria-label={texts.head.status}>
          {store.said.value}
        </p>
        <p class="burn">
          {texts.head.burn} {texts.head.decides}
        </p>
      </footer>
      {isNarrow ? isDesign || !isCase ? <BottomBar /> : <VisitBar /> : null}
      <Printout />
    </>
  );
}

function skip(store: Store, turn: 'finger' | 'make'): void {
  store.mode.value = 'design';
  store.turn.value = turn;
  // The first radio takes the arrow keys; the heading would be one stop before it.
  if (turn === 'finger') requestAnimationFrame(() => document.querySelector<HTMLElement>('input[name="target.digit"]')?.focus());
  else focusNext('make-heading');
}

function Design() {
  const store = useStore();
  const panel = store.panel.value;
  const PanelOf = panel === null ? null : PANELS[panel];
  const isNarrow = store.narrow.value;
  const turn = store.turn.value;
  const isShown = (name: (typeof TURNS)[number]) => !isNarrow || (turn === name && PanelOf === null);
  return (
    <main class="design">
      {isShown('finger') ? <FingerSection /> : null}
      {PanelOf || isShown('measure') ? <div class="middle">{PanelOf ? <PanelOf key={panel} /> : <MeasureSection />}</div> : null}
      {isShown('make') ? <MakeSection /> : null}
    </main>
  );
}

function Visits() {
  const store = useStore();
  const panel = store.panel.value;
  const PanelOf = panel === null ? null : PANELS[panel];
  return (
    <main class="visiting">
      {PanelOf ? (
        <div class="middle wide">
          <PanelOf key={panel} />
        </div>
      ) : (
        <VisitForm />
      )}
      {store.narrow.value && (store.visitPart.value !== 'next' || PanelOf) ? null : (
        <div class="right">
          <Course />
        </div>
      )}
    </main>
  );
}

/** Why a file was not opened or something not recorded; takes the focus. */
function FileProblems() {
  const store = useStore();
  const problems = store.fileProblems.value;
  if (problems.length === 0) return null;
  return (
    <div class="error file-problems" id="file-problems" tabIndex={-1} role="alert">
      {problems.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <button type="button" class="close" aria-label={store.texts.value.head.close} onClick={() => (store.fileProblems.value = [])}>
        <span aria-hidden="true">×</span>
      </button>
    </div>
  );
}

function TurnTabs() {
  const store = useStore();
  const texts = store.texts.value;
  const names = { finger: texts.finger.short, measure: texts.measure.short, make: texts.make.short };
  return (
    <nav class="turns" aria-label={texts.head.turns}>
      {TURNS.map((turn, k) => (
        <button
          type="button"
          key={turn}
          id={`turn-${turn}`}
          aria-pressed={store.turn.value === turn && store.panel.value === null}
          onClick={() => {
            store.panel.value = null;
            store.turn.value = turn;
            window.scrollTo(0, 0);
          }}
        >
          {k + 1} {names[turn]}
        </button>
      ))}
    </nav>
  );
}

/** On a narrow screen the result stays in view: its sentence, how much there is to look at, and the next press. */
function BottomBar() {
  const store = useStore();
  const texts = store.texts.value;
  const shown = store.shown.value;
  const looks = useComputed(() => looksOf(store).length).value;
  const turn = store.turn.value;
  const isStopped = store.entries.value.stop === 'some';
  const toMeasure = turn === 'finger' && store.derived.value.missing.some((where) => where.startsWith('digits.'));
  return (
    <aside class={isStopped ? 'bottom-bar stop' : 'bottom-bar'} aria-label={texts.make.pictures}>
      {isStopped ? (
        <p role="alert">
          <strong>{stoppedWords(store)}</strong>
        </p>
      ) : (
        <p>
          <strong>{shown === null ? texts.make.nothing : resultSentence(shown, texts, store.format.value)}</strong>
          <span>
            {shown === null
              ? ''
              : !store.current.value
                ? `${texts.make.keptShort} · `
                : store.derived.value.average
                  ? `${texts.make.averageShort} · `
                  : ''}
            {shown === null ? '' : <FigureLine shown={shown} />}
            {looks > 0 ? ` · ${texts.look.heading(looks)}` : ''}
          </span>
        </p>
      )}
      {toMeasure ? (
        <button
          type="button"
          key="measure"
          id="bar-measure"
          onClick={() => {
            store.turn.value = 'measure';
            store.panel.value = null;
            focusNext('measure-heading');
          }}
        >
          2 {texts.measure.short}
        </button>
      ) : (
        <button
          type="button"
          key="print"
          id="bar-print"
          class={isStopped ? 'waits' : undefined}
          onClick={() => void savePattern(store, 'pdf')}
        >
          {texts.make.print}
        </button>
      )}
    </aside>
  );
}
