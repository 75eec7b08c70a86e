import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, headings, segmentsOf } from '../src/geometry/path.ts';
import { textWidth } from '../src/geometry/stroke-letters.ts';
import { outlineFaults } from '../src/geometry/validate-outline.ts';
import type { Hand } from '../src/hand/hand.ts';
import { readHand } from '../src/hand/read-hand.ts';
import type { FoldFindings } from '../src/judge/judge-plate.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Part, Pattern } from '../src/pattern/pattern.ts';
import { HOLLOW_RADIUS } from '../src/pattern/plate/distal-steps.ts';
import { PLATE_FACES, type PlateDesign } from '../src/pattern/plate/plate-design.ts';
import { THUMB_CLEARANCE } from '../src/pattern/plate/plate-frame.ts';
import { plates } from '../src/pattern/plate/plate-names.ts';
import { DEFAULT_PLATE_OPTIONS, LEAST_CORNER_RADIUS } from '../src/pattern/plate/plate-options.ts';
import { LANGUAGE_IDS } from '../src/words/language.ts';
import { demoPlateHand, presetOf, presetPlate } from './demo-plate.ts';
import { NEIGHBOURS, plausibleHand } from './plausible-hand.ts';
import { scaledHand } from './scaled-hand.ts';

const hand = demoPlateHand();
const options = DEFAULT_PLATE_OPTIONS;
const IDS = ['mp-immobilisation-dorsal', 'mp-immobilisation-palmar', 'mp-extension-block', 'single-digit-with-neighbours'];
/** No corner of any plate that is made is sharper than this; the warning CORNER_RADIUS says when one is under 6. mm */
const SHARPEST = 3;

function make(of: Hand, design: Partial<PlateDesign>, more: Partial<typeof options> = {}) {
  const plate: PlateDesign = { id: 'test', title: 'Test', faces: 'dorsal', digits: ['ring', 'little'], angle: 45, ...design };
  return makePattern({ kind: 'plate', hand: of, plate, options: { ...options, ...more }, date: null });
}

function made(of: Hand, design: Partial<PlateDesign>, more: Partial<typeof options> = {}) {
  const result = make(of, design, more);
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.value;
}

/**
 * How far plates of any hand may come short of their clearances, mm: the judge lays a plate by the mean of its marked joints, which lie on the hand's
 * round border, so that it comes to lie a little nearer to finger or wrist than it was drawn.
 */
const SLIDE = 0.25;

/** What the judge must find of every plate, whatever its bend. */
function keepsItsClearances(fold: FoldFindings, slack: number, pipClearance: number) {
  expect(fold.pipClearance).toBeGreaterThanOrEqual(pipClearance - slack - 0.002);
  expect(fold.wristClearance).toBeGreaterThanOrEqual(options.wristClearance - slack);
  if (fold.thumbClearance !== null) expect(fold.thumbClearance).toBeGreaterThanOrEqual(THUMB_CLEARANCE - slack - 0.002);
  expect(fold.swing).toBeLessThan(1);
}

const rolesOf = (part: Part | undefined) => new Set(part?.marks.map((m) => m.role));
const textsOf = (pattern: Pattern) => pattern.parts.flatMap((part) => part.labels.map((l) => l.text)).join(' ');

