import type { Box, Point } from '../geometry/path.ts';
import { unionBox } from '../geometry/path-measures.ts';
import { pointAlong, type Segment, segmentBox, segmentLength } from '../geometry/segment.ts';
import { nearestOn } from '../geometry/validate-outline.ts';
import { type Contour, contoursOf, type OpenRun } from './contours.ts';
import { type DeclaredSettings, declaredSettings } from './declared-settings.ts';
import { type Budget, type Finding, FLATTENING, type ReadCurve, type ReadDrawing } from './drawing.ts';
import { edgeFindings } from './edge-findings.ts';
import { layerFindings } from './layer-findings.ts';
import { areaOf, isInside, type Part, partsOf } from './parts.ts';
import { type Role, rolesOf } from './roles.ts';

/** What was read back from a file. Lengths in mm. */
export interface Inspection {
  readonly format: string;
  readonly version: string | null;
  readonly unit: string | null;
  readonly mmPerUnit: number;
  /** Page, viewBox or declared extents. */
  readonly frame: { readonly width: number; readonly height: number } | null;
  /** Box of all that is drawn. */
  readonly size: { readonly width: number; readonly height: number } | null;
  readonly layers: readonly { readonly name: string; readonly role: Role; readonly curves: number; readonly length: number }[];
  readonly parts: readonly {
    readonly layer: string;
    readonly width: number;
    readonly height: number;
    readonly holes: number;
    readonly cutLength: number;
  }[];
  readonly closedContours: number;
  readonly openContours: number;
  readonly kerf: number | null;
  readonly lines: number;
  readonly arcs: number;
  /** Splines, ellipses and free curves, read as chords within `flatteningError`. */
  readonly flattened: number;
  readonly flatteningError: number;
  /** Shortest edge that is cut. */
  readonly shortestEdge: number | null;
  readonly cutLength: number;
  readonly markLength: number;
  readonly texts: number;
  readonly findings: readonly Finding[];
}

/** On paper without layers, closed lines under this size are lettering, not parts. mm */
const SMALLEST_ON_PAPER = 10;
const SPECK = 1;
/** Ends so near to each other were meant to meet. mm */
const NEARLY_CLOSED = 0.5;
const TOUCHING = 0.02;
/** Nothing that a hand therapist cuts is smaller or larger. mm */
const PLAUSIBLE = { least: 5, most: 1500 } as const;

/** Measures and judges a drawing that a reader has read. */
export function judge(drawing: ReadDrawing, budget: Budget): Inspection {
  const roles = rolesOf(drawing);
  const stated = declaredSettings(drawing.notes);
  const visible = drawing.curves.filter((curve) => !curve.hidden);
  const cut = visible.filter((curve) => roles.get(curve.layer) === 'cut');
  const paper = drawing.format === 'pdf' && cut.length === 0;
  const { contours, open } = contoursOf(paper ? visible.filter((curve) => curve.closed) : cut, stated, budget);
  const areas = contours.map((contour) => areaOf(contour.segments));
  const parts = partsOf(contours, areas).filter(
    ({ box }) => !paper || Math.max(box.maxX - box.minX, box.maxY - box.minY) >= SMALLEST_ON_PAPER,
  );
  const edges = visible.flatMap((curve) => curve.segments);
  const box = edges.length > 0 ? unionBox(edges.map(segmentBox)) : null;
  const findings: Finding[] = [...drawing.findings];
  if (edges.length === 0) findings.push({ code: 103, message: 'nothing is drawn' });
  findings.push(...sizeFindings(drawing, parts, box));
  if (!paper)
    findings.push(
      ...contourFindings(contours, open, cut, stated),
      ...edgeFindings(cut, contours, stated, budget),
      ...orderFindings(visible, roles, parts),
    );
  if (drawing.flattened > 0) {
    findings.push({
      code: 309,
      message: `${drawing.flattened} splines, ellipses or free curves: machines break them up each in its own way (here within ${FLATTENING} mm)`,
    });
  }
  findings.push(...layerFindings(drawing, roles));
  if (stated.unclear) findings.push({ code: 504, message: 'the file states more than one kerf' });
  const length = (curves: readonly ReadCurve[]) => curves.reduce((sum, curve) => sum + lengthOf(curve.segments), 0);
  const cutEdges = cut.flatMap((curve) => curve.segments);
  return {
    format: drawing.format,
    version: drawing.version,
    unit: drawing.unit,
    mmPerUnit: drawing.mmPerUnit,
    frame: sizeOf(drawing.frame),
    size: sizeOf(box),
    layers: [...roles].map(([name, role]) => {
      const own = drawing.curves.filter((curve) => curve.layer === name);
      return { name, role, curves: own.length, length: length(own) };
    }),
    parts: parts.map(({ layer, box: b, holes, cutLength }) => ({
      layer,
      width: b.maxX - b.minX,
      height: b.maxY - b.minY,
      holes,
      cutLength,
    })),
    closedContours: contours.length,
    openContours: open.length,
    kerf: stated.kerf,
    lines: edges.filter((edge) => edge.bulge === 0).length,
    arcs: edges.filter((edge) => edge.bulge !== 0).length,
    flattened: drawing.flattened,
    flatteningError: FLATTENING,
    shortestEdge:
      cutEdges.length > 0 ? cutEdges.reduce((least, edge) => Math.min(least, segmentLength(edge)), Number.POSITIVE_INFINITY) : null,
    cutLength: length(cut),
    markLength: length(visible.filter((curve) => roles.get(curve.layer) === 'mark')),
    texts: drawing.texts.length,
    findings: [...findings].sort((a, b) => a.code - b.code),
  };
}

