import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Flags, Target } from '../hand/hand.ts';
import { STOP_SIGNS } from '../hand/signs.ts';
import { type Decision, decide, type PlanWishes } from './decide.ts';

const NONE: Flags = { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false };
const NO_WISHES: PlanWishes = { clinicianConfirms: false };

/** Measured in full, so that nothing is asked for; each test changes what it is about. */
const target = (change: Partial<Target>): Target => ({
  digit: 'ring',
  pipExtensionDeficit: 0,
  pipFlexionDeficit: 0,
  pipExtensionDeficitPassive: 0,
  pipFlexionDeficitPassive: 0,
  mpPassive: { extensionDeficit: 0, flexion: 90 },
  weeks: 12,
  ...change,
});
const decided = (change: Partial<Target>, flags: Partial<Flags> = {}, wishes: Partial<PlanWishes> = {}): Decision =>
  decide({ flags: { ...NONE, ...flags } }, target(change), { ...NO_WISHES, ...wishes });
const rules = (decision: Decision, ...levels: readonly string[]) =>
  decision.notes.filter(({ level }) => levels.length === 0 || levels.includes(level)).map(({ rule }) => rule);
const deficits = (pipExtensionDeficit: number, pipFlexionDeficit: number) => ({ pipExtensionDeficit, pipFlexionDeficit });

describe('decide: what is lacking', () => {
  // A third of the larger: common practice, no source; the trial NCT06985459 gives the strip by the greater deficit in every case.
  it.each([
    [25, 0, ['strip'], 'pipExtension'],
    [0, 25, ['strip'], 'pipFlexion'],
    [30, 10, ['plate', 'strip'], 'pipExtension'],
    [31, 10, ['strip', 'plate'], 'pipExtension'],
    [10, 30, ['plate', 'strip'], 'pipFlexion'],
    [10, 31, ['strip', 'plate'], 'pipFlexion'],
    // Of equals the strip is for extension, the weaker motion.
    [40, 40, ['plate', 'strip'], 'pipExtension'],
    [9, 9, [], null],
  ] as const)('%d and %d: %o for %s', (e, f, order, stripNeed) => {
    expect(decided(deficits(e, f))).toMatchObject({ order, stripNeed });
  });

  it.each([
    [4, []],
    [5, ['SLIGHT']],
    [9, ['SLIGHT']],
    [10, []],
  ])('a deficit of %d is said to be slight: %o', (e, expected) => {
    expect(rules(decided(deficits(e, 40))).filter((rule) => rule === 'SLIGHT')).toEqual(expected);
  });

  it('plans for a slight deficit where it is asked for', () => {
    expect(decided(deficits(7, 0)).order).toEqual([]);
    const asked = decided(deficits(7, 0), {}, { anyway: true });
    expect(asked).toMatchObject({ need: 'pipExtension', order: ['strip'] });
    expect(rules(asked)).toContain('ANYWAY');
  });

  it('says against what flexion is reckoned where it was read as an angle', () => {
    expect(rules(decided({ ...deficits(0, 25), flexionExpected: { degrees: 110, from: 'otherHand' } }))).toContain('FLEXION_AGAINST');
    expect(rules(decided(deficits(0, 25)))).not.toContain('FLEXION_AGAINST');
  });
});

describe('decide: how sure', () => {
  // 1 - Phi((10 - x)/3.5), by a table of the normal distribution: 0.196 at 7, 0.284 at 8, 0.716 at 12, 0.804 at 13.
  it.each([
    [7, false],
    [8, true],
    [12, true],
    [13, false],
  ])('a reading of %d is to be measured again: %s', (e, again) => {
    expect(rules(decided(deficits(e, 0))).includes('MEASURE_AGAIN')).toBe(again);
  });

  it('gives the chances: 25 and 0 are 1.00 and 0.00, 25 and 9 are 1.00 and 0.39', () => {
    expect(decided(deficits(25, 0)).lacking.extension).toBeCloseTo(1, 2);
    expect(decided(deficits(25, 0)).lacking.flexion).toBeCloseTo(0, 2);
    expect(decided(deficits(25, 9)).lacking.flexion).toBeCloseTo(0.39, 2);
  });

  it('shows both plans once it was measured three times and is still not sure', () => {
    const twice = decided({ ...deficits(25, 9), readings: { flexion: 2 } });
    expect(twice.alternatives).toEqual([]);
    expect(rules(twice)).toContain('MEASURE_AGAIN');
    const thrice = decided({ ...deficits(25, 9), readings: { flexion: 3 } });
    expect(rules(thrice)).toContain('STILL_UNSURE');
    expect(thrice).toMatchObject({ order: ['strip'], alternatives: [{ motion: 'flexion', need: 'both', order: ['plate', 'strip'] }] });
  });

  // sigma / sqrt 3 is 2.02, kept at 2.5: 0.2 lies at 7.90, 0.8 at 12.10.
  it.each([
    [7, false],
    [8, true],
    [12, true],
    [13, false],
  ])('a mean of three of %d leaves both plans: %s', (f, both) => {
    expect(decided({ ...deficits(25, f), readings: { flexion: 3 } }).alternatives.length > 0).toBe(both);
  });
});

