import type { Grain, LayRules, Placement, SheetPart, StockSheet } from './layout.ts';

/** Packing counts in whole tenths of a mm, so that sums are exact; a cut with shears is ten times coarser. */
const UNITS_PER_MM = 10;
/** Rounding of a length that came out of the geometry is not a tenth more. */
const ROUNDING = 1e-4;

/** A part's size, rounded up: it never takes more room than was counted. */
function unitsUp(mm: number): number {
  return Math.ceil(mm * UNITS_PER_MM - ROUNDING);
}

/** Room on a sheet, rounded down. */
function unitsDown(mm: number): number {
  return Math.floor(mm * UNITS_PER_MM + ROUNDING);
}

function inMm(units: number): number {
  return units / UNITS_PER_MM;
}

/** A part as the packing sees it: whole units, the gap to its right and above included. */
export interface PackPart {
  readonly part: number;
  readonly length: number;
  readonly width: number;
}

/** Room of a sheet in whole units; the gap behind the last part is added, since it needs none. */
export interface Room {
  readonly along: number;
  readonly across: number;
}

/** A part put down, whole units from the lower left corner of the room. */
export interface Put {
  readonly part: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export function packParts(parts: readonly SheetPart[], rules: LayRules): readonly PackPart[] {
  const gap = unitsUp(rules.gap);
  return parts.map(({ length, width }, part) => ({ part, length: unitsUp(length) + gap, width: unitsUp(width) + gap }));
}

export function roomOf(stock: StockSheet, rules: LayRules): Room {
  const gap = unitsUp(rules.gap);
  const margin = unitsUp(rules.margin);
  return { along: unitsDown(stock.along) - 2 * margin + gap, across: unitsDown(stock.across) - 2 * margin + gap };
}

export function placementOf({ part, x, y, turned }: Put, rules: LayRules): Placement {
  const margin = unitsUp(rules.margin);
  return { part, x: inMm(x + margin), y: inMm(y + margin), turned };
}

/** The ways in which a grain lets a part lie. */
export function turnsOf(grain: Grain): readonly boolean[] {
  return grain === 'along' ? [false] : grain === 'across' ? [true] : [false, true];
}

export function fits({ length, width }: PackPart, room: Room, turned: boolean): boolean {
  return turned ? width <= room.along && length <= room.across : length <= room.along && width <= room.across;
}

/** The same room and what is put in it, with x and y exchanged: parts that lie along then lie across. */
export function exchanged(room: Room): Room {
  return { along: room.across, across: room.along };
}

export function exchangedPut({ part, x, y, turned }: Put): Put {
  return { part, x: y, y: x, turned: !turned };
}
