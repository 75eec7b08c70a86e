import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { times } from '../../../tests/by-night.ts';
import { handOf, WORKED } from '../../../tests/hands.ts';
import { plausibleHand } from '../../../tests/plausible-hand.ts';
import { type Block, heldDigits } from '../../block/block.ts';
import { blockById, blocks } from '../../block/library.ts';
import type { DigitMeasures, Hand } from '../../hand/hand.ts';
import { requestFromInputs } from '../request-from-inputs.ts';
import { layStrip } from './lay-strip.ts';
import { pathFaults } from './prove-path.ts';
import { makeStrip, stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions, type StripSettings } from './strip-options.ts';
import { type StripPath, stripPath, stripPathLength, stripPathLengthsNear } from './strip-path.ts';
import { restand, standSections } from './strip-sections.ts';
import { usualSettings } from './strip-settings.ts';

const SETTINGS = usualSettings(DEFAULT_STRIP_OPTIONS);

const rows = readFileSync('fixtures/strip-paths.csv', 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => line.split(','));

const block = (id: string): Block => {
  const found = blockById(id);
  if (!found) throw new Error(id);
  return found;
};
const pathOf = (id: string, changes: Partial<StripOptions> = {}): StripPath => {
  const found = layStrip(handOf(WORKED), block(id), { ...DEFAULT_STRIP_OPTIONS, ...changes });
  if (!found.ok) throw new Error(found.problems[0]?.message);
  return found.value.path;
};

describe('paths of the worked hand (two programs that know nothing of each other)', () => {
  it.each(rows)('%s, %s, %s degrees: %s', (id = '', closure, differential, length) => {
    const path = pathOf(id, { closure: closure as StripOptions['closure'], differential: Number(differential) });
    expect(Math.abs(path.pathLength - Number(length))).toBeLessThan(0.002);
  });
});

describe('a path is proved', () => {
  it('for hands from a child of six to the largest, every block and closure, 1 to 45 degrees: sound, or it holds nothing and says so', () => {
    fc.assert(
      fc.property(
        plausibleHand,
        fc.constantFrom(...blocks()),
        fc.constantFrom('tacked' as const, 'spanning' as const),
        fc.double({ min: 1, max: 45, noNaN: true }),
        fc.constantFrom(0.8, 1.6, 2.4, 3.2, 4.8),
        (hand, b, closure, differential, thickness) => {
          const options = { ...SETTINGS, closure, differential, thickness };
          const standing = standSections(hand, b, options);
          if (!standing.ok) return;
          const path = stripPath(standing.value, options);
          if (path.ok) expect(pathFaults(path.value, options)).toEqual([]);
          else expect(path.problems.map((p) => p.code)).toEqual(['HOLDS_NOTHING']);
        },
      ),
      { numRuns: times(20, 80) },
    );
  });

  /** Lengths of the strip round hands with one measure of one digit moved: laid again, null where that is left to the other, and laid anew. */
  const lengthsOf = (hand: Hand, b: Block, options: StripSettings, field: 'width' | 'circumference' | 'palmarRoom', shift: number) => {
    const standing = standSections(hand, b, options);
    if (!standing.ok) return [];
    const lengthNear = stripPathLengthsNear(standing.value, options);
    return standing.value.sections.flatMap(({ digit }) => {
      const measures = hand.digits[digit] as DigitMeasures;
      const moved = { ...measures, [field]: measures[field] + shift };
      const anew = standSections({ ...hand, digits: { ...hand.digits, [digit]: moved } }, b, options);
      const sections = restand(standing.value, digit, moved, options, hand.units);
      expect(sections.ok).toBe(anew.ok);
      return anew.ok && sections.ok ? [{ again: lengthNear(sections.value), anew: stripPathLength(anew.value, options) }] : [];
    });
  };

  it('laid again round digits measured otherwise it is as long as laid anew, or is left to that', () => {
    fc.assert(
      fc.property(
        plausibleHand,
        fc.constantFrom(...blocks()),
        fc.constantFrom('tacked' as const, 'spanning' as const),
        fc.double({ min: 1, max: 45, noNaN: true }),
        fc.constantFrom(0.8, 2.4, 4.8),
        fc.constantFrom('width', 'circumference', 'palmarRoom'),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (hand, b, closure, differential, thickness, field, shift) => {
          for (const { again, anew } of lengthsOf(hand, b, { ...SETTINGS, closure, differential, thickness }, field, shift))
            if (again !== null) expect(Math.abs(again - (anew ?? Number.NaN))).toBeLessThan(1e-9);
        },
      ),
      { numRuns: times(60, 600) },
    );
  });

  it.each(blocks().map((b) => [b.id, b] as const))(
    'with the usual options, %s, no error of measuring of one standard deviation is left to that',
    (_, b) => {
      const errors = [
        ['width', 0.5],
        ['circumference', 1],
        ['palmarRoom', 1.5],
      ] as const;
      for (const closure of ['tacked', 'spanning'] as const)
        for (const [field, error] of errors)
          for (const shift of [-error, error])
            for (const { again, anew } of lengthsOf(handOf(WORKED), b, { ...SETTINGS, closure }, field, shift))
              expect(again).toBeCloseTo(anew ?? Number.NaN, 9);
    },
  );

  it('refuses the strip that was drawn 108 mm too long: long raised in three, spanning, 45 degrees', () => {
    const found = stripFigures(handOf(WORKED), block('long-raised-in-three'), {
      ...DEFAULT_STRIP_OPTIONS,
      width: 20,
      closure: 'spanning',
      differential: 45,
    });
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual(['HOLDS_NOTHING']);
  });

  // The two programs looked for it with the lever of the first version: 36.5 to 39 degrees at a width of 20, 42.5 to 44 at 12.
  it.each([
    [20, 36.5, 39],
    [12, 42.5, 44],
  ])(
    'loses a held digit at a width of %d first at %d, last at %d degrees, on the lever of the first version',
    (width, earliest, latest) => {
      const lostAt = blocks().map((b) => {
        for (let differential = 30; differential <= 50; differential += times(0.2, 0.1)) {
          const options = { ...SETTINGS, width, differential };
          const standing = standSections(handOf(WORKED), b, options, '1');
          const path = standing.ok ? stripPath(standing.value, options) : standing;
          if (!path.ok) return differential;
        }
        return Number.NaN;
      });
      expect(Math.abs(Math.min(...lostAt) - earliest)).toBeLessThan(0.6);
      expect(Math.abs(Math.max(...lostAt) - latest)).toBeLessThan(0.6);
    },
  );

  it('finds a loop, an entered digit and layers that run into each other', () => {
    const path = pathOf('long-raised-in-three');
    const faults = (spoilt: StripPath) => pathFaults(spoilt, SETTINGS).map((p) => p.message);
    expect(faults(path)).toEqual([]);
    const grown = path.hand.sections.map((s) => (s.digit === 'index' ? { ...s, halfWidth: s.halfWidth + 0.05 } : s));
    expect(faults({ ...path, hand: { ...path.hand, sections: grown } }).join()).toContain('into a finger');
    expect(
      pathFaults(path, { ...SETTINGS, thickness: 2.6 })
        .map((p) => p.message)
        .join(),
    ).toContain('apart');
    const [first] = path.pieces.filter((p) => p.element.kind === 'arc' && p.element.contact.hold === 'round');
    if (first?.element.kind !== 'arc') throw new Error('a path goes round its border');
    const { element } = first;
    const again = { ...element, toNormal: element.toNormal - 2 * Math.PI * element.contact.side * -1 };
    const looped = { ...path, pieces: path.pieces.map((p) => (p === first ? { ...p, element: { ...again, length: 80 } } : p)) };
    expect(faults(looped).join()).toMatch(/turns .* times|crosses itself/);
  });

  it('the first version ran its layers into each other at 1 degree; the tack of the present one does not', () => {
    const options = { ...SETTINGS, differential: 1 };
    const first = standSections(handOf(WORKED), block('long-and-ring-raised-in-four'), options, '1');
    const path = first.ok ? stripPath(first.value, options) : first;
    if (!path.ok) throw new Error('the first version drew it');
    const asPresent: StripPath = { ...path.value, hand: { ...path.value.hand, version: '2' } };
    expect(
      pathFaults(asPresent, options)
        .map((p) => p.message)
        .join(),
    ).toContain('apart');
  });

  it('holds each held digit: the inner course touches it', () => {
    for (const b of blocks())
      for (const digit of heldDigits(b))
        expect(pathOf(b.id).pieces.some((p) => p.element.kind === 'arc' && p.element.contact.name === `${digit} inner`)).toBe(true);
  });
});