describe('the presets on the demo hand', () => {
  it('are the four of the library', () => expect(plates().map((p) => p.id)).toEqual(IDS));

  it.each(LANGUAGE_IDS)('on a palmar plate round two fingers the words stand beside the side line of the hand: %s', (language) => {
    const plate = { ...presetOf('plate-palmar'), digits: ['ring', 'little'] as const };
    const { pattern } = presetPlate(plate, 45, hand, {}, language);
    const [part] = pattern.parts;
    const titles = part?.labels.filter(({ text }) => text.includes(',')) ?? [];
    expect(titles.length).toBeGreaterThan(0);
    const line = part?.marks.filter(({ title }) => title.includes('mid-lateral line of the hand')).flatMap(({ paths }) => paths) ?? [];
    for (const { text, at, height } of titles) {
      const half = textWidth(text, height) / 2;
      const across = line.flatMap(({ vertices }) => vertices.filter(({ y }) => y > at.y - 1 && y < at.y + height + 1));
      expect(across.length, text).toBeGreaterThan(0);
      for (const { x } of across) expect(Math.abs(x - at.x) - half, text).toBeGreaterThan(0.9);
    }
  });

  it.each(IDS)('%s: sound, no corner under 6 mm, tangent everywhere, within 1 mm of skin on the midlines', (id) => {
    const { pattern, report } = presetPlate(id);
    expect(report.warnings).toEqual([]);
    for (const part of pattern.parts) {
      expect(outlineFaults(part.outline, 'outside')).toEqual([]);
      const segments = segmentsOf(part.outline);
      for (const [i, segment] of segments.entries()) {
        const next = segments[(i + 1) % segments.length] ?? segment;
        expect(Math.abs(Math.sin((headings(next).start - headings(segment).end) / 2))).toBeLessThan(1e-9);
      }
    }
    for (const face of report.faces) {
      expect(face.smallestRadius).toBeGreaterThanOrEqual(LEAST_CORNER_RADIUS - 1e-9);
      expect(face.webRadius ?? HOLLOW_RADIUS).toBeGreaterThanOrEqual(HOLLOW_RADIUS - 1e-9);
      keepsItsClearances(face.fold, 0, options.pipClearance);
      expect(face.fold.leastGap).toBeGreaterThan(0);
    }
  });

  it.each(IDS)('%s: says side, face, skin side, distal and every digit, and has every mark', (id) => {
    const { pattern, report } = presetPlate(id);
    const text = textsOf(pattern);
    for (const words of [
      'RIGHT HAND',
      'PLATE',
      'SKIN SIDE DOWN',
      'DISTAL',
      'THUMB',
      'ULNAR',
      ...report.plate.digits.map((d) => d.toUpperCase()),
    ]) {
      expect(text).toContain(words);
    }
    const roles = rolesOf(pattern.parts[0]);
    for (const role of ['mp-bend', 'mp-joint', 'midline', 'fold', 'flare', 'strap', 'corner', 'distal-arrow'])
      expect(roles).toContain(role);
    const beside = pattern.beside.marks.map((m) => m.role);
    for (const role of ['reference-square', 'angle-gauge']) expect(beside).toContain(role);
    expect(pattern.beside.labels.filter((l) => l.text.startsWith('No room')).map((l) => l.text)).toEqual([]);
  });
});

describe('a palmar plate', () => {
  it('leaves as much PIP flexion free as a finger with flesh has over its edge: about a fist, no more', () => {
    const free = Object.values(presetPlate('mp-immobilisation-palmar').report.freePipFlexion);
    expect(free).toHaveLength(4);
    for (const angle of free) {
      expect(angle).toBeGreaterThan(90);
      expect(angle).toBeLessThan(112);
    }
  });
});

