import { useMemo } from 'preact/hooks';
import type { Case, Motion } from '../../../record/case.ts';
import { caseChart } from '../../../record/case-chart.ts';
import type { CourseAdvice } from '../../../record/course/course-advice.ts';
import { plain } from '../../../units/number.ts';
import { madeTitle } from '../../block-words.ts';
import { DrawingPicture } from '../../parts/drawing-picture.tsx';
import { focusNext } from '../../parts/focus.ts';
import { Panel, PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { EMPTY_VISIT } from '../../state.ts';
import { entriesOfVisit } from '../../visit.ts';
import { useCourse } from './course-now.ts';

/** Right of Visits: the advice, the chart, the list. What is typed now counts at once, before it is recorded. */
export function Course() {
  const course = useCourse();
  if (course === null) return null;
  return (
    <section class="turn course" id="course" aria-labelledby="next-heading">
      <Advice advice={course.advice} isAhead={course.isAhead} />
      <Visits record={course.record} />
    </section>
  );
}

/** The first step leads, the rest are notes; a stop leads before anything is recorded. */
function Advice({ advice, isAhead }: { readonly advice: CourseAdvice; readonly isAhead: boolean }) {
  const store = useStore();
  const words = store.texts.value.visits;
  const [first, ...notes] = advice.steps;
  return (
    <div role={first?.action === 'stop' ? 'alert' : undefined}>
      <h2 id="next-heading" tabIndex={-1}>
        {words.next}
      </h2>
      {isAhead ? <p class="hint">{words.preview}</p> : null}
      {first ? (
        <p class={`lead ${first.action}`}>
          <strong>
            {first.title}
            {first.when === null ? '' : ` (${first.when})`}.
          </strong>{' '}
          {first.message}
        </p>
      ) : (
        <p class="note">{words.noVisit}</p>
      )}
      <ul class="notes">
        {notes.map((step) => (
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
      <p class="hint">{advice.starting}</p>
    </div>
  );
}

function Visits({ record }: { readonly record: Case }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const { visits } = record;
  if (visits.length === 0) return null;
  return (
    <>
      <Chart record={record} id="chart" />
      <div class="buttons enlarge">
        <PanelButton name="chart">{words.chartLarge}</PanelButton>
      </div>
      {/* A table is wide on a narrow screen, and what scrolls must be reachable by keys. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section class="scroll" tabIndex={0} aria-label={words.list}>
        <table class="visits">
          <caption>{words.list}</caption>
          <thead>
            <tr>
              <th scope="col">{words.field.date}</th>
              <td />
              <th scope="col">{words.active}</th>
              <th scope="col">{words.passive}</th>
              <th scope="col">{words.madeThen}</th>
            </tr>
          </thead>
          <tbody>
            {visits.map((visit, k) => (
              <tr key={`${visit.date} ${k}`}>
                <th scope="row">{visit.date}</th>
                <td>
                  <button
                    type="button"
                    aria-label={words.correctThe(visit.date)}
                    onClick={() => {
                      const file = record.file.visits[k];
                      store.enter({ where: 'visit', value: words.correctThe(visit.date) }, () => ({
                        visit: file ? entriesOfVisit(file, k, texts.finger.beyond) : EMPTY_VISIT,
                      }));
                      store.commit();
                      store.visitPart.value = 'harm';
                      focusNext('case-heading');
                    }}
                  >
                    {words.correct}
                  </button>
                </td>
                <td class="ends">{shown(visit.goniometry.pip.active)}</td>
                <td class="ends">{visit.goniometry.pip.passive ? shown(visit.goniometry.pip.passive) : '–'}</td>
                <td>{madeTitle(visit.made, texts, store.format.value)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

/** The chart in the room of the form, where its letters can be read at arm's length. */
export function ChartPanel() {
  const course = useCourse();
  const words = useStore().texts.value.visits;
  const isDrawn = course !== null && course.record.visits.length > 0;
  return (
    <Panel name="chart" heading={words.chart}>
      {isDrawn ? <Chart record={course.record} id="chart-large" /> : <p>{words.noVisit}</p>}
    </Panel>
  );
}

function Chart({ record, id }: { readonly record: Case; readonly id: string }) {
  const { language } = useStore().settings.value;
  const chart = useMemo(() => caseChart(record, undefined, language), [record, language]);
  if (!chart.ok) return null;
  return (
    // A wide chart scrolls, and what scrolls must be reachable by keys.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
    <section class="scroll" tabIndex={0} aria-label={chart.value.title}>
      <DrawingPicture drawing={chart.value} id={id} />
    </section>
  );
}

/** Neutral-zero: extension-0-flexion; a joint beyond straight has a deficit below 0. */
function shown({ extensionDeficit, flexion }: Motion): string {
  return extensionDeficit < 0
    ? `${plain(-extensionDeficit, 1)}-0-${plain(flexion, 1)}`
    : `0-${plain(extensionDeficit, 1)}-${plain(flexion, 1)}`;
}
