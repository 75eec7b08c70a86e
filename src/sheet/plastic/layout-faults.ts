import { insidePolygon } from '../../geometry/inside.ts';
import { type Box, boxOf, flattened, type LineArcPath, type Point } from '../../geometry/path.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { SAME_POINT } from '../../units/tolerance.ts';
import { type LaidSheet, type Layout, placedBox, placedOutline, type SheetPart, type StockSheet } from './layout.ts';
import { shearCuts } from './shear-cuts.ts';

/** A fault of a layout; `where` is the sheet and the part. */
interface LayoutFault {
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

/** How far chords may lie off the arcs, mm. */
const CHORD_ERROR = 0.004;

/**
 * Distance of two closed outlines, mm, never more than the true one and at most 0.01 mm less; 0 when they cross or one lies in the other. Beyond `enough`
 * the distance of the boxes is returned, which is no more than the true one either.
 */
export function outlineGap(one: LineArcPath, other: LineArcPath, enough: number): number {
  const [a, b] = [boxOf([one]), boxOf([other])];
  const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
  if (apart >= enough) return apart;
  const [p, q] = [flattened(one, CHORD_ERROR).vertices, flattened(other, CHORD_ERROR).vertices];
  if (insidePolygon(q, p[0] as Point) || insidePolygon(p, q[0] as Point)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, from] of p.entries()) {
    const to = p[(i + 1) % p.length] as Point;
    for (const [j, start] of q.entries()) {
      const end = q[(j + 1) % q.length] as Point;
      if (Math.max(boxApart(from.x, to.x, start.x, end.x), boxApart(from.y, to.y, start.y, end.y)) >= least) continue;
      least = Math.min(least, edgeGap(from, to, start, end));
      if (least === 0) return 0;
    }
  }
  return Math.max(0, least - 2 * CHORD_ERROR);
}

function boxApart(a: number, b: number, c: number, d: number): number {
  return Math.max(Math.min(a, b) - Math.max(c, d), Math.min(c, d) - Math.max(a, b));
}

function edgeGap(a: Point, b: Point, c: Point, d: Point): number {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) > 0 !== side(a, b, d) > 0 && side(c, d, a) > 0 !== side(c, d, b) > 0) return 0;
  return Math.min(pointGap(a, c, d), pointGap(b, c, d), pointGap(c, a, b), pointGap(d, a, b));
}

function pointGap(p: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - from.x) * dx + (p.y - from.y) * dy) / square));
  return Math.hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}
