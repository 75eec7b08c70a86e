import { boxOf, type LineArcPath, polyline, signedArea } from '../../geometry/path.ts';
import { placePath } from '../../geometry/transform.ts';

/** Which way a part's length lies to the sheet's grain (its roll direction): along it, across it, or as it fits best. */
export const GRAINS = ['along', 'across', 'free'] as const;
export type Grain = (typeof GRAINS)[number];

/** A part by its box, mm: `length` along its own x, `width` along its own y. */
export interface SheetPart {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  /** The true outline where it leaves much of the box free, its box's lower left corner at (0, 0). */
  readonly outline?: LineArcPath;
}

/** A sheet of plastic or a remnant, mm; the grain runs along `along`, which is drawn as x. */
export interface StockSheet {
  readonly id: string;
  readonly along: number;
  readonly across: number;
}

/** Room between parts and to the sheet's edge, mm: two numbers, as in every file (output rule 11). */
export interface LayRules {
  readonly gap: number;
  readonly margin: number;
  readonly grain: Grain;
  /** For shears alone: parts are boxes that touch, and every straight cut is told. */
  readonly shears?: boolean;
}

/**
 * Where a part's box has its lower left corner, mm from the sheet's; `turned` a quarter turn counter-clockwise, its length along y; `half` half a turn
 * (besides).
 */
export interface Placement {
  /** Place of the part in the list. */
  readonly part: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
  readonly half?: boolean;
}

export interface LaidSheet {
  readonly stock: StockSheet;
  readonly isRemnant: boolean;
  /** Outlines keep the gap, boxes need not: the parts are cut out along their outlines, no shears run between them. */
  readonly byOutline?: boolean;
  readonly placements: readonly Placement[];
}

export interface Layout {
  readonly parts: readonly SheetPart[];
  readonly rules: LayRules;
  readonly sheets: readonly LaidSheet[];
  /** New sheets, remnants not counted. */
  readonly newSheets: number;
  /** Proven: no layout, of whatever kind, needs fewer new sheets. */
  readonly atLeast: number;
}

/** The box of a placed part, mm. */
export function placedBox(part: SheetPart, { x, y, turned }: Placement): { minX: number; minY: number; maxX: number; maxY: number } {
  return { minX: x, minY: y, maxX: x + (turned ? part.width : part.length), maxY: y + (turned ? part.length : part.width) };
}

/** Turn of a placed part, radians. */
export function turnOf({ turned, half }: Pick<Placement, 'turned' | 'half'>): number {
  return (turned ? Math.PI / 2 : 0) + (half ? Math.PI : 0);
}

/** The outline of a part where it lies, mm from the sheet's corner; its box when it has none of its own. */
export function placedOutline(part: SheetPart, placement: Placement): LineArcPath {
  const { length, width } = part;
  const corners = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
  const lying = placePath(part.outline ?? polyline(corners, true), { angle: turnOf(placement), dx: 0, dy: 0 });
  const box = boxOf([lying]);
  return placePath(lying, { dx: placement.x - box.minX, dy: placement.y - box.minY });
}

/** Area of a part, mm²: of its true outline where that is known, else of its box. */
export function areaOf({ length, width, outline }: SheetPart): number {
  return outline ? Math.abs(signedArea(outline)) : length * width;
}

/** Share of a sheet's area that its parts take. */
export function utilisation(sheet: LaidSheet, parts: readonly SheetPart[]): number {
  const used = sheet.placements.reduce((sum, { part }) => sum + (parts[part] ? areaOf(parts[part]) : 0), 0);
  return used / (sheet.stock.along * sheet.stock.across);
}
