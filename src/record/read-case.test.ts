import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import { times } from '../../tests/by-night.ts';
import { plate, sampleCase, sampleFile, sampleVisit, strip } from '../../tests/sample-case.ts';
import { DIGIT_FIELDS } from '../hand/fields.ts';
import { parseCaseText, readCase } from './read-case.ts';
import { readVisit } from './read-visit.ts';
import { caseText, withVisit } from './write-case.ts';

const problems = (json: unknown) => {
  const read = readCase(json);
  return read.ok ? [] : read.problems;
};
const codesAt = (json: unknown) => problems(json).map(({ code, where }) => `${code} ${where}`);
const visitWith = (rest: Record<string, unknown>) => sampleFile([{ pip: [20, 90], rest }]);
const pip = (active: unknown, more: object = {}) => visitWith({ goniometry: { pip: { active, ...more } } });

/** Every value that a visit can note, in the form of the file. */
const EVERYTHING_NOTED = {
  pain: 3.5,
  skin: 'marks',
  sensation: 'returned',
  colour: 'ok',
  infection: false,
  deformity: false,
  crpsSigns: ['touchHurts', 'swelling'],
  fits: true,
  redirects: false,
  wear: 6.5,
  wearAgreed: 8,
  rater: 'KW2',
  repeated: true,
  measuredDifferential: 18,
  freePip: 85,
  pencil: { without: { extensionDeficit: 25, flexion: 85 }, with: { hyperextension: 2, flexion: 90 } },
  closedAt: -1.5,
  weaning: false,
  goal: 10,
  comment: 'Loosened.',
} as const;

describe('readCase(json): what it takes', () => {
  it('reads every part of a visit', () => {
    const record = sampleCase([
      {
        pip: [20, 90],
        passive: [-5, 100],
        rest: {
          ...strip(20),
          otherHand: { pip: { hyperextension: 5, flexion: 105 } },
          measures: { units: 'cm', digits: { ring: { circumference: 5.3, pipCircumference: 'ring 60' } }, handCircumference: '8 in' },
          ...EVERYTHING_NOTED,
        },
      },
    ]);
    expect(record.visits).toEqual([
      {
        date: '2026-01-05',
        goniometry: {
          mp: {},
          pip: { active: { extensionDeficit: 20, flexion: 90 }, passive: { extensionDeficit: -5, flexion: 100 } },
          dip: {},
        },
        otherHand: { pip: { extensionDeficit: -5, flexion: 105 } },
        measures: { digits: { ring: { circumference: 53, pipCircumference: 60 } }, palm: { handCircumference: 203.2 } },
        made: {
          kind: 'strip',
          block: { id: 'sample', places: { long: 'enclosed', ring: 'lowered', little: 'enclosed' } },
          differential: 20,
          geometryVersion: '1',
          flatLength: 160,
        },
        noted: {
          ...EVERYTHING_NOTED,
          crpsSigns: ['swelling', 'touchHurts'],
          pencil: { without: { extensionDeficit: 25, flexion: 85 }, with: { extensionDeficit: -2, flexion: 90 } },
        },
      },
    ]);
  });

  it('reads a plate and the hand', () => {
    const record = sampleCase([{ pip: [20, 80], rest: plate(45) }], { code: 'DEMO-01', hand: demoHand });
    expect(record.visits[0]?.made).toEqual({ kind: 'plate', faces: 'dorsal', mpAngle: 45, geometryVersion: '1', flatLength: null });
    expect(record.hand?.digits.ring?.circumference).toBe(53);
  });

  it('puts visits in the order of their dates, those of a day as they stand', () => {
    const at = (date: string, flexion: number) => ({ ...sampleVisit({ pip: [0, flexion] }), date });
    const read = readCase({
      ...sampleFile(),
      visits: [at('2026-03-02', 1), at('2026-01-02', 2), at('2026-03-02', 3), at('2026-02-02', 4)],
    });
    expect(read.ok && read.value.visits.map((visit) => visit.goniometry.pip.active.flexion)).toEqual([2, 4, 1, 3]);
    expect(read.ok && read.value.file.visits.map((visit) => visit.goniometry.pip.active.flexion)).toEqual([2, 4, 1, 3]);
  });

  it('writes 0 for a hyperextension of 0, never -0', () => {
    const read = readCase(pip({ hyperextension: 0, flexion: 90 }));
    expect(read.ok && Object.is(read.value.visits[0]?.goniometry.pip.active.extensionDeficit, 0)).toBe(true);
  });

  it('warns of what is odd, and reads it', () => {
    const read = readCase(pip({ extensionDeficit: 110, flexion: 120 }, { passive: { extensionDeficit: 110, flexion: 114 } }));
    expect(read.ok && read.warnings.map(({ code, where }) => `${code} ${where}`)).toEqual([
      'VALUE_UNUSUAL visits.0.goniometry.pip.active.extensionDeficit',
      'VALUE_UNUSUAL visits.0.goniometry.pip.active.flexion',
      'VALUE_UNUSUAL visits.0.goniometry.pip.passive.extensionDeficit',
      'PASSIVE_BELOW_ACTIVE visits.0.goniometry.pip',
    ]);
  });
});

