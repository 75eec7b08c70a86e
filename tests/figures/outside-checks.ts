import { Arc, Point as FlattenPoint, Segment as FlattenSegment, Polygon } from '@flatten-js/core';
import ellipe from '@stdlib/math-base-special-ellipe';
import makerjs from 'makerjs';
import { blocks } from '../../src/block/library.ts';
import { type Body, ellipsePerimeter } from '../../src/geometry/ellipse.ts';
import { completeE } from '../../src/geometry/elliptic.ts';
import { arcOf, boxOf, type LineArcPath, pathLength, segmentsOf, signedArea } from '../../src/geometry/path.ts';
import { type Contact, hullPerimeter, type Side, tautPath } from '../../src/geometry/taut-path.ts';
import { digitSection } from '../../src/hand/section.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import { stripFigures } from '../../src/pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { degrees } from '../../src/units/angle.ts';
import { parseLength, usRingCircumference } from '../../src/units/length.ts';
import { handOf, WORKED } from '../hands.ts';

/** One comparison with something outside the project. */
export interface OutsideCheck {
  readonly what: string;
  readonly ours: number;
  readonly outside: number;
  /** Decimals that the outside value is given with. */
  readonly decimals: number;
  readonly unit: string;
  readonly source: string;
}

const ABRAMOWITZ = 'Abramowitz & Stegun, Handbook of Mathematical Functions, table 17.1';
const BELTS = 'belt-length formulas of mechanical handbooks, exact';
const WORKED_SOURCE = 'worked hand, by an independent program';

/** Every comparison that needs no other program, in the order of the data's road. The outside values are typed here from their sources. */
export function outsideChecks(): readonly OutsideCheck[] {
  return [...units(), ...integrals(), ...perimeters(), ...belts(), ...workedExamples(), ...outlines()];
}

function units(): OutsideCheck[] {
  const length = (text: string, outside: number, source: string, decimals = 4): OutsideCheck => {
    const read = parseLength(text, 'mm', { ringSizes: true });
    return { what: `"${text}" as a length`, ours: read.ok ? read.mm : Number.NaN, outside, decimals, unit: 'mm', source };
  };
  const inch = 'the inch of 25.4 mm (CSS Values and Units; ISO 32000)';
  const us = (size: number, outside: number): OutsideCheck => ({
    what: `inner diameter of US ring size ${size}`,
    ours: usRingCircumference(size) / Math.PI,
    outside,
    decimals: 2,
    unit: 'mm',
    source: 'customary chart, 0.458 + 0.032 n inches; charts differ by up to 0.4 mm',
  });
  const iso = (size: number, outside: number): OutsideCheck => {
    const read = parseLength(`ring ${size}`, 'mm', { ringSizes: true });
    const what = `inner diameter of ISO ring size ${size}`;
    return { what, ours: read.ok ? read.mm / Math.PI : Number.NaN, outside, decimals: 1, unit: 'mm', source: 'ISO 8653' };
  };
  return [
    length('1 in', 25.4, inch),
    length('3 5/16 in', 84.1375, `${inch}, times 3 5/16`),
    length('1/16 in', 1.5875, `${inch}: sheet`),
    length('3/32"', 2.38125, `${inch}: sheet`, 5),
    length('1/8 in', 3.175, `${inch}: sheet`),
    length('8,45 cm', 84.5, 'decimal point moved by one'),
    iso(54, 17.2),
    iso(60, 19.1),
    iso(72, 22.9),
    us(0, 11.63),
    { ...us(1, 2.5535), what: 'step of US ring sizes, circumference', ours: usRingCircumference(1) - usRingCircumference(0), decimals: 4 },
    length('UK C', 40, 'BS EN 28653, at second hand', 2),
  ];
}

function integrals(): OutsideCheck[] {
  const table: readonly (readonly [number, number])[] = [
    [0, Math.PI / 2],
    [0.1, 1.5307576369],
    [0.25, 1.4674622093],
    [0.5, 1.350643881],
    [0.9, 1.1047747327],
    [1, 1],
  ];
  const worst = Array.from({ length: 1001 }, (_, k) => k / 1000).reduce((far, m) =>
    Math.abs(completeE(m) - ellipe(m)) > Math.abs(completeE(far) - ellipe(far)) ? m : far,
  );
  return [
    ...table.map(([m, outside]) => ({ what: `E(m = ${m})`, ours: completeE(m), outside, decimals: 10, unit: '', source: ABRAMOWITZ })),
    {
      what: 'E(m), the farthest apart of 1001 m from 0 to 1',
      ours: completeE(worst),
      outside: ellipe(worst),
      decimals: 10,
      unit: '',
      source: '@stdlib/math-base-special-ellipe',
    },
  ];
}

function perimeters(): OutsideCheck[] {
  const ellipse = (a: number, b: number, outside: number, decimals: number): OutsideCheck => ({
    what: `perimeter of the ellipse ${a} x ${b} (semi-axes)`,
    ours: ellipsePerimeter(a, b),
    outside,
    decimals,
    unit: 'mm',
    source: 'mathematics, computed two ways',
  });
  return [
    ellipse(1.2, 1, 6.925791195, 9),
    ellipse(1.5, 1, 7.932719795, 9),
    ellipse(2, 1, 9.68844822, 8),
    ellipse(3, 1, 13.36489322, 8),
    ellipse(10, 8, 56.723336, 6),
    {
      what: 'perimeter of a measured joint, breadth 13.0, depth 11.3',
      ours: ellipsePerimeter(6.5, 5.65),
      outside: 38.22,
      decimals: 2,
      unit: 'mm',
      source: 'Nag, Nag, Desai, Indian J Med Res 2003;117:260-269 (its printed 57.0 is refused)',
    },
    {
      what: 'ellipse 20 x 16 offset by 1.2',
      ours: hullPerimeter([{ center: { x: 0, y: 0 }, a: 10, b: 8, offset: 1.2 }]) ?? Number.NaN,
      outside: 64.263158,
      decimals: 6,
      unit: 'mm',
      source: "Steiner's formula",
    },
  ];
}

