import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairs, times, tried } from '../../../tests/by-night.ts';
import { handOf, LARGEST, type Measures, SMALLEST, WORKED } from '../../../tests/hands.ts';
import { type Block, heldPlace, placedDigits } from '../../block/block.ts';
import { blockById, blocks } from '../../block/library.ts';
import { type Box, boxOf, pathLength, signedArea } from '../../geometry/path.ts';
import { strokeText } from '../../geometry/stroke-letters.ts';
import { outlineFaults } from '../../geometry/validate-outline.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { readHand } from '../../hand/read-hand.ts';
import { makePattern } from '../make-pattern.ts';
import type { Label } from '../pattern.ts';
import type { GeometryVersion } from './geometry-version.ts';
import { makeStrip, type Strip } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip-options.ts';
import { stripPathLength } from './strip-path.ts';
import { standSections } from './strip-sections.ts';
import { usualSettings } from './strip-settings.ts';

const options = (changes: Partial<StripOptions> = {}): StripOptions => ({ ...DEFAULT_STRIP_OPTIONS, ...changes });
const block = (id: string): Block => {
  const found = blockById(id);
  if (!found) throw new Error(id);
  return found;
};
const strip = (
  id: string,
  changes: Partial<StripOptions> = {},
  measures = WORKED,
  side: 'left' | 'right' = 'left',
  version?: GeometryVersion,
): Strip => {
  const made = makeStrip(handOf(measures, side), block(id), options(changes), null, version);
  if (!made.ok) throw new Error(made.problems.map((p) => p.message).join('\n'));
  return made.value;
};

describe('worked examples of the first version (computed by an independent program, agreed within 0.01)', () => {
  it.each([
    ['long-raised-in-three', 'tacked', 159.964, 'long o 0.00, index o 23.27, index i 57.21, long i 81.82, ring i 105.49, ring o 137.42'],
    ['long-raised-in-three', 'spanning', 156.458, 'long o 0.00, index o 21.40, index i 55.35, long i 79.95, ring i 103.62, ring o 135.56'],
    ['long-lowered-in-three', 'tacked', 159.964, 'long o 0.00, index o 23.27, index i 57.21, long i 81.82, ring i 105.49, ring o 137.42'],
    ['ring-raised-in-three', 'tacked', 152.392, 'ring o 0.00, long o 23.17, long i 57.11, ring i 80.84, little i 102.60, little o 131.52'],
    [
      'long-and-ring-raised-in-four',
      'tacked',
      188.753,
      'long o 9.44, index o 31.80, index i 65.87, long i 90.55, ring i 108.56, little i 130.42, little o 159.45, ring o 179.45',
    ],
    [
      'ring-raised-in-four',
      'tacked',
      189.255,
      'ring o 0.00, long o 23.13, index o 41.63, index i 75.53, long i 94.03, ring i 117.77, little i 139.48, little o 168.37',
    ],
  ] as const)('%s, %s: %d', (id, closure, length, passes) => {
    const { report } = strip(id, { closure }, WORKED, 'left', '1');
    expect(Math.abs(report.pathLength - length)).toBeLessThan(0.01);
    const expected = passes.split(', ').map((p) => p.split(' '));
    expect(report.passes.map((p) => [p.digit, p.layer[0]])).toEqual(expected.map(([digit, layer]) => [digit, layer]));
    for (const [k, pass] of report.passes.entries()) expect(Math.abs(pass.u - Number(expected[k]?.[2]))).toBeLessThan(0.01);
  });

  it('has the depths 18.776, 18.776, 17.237 and 15.414', () => {
    const { sections } = strip('ring-raised-in-four').report;
    expect(DIGITS.map((d) => sections[d]?.depth)).toEqual([18.776, 18.776, 17.237, 15.414]);
  });

  it('stands off a spanning outer layer from the held digit, and never a tacked one', () => {
    expect(strip('long-raised-in-three').report.standOff).toEqual([]);
    const [standOff] = strip('long-raised-in-three', { closure: 'spanning' }).report.standOff;
    expect(standOff?.digit).toBe('long');
    expect(standOff?.distance).toBeGreaterThan(5);
  });
});

