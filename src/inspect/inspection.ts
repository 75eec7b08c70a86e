import { boxIndex } from '../geometry/box-index.ts';
import { type Box, type Point, pointAlong, type Segment, segmentBox, segmentLength, unionBox } from '../geometry/path.ts';
import { nearestOn } from '../geometry/validate-outline.ts';
import { colourName } from './colour.ts';
import { type Contour, contoursOf, type OpenRun } from './contours.ts';
import {
  type Budget,
  type DeclaredSettings,
  declaredSettings,
  type Finding,
  FLATTENING,
  LIMITS,
  type ReadCurve,
  type ReadDrawing,
} from './drawing.ts';
import { edgeFindings } from './edge-findings.ts';
import { type Severity, severityOf } from './finding-kinds.ts';
import { layerFindings } from './layer-findings.ts';
import { areaOf, areasAround, CORNERS_AS_ONE, type Part, partsOf } from './parts.ts';
import { ROLES, type Role, type RoleRule, roleByName, rolesOf } from './roles.ts';

/** A finding with what it means for the one who cuts. */
export interface JudgedFinding extends Finding {
  readonly severity: Severity;
}

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
  /** A row for each layer and each role that its lines have. */
  readonly layers: readonly {
    readonly name: string;
    readonly role: Role;
    readonly curves: number;
    readonly length: number;
    readonly colours: readonly string[];
  }[];
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
  readonly findings: readonly JudgedFinding[];
}

/** On paper without layers, closed lines under this size are lettering, not parts. mm */
const SMALLEST_ON_PAPER = 10;
const SPECK = 1;
/** Ends so near to each other were meant to meet. mm */
const NEARLY_CLOSED = 0.5;
const TOUCHING = 0.02;
/** Rounding of written coordinates, mm. */
const BED_ROUNDING = 0.005;
/** Nothing that a hand therapist cuts is smaller or larger. mm */
const PLAUSIBLE = { least: 5, most: 1500 } as const;

/** What the person says of the drawing that is judged. */
export interface InspectSettings {
  /** Which colours and layers are for what. */
  readonly roles?: readonly RoleRule[];
  /** Size of the machine's bed in mm, lower left at 0,0. */
  readonly bed?: { readonly width: number; readonly height: number };
}

/** What is said of a file that was not read, or not to its end. */
export function notRead(format: string | null, finding: Finding): Inspection {
  return {
    format: format ?? 'unknown',
    version: null,
    unit: null,
    mmPerUnit: 1,
    frame: null,
    size: null,
    layers: [],
    parts: [],
    closedContours: 0,
    openContours: 0,
    kerf: null,
    lines: 0,
    arcs: 0,
    flattened: 0,
    flatteningError: FLATTENING,
    shortestEdge: null,
    cutLength: 0,
    markLength: 0,
    texts: 0,
    findings: judged([finding]),
  };
}

/** Measures and judges a drawing that a reader has read. */
export function judge(drawing: ReadDrawing, budget: Budget, settings: InspectSettings = {}): Inspection {
  const roleOf = rolesOf(drawing, settings.roles);
  const stated = declaredSettings(drawing.notes);
  const visible = drawing.curves.filter((curve) => !curve.hidden);
  const cut = visible.filter((curve) => roleOf(curve) === 'cut');
  const paper = drawing.format === 'pdf' && cut.length === 0;
  const { contours, open } = contoursOf(paper ? visible.filter((curve) => curve.closed) : cut, stated, budget);
  const areas = contours.map((contour) => areaOf(contour.segments));
  const parts = partsOf(contours, areas, budget).filter(
    ({ box }) => !paper || Math.max(box.maxX - box.minX, box.maxY - box.minY) >= SMALLEST_ON_PAPER,
  );
  const edges = visible.flatMap((curve) => curve.segments);
  const box = edges.length > 0 ? unionBox(edges.map(segmentBox)) : null;
  const findings: Finding[] = [...drawing.findings];
  if (edges.length === 0) findings.push({ code: 103, message: 'nothing is drawn' });
  findings.push(...sizeFindings(drawing, parts, box));
  if (!paper) {
    // No list of them is spread into arguments, of which a stack takes only so many.
    for (const finding of contourFindings(contours, open, cut, stated, budget)) findings.push(finding);
    for (const finding of edgeFindings(cut, contours, stated, budget)) findings.push(finding);
    findings.push(...orderFindings(visible, roleOf, parts, budget));
  }
  if (drawing.flattened > 0) {
    findings.push({
      code: 309,
      message: `${drawing.flattened} splines, ellipses or free curves: machines break them up each in its own way (here within ${FLATTENING} mm)`,
    });
  }
  findings.push(...layerFindings(drawing, roleOf, settings.roles ?? []));
  if (settings.bed) findings.push(...bedFindings(settings.bed, visible, roleOf));
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
    layers: layerRows(drawing, roleOf),
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
    markLength: length(visible.filter((curve) => roleOf(curve) === 'mark')),
    texts: drawing.texts.length,
    findings: judged(findings),
  };
}

/** In the order of their codes, with severity. Of many of one code the first are told, and how many there are. */
export function judged(findings: readonly Finding[]): readonly JudgedFinding[] {
  const counts = new Map<number, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  const told = new Map<number, number>();
  return findings
    .toSorted((a, b) => a.code - b.code)
    .flatMap((finding) => {
      const { code } = finding;
      const before = told.get(code) ?? 0;
      told.set(code, before + 1);
      if (before > LIMITS.told) return [];
      const more = (counts.get(code) ?? 0) - LIMITS.told;
      const shown = before < LIMITS.told ? finding : { code, message: `and ${more} more of this kind` };
      return [{ ...shown, severity: severityOf(code) }];
    });
}

