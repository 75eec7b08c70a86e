import { describe, expect, it } from 'vitest';
import { fullSheet, INPUTS, plateLike, roundBar, sheetOf } from '../../../tests/cutter-patterns.ts';
import { boxOf, type LineArcPath, pathLength, polyline, signedArea } from '../../geometry/path.ts';
import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Part, Pattern } from '../../pattern/pattern.ts';
import { shiftPart } from '../../pattern/place-marks.ts';
import { CUTTER_IDS } from './cutter-ids.ts';
import { type CutterProfile, cutterById, cutters } from './cutter-profile.ts';
import { forCutter } from './for-cutter.ts';

const knife = cutterById('knife');
if (!knife) throw new Error('no knife');

const part = (id: string, outline: LineArcPath): Part => ({ id, title: `part ${id}`, outline, holes: [], marks: [], labels: [] });

const square = (x: number, y: number, side = 20) =>
  polyline(
    [
      { x, y },
      { x: x + side, y },
      { x: x + side, y: y + side },
      { x, y: y + side },
    ],
    true,
  );

function made(pattern: Pattern, more: Partial<CutterProfile> = {}, shareEdges = false): Pattern {
  const result = forCutter(pattern, { ...knife, ...more } as CutterProfile, { shareEdges });
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.value;
}

const problemsOf = (pattern: Pattern, more: Partial<CutterProfile> = {}) => {
  const result = forCutter(pattern, { ...knife, ...more } as CutterProfile, { shareEdges: false });
  return result.ok ? [] : result.problems;
};

