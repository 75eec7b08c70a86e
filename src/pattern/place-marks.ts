import { type Box, boxOf, boxOfPoints, type Point, unionBox } from '../geometry/path.ts';
import { LETTER_ASCENT, LETTER_DESCENT, textWidth } from '../geometry/stroke-letters.ts';
import { placePath, placePoint } from '../geometry/transform.ts';
import { radians } from '../units/angle.ts';
import type { Circle, Drawn, Label, Mark } from './marks.ts';
import type { Part } from './pattern.ts';

export type { Drawn } from './marks.ts';

const shiftPoint = (p: Point, dx: number, dy: number): Point => ({ x: p.x + dx, y: p.y + dy });

export function shiftMark(mark: Mark, dx: number, dy: number): Mark {
  return {
    ...mark,
    paths: mark.paths.map((path) => placePath(path, { dx, dy })),
    circles: mark.circles.map((c): Circle => ({ ...c, center: shiftPoint(c.center, dx, dy) })),
  };
}

export function shiftLabel(label: Label, dx: number, dy: number): Label {
  return { ...label, at: shiftPoint(label.at, dx, dy) };
}

export function shiftDrawn(drawn: Drawn, dx: number, dy: number): Drawn {
  return { marks: drawn.marks.map((m) => shiftMark(m, dx, dy)), labels: drawn.labels.map((l) => shiftLabel(l, dx, dy)) };
}

export function shiftPart(part: Part, dx: number, dy: number): Part {
  return {
    ...part,
    ...shiftDrawn(part, dx, dy),
    outline: placePath(part.outline, { dx, dy }),
    holes: part.holes.map((hole) => placePath(hole, { dx, dy })),
    ...(part.cuts ? { cuts: part.cuts.map((cut) => ({ ...cut, path: placePath(cut.path, { dx, dy }) })) } : {}),
  };
}

/** Turned about (0, 0), counter-clockwise by `angle` (radians, a multiple of a quarter turn). */
export function turnDrawn({ marks, labels }: Drawn, angle: number): Drawn {
  const turn = { angle, dx: 0, dy: 0 };
  return {
    marks: marks.map((mark) => ({
      ...mark,
      paths: mark.paths.map((path) => placePath(path, turn)),
      circles: mark.circles.map((c) => ({ ...c, center: placePoint(c.center, turn) })),
    })),
    labels: labels.map((label) => ({
      ...label,
      at: placePoint(label.at, turn),
      angle: (label.angle + Math.round((angle * 180) / Math.PI)) % 360,
    })),
  };
}

/** The part turned in the same way, with all that is on it. */
export function turnPart(part: Part, angle: number): Part {
  const turn = { angle, dx: 0, dy: 0 };
  return {
    ...part,
    ...turnDrawn(part, angle),
    outline: placePath(part.outline, turn),
    holes: part.holes.map((hole) => placePath(hole, turn)),
    ...(part.cuts ? { cuts: part.cuts.map((cut) => ({ ...cut, path: placePath(cut.path, turn) })) } : {}),
  };
}

/** The four corners of the box that a label's letters may fill: baseline less descenders to capitals plus accents. */
export function labelCorners(label: Label): readonly Point[] {
  const width = textWidth(label.text, label.height);
  const left = label.align === 'left' ? 0 : label.align === 'center' ? -width / 2 : -width;
  const angle = radians(label.angle);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const low = -LETTER_DESCENT * label.height;
  const high = LETTER_ASCENT * label.height;
  return [
    [left, low],
    [left + width, low],
    [left + width, high],
    [left, high],
  ].map(([x = 0, y = 0]) => ({ x: label.at.x + x * c - y * s, y: label.at.y + x * s + y * c }));
}

/** Box round everything drawn; at least one thing is needed. */
export function boxOfDrawn(drawn: Drawn): Box {
  const paths = drawn.marks.flatMap((m) => m.paths).filter((p) => p.vertices.length > 0);
  const circles = drawn.marks
    .flatMap((m) => m.circles)
    .map((c) => ({ minX: c.center.x - c.radius, minY: c.center.y - c.radius, maxX: c.center.x + c.radius, maxY: c.center.y + c.radius }));
  const labels = drawn.labels.map((l) => boxOfPoints(labelCorners(l)));
  return unionBox([...paths.map((p) => boxOf([p])), ...circles, ...labels]);
}