describe('readCase(json): what it refuses', () => {
  const { from, to } = DIGIT_FIELDS.circumference.refuse;
  it.each([
    [{ ...sampleFile(), code: 'SMITH' }, 'CASE_CODE code'],
    [{ ...sampleFile(), code: '1984-03-12' }, 'CASE_CODE code'],
    [{ ...sampleFile(), side: 'Left' }, 'FIELD_VALUE side'],
    [{ ...sampleFile(), extra: 1 }, 'FIELD_UNKNOWN extra'],
    [{ ...sampleFile(), visits: {} }, 'FIELD_TYPE visits'],
    [{ ...sampleFile(), hand: demoHand }, 'HAND_OF_ANOTHER hand.code'],
    [{ ...sampleFile(), hand: { ...demoHand, code: 'TEST-1', side: 'right' } }, 'HAND_OF_ANOTHER hand.side'],
    [{ ...sampleFile(), code: 'DEMO-01', hand: { ...demoHand, units: 'ell' } }, 'FIELD_VALUE hand.units'],
    [visitWith({ date: '2026-02-30' }), 'FIELD_VALUE visits.0.date'],
    [visitWith({ date: '1950-01-01' }), 'FIELD_VALUE visits.0.date'],
    [visitWith({ date: '2026-02-03T10:00' }), 'FIELD_VALUE visits.0.date'],
    [visitWith({ goniometry: {} }), 'FIELD_MISSING visits.0.goniometry.pip'],
    [visitWith({ goniometry: { pip: {} } }), 'FIELD_MISSING visits.0.goniometry.pip.active'],
    [pip({ extensionDeficit: -25, flexion: 90 }), 'FIELD_OUT_OF_RANGE visits.0.goniometry.pip.active.extensionDeficit'],
    [pip({ extensionDeficit: 25, flexion: 131 }), 'FIELD_OUT_OF_RANGE visits.0.goniometry.pip.active.flexion'],
    [pip({ extensionDeficit: '25', flexion: 90 }), 'FIELD_TYPE visits.0.goniometry.pip.active.extensionDeficit'],
    [pip({ extensionDeficit: 25, hyperextension: 5, flexion: 90 }), 'MOTION_AMBIGUOUS visits.0.goniometry.pip.active'],
    [pip({ flexion: 90 }), 'MOTION_AMBIGUOUS visits.0.goniometry.pip.active'],
    [pip({ extensionDeficit: 90, flexion: 25 }), 'MOTION_IMPOSSIBLE visits.0.goniometry.pip.active'],
    [visitWith({ wear: 25 }), 'FIELD_OUT_OF_RANGE visits.0.wear'],
    [visitWith({ comment: 'a\nb' }), 'FIELD_VALUE visits.0.comment'],
    [visitWith({ comment: 'a\u202eb' }), 'FIELD_VALUE visits.0.comment'],
    [visitWith({ comment: 'x'.repeat(301) }), 'FIELD_OUT_OF_RANGE visits.0.comment'],
    [visitWith({ comment: 'Told Mrs Example to wear it' }), 'COMMENT_TELLS_WHO visits.0.comment'],
    [visitWith({ comment: 'Write to a@example.org' }), 'COMMENT_TELLS_WHO visits.0.comment'],
    [visitWith({ comment: 'Call 0123 456 7890' }), 'COMMENT_TELLS_WHO visits.0.comment'],
    [visitWith({ comment: 'DOB 1.2.1984' }), 'COMMENT_TELLS_WHO visits.0.comment'],
    [visitWith({ fit: true }), 'FIELD_UNKNOWN visits.0.fit'],
    [visitWith({ made: { kind: 'glove' } }), 'FIELD_TYPE visits.0.made.kind'],
    [visitWith(strip(20, { long: 'raised', ring: 'lowered', little: 'enclosed' })), 'BLOCK_BORDER visits.0.made'],
    [visitWith(plate(91)), 'FIELD_OUT_OF_RANGE visits.0.made.mpAngle'],
    [visitWith(strip(-1e12)), 'FIELD_OUT_OF_RANGE visits.0.made.options.differential'],
    [
      visitWith({ measures: { units: 'mm', digits: { ring: { circumference: from - 1 } } } }),
      'FIELD_OUT_OF_RANGE visits.0.measures.digits.ring.circumference',
    ],
    [
      visitWith({ measures: { units: 'mm', digits: { ring: { circumference: to + 1 } } } }),
      'FIELD_OUT_OF_RANGE visits.0.measures.digits.ring.circumference',
    ],
    [
      visitWith({ measures: { units: 'mm', digits: { ring: { circumference: 'wide' } } } }),
      'FIELD_UNREADABLE visits.0.measures.digits.ring.circumference',
    ],
  ])('case %#', (json, expected) => {
    expect(codesAt(json)).toContain(expected);
  });

  it('names value, range and what to do', () => {
    const [problem] = problems(pip({ extensionDeficit: -25, flexion: 90 }));
    expect(problem?.message).toMatch(
      /^visits\.0\.goniometry\.pip\.active\.extensionDeficit: -25 is not allowed; expected the PIP extension deficit, a number of degrees from 0 to 120\./,
    );
    expect(problem?.message).toMatch(/beyond straight has "hyperextension"/);
    expect(problems({ ...sampleFile(), vists: [] })[0]?.message).toMatch(/Did you mean "visits"\?/);
    expect(problems(visitWith({ fit: true }))[0]?.message).toMatch(/Did you mean "fits"\?/);
  });

  it('finds all problems of all visits at once', () => {
    const file = sampleFile([
      { pip: [90, 20] },
      { pip: [20, 90], rest: { measures: { units: 'mm', digits: { ring: { circumference: 5 } } } } },
      { pip: [20, 90], rest: { comment: 'Mr X said' } },
    ]);
    expect(codesAt({ ...file, code: 'SMITH', hand: demoHand })).toHaveLength(5);
    // Where the form is wrong too, the measurements of other visits still are read.
    expect(codesAt({ ...file, side: 'both' })).toEqual([
      'FIELD_VALUE side',
      'FIELD_OUT_OF_RANGE visits.1.measures.digits.ring.circumference',
    ]);
  });

  it('counts what it does not list', () => {
    const found = problems({ ...sampleFile(), ...Object.fromEntries(Array.from({ length: 200 }, (_, k) => [`x${k}`, 1])) });
    expect(found).toHaveLength(61);
    expect(found.at(-1)?.message).toMatch(/140 more/);
  });
});

