import { describe, expect, it } from 'vitest';
import { boxOf, type LineArcPath, type Point, vertex } from '../src/geometry/path.ts';
import { DIGITS } from '../src/hand/digits.ts';
import { newBudget } from '../src/inspect/drawing.ts';
import { readSvg } from '../src/inspect/svg/read-svg.ts';
import type { DrawnMark, DrawnPlate } from '../src/judge/flat-plate.ts';
import { judgePlate } from '../src/judge/judge-plate.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import { DEFAULT_PLATE_OPTIONS, type PlateOptions } from '../src/pattern/plate/plate-options.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { demoPlateHand } from './demo-plate.ts';

const hand = demoPlateHand();
const options = DEFAULT_PLATE_OPTIONS;

/** The plate's SVG, as it is saved. */
function fileOf(faces: 'dorsal' | 'palmar', angle: number, more: Partial<PlateOptions> = {}) {
  const plate = { id: 'test', title: 'Test', faces, digits: [...DIGITS], angle };
  const made = makePattern({ kind: 'plate', hand, plate, options: { ...options, ...more }, date: null });
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join('\n'));
  const svg = svgNodeWriter.write(made.value.pattern);
  if (!svg.ok || typeof svg.value !== 'string') throw new Error('not written');
  return { svg: svg.value, report: made.value.report.faces[0] };
}

/** What the file draws: each line's curves by the SVG reader, its meaning by the file's own role and title; nothing of the layout's. */
function readBack(svg: string, faces: 'dorsal' | 'palmar', angle: number): DrawnPlate {
  const { curves } = readSvg(svg, newBudget(svg.length));
  const named = [...svg.matchAll(/<path\b([^>]*)>(?:<title>([^<]*)<\/title>)?/g)].map(([, attributes = '', title = '']) => ({
    role: /data-role="([^"]*)"/.exec(attributes)?.[1] ?? '',
    title,
    d: / d="([^"]*)"/.exec(attributes)?.[1] ?? '',
  }));
  // The reader gives a curve for each move of a path, in the file's order.
  const marks: DrawnMark[] = [];
  let outline: LineArcPath | null = null;
  let at = 0;
  for (const { role, title, d } of named) {
    const moves = d.match(/[Mm]/g)?.length ?? 0;
    const own = curves.slice(at, at + moves);
    at += moves;
    const paths = own.map((curve): LineArcPath => {
      const [first] = curve.segments;
      const start = first ? [vertex(first.from.x, first.from.y, first.bulge)] : [];
      const rest = curve.segments.slice(1).map((s) => vertex(s.from.x, s.from.y, s.bulge));
      const last = curve.segments.at(-1);
      return { closed: curve.closed, vertices: [...start, ...rest, ...(last && !curve.closed ? [vertex(last.to.x, last.to.y)] : [])] };
    });
    if (role === 'outline') outline = paths[0] ?? null;
    else if (role === 'mp-joint') {
      const circles = paths.map((path) => {
        const { minX, maxX, minY, maxY } = boxOf([path]);
        return { center: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, radius: (maxX - minX) / 2 };
      });
      marks.push({ role, title, paths: [], circles });
    } else marks.push({ role, title, paths, circles: [] });
  }
  if (!outline || at !== curves.length)
    throw new Error(`the file's paths and the reader's curves do not agree: ${at} and ${curves.length}`);
  const { thickness, skinClearance: clearance } = options;
  return { outline, marks, face: faces, side: hand.side, digits: [...DIGITS], angle, thickness, clearance };
}

function judged(drawn: DrawnPlate) {
  const found = judgePlate(drawn, hand, options.webGap);
  if (!found) throw new Error('cannot be folded');
  return found;
}

/** The drawing with its marks of some roles moved. */
function spoilt(drawn: DrawnPlate, roles: readonly string[], move: (p: Point, mark: DrawnMark) => Point): DrawnPlate {
  const marks = drawn.marks.map((mark) =>
    roles.includes(mark.role)
      ? {
          ...mark,
          paths: mark.paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, ...move(v, mark) })) })),
          circles: mark.circles.map((c) => ({ ...c, center: move(c.center, mark) })),
        }
      : mark,
  );
  return { ...drawn, marks };
}

describe.each([
  ['dorsal', 45],
  ['dorsal', 90],
  ['palmar', 30],
] as const)('a %s plate at %d degrees, read from its file', (faces, angle) => {
  const { svg, report } = fileOf(faces, angle);
  const drawn = readBack(svg, faces, angle);
  const right = judged(drawn);

  it('folds as the report says', () => {
    expect(right.stretch).toBeCloseTo(report?.fold.stretch ?? Number.NaN, 3);
    for (const key of ['leastGap', 'worstGap', 'mpMiss', 'pipClearance', 'wristClearance'] as const)
      expect(right[key]).toBeCloseTo(report?.fold[key] ?? Number.NaN, 1);
  });
  it('touches nothing that it should not', () => {
    // Half a millimetre is what skin gives way by, and where the report begins to warn.
    expect(right.leastGap).toBeGreaterThan(-0.5);
    expect(right.pipClearance).toBeGreaterThan(options.pipClearance - 0.05);
    expect(right.wristClearance).toBeGreaterThan(options.wristClearance);
    expect(right.sideMiss).toBeLessThan(1.1);
  });
});

