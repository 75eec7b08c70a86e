import type { Raster } from './raster.ts';
import type { BorderKind } from './trace-areas.ts';

/** Which line is drawn between two neighbouring squares, if any. */
export type Border = (one: number, other: number) => BorderKind | null;

/** A piece of surface of fewer squares than these has no line and no tone of its own: at a steep edge single squares stand apart by chance. */
const CRUMB = 10;

/** Calls `see` with each square beside one that shows something. */
function besides({ width, mesh }: Raster, at: number, see: (next: number) => void): void {
  if (at % width > 0 && mesh[at - 1] !== 0) see(at - 1);
  if ((at + 1) % width > 0 && at + 1 < mesh.length && mesh[at + 1] !== 0) see(at + 1);
  if (at >= width && mesh[at - width] !== 0) see(at - width);
  if (at + width < mesh.length && mesh[at + width] !== 0) see(at + width);
}

/** The squares that show something, in pieces within which no two neighbours are apart. */
interface Pieces {
  /** Each square's piece, by the first of its squares; -1 where nothing is. */
  readonly piece: Int32Array;
  /** Squares of the pieces that are crumbs. */
  readonly crumbs: readonly (readonly number[])[];
}

function piecesOf(raster: Raster, apart: (one: number, other: number) => boolean): Pieces {
  const { width, mesh } = raster;
  const piece = new Int32Array(mesh.length).fill(-1);
  const size = new Int32Array(mesh.length);
  const first = (at: number): number => {
    let root = at;
    while (piece[root] !== root) root = piece[root] as number;
    return root;
  };
  for (let at = 0; at < mesh.length; at++) {
    if (mesh[at] === 0) continue;
    const left = at % width > 0 && mesh[at - 1] !== 0 && !apart(at - 1, at) ? (piece[at - 1] as number) : at;
    piece[at] = left;
    if (at < width || mesh[at - width] === 0 || piece[at - width] === left || apart(at - width, at)) continue;
    const [one, other] = [first(left), first(at - width)];
    const root = Math.min(one, other);
    piece[one] = root;
    piece[other] = root;
    piece[at] = root;
  }
  for (let at = 0; at < mesh.length; at++) {
    if (piece[at] === -1) continue;
    // What comes before it is settled already.
    const root = piece[at] === at ? at : (piece[piece[at] as number] as number);
    piece[at] = root;
    size[root] = (size[root] as number) + 1;
  }
  const crumbs: number[][] = [];
  for (let at = 0; at < mesh.length; at++) {
    if (piece[at] !== at || (size[at] as number) >= CRUMB) continue;
    const squares = [at];
    for (const square of squares)
      besides(raster, square, (next) => {
        if (piece[next] === at && !squares.includes(next)) squares.push(next);
      });
    crumbs.push(squares);
  }
  return { piece, crumbs };
}

/** Tones in which no crumb of one lies within or beside another. */
export function evenTones(raster: Raster, tone: Uint8Array): Uint8Array {
  const even = tone.slice();
  for (const squares of piecesOf(raster, (p, q) => tone[p] !== tone[q]).crumbs) {
    const counts = new Map<number, number>();
    for (const at of squares) {
      besides(raster, at, (next) => {
        const other = even[next] as number;
        if (other !== tone[at]) counts.set(other, (counts.get(other) ?? 0) + 1);
      });
    }
    const [most] = [...counts].toSorted(([, a], [, b]) => b - a);
    if (most) for (const at of squares) even[at] = most[0];
  }
  return even;
}

/** The borders with every crumb taken into the piece that it lies nearest to in depth. */
export function withoutCrumbs(raster: Raster, tone: Uint8Array, border: Border): Border {
  const { mesh, depth } = raster;
  const { piece, crumbs } = piecesOf(raster, (p, q) => {
    const kind = border(p, q);
    return kind === 'fine' || kind === 'strong';
  });
  const isCrumb = new Uint8Array(mesh.length);
  for (const squares of crumbs) for (const at of squares) isCrumb[at] = 1;
  for (const squares of crumbs) {
    let [least, nearest] = [Number.POSITIVE_INFINITY, -1];
    for (const at of squares) {
      besides(raster, at, (next) => {
        const apart = Math.abs((depth[at] as number) - (depth[next] as number));
        if (isCrumb[next] === 0 && apart < least) [least, nearest] = [apart, piece[next] as number];
      });
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