describe('a case of more visits than are read', () => {
  it('is said with both numbers and a way on', () => {
    const [first] = problems(sampleFile(Array.from({ length: 401 }, () => ({ pip: [20, 90] as const }))));
    expect(first?.code).toBe('FIELD_OUT_OF_RANGE');
    expect(first?.message).toMatch(/^visits: there are 401; at most 400 are read\. Open a new case .*\(case new\)/);
  });
});

describe('parseCaseText(text, source)', () => {
  it.each([
    ['', 'FILE_EMPTY'],
    ['  \n', 'FILE_EMPTY'],
    ['\u0000'.repeat(100), 'JSON_SYNTAX'],
    [JSON.stringify(sampleFile()).slice(0, -20), 'JSON_SYNTAX'],
    [`${JSON.stringify(sampleFile())}${JSON.stringify(sampleFile())}`, 'JSON_SYNTAX'],
    [' '.repeat(1_000_001), 'FILE_EMPTY'],
    [`[${' '.repeat(1_000_001)}]`, 'FILE_TOO_LARGE'],
  ])('refuses damage %#', (text, code) => {
    const read = parseCaseText(text, 'a.json');
    expect(read).toMatchObject({ ok: false, problems: [{ code, message: expect.stringMatching(/^a\.json: /) }] });
  });

  it('never throws, whatever JSON it gets', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), (text) => {
        expect(parseCaseText(text).ok).toBe(false);
      }),
      { numRuns: times(60, 300) },
    );
  });

  it('never throws on a case file of which any part is something else', () => {
    const whole = sampleFile(
      [
        {
          pip: [20, 90],
          passive: [10, 95],
          rest: { ...strip(20), fits: true, comment: 'x', measures: { units: 'mm', digits: { ring: { circumference: 53 } } } },
        },
      ],
      { code: 'DEMO-01', hand: demoHand },
    );
    const paths: string[][] = [];
    const walk = (value: unknown, path: string[]) => {
      paths.push(path);
      if (typeof value === 'object' && value !== null) for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
    };
    walk(whole, []);
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 2 }), (path, value) => {
        const changed = path.length === 0 ? value : put(structuredClone(whole), path, value);
        const read = readCase(changed);
        // What is taken is read again from its own text.
        if (read.ok) expect(caseText(read.value.file).ok).toBe(true);
        else for (const { message } of read.problems) expect(message).toMatch(/^\S/);
      }),
      { numRuns: times(200, 1000) },
    );
  });

  it('refuses hostile keys and leaves every prototype alone', () => {
    const texts = ['"__proto__": {"polluted": 1}', '"constructor": {"prototype": {"polluted": 1}}', '"toString": 1'].flatMap((member) => [
      JSON.stringify(sampleFile()).replace(/^\{/, `{${member}, `),
      JSON.stringify(sampleFile([{ pip: [20, 90] }])).replace('"goniometry":{', `"goniometry":{${member}, `),
      JSON.stringify(sampleFile([{ pip: [20, 90] }])).replace('"active":{', `"active":{${member}, `),
    ]);
    for (const text of texts) {
      expect(text).toMatch(/polluted|toString/);
      const read = parseCaseText(text);
      expect(read.ok ? ['taken'] : read.problems.map((p) => p.code)).toContain('FIELD_UNKNOWN');
    }
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
    const options = JSON.stringify(visitWith(strip(20))).replace('"options":{', '"options":{"__proto__": {"differential": 99}, ');
    const read = parseCaseText(options);
    expect(read.ok ? read.value.visits[0]?.made : null).not.toMatchObject({ differential: 99 });
  });
});