describe('forCutter', () => {
  it('grows outlines and shrinks holes by half of the kerf, and says so in label, notes and inputs', () => {
    const plate = plateLike('A');
    const done = made(sheetOf([plate], 90, 110), { kerf: 0.3 });
    const [after] = done.parts;
    const area = (paths: readonly LineArcPath[]) => paths.reduce((sum, path) => sum + signedArea(path), 0);
    // Steiner: each edge moved outwards by d adds d times its length, up to the corners' share of pi d².
    expect(area(after ? [after.outline] : []) - area([plate.outline])).toBeCloseTo(0.15 * pathLength(plate.outline), 0);
    expect(area(after?.holes ?? []) - area(plate.holes)).toBeCloseTo(
      0.15 * plate.holes.reduce((sum, hole) => sum + pathLength(hole), 0),
      0,
    );
    expect(done.cutting).toMatchObject({ cutter: 'knife', kerf: 0.3 });
    expect(cuttingNotes(done)[0]).toContain('kerf 0.3 mm is already in the outlines');
    expect(done.beside.labels.map((label) => label.text)).toEqual(['KERF 0.3 mm IS IN THE OUTLINES: NO MACHINE OFFSET']);
    expect(done.inputs).toMatchObject({ ...INPUTS, cutter: { profile: { id: 'knife', kerf: 0.3 } } });
  });

  it('keeps everything inside the drawing, whose lower left corner stays (0, 0)', () => {
    const done = made(sheetOf([part('a', square(0, 0))], 20, 20), { kerf: 0.4, leadIn: 3 });
    const cut = boxOf(done.parts.flatMap((p) => (p.cuts ?? []).map((stroke) => stroke.path)));
    expect([done.extents.minX, done.extents.minY]).toEqual([0, 0]);
    expect(cut.minX).toBeGreaterThanOrEqual(-1e-9);
    expect(cut.minY).toBeGreaterThanOrEqual(-1e-9);
    expect(cut.maxX).toBeLessThanOrEqual(done.extents.maxX + 1e-9);
  });

  it('leaves marks and labels where they are when nothing has to move', () => {
    const pattern = sheetOf([shiftPart(plateLike('A'), 10, 10)], 120, 130);
    const done = made(pattern, { kerf: 0.2 });
    expect(done.parts[0]?.marks).toEqual(pattern.parts[0]?.marks);
    expect(done.parts[0]?.labels).toEqual(pattern.parts[0]?.labels);
  });

  it('cuts holes before the outline, each part before the next', () => {
    for (const { cuts } of made(fullSheet()).parts) {
      const roles = (cuts ?? []).map((stroke) => stroke.role);
      expect(roles.at(-1)).toBe('outline');
      expect(roles.slice(0, -1).every((role) => role === 'hole')).toBe(true);
    }
  });

  it('goes a shorter way between the parts than they came in', () => {
    const way = (parts: readonly Part[]) => {
      let [x, y, sum] = [0, 0, 0];
      for (const { outline } of parts) {
        const box = boxOf([outline]);
        const [nextX, nextY] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
        sum += Math.hypot(nextX - x, nextY - y);
        [x, y] = [nextX, nextY];
      }
      return sum;
    };
    const pattern = fullSheet();
    expect(way(made(pattern).parts)).toBeLessThan(way(pattern.parts) / 2);
  });

  it('refuses a kerf that closes a slot, and names every feature', () => {
    const problems = problemsOf(sheetOf([plateLike('A')], 90, 110), { kerf: 3.2 });
    expect(problems.map((p) => [p.code, p.kind])).toEqual(problems.map(() => ['KERF_TOO_WIDE', 'refused']));
    expect(problems.filter((p) => /hole 1: .*arc of radius 1\.500 mm/.test(p.message))).toHaveLength(2);
    expect(problems.filter((p) => p.message.includes('hole 2'))).toHaveLength(2);
  });

  it('refuses an edge that two parts have in common, with its length and place; shares it when asked', () => {
    const pattern = sheetOf([part('a', square(0, 0)), part('b', square(20, 5))], 50, 50);
    expect(problemsOf(pattern).map((p) => [p.code, /15 mm of edge in common at 20, 12\.5/.test(p.message)])).toEqual([
      ['DOUBLED_EDGES', true],
    ]);
    const strokes = made(pattern, {}, true).parts.flatMap((p) => (p.cuts ?? []).map((stroke) => stroke.path));
    const length = strokes.reduce((sum, path) => sum + pathLength(path), 0);
    expect(length).toBeCloseTo(80 + 65, 9);
  });

  it('finds edges in common that a kerf brings together, also arcs', () => {
    expect(problemsOf(sheetOf([part('a', square(0, 0)), part('b', square(20.4, 0))], 50, 50), { kerf: 0.4 }).map((p) => p.code)).toEqual([
      'DOUBLED_EDGES',
    ]);
    expect(problemsOf(sheetOf([part('a', square(0, 0)), part('b', square(20.5, 0))], 50, 50), { kerf: 0.4 })).toEqual([]);
    const twice = problemsOf(sheetOf([part('a', roundBar(0, 0, 40, 20, 5)), part('b', roundBar(0, 0, 40, 20, 5))], 50, 50));
    expect(twice.filter((p) => p.code === 'DOUBLED_EDGES')).toHaveLength(8);
  });

  it('refuses parts that cut into each other', () => {
    expect(problemsOf(sheetOf([part('a', square(0, 0)), part('b', square(15, 7))], 50, 50)).map((p) => p.code)).toEqual(['PARTS_CROSS']);
  });

  it('enters each cut on a quarter arc in the waste, which touches nothing else', () => {
    const plate = plateLike('A');
    for (const { role, path } of made(sheetOf([plate], 90, 110), { leadIn: 1 }).parts[0]?.cuts ?? []) {
      expect(path.closed).toBe(false);
      const [start, entry] = path.vertices;
      expect(Math.hypot((start?.x ?? 0) - (entry?.x ?? 0), (start?.y ?? 0) - (entry?.y ?? 0))).toBeCloseTo(Math.SQRT2, 9);
      const end = path.vertices.at(-1);
      expect(Math.hypot((end?.x ?? 0) - (entry?.x ?? 0), (end?.y ?? 0) - (entry?.y ?? 0))).toBeLessThan(1e-9);
      expect(role === 'hole' || role === 'outline').toBe(true);
    }
  });

  it('leaves a lead-in out where there is no room, and says so', () => {
    const result = forCutter(sheetOf([plateLike('A')], 90, 110), { ...knife, leadIn: 5 }, { shareEdges: false });
    expect(result.ok && result.warnings.map((w) => [w.code, w.message])).toEqual([
      ['LEAD_IN_LEFT_OUT', 'Plate A: 4 of its cuts begin without a lead-in, which would cut into something'],
    ]);
  });

  it('leaves bridges of the width asked for, plus the kerf, on straight edges', () => {
    const [done] = made(sheetOf([plateLike('A')], 90, 110), { bridges: 3, bridgeWidth: 0.8, kerf: 0.2 }).parts;
    const strokes = (done?.cuts ?? []).filter((stroke) => stroke.role === 'outline').map((stroke) => stroke.path);
    expect(strokes).toHaveLength(3);
    const length = strokes.reduce((sum, path) => sum + pathLength(path), 0);
    expect(length).toBeCloseTo((done ? pathLength(done.outline) : 0) - 3 * 1, 6);
    for (const [k, stroke] of strokes.entries()) {
      const [end, next] = [stroke.vertices.at(-1), strokes[(k + 1) % 3]?.vertices[0]];
      expect(Math.hypot((end?.x ?? 0) - (next?.x ?? 0), (end?.y ?? 0) - (next?.y ?? 0))).toBeCloseTo(1, 6);
    }
  });

  it('changes nothing in the outlines of a profile that asks for nothing', () => {
    const pattern = sheetOf([plateLike('A')], 90, 110);
    expect(made(pattern).parts[0]?.outline).toEqual(pattern.parts[0]?.outline);
    expect(made(pattern).extents).toEqual(pattern.extents);
  });
});

it('the ids in the help of commands are those of the profiles', () => {
  expect(CUTTER_IDS).toEqual(cutters().map((profile) => profile.id));
});
