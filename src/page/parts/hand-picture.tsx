import { useMemo, useRef } from 'preact/hooks';
import { DIGITS, type DigitName, type Side } from '../../hand/digits.ts';
import type { DrawnShape } from '../../pattern/drawing.ts';
import { type DrawnHand, drawHand } from '../../picture/draw-hand.ts';
import type { DrawableHand } from '../../picture/hand-shape.ts';
import type { MeasurePlace } from '../../picture/measure-places.ts';
import { plain } from '../../units/number.ts';
import { DrawnShapes, useLetters } from './drawn-shapes.tsx';

export interface HandPictureProps {
  /** With the measures that were typed; what is missing is drawn as in an average hand of this size. */
  readonly hand: DrawableHand;
  readonly side: Side;
  readonly face: 'palm' | 'back';
  /** The fingers with their knuckles, or the whole hand. */
  readonly shown: 'fingers' | 'hand';
  readonly treated: DigitName | null;
  readonly unused: readonly DigitName[];
  readonly marked: MeasurePlace | null;
  readonly title: string;
  readonly thumb: string;
  /** A finger of the picture was pressed. */
  readonly onFinger?: (digit: DigitName) => void;
}

/** Turn between neighbours, degrees, and room between them at their roots, mm: a hand that is spread, so that each finger stands over its column. */
const SPREAD = { fan: 9, gap: 5 } as const;
/** What is shown of the hand beyond the knuckles, mm at average size. */
const BEYOND_KNUCKLES = 16;
/** How broad the fingers of an average hand are on it, mm. */
const AVERAGE_WIDTH = 125;

/** The hand in the proportions of what was entered, the place of the focused measure marked. A press on a finger changes nothing but the focus. */
export function HandPicture({ hand, side, face, shown, treated, unused, marked, title, thumb, onFinger }: HandPictureProps) {
  const key = JSON.stringify([hand.digits, hand.palm, hand.webSetback, hand.absent, side, face, treated, unused, marked]);
  // The key holds all that the drawing follows.
  const drawn = useMemo(
    () => drawHand(hand, { side, face, tips: face === 'palm' ? 'up' : 'down', ...SPREAD, treated, unused, marked }),
    [key],
  );
  const { extents } = drawn.drawing;
  const [left, top, width, height] = shown === 'hand' ? [0, 0, extents.maxX, extents.maxY] : fingersOnly(drawn, face);
  const isThumbLeft = drawn.thumbTip.x < drawn.wrist.x;
  const picture = useRef<SVGSVGElement>(null);
  const letters = useLetters(picture, { width, height }, 0, shown === 'hand' ? 1 : width / AVERAGE_WIDTH);
  return (
    // A short way to a field for a mouse or a fingertip; by keys the fields are reached themselves.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <svg
      ref={picture}
      class="hand-picture inked"
      viewBox={[left, top, width, height].map((n) => plain(n, 1)).join(' ')}
      preserveAspectRatio={face === 'palm' ? 'xMidYMax meet' : 'xMidYMin meet'}
      role="img"
      aria-label={title}
      onClick={(event) => {
        const digit = fingerAt(event, drawn);
        if (digit) onFinger?.(digit);
      }}
    >
      <DrawnShapes items={drawn.drawing.items as readonly DrawnShape[]} extents={extents} />
      <text
        class="thumb"
        font-size={plain(letters, 2)}
        x={plain(isThumbLeft ? 1 : extents.maxX - 1, 1)}
        y={plain(face === 'palm' ? top + height - 1.5 : top + letters, 1)}
        text-anchor={isThumbLeft ? 'start' : 'end'}
      >
        {isThumbLeft ? `◂ ${thumb}` : `${thumb} ▸`}
      </text>
    </svg>
  );
}

/** The finger under the pointer: within its breadth from tip to root, the nearest where two would do. */
function fingerAt(event: MouseEvent & { readonly currentTarget: SVGSVGElement }, { drawing, fingers }: DrawnHand): DigitName | null {
  const frame = event.currentTarget.getScreenCTM()?.inverse();
  if (!frame) return null;
  const pointer = new DOMPoint(event.clientX, event.clientY).matrixTransform(frame);
  const at = { x: pointer.x, y: drawing.extents.maxY - pointer.y };
  const near = [...fingers].map(([digit, { tip, root, halfWidth }]) => {
    const [dx, dy] = [tip.x - root.x, tip.y - root.y];
    const along = Math.min(1, Math.max(0, ((at.x - root.x) * dx + (at.y - root.y) * dy) / (dx * dx + dy * dy)));
    const away = Math.hypot(at.x - root.x - along * dx, at.y - root.y - along * dy);
    return { digit, away, within: away <= halfWidth * 1.2 };
  });
  return near.filter(({ within }) => within).toSorted((a, b) => a.away - b.away)[0]?.digit ?? null;
}

/**
 * From the tips to a little beyond the knuckles and as wide as the fingers, so that they stand in the middle over their columns; the thumb is drawn
 * beyond that where there is room. Left, top, width and height in the picture's own frame, y down.
 */
function fingersOnly({ drawing, fingers, places }: DrawnHand, face: 'palm' | 'back'): readonly [number, number, number, number] {
  const { maxY } = drawing.extents;
  const spots = [...fingers.values()].flatMap(({ tip, root, halfWidth }) => [tip, root].flatMap(({ x }) => [x - halfWidth, x + halfWidth]));
  const [left, right] = [Math.min(...spots) - 3, Math.max(...spots) + 3];
  const knuckles = [...fingers.keys()].map((digit) => places.get(`${digit}.dorsalLength`)?.points[0]?.y ?? 0);
  const [low, high] = face === 'palm' ? [maxY, Math.min(...knuckles) - BEYOND_KNUCKLES] : [Math.max(...knuckles) + BEYOND_KNUCKLES, 0];
  return [left, maxY - low, right - left, low - high];
}

/**
 * From left to right over the columns of fields. The palm is seen with the fingertips up, the back with the fingertips down: so the hand is turned
 * over and the fingers keep their columns, the thumb of a left hand on the left both times.
 */
export function columnsFor(side: Side): readonly DigitName[] {
  return side === 'left' ? DIGITS : DIGITS.toReversed();
}
