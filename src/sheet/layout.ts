/** Which way a part's length lies to the sheet's grain (its roll direction): along it, across it, or as it fits best. */
export const GRAINS = ['along', 'across', 'free'] as const;
export type Grain = (typeof GRAINS)[number];

/** A part by its box, mm: `length` along its own x, `width` along its own y. */
export interface SheetPart {
  readonly id: string;
  readonly length: number;
  readonly width: number;
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
}

/** Where a part's box has its lower left corner, mm from the sheet's; `turned` a quarter turn counter-clockwise, its length along y. */
export interface Placement {
  /** Place of the part in the list. */
  readonly part: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface LaidSheet {
  readonly stock: StockSheet;
  readonly isRemnant: boolean;
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

/** Share of a sheet's area that its parts' boxes take. */
export function utilisation(sheet: LaidSheet, parts: readonly SheetPart[]): number {
  const used = sheet.placements.reduce((sum, { part }) => {
    const { length = 0, width = 0 } = parts[part] ?? {};
    return sum + length * width;
  }, 0);
  return used / (sheet.stock.along * sheet.stock.across);
}
