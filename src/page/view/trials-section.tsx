import { LARGEST_JSON_BYTES } from '../../units/json-text.ts';
import { visible } from '../../units/quote.ts';
import type { Problem } from '../../units/result.ts';
import { entriesOf, handFileText } from '../hand-file.ts';
import { readOpened } from '../open-file.ts';
import { saveAs } from '../save.ts';
import { emptyEntries } from '../state.ts';
import { sayProblem } from '../translate-messages.ts';
import { Deferred } from './deferred.tsx';
import { checkAll, focusNext, type View } from './view.ts';

/** Opens and saves the measurements as a file, and keeps them on this computer only while the switch is on. */
export function TrialsSection({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  const { keep, fileProblems, changed } = state.viewing;
  return (
    <section id="trials" aria-labelledby="trials-heading">
      <h2 id="trials-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          7
        </span>
        {texts.trials.heading}
      </h2>
      <p>{texts.trials.about}</p>
      {changed && !keep ? <p class="note">{texts.trials.unsaved}</p> : null}
      <div class="field">
        <label for="open-file">{texts.trials.open}</label>
        <p class="hint" id="open-hint">
          {texts.trials.openHint}
        </p>
        <input
          id="open-file"
          type="file"
          accept=".json,application/json"
          aria-describedby="open-hint"
          onChange={(event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            if (file) void open(view, file).finally(() => (input.value = ''));
          }}
        />
      </div>
      {fileProblems.length > 0 ? (
        <div class="error" id="file-problems" tabIndex={-1} role="alert">
          {fileProblems.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </div>
      ) : null}
      <div class="buttons">
        <button type="button" id="save-hand" onClick={() => saveHand(view)}>
          {texts.trials.save}
        </button>
        <button
          type="button"
          onClick={() => {
            act.record(null);
            act.replace(emptyEntries(state.settings.decimal), {
              keep: false,
              changed: false,
              fileProblems: [],
              said: texts.trials.cleared,
            });
            focusNext('hand-heading');
          }}
        >
          {texts.trials.clear}
        </button>
      </div>
      <Deferred load={() => import('./case-view.tsx').then((module) => module.CaseView)} view={view} />
      <label class="pick wide">
        <input
          type="checkbox"
          id="keep"
          checked={keep}
          aria-describedby="keep-hint"
          onChange={(event) => {
            const on = event.currentTarget.checked;
            act.view({ keep: on, said: on ? texts.trials.keeping : texts.trials.forgotten });
          }}
        />
        <span>{texts.trials.keep}</span>
      </label>
      <p class="hint" id="keep-hint">
        {texts.trials.keepHint}
      </p>
    </section>
  );
}

function saveHand(view: View): void {
  const { act, texts } = view;
  const { state, derived } = act.settle();
  if (!derived.hand.ok) {
    checkAll(view);
    return;
  }
  const name = `${derived.hand.value.code}_hand.json`;
  saveAs(name, handFileText(state.entries, state.settings.unit), 'application/json');
  act.view({ changed: false, said: texts.make.saved(name) });
}

/** Opens a hand file or a case; a broken or large one changes nothing and is explained. */
async function open(view: View, file: File): Promise<void> {
  const { act, texts, state, speaker } = view;
  const refuse = (problems: readonly Problem[]) => {
    const name = texts.trials.notOpened(visible(file.name));
    act.view({ fileProblems: problems.map((problem) => `${name}: ${sayProblem(problem, speaker).text}`) });
    focusNext('file-problems');
  };
  if (file.size > LARGEST_JSON_BYTES) return refuse([{ code: 'FILE_TOO_LARGE', where: '', message: '', kind: 'input' }]);
  const read = await readOpened(await file.text());
  if (!read.ok) return refuse(read.problems);
  const { record, hand } = read.value;
  act.record(record);
  const opened = { changed: false, fileProblems: [], said: texts.trials.opened(visible(file.name)) };
  if (hand === null) {
    act.view(opened);
    return;
  }
  act.set({ unit: hand.units });
  act.replace(entriesOf(hand, state.settings.decimal), opened);
}