describe('decide: active against passive', () => {
  it.each([
    [30, 21, true],
    [30, 20, false],
    [18, 10, true],
    [18, 9, false],
  ])('active %d and passive %d is stiff: %s', (active, passive, stiff) => {
    const e = decided({ ...deficits(active, 0), pipExtensionDeficitPassive: passive });
    const f = decided({ ...deficits(0, active), pipFlexionDeficitPassive: passive });
    expect([e, f].map((d) => rules(d, 'first').includes('PASSIVE_ALIKE'))).toEqual([stiff, stiff]);
  });

  it.each([
    [59, false],
    [60, true],
  ])('a deficit of %d is large: %s', (f, large) => {
    expect(rules(decided(deficits(0, f)), 'first').includes('LARGE_DEFICIT')).toBe(large);
  });

  it('asks for passive motion of what lacks, and not where a repair is not protected', () => {
    const { pipFlexionDeficitPassive: _, ...unmeasured } = target(deficits(0, 40));
    const asked = (flags: Partial<Flags>) =>
      decide({ flags: { ...NONE, ...flags } }, unmeasured, { clinicianConfirms: true }).notes.some(
        ({ rule }) => rule === 'MEASURE_PASSIVE',
      );
    expect(asked({})).toBe(true);
    expect(asked({ unprotectedRepair: true })).toBe(false);
  });

  // Lag 20 or more, passive deficit under 10, under 8 weeks or not known. Common practice, no source.
  it.each([
    [20, 9, 7.9, true],
    [19, 9, 7.9, false],
    [20, 10, 7.9, false],
    [20, 9, 8, false],
    [20, 9, undefined, true],
  ])('lag %d, passive %d, %s weeks: the central slip is tested first: %s', (active, passive, weeks, stops) => {
    const { weeks: _, ...one } = target({ ...deficits(active, 0), pipExtensionDeficitPassive: passive });
    const known = weeks === undefined ? one : { ...one, weeks };
    for (const [change, stopped] of [
      [{}, stops],
      [{ centralSlip: 'intact' }, false],
      [{ surgeonAgrees: true }, false],
      [{ centralSlip: 'torn' }, true],
    ] as const) {
      const decision = decide({ flags: NONE }, { ...known, ...change }, NO_WISHES);
      expect(decision.order.length === 0).toBe(stopped);
      expect(decision.notes.some(({ level }) => level === 'stop')).toBe(stopped);
    }
  });

  it('is not lifted by the clinician alone', () => {
    const decision = decided({ ...deficits(25, 0), weeks: 3 }, {}, { clinicianConfirms: true });
    expect(rules(decision, 'stop')).toEqual(['CENTRAL_SLIP']);
  });

  // Within 20 of straight: Merritt & Jarrell 2020.
  it.each([
    [20, 8, []],
    [21, 8, ['BOUTONNIERE_CAST']],
    [20, 7.9, ['BOUTONNIERE_EARLY']],
    [20, undefined, ['BOUTONNIERE_EARLY']],
    [undefined, 8, ['BOUTONNIERE_MEASURE']],
  ])('a boutonniere with passive %s at %s weeks: %o', (passive, weeks, expected) => {
    const { weeks: _, pipExtensionDeficitPassive: __, ...one } = target({ ...deficits(40, 0), boutonniere: true });
    const decision = decide(
      { flags: NONE },
      { ...one, ...(passive === undefined ? {} : { pipExtensionDeficitPassive: passive }), ...(weeks === undefined ? {} : { weeks }) },
      NO_WISHES,
    );
    expect(rules(decision, 'stop')).toEqual(expected);
    expect(decision.order).toEqual(expected.length === 0 ? ['strip'] : []);
  });
});

describe('decide: beyond straight', () => {
  it.each([
    [9, undefined, false],
    [10, undefined, true],
    [10, 9, true],
    [10, 10, false],
  ])('%d beyond, the other hand %s: no strip for extension: %s', (beyond, other, stops) => {
    const decision = decided({
      ...deficits(20, 0),
      pipPassive: { hyperextension: beyond },
      ...(other === undefined ? {} : { otherHandPip: { hyperextension: other } }),
    });
    expect(rules(decision, 'stop')).toEqual(stops ? ['BEYOND_STRAIGHT'] : []);
    expect(decision.order).toEqual(stops ? [] : ['strip']);
  });

  it('counts another hand that stays short of straight as not beyond', () => {
    const decision = decided({ ...deficits(20, 0), pipPassive: { hyperextension: 10 }, otherHandPip: { extensionDeficit: 5 } });
    expect(rules(decision, 'stop')).toEqual(['BEYOND_STRAIGHT']);
  });

  it('keeps a plate at 45 or under and drops the strip for extension', () => {
    const decision = decided({ ...deficits(40, 20), pipPassive: { hyperextension: 15 } });
    expect(decision).toMatchObject({ order: ['plate'], stripNeed: null, plate: { degrees: 45, wanted: 60 } });
    expect(rules(decision, 'first')).toContain('BEYOND_STRAIGHT');
  });

  it('leaves a strip for flexion', () => {
    expect(decided({ ...deficits(0, 40), pipPassive: { hyperextension: 15 } }).order).toEqual(['strip']);
  });
});

