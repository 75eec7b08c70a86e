import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LENGTH_UNITS, MM_PER } from '../units/length.ts';
import type { Problem } from '../units/result.ts';
import { DIGITS } from './digits.ts';
import { averageDigit } from './estimate.ts';
import type { Hand } from './hand.ts';
import { parseHandText, readHand } from './read-hand.ts';

const DEMO_TEXT = readFileSync(new URL('../../fixtures/demo-hand.json', import.meta.url), 'utf8');
/** Rounding of a unit's conversion there and back, mm. */
const SAME_LENGTH = 1e-9;

interface Loose {
  [key: string]: unknown;
  digits: Record<string, Record<string, unknown>>;
}
/** A fresh copy of the demo hand's digits and target, changed; its webs have tests of their own. */
function demo(change: (hand: Loose) => void = () => {}): Loose {
  const { webSetback: _, ...hand } = JSON.parse(DEMO_TEXT) as Loose & { webSetback?: unknown };
  change(hand);
  return hand;
}
function digit(hand: Loose, name: string): Record<string, unknown> {
  const found = hand.digits[name];
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}
function hand(json: unknown): Hand {
  const result = readHand(json);
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.value;
}
function problems(json: unknown): readonly Problem[] {
  const result = readHand(json);
  return result.ok ? [] : result.problems;
}
const brief = (json: unknown) => problems(json).map((p) => `${p.code} ${p.where}`);
function warnings(json: unknown): string[] {
  const result = readHand(json);
  return result.ok ? result.warnings.map((w) => `${w.code} ${w.where}`) : brief(json);
}
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
/** All lengths of the demo hand run through a function. */
function mapped(change: (mm: number) => unknown, units: string): Loose {
  return demo((h) => {
    h.units = units;
    for (const measures of Object.values(h.digits)) for (const [id, mm] of Object.entries(measures)) measures[id] = change(mm as number);
  });
}