function layerRows(drawing: ReadDrawing, roleOf: (curve: ReadCurve) => Role): Inspection['layers'] {
  const rows = new Map<string, { name: string; role: Role; curves: number; length: number; colours: Set<string> }>();
  for (const curve of drawing.curves) {
    const role = roleOf(curve);
    const key = JSON.stringify([curve.layer, role]);
    const row = rows.get(key) ?? { name: curve.layer, role, curves: 0, length: 0, colours: new Set<string>() };
    rows.set(key, row);
    row.curves++;
    row.length += lengthOf(curve.segments);
    const colour = colourName(curve);
    if (colour) row.colours.add(colour);
  }
  // Layers on which nothing is drawn are named all the same.
  const drawn = new Set(drawing.curves.map((curve) => curve.layer));
  const empty = drawing.layers.filter(({ name }) => !drawn.has(name));
  return [
    ...[...rows.values()]
      .sort((a, b) => ROLES.indexOf(a.role) - ROLES.indexOf(b.role))
      .map((row) => ({ ...row, colours: [...row.colours] })),
    ...empty.map(({ name }) => ({ name, role: roleByName(name) ?? ('info' as const), curves: 0, length: 0, colours: [] })),
  ];
}

/** The drawing must lie on the bed as it stands, since a machine takes 0,0 of the file for the corner of its bed or moves it there. */
function bedFindings(
  bed: { readonly width: number; readonly height: number },
  curves: readonly ReadCurve[],
  roleOf: (curve: ReadCurve) => Role,
): readonly Finding[] {
  const edges = curves.filter((curve) => roleOf(curve) !== 'info').flatMap((curve) => curve.segments);
  if (edges.length === 0) return [];
  const box = unionBox(edges.map(segmentBox));
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const size = `${width.toFixed(2)} x ${height.toFixed(2)} mm`;
  if (width > bed.width + BED_ROUNDING || height > bed.height + BED_ROUNDING) {
    const turned = width <= bed.height + BED_ROUNDING && height <= bed.width + BED_ROUNDING;
    return [
      {
        code: 211,
        message: `what is cut and marked is ${size}, the bed ${bed.width} x ${bed.height} mm${turned ? '; turned by 90 degrees it fits' : ''}`,
      },
    ];
  }
  const out = Math.max(-box.minX, -box.minY, box.maxX - bed.width, box.maxY - bed.height);
  if (out <= BED_ROUNDING) return [];
  return [
    { code: 211, message: `up to ${out.toFixed(2)} mm lie off the bed of ${bed.width} x ${bed.height} mm; moved to 0,0 it would fit` },
  ];
}

function lengthOf(segments: readonly Segment[]): number {
  return segments.reduce((sum, segment) => sum + segmentLength(segment), 0);
}

function sizeOf(box: Box | null): { width: number; height: number } | null {
  return box ? { width: box.maxX - box.minX, height: box.maxY - box.minY } : null;
}

function sizeFindings({ format, frame }: ReadDrawing, parts: readonly Part[], box: Box | null): readonly Finding[] {
  const findings: Finding[] = [];
  const largest = parts.reduce((most, { box: b }) => Math.max(most, b.maxX - b.minX, b.maxY - b.minY), 0);
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
  budget: Budget,
): readonly Finding[] {
  const findings: Finding[] = [];
  const edges = open.length === 0 ? [] : cut.flatMap((curve, of) => curve.segments.map((edge) => ({ edge, of })));
  const index = boxIndex(edges.map(({ edge }) => segmentBox(edge)));
  for (const run of open) {
    // A cut that begins and ends on other cuts bounds a part together with them, as edges do that are cut once for two parts.
    const own = new Set(run.curves);
    const touches = (p: Point) => {
      const near = index.meeting({ minX: p.x - TOUCHING, minY: p.y - TOUCHING, maxX: p.x + TOUCHING, maxY: p.y + TOUCHING });
      budget.compare(near.length / CORNERS_AS_ONE);
      return near.some((place) => {
        const { edge, of } = edges[place] as (typeof edges)[number];
        return !own.has(of) && nearestOn(edge, p).distance <= TOUCHING;
      });
    };
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

/** Nothing should be cut or drawn on a part once its outline is cut: it lies loose then. One such place, on the first part that has one. */
function orderFindings(
  curves: readonly ReadCurve[],
  roleOf: (curve: ReadCurve) => Role,
  parts: readonly Part[],
  budget: Budget,
): readonly Finding[] {
  const cut = curves.filter((curve) => roleOf(curve) === 'cut');
  const places = new Map(curves.map((curve, k) => [curve, k]));
  const done = parts.map(({ outline }) => places.get(cut[outline.order] as ReadCurve) ?? -1);
  const inside = areasAround(
    parts.map(({ outline }) => areaOf(outline.segments)),
    budget,
  );
  let found: { readonly part: number; readonly finding: Finding } | null = null;
  for (const [k, curve] of curves.entries()) {
    const [first] = curve.segments;
    if (!first || roleOf(curve) === 'info') continue;
    const middle = pointAlong(first, 0.5);
    for (const part of inside(middle)) {
      if (found !== null && part >= found.part) break;
      const { segments } = (parts[part] as Part).outline;
      if (k <= (done[part] as number)) continue;
      budget.compare(segments.length / CORNERS_AS_ONE);
      if (segments.some((segment) => nearestOn(segment, middle).distance <= TOUCHING)) continue;
      const what = roleOf(curve) === 'cut' ? 'a hole is cut' : 'a mark is drawn';
      found = {
        part,
        finding: { code: 409, message: `${what} after the outline around it: the part lies loose by then`, at: middle },
      };
    }
  }
  return found === null ? [] : [found.finding];
}
