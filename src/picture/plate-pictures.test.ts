import { beforeAll, describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { chordPoints } from '../geometry/inside.ts';
import { signedArea } from '../geometry/path.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import type { DrawnShape } from '../pattern/drawing.ts';
import type { PlateFaces } from '../pattern/plate/plate-design.ts';
import { plateFrame } from '../pattern/plate/plate-frame.ts';
import { DEFAULT_PLATE_OPTIONS, type PlateOptions } from '../pattern/plate/plate-options.ts';
import { plateOutline } from '../pattern/plate/plate-outline.ts';
import { type PlateFigures, plateFigures } from '../pattern/plate/plate-report.ts';
import { degrees } from '../units/angle.ts';
import { flatMesh } from './flat-mesh.ts';
import { handShape } from './hand-shape.ts';
import { handSolid } from './hand-solid.ts';
import { type DrawnMoulded, platePose } from './moulded-hand.ts';
import { PLATE_PICTURES, platePictures } from './plate-pictures.ts';
import { loosePlate, plateOnHand, type SheetSurface } from './plate-surface.ts';
import { posedHand } from './posed-hand.ts';
import { screenFor } from './raster.ts';
import { cross, dot, minus, unit, type Vec } from './vec.ts';

function demoHand(): Hand {
  const read = readHand(demo);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const hand = demoHand();
const { skinClearance, thickness } = DEFAULT_PLATE_OPTIONS;

/** What a plate is drawn from, without its files. */
function figuresOf(faces: PlateFaces, angle: number, bend: PlateOptions['bend'] = 'straight'): PlateFigures {
  const options = { ...DEFAULT_PLATE_OPTIONS, bend };
  const design = { id: 'test', title: 'Test', faces, digits: ['index', 'long', 'ring', 'little'] as const, angle };
  const frame = plateFrame(hand, design, options);
  if (!frame.ok) throw new Error(JSON.stringify(frame.problems));
  const outlines = frame.value.faces.map((face) => plateOutline(face, options));
  return plateFigures(design, options, frame.value, outlines);
}

/** Of both faces of a sheet, mm2. */
function areaOf({ faces }: SheetSurface): number {
  return faces.triangles.reduce((sum, [a, b, c]) => {
    const [p, q, r] = [faces.points[a], faces.points[b], faces.points[c]] as [Vec, Vec, Vec];
    return sum + Math.hypot(...cross(minus(q, p), minus(r, p))) / 2;
  }, 0);
}

const area = (drawn: DrawnMoulded, tone: string) =>
  Math.abs(
    drawn.drawing.items
      .filter((item): item is DrawnShape => item.kind === 'shape' && item.fill !== null && item.role.startsWith(tone))
      .flatMap((item) => item.paths)
      .reduce((sum, path) => sum + signedArea(path), 0),
  );

describe('the flat mesh of a plate', () => {
  it('has the area of the outline, slot and all, and its rim goes once round', () => {
    const { outlines } = figuresOf('dorsal', 60, 'split');
    const outline = outlines[0]?.outline;
    if (!outline) throw new Error('no outline');
    const { points, triangles, rim } = flatMesh(chordPoints(outline), 1.4);
    const flat = triangles.reduce((sum, [a, b, c]) => {
      const [p, q, r] = [points[a], points[b], points[c]];
      return p && q && r ? sum + ((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)) / 2 : sum;
    }, 0);
    expect(flat / signedArea(outline)).toBeCloseTo(1, 2);
    // Each point of the rim is left once and reached once.
    expect(new Set(rim.map(([a]) => a)).size).toBe(rim.length);
    expect(new Set(rim.map(([, b]) => b)).size).toBe(rim.length);
  });
});

describe('what the last digit of a length may not change', () => {
  it('is which triangles an outline with a straight edge is cut into', () => {
    const cut = (low: number) =>
      flatMesh(
        [
          { x: 0, y: 0 },
          { x: 10, y: low },
          { x: 10, y: 7 },
          { x: 0, y: 7 },
        ],
        1.4,
      );
    expect(cut(1e-16).triangles).toEqual(cut(0).triangles);
    expect(cut(-1e-16).triangles).toEqual(cut(0).triangles);
  });
  it('is how many squares a picture has', () => {
    for (let k = 1; k <= 300; k++) {
      const mesh = { points: [[k / 7, k / 3, 0] as Vec, [k / 7 + 10 + k / 11, k / 3 + 5, 0] as Vec], normals: [], triangles: [] };
      expect(screenFor([mesh], (p) => p, 260).width, String(k)).toBe(264);
    }
  });
});

describe('a loose plate', () => {
  it('keeps its area when it is bent, and its fingers stand at the angle', () => {
    for (const [faces, angle] of [
      ['dorsal', 90],
      ['palmar', 30],
    ] as const) {
      const figures = figuresOf(faces, angle);
      const [flat, bent] = [loosePlate(figures, 0, 0), loosePlate(figures, 0, 1)];
      // Half the thickness to either side of the neutral line: what one face gains in the bend the other loses.
      expect(areaOf(bent) / areaOf(flat)).toBeCloseTo(1, 2);
      const far = bent.faces.triangles.reduce((a, b) =>
        (bent.faces.points[b[0]]?.[1] ?? 0) < (bent.faces.points[a[0]]?.[1] ?? 0) ? b : a,
      );
      const [p, q, r] = far.map((k) => bent.faces.points[k]) as [Vec, Vec, Vec];
      const turned = degrees(Math.acos(Math.abs(unit(cross(minus(q, p), minus(r, p)))[1])));
      const turns = (figures.frame.faces[0]?.parts ?? []).map((part) => Math.abs(turned - part.bend.turn));
      expect(Math.min(...turns)).toBeLessThan(0.05);
    }
  });
});

describe('a plate on the hand', () => {
  it('nowhere goes through the skin, and lies close to it over most of its area', () => {
    for (const [faces, angle, bend] of [
      ['dorsal', 0],
      ['dorsal', 90, 'split'],
      ['palmar', 45],
    ] as const) {
      const figures = figuresOf(faces, angle, bend);
      const posed = posedHand(handShape(hand), platePose(figures));
      const solid = handSolid(posed);
      const { faces: sheet } = plateOnHand(figures, 0, posed, solid, 2);
      const gaps = sheet.points.map((p) => solid.distance(...p)).sort((a, b) => a - b);
      expect(gaps[0], `${faces} ${angle}`).toBeGreaterThan(-1);
      expect(gaps[Math.floor(0.02 * gaps.length)], `${faces} ${angle}`).toBeGreaterThan(0);
      expect(gaps[Math.floor(0.8 * gaps.length)], `${faces} ${angle}`).toBeLessThan(skinClearance + thickness + 3);
    }
  });
  it('has every knuckle where a bent palm holds it', () => {
    const figures = figuresOf('dorsal', 90);
    const { fingers } = posedHand(handShape(hand), platePose(figures));
    const joint = (digit: string) => fingers.find((f) => f.shape.digit === digit)?.joints[0] as Vec;
    // At 90 degrees a joint that lies nearer to the wrist lies lower by as much, and no further back along the fingers.
    expect(joint('long')[1] - joint('little')[1]).toBeCloseTo(figures.frame.palm.setbacks.little, 6);
    expect(joint('long')[2] - joint('little')[2]).toBeCloseTo(0, 6);
  });
});

describe('the pictures of a plate', () => {
  const figures = figuresOf('dorsal', 45);
  const pictures = platePictures({ figures, hand, side: hand.side, step: 3, squares: 140 });
  const drawn = new Map<string, DrawnMoulded>();
  beforeAll(() => {
    for (const name of PLATE_PICTURES) drawn.set(name, pictures(name));
  }, 60_000);
  const shown = (name: (typeof PLATE_PICTURES)[number], tone: string) => area(drawn.get(name) as DrawnMoulded, tone);

  it('show what each step is about, and nothing that is not there yet', () => {
    const hasHand = PLATE_PICTURES.filter((name) => shown(name, 'skin') > 100);
    expect(hasHand).toEqual(['place', 'hold', 'fit', 'strap']);
    const plastic = PLATE_PICTURES.filter((name) => shown(name, 'strip') > 100);
    expect(plastic).toEqual(['outline', 'bend', 'fit', 'strap']);
    expect(shown('fit', 'done')).toBe(0);
    expect(shown('strap', 'done')).toBeGreaterThan(500);
  });
  it('hide a dorsal plate behind the hand when it is seen from the palm', () => {
    const palm = pictures('fit', { roll: 180, up: 62 });
    expect(area(palm, 'strip')).toBeLessThan(0.25 * shown('fit', 'strip'));
  });
  it('hold the gauge with its arms at the MP angle', () => {
    const { at, posed } = drawn.get('hold') as DrawnMoulded;
    const little = posed.fingers.at(-1)?.joints ?? [];
    const [mp, pip] = [little[0] as Vec, little[1] as Vec];
    const [a, b, c] = [at(mp), at(pip), at([mp[0], mp[1] - posed.along[1] * 30, mp[2] - posed.along[2] * 30])];
    const seen = degrees(Math.atan2(b.y - a.y, b.x - a.x) - Math.atan2(a.y - c.y, a.x - c.x));
    expect(Math.abs(seen)).toBeGreaterThan(40);
    expect(dot(posed.along, [0, 0, 1])).toBeCloseTo(Math.cos(Math.PI / 4), 9);
    expect(shown('hold', 'done')).toBeGreaterThan(1000);
  });
  it('show both straps whole over the back of a hand whose MP joints are bent', () => {
    const { drawing } = platePictures({ figures: figuresOf('palmar', 45), hand, side: hand.side, step: 2.8, squares: 260 })('strap');
    const lit = drawing.items.filter((item): item is DrawnShape => item.kind === 'shape' && item.fill === 'done');
    // mm2: of a strap seen edge-on only scraps are left.
    const pieces = lit.flatMap((item) => item.paths.map((path) => Math.abs(signedArea(path)))).toSorted((a, b) => b - a);
    expect(pieces).toHaveLength(2);
    expect(pieces[1]).toBeGreaterThan(400);
  });
  it('are drawn the same again, in the mirror for the other hand', () => {
    const again = platePictures({ figures, hand, side: hand.side === 'left' ? 'right' : 'left', step: 3, squares: 140 })('bend');
    const one = drawn.get('bend')?.drawing.extents;
    expect(again.drawing.extents.maxX).toBeCloseTo(one?.maxX ?? 0, -0.5);
    expect(pictures('bend').drawing).toEqual(drawn.get('bend')?.drawing);
  });
});
