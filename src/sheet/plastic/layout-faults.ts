import { type Box, boxOf } from '../../geometry/path.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import { type LaidSheet, type Layout, placedBox, placedOutline, type SheetPart, type StockSheet } from './layout.ts';
import { outlineGap } from './outline-gap.ts';
import { shearCuts } from './shear-cuts.ts';

/** A fault of a layout; `where` is the sheet and the part. */
export interface LayoutFault {
  readonly code:
    | 'PART_MISSING'
    | 'PART_TWICE'
    | 'PART_UNKNOWN'
    | 'OUTSIDE_MARGIN'
    | 'GAP'
    | 'GRAIN'
    | 'NOT_FOR_SHEARS'
    | 'STOCK'
    | 'BOUND'
    | 'OUTLINE';
  readonly where: string;
  readonly message: string;
}

/**
 * All faults of a layout, from its figures alone and in mm, nothing shared with the packing: every part once, inside the margins, gaps kept, grain
 * respected (between the true outlines on a sheet that is cut along them), every other sheet to be cut from edge to edge, every remnant used once at most, counts and bound in agreement. An empty list proves it.
 */
export function layoutFaults(layout: Layout, sheet: StockSheet, remnants: readonly StockSheet[]): readonly LayoutFault[] {
  const faults: LayoutFault[] = [];
  const add = (code: LayoutFault['code'], where: string, message: string) => faults.push({ code, where, message });
  const seen = new Array<number>(layout.parts.length).fill(0);
  for (const [s, laid] of layout.sheets.entries()) {
    for (const { part } of laid.placements) {
      if (seen[part] === undefined) add('PART_UNKNOWN', `sheet ${s + 1}`, `part ${part} is not in the list`);
      else seen[part]++;
    }
    faults.push(...sheetFaults(layout, laid, `sheet ${s + 1}`));
  }
  for (const [part, times] of seen.entries()) {
    const where = layout.parts[part]?.id ?? '';
    if (times === 0) add('PART_MISSING', where, 'is on no sheet');
    if (times > 1) add('PART_TWICE', where, `is laid ${times} times`);
  }
  const same = (a: StockSheet, b: StockSheet) => a.id === b.id && a.along === b.along && a.across === b.across;
  for (const remnant of remnants) {
    const used = layout.sheets.filter((laid) => laid.isRemnant && same(laid.stock, remnant)).length;
    if (used > remnants.filter((other) => same(other, remnant)).length) add('STOCK', remnant.id, `is used ${used} times`);
  }
  for (const laid of layout.sheets) {
    const known = laid.isRemnant ? remnants.some((remnant) => same(remnant, laid.stock)) : same(laid.stock, sheet);
    if (!known) add('STOCK', laid.stock.id, 'is not in stock');
  }
  const fresh = layout.sheets.filter((laid) => !laid.isRemnant).length;
  if (fresh !== layout.newSheets || layout.atLeast > fresh)
    add('BOUND', 'layout', `${fresh} new sheets, said to be ${layout.newSheets}, at least ${layout.atLeast}`);
  return faults;
}

/** The layout when it has no faults; else a refusal that asks for a report, since the fault is ours. */
export function provenLayout(layout: Layout, sheet: StockSheet, remnants: readonly StockSheet[]): Result<Layout> {
  const problems = layoutFaults(layout, sheet, remnants).map(
    ({ code, where, message }): Problem => ({
      code: `LAYOUT_${code}`,
      where,
      message: `${where}: ${message}. This is a fault of the program, nothing was written; please report the inputs.`,
      kind: 'refused',
    }),
  );
  return problems.length > 0 ? failure(...problems) : success(layout);
}

/** An outline that is not as large as its part is said to be; sizes in a list are rounded to a thousandth. */
function outlineFault(part: SheetPart): string | null {
  if (!part.outline) return null;
  const { minX, minY, maxX, maxY } = boxOf([part.outline]);
  const off = Math.max(Math.abs(minX), Math.abs(minY), Math.abs(maxX - part.length), Math.abs(maxY - part.width));
  return off <= 0.001 + SAME_POINT ? null : `its outline is ${off.toFixed(3)} mm off its box`;
}

function sheetFaults({ parts, rules }: Layout, { stock, placements, byOutline }: LaidSheet, where: string): readonly LayoutFault[] {
  const faults: LayoutFault[] = [];
  const laid = placements.flatMap((placement) => {
    const part = parts[placement.part];
    if (!part) return [];
    const outline = byOutline ? placedOutline(part, placement) : null;
    const wrong = outlineFault(part);
    if (wrong) faults.push({ code: 'OUTLINE', where: `${where}, ${part.id}`, message: wrong });
    return [{ id: part.id, turned: placement.turned, box: outline ? boxOf([outline]) : placedBox(part, placement), outline }];
  });
  for (const { id, turned, box } of laid) {
    const edges = [box.minX, box.minY, stock.along - box.maxX, stock.across - box.maxY];
    const least = Math.min(...edges);
    if (!(least >= rules.margin - SAME_POINT))
      faults.push({
        code: 'OUTSIDE_MARGIN',
        where: `${where}, ${id}`,
        message: `lies ${least.toFixed(2)} mm from the edge, under ${rules.margin}`,
      });
    if ((rules.grain === 'along' && turned) || (rules.grain === 'across' && !turned))
      faults.push({ code: 'GRAIN', where: `${where}, ${id}`, message: `does not lie ${rules.grain} the grain` });
  }
  const sorted = laid.toSorted((a, b) => a.box.minX - b.box.minX);
  for (const [i, one] of sorted.entries()) {
    for (const other of sorted.slice(i + 1)) {
      if (other.box.minX - one.box.maxX >= rules.gap) break;
      // Boxes keep the gap when they are that far apart in one direction.
      const boxes = Math.max(other.box.minX - one.box.maxX, other.box.minY - one.box.maxY, one.box.minY - other.box.maxY);
      const apart = one.outline && other.outline ? outlineGap(one.outline, other.outline, rules.gap) : boxes;
      if (apart < rules.gap - SAME_POINT)
        faults.push({
          code: 'GAP',
          where: `${where}, ${one.id} and ${other.id}`,
          message: `lie ${apart.toFixed(2)} mm apart, under ${rules.gap}`,
        });
    }
  }
  const sheet: Box = { minX: 0, minY: 0, maxX: stock.along, maxY: stock.across };
  const boxes = laid.map(({ box }) => box);
  if (faults.length === 0 && !byOutline && !shearCuts(boxes, sheet, rules.gap, Number.POSITIVE_INFINITY))
    faults.push({ code: 'NOT_FOR_SHEARS', where, message: 'cannot be cut from edge to edge' });
  return faults;
}
