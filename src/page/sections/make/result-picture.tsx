import { heldPlace } from '../../../block/block.ts';
import { degrees } from '../../../units/angle.ts';
import { plain } from '../../../units/number.ts';
import { drawnTitle } from '../../block-words.ts';
import type { Drawn, DrawnStrip } from '../../derive.ts';
import { type Facet, mouldedView } from '../../parts/moulded-view.ts';
import { PatternPicture } from '../../parts/pattern-picture.tsx';
import { SectionPicture } from '../../parts/section-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import { CSS_PIXELS_PER_MM, FRONT } from '../../state.ts';
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
          <SectionPicture path={shown.figures.path} side={shown.hand.side} options={shown.options} texts={texts.value} />
        </div>
      ) : null}
      {which === 'hand' ? shown.kind === 'strip' ? <Moulded shown={shown} /> : <Flat shown={shown} /> : null}
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
  const title = words.title(shown.hand.code, texts.handOf[shown.hand.side], drawnTitle(shown, texts, store.format.value));
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

const STEP = 15;
const HIGHEST = 90;
/** Degrees that a mouse turns it by for a CSS pixel. */
const DRAG = 0.5;

/** The strip worn; turned by dragging with a mouse, by buttons and by keys. A finger's swipe scrolls the page. */
function Moulded({ shown }: { readonly shown: DrawnStrip }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.pattern;
  const turn = store.rotation.value;
  const moulded = mouldedView(shown.figures, shown.hand, turn);
  const { sections } = shown.figures.path.hand;
  const mean = heldPlace(shown.block) === 'raised' ? Math.max : Math.min;
  const straight = mean(...sections.map((s) => s.theta));
  const angles = sections.map((s) => {
    const angle = degrees(s.theta - straight);
    const bend = Math.abs(angle) < 0.05 ? words.bendNone : angle > 0 ? words.bendFlexion : words.bendExtension;
    return words.mouldedDigit(texts.digit[s.digit], store.format.value.number(Math.abs(angle), 0), bend);
  });
  const move = (across: number, up: number) => {
    const now = store.rotation.peek();
    store.rotation.value = {
      across: ((now.across + across + 540) % 360) - 180,
      up: Math.min(HIGHEST, Math.max(-HIGHEST, now.up + up)),
    };
  };
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => move(-STEP, 0),
    ArrowRight: () => move(STEP, 0),
    ArrowUp: () => move(0, STEP),
    ArrowDown: () => move(0, -STEP),
    Home: () => (store.rotation.value = FRONT),
  };
  return (
    <>
      <div
        class="picture-room turns"
        onPointerDown={(event) => {
          if (event.pointerType !== 'mouse' || event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          event.preventDefault();
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) move(event.movementX * DRAG, event.movementY * DRAG);
        }}
      >
        <svg
          class="moulded"
          viewBox={[moulded.minX, moulded.minY, moulded.width, moulded.height].map((n) => plain(n, 2)).join(' ')}
          role="img"
          aria-labelledby="moulded-title moulded-description"
        >
          <title id="moulded-title">{words.moulded}</title>
          <desc id="moulded-description">{words.mouldedDescription(angles.join('; '))}</desc>
          {runs(moulded.facets).map(({ name, data }, k) => (
            // The order is the picture: nearer shapes lie over farther ones, and a shape has no name of its own.
            <path key={k} class={name} d={data} />
          ))}
        </svg>
      </div>
      <fieldset
        class="picture-tools plain"
        aria-label={words.moulded}
        onKeyDown={(event) => {
          const act = keys[event.key];
          if (!act) return;
          event.preventDefault();
          act();
        }}
      >
        <button type="button" aria-label={words.turn.left} onClick={() => move(-STEP, 0)}>
          ⟲
        </button>
        <button type="button" aria-label={words.turn.right} onClick={() => move(STEP, 0)}>
          ⟳
        </button>
        <button type="button" aria-label={words.turn.up} onClick={() => move(0, STEP)}>
          ↑
        </button>
        <button type="button" aria-label={words.turn.down} onClick={() => move(0, -STEP)}>
          ↓
        </button>
        <button type="button" onClick={() => (store.rotation.value = FRONT)}>
          {words.turn.home}
        </button>
      </fieldset>
    </>
  );
}

/** Facets that follow each other with the same look, as one path each: fewer elements, the same picture. */
function runs(facets: readonly Facet[]): readonly { readonly name: string; readonly data: string }[] {
  const list: { name: string; data: string }[] = [];
  for (const { kind, shade, points } of facets) {
    const name = `${kind} shade-${shade}`;
    const data = `M${points.map((p) => `${plain(p.x, 1)} ${plain(p.y, 1)}`).join('L')}Z`;
    const last = list.at(-1);
    if (last?.name === name) last.data += data;
    else list.push({ name, data });
  }
  return list;
}