describe('decide: the plate', () => {
  it('asks for the MP motion where a plate is named and it is not measured', () => {
    const { mpPassive: _, ...one } = target(deficits(30, 20));
    expect(decide({ flags: NONE }, one, NO_WISHES).notes.map(({ rule }) => rule)).toContain('MEASURE_MP');
    expect(rules(decided(deficits(30, 20)))).not.toContain('MEASURE_MP');
    expect(rules(decided({ ...deficits(30, 20), mpPassive: { flexion: 90 } }))).toContain('MEASURE_MP');
  });

  it('has no plate that favours flexion for 10/40 with passive MP 50 to 90, and says so', () => {
    const decision = decided({ ...deficits(10, 40), mpPassive: { extensionDeficit: 50, flexion: 90 } });
    expect(decision).toMatchObject({ order: ['strip'], plate: null });
    expect(rules(decision, 'first')).toContain('NO_PLATE');
  });

  it('says hours, and that the angle was moved', () => {
    const decision = decided({ ...deficits(30, 20), mpPassive: { extensionDeficit: 0, flexion: 50 } });
    expect(rules(decision)).toEqual(expect.arrayContaining(['PLATE_HOURS', 'PLATE_ANGLE', 'PLATE_MOVED']));
    expect(rules(decided(deficits(30, 20)))).not.toContain('PLATE_MOVED');
  });
});

const anyTarget: fc.Arbitrary<Target> = fc
  .record({
    e: fc.integer({ min: 0, max: 100 }),
    f: fc.integer({ min: 0, max: 100 }),
    passive: fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined }),
    weeks: fc.option(fc.integer({ min: 0, max: 30 }), { nil: undefined }),
    hyperextension: fc.constantFrom(0, 9, 10, 20),
    boutonniere: fc.boolean(),
    surgeonAgrees: fc.boolean(),
    stopSigns: fc.subarray([...STOP_SIGNS], { maxLength: 2 }),
  })
  .map(({ e, f, passive, weeks, hyperextension, ...more }) => ({
    digit: 'ring',
    ...deficits(e, f),
    ...(passive === undefined ? {} : { pipExtensionDeficitPassive: passive }),
    ...(weeks === undefined ? {} : { weeks }),
    pipPassive: { hyperextension },
    ...more,
  }));
const anyFlags = fc.record({ hardEndFeel: fc.boolean(), unprotectedRepair: fc.boolean() });

describe('decide, whatever is measured', () => {
  it('suggests nothing with a stop, and says what stops it first', () => {
    fc.assert(
      fc.property(anyTarget, anyFlags, fc.boolean(), (one, flags, clinicianConfirms) => {
        const decision = decide({ flags: { ...NONE, ...flags } }, one, { clinicianConfirms });
        const levels = decision.notes.map(({ level }) => level);
        const isStopped = levels.includes('stop') || levels.includes('confirm');
        if (isStopped) expect(decision).toMatchObject({ order: [], plate: null, alternatives: [] });
        if (levels.includes('stop')) expect(levels[0]).toBe('stop');
        expect(isStopped || decision.need === 'none' || decision.order.length > 0 || levels.includes('first')).toBe(true);
      }),
    );
  });

  it('never becomes milder by one more sign', () => {
    fc.assert(
      fc.property(anyTarget, anyFlags, fc.constantFrom(...STOP_SIGNS), (one, flags, sign) => {
        const hand = { flags: { ...NONE, ...flags } };
        const before = decide(hand, one, NO_WISHES);
        const after = decide(hand, { ...one, stopSigns: [...new Set([...(one.stopSigns ?? []), sign])] }, NO_WISHES);
        expect(after.order.length).toBeLessThanOrEqual(before.order.length);
        for (const { rule } of before.notes.filter(({ level }) => level === 'stop' || level === 'confirm'))
          expect(rules(after)).toContain(rule);
      }),
    );
  });

  it('never says more is to be made where a flag is set', () => {
    fc.assert(
      fc.property(anyTarget, fc.constantFrom('hardEndFeel', 'unprotectedRepair'), (one, flag) => {
        const without = decide({ flags: NONE }, one, NO_WISHES);
        const withFlag = decide({ flags: { ...NONE, [flag]: true } }, one, NO_WISHES);
        expect(withFlag.order.length).toBeLessThanOrEqual(without.order.length);
      }),
    );
  });
});
