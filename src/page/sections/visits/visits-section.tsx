import { useMemo } from 'preact/hooks';
import type { Case, Motion } from '../../../record/case.ts';
import { caseChart } from '../../../record/case-chart.ts';
import type { CaseFile } from '../../../record/case-schema.ts';
import { nextSteps } from '../../../record/next-step.ts';
import { readCase } from '../../../record/read-case.ts';
import { plain } from '../../../units/number.ts';
import { madeTitle } from '../../block-words.ts';
import { Choice, Tick } from '../../parts/choice.tsx';
import { DrawingPicture } from '../../parts/drawing-picture.tsx';
import { Field } from '../../parts/field.tsx';
import { focusNext, goToField } from '../../parts/focus.ts';
import { useStore } from '../../parts/store-context.ts';
import { askForCode, refuse, saveCase } from '../../save-files.ts';
import { EMPTY_VISIT, type Entries } from '../../state.ts';
import type { Store } from '../../store.ts';
import { neutralZero } from '../../typed-motion.ts';
import { addVisit, newCase } from '../../visit.ts';

/** Left and middle: harm first, then motion and what was made. */
export function VisitForm() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const file = store.file.value;
  if (file === null)
    return (
      <section class="turn visit-form" id="visit" aria-labelledby="case-heading">
        <h2 id="case-heading" tabIndex={-1}>
          {texts.head.visits(0)}
        </h2>
        <p>{words.startAbout}</p>
        <p class="hint">{words.needsCode}</p>
        <button type="button" class="main" id="start-case" onClick={() => start(store)}>
          {words.start}
        </button>
      </section>
    );
  const { visit } = store.entries.value;
  const set = (key: keyof Entries['visit'], value: string, shown: string) =>
    store.enter({ where: `visit.${key}`, value: shown }, (now) => ({ visit: { ...now.visit, [key]: value } }));
  const back = (lacks: string, bends: string) => neutralZero({ lacks, bends }) ?? '';
  return (
    <section class="turn visit-form" id="visit" aria-labelledby="case-heading">
      <h2 id="case-heading" tabIndex={-1}>
        {words.title(file.code, texts.digit[file.digit], texts.handOf[file.side])}
      </h2>
      <h3>{words.wrong}</h3>
      {(['marksOnSkin', 'fits', 'redirects'] as const).map((key) => (
        <Choice
          key={key}
          where={`visit.${key}`}
          legend={words[key]}
          value={visit[key] as 'yes' | 'no' | 'unknown' | ''}
          choices={(['yes', 'no', 'unknown'] as const).map((value) => ({ value, label: words[value] }))}
          onChoose={(value) => set(key, value, words[value])}
        />
      ))}
      <div class="pair">
        <Field where="visit.date" label={words.field.date} hint={words.dateHint} longest={10} />
        <Field where="visit.wear" label={words.field.wear} hint={words.wearHint} numeric optional />
        <Field where="visit.lacks" label={words.field.lacks} />
        <Field where="visit.bends" label={words.field.bends} />
        <output class="neutral">{back(visit.lacks, visit.bends)}</output>
        <Field where="visit.passiveLacks" label={words.field.passiveLacks} optional />
        <Field where="visit.passiveBends" label={words.field.passiveBends} optional />
        <output class="neutral">{back(visit.passiveLacks, visit.passiveBends)}</output>
      </div>
      <Field where="visit.comment" label={words.field.comment} hint={texts.files.noteHint} longest={300} optional />
      <Tick
        where="visit.made"
        label={words.made}
        checked={visit.made === 'yes'}
        onChange={(is) => set('made', is ? 'yes' : '', words.made)}
      />
      <div class="buttons">
        <button type="button" class="main" id="add-visit" onClick={() => add(store, file)}>
          {words.add}
        </button>
        <button type="button" id="save-case" onClick={() => void saveCase(store, file)}>
          {words.save}
        </button>
        <span class="saved">{store.saved.value}</span>
      </div>
    </section>
  );
}