describe('readVisit(json, source)', () => {
  it('reads a visit by itself, with the same checks', () => {
    expect(readVisit(sampleVisit({ pip: [20, 90] }))).toMatchObject({ ok: true, value: { visit: { date: '2026-01-05' } } });
    const read = readVisit(
      { ...sampleVisit({ pip: [20, 90] }), date: 'today', measures: { units: 'mm', digits: { ring: { width: 1 } } } },
      'v.json',
    );
    expect(read.ok ? [] : read.problems.map(({ where, message }) => [where, message.startsWith('v.json: ')])).toEqual([
      ['date', true],
      ['measures.digits.ring.width', true],
    ]);
  });
});

describe('caseText(file) and withVisit(file, visit)', () => {
  it('writes what reads back the same, to the byte', () => {
    const { file } = sampleCase([{ pip: [20, 90], rest: strip(20) }, { pip: [-3, 95] }], { code: 'DEMO-01', hand: demoHand });
    const text = caseText(file);
    const again = text.ok ? parseCaseText(text.value) : text;
    expect(again.ok && again.value.file).toEqual(file);
    expect(again.ok && caseText(again.value.file)).toEqual(text);
  });

  it('puts a visit after those of its day and before later ones', () => {
    const { file } = sampleCase([{ pip: [1, 90] }, { pip: [2, 90] }, { pip: [3, 90] }]);
    const visit = readVisit(sampleVisit({ pip: [9, 90] }, 1));
    const added = visit.ok ? withVisit(file, visit.value.file) : visit;
    expect(added.ok && added.value.visits.map((v) => v.goniometry.pip.active.extensionDeficit)).toEqual([1, 2, 9, 3]);
  });

  it('refuses one visit too many', () => {
    const { file } = sampleCase(Array.from({ length: 400 }, () => ({ pip: [20, 90] as const })));
    const [visit] = file.visits;
    const added = visit && withVisit(file, visit);
    expect(added).toMatchObject({ ok: false, problems: [{ code: 'CASE_FULL' }] });
  });
});

function put(target: unknown, path: readonly string[], value: unknown): unknown {
  const [key = '', ...rest] = path;
  if (path.length === 0) return value;
  const at = target as Record<string, unknown>;
  at[key] = put(at[key], rest, value);
  return at;
}
