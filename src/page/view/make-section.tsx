import { checkPrintScale } from '../../sheet/paper/check-print-scale.ts';
import { PAPERS } from '../../sheet/paper/paper.ts';
import type { FileKind } from '../make-file.ts';
import { printedBars } from '../print-settings.ts';
import { saveAs } from '../save.ts';
import { sayProblem } from '../translate-messages.ts';
import { Choice, Field } from './field.tsx';
import { checkAll, focusNext, type View } from './view.ts';

const FILES = ['pdf', 'handout', 'svg', 'dxf'] as const satisfies readonly FileKind[];

/** The files, written by the same writers as the command's, from a pattern that was proved; and the check of what was printed. */
export function MakeSection({ view }: { readonly view: View }) {
  const { texts, act, state } = view;
  return (
    <section id="make" aria-labelledby="make-heading">
      <h2 id="make-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          6
        </span>
        {texts.make.heading}
      </h2>
      <p>{texts.make.about}</p>
      <p class="caution">{texts.caution.heat}</p>
      <Choice
        view={view}
        where="print.paper"
        legend={texts.make.paper}
        value={state.entries.print.paper}
        choices={Object.entries(PAPERS).map(([value, paper]) => ({ value, label: paper.name }))}
        onChoose={(paper) => act.enter(({ print }) => ({ print: { ...print, paper } }))}
      />
      <ul class="files">
        {FILES.map((kind) => (
          <li key={kind}>
            <button type="button" class={kind === 'pdf' ? 'main' : undefined} id={`save-${kind}`} onClick={() => void save(view, kind)}>
              {texts.make[kind]}
            </button>
            <span class="hint">{texts.make[`${kind}Hint`]}</span>
          </li>
        ))}
      </ul>
      <ScaleCheck view={view} />
      <p class="caution">{texts.caution.laser}</p>
      <p class="caution">{texts.caution.skin}</p>
    </section>
  );
}

/** What the two bars of a print say of it, and what to do. */
function ScaleCheck({ view }: { readonly view: View }) {
  const { texts, state, format } = view;
  const bars = printedBars(state.entries.print);
  const judged = bars ? checkPrintScale(bars) : null;
  const percent = (error: number) => `${error > 0 ? '+' : ''}${format.number(100 * error, 1)}`;
  return (
    <>
      <h3>{texts.scale.heading}</h3>
      <p>{texts.scale.about}</p>
      <div class="pair">
        <Field view={view} where="print.across" label={texts.scale.across} unit={texts.mm} numeric />
        <Field view={view} where="print.along" label={texts.scale.along} unit={texts.mm} numeric />
      </div>
      <p class={judged ? 'note' : 'hidden'} id="scale-judged">
        {judged?.verdict === 'pass' ? texts.scale.good : null}
        {judged?.verdict === 'compensate' ? texts.scale.off(percent(judged.errors.across), percent(judged.errors.along)) : null}
        {judged?.verdict === 'reprint' ? texts.scale.far : null}
      </p>
    </>
  );
}

/** Makes and proves the pattern anew, writes it and hands it to the download. What cannot be written is said. */
async function save(view: View, kind: FileKind): Promise<void> {
  const { texts, act } = view;
  const now = checkAll(view);
  const drawn = now?.derived.drawn;
  if (!now || !drawn) {
    act.view({ said: texts.make.cannot });
    return;
  }
  const { fileOf } = await import('../make-file.ts');
  const file = fileOf(kind, drawn, now.state.entries.print);
  if (!file.ok) {
    act.view({ fileProblems: file.problems.map((p) => sayProblem(p, view.speaker).text) });
    focusNext('file-problems');
    return;
  }
  saveAs(file.value.name, file.value.content, file.value.type);
  act.view({ said: texts.make.saved(file.value.name), fileProblems: [] });
}