describe('readHand(json) returns', () => {
  it('the demo hand, invented, without a warning', () => {
    const result = parseHandText(DEMO_TEXT);
    expect(result).toMatchObject({ ok: true, warnings: [] });
    expect(hand(demo())).toEqual({
      code: 'DEMO-01',
      side: 'left',
      units: 'mm',
      invented: true,
      note: demo().note,
      digits: demo().digits,
      palm: {},
      target: { digit: 'ring', pipExtensionDeficit: 25, pipFlexionDeficit: 0 },
      flags: { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false },
      estimated: [],
      source: demo(),
    });
  });

  it('the same hand from any unit, from numbers and from text', () => {
    const expected = numbersIn(hand(demo()).digits);
    for (const unit of LENGTH_UNITS) {
      for (const write of [
        (mm: number) => mm / MM_PER[unit],
        (mm: number) => String(mm / MM_PER[unit]),
        (mm: number) => String(mm / MM_PER[unit]).replace('.', ','),
        (mm: number) => `${mm} mm`,
        (mm: number) => `${mm / 10} cm`,
        (mm: number) => `${mm / 25.4} in`,
      ]) {
        const read = numbersIn(hand(mapped(write, unit)).digits);
        expect(read.length).toBe(expected.length);
        for (const [i, mm] of read.entries()) expect(Math.abs(mm - (expected[i] ?? Number.NaN))).toBeLessThan(SAME_LENGTH);
      }
    }
  });

  it('scaled units give the same hand, also where lengths are estimated', () => {
    const scale = fc.double({ min: 0.75, max: 1.25, noNaN: true });
    fc.assert(
      fc.property(scale, fc.constantFrom(...LENGTH_UNITS), fc.subarray(['palmarRoom', 'dorsalLength']), (factor, unit, absent) => {
        const written = (u: (typeof LENGTH_UNITS)[number]) => {
          const file = mapped((mm) => (mm * factor) / MM_PER[u], u);
          for (const field of absent) delete digit(file, 'ring')[field];
          return hand(file);
        };
        const [inMm, inUnit] = [written('mm'), written(unit)];
        expect(inUnit.estimated.length).toBe(absent.length);
        const expected = numbersIn(inMm.digits);
        for (const [i, mm] of numbersIn(inUnit.digits).entries())
          expect(Math.abs(mm - (expected[i] ?? Number.NaN))).toBeLessThan(SAME_LENGTH);
      }),
    );
  });

  it('ring sizes as circumferences, and says where charts differ', () => {
    const iso = demo((h) => Object.assign(digit(h, 'index'), { circumference: 'ring 57', pipCircumference: 'ISO 64' }));
    expect(hand(iso).digits.index).toMatchObject({ circumference: 57, pipCircumference: 64 });
    expect(warnings(iso)).toEqual([]);
    const us = demo((h) => Object.assign(digit(h, 'index'), { circumference: 'US 8' }));
    // Customary formula: inner diameter 0.458 + 0.032 n inches.
    expect(hand(us).digits.index?.circumference).toBeCloseTo(Math.PI * 25.4 * (0.458 + 0.032 * 8), 9);
    expect(warnings(us)).toEqual(['RING_CHARTS_DIFFER digits.index.circumference']);
    const uk = demo((h) => Object.assign(digit(h, 'index'), { circumference: 'UK Q' }));
    expect(hand(uk).digits.index?.circumference).toBe(57.5);
    expect(warnings(uk)).toEqual(['RING_CHARTS_DIFFER digits.index.circumference']);
    expect(brief(demo((h) => Object.assign(digit(h, 'index'), { width: 'ring 54' })))).toEqual(['FIELD_UNREADABLE digits.index.width']);
  });

  it('missing lengths as estimates, flagged', () => {
    const file = demo((h) => {
      delete digit(h, 'ring').palmarRoom;
      delete digit(h, 'little').palmarRoom;
      delete digit(h, 'little').dorsalLength;
    });
    const read = hand(file);
    expect(read.estimated.map((e) => [e.where, e.mm])).toEqual([
      ['digits.ring.palmarRoom', read.digits.ring?.palmarRoom],
      ['digits.little.palmarRoom', read.digits.little?.palmarRoom],
      ['digits.little.dorsalLength', read.digits.little?.dorsalLength],
    ]);
    expect(warnings(file)).toEqual(read.estimated.map((e) => `ESTIMATED ${e.where}`));
  });

  it('three digits, no target, flags, a palm and deficits as text', () => {
    const file = demo((h) => {
      delete h.digits.index;
      delete h.invented;
      delete h.note;
      h.target = { digit: 'little', pipExtensionDeficit: '12,5°', pipFlexionDeficit: '30 deg', pipFlexionDeficitPassive: 10 };
      h.flags = { hypermobile: ['little', 'long', 'little'], swelling: true };
      Object.assign(h, { handBreadth: '7.8 cm', handCircumference: 186, metacarpalLength: 90, mpDepth: 27 });
      Object.assign(digit(h, 'long'), { mpSetback: 0 });
    });
    expect(hand(file)).toMatchObject({
      invented: false,
      note: null,
      palm: { handBreadth: 78, handCircumference: 186, metacarpalLength: 90, mpDepth: 27 },
      target: { digit: 'little', pipExtensionDeficit: 12.5, pipFlexionDeficit: 30, pipFlexionDeficitPassive: 10 },
      flags: { hypermobile: ['long', 'little'], swelling: true, sensation: false },
      digits: { long: { mpSetback: 0 } },
    });
    delete file.target;
    expect(hand(file).target).toBeNull();
    expect(hand(file).digits.index).toBeUndefined();
  });

  // Published adult means scaled to a small child and to a very large hand.
  it.each([0.7, 1, 1.3])('a hand of average proportions, times %d, whole or with estimates', (scale) => {
    const file = demo((h) => {
      for (const name of DIGITS) {
        const { circumference, palmarRoom, dorsalLength } = averageDigit(name);
        const width = (circumference * scale) / Math.PI;
        h.digits[name] = {
          width,
          circumference: circumference * scale,
          palmarRoom: palmarRoom * scale,
          dorsalLength: dorsalLength * scale,
        };
      }
    });
    expect(warnings(file)).toEqual([]);
    for (const name of DIGITS) delete digit(file, name).palmarRoom;
    expect(hand(file).estimated.length).toBe(4);
  });
});