function lengthOf(segments: readonly Segment[]): number {
  return segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

function sizeOf(box: Box | null): { width: number; height: number } | null {
  return box ? { width: box.maxX - box.minX, height: box.maxY - box.minY } : null;
}

function sizeFindings({ format, frame }: ReadDrawing, parts: readonly Part[], box: Box | null): readonly Finding[] {
  const findings: Finding[] = [];
  const largest = Math.max(0, ...parts.map(({ box: b }) => Math.max(b.maxX - b.minX, b.maxY - b.minY)));
  if (parts.length > 0 && (largest < PLAUSIBLE.least || largest > PLAUSIBLE.most)) {
    findings.push({ code: 205, message: `the largest part is ${largest.toFixed(2)} mm: look at the units` });
  }
  if (!frame || !box) return findings;
  const out = Math.max(frame.minX - box.minX, frame.minY - box.minY, box.maxX - frame.maxX, box.maxY - frame.maxY);
  if (out > 0.05 && format === 'dxf')
    findings.push({ code: 207, message: `the declared extents ($EXTMIN, $EXTMAX) leave out up to ${out.toFixed(2)} mm of the drawing` });
  else if (out > 0.05) findings.push({ code: 208, message: `up to ${out.toFixed(2)} mm of the drawing lie outside its page` });
  return findings;
}

function contourFindings(
  contours: readonly Contour[],
  open: readonly OpenRun[],
  cut: readonly ReadCurve[],
  stated: DeclaredSettings,
): readonly Finding[] {
  const findings: Finding[] = [];
  const edges = cut.flatMap((curve, of) => curve.segments.map((edge) => ({ edge, of })));
  for (const run of open) {
    // A cut that begins and ends on other cuts bounds a part together with them, as edges do that are cut once for two parts.
    const own = new Set(run.curves);
    const touches = (p: Point) => edges.some(({ edge, of }) => !own.has(of) && nearestOn(edge, p).distance <= TOUCHING);
    if (touches(run.from) && touches(run.to)) continue;
    const size = `${lengthOf(run.segments).toFixed(1)} mm long`;
    if (run.gap > 0 && run.gap <= NEARLY_CLOSED && run.segments.length > 1) {
      findings.push({
        code: 302,
        message: `a contour on ${run.layer} (${size}) misses its own start by ${run.gap.toFixed(3)} mm`,
        at: run.to,
      });
    } else
      findings.push({
        code: 301,
        message: `a contour on ${run.layer} (${size}) is open: its ends are ${run.gap.toFixed(1)} mm apart`,
        at: run.from,
      });
  }
  const loose = contours.filter((contour) => contour.pieces > 1);
  if (loose.length > 0 && !stated.looseEdges) {
    const pieces = loose.reduce((sum, contour) => sum + contour.pieces, 0);
    findings.push({
      code: 307,
      message: `${loose.length} contours consist of ${pieces} loose pieces: a machine may cut them in any order, lifting in between`,
    });
  }
  const specks = contours.filter(({ segments }) => {
    const { minX, minY, maxX, maxY } = unionBox(segments.map(segmentBox));
    return Math.max(maxX - minX, maxY - minY) < SPECK;
  });
  const [first] = specks;
  if (first)
    findings.push({
      code: 312,
      message: `${specks.length} contours are smaller than ${SPECK} mm`,
      at: first.segments[0]?.from ?? { x: 0, y: 0 },
    });
  return findings;
}

/** Nothing should be cut or drawn on a part once its outline is cut: it lies loose then. */
function orderFindings(curves: readonly ReadCurve[], roles: ReadonlyMap<string, Role>, parts: readonly Part[]): readonly Finding[] {
  const cut = curves.filter((curve) => roles.get(curve.layer) === 'cut');
  const places = new Map(curves.map((curve, k) => [curve, k]));
  for (const { outline } of parts) {
    const last = cut[outline.order];
    const done = last ? (places.get(last) ?? -1) : -1;
    const area = areaOf(outline.segments);
    for (const [k, curve] of curves.entries()) {
      const [first] = curve.segments;
      if (k <= done || !first || roles.get(curve.layer) === 'info') continue;
      const middle = pointAlong(first, 0.5);
      if (!isInside(middle, area) || outline.segments.some((segment) => nearestOn(segment, middle).distance <= TOUCHING)) continue;
      const what = roles.get(curve.layer) === 'cut' ? 'a hole is cut' : 'a mark is drawn';
      return [{ code: 409, message: `${what} after the outline around it: the part lies loose by then`, at: middle }];
    }
  }
  return [];
}
