import { boxOf, type LineArcPath, type Point, polyline, unionBox } from '../geometry/path.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import type { Drawing, DrawnShape, Pen, Tone } from '../pattern/drawing.ts';
import { flatHand } from './flat-hand.ts';
import { backLines, palmLines } from './hand-lines.ts';
import { type DrawableHand, handShape, type WebName } from './hand-shape.ts';
import { type MeasurePlace, measurePlaces } from './measure-places.ts';

/** How a flat hand is looked at. */
export interface HandView {
  readonly side: Side;
  readonly face: 'palm' | 'back';
  /** Where the fingertips point on the page. Usual: up. */
  readonly tips?: 'up' | 'down';
  /** Free space between the fingers at their roots, mm, and the turn between neighbours, degrees. Usual: 4 and 4; 0 degrees draws columns. */
  readonly gap?: number;
  readonly fan?: number;
  /** The finger that is treated: coloured and outlined heavily. */
  readonly treated?: DigitName | null;
  /** Fingers that have no part in it: pale. */
  readonly unused?: readonly DigitName[];
  /** The place to be marked, drawn over the hand. */
  readonly marked?: MeasurePlace | null;
}

/** A named place on the drawing: mm from its lower left corner, y up. */
export interface PlacedMeasure {
  readonly kind: 'line' | 'ring';
  readonly points: readonly Point[];
  /** Where a number or an arrow may point: the middle of a length, the right-hand end of a ring. */
  readonly at: Point;
}

export interface DrawnHand {
  readonly drawing: Drawing;
  /** Every place where something is measured. */
  readonly places: ReadonlyMap<MeasurePlace, PlacedMeasure>;
  /** Of each finger: its tip, the middle of its proximal phalanx, its root, and its half breadth there. */
  readonly fingers: ReadonlyMap<
    DigitName,
    { readonly tip: Point; readonly middle: Point; readonly root: Point; readonly halfWidth: number }
  >;
  readonly webs: ReadonlyMap<WebName, Point>;
  readonly thumbTip: Point;
  readonly wrist: Point;
}

const MARGIN = 2;

/**
 * A flat hand in the proportions of its measures, missing ones as in an average hand of its size: from the palm with its creases, from the back with
 * nails and knuckles. Items have the roles `hand`, `finger`, `finger-treated`, `nail`, `crease`, `place`, `place-leader`; mm, y up, at true size.
 *
 * @example the ring finger's width marked on a left palm, as SVG
 * const { drawing, places, fingers } = drawHand(hand, { side: 'left', face: 'palm', treated: 'ring', marked: 'ring.width' });
 * svgPathData(shape.paths, shape.circles, drawing.extents);   // for each item of drawing.items with kind 'shape'
 * fingers.get('ring')?.tip;                                   // where its name may stand
 */
export function drawHand(hand: DrawableHand, view: HandView): DrawnHand {
  const shape = handShape(hand);
  const flat = flatHand(shape, { gap: view.gap ?? 4, fan: view.fan ?? 4 });
  // The flat hand has its thumb on the left: a left palm or the back of a right hand with the tips up.
  const mirror = (view.side === 'left') === (view.face === 'palm') ? 1 : -1;
  const upright = view.tips === 'down' ? -1 : 1;
  const turned = (p: Point): Point => ({ x: upright * mirror * p.x, y: upright * p.y });
  const { lines, nails } = view.face === 'palm' ? palmLines(flat) : backLines(flat);
  const shapes = measurePlaces(flat);
  const marked = view.marked ? shapes.get(view.marked) : undefined;
  const drawn = [flat.outline, ...lines, ...nails, ...(marked ? [marked.points, ...marked.leaders] : [])];
  const box = unionBox(drawn.map((points) => boxOf([polyline(points.map(turned))])));
  const at = (p: Point): Point => ({ x: turned(p).x - box.minX + MARGIN, y: turned(p).y - box.minY + MARGIN });
  const line = (points: readonly Point[], closed = false): LineArcPath => polyline(points.map(at), closed);
  const items: DrawnShape[] = [];
  const add = (role: string, title: string, paths: readonly LineArcPath[], pen: Pen | null, tone: Tone, fill: Tone | null) =>
    items.push({ kind: 'shape', role, title, paths, circles: [], pen, tone, fill });
  add('hand', '', [line(flat.outline, true)], null, 'ink', 'skin');
  for (const finger of flat.fingers) {
    const { digit } = finger.shape;
    const area = line([...finger.contour, ...finger.base], true);
    if (view.unused?.includes(digit)) add('finger-unused', digit, [area], null, 'ink', 'paper');
    if (digit === view.treated) add('finger-treated', digit, [area], null, 'ink', 'treated');
  }
  add(
    'nail',
    '',
    nails.map((points) => line(points, true)),
    'fine',
    'grey',
    'nail',
  );
  add(
    'crease',
    '',
    lines.map((points) => line(points)),
    'fine',
    'grey',
    null,
  );
  add('hand', '', [line(flat.outline)], 'medium', 'ink', null);
  for (const finger of flat.fingers)
    if (finger.shape.digit === view.treated) add('finger', finger.shape.digit, [line(finger.contour)], 'heavy', 'ink', null);
  const places = new Map<MeasurePlace, PlacedMeasure>();
  for (const [name, { kind, points, leaders }] of shapes) {
    const placed = points.map(at);
    places.set(name, { kind, points: placed, at: labelPoint(kind, placed) });
    if (name !== view.marked) continue;
    add(
      'place-leader',
      '',
      leaders.map((pair) => line(pair)),
      'medium',
      'accent',
      null,
    );
    add('place', name, [polyline(placed, kind === 'ring')], 'heavy', 'accent', null);
  }
  const extents = { minX: 0, minY: 0, maxX: box.maxX - box.minX + 2 * MARGIN, maxY: box.maxY - box.minY + 2 * MARGIN };
  return {
    drawing: { title: `${view.side} hand, ${view.face}`, description: '', items, extents },
    places,
    fingers: new Map(
      flat.fingers.map((f) => {
        const { digit, proximal, middle, distal, mp, root, pipCrease } = f.shape;
        const mid = (root + pipCrease) / 2 - mp;
        const tip = proximal + middle + distal;
        return [digit, { tip: at(f.at(0, tip)), middle: at(f.at(0, mid)), root: at(f.at(0, root - mp)), halfWidth: f.halfWidth(mid) }];
      }),
    ),
    webs: new Map(Object.entries(flat.webs).map(([web, p]) => [web as WebName, at(p)])),
    thumbTip: at(flat.thumb.contour[7] as Point),
    wrist: at({ x: (flat.wrist.radial.x + flat.wrist.ulnar.x) / 2, y: shape.wrist }),
  };
}

function labelPoint(kind: 'line' | 'ring', points: readonly Point[]): Point {
  if (kind === 'ring') return points.reduce((a, b) => (b.x > a.x ? b : a));
  const [a, b] = [points[0] as Point, points.at(-1) as Point];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
