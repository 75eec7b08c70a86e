import type { IDxf, IEntity } from 'dxf-parser';
import type { Layer } from '../src/pattern/pattern.ts';

/** How far chords may lie inside their arc, mm. */
const CHORD_ERROR = 0.0001;

interface CurvePoint {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

/**
 * An SVG of the entities that dxf-parser found, drawn by this file's own arithmetic with chords instead of arcs, to be laid over the SVG
 * that the project writes. Throws on an entity kind that a pattern does not use.
 */
export function redrawDxf(dxf: IDxf, colours: Readonly<Record<Layer, string>>, strokeWidth = 0.1): string {
  const { $EXTMIN: low, $EXTMAX: high } = dxf.header;
  if (typeof low !== 'object' || typeof high !== 'object') throw new Error('the DXF declares no extents');
  const width = high.x - low.x;
  const height = high.y - low.y;
  const place = (x: number, y: number) => `${x - low.x},${high.y - y}`;
  const shapes = dxf.entities.map((entity) => {
    const points = outlineOf(entity).map(([x, y]) => place(x, y));
    return `<polyline points="${points.join(' ')}" stroke="${colours[entity.layer as Layer]}"/>`;
  });
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`;
  return `${head}<g fill="none" stroke-width="${strokeWidth}">${shapes.join('')}</g></svg>`;
}

function outlineOf(entity: IEntity): readonly (readonly [number, number])[] {
  switch (entity.type) {
    case 'LINE':
      return verticesOf(entity).map((v) => [v.x, v.y]);
    case 'LWPOLYLINE':
      return curve(verticesOf(entity), 'shape' in entity && entity.shape === true);
    case 'CIRCLE':
      return circle(entity as IEntity & { center: CurvePoint; radius: number });
    default:
      throw new Error(`a pattern has no ${entity.type}`);
  }
}

function verticesOf(entity: IEntity): readonly CurvePoint[] {
  return (entity as IEntity & { vertices: readonly CurvePoint[] }).vertices;
}

/** Chords for an arc: one of the angle a lies up to r a²/8 inside. mm, radians */
function chordsOf(radius: number, angle: number): number {
  return Math.ceil(Math.abs(angle) * Math.max(4, Math.sqrt(radius / (8 * CHORD_ERROR))));
}

function circle({ center, radius }: { center: CurvePoint; radius: number }): [number, number][] {
  const count = chordsOf(radius, 2 * Math.PI);
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
  });
}

function curve(points: readonly CurvePoint[], closed: boolean): [number, number][] {
  const [first] = points;
  if (!first) return [];
  const ends = closed ? [...points.slice(1), first] : points.slice(1);
  const drawn: [number, number][] = [[first.x, first.y]];
  for (const [i, to] of ends.entries()) drawn.push(...bulgeChords(points[i] ?? first, to));
  return drawn;
}

/**
 * Points after `from` on the arc to `to`. DXF reference, LWPOLYLINE: the bulge is the tangent of a quarter of the included angle, positive
 * counter-clockwise. A chord seen from the arc's other end grows by the inscribed angle theorem: the point at the fraction f of the angle a
 * has the chord sin(f a/2)/sin(a/2) of the whole, turned by (1 - f) a/2 to the right.
 */
function bulgeChords(from: CurvePoint, to: CurvePoint): [number, number][] {
  const angle = 4 * Math.atan(from.bulge ?? 0);
  if (angle === 0) return [[to.x, to.y]];
  const radius = Math.hypot(to.x - from.x, to.y - from.y) / 2 / Math.abs(Math.sin(angle / 2));
  const count = chordsOf(radius, angle);
  return Array.from({ length: count }, (_, i) => {
    const fraction = (i + 1) / count;
    const grown = Math.sin((fraction * angle) / 2) / Math.sin(angle / 2);
    const turn = (-(1 - fraction) * angle) / 2;
    const dx = grown * (to.x - from.x);
    const dy = grown * (to.y - from.y);
    return [from.x + dx * Math.cos(turn) - dy * Math.sin(turn), from.y + dx * Math.sin(turn) + dy * Math.cos(turn)];
  });
}