describe('every block on the smallest, the worked and the largest hand', () => {
  const sizes = [
    ['worked', WORKED],
    ['smallest', SMALLEST],
    ['largest', LARGEST],
  ] as const;
  const cases = pairs(blocks(), sizes).map(([{ id }, [size, measures]]) => [id, size, measures] as const);
  const made = new Map<string, Strip>();
  const usual = (id: string, size: string, measures: typeof WORKED, side: 'left' | 'right') => {
    const key = `${id} ${size} ${side}`;
    const found = made.get(key) ?? strip(id, {}, measures, side);
    made.set(key, found);
    return found;
  };
  it.each(cases)('%s, %s: is sound, as long as it says, and has all its words', (id, size, measures) => {
    for (const side of tried(['left', 'right'] as const, (one) => one === 'left' || size === 'worked')) {
      const { pattern, report } = usual(id, size, measures, side);
      const [part] = pattern.parts;
      if (!part) throw new Error('no part');
      expect(outlineFaults(part.outline, 'outside')).toEqual([]);
      const xs = part.outline.vertices.map((v) => v.x);
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(report.flatLength, 2);
      const area = signedArea(part.outline);
      expect(area).toBeGreaterThan(0.5 * report.flatLength * report.flatWidth);
      expect(area).toBeLessThanOrEqual(report.flatLength * report.flatWidth);
      const words = part.labels.map((l) => l.text);
      expect(words.some((w) => w.startsWith(side.toUpperCase()))).toBe(true);
      for (const word of ['DISTAL', 'OUTSIDE', 'UP']) expect(words.some((w) => w.includes(word))).toBe(true);
      for (const { digit } of placedDigits(block(id))) expect(words.filter((w) => w === digit.toUpperCase())).toHaveLength(2);
    }
  });

  it.each(cases)('%s, %s: no two words overlap', (id, size, measures) => {
    const { pattern } = usual(id, size, measures, 'left');
    const boxes = [...pattern.parts.flatMap((p) => p.labels), ...pattern.beside.labels].map((label) => ({ label, box: inkBox(label) }));
    const apart = (a: Box, b: Box) => a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
    const overlaps = boxes.flatMap((one, k) => boxes.slice(k + 1).flatMap((other) => (apart(one.box, other.box) ? [] : [[one, other]])));
    expect(overlaps.map((two) => two.map(({ label }) => label.text).join(' and '))).toEqual([]);
  });
});

/** The box of a label's strokes. */
function inkBox(label: Label): Box {
  return boxOf(
    strokeText(label.text, { at: label.at, height: label.height, align: label.align, angle: (label.angle * Math.PI) / 180 }).paths,
  );
}

