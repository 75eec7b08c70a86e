import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIGITS } from '../hand/digits.ts';
import type { Flags } from '../hand/hand.ts';
import { cautionsFor, refusalsFor } from './cautions-for.ts';

const NONE: Flags = { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false };
const codes = (flags: Partial<Flags>) => cautionsFor({ ...NONE, ...flags }).map((c) => c.code);
const refused = (flags: Partial<Flags>) => refusalsFor({ ...NONE, ...flags }).map((p) => p.code);

const anyFlags: fc.Arbitrary<Flags> = fc.record({
  hypermobile: fc.subarray([...DIGITS]),
  swelling: fc.boolean(),
  sensation: fc.boolean(),
  hardEndFeel: fc.boolean(),
  unprotectedRepair: fc.boolean(),
});

describe('cautionsFor(flags)', () => {
  it('says nothing when no flag is set', () => {
    expect(codes({})).toEqual([]);
  });

  it.each([
    // Yates et al., J Hand Ther 2023: hard with changing swelling.
    [{ swelling: true }, 'SWELLING', 'Yates et al. 2023'],
    // Common practice, no source, each of these.
    [{ sensation: true }, 'SENSATION', 'heat and pressure are not felt'],
    [{ hardEndFeel: true }, 'HARD_END_FEEL', 'does not move such a stop'],
    [{ unprotectedRepair: true }, 'UNPROTECTED_REPAIR', "surgeon's protocol"],
    [{ hypermobile: ['little', 'long'] }, 'HYPERMOBILE', '(little, long)'],
  ] as const)('for %o is %s', (flags, code, words) => {
    const [caution, ...others] = cautionsFor({ ...NONE, ...flags });
    expect(others).toEqual([]);
    expect(caution?.code).toBe(code);
    expect(caution?.message).toContain(words);
  });

  it('has one caution for each flag that is set, whatever the combination', () => {
    fc.assert(
      fc.property(anyFlags, (flags) => {
        const set = [flags.swelling, flags.sensation, flags.hardEndFeel, flags.unprotectedRepair, flags.hypermobile.length > 0];
        expect(new Set(codes(flags)).size).toBe(set.filter(Boolean).length);
        expect(codes(flags)).toHaveLength(set.filter(Boolean).length);
      }),
    );
  });
});

// The design's standing cautions: not for hard end-feel, nor an unprotected repair or fracture; common practice, no source.
describe('refusalsFor(flags)', () => {
  it('refuses a hard end-feel and an unprotected repair, both at once, and says why and how to go on', () => {
    expect(refused({ hardEndFeel: true })).toEqual(['HARD_END_FEEL']);
    expect(refused({ unprotectedRepair: true })).toEqual(['UNPROTECTED_REPAIR']);
    expect(refused({ hardEndFeel: true, unprotectedRepair: true })).toEqual(['UNPROTECTED_REPAIR', 'HARD_END_FEEL']);
    for (const problem of refusalsFor({ ...NONE, hardEndFeel: true, unprotectedRepair: true })) {
      expect(problem.kind).toBe('refused');
      expect(problem.message).toContain('--clinician-confirms');
    }
  });

  it('refuses for nothing else', () => {
    expect(refused({ swelling: true, sensation: true, hypermobile: DIGITS })).toEqual([]);
  });
});
