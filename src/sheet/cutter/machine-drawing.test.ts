import { describe, expect, it } from 'vitest';
import { demoStrip, laidSheet } from '../../../tests/cutter-patterns.ts';
import { boxOf, pathLength, unionBox } from '../../geometry/path.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { cutterById, cutters } from './cutter-profile.ts';
import { forCutter } from './for-cutter.ts';
import { CONTENTS, type MachineChoices, machineDrawing, WHOLE_DRAWING } from './machine-drawing.ts';

const strip = demoStrip();
const sheet = laidSheet();
const choose = (more: Partial<MachineChoices>): MachineChoices => ({ ...WHOLE_DRAWING, content: 'cut-and-marks', ...more });

function drawn(pattern: Pattern, more: Partial<MachineChoices> = {}): Pattern {
  const made = machineDrawing(pattern, choose(more));
  if (!made.ok) throw new Error(made.problems[0]?.message);
  return made.value;
}

/** Box of everything that a writer draws. */
function boxOfAll({ parts, beside }: Pattern) {
  const boxes = parts.flatMap((part) => [
    boxOf(part.cuts?.map((cut) => cut.path) ?? [part.outline, ...part.holes]),
    ...(part.marks.length + part.labels.length > 0 ? [boxOfDrawn(part)] : []),
  ]);
  return unionBox(beside.marks.length + beside.labels.length > 0 ? [...boxes, boxOfDrawn(beside)] : boxes);
}

const cutLength = (pattern: Pattern) => pattern.parts.reduce((sum, part) => sum + pathLength(part.outline), 0);
const refused = (pattern: Pattern, more: Partial<MachineChoices>) => {
  const made = machineDrawing(pattern, choose(more));
  return made.ok ? null : made.problems[0];
};

