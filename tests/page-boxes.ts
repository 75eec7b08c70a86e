import { type Box, boxOf, type LineArcPath, type Point, unionBox } from '../src/geometry/path.ts';
import { textWidth } from '../src/geometry/stroke-letters.ts';
import type { Page, PageText } from '../src/sheet/paper/page.ts';
import { contains } from '../src/sheet/paper/tiles.ts';
import { radians } from '../src/units/angle.ts';
import { helveticaWidth } from '../src/writers/pdf/pdf-document.ts';

/** Share of a capital's height under the baseline that letters with a tail take. */
const TAIL = 0.3;
/** What rounding may let boxes share, mm. */
export const TOUCHING = 0.01;

export type Corners = readonly [Point, Point, Point, Point];

/** The corners of the ink of a line of text, counter-clockwise. */
export function corners(t: PageText): Corners {
  const natural = helveticaWidth(t.text, t.height, t.bold);
  const width = t.asStrokes ? Math.min(natural, textWidth(t.text, t.height)) : natural;
  const left = { left: 0, center: -width / 2, right: -width }[t.align];
  const low = /[gjpqy,;()]/.test(t.text) ? -TAIL * t.height : 0;
  const [c, s] = [Math.cos(radians(t.angle)), Math.sin(radians(t.angle))];
  const at = (x: number, y: number): Point => ({ x: t.at.x + x * c - y * s, y: t.at.y + x * s + y * c });
  return [at(left, low), at(left + width, low), at(left + width, t.height), at(left, t.height)];
}

/** Whether two rectangles share more than an edge (separating axes). */
export function overlap(a: Corners, b: Corners): boolean {
  for (const [p, q] of [a, b].flatMap((r) => [[r[0], r[1]] as const, [r[1], r[2]] as const])) {
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length === 0) continue;
    const [nx, ny] = [(q.x - p.x) / length, (q.y - p.y) / length];
    const span = (r: Corners) => r.map((v) => v.x * nx + v.y * ny);
    const [sa, sb] = [span(a), span(b)];
    if (Math.max(...sa) <= Math.min(...sb) + TOUCHING || Math.max(...sb) <= Math.min(...sa) + TOUCHING) return false;
  }
  return true;
}

export const rectangle = (b: Box): Corners => [
  { x: b.minX, y: b.minY },
  { x: b.maxX, y: b.minY },
  { x: b.maxX, y: b.maxY },
  { x: b.minX, y: b.maxY },
];

/** Each edge as a rectangle of almost no breadth, so that it has both directions to be parted in; arcs by their chords. */
function edgesOf({ vertices, closed }: LineArcPath): readonly Corners[] {
  const ends = closed ? [...vertices.slice(1), vertices[0]] : vertices.slice(1);
  return ends.flatMap((q, k) => {
    const p = vertices[k];
    const length = p && q ? Math.hypot(q.x - p.x, q.y - p.y) : 0;
    if (!p || !q || length === 0) return [];
    const [nx, ny] = [(-1e-6 * (q.y - p.y)) / length, (1e-6 * (q.x - p.x)) / length];
    return [[p, q, { x: q.x + nx, y: q.y + ny }, { x: p.x + nx, y: p.y + ny }] as const];
  });
}

/** Lines of text that lie on each other, on a bar, on the edge of a gauge, across the card's outline, or, where they are not of it, on the pattern. */
export function collisions(page: Page): readonly string[] {
  const seen = (box: Corners, clip: Box | null) => !clip || box.every((p) => contains(clip, p));
  const boxes = page.layers.flatMap((layer) =>
    layer.texts.map((t) => ({ t, box: corners(t) })).filter(({ t, box }) => t.text.trim() !== '' && seen(box, layer.clip)),
  );
  const found: string[] = [];
  for (const [i, a] of boxes.entries()) {
    for (const b of boxes.slice(i + 1)) if (overlap(a.box, b.box)) found.push(`"${a.t.text}" on "${b.t.text}"`);
  }
  const strokes = page.layers.flatMap((layer) => layer.strokes);
  const pattern = strokes.filter((s) => s.role === 'outline').map((s) => boxOf(s.paths));
  const card = strokes.filter((s) => s.role === 'card').map((s) => boxOf(s.paths));
  const bars = strokes.filter((s) => s.role.startsWith('bar-')).flatMap((s) => s.paths.map((path) => boxOf([path])));
  const gauges = strokes.filter((s) => s.role === 'angle-gauge').flatMap((s) => s.paths.flatMap(edgesOf));
  const clips = page.layers.flatMap((layer) => (layer.clip ? [layer.clip] : []));
  for (const { t, box } of boxes) {
    const onPattern = (clips.length > 0 ? clips : pattern).some((b) => overlap(box, rectangle(b)));
    if (onPattern && !t.asStrokes && !/^[A-Z]{1,2}$/.test(t.text)) found.push(`"${t.text}" on the pattern`);
    if (bars.some((b) => overlap(box, rectangle(b)))) found.push(`"${t.text}" on a bar`);
    if (gauges.some((edge) => overlap(box, edge))) found.push(`"${t.text}" on the edge of a gauge`);
    for (const b of card) {
      const inside = box.every((p) => p.x > b.minX && p.x < b.maxX && p.y > b.minY && p.y < b.maxY);
      if (!inside && overlap(box, rectangle(b))) found.push(`"${t.text}" across the card`);
    }
  }
  return found;
}

/** Box round everything that is printed on a page; of a clipped layer only what is seen. */
export function inkBox(page: Page): Box {
  return unionBox(
    page.layers.flatMap((layer) => [
      ...(layer.clip ? [layer.clip] : layer.strokes.filter((s) => s.paths.length > 0).map((s) => boxOf(s.paths))),
      ...(layer.clip ? [] : layer.texts.map((t) => boxOf([{ closed: true, vertices: corners(t).map((p) => ({ ...p, bulge: 0 })) }]))),
    ]),
  );
}
