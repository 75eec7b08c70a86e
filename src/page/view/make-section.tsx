import { makePattern } from '../../pattern/make-pattern.ts';
import { outputFileName } from '../../writers/output-file-name.ts';
import type { WriterFormat } from '../../writers/writer.ts';
import { saveAs } from '../save.ts';
import { sayProblem } from '../say.ts';
import { pageWriter } from '../writers.ts';
import { checkAll, focusNext, type View } from './view.ts';

const TYPES: Readonly<Record<WriterFormat, string>> = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf' };

/** The files, written by the same writers as the command's, from a pattern that was proved. */
export function MakeSection({ view }: { readonly view: View }) {
  const { texts } = view;
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
      <ul class="files">
        {(['svg', 'dxf'] as const).map((format) => (
          <li key={format}>
            <button type="button" class="main" id={`save-${format}`} onClick={() => save(view, format)}>
              {texts.make[format]}
            </button>{' '}
            <span class="hint">{texts.make[`${format}Hint`]}</span>
          </li>
        ))}
      </ul>
      <p class="caution">{texts.caution.laser}</p>
      <p class="caution">{texts.caution.skin}</p>
    </section>
  );
}

/** Makes and proves the pattern anew, writes it and hands it to the download. What cannot be written is said. */
function save(view: View, format: WriterFormat): void {
  const { texts, act } = view;
  const drawn = checkAll(view)?.derived.drawn;
  if (!drawn) {
    act.view({ said: texts.make.cannot });
    return;
  }
  const { hand, block, options, date } = drawn;
  const made = makePattern({ kind: 'strip', hand, block, options, date });
  const writer = pageWriter(format);
  const written = made.ok ? writer.write(made.value.pattern) : made;
  if (!written.ok) {
    act.view({ fileProblems: written.problems.map((p) => sayProblem(p, view.speaker).text) });
    focusNext('file-problems');
    return;
  }
  const name = outputFileName(`${hand.code}-${block.id}`, writer.extension);
  saveAs(name, written.value, TYPES[format]);
  act.view({ said: texts.make.saved(name), fileProblems: [] });
}