describe('the judge of a dorsal plate at 60 degrees', () => {
  const drawn = readBack(fileOf('dorsal', 60).svg, 'dorsal', 60);
  const right = judged(drawn);
  const bend = ['mp-bend', 'bend-limit'];

  it('sees a bend that is marked too near to the wrist: the plate presses into the knuckles', () => {
    expect(judged(spoilt(drawn, bend, (p) => ({ x: p.x, y: p.y - 4 }))).leastGap).toBeLessThan(-1.5);
  });
  it('sees a bend that is marked too far distal: the fingers hang free of the plate', () => {
    expect(judged(spoilt(drawn, bend, (p) => ({ x: p.x, y: p.y + 4 }))).worstGap).toBeGreaterThan(right.worstGap + 1.5);
  });
  it('sees a bend of a wrong radius: with the radius of half of the hand it cuts the corner over the knuckles', () => {
    const wider = spoilt(drawn, ['bend-limit'], (p, mark) => ({ x: p.x, y: p.y + (mark.title.includes('begins') ? -3 : 3) }));
    expect(judged(wider).leastGap).toBeLessThan(right.leastGap - 0.5);
  });
  it("sees marked MP joints that are not the hand's", () => {
    const moved = judged(spoilt(drawn, ['mp-joint'], (p) => ({ x: p.x, y: p.y + 5 })));
    expect(moved.leastGap).toBeLessThan(-1.5);
  });
  it('sees a bend line that runs another way than the joints', () => {
    const middle = boxOf([drawn.outline]);
    const slanted = spoilt(drawn, bend, (p) => ({ x: p.x, y: p.y + 0.15 * (p.x - (middle.minX + middle.maxX) / 2) }));
    expect(judged(slanted).mpMiss).toBeGreaterThan(right.mpMiss + 0.5);
    expect(judged(slanted).swing).toBeGreaterThan(1);
  });
  it('sees a wing that runs on to the thumb web, and a plate that is too long at either end', () => {
    const { minX, minY, maxY } = boxOf([drawn.outline]);
    const wing = {
      ...drawn.outline,
      vertices: drawn.outline.vertices.map((v) => (v.x < minX + 12 && v.y < minY + 60 ? { ...v, y: v.y - 6 } : v)),
    };
    expect(right.thumbClearance).toBeGreaterThan(4.9);
    expect(judged({ ...drawn, outline: wing }).thumbClearance).toBeLessThan(1);
    const longer = { ...drawn.outline, vertices: drawn.outline.vertices.map((v) => (v.y > maxY - 15 ? { ...v, y: v.y + 3 } : v)) };
    expect(judged({ ...drawn, outline: longer }).pipClearance).toBeLessThan(right.pipClearance - 2.5);
    const lower = { ...drawn.outline, vertices: drawn.outline.vertices.map((v) => (v.y < minY + 14 ? { ...v, y: v.y - 3 } : v)) };
    expect(judged({ ...drawn, outline: lower }).wristClearance).toBeLessThan(right.wristClearance - 2.5);
  });
  it('sees mid-lateral lines that are not at the side of the hand', () => {
    expect(judged(spoilt(drawn, ['fold'], (p) => ({ x: p.x + 5, y: p.y }))).sideMiss).toBeGreaterThan(4);
  });
  it('folds nothing that lacks a line', () => {
    const { thickness, ...rest } = drawn;
    for (const role of ['mp-joint', 'mp-bend', 'midline'])
      expect(judgePlate({ ...rest, thickness, marks: drawn.marks.filter((m) => m.role !== role) }, hand, options.webGap)).toBeNull();
  });
});

describe('ways to fold', () => {
  it('straight and split keep every length, kinked does not; each costs what its report says', () => {
    for (const [bend, angle] of [
      ['straight', 45],
      ['split', 90],
    ] as const) {
      const found = judged(readBack(fileOf('dorsal', angle, { bend }).svg, 'dorsal', angle));
      expect(found.stretch).toBeLessThan(0.001);
      expect(found.shear).toBeLessThan(0.1);
      expect(found.swing).toBeLessThan(0.5);
    }
    const { svg, report } = fileOf('dorsal', 90, { bend: 'kinked' });
    const kinked = judged(readBack(svg, 'dorsal', 90));
    // Two programs: the layout's formula and the judge's folded squares.
    expect(kinked.stretch).toBeCloseTo(report?.bend.costs.kinked?.stretch ?? Number.NaN, 2);
    expect(Math.abs(kinked.shear - (report?.bend.costs.kinked?.shear ?? Number.NaN))).toBeLessThan(0.2);
    expect(kinked.stretch).toBeGreaterThan(0.15);
    expect(report?.fold.shear).toBeGreaterThan(15);
  });
  it('auto splits the demonstration hand at 45 and at 90', () => {
    for (const angle of [45, 90]) expect(fileOf('dorsal', angle).report?.bend).toMatchObject({ asked: 'auto', form: 'split' });
  });
});
