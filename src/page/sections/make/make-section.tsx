import { useComputed } from '@preact/signals';
import { GONIOMETRY_FIELDS } from '../../../hand/target-motion.ts';
import { PAPERS } from '../../../sheet/paper/paper.ts';
import { resultSentence, standInWords } from '../../arrangement-words.ts';
import type { Drawn } from '../../derive.ts';
import { stoppedWords } from '../../looks.ts';
import { Choice } from '../../parts/choice.tsx';
import { PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { Heading } from '../../parts/turn-heading.tsx';
import { savePattern } from '../../save-files.ts';
import { fieldName } from '../../translate-messages.ts';
import { LookBox } from '../look/look-panel.tsx';
import { EmptyPage } from './empty-page.tsx';
import { ResultPicture } from './result-picture.tsx';

/** Turn 3, always in view: one picture, one sentence, what to look at, and Print. */
export function MakeSection() {
  const store = useStore();
  const texts = store.texts.value;
  const shown = store.shown.value;
  return (
    <section class="turn make-turn" id="make" aria-labelledby="make-heading">
      <Heading number={3} id="make-heading" text={texts.make.heading} />
      {shown === null ? <EmptyPage /> : <Pictures shown={shown} />}
      <div class="make-words">
        {shown === null ? null : <Result shown={shown} />}
        <LookBox />
        <PrintRow />
      </div>
    </section>
  );
}

function Pictures({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const words = store.texts.value.make;
  return (
    <div class="make-pictures">
      <Choice
        where="picture"
        legend={words.pictures}
        legendHidden
        value={store.picture.value}
        choices={(['hand', 'section', 'flat'] as const).map((value) => ({ value, label: words.picture[value] }))}
        onChoose={(value) => (store.picture.value = value)}
      />
      <ResultPicture shown={shown} />
    </div>
  );
}

/** What it is, in one sentence, and on whose hand. */
function Result({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.make;
  const derived = store.derived.value;
  const isCurrent = store.current.value;
  const isStopped = store.entries.value.stop === 'some';
  const note = isStopped
    ? stoppedWords(store)
    : store.entries.value.example
      ? words.exampleShown
      : !isCurrent
        ? words.kept
        : derived.average
          ? standInWords(derived, texts)
          : null;
  return (
    <>
      {note ? (
        <p class={isCurrent && !isStopped ? 'banner' : 'banner kept'} role={isStopped ? 'alert' : undefined}>
          {note}
        </p>
      ) : null}
      <p class="sentence" id="sentence">
        <ResultWords shown={shown} />
      </p>
    </>
  );
}

function ResultWords({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  const sentence = resultSentence(shown, texts, format);
  const free = Object.entries(shown.report.freePipFlexion).find(([digit]) => digit === shown.hand.target?.digit)?.[1];
  const size =
    shown.kind === 'strip'
      ? texts.make.size(format.mm(shown.report.flatLength, 0), format.mm(shown.report.flatWidth, 0))
      : shown.report.faces.map((f) => texts.make.size(format.mm(f.length, 0), format.mm(f.width, 0))).join(', ');
  // What no finger reaches is no figure to give.
  const freeWords =
    free === undefined
      ? null
      : free > GONIOMETRY_FIELDS.pip.flexion.refuse.to
        ? texts.make.freeAltogether
        : texts.make.free(`${format.number(free, 0)}°`);
  return (
    <>
      <strong>{sentence}</strong>; {size}
      {freeWords === null ? '' : `; ${freeWords}`}.
    </>
  );
}

function PrintRow() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.make;
  const missing = useComputed(() => store.derived.value.missing).value;
  const isStopped = store.entries.value.stop === 'some';
  // A strip is tried in paper round the fingers; a plate has no such trial.
  const isPlate = useComputed(() => store.shown.value?.kind === 'plate').value;
  const name = missing[0] === undefined ? null : fieldName(missing[0], texts);
  const need = isStopped
    ? texts.stop.stopped
    : name === null
      ? null
      : missing.length > 1
        ? words.missingMore(name, missing.length - 1)
        : words.missing(name);
  const figures = store.shown.value === null ? null : <PanelButton name="figures">{texts.pattern.figures}</PanelButton>;
  return (
    <div class="print-row">
      <div class="buttons">
        {/* On a narrow screen it stands in the bar. */}
        {store.narrow.value ? null : (
          <button
            type="button"
            id="print"
            class={isStopped ? undefined : 'main'}
            aria-describedby="print-line"
            onClick={() => void savePattern(store, 'pdf')}
          >
            {words.print}
          </button>
        )}
        {isPlate ? null : (
          <button type="button" id="print-trial" onClick={() => void savePattern(store, 'trial')}>
            {words.trial}
          </button>
        )}
        <PanelButton name="files">{words.files}</PanelButton>
        {/* There the line below has no room for it. */}
        {store.narrow.value ? figures : null}
      </div>
      <div class="print-line">
        <select
          id="paper"
          aria-label={words.paper}
          value={store.entries.value.print.paper}
          onChange={(event) => {
            const paper = event.currentTarget.value;
            store.enter({ where: 'print.paper', value: paper }, ({ print }) => ({ print: { ...print, paper } }));
            store.commit();
          }}
        >
          {Object.entries(PAPERS).map(([value, paper]) => (
            <option key={value} value={value}>
              {paper.name}
            </option>
          ))}
        </select>
        <p class="hint" id="print-line">
          {need ?? words.printHow}
        </p>
        {store.narrow.value ? null : figures}
      </div>
      <p class="saved" id="saved">
        {store.saved.value}
      </p>
    </div>
  );
}
