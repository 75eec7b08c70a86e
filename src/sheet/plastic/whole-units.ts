/** Packing counts in whole tenths of a mm, so that sums are exact; a cut with shears is ten times coarser. */
const UNITS_PER_MM = 10;
/** Rounding of a length that came out of the geometry is not a tenth more. */
const ROUNDING = 1e-4;

/** A part's size, rounded up: it never takes more room than was counted. */
export function unitsUp(mm: number): number {
  return Math.ceil(mm * UNITS_PER_MM - ROUNDING);
}

/** Room on a sheet, rounded down. */
export function unitsDown(mm: number): number {
  return Math.floor(mm * UNITS_PER_MM + ROUNDING);
}

export function inMm(units: number): number {
  return units / UNITS_PER_MM;
}