function belts(): OutsideCheck[] {
  const disc = (x: number, radius: number): Body => ({ center: { x, y: 0 }, a: radius, b: radius, offset: 0 });
  const belt = (big: number, small: number, apart: number, side: Side, outside: number, decimals: number): OutsideCheck => {
    const contact = (body: Body, at: Side): Contact => ({ body, side: at, hold: 'round', name: '' });
    const path = tautPath([contact(disc(0, big / 2), 1), contact(disc(apart, small / 2), side)]);
    const what = `${side === 1 ? 'open' : 'crossed'} belt, discs ${big} and ${small} at ${apart}`;
    return { what, ours: path.ok ? path.length : Number.NaN, outside, decimals, unit: 'mm', source: BELTS };
  };
  return [
    belt(300, 150, 600, 1, 1916.2456, 4),
    belt(300, 150, 600, -1, 1992.2667, 4),
    belt(10, 5, 20, 1, 63.874854, 6),
    belt(10, 5, 20, -1, 66.408889, 6),
    belt(20, 20, 22, 1, 106.831853, 6),
    belt(20, 20, 22, -1, 126.806022, 6),
  ];
}

function workedExamples(): OutsideCheck[] {
  const path = (id: string, closure: 'tacked' | 'spanning', outside: number): OutsideCheck => {
    const block = blocks().find((b) => b.id === id);
    const found = block ? stripFigures(handOf(WORKED), block, { ...DEFAULT_STRIP_OPTIONS, closure }) : null;
    const ours = found?.ok ? found.value.path.pathLength : Number.NaN;
    return { what: `path length, ${id}, ${closure}`, ours, outside, decimals: 3, unit: 'mm', source: WORKED_SOURCE };
  };
  const depth = (name: string, width: number, circumference: number, outside: number): OutsideCheck => {
    const section = digitSection(width, circumference);
    const ours = section.ok ? 2 * section.value.halfDepth : Number.NaN;
    return {
      what: `depth of the ${name} finger, ${width} wide, ${circumference} round`,
      ours,
      outside,
      decimals: 3,
      unit: 'mm',
      source: WORKED_SOURCE,
    };
  };
  return [
    depth('index', 17.5, 57, 18.776),
    depth('ring', 16.5, 53, 17.237),
    depth('little', 14.5, 47, 15.414),
    path('long-raised-in-three', 'tacked', 160.347),
    path('long-raised-in-three', 'spanning', 157.527),
    path('long-lowered-in-three', 'tacked', 160.347),
    path('ring-raised-in-three', 'tacked', 152.7),
    path('long-and-ring-raised-in-four', 'tacked', 189.351),
    path('ring-raised-in-four', 'tacked', 189.56),
  ];
}

function outlines(): OutsideCheck[] {
  return blocks().flatMap((block): OutsideCheck[] => {
    const made = makePattern({ kind: 'strip', hand: handOf(WORKED), block, options: DEFAULT_STRIP_OPTIONS, date: null });
    const outline = made.ok ? made.value.pattern.parts[0]?.outline : undefined;
    if (!outline) throw new Error(`no outline of ${block.id}`);
    const box = boxOf([outline]);
    const { area, length, width } = judged(outline);
    const row = { decimals: 6, source: '@flatten-js/core' };
    const makerjsRow = { decimals: 6, unit: 'mm', source: 'makerjs' };
    return [
      { ...row, what: `area of the cut outline, ${block.id}`, ours: signedArea(outline), outside: area, unit: 'mm²' },
      { ...makerjsRow, what: `length of the cut, ${block.id}`, ours: pathLength(outline), outside: length },
      { ...makerjsRow, what: `length of the strip, ${block.id}`, ours: box.maxX - box.minX, outside: width },
    ];
  });
}

/** Area by one library, length of the cut and width of the box by another. */
function judged(outline: LineArcPath): { readonly area: number; readonly length: number; readonly width: number } {
  const segments = segmentsOf(outline);
  const edges = segments.map((s) => {
    const arc = arcOf(s);
    if (!arc) return new FlattenSegment(new FlattenPoint(s.from.x, s.from.y), new FlattenPoint(s.to.x, s.to.y));
    return new Arc(new FlattenPoint(arc.center.x, arc.center.y), arc.radius, arc.startAngle, arc.startAngle + arc.sweep, arc.sweep > 0);
  });
  const paths = Object.fromEntries(
    segments.map((s, k) => {
      const arc = arcOf(s);
      if (!arc) return [`s${k}`, new makerjs.paths.Line([s.from.x, s.from.y], [s.to.x, s.to.y])];
      const [from, to] = [arc.startAngle, arc.startAngle + arc.sweep].sort((a, b) => a - b).map(degrees);
      return [`s${k}`, new makerjs.paths.Arc([arc.center.x, arc.center.y], arc.radius, from ?? 0, to ?? 0)];
    }),
  );
  const extents = makerjs.measure.modelExtents({ paths });
  return { area: new Polygon(edges).area(), length: makerjs.measure.modelPathLength({ paths }), width: extents?.width ?? Number.NaN };
}