/** What may change a strip and what may not. */
describe('metamorphic', () => {
  const digit = fc.record({
    width: fc.double({ min: 9, max: 24, noNaN: true }),
    ratio: fc.double({ min: 0.8, max: 1.2, noNaN: true }),
    palmarRoom: fc.double({ min: 18, max: 34, noNaN: true }),
    beyond: fc.double({ min: 14, max: 22, noNaN: true }),
  });
  const hand = fc.tuple(digit, digit, digit, digit).map((list): Record<DigitName, Measures> => {
    const measures = list.map(
      ({ width, ratio, palmarRoom, beyond }): Measures => [
        width,
        (Math.PI / 2) * width * (1 + ratio) * 1.02,
        palmarRoom,
        palmarRoom + beyond,
      ],
    );
    return Object.fromEntries(DIGITS.map((d, k) => [d, measures[k]])) as Record<DigitName, Measures>;
  });
  const anyBlock = fc.constantFrom(...blocks());
  const anyOptions = fc.record({
    closure: fc.constantFrom('tacked' as const, 'spanning' as const),
    differential: fc.double({ min: 5, max: 35, noNaN: true }),
    thickness: fc.constantFrom(1.6, 2.4, 3.2),
  });
  const lengthOf = (measures: Record<DigitName, Measures>, b: Block, changes: Partial<StripOptions>) => {
    const json = {
      schema: 'knucklewright/hand@1',
      code: 'TEST-01',
      side: 'left',
      units: 'mm',
      digits: Object.fromEntries(
        DIGITS.map((d) => [
          d,
          { width: measures[d][0], circumference: measures[d][1], palmarRoom: measures[d][2], dorsalLength: measures[d][3] },
        ]),
      ),
    };
    const read = readHand(json);
    if (!read.ok) return null;
    const settings = usualSettings(options(changes));
    const standing = standSections(read.value, b, settings);
    return standing.ok ? stripPathLength(standing.value, settings) : null;
  };

  it('swapping raised and lowered leaves the length', () => {
    fc.assert(
      fc.property(hand, anyBlock, anyOptions, (measures, b, changes) => {
        const other = heldPlace(b) === 'raised' ? 'lowered' : 'raised';
        const swapped = blocks().find((c) => c.id === b.id.replace(heldPlace(b), other));
        const one = lengthOf(measures, b, changes);
        const two = lengthOf(measures, swapped ?? b, changes);
        fc.pre(one !== null && two !== null);
        expect(one).toBeCloseTo(two ?? Number.NaN, 7);
      }),
      { numRuns: times(8, 60) },
    );
  });

  it('mirroring the hand, index for little, leaves the length', () => {
    fc.assert(
      fc.property(hand, anyOptions, (measures, changes) => {
        const mirrored = Object.fromEntries(DIGITS.map((d, k) => [d, measures[DIGITS[3 - k] as DigitName]])) as Record<DigitName, Measures>;
        for (const [id, twin] of [
          ['long-raised-in-four', 'ring-raised-in-four'],
          ['long-and-ring-lowered-in-four', 'long-and-ring-lowered-in-four'],
          ['long-lowered-in-three', 'ring-lowered-in-three'],
        ] as const) {
          const one = lengthOf(measures, block(id), changes);
          const two = lengthOf(mirrored, block(twin), changes);
          fc.pre(one !== null && two !== null);
          expect(one).toBeCloseTo(two ?? Number.NaN, 7);
        }
      }),
      { numRuns: times(5, 40) },
    );
  });

  // A held digit that grows under a tack moves the tack, and the tacked layer may get shorter by more than the inner one gets longer,
  // so the rule holds for every digit of a spanning strip and for the enclosed digits of a tacked one.
  it('the length never falls when a circumference grows at fixed width', () => {
    fc.assert(
      fc.property(
        hand,
        anyBlock,
        anyOptions,
        fc.constantFrom(...DIGITS),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (measures, b, changes, grown, by) => {
          const [width, circumference, palmarRoom, dorsalLength] = measures[grown];
          const before = lengthOf(measures, b, changes);
          fc.pre(changes.closure === 'spanning' || b.places[grown] === 'enclosed');
          const after = lengthOf({ ...measures, [grown]: [width, circumference + by, palmarRoom, dorsalLength] }, b, changes);
          fc.pre(before !== null && after !== null);
          expect(after ?? Number.NaN).toBeGreaterThanOrEqual((before ?? Number.NaN) - 1e-9);
        },
      ),
      { numRuns: times(8, 60) },
    );
  });

  it('every plausible hand gives a sound pattern or a refusal that says why', () => {
    fc.assert(
      fc.property(
        hand,
        anyBlock,
        anyOptions,
        fc.double({ min: 8, max: 30, noNaN: true }),
        fc.constantFrom('lap' as const, 'pinch' as const),
        (measures, b, changes, width, seam) => {
          const read = readHand({
            schema: 'knucklewright/hand@1',
            code: 'TEST-01',
            side: 'right',
            units: 'mm',
            digits: Object.fromEntries(
              DIGITS.map((d) => [
                d,
                { width: measures[d][0], circumference: measures[d][1], palmarRoom: measures[d][2], dorsalLength: measures[d][3] },
              ]),
            ),
          });
          if (!read.ok) return;
          const made = makePattern({
            kind: 'strip',
            hand: read.value,
            block: b,
            options: options({ ...changes, width, minimumWidth: Math.min(10, width), seam }),
            date: null,
          });
          if (made.ok)
            expect(Number.isFinite(pathLength(made.value.pattern.parts[0]?.outline ?? { closed: true, vertices: [] }))).toBe(true);
          else expect(made.problems.map((p) => p.code)).toEqual(['HOLDS_NOTHING']);
        },
      ),
      { numRuns: times(10, 80) },
    );
  });
});

