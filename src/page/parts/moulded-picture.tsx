import { useMemo, useRef } from 'preact/hooks';
import { heldPlace } from '../../block/block.ts';
import type { Box, Point } from '../../geometry/path.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { DrawnShape } from '../../pattern/drawing.ts';
import { type DrawnMoulded, drawMoulded } from '../../picture/moulded-hand.ts';
import { add, mix } from '../../picture/vec.ts';
import { degrees } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import { resultSentence } from '../arrangement-words.ts';
import type { Drawn, DrawnStrip } from '../derive.ts';
import { frontOf, type Rotation } from '../state.ts';
import type { Store } from '../store.ts';
import { DrawnShapes, useLetters } from './drawn-shapes.tsx';
import { useMouldedScene } from './moulded-scene.ts';
import { useStore } from './store-context.ts';

const STEP = 15;
const HIGHEST = 90;
/** Degrees that a mouse turns it by for a CSS pixel. */
const DRAG = 0.5;
/** Squares that the picture is found on: at rest, and while it is dragged. */
const SQUARES = { rest: 300, dragged: 170 } as const;

/** The hand with the strip or plate worn; turned by dragging with a mouse, by buttons and by keys. A finger's swipe scrolls the page. */
export function MouldedPicture({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const words = store.texts.value.pattern;
  const move = (across: number, up: number) => {
    const now = store.rotation.peek() ?? frontOf(shown.hand.side);
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
    Home: () => (store.rotation.value = null),
  };
  return (
    <>
      <div class="picture-room turns" {...dragged}>
        <Moulded shown={shown} />
      </div>
      {/* One stop for Tab, since the keys do all that the buttons do. */}
      <fieldset
        class="picture-tools plain"
        aria-label={`${words.moulded}: ${words.turnKeys}`}
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
        <button type="button" tabIndex={-1} aria-label={words.turn.right} onClick={() => move(STEP, 0)}>
          ⟳
        </button>
        <button type="button" tabIndex={-1} aria-label={words.turn.up} onClick={() => move(0, STEP)}>
          ↑
        </button>
        <button type="button" tabIndex={-1} aria-label={words.turn.down} onClick={() => move(0, -STEP)}>
          ↓
        </button>
        <button type="button" tabIndex={-1} onClick={() => (store.rotation.value = null)}>
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

/** The hand with the strip or plate worn, as it is turned; nothing until it is modelled. */
export function Moulded({ shown }: { readonly shown: Drawn }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.pattern;
  const { across, up }: Rotation = store.rotation.value ?? frontOf(shown.hand.side);
  // A plate of the palm is looked at from the palm.
  const roll = shown.kind === 'plate' && shown.design.faces === 'palmar' ? 180 : 0;
  const squares = store.dragging.value ? SQUARES.dragged : SQUARES.rest;
  const { scene, current } = useMouldedScene(shown);
  const drawn = useMemo(() => scene && drawMoulded(scene, { roll, across, up, squares }), [scene, roll, across, up, squares]);
  const shapes = useMemo(
    () => drawn && <DrawnShapes items={drawn.drawing.items as readonly DrawnShape[]} extents={drawn.drawing.extents} />,
    [drawn],
  );
  const picture = useRef<SVGSVGElement>(null);
  const scale = drawn?.posed.shape.scale ?? 1;
  const letters = useLetters(picture, { width: drawn?.drawing.extents.maxX ?? 1, height: drawn?.drawing.extents.maxY ?? 1 }, 2, scale);
  if (!drawn) return null;
  const { extents } = drawn.drawing;
  const named = (text: string, { x, y }: Point, isTreated = false): Name => {
    const half = halfWidth(text, letters);
    return { text, isTreated, half, x: within(x, half - letters, extents), y };
  };
  const names = apart(
    [
      ...[...drawn.fingers].map(([digit, finger]) => {
        const text = texts.hand.short[digit];
        const others = [...drawn.fingers.values()].filter((other) => other !== finger);
        const at = besideOthers(below(finger.tip, letters), halfWidth(text, letters) + scale * HALF_FINGER, others);
        return named(text, at, digit === shown.hand.target?.digit);
      }),
      named(texts.measure.thumb, drawn.thumbTip),
      ...facesInSight(drawn, roll === 0 ? up : -up).map(({ face, at }) => named(texts.measure.face[face], at)),
    ],
    letters,
  );
  // A name that was moved down is seen whole, its descenders with it.
  const lowest = Math.max(extents.maxY + letters, ...names.map(({ y }) => extents.maxY - y + 0.3 * letters));
  return (
    <svg
      ref={picture}
      class={current ? 'moulded inked' : 'moulded inked waiting'}
      viewBox={[-letters, -letters, extents.maxX + 2 * letters, lowest + letters].map((n) => plain(n, 1)).join(' ')}
      role="img"
      aria-labelledby="moulded-title moulded-description"
    >
      <title id="moulded-title">{words.moulded}</title>
      <desc id="moulded-description">
        {shown.kind === 'strip'
          ? words.mouldedDescription(anglesOf(store, shown).join('; '))
          : resultSentence(shown, texts, store.format.value)}
      </desc>
      {shapes}
      <g>
        {names.map(({ text, isTreated, x, y }) => (
          <text
            class={isTreated ? 'name treated-name' : 'name'}
            key={text}
            x={plain(x - extents.minX, 1)}
            y={plain(extents.maxY - y, 1)}
            font-size={plain(letters, 2)}
          >
            {text}
          </text>
        ))}
      </g>
    </svg>
  );
}

/** How far a side of the hand must be turned to the viewer to be named, degrees. */
const TURNED = 8;
/** Where its name stands: from the wrist toward the fingers, a share of the way to the MP joints. */
const NAMED_AT = 0.3;

/** Which of back and palm are in sight, and where their names may stand. @param up how far the back is turned to the viewer, degrees */
function facesInSight({ posed, at }: DrawnMoulded, up: number) {
  const long = posed.fingers[Math.min(1, posed.fingers.length - 1)]?.joints[0] ?? posed.wrist;
  const middle = mix(posed.wrist, long, NAMED_AT);
  const faces = (['back', 'palm'] as const).filter((face) => (face === 'back' ? up > -TURNED : up < TURNED));
  return faces.map((face) => ({ face, at: at(add(middle, posed.dorsal, ((face === 'back' ? 1 : -1) * posed.shape.depth) / 2)) }));
}

/** A name on the picture: its middle and the line that it stands on, mm, and half of what it is wide. */
interface Name extends Point {
  readonly text: string;
  readonly isTreated: boolean;
  readonly half: number;
}

/** The names, each moved down to under those above that it would lie on. */
function apart(names: readonly Name[], letters: number): readonly Name[] {
  const placed: Name[] = [];
  for (const name of names.toSorted((a, b) => b.y - a.y)) {
    let { y } = name;
    for (const above of placed)
      if (Math.abs(above.x - name.x) < above.half + name.half + 0.4 * letters && Math.abs(above.y - y) < letters) y = above.y - letters;
    placed.push({ ...name, y });
  }
  return placed;
}

/** A name stands a little beyond the tip. */
function below({ x, y }: Point, letters: number): Point {
  return { x, y: y - letters };
}

/** Half of what a letter is wide, a share of its height; from looking. */
const HALF_LETTER = 0.29;
/** Half of what a finger of an average hand is broad on the picture, mm, with some air. */
const HALF_FINGER = 8.5;

const halfWidth = (text: string, letters: number): number => text.length * HALF_LETTER * letters;

/** A name moved aside where a longer finger passes beside it. @param least how far its middle stays from that finger's, mm */
function besideOthers({ x, y }: Point, least: number, others: readonly { readonly tip: Point; readonly root: Point }[]): Point {
  let aside = x;
  for (const { tip, root } of others) {
    const share = (y - tip.y) / (root.y - tip.y);
    if (!(share > 0 && share < 1)) continue;
    const apart = x - tip.x - share * (root.x - tip.x);
    if (Math.abs(apart) < least) aside += Math.sign(apart) * (least - Math.abs(apart));
  }
  return { x: aside, y };
}

/** The middle of a name that stays within the picture. @param half of its width, less what it may stand out, mm */
function within(x: number, half: number, { minX, maxX }: Box): number {
  return Math.min(Math.max(x, minX + half), maxX - half);
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
    return words.mouldedDigit(texts.hand.first[s.digit], store.format.value.number(Math.abs(angle), 0), bend);
  });
}
