import { type Point, polyline } from '../geometry/path.ts';
import { placePath } from '../geometry/transform.ts';
import type { DrawnShape, DrawnText, Tone } from '../pattern/drawing.ts';
import { smooth } from '../picture/spline.ts';

export type Items = readonly (DrawnShape | DrawnText)[];

const HALF = 8;

/** The end of a finger: its tip at a point, lying along a direction (radians) away from it. mm */
function fingerEnd(tip: Point, away: number, length: number, half = HALF): Items {
  const [c, s] = [Math.cos(away), Math.sin(away)];
  const at = (along: number, across: number): Point => ({ x: tip.x + along * c - across * s, y: tip.y + along * s + across * c });
  const round = Array.from({ length: 13 }, (_, k) => {
    const t = Math.PI / 2 + (k * Math.PI) / 12;
    return at(half + half * Math.cos(t), half * Math.sin(t));
  });
  return [shape('finger-end', [polyline([at(length, half), ...round, at(length, -half)])], 'medium', 'ink', 'skin')];
}

/** How much of a pressing thumb is shown, mm. */
export const THUMB_LENGTH = 26;
/** Half its breadth along it from the tip, and its nail's: from memory, for pictures only. mm */
const THUMB: readonly (readonly [number, number])[] = [
  [0, 0],
  [0.8, 3.6],
  [3.2, 6.4],
  [8, 7.6],
  [14, 7.1],
  [18, 7.2],
  [THUMB_LENGTH, 8.2],
];
const THUMB_NAIL: readonly (readonly [number, number])[] = [
  [1.4, 2.4],
  [2.6, 4],
  [7.6, 4.5],
  [10.4, 3.4],
  [11, 0],
];

/** A thumb from its back, its tip at a point, lying along a direction (radians) away from it. mm */
export function thumbEnd(tip: Point, away: number): Items {
  const [c, s] = [Math.cos(away), Math.sin(away)];
  const at = (along: number, across: number): Point => ({ x: tip.x + along * c - across * s, y: tip.y + along * s + across * c });
  const round = (half: typeof THUMB) => [
    ...half.toReversed().map(([along, across]) => at(along, across)),
    ...half.slice(half[0]?.[1] === 0 ? 1 : 0).map(([along, across]) => at(along, -across)),
  ];
  const shade = [
    ...THUMB.map(([along, across]) => at(along, across)),
    ...THUMB.toReversed().map(([along, across]) => at(along, 0.55 * across)),
  ];
  const fold = (along: number) => polyline([at(along, -3), at(along + 0.5, 0), at(along, 3)]);
  return [
    shape('helping-thumb', [polyline(smooth(round(THUMB)), true)], 'fine', 'skin', 'skin'),
    shape('shade', [polyline(shade, true)], 'fine', 'skin-half', 'skin-half'),
    shape('nail', [polyline(smooth(round(THUMB_NAIL)), true)], 'fine', 'ink', 'nail'),
    shape('fold', [fold(15), fold(16.6)], 'fine', 'grey', null),
    shape('helping-thumb', [polyline(smooth(round(THUMB)))], 'medium', 'ink', null),
  ];
}

/** A finger from the palm with the strip over its PIP crease, struck out. */
export function overTheCrease(caption: string): Items {
  const finger = [...fingerEnd({ x: 0, y: -34 }, Math.PI / 2, 62)];
  const crease = polyline([
    { x: -HALF, y: -6 },
    { x: HALF, y: -6 },
  ]);
  const band = polyline(
    [
      { x: -HALF - 1.5, y: -11 },
      { x: HALF + 1.5, y: -11 },
      { x: HALF + 1.5, y: 5 },
      { x: -HALF - 1.5, y: 5 },
    ],
    true,
  );
  return [
    ...finger,
    shape('band', [band], 'medium', 'ink', 'strip'),
    shape('crease', [crease], 'medium', 'ink', null),
    strike({ x: -14, y: -20 }, { x: 14, y: 14 }),
    label(caption, { x: 0, y: -44 }, CAPTION),
  ];
}

/** A strip with a half turn in it, struck out. */
export function twisted(caption: string): Items {
  const half = (x: number) =>
    polyline(
      [
        { x, y: -6 },
        { x, y: 6 },
        { x: 0, y: 0 },
      ],
      true,
    );
  return [
    shape('face', [half(-20)], 'medium', 'ink', 'strip'),
    shape('other-face', [half(20)], 'medium', 'ink', 'done'),
    strike({ x: -16, y: -11 }, { x: 16, y: 11 }),
    label(caption, { x: 0, y: -20 }, CAPTION),
  ];
}

/** Items of a drawing elsewhere on it. */
export function moved(items: Items, dx: number, dy: number): Items {
  const shift = (p: Point): Point => ({ x: p.x + dx, y: p.y + dy });
  return items.map((item) =>
    item.kind === 'text'
      ? { ...item, at: shift(item.at) }
      : {
          ...item,
          paths: item.paths.map((path) => placePath(path, { dx, dy })),
          circles: item.circles.map((circle) => ({ ...circle, center: shift(circle.center) })),
        },
  );
}

const CAPTION = 4;

export function strike(from: Point, to: Point): Items[number] {
  return shape('struck-out', [polyline([from, to])], 'heavy', 'ink', null);
}

export function shape(role: string, paths: DrawnShape['paths'], pen: DrawnShape['pen'], tone: Tone, fill: Tone | null): DrawnShape {
  return { kind: 'shape', role, title: '', paths, circles: [], pen, tone, fill };
}

export function label(text: string, at: Point, height: number, strong = false, rise = 0): DrawnText {
  return { kind: 'text', role: 'name', text, at: { x: at.x, y: at.y + rise }, height, align: 'center', tone: 'ink', strong };
}
