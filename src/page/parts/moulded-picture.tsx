import { useMemo, useRef } from 'preact/hooks';
import { heldPlace } from '../../block/block.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { DrawnShape } from '../../pattern/drawing.ts';
import { drawMoulded } from '../../picture/moulded-hand.ts';
import { degrees } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import type { DrawnStrip } from '../derive.ts';
import { FRONT } from '../state.ts';
import type { Store } from '../store.ts';
import { DrawnShapes } from './drawn-shapes.tsx';
import { useMouldedScene } from './moulded-scene.ts';
import { useStore } from './store-context.ts';

const STEP = 15;
const HIGHEST = 90;
/** Degrees that a mouse turns it by for a CSS pixel. */
const DRAG = 0.5;
/** Squares that the picture is found on: at rest, and while it is dragged. */
const SQUARES = { rest: 300, dragged: 170 } as const;
const LETTERS = 5;

/** The hand with the strip worn; turned by dragging with a mouse, by buttons and by keys. A finger's swipe scrolls the page. */
export function MouldedPicture({ shown }: { readonly shown: DrawnStrip }) {
  const store = useStore();
  const words = store.texts.value.pattern;
  const move = (across: number, up: number) => {
    const now = store.rotation.peek();
    store.rotation.value = {
      across: ((now.across + across + 540) % 360) - 180,
      up: Math.min(HIGHEST, Math.max(-HIGHEST, now.up + up)),
    };
  };
  const dragged = useDragging(store, move);
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => move(-STEP, 0),
    ArrowRight: () => move(STEP, 0),
    ArrowUp: () => move(0, STEP),
    ArrowDown: () => move(0, -STEP),
    Home: () => (store.rotation.value = FRONT),
  };
  return (
    <>
      <div class="picture-room turns" {...dragged}>
        <Moulded shown={shown} />
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

/** Moves of a pressed mouse, gathered to one turn a frame. */
function useDragging(store: Store, move: (across: number, up: number) => void) {
  const waiting = useRef<{ across: number; up: number } | null>(null);
  return {
    onPointerDown(event: PointerEvent) {
      if (event.pointerType !== 'mouse' || event.button !== 0) return;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      event.preventDefault();
      store.dragging.value = true;
    },
    onPointerMove(event: PointerEvent) {
      if (!(event.currentTarget as Element).hasPointerCapture(event.pointerId)) return;
      const before = waiting.current;
      waiting.current = { across: (before?.across ?? 0) + event.movementX * DRAG, up: (before?.up ?? 0) + event.movementY * DRAG };
      if (before) return;
      requestAnimationFrame(() => {
        const by = waiting.current;
        waiting.current = null;
        if (by) move(by.across, by.up);
      });
    },
    onLostPointerCapture() {
      store.dragging.value = false;
    },
  };
}

function Moulded({ shown }: { readonly shown: DrawnStrip }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.pattern;
  const { across, up } = store.rotation.value;
  const squares = store.dragging.value ? SQUARES.dragged : SQUARES.rest;
  const { scene, current } = useMouldedScene(shown);
  const drawn = useMemo(() => scene && drawMoulded(scene, { across, up, squares }), [scene, across, up, squares]);
  const shapes = useMemo(
    () => drawn && <DrawnShapes items={drawn.drawing.items as readonly DrawnShape[]} extents={drawn.drawing.extents} />,
    [drawn],
  );
  if (!drawn) return null;
  const { extents } = drawn.drawing;
  const name = (text: string, { x, y }: { readonly x: number; readonly y: number }, isTreated = false) => (
    <text
      class={isTreated ? 'name treated-name' : 'name'}
      key={text}
      x={plain(x - extents.minX, 1)}
      y={plain(extents.maxY - y, 1)}
      font-size={LETTERS}
    >
      {text}
    </text>
  );
  return (
    <svg
      class={current ? 'moulded inked' : 'moulded inked waiting'}
      viewBox={`${-LETTERS} ${-LETTERS} ${plain(extents.maxX + 2 * LETTERS, 1)} ${plain(extents.maxY + 2 * LETTERS, 1)}`}
      role="img"
      aria-labelledby="moulded-title moulded-description"
    >
      <title id="moulded-title">{words.moulded}</title>
      <desc id="moulded-description">{words.mouldedDescription(anglesOf(store, shown).join('; '))}</desc>
      {shapes}
      <g>
        {[...drawn.fingers].map(([digit, { tip }]) => name(texts.digitShort[digit], below(tip), digit === shown.hand.target?.digit))}
        {name(texts.measure.thumb, drawn.thumbTip)}
      </g>
    </svg>
  );
}

/** A name stands a little beyond the tip. */
function below({ x, y }: { readonly x: number; readonly y: number }) {
  return { x, y: y - LETTERS };
}

/** "ring finger 20 degrees flexed": what the picture shows, in words. */
function anglesOf(store: Store, { figures, block }: DrawnStrip): readonly string[] {
  const texts = store.texts.value;
  const words = texts.pattern;
  const { sections } = figures.path.hand;
  const mean = heldPlace(block) === 'raised' ? Math.max : Math.min;
  const straight = mean(...sections.map((s) => s.theta));
  return sections.map((s: { readonly digit: DigitName; readonly theta: number }) => {
    const angle = degrees(s.theta - straight);
    const bend = Math.abs(angle) < 0.05 ? words.bendNone : angle > 0 ? words.bendFlexion : words.bendExtension;
    return words.mouldedDigit(texts.digit[s.digit], store.format.value.number(Math.abs(angle), 0), bend);
  });
}