describe('every plate', () => {
  it('of every row of neighbours, every face and angle, from a child of six to the largest hand, is sound or clearly refused', () => {
    let count = { made: 0, refused: 0 };
    fc.assert(
      fc.property(
        plausibleHand,
        fc.constantFrom(...NEIGHBOURS),
        fc.constantFrom(...PLATE_FACES),
        fc.oneof(fc.constantFrom(0, 90), fc.double({ min: 0, max: 90, noNaN: true })),
        fc.constantFrom(0, 10),
        (of, digits, faces, angle, webNotch) => {
          const result = make(of, { digits, faces, angle }, { webNotch });
          if (!result.ok) {
            count = { ...count, refused: count.refused + 1 };
            // Either the hand leaves no room (its back only where the metacarpals are short), or an estimate would be a guess.
            for (const problem of result.problems) {
              expect(['PLATE_NO_ROOM', 'NOT_ESTIMABLE']).toContain(problem.code);
              expect(problem.message).toMatch(/Use |Take |Measure it: /);
              if (faces === 'dorsal' && problem.code === 'PLATE_NO_ROOM')
                expect(problem.message).toMatch(/of the hand before|a corner of the dorsal/);
            }
            return;
          }
          count = { ...count, made: count.made + 1 };
          const { pattern, report } = result.value;
          expect(pattern.parts.flatMap((part) => outlineFaults(part.outline, 'outside'))).toEqual([]);
          if (report.pipClearance < options.pipClearance)
            expect([faces === 'dorsal', report.warnings.map((w) => w.code)]).toEqual([
              false,
              expect.arrayContaining(['PIP_CLEARANCE_LESS']),
            ]);
          for (const face of report.faces) {
            if (webNotch === 0) expect(face.smallestRadius).toBeGreaterThan(SHARPEST);
            // A palmar plate that would hold too little is closed in, and says so; one that cannot be shortened by what it comes short says that.
            const short = report.warnings.some((w) => w.code === 'PIP_CLEARANCE' && w.where === face.face);
            keepsItsClearances(face.fold, SLIDE, short ? 0 : report.pipClearance);
          }
          for (const [digit, angle] of Object.entries(report.freePipFlexion)) {
            const warned = report.warnings.some((w) => w.code === 'PLATE_STOPS_PIP' && w.where === `digits.${digit}`);
            expect([digit, angle, warned]).toEqual([digit, angle, angle < 90]);
          }
        },
      ),
      { numRuns: 80, endOnFailure: true },
    );
    // About 15 in 100 such plates are refused (600 drawn while it was built); a third is more than four standard deviations of 80 draws away.
    expect(count.made).toBeGreaterThan(2 * count.refused);
  }, 120_000);

  it('of a left hand is the mirror image of the right one', () => {
    const left: Hand = { ...hand, side: 'left' };
    for (const faces of ['dorsal', 'palmar'] as const) {
      const [one] = made(hand, { faces }).pattern.parts;
      const [other] = made(left, { faces }).pattern.parts;
      if (!one || !other) throw new Error('no parts');
      const [a, b] = [boxOf([one.outline]), boxOf([other.outline])];
      expect(a.maxX - a.minX).toBeCloseTo(b.maxX - b.minX, 9);
      const points = (part: Part, map: (x: number) => number) =>
        part.outline.vertices.map((v) => `${map(v.x).toFixed(4)} ${v.y.toFixed(4)}`).sort();
      expect(points(one, (x) => x - a.minX)).toEqual(points(other, (x) => b.maxX - x));
      expect(textsOf(made(left, { faces }).pattern)).toContain('LEFT HAND');
    }
  });

  it('lies with the thumb side where it is seen: left for the back of a right hand, right for its palm', () => {
    const thumb = (faces: 'dorsal' | 'palmar') => {
      const { parts } = made(hand, { faces, digits: ['index', 'long', 'ring', 'little'] }).pattern;
      const x = (text: string) => parts[0]?.labels.find((l) => l.text === text)?.at.x ?? Number.NaN;
      return x('THUMB') - x('ULNAR');
    };
    expect(thumb('dorsal')).toBeLessThan(0);
    expect(thumb('palmar')).toBeGreaterThan(0);
  });

  it('with both faces has two parts whose edges meet with the gap between them, and the same marks', () => {
    const { pattern, report } = made(hand, { faces: 'both', angle: 0, digits: ['index', 'long', 'ring', 'little'] });
    expect(pattern.parts.map((p) => p.id)).toEqual(['plate-dorsal', 'plate-palmar']);
    const round = report.section.circumference + 2 * Math.PI * (options.skinClearance + options.thickness / 2);
    const [dorsal, palmar] = report.faces;
    expect((dorsal?.handWidth ?? 0) + (palmar?.handWidth ?? 0) + 2 * options.faceGap).toBeCloseTo(round, 2);
    const midlines = pattern.parts.map((part) =>
      part.marks
        .filter((m) => m.role === 'midline')
        .map((m) => m.title)
        .sort(),
    );
    expect(midlines[0]).toEqual(midlines[1]);
  });

  it('draws again the same from what travels with it, and differently for another angle', () => {
    const first = presetPlate('mp-immobilisation-dorsal', 45).pattern;
    expect(first.inputs).toMatchObject({ kind: 'plate', plate: { faces: 'dorsal', angle: 45 } });
    // What pictures are made from holds functions, which are never equal; as JSON they are left out.
    const plain = (pattern: unknown) => JSON.parse(JSON.stringify(pattern));
    expect(plain(presetPlate('mp-immobilisation-dorsal', 45).pattern)).toEqual(plain(first));
    expect(presetPlate('mp-immobilisation-dorsal', 50).pattern.parts[0]?.outline).not.toEqual(first.parts[0]?.outline);
  });

  it('has notches between the digits when asked, none else', () => {
    const digits = ['long', 'ring'] as const;
    const plain = made(hand, { digits });
    const notched = made(hand, { digits }, { webNotch: 12 });
    expect(notched.report.faces[0]?.webRadius).toBeCloseTo(HOLLOW_RADIUS, 6);
    expect(notched.report.faces[0]?.area).toBeLessThan((plain.report.faces[0]?.area ?? 0) - 30);
  });
});

