import type { Raster } from './raster.ts';
import type { BorderKind } from './trace-areas.ts';

/** Which line is drawn between two neighbouring squares, if any. */
export type Border = (one: number, other: number) => BorderKind | null;

/** A piece of surface of fewer squares than these has no line and no tone of its own: at a steep edge single squares stand apart by chance. */
const CRUMB = 10;

/** The squares beside one that show something. */
function besides({ width, mesh }: Raster, at: number): readonly number[] {
  return [at % width > 0 ? at - 1 : -1, (at + 1) % width > 0 ? at + 1 : -1, at - width, at + width].filter(
    (next) => next >= 0 && next < mesh.length && mesh[next] !== 0,
  );
}

/** All squares that show something, in pieces within which no two neighbours are apart. */
function piecesOf(raster: Raster, apart: (one: number, other: number) => boolean): readonly (readonly number[])[] {
  const seen = new Uint8Array(raster.mesh.length);
  const pieces: number[][] = [];
  for (let start = 0; start < seen.length; start++) {
    if (raster.mesh[start] === 0 || seen[start] === 1) continue;
    seen[start] = 1;
    const squares = [start];
    for (let k = 0; k < squares.length; k++) {
      const at = squares[k] as number;
      for (const next of besides(raster, at)) {
        if (seen[next] === 1 || apart(at, next)) continue;
        seen[next] = 1;
        squares.push(next);
      }
    }
    pieces.push(squares);
  }
  return pieces;
}

/** Tones in which no crumb of one lies within or beside another. */
export function evenTones(raster: Raster, tone: Uint8Array): Uint8Array {
  const even = tone.slice();
  for (const squares of piecesOf(raster, (p, q) => tone[p] !== tone[q])) {
    if (squares.length >= CRUMB) continue;
    const counts = new Map<number, number>();
    for (const at of squares) {
      for (const next of besides(raster, at)) {
        const other = even[next] as number;
        if (other !== tone[at]) counts.set(other, (counts.get(other) ?? 0) + 1);
      }
    }
    const [most] = [...counts].toSorted(([, a], [, b]) => b - a);
    if (most) for (const at of squares) even[at] = most[0];
  }
  return even;
}

/** The borders with every crumb taken into the piece that it lies nearest to in depth. */
export function withoutCrumbs(raster: Raster, tone: Uint8Array, border: Border): Border {
  const { mesh, depth } = raster;
  const pieces = piecesOf(raster, (p, q) => ['fine', 'strong'].includes(border(p, q) ?? ''));
  const piece = new Int32Array(mesh.length).fill(-1);
  const isCrumb = new Uint8Array(mesh.length);
  for (const [k, squares] of pieces.entries()) {
    for (const at of squares) {
      piece[at] = k;
      if (squares.length < CRUMB) isCrumb[at] = 1;
    }
  }
  for (const squares of pieces) {
    if (squares.length >= CRUMB) continue;
    let [least, nearest] = [Number.POSITIVE_INFINITY, -1];
    for (const at of squares) {
      for (const next of besides(raster, at)) {
        const apart = Math.abs((depth[at] as number) - (depth[next] as number));
        if (isCrumb[next] === 0 && apart < least) [least, nearest] = [apart, piece[next] as number];
      }
    }
    if (nearest >= 0) for (const at of squares) piece[at] = nearest;
  }
  return (p, q) => {
    const kind = border(p, q);
    const isTaken = (isCrumb[p] === 1 || isCrumb[q] === 1) && mesh[p] !== 0 && mesh[q] !== 0 && piece[p] === piece[q];
    if (!isTaken) return kind;
    return tone[p] === tone[q] ? null : 'none';
  };
}
