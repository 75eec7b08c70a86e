import { focusNext } from '../../parts/focus.ts';
import { useStore } from '../../parts/store-context.ts';
import { saveCase } from '../../save-files.ts';
import { VISIT_PARTS, type VisitPart } from '../../store.ts';
import { type CourseNow, useCourse } from './course-now.ts';
import { recordVisit } from './visit-form.tsx';

/** What is headed together, by the first of its parts. */
const HEADED: readonly (readonly [VisitPart, ...VisitPart[]])[] = [['harm', 'pain'], ['motion', 'wear'], ['next']];
/** Where the focus goes when a part is gone on to. */
const FIRST: Readonly<Partial<Record<VisitPart, string>>> = {
  pain: 'field-visit-pain',
  motion: 'field-visit-lacks',
  wear: 'field-visit-wear',
};

/** On a narrow screen the parts of a visit, one shown at a time. */
export function VisitTabs() {
  const store = useStore();
  const words = store.texts.value.visits;
  return (
    <nav class="turns" aria-label={words.parts}>
      {HEADED.map(([part, ...others], k) => (
        <button
          type="button"
          key={part}
          id={`visit-${part}`}
          aria-pressed={[part, ...others].includes(store.visitPart.value) && store.panel.value === null}
          onClick={() => {
            store.panel.value = null;
            store.visitPart.value = part;
            window.scrollTo(0, 0);
          }}
        >
          {k + 1} {words.part[part]}
        </button>
      ))}
    </nav>
  );
}

/** On a narrow screen the advice stays in view, a stop first of all, with the next press of the visit. */
export function VisitBar() {
  const course = useCourse();
  return course === null ? null : <Bar course={course} />;
}

function Bar({ course }: { readonly course: CourseNow }) {
  const store = useStore();
  const words = store.texts.value.visits;
  const file = store.file.value;
  const [first] = course.advice.steps;
  const isStop = first?.action === 'stop' || first?.action === 'pause';
  const at = VISIT_PARTS.indexOf(store.visitPart.value);
  const next: VisitPart | undefined = VISIT_PARTS[at + 1];
  const isWritten = course.isAhead;
  return (
    <aside class={isStop ? 'bottom-bar stop' : 'bottom-bar'} aria-label={words.next}>
      <p role={isStop ? 'alert' : undefined}>
        {first ? (
          <strong>
            {first.title}
            {first.when === null ? '' : ` (${first.when})`}. {first.message}
          </strong>
        ) : (
          <strong>{words.noVisit}</strong>
        )}
      </p>
      {next !== undefined ? (
        <button
          type="button"
          id="bar-next"
          onClick={() => {
            store.panel.value = null;
            store.visitPart.value = next;
            window.scrollTo(0, 0);
            focusNext(FIRST[next] ?? 'case-heading');
          }}
        >
          {words.nextPart}
          <span class="hidden">: {words.part[next]}</span>
        </button>
      ) : file === null ? null : isWritten ? (
        <button type="button" id="bar-record" onClick={() => recordVisit(store, file)}>
          {words.record}
        </button>
      ) : (
        <button type="button" id="bar-save" onClick={() => void saveCase(store, file)}>
          {words.save}
        </button>
      )}
    </aside>
  );
}