describe('refusals', () => {
  it('name every broken rule at once', () => {
    const result = make(hand, { digits: ['index', 'ring'], angle: 95 });
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['PLATE_ANGLE', 'PLATE_DIGITS']);
  });
  it('say which digit was not measured', () => {
    const { little: _, ...digits } = hand.digits;
    const result = make({ ...hand, digits }, { digits: ['ring', 'little'] });
    expect(result.ok ? '' : result.problems[0]?.message).toMatch(/little finger.*Measure it/);
  });
  it('say what would make room on the palmar side', () => {
    // A grown hand's little finger is held since the corners beside free digits are rounded; that of a small child is not, however far closed in.
    const result = make(scaledHand(hand, 0.58), { faces: 'palmar', digits: ['little'], angle: 90 });
    const said = result.ok ? '' : result.problems.map((p) => p.message).join();
    expect(said).toMatch(/little finger.*smaller MP angle/);
    expect(said).toMatch(/Tried, and it can be made: with/);
  });
  it('come where the step to a shorter edge would leave a finger uncovered, as beside an MP joint that lies far back', () => {
    // The smallest hand that is read, as the fuzz target of plates found it; the outline came out as no number.
    const finger = { width: 8, circumference: 25, palmarRoom: 8, dorsalLength: 16 };
    const digits = { index: finger, long: { ...finger, mpSetback: 30 }, ring: finger, little: finger };
    const palm = { handBreadth: 45, handCircumference: 105, metacarpalLength: 70 };
    const read = readHand({ schema: 'knucklewright/hand@1', code: 'TEST-1', side: 'left', units: 'mm', digits, ...palm });
    if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
    const result = make(read.value, { digits: ['index', 'long', 'ring'], angle: 0 });
    expect(result).toMatchObject({
      ok: false,
      problems: ['digits.index', 'digits.ring'].map((where) => ({ code: 'PLATE_NO_ROOM', kind: 'refused', where })),
    });
    for (const { message } of result.ok ? [] : result.problems)
      expect(message).toMatch(/step.*under 3\. Measure dorsalLength and mpSetback/);
  });

  it('of an impossible palm say to measure again', () => {
    const result = make({ ...hand, palm: { ...hand.palm, handBreadth: 100, handCircumference: 199 } }, {});
    expect(result.ok ? '' : result.problems[0]?.message).toMatch(/Measure both again/);
  });
});
