import { useEffect, useState } from 'preact/hooks';
import type { Place } from '../../block/block.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { NUMBER_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { parseDegrees } from '../../units/degrees-text.ts';
import { plain } from '../../units/number.ts';
import { drawnTitle } from '../block-words.ts';
import type { Drawn, DrawnStrip } from '../derive.ts';
import { CSS_PIXELS_PER_MM, setEntry } from '../state.ts';
import { sayWarning } from '../translate-messages.ts';
import { Spoken } from './field.tsx';
import { Memo } from './memo.ts';
import { MouldedPicture } from './moulded-picture.tsx';
import { OptionField } from './options-section.tsx';
import { PatternPicture } from './pattern-picture.tsx';
import { FiguresTable, MarksTable, markRows, PlateTable } from './pattern-tables.tsx';
import { SectionPicture } from './section-picture.tsx';
import type { View } from './view.ts';

const ZOOM_STEP = 1.25;
const ZOOMS = { from: 0.5, to: 12 };

/** The strip in true proportion, the section beside it, the moulded view, every figure in tables, and the warnings. */
export function PatternSection({ view }: { readonly view: View }) {
  const { texts, shown, current, faults, state } = view;
  return (
    <section id="pattern" aria-labelledby="pattern-heading">
      <h2 id="pattern-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          5
        </span>
        {texts.pattern.heading}
      </h2>
      <StatusLine view={view} />
      {shown === null ? <p class="note">{texts.pattern.empty}</p> : null}
      {shown && !current ? (
        <div class="note kept">
          <p>
            <strong>{texts.pattern.kept}</strong>
          </p>
          {state.viewing.checked || state.entries.block === 'own' ? (
            <>
              <p>{texts.pattern.fault}:</p>
              <ul>
                {faults.map((fault) => (
                  <li key={fault.field + fault.sentence.text}>
                    <Spoken sentence={fault.sentence} />
                  </li>
                ))}
              </ul>
            </>
          ) : null}
        </div>
      ) : null}
      {shown ? <Shown view={view} shown={shown} /> : null}
      {shown === null ? <Differential view={view} /> : null}
    </section>
  );
}

