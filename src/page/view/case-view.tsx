import { useMemo } from 'preact/hooks';
import type { Case, Motion } from '../../record/case.ts';
import { caseChart } from '../../record/case-chart.ts';
import type { CaseFile } from '../../record/case-schema.ts';
import { courseAdvice } from '../../record/course/course-advice.ts';
import { readCase } from '../../record/read-case.ts';
import { caseText } from '../../record/write-case.ts';
import type { Problem } from '../../units/result.ts';
import { madeTitle } from '../block-words.ts';
import { saveAs } from '../save.ts';
import { EMPTY_VISIT } from '../state.ts';
import { sayProblem } from '../translate-messages.ts';
import { addVisit, newCase } from '../visit.ts';
import { DrawingPicture } from './drawing-picture.tsx';
import { Choice, Field } from './field.tsx';
import { checkAll, focusNext, type View } from './view.ts';

/** A case: started from the hand or opened; a visit added, the course as chart and table, and what next. */
export function CaseView({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  const { file } = state;
  if (file === null) {
    return (
      <button type="button" id="start-case" onClick={() => start(view)}>
        {texts.cases.start}
      </button>
    );
  }
  return (
    <div class="case">
      <Course view={view} file={file} />
      <h4>{texts.cases.visit}</h4>
      <div class="pair">
        <Field view={view} where="visit.date" label={texts.cases.date} hint={texts.cases.dateHint} longest={10} />
        <Field view={view} where="visit.wear" label={texts.cases.wear} hint={texts.cases.wearHint} numeric optional />
        <Field view={view} where="visit.pipActive" label={texts.cases.active} hint={texts.cases.motionHint} />
        <Field view={view} where="visit.pipPassive" label={texts.cases.passive} hint={texts.cases.motionHint} optional />
      </div>
      {(['fits', 'redirects', 'marksOnSkin'] as const).map((key) => (
        <Choice
          view={view}
          key={key}
          where={`visit.${key}`}
          legend={texts.cases[key]}
          value={state.entries.visit[key]}
          choices={(['yes', 'no', 'unknown'] as const).map((value) => ({ value, label: texts.cases[value] }))}
          onChoose={(value) => act.enter(({ visit }) => ({ visit: { ...visit, [key]: value } }))}
        />
      ))}
      <Field view={view} where="visit.comment" label={texts.cases.comment} hint={texts.hand.noteHint} longest={300} optional />
      <label class="pick wide">
        <input
          type="checkbox"
          checked={state.entries.visit.made === 'yes'}
          onChange={(event) => {
            const made = event.currentTarget.checked ? 'yes' : '';
            act.enter(({ visit }) => ({ visit: { ...visit, made } }));
          }}
        />
        <span>{texts.cases.made}</span>
      </label>
      <div class="buttons">
        <button type="button" id="add-visit" onClick={() => add(view, file)}>
          {texts.cases.add}
        </button>
        <button type="button" class="main" id="save-case" onClick={() => save(view, file)}>
          {texts.cases.save}
        </button>
      </div>
    </div>
  );
}

function Course({ view, file }: { readonly view: View; readonly file: CaseFile }) {
  const { texts, format, state } = view;
  const record = useMemo(() => readCase(file), [file]);
  if (!record.ok) throw new Error('a case that was read cannot be read again');
  const { code, digit, side, visits } = record.value;
  const advice = courseAdvice(record.value, state.settings.language);
  return (
    <>
      <h3 id="case-heading" tabIndex={-1}>
        {texts.cases.title(code, texts.digit[digit], texts.handOf[side])}
      </h3>
      {visits.length === 0 ? <p class="note">{texts.cases.noVisit}</p> : <Chart record={record.value} />}
      {visits.length === 0 ? null : (
        // A table is wide on a narrow screen, and what scrolls must be reachable by keys.
        // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
        <section class="scroll" tabIndex={0} aria-label={texts.cases.course}>
          <table class="course">
            <caption>{texts.cases.course}</caption>
            <thead>
              <tr>
                <th scope="col">{texts.cases.date}</th>
                <th scope="col">{texts.cases.active}</th>
                <th scope="col">{texts.cases.passive}</th>
                <th scope="col">{texts.cases.madeThen}</th>
              </tr>
            </thead>
            <tbody>
              {visits.map((visit, k) => (
                <tr key={`${visit.date} ${k}`}>
                  <th scope="row">{visit.date}</th>
                  <td>{motionText(visit.goniometry.pip.active, format)}</td>
                  <td>{visit.goniometry.pip.passive ? motionText(visit.goniometry.pip.passive, format) : '–'}</td>
                  <td>{madeTitle(visit.made, texts, format)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <h4>{texts.cases.next}</h4>
      <ul>
        {advice.steps.map((step) => (
          <li key={step.rule}>
            <strong>
              {step.title}
              {step.when === null ? '' : ` (${step.when})`}.
            </strong>{' '}
            {step.message}
          </li>
        ))}
        {advice.reminders.map((reminder) => (
          <li key={reminder}>{reminder}</li>
        ))}
      </ul>
      <p class="caution">{texts.caution.evidence}</p>
    </>
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

/** Extension deficit and flexion as they are typed: "25 / 85"; a joint beyond straight has a deficit below 0. */
function motionText({ extensionDeficit, flexion }: Motion, format: View['format']): string {
  return `${format.number(extensionDeficit, 1)} / ${format.number(flexion, 1)}`;
}

function start(view: View): void {
  const { derived } = view.act.settle();
  if (!derived.hand.ok) {
    checkAll(view);
    return;
  }
  const made = newCase(derived.hand.value);
  if (!made.ok) {
    refuse(view, made.problems);
    return;
  }
  view.act.record(made.value.file);
  view.act.view({ fileProblems: [], changed: true, said: view.texts.cases.started });
  focusNext('case-heading');
}

function add(view: View, file: CaseFile): void {
  const { state, derived } = view.act.settle();
  const { visit } = state.entries;
  const grown = addVisit(file, visit, visit.made === 'yes' ? derived.drawn : null);
  if (!grown.ok) {
    refuse(view, grown.problems);
    return;
  }
  view.act.record(grown.value.file);
  view.act.enter(() => ({ visit: EMPTY_VISIT }));
  view.act.view({ fileProblems: [], said: view.texts.cases.added });
  focusNext('case-heading');
}

function save(view: View, file: CaseFile): void {
  const text = caseText(file);
  if (!text.ok) {
    refuse(view, text.problems);
    return;
  }
  const name = `${file.code}_case.json`;
  saveAs(name, text.value, 'application/json');
  view.act.view({ changed: false, fileProblems: [], said: view.texts.make.saved(name) });
}

function refuse(view: View, problems: readonly Problem[]): void {
  view.act.view({ fileProblems: problems.map((problem) => sayProblem(problem, view.speaker).text) });
  focusNext('file-problems');
}
