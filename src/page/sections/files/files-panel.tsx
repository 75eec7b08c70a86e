import { LONGEST_CODE } from '../../../hand/case-code.ts';
import { LONGEST_NOTE } from '../../../hand/hand-schema.ts';
import { checkPrintScale } from '../../../sheet/paper/check-print-scale.ts';
import type { FileKind } from '../../make-file.ts';
import { Tick } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { Panel, PanelButton } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { printedBars, printIn } from '../../print-settings.ts';
import { savePattern, saveWork } from '../../save-files.ts';
import { SCREEN_RANGE } from '../../state.ts';

const FILES = ['pdf', 'handout', 'svg', 'dxf'] as const satisfies readonly FileKind[];

/** The files, the check of what was printed, the screen's true size, and what this browser keeps. */
export function FilesPanel() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.files;
  const unit = texts[store.settings.value.unit];
  const { example, invented } = store.entries.value;
  return (
    <Panel name="files" heading={words.heading}>
      <Field where="code" label={words.code} hint={words.codeHint} longest={2 * LONGEST_CODE} tidy={(text) => text.trim().toUpperCase()} />
      <div class="buttons">
        {FILES.map((kind) => (
          <button type="button" key={kind} id={`save-${kind}`} onClick={() => void savePattern(store, kind)}>
            {words[kind]}
          </button>
        ))}
        <button type="button" id="save-hand" onClick={() => void saveWork(store)}>
          {words.hand}
        </button>
      </div>
      <p class="saved" aria-hidden="true">
        {store.saved.value}
      </p>
      <p class="caution">
        {words.laser}: {texts.caution.laser}
      </p>
      <h3>{words.checkHeading}</h3>
      <p class="hint">{words.check}</p>
      <div class="pair">
        <Field where="print.across" label={words.across} unit={unit} numeric />
        <Field where="print.along" label={words.along} unit={unit} numeric />
      </div>
      <ScaleVerdict />
      <h3>{words.screenHeading}</h3>
      <ScreenSize />
      <h3>{words.keepHeading}</h3>
      <Tick
        where="keep"
        label={words.keep}
        checked={store.keep.value}
        describedBy="keep-hint"
        onChange={(on) => {
          store.keep.value = on;
          // Where the browser keeps nothing, the switch is off again by now, and that was said.
          if (store.keep.value === on) store.said.value = on ? words.keeping : words.forgotten;
        }}
      />
      <p class="hint" id="keep-hint">
        {words.keepHint}
      </p>
      <Field where="note" label={words.note} hint={words.noteHint} optional longest={LONGEST_NOTE} />
      {example ? null : (
        <Tick
          where="invented"
          label={words.invented}
          checked={invented}
          onChange={(is) => store.enter({ where: 'invented', value: words.invented }, () => ({ invented: is }))}
        />
      )}
      <div class="buttons">
        <PanelButton name="about">{texts.about.open}</PanelButton>
      </div>
    </Panel>
  );
}

/** What the two bars of a print say of it, and what to do. */
function ScaleVerdict() {
  const store = useStore();
  const words = store.texts.value.files;
  const format = store.format.value;
  const bars = printedBars(printIn(store.entries.value.print, store.settings.value.unit));
  if (!bars) return null;
  const judged = checkPrintScale(bars);
  const percent = (error: number) => `${error > 0 ? '+' : ''}${format.number(100 * error, 1)}`;
  return (
    <p class="note" id="scale-judged">
      {judged.verdict === 'pass' ? words.good : null}
      {judged.verdict === 'compensate' ? words.off(percent(judged.errors.across), percent(judged.errors.along)) : null}
      {judged.verdict === 'reprint' ? words.far : null}
    </p>
  );
}

/** ID-1, mm (ISO/IEC 7810); corners between 2.88 and 3.48. */
const CARD = { width: 85.6, height: 53.98, corner: 3.18 };
const STEP = 0.02;

/** Sets the screen's true size by laying a bank card on it. */
function ScreenSize() {
  const store = useStore();
  const words = store.texts.value.files;
  const size = store.cardPixelsPerMm.value;
  const screen = store.screen.value;
  const isStale = screen !== null && Math.abs(screen.pixelRatio - store.pixelRatio.value) > 1e-6;
  const change = (by: number) => {
    store.cardPixelsPerMm.value = Math.min(SCREEN_RANGE.to, Math.max(SCREEN_RANGE.from, size + by));
  };
  return (
    <>
      <p class="hint">{words.screen}</p>
      <p class="note">{isStale ? words.screenAgain : screen ? words.screenSet : words.screenNot}</p>
      <div class="buttons">
        <button type="button" onClick={() => change(-STEP)}>
          {words.smaller}
        </button>
        <button type="button" onClick={() => change(STEP)}>
          {words.larger}
        </button>
        <button
          type="button"
          onClick={() => {
            store.screen.value = { pixelsPerMm: size, pixelRatio: store.pixelRatio.peek() };
            store.said.value = words.screenSet;
          }}
        >
          {words.fits}
        </button>
      </div>
      <input
        type="range"
        min={SCREEN_RANGE.from}
        max={SCREEN_RANGE.to}
        step={STEP}
        value={size}
        aria-label={words.slider}
        aria-valuetext={`${store.format.value.number(size * CARD.width, 0)} px`}
        onInput={(event) => {
          store.cardPixelsPerMm.value = Number(event.currentTarget.value);
        }}
      />
      {/* A wide outline scrolls, and what scrolls must be reachable by keys. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section class="scroll" tabIndex={0} aria-label={words.card}>
        <svg
          id="card"
          role="img"
          aria-label={words.card}
          viewBox={`-0.5 -0.5 ${CARD.width + 1} ${CARD.height + 1}`}
          style={{ width: `${(CARD.width + 1) * size}px` }}
        >
          <rect x="0" y="0" width={CARD.width} height={CARD.height} rx={CARD.corner} />
        </svg>
      </section>
    </>
  );
}