function Shown({ view, shown }: { readonly view: View; readonly shown: Drawn }) {
  const { texts, act, format, state, current } = view;
  const { zoom, wholeSheet } = state.viewing;
  const title = texts.pattern.title(shown.hand.code, texts.handOf[shown.hand.side], drawnTitle(shown, texts, format));
  return (
    <div class={current ? 'shown' : 'shown old'}>
      <h3>{title}</h3>
      <Warnings view={view} shown={shown} />
      <ZoomBar view={view} />
      {/* A region that scrolls must be reachable by keys; the keys for zoom are the buttons' own. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section class="scroll" tabIndex={0} aria-label={texts.pattern.scroll} onKeyDown={(event) => zoomKeys(view, event)}>
        <PatternPicture
          pattern={shown.pattern}
          whole={wholeSheet}
          title={title}
          description={describe(view, shown)}
          pixelsPerMm={zoom === 'actual' ? (state.viewing.screen?.pixelsPerMm ?? CSS_PIXELS_PER_MM) : null}
          zoom={zoom === 'actual' ? 1 : zoom}
        />
      </section>
      <label class="pick">
        <input
          type="checkbox"
          checked={wholeSheet}
          onChange={(event) => {
            const whole = event.currentTarget.checked;
            act.view({ wholeSheet: whole });
          }}
        />
        <span>
          {texts.pattern.show} {texts.pattern.wholeSheet}
        </span>
      </label>
      <p class="hint">{texts.pattern.lettering}</p>
      {shown.kind === 'strip' ? <StripViews view={view} shown={shown} /> : <PlateTable view={view} shown={shown} />}
      <p class="caution">{texts.caution.model}</p>
    </div>
  );
}

/** What the picture shows, in words. */
function describe(view: View, shown: Drawn): string {
  const { texts, format } = view;
  if (shown.kind === 'strip') {
    const { flatLength, flatWidth } = shown.report;
    return texts.pattern.description(format.mm(flatLength), format.mm(flatWidth), markRows(view, shown).length - 1);
  }
  const parts = shown.report.faces.map(
    (face) => `${texts.plate.face[face.face]} ${format.mm(face.width)} ${texts.plate.by} ${format.mm(face.length)}`,
  );
  return texts.plate.description(parts.join('; '));
}

function StripViews({ view, shown }: { readonly view: View; readonly shown: DrawnStrip }) {
  const { texts, state, derived } = view;
  return (
    <>
      <div class="views">
        <div>
          <h3>{texts.pattern.section}</h3>
          <SectionPicture
            path={shown.figures.path}
            side={shown.hand.side}
            options={shown.options}
            texts={texts}
            places={{ of: (digit) => placeOf(view, shown, digit), change: (digit, place) => changePlace(view, shown, digit, place) }}
          />
          <p class="hint" id="section-keys">
            {texts.pattern.sectionKeys}
          </p>
          <Differential view={view} />
        </div>
        {/* It takes longer than the rest and follows when typing pauses. */}
        <Memo
          of={[state.settings, state.viewing.turn, shown]}
          hold={!derived.settled}
          draw={() => <MouldedPicture view={view} shown={shown} />}
        />
      </div>
      <div class="tables">
        <FiguresTable view={view} shown={shown} />
        <MarksTable view={view} shown={shown} />
      </div>
    </>
  );
}

/** The one polite status line. What follows from typing is said only after a pause. */
function StatusLine({ view }: { readonly view: View }) {
  const { texts, shown, current, faults, state } = view;
  const summary =
    current && shown
      ? drawnWords(view, shown)
      : !state.viewing.changed && shown === null && state.entries.code === ''
        ? texts.status.empty
        : faults.length === 1
          ? texts.status.leftOne
          : texts.status.left(faults.length);
  const [text, setText] = useState(summary);
  useEffect(() => {
    const pause = setTimeout(() => setText(summary), 500);
    return () => clearTimeout(pause);
  }, [summary]);
  const { said } = state.viewing;
  useEffect(() => {
    if (said !== '') setText(said);
  }, [said]);
  return (
    <p class="status" role="status">
      {text}
    </p>
  );
}

function drawnWords({ texts, format }: View, shown: Drawn): string {
  const title = drawnTitle(shown, texts, format);
  return shown.kind === 'strip' ? texts.status.drawn(format.mm(shown.report.flatLength), title) : texts.plate.drawn(title);
}

function Warnings({ view, shown }: { readonly view: View; readonly shown: Drawn }) {
  const { texts } = view;
  if (shown.warnings.length === 0) return <p>{texts.pattern.noWarnings}</p>;
  return (
    <div class="warnings">
      <h4>{texts.pattern.warnings}</h4>
      <ul>
        {shown.warnings.map((warning) => (
          <li key={warning.code + warning.message}>
            <Spoken sentence={sayWarning(warning, view.speaker)} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function ZoomBar({ view }: { readonly view: View }) {
  const { texts, state, act } = view;
  const { zoom } = state.viewing;
  return (
    <fieldset class="buttons plain" aria-label={texts.pattern.zoom}>
      <button type="button" onClick={() => zoomBy(view, 1 / ZOOM_STEP)}>
        {texts.pattern.zoomOut}
      </button>
      <button type="button" onClick={() => zoomBy(view, ZOOM_STEP)}>
        {texts.pattern.zoomIn}
      </button>
      <button type="button" aria-pressed={zoom === 1} onClick={() => act.view({ zoom: 1, said: texts.status.zoom(100) })}>
        {texts.pattern.fit}
      </button>
      <button type="button" aria-pressed={zoom === 'actual'} onClick={() => act.view({ zoom: 'actual', said: texts.pattern.actual })}>
        {texts.pattern.actual}
      </button>
    </fieldset>
  );
}

function zoomBy({ act, texts }: View, factor: number): void {
  act.view((now) => {
    const zoom = Math.min(ZOOMS.to, Math.max(ZOOMS.from, (now.zoom === 'actual' ? 1 : now.zoom) * factor));
    return { zoom, said: texts.status.zoom(Math.round(100 * zoom)) };
  });
}

function zoomKeys(view: View, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === '+' || event.key === '=') zoomBy(view, ZOOM_STEP);
  else if (event.key === '-') zoomBy(view, 1 / ZOOM_STEP);
  else if (event.key === '0') view.act.view({ zoom: 1, said: view.texts.status.zoom(100) });
  else return;
  event.preventDefault();
}

/** A slider and a field for the same angle; both move the digits in the section. */
function Differential({ view }: { readonly view: View }) {
  const { texts, act, state, format } = view;
  const option = NUMBER_OPTIONS.find((o) => o.key === 'differential');
  if (!option) return null;
  const parsed = parseDegrees(state.entries.options.differential);
  const value = parsed.ok ? Math.min(option.high, Math.max(option.low, parsed.degrees)) : option.default;
  return (
    <div class="differential">
      <OptionField view={view} option={option} />
      <input
        type="range"
        min={option.low}
        max={option.high}
        step={1}
        value={value}
        aria-label={texts.options.differentialSlider}
        aria-valuetext={format.degrees(value)}
        onInput={(event) => {
          const typed = plain(Number(event.currentTarget.value)).replace('.', state.settings.decimal);
          act.enter((now) => setEntry(now, 'differential', typed));
        }}
      />
    </div>
  );
}

/** The place as the person set it, which the picture may not show yet since the block cannot be made. */
function placeOf({ state }: View, shown: DrawnStrip, digit: DigitName): Place {
  const own = state.entries.block === 'own' ? state.entries.places[digit] : 'out';
  return own === 'out' ? (shown.block.places[digit] ?? 'enclosed') : own;
}

function changePlace({ act, texts }: View, shown: DrawnStrip, digit: DigitName, place: Place): void {
  act.enter((now) => {
    const places = now.block === 'own' ? now.places : Object.fromEntries(DIGITS.map((d) => [d, shown.block.places[d] ?? 'out']));
    return { block: 'own', places: { ...(places as typeof now.places), [digit]: place } };
  });
  act.view({ said: texts.status.place(texts.digit[digit], texts.place[place]) });
}
