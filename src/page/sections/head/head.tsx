import { useComputed } from '@preact/signals';
import { LENGTH_UNITS, type LengthUnit } from '../../../units/length.ts';
import { visible } from '../../../units/quote.ts';
import { stepWords } from '../../history.ts';
import { focusNext } from '../../parts/focus.ts';
import { PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { freshEntries, rewritten } from '../../rewrite-entries.ts';
import { openFile, saveWork } from '../../save-files.ts';
import type { Settings } from '../../state.ts';
import type { Store } from '../../store.ts';
import { LANGUAGES, type Language } from '../../texts/languages.ts';

/** What the page works on, and the ways back: design or visits, the code, undo, redo, open, save, another person, language and unit. */
export function Head() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.head;
  const visits = useComputed(() => store.file.value?.visits.length ?? 0).value;
  const code = useComputed(() => store.entries.value.code).value;
  const isMarked = useComputed(() => store.entries.value.invented || store.entries.value.example).value;
  return (
    <header class={store.menu.value ? 'open' : undefined}>
      <h1>Knucklewright</h1>
      <Steps />
      <button type="button" id="menu" aria-expanded={store.menu.value} onClick={() => (store.menu.value = !store.menu.value)}>
        <span aria-hidden="true">☰</span> {words.menu}
      </button>
      <div class="head-rest">
        <div class="buttons">
          {(['design', 'visits'] as const).map((mode) => (
            <button
              type="button"
              key={mode}
              id={`mode-${mode}`}
              aria-pressed={store.mode.value === mode}
              onClick={() => {
                store.mode.value = mode;
                store.panel.value = null;
                store.menu.value = false;
              }}
            >
              {mode === 'design' ? words.design : words.visits(visits)}
            </button>
          ))}
          <PanelButton name="options">{words.options}</PanelButton>
        </div>
        <p class="code">
          {isMarked ? <strong>{words.invented} · </strong> : null}
          <span class="whole">{code.trim() === '' ? words.noCode : visible(code)}</span>
          {store.changed.value ? ` · ${words.unsaved}` : ''}
        </p>
        <div class="buttons">
          <label class="button" for="open-file">
            {words.open}
            <input
              id="open-file"
              class="hidden"
              type="file"
              accept=".json,application/json"
              title={texts.files.openHint}
              onChange={(event) => {
                const input = event.currentTarget;
                const file = input.files?.[0];
                // What was opened is looked at next, not the menu.
                store.menu.value = false;
                if (file) void openFile(store, file).finally(() => (input.value = ''));
              }}
            />
          </label>
          <button type="button" id="save" onClick={() => void saveWork(store)}>
            {words.save}
          </button>
          <button type="button" id="new-patient" onClick={() => newPatient(store)}>
            {words.newPatient}
          </button>
        </div>
        <div class="settings">
          <select
            id="language"
            aria-label={texts.language}
            value={store.settings.value.language}
            onChange={(event) => changeSettings(store, { language: event.currentTarget.value as Language })}
          >
            {Object.entries(LANGUAGES).map(([id, { languageName }]) => (
              <option key={id} value={id} lang={id}>
                {languageName}
              </option>
            ))}
          </select>
          <select
            id="unit"
            aria-label={texts.units}
            value={store.settings.value.unit}
            onChange={(event) => changeSettings(store, { unit: event.currentTarget.value as LengthUnit })}
          >
            {LENGTH_UNITS.map((unit) => (
              <option key={unit} value={unit}>
                {texts[unit]}
              </option>
            ))}
          </select>
        </div>
      </div>
    </header>
  );
}

/** Undo and redo say what they would do: "Undo: ring finger: width 16.5". */
function Steps() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.head;
  const { past, future } = store.history.value;
  const last = past.at(-1);
  const [next] = future;
  const back = last ? words.undoWhat(stepWords(last.about, texts)) : words.nothingToUndo;
  const forth = next ? words.redoWhat(stepWords(next.about, texts)) : words.nothingToRedo;
  return (
    <div class="buttons steps">
      <Step
        id="undo"
        sign="↶"
        word={words.undo}
        what={last ? stepWords(last.about, texts) : null}
        says={back}
        onPress={() => undo(store)}
      />
      <Step
        id="redo"
        sign="↷"
        word={words.redo}
        what={next ? stepWords(next.about, texts) : null}
        says={forth}
        onPress={() => redo(store)}
      />
    </div>
  );
}

interface StepProps {
  readonly id: 'undo' | 'redo';
  readonly sign: string;
  readonly word: string;
  /** The step that would be undone or redone; null where there is none. */
  readonly what: string | null;
  readonly says: string;
  readonly onPress: () => void;
}

/** Where there is room the button shows the step itself. */
function Step({ id, sign, word, what, says, onPress }: StepProps) {
  const label = what === null ? `${word}: ${says}` : says;
  return (
    <button type="button" id={id} aria-disabled={what === null} aria-label={label} title={says} onClick={onPress}>
      <span aria-hidden="true">{sign} </span>
      <span class="word">{what ?? word}</span>
    </button>
  );
}

export function undo(store: Store): void {
  const about = store.undo();
  const texts = store.texts.peek();
  store.said.value = about ? texts.head.undone(stepWords(about, texts)) : texts.head.nothingToUndo;
}

export function redo(store: Store): void {
  const about = store.redo();
  const texts = store.texts.peek();
  store.said.value = about ? texts.head.redone(stepWords(about, texts)) : texts.head.nothingToRedo;
}

/** Ends the history, so that one person's figures cannot come back into another's. */
function newPatient(store: Store): void {
  const words = store.texts.peek().head;
  if (store.changed.peek() && !store.entries.peek().example && !confirm(words.sureNew)) return;
  const { print } = store.entries.peek();
  const fresh = freshEntries(store.settings.peek());
  store.replace({ ...fresh, print: { ...fresh.print, paper: print.paper } }, null);
  store.mode.value = 'design';
  store.turn.value = 'finger';
  store.menu.value = false;
  store.said.value = words.emptied;
  focusNext('finger-heading');
}

/** A new language brings its decimal sign; numbers are written anew in the new unit and sign, so that the hand stays the same. */
function changeSettings(store: Store, wanted: Partial<Settings>): void {
  const now = store.settings.peek();
  const sign =
    wanted.language === undefined ? {} : { decimal: LANGUAGES[wanted.language].decimal === ',' ? (',' as const) : ('.' as const) };
  const next = { ...now, ...sign, ...wanted };
  store.set(next, (entries) => rewritten(entries, now, next));
}