describe('loops', () => {
  it('round one digit are its circumference and two pi clearances, with the ring size of that many mm (ISO 8653)', () => {
    const { loops } = strip('long-raised-in-three').report;
    expect(loops.map((l) => l.digits)).toEqual([['index'], ['ring']]);
    expect(loops[0]?.innerCircumference).toBeCloseTo(57 + Math.PI, 3);
    expect(loops[0]?.isoRingSize).toBe(60);
  });

  it('round two equal circular digits are an open belt (exact formula)', () => {
    const round: Measures = [16, 16 * Math.PI, 25, 44];
    const { loops } = strip(
      'ring-raised-in-four',
      { webGap: 2, skinClearance: 0 },
      { index: round, long: round, ring: round, little: round },
    ).report;
    expect(loops[0]?.digits).toEqual(['index', 'long']);
    expect(loops[0]?.innerCircumference).toBeCloseTo(2 * 18 + 16 * Math.PI, 3);
  });
});

describe('the flat length', () => {
  it('adds seam and trim, and gives the stretch back', () => {
    const path = strip('long-raised-in-three').report.pathLength;
    expect(strip('long-raised-in-three').report.flatLength).toBeCloseTo(path + 15 + 10, 2);
    expect(strip('long-raised-in-three', { seam: 'pinch', seamAllowance: 8, trim: 0 }).report.flatLength).toBeCloseTo(path + 16, 2);
    expect(strip('long-raised-in-three', { stretch: 0.05 }).report.flatLength).toBeCloseTo(path / 1.05 + 25, 2);
  });

  it('has a 95 % band as wide as 2000 hands measured with the same errors vary', () => {
    const hands = 2000;
    const { lengthBand95, flatLength } = strip('ring-raised-in-three').report;
    const random = mulberry(7);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const lengths: number[] = [];
    for (let k = 0; k < hands; k++) {
      const measures = Object.fromEntries(
        DIGITS.map((d) => [d, WORKED[d].map((v, i) => v + normal() * ([0.5, 1, 1, 1.5][i] ?? 0))]),
      ) as unknown as Record<DigitName, Measures>;
      const changed = usualSettings(options({ differential: 20 + 5 * normal() }));
      const standing = standSections(handOf(measures), block('ring-raised-in-three'), changed);
      const path = standing.ok ? stripPathLength(standing.value, changed) : null;
      if (path !== null) lengths.push(path + 25);
    }
    const inside = lengths.filter((l) => l >= lengthBand95[0] && l <= lengthBand95[1]).length / lengths.length;
    expect(lengths.length).toBeGreaterThan(0.995 * hands);
    expect(lengthBand95[0]).toBeLessThan(flatLength);
    expect(lengthBand95[1]).toBeGreaterThan(flatLength);
    // Four binomial standard deviations of 2000 draws.
    expect(inside).toBeGreaterThan(0.93);
    expect(inside).toBeLessThan(0.97);
  });
});

/** A small seeded generator for tests. */
function mulberry(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