describe('readHand(json) refuses', () => {
  it('all that is wrong at once, each with its place', () => {
    const file = demo((h) => {
      Object.assign(h, { code: 'SMITH', side: 'Left', extra: 1 });
      h.digits.middle = digit(h, 'long');
      delete h.digits.long;
      Object.assign(digit(h, 'index'), { width: 1.75, dorsalLength: 20 });
      Object.assign(digit(h, 'ring'), { circumfrence: 53 });
      delete digit(h, 'ring').circumference;
      Object.assign(digit(h, 'little'), { width: null, palmarRoom: '1,234.5' });
      h.target = { digit: 'long', pipExtensionDeficit: 130, pipFlexionDeficit: -3 };
      h.flags = { swelling: 'yes', hypermobile: ['thumb'] };
    });
    expect(brief(file).toSorted()).toEqual(
      [
        'CASE_CODE code',
        'FIELD_VALUE side',
        'FIELD_UNKNOWN extra',
        'FIELD_UNKNOWN digits.middle',
        'FIELD_OUT_OF_RANGE digits.index.width',
        'LENGTHS_CONTRADICT digits.index.palmarRoom',
        'FIELD_UNKNOWN digits.ring.circumfrence',
        'FIELD_MISSING digits.ring.circumference',
        'FIELD_TYPE digits.little.width',
        'FIELD_UNREADABLE digits.little.palmarRoom',
        'TARGET_NOT_MEASURED target.digit',
        'FIELD_OUT_OF_RANGE target.pipExtensionDeficit',
        'FIELD_UNREADABLE target.pipFlexionDeficit',
        'FIELD_TYPE flags.swelling',
        'FIELD_VALUE flags.hypermobile.0',
      ].toSorted(),
    );
    const said = problems(file).map((p) => p.message);
    expect(said).toContainEqual(expect.stringMatching(/^digits\.ring\.circumfrence: .* Did you mean "circumference"\?$/));
    expect(said).toContainEqual(expect.stringMatching(/^digits\.middle: .* Did you mean "long"\?$/));
    expect(said).toContainEqual(
      expect.stringMatching(/^side: "Left" is not allowed; expected one of "left", "right"\. Did you mean "left"\?$/),
    );
    expect(said).toContainEqual(expect.stringMatching(/^digits\.ring\.circumference: missing; .*around the digit/));
  });

  it.each([
    [
      'mm',
      1.75,
      /index width 1\.75 mm is out of range; 8 to 35 mm is allowed\. 1\.75 times 10 would be plausible: were these centimetres\?/,
    ],
    ['mm', 0.7, /0\.7 times 25\.4 would be plausible: were these inches\?/],
    ['cm', 17.5, /index width 17\.5 cm is out of range; 0\.8 to 3\.5 cm is allowed\. 17\.5 divided by 10 .* millimetres\?/],
    ['in', 17.5, /17\.5 divided by 25\.4 would be plausible: were these millimetres\?/],
    ['in', '1.8', /"1\.8", which is 1\.8 in, is out of range.* were these centimetres\?/],
    ['mm', '1.75 mm', /"1\.75 mm", which is 1\.75 mm, is out of range; 8 to 35 mm is allowed\. Caliper/],
  ])('a width that is in another unit than %s: %j', (units, width, message) => {
    const file = mapped((mm) => `${mm} mm`, units);
    digit(file, 'index').width = width;
    expect(problems(file)).toMatchObject([
      { code: 'FIELD_OUT_OF_RANGE', where: 'digits.index.width', kind: 'input', message: expect.stringMatching(message) },
    ]);
  });

  // Nag, Nag, Desai, Indian J Med Res 2003;117:260-269 (second-hand).
  it('the published breadth and circumference that contradict each other', () => {
    const file = demo((h) => Object.assign(digit(h, 'index'), { width: 13, circumference: 57 }));
    expect(problems(file)).toMatchObject([{ code: 'SECTION_IMPOSSIBLE', where: 'digits.index', kind: 'refused' }]);
  });

  it('fewer than three digits, and a target that was not measured', () => {
    expect(
      brief(
        demo((h) => {
          delete h.digits.ring;
          delete h.digits.index;
        }),
      ),
    ).toEqual(['TOO_FEW_DIGITS digits', 'TARGET_NOT_MEASURED target.digit']);
  });

  it.each([null, undefined, 5, 'hand', [], [[]], true, Number.NaN])('%j, which is no hand file', (json) => {
    expect(brief(json)).toEqual([`${json === undefined ? 'FIELD_MISSING' : 'FIELD_TYPE'} `]);
  });

  it('numbers that are none', () => {
    for (const width of [Number.NaN, Number.POSITIVE_INFINITY, true, {}, []]) {
      expect(brief(demo((h) => Object.assign(digit(h, 'ring'), { width })))).toEqual(['FIELD_TYPE digits.ring.width']);
    }
    for (const width of [0, -1, 1e300, 1e-300]) {
      const [problem, ...more] = problems(demo((h) => Object.assign(digit(h, 'ring'), { width })));
      expect(more).toEqual([]);
      expect(problem).toMatchObject({ where: 'digits.ring.width', kind: 'input' });
    }
    for (const pipFlexionDeficit of [1e300, 120.1]) {
      const file = demo((h) => Object.assign(h.target as object, { pipFlexionDeficit }));
      expect(brief(file)).toEqual(['FIELD_OUT_OF_RANGE target.pipFlexionDeficit']);
    }
  });

  it('notes that could break a line or a file', () => {
    for (const note of ['a\nb', 'a\u0000', '\u202eabc', '\ud800']) {
      expect(brief(demo((h) => Object.assign(h, { note })))).toEqual(['FIELD_VALUE note']);
    }
    expect(brief(demo((h) => Object.assign(h, { note: 'x'.repeat(301) })))).toEqual(['FIELD_OUT_OF_RANGE note']);
    expect(hand(demo((h) => Object.assign(h, { note: 'Rötung <b> & "Ring" ✋🏽' }))).note).toBe('Rötung <b> & "Ring" ✋🏽');
  });

  it('keys that reach for a prototype, and leaves prototypes alone', () => {
    const text = DEMO_TEXT.replace('"units"', '"__proto__": {"polluted": 1}, "constructor": 1, "units"').replace(
      '"width"',
      '"__proto__": null, "width"',
    );
    const result = parseHandText(text);
    expect(result.ok ? [] : result.problems.map((p) => `${p.code} ${p.where}`)).toEqual([
      'FIELD_UNKNOWN digits.index.__proto__',
      'FIELD_UNKNOWN __proto__',
      'FIELD_UNKNOWN constructor',
    ]);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(readHand(Object.create(demo()) as unknown).ok).toBe(false);
    const inherited = demo((h) => {
      h.digits.ring = Object.create(digit(h, 'ring')) as Record<string, unknown>;
    });
    expect(readHand(inherited).ok).toBe(false);
  });

  it('a file of rubbish with a bounded number of messages', () => {
    const keys = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`widht${i}`, i]));
    const found = problems(demo((h) => Object.assign(digit(h, 'ring'), keys)));
    expect(found.length).toBe(61);
    expect(found.at(-1)?.message).toBe('and 4940 more problems of this kind');
    const many = problems(demo((h) => Object.assign(h, { flags: { hypermobile: Array(100_000).fill('x') } })));
    expect(many.length).toBeLessThanOrEqual(62);
  });
});

describe('parseHandText(text, source)', () => {
  it('names the file in every message', () => {
    const result = parseHandText(DEMO_TEXT.replace('"left"', '"up"').replace('"DEMO-01"', '"X"'), 'hand.json');
    expect(result.ok ? [] : result.problems.map((p) => p.message.slice(0, 15))).toEqual(['hand.json: side', 'hand.json: code']);
  });

  it('places a fault of the JSON, reads a byte order mark, and refuses a huge file', () => {
    expect(parseHandText('{\n "schema": x', 'h')).toMatchObject({
      ok: false,
      problems: [{ code: 'JSON_SYNTAX', message: expect.stringContaining('line 2, column 12') }],
    });
    expect(parseHandText(`\uFEFF${DEMO_TEXT}`).ok).toBe(true);
    expect(parseHandText(' '.repeat(1_000_001))).toMatchObject({ problems: [{ code: 'FILE_TOO_LARGE' }] });
  });
});