interface FirstOutline {
  readonly inputs: object;
  readonly pathLength: number;
  readonly outline: readonly (readonly [number, number, number])[];
  readonly marks: readonly { readonly title: string; readonly x: number }[];
}

describe('a file of the first version', () => {
  const first = JSON.parse(readFileSync('fixtures/version-1/outlines.json', 'utf8')) as readonly FirstOutline[];

  it.each(first.map((f) => [(f.inputs as { block: { id: string } }).block.id, f] as const))(
    '%s: is drawn again as it was, and says so',
    (_, { inputs, pathLength, outline, marks }) => {
      const request = requestFromInputs(inputs, 'old.svg');
      if (!request.ok || request.value.kind !== 'strip') throw new Error('unreadable');
      expect(request.warnings.map((w) => w.code)).toContain('GEOMETRY_EARLIER');
      const { hand, block: b, options, version } = request.value;
      const made = makeStrip(hand, b, options, null, version);
      if (!made.ok) throw new Error(made.problems[0]?.message);
      expect(made.value.report.pathLength).toBe(pathLength);
      expect(made.value.pattern.inputs.geometryVersion).toBe('1');
      const [part] = made.value.pattern.parts;
      const vertices = part?.outline.vertices ?? [];
      const [left, bottom] = [Math.min(...vertices.map((v) => v.x)), Math.min(...vertices.map((v) => v.y))];
      expect(vertices).toHaveLength(outline.length);
      for (const [k, v] of vertices.entries()) {
        const [x = Number.NaN, y = Number.NaN, bulge = Number.NaN] = outline[k] ?? [];
        for (const off of [v.x - left - x, v.y - bottom - y, v.bulge - bulge]) expect(Math.abs(off)).toBeLessThan(2e-6);
      }
      for (const { title, x } of marks) {
        const mark = part?.marks.find((m) => m.title === title);
        const at = Math.min(...(mark?.paths ?? []).flatMap((p) => p.vertices.map((v) => v.x))) - left;
        expect(Math.abs(at - x), title).toBeLessThan(2e-6);
      }
    },
  );
});
