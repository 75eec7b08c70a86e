import { drawnTitle } from '../../block-words.ts';
import type { Drawn } from '../../derive.ts';
import { MouldedPicture } from '../../parts/moulded-picture.tsx';
import { PatternPicture } from '../../parts/pattern-picture.tsx';
import { SectionPicture } from '../../parts/section-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import { CSS_PIXELS_PER_MM } from '../../state.ts';
import type { Store } from '../../store.ts';
import { markRows } from '../figures/pattern-tables.tsx';

/** One picture at a time: on the hand, the section, or the flat piece. Looked at, and turned or enlarged by controls; nothing here changes the design. */
export function ResultPicture({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const which = store.picture.value;
  const { texts, current } = store;
  return (
    <div class={current.value ? 'result-picture' : 'result-picture old'}>
      {which === 'flat' || (shown.kind === 'plate' && which === 'section') ? <Flat shown={shown} /> : null}
      {which === 'section' && shown.kind === 'strip' ? (
        <div class="picture-room">
          <SectionPicture
            path={shown.figures.path}
            side={shown.hand.side}
            options={shown.options}
            texts={texts.value}
            treated={shown.hand.target?.digit ?? ''}
          />
        </div>
      ) : null}
      {which === 'hand' ? <MouldedPicture shown={shown} /> : null}
    </div>
  );
}

const ZOOM_STEP = 1.25;
const ZOOMS = { from: 0.5, to: 12 };

/** The flat piece in true proportion; it fits its room, or is enlarged and scrolled. */
function Flat({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.pattern;
  const zoom = store.zoom.value;
  const whole = store.wholeSheet.value;
  const title = words.title(shown.hand.code, texts.hand.handOf[shown.hand.side], drawnTitle(shown, texts, store.format.value));
  const perMm = zoom === 'actual' ? (store.screen.value?.pixelsPerMm ?? CSS_PIXELS_PER_MM) : null;
  const zoomBy = (factor: number) => {
    store.zoom.value = Math.min(ZOOMS.to, Math.max(ZOOMS.from, (zoom === 'actual' ? 1 : zoom) * factor));
  };
  return (
    <>
      {/* A region that scrolls must be reachable by keys. */}
      <section
        class="scroll flat"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
        tabIndex={0}
        aria-label={words.scroll}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          if (event.key === '+' || event.key === '=') zoomBy(ZOOM_STEP);
          else if (event.key === '-') zoomBy(1 / ZOOM_STEP);
          else if (event.key === '0') store.zoom.value = 1;
          else return;
          event.preventDefault();
        }}
      >
        <PatternPicture
          pattern={shown.pattern}
          whole={whole}
          title={title}
          description={describe(store, shown)}
          pixelsPerMm={perMm}
          zoom={zoom === 'actual' ? 1 : zoom}
        />
      </section>
      <div class="picture-tools">
        <button type="button" aria-label={words.zoomOut} onClick={() => zoomBy(1 / ZOOM_STEP)}>
          −
        </button>
        <button type="button" aria-label={words.zoomIn} onClick={() => zoomBy(ZOOM_STEP)}>
          +
        </button>
        <button type="button" aria-pressed={zoom === 1} onClick={() => (store.zoom.value = 1)}>
          {words.fit}
        </button>
        <button type="button" aria-pressed={zoom === 'actual'} onClick={() => (store.zoom.value = 'actual')}>
          {words.actual}
        </button>
        <button type="button" aria-pressed={whole} onClick={() => (store.wholeSheet.value = !whole)}>
          {words.wholeSheet}
        </button>
      </div>
    </>
  );
}

/** What the picture shows, in words. */
function describe(store: Store, shown: Drawn): string {
  const texts = store.texts.value;
  const format = store.format.value;
  if (shown.kind === 'strip') {
    const { flatLength, flatWidth } = shown.report;
    return texts.pattern.description(format.mm(flatLength), format.mm(flatWidth), markRows(texts, shown).length - 1);
  }
  const parts = shown.report.faces.map(
    (face) => `${texts.plate.face[face.face]} ${format.mm(face.width)} ${texts.plate.by} ${format.mm(face.length)}`,
  );
  return texts.plate.description(parts.join('; '));
}
