import { type Box, type LineArcPath, type Point, pointsAlong, segmentLength, segmentsOf } from '../../geometry/path.ts';

/** How far neighbouring tiles show the same, mm; output rule 5 asks for 10 or more. */
export const OVERLAP = 12;
/** A cross keeps this far from the ends of its overlap. mm */
const CROSS_INSET = 4;
/** Rooms about a cross's middle that are kept free of words where it can be: of its arms and letters, or at least of its letters. mm */
const CROSS_ROOMS: readonly Box[] = [
  { minX: -3.2, minY: -3.2, maxX: 4.5, maxY: 3.2 },
  { minX: 0.8, minY: 0.8, maxX: 4.5, maxY: 3 },
];
/** By how much a cross is moved along its overlap at a time, to stand clear of words. mm */
const CROSS_STEP = 1;
/** Points of an outline are tried at this distance; a tile with less of it than that shows nothing of use. mm */
const TRIED_EACH = 0.25;

/** One page of a drawing that is larger than a page. Rows are counted from the top, columns from the left, both from 1. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  /** What it shows, in the drawing's mm. */
  readonly window: Box;
}

/** A register mark: the same point of the drawing on every tile that shows it. */
export interface RegisterCross {
  readonly name: string;
  readonly at: Point;
}

export interface TileGrid {
  readonly rows: number;
  readonly columns: number;
  /** Only tiles that show something, row by row. */
  readonly tiles: readonly Tile[];
  readonly crosses: readonly RegisterCross[];
}

/**
 * Covers `extent` with the fewest equal windows of at most `most`, each overlapping its neighbours by `OVERLAP`. Windows in which none of
 * `paths` is seen are left out. Null when a window has no room beyond the overlap.
 * @param words boxes that no register cross stands on, where its overlap has room elsewhere
 */
export function tileGrid(
  extent: Box,
  most: { readonly width: number; readonly height: number },
  paths: readonly LineArcPath[],
  words: readonly Box[] = [],
): TileGrid | null {
  const across = windows(extent.minX, extent.maxX, most.width);
  const up = windows(extent.minY, extent.maxY, most.height);
  if (!across || !up) return null;
  const points = paths.flatMap(pointsOn);
  const tiles: Tile[] = [];
  for (const [r, [minY, maxY]] of [...up].reverse().entries()) {
    for (const [c, [minX, maxX]] of across.entries()) {
      const window = { minX, minY, maxX, maxY };
      if (points.some((p) => contains(window, p))) tiles.push({ row: r + 1, column: c + 1, window });
    }
  }
  return { rows: up.length, columns: across.length, tiles, crosses: crossesOf(tiles, words) };
}

/** Equal spans that cover from..to, the fewest of at most `most`. */
function windows(from: number, to: number, most: number): readonly (readonly [number, number])[] | null {
  if (to - from <= most) return [[from, to]];
  if (most <= 2 * OVERLAP) return null;
  const count = Math.ceil((to - from - OVERLAP) / (most - OVERLAP) - 1e-9);
  const size = (to - from + (count - 1) * OVERLAP) / count;
  return Array.from({ length: count }, (_, k) => {
    const start = from + k * (size - OVERLAP);
    return [start, k === count - 1 ? to : start + size] as const;
  });
}

/** Two crosses in every overlap of two tiles side by side or one above the other, named A, B, ... in the order of the tiles. */
function crossesOf(tiles: readonly Tile[], words: readonly Box[]): readonly RegisterCross[] {
  const at: Point[] = [];
  const put = (from: Point, to: Point) => {
    at.push(clearOf([...words, ...at.map((p) => roomAt(p, CROSS_ROOMS[0] as Box))], from, to));
  };
  for (const tile of tiles) {
    const right = tiles.find((t) => t.row === tile.row && t.column === tile.column + 1);
    const below = tiles.find((t) => t.row === tile.row + 1 && t.column === tile.column);
    if (right) {
      const x = (right.window.minX + tile.window.maxX) / 2;
      const [low, high] = [tile.window.minY + CROSS_INSET, tile.window.maxY - CROSS_INSET];
      put({ x, y: high }, { x, y: low });
      put({ x, y: low }, { x, y: high });
    }
    if (below) {
      const y = (below.window.maxY + tile.window.minY) / 2;
      const [left, right] = [tile.window.minX + CROSS_INSET, tile.window.maxX - CROSS_INSET];
      put({ x: left, y }, { x: right, y });
      put({ x: right, y }, { x: left, y });
    }
  }
  return at.map((point, k) => ({ name: letters(k), at: point }));
}

/** The first place from one end of an overlap to the other where a cross stands on nothing that is taken; the end itself where there is none. */
function clearOf(taken: readonly Box[], end: Point, other: Point): Point {
  const length = Math.hypot(other.x - end.x, other.y - end.y);
  for (const room of CROSS_ROOMS) {
    for (let along = 0; along <= length; along += CROSS_STEP) {
      const t = length === 0 ? 0 : along / length;
      const p = { x: end.x + t * (other.x - end.x), y: end.y + t * (other.y - end.y) };
      const own = roomAt(p, room);
      if (taken.every((b) => own.maxX < b.minX || own.minX > b.maxX || own.maxY < b.minY || own.minY > b.maxY)) return p;
    }
  }
  return end;
}

function roomAt({ x, y }: Point, room: Box): Box {
  return { minX: x + room.minX, maxX: x + room.maxX, minY: y + room.minY, maxY: y + room.maxY };
}

/** A, B, ..., Z, AA, AB, ... */
function letters(k: number): string {
  const last = String.fromCharCode(65 + (k % 26));
  return k < 26 ? last : `${letters(Math.floor(k / 26) - 1)}${last}`;
}

function pointsOn(path: LineArcPath): readonly Point[] {
  return segmentsOf(path).flatMap((segment) => {
    const points = pointsAlong(segment, Math.max(1, Math.ceil(segmentLength(segment) / TRIED_EACH)));
    return [...points, segment.to];
  });
}

export function contains(box: Box, p: Point): boolean {
  return p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;
}