describe('machineDrawing', () => {
  it('leaves the whole drawing as it is', () => {
    expect(drawn(strip, WHOLE_DRAWING)).toBe(strip);
  });

  it.each(CONTENTS.filter((content) => content !== 'all'))(
    '%s: holds that alone, cropped to it, and every cut as long as it was',
    (content) => {
      for (const pattern of [strip, sheet]) {
        const made = drawn(pattern, { content });
        expect(made.beside).toEqual({ marks: [], labels: [] });
        for (const part of made.parts) {
          expect([...part.marks, ...part.labels].every(({ layer }) => layer === 'MARK')).toBe(true);
          if (content === 'cut') expect(part.marks.length + part.labels.length).toBe(0);
        }
        const box = boxOfAll(made);
        for (const [a, b] of [
          [box.minX, 0],
          [box.minY, 0],
          [box.maxX, made.extents.maxX],
          [box.maxY, made.extents.maxY],
        ] as const)
          expect(a).toBeCloseTo(b, 9);
        expect(cutLength(made)).toBeCloseTo(cutLength(pattern), 6);
      }
    },
  );

  it('a strip that fits its bed only lying the other way is turned, marks and words with it, and says so', () => {
    const lying = drawn(strip);
    const { maxX: long, maxY: high } = lying.extents;
    const made = machineDrawing(strip, choose({ bed: { width: high + 1, height: long + 1 } }));
    expect(made.ok && made.warnings.map(({ code }) => code)).toEqual(['TURNED_FOR_BED']);
    if (!made.ok) return;
    expect(made.value.extents.maxX).toBeCloseTo(high, 9);
    expect(made.value.extents.maxY).toBeCloseTo(long, 9);
    const box = boxOfAll(made.value);
    expect([box.minX, box.minY]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
    expect(cutLength(made.value)).toBeCloseTo(cutLength(strip), 6);
    expect(made.value.parts[0]?.labels[0]?.angle).toBe(((lying.parts[0]?.labels[0]?.angle ?? 0) + 90) % 360);
  });

  it('what fits no way is refused with the bed that would do, which does', () => {
    const problem = refused(strip, { bed: { width: 100, height: 60 } });
    expect(problem).toMatchObject({ code: 'BED_TOO_SMALL', kind: 'refused', where: '--bed' });
    const [, width = '', height = ''] = /a bed of ([\d.]+) x ([\d.]+) mm would do/.exec(problem?.message ?? '') ?? [];
    // The message rounds to a tenth.
    expect(refused(strip, { bed: { width: Number(width) + 0.05, height: Number(height) + 0.05 } })).toBeNull();
  });

  it('counts lead-ins and the half kerf', () => {
    const laser = cutterById('laser-if-allowed');
    if (!laser) throw new Error('no laser');
    const ready = forCutter(strip, { ...laser, kerf: 0.4, leadIn: 3 }, { shareEdges: false });
    if (!ready.ok) throw new Error(ready.problems[0]?.message);
    const bare = drawn(strip, { content: 'cut' }).extents;
    const made = drawn(ready.value, { content: 'cut' }).extents;
    expect(made.maxX * made.maxY).toBeGreaterThan((bare.maxX + 0.399) * (bare.maxY + 0.399));
    expect(refused(ready.value, { content: 'cut', bed: { width: bare.maxX + 0.1, height: bare.maxY + 0.1 } })?.code).toBe('BED_TOO_SMALL');
  });

  it('a sheet of plastic keeps its corner at 0,0 on a bed, and must fit it as it lies', () => {
    const edge = sheet.beside.marks.find(({ role }) => role === 'sheet-edge');
    const size = boxOf(edge?.paths ?? []);
    const made = drawn(sheet, { bed: { width: size.maxX, height: size.maxY } });
    expect([made.extents.maxX, made.extents.maxY]).toEqual([size.maxX, size.maxY]);
    expect(boxOf([made.parts[0]?.outline ?? { closed: true, vertices: [] }])).toEqual(
      boxOf([sheet.parts[0]?.outline ?? { closed: true, vertices: [] }]),
    );
    expect(refused(sheet, { bed: { width: size.maxY, height: size.maxX } })?.code).toBe('BED_TOO_SMALL');
  });

  it('the test square lies off the parts, on the sheet, and on the bed', () => {
    const square = (pattern: Pattern) => boxOfDrawn(pattern.beside);
    const beside = drawn(strip, { testSquare: true });
    const box = boxOfAll({ ...beside, beside: { marks: [], labels: [] } });
    expect(square(beside).maxX - square(beside).minX).toBeCloseTo(50, 9);
    expect(square(beside).minX >= box.maxX || square(beside).maxY <= box.minY).toBe(true);
    const narrow = drawn(strip, { testSquare: true, bed: { width: box.maxX + 1, height: 120 } });
    expect(narrow.extents.maxX).toBeLessThanOrEqual(box.maxX + 1);
    const edge = boxOf(sheet.beside.marks.find(({ role }) => role === 'sheet-edge')?.paths ?? []);
    const roomy = { ...sheet, parts: sheet.parts.slice(0, 1) };
    const laid = drawn(roomy, { testSquare: true, bed: { width: edge.maxX, height: edge.maxY } });
    const at = square(laid);
    expect(at.minX >= 0 && at.minY >= 0 && at.maxX <= edge.maxX && at.maxY <= edge.maxY).toBe(true);
  });
});

describe('the profiles', () => {
  /** WCAG 2.2, 1.4.3 and 1.4.11: relative luminance; 1.05 over it on white. */
  const luminance = (hex: string) => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((k) => {
      const share = Number.parseInt(hex.slice(k, k + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const distance = (a: string, b: string) =>
    Math.hypot(...[1, 3, 5].map((k) => Number.parseInt(a.slice(k, k + 2), 16) - Number.parseInt(b.slice(k, k + 2), 16)));

  it.each(cutters().map((profile) => [profile.id, profile] as const))(
    '%s: colours apart, each 4.5 to 1 on white; all marks before the first cut',
    (_id, profile) => {
      const colours = Object.values(profile.layers).map((layer) => layer.colour);
      for (const colour of colours) expect(1.05 / (luminance(colour) + 0.05)).toBeGreaterThan(4.5);
      for (const [k, one] of colours.entries()) for (const other of colours.slice(k + 1)) expect(distance(one, other)).toBeGreaterThan(80);
      expect(new Set(Object.values(profile.layers).map((layer) => layer.dxfColour)).size).toBe(3);
      expect(profile.order).toBe('layer-by-layer');
    },
  );
});
