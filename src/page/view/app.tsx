import type { Page } from '../store.ts';
import { BlockSection } from './block-section.tsx';
import { Spoken } from './field.tsx';
import { HandSection } from './hand-section.tsx';
import { Header } from './header.tsx';
import { MakeSection } from './make-section.tsx';
import { Memo } from './memo.ts';
import { MotionSection } from './motion-section.tsx';
import { OptionsSection } from './options-section.tsx';
import { PatternSection } from './pattern-section.tsx';
import { SizeSection } from './size-section.tsx';
import { TrialsSection } from './trials-section.tsx';
import { checkAll, focusField, focusNext, type View, viewOf } from './view.ts';

/** The whole road on one page, in the order of the work. */
export function App({ page }: { readonly page: Page }) {
  const view = viewOf(page);
  const { texts, derived } = view;
  // The first field is there as early as can be; all else follows a frame later.
  const isFirst = derived.cards.length === 0;
  return (
    <>
      <a class="skip" href="#hand-heading">
        {texts.skip}
      </a>
      <Memo of={[view.state.settings, view.state.entries]} draw={() => <Header view={view} />} />
      <main>
        <ErrorSummary view={view} />
        <form
          noValidate
          autocomplete="off"
          onSubmit={(event) => {
            event.preventDefault();
            if (checkAll(view)) focusNext('pattern-heading');
          }}
        >
          <div class="entries">
            <HandSection view={view} />
            {isFirst ? null : <RestOfEntries view={view} />}
          </div>
          <div class="results">{isFirst ? null : <Results view={view} />}</div>
        </form>
      </main>
      <footer>
        <p>{texts.caution.licensed}</p>
      </footer>
    </>
  );
}

function RestOfEntries({ view }: { readonly view: View }) {
  const { texts, state, derived, faults } = view;
  const { entries, settings, viewing } = state;
  const common = [settings, faults.length === 0 ? null : faults, viewing.checked, viewing.left];
  return (
    <>
      <Memo
        of={[...common, entries.target, entries.deficits, entries.flags, entries.hypermobile]}
        draw={() => <MotionSection view={view} />}
      />
      <Memo
        of={[
          settings,
          derived.cards,
          derived.plan,
          derived.block?.id,
          entries.block,
          entries.places,
          entries.plate,
          entries.palm,
          viewing.checked,
          viewing.left,
          entries.side,
          entries.clinicianConfirms,
          derived.blockProblems.length === 0 ? null : derived,
        ]}
        draw={() => <BlockSection view={view} />}
      />
      <Memo of={[...common, entries.options, entries.date]} draw={() => <OptionsSection view={view} />} />
      <button type="submit" class="main" id="draw">
        {texts.pattern.draw}
      </button>
    </>
  );
}

function Results({ view }: { readonly view: View }) {
  const { state } = view;
  const { entries, settings, viewing } = state;
  return (
    <>
      <PatternSection view={view} />
      <Memo of={[settings, viewing.screen, viewing.cardPixelsPerMm, devicePixelRatio]} draw={() => <SizeSection view={view} />} />
      <Memo of={[settings, entries.print]} draw={() => <MakeSection view={view} />} />
      <Memo
        of={[settings, state.file, entries.visit, viewing.keep, viewing.fileProblems, viewing.changed]}
        draw={() => <TrialsSection view={view} />}
      />
    </>
  );
}

/** After a check: every problem, each a link to its field; takes the focus. */
function ErrorSummary({ view }: { readonly view: View }) {
  const { texts, faults, state } = view;
  if (!state.viewing.checked || faults.length === 0) return null;
  return (
    <section id="errors" class="errors" tabIndex={-1} aria-labelledby="errors-heading">
      <h2 id="errors-heading">{texts.errors.heading}</h2>
      <ul>
        {faults.map((fault) => (
          <li key={fault.field + fault.sentence.text}>
            <a
              href={`#field-${fault.field}`}
              onClick={(event) => {
                event.preventDefault();
                focusField(fault.field);
              }}
            >
              <Spoken sentence={fault.sentence} />
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
