import { makePattern } from '../../pattern/make-pattern.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { judgePrint } from '../../sheet/judge-print.ts';
import { PAPERS } from '../../sheet/paper.ts';
import type { SheetSettings } from '../../sheet/sheet-settings.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { outputFileName } from '../../writers/output-file-name.ts';
import { layOutForPdf } from '../../writers/pdf.ts';
import type { WriterFormat } from '../../writers/writer.ts';
import type { DrawnStrip } from '../derive.ts';
import { saveAs } from '../save.ts';
import { sayProblem } from '../say.ts';
import type { Entries } from '../state.ts';
import { pageWriter, printedBars, sheetSettings } from '../writers.ts';
import { Choice, Field } from './field.tsx';
import { checkAll, focusNext, type View } from './view.ts';

const TYPES: Readonly<Record<WriterFormat, string>> = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf', pdf: 'application/pdf' };

/** What can be saved: a format, and of the PDF the pattern with the making sheet, or the page for the patient. */
const FILES = ['pdf', 'handout', 'svg', 'dxf'] as const;
type FileKind = (typeof FILES)[number];

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
            <button type="button" class={kind === 'pdf' ? 'main' : undefined} id={`save-${kind}`} onClick={() => save(view, kind)}>
              {texts.make[kind]}
            </button>{' '}
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
  const judged = bars ? judgePrint(bars) : null;
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
function save(view: View, kind: FileKind): void {
  const { texts, act } = view;
  const now = checkAll(view);
  const drawn = now?.derived.drawn;
  if (!now || !drawn) {
    act.view({ said: texts.make.cannot });
    return;
  }
  const file = fileOf(kind, drawn, now.state.entries.print);
  if (!file.ok) {
    act.view({ fileProblems: file.problems.map((p: Problem) => sayProblem(p, view.speaker).text) });
    focusNext('file-problems');
    return;
  }
  saveAs(file.value.name, file.value.content, file.value.type);
  act.view({ said: texts.make.saved(file.value.name), fileProblems: [] });
}

interface MadeFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  readonly type: string;
}

function fileOf(kind: FileKind, { hand, block, options, date }: DrawnStrip, print: Entries['print']): Result<MadeFile> {
  const made = makePattern({ kind: 'strip', hand, block, options, date });
  if (!made.ok) return made;
  const { pattern } = made.value;
  const format: WriterFormat = kind === 'handout' ? 'pdf' : kind;
  const settings = settingsFor(kind, pattern, print);
  if (!settings.ok) return settings;
  const writer = pageWriter(format, settings.value);
  const written = writer.write(pattern);
  if (!written.ok) return failure(...written.problems);
  const about = kind === 'handout' ? '-handout' : settings.value.correction ? '-corrected' : '';
  const name = outputFileName(`${hand.code}-${block.id}${about}`, writer.extension);
  return success({ name, content: written.value, type: TYPES[format] });
}

/** A correction keeps the way round of the sheet whose bars were measured, or across would no longer be across. */
function settingsFor(kind: FileKind, pattern: Pattern, print: Entries['print']): Result<SheetSettings> {
  const plain = sheetSettings(print);
  if (kind === 'handout') return success({ ...plain, parts: ['handout'] });
  const bars = kind === 'pdf' ? printedBars(print) : null;
  if (!bars || judgePrint(bars).verdict !== 'compensate') return success(plain);
  const before = layOutForPdf(pattern, plain);
  return before.ok ? success({ ...plain, orientation: before.value.orientation, correction: bars }) : before;
}