/** Right: what next, the chart, the list. */
export function Course() {
  const store = useStore();
  const file = store.file.value;
  const record = useMemo(() => (file === null ? null : readCase(file)), [file]);
  if (record === null || !record.ok) return null;
  return <CourseOf record={record.value} />;
}

function CourseOf({ record }: { readonly record: Case }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const format = store.format.value;
  const { visits } = record;
  return (
    <section class="turn course" id="course" aria-labelledby="next-heading">
      <h2 id="next-heading" tabIndex={-1}>
        {words.next}
      </h2>
      <ul>
        {nextSteps(record).steps.map((step) => (
          <li key={step.rule}>
            <strong>{words.action[step.action]}.</strong> {words.rule[step.rule]}{' '}
            {store.settings.value.language === 'en' ? step.message : null}
            {step.change && store.settings.value.language !== 'en'
              ? words.change(format.degrees(step.change.from), format.degreesRange(...step.change.to))
              : null}
          </li>
        ))}
      </ul>
      <p class="caution">{texts.caution.evidence}</p>
      {visits.length === 0 ? <p class="note">{words.noVisit}</p> : <Chart record={record} />}
      {visits.length === 0 ? null : (
        // A table is wide on a narrow screen, and what scrolls must be reachable by keys.
        // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
        <section class="scroll" tabIndex={0} aria-label={words.list}>
          <table class="visits">
            <caption>{words.list}</caption>
            <thead>
              <tr>
                <th scope="col">{words.field.date}</th>
                <th scope="col">{words.active}</th>
                <th scope="col">{words.passive}</th>
                <th scope="col">{words.madeThen}</th>
              </tr>
            </thead>
            <tbody>
              {visits.map((visit, k) => (
                <tr key={`${visit.date} ${k}`}>
                  <th scope="row">{visit.date}</th>
                  <td>{shown(visit.goniometry.pip.active)}</td>
                  <td>{visit.goniometry.pip.passive ? shown(visit.goniometry.pip.passive) : '–'}</td>
                  <td>{madeTitle(visit.made, texts, format)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </section>
  );
}

function Chart({ record }: { readonly record: Case }) {
  const chart = useMemo(() => caseChart(record), [record]);
  if (!chart.ok) return null;
  return (
    // A wide chart scrolls, and what scrolls must be reachable by keys.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
    <section class="scroll" tabIndex={0} aria-label={chart.value.title}>
      <DrawingPicture drawing={chart.value} id="chart" />
    </section>
  );
}

/** Neutral-zero: extension-0-flexion; a joint beyond straight has a deficit below 0. */
function shown({ extensionDeficit, flexion }: Motion): string {
  return extensionDeficit < 0
    ? `${plain(-extensionDeficit, 1)}-0-${plain(flexion, 1)}`
    : `0-${plain(extensionDeficit, 1)}-${plain(flexion, 1)}`;
}

/** A case is started from the design's hand; its code is asked for now. */
function start(store: Store): void {
  const derived = store.settle();
  const entries = store.entries.peek();
  if (entries.code.trim() === '') {
    askForCode(store);
    return;
  }
  const [missing] = derived.missing;
  if (!derived.hand.ok) {
    store.checked.value = true;
    if (missing !== undefined) {
      goToField(store, missing);
      return;
    }
    store.mode.value = 'design';
    store.panel.value = 'look';
    return;
  }
  const made = newCase(derived.hand.value);
  if (!made.ok) {
    refuse(store, made.problems);
    return;
  }
  store.record(made.value.file);
  store.said.value = store.texts.peek().visits.started;
  focusNext('case-heading');
}

function add(store: Store, file: CaseFile): void {
  const derived = store.settle();
  const { visit } = store.entries.peek();
  const isMade = visit.made === 'yes' && !derived.average;
  const grown = addVisit(file, visit, isMade ? derived.drawn : null);
  if (!grown.ok) {
    refuse(store, grown.problems);
    return;
  }
  store.record(grown.value.file);
  store.enter({ where: 'visit', value: store.texts.peek().visits.add }, () => ({ visit: EMPTY_VISIT }));
  store.commit();
  store.fileProblems.value = [];
  store.said.value = store.texts.peek().visits.added;
  focusNext('case-heading');
}
