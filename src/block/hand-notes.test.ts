import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIGITS } from '../hand/digits.ts';
import type { Flags } from '../hand/hand.ts';
import { STOP_SIGNS } from '../hand/signs.ts';
import { careNotes, cautionsFor, confirmNotes, stopNotes } from './hand-notes.ts';

const NONE: Flags = { hypermobile: [], swelling: false, sensation: false, hardEndFeel: false, unprotectedRepair: false };
const rules = (flags: Partial<Flags>) => cautionsFor({ target: null, flags: { ...NONE, ...flags } }).map(({ rule }) => rule);

const anyFlags: fc.Arbitrary<Flags> = fc.record({
  hypermobile: fc.subarray([...DIGITS]),
  swelling: fc.boolean(),
  sensation: fc.boolean(),
  hardEndFeel: fc.boolean(),
  unprotectedRepair: fc.boolean(),
});

describe('cautionsFor(hand)', () => {
  it('says nothing when nothing is said of the hand', () => {
    expect(rules({})).toEqual([]);
  });

  it.each([
    [{ swelling: true }, 'SWELLING'],
    [{ sensation: true }, 'SENSATION'],
    [{ hardEndFeel: true }, 'HARD_END_FEEL'],
    [{ unprotectedRepair: true }, 'UNPROTECTED_REPAIR'],
    [{ hypermobile: ['little', 'long'] }, 'HYPERMOBILE'],
  ] as const)('for %o is %s', (flags, rule) => {
    expect(rules(flags)).toEqual([rule]);
  });

  it('has one note for each flag that is set, whatever the combination', () => {
    fc.assert(
      fc.property(anyFlags, (flags) => {
        const set = [flags.swelling, flags.sensation, flags.hardEndFeel, flags.unprotectedRepair, flags.hypermobile.length > 0];
        expect(new Set(rules(flags)).size).toBe(set.filter(Boolean).length);
        expect(rules(flags)).toHaveLength(set.filter(Boolean).length);
      }),
    );
  });

  it('begins with the stop signs', () => {
    const notes = cautionsFor({
      target: { digit: 'ring', pipExtensionDeficit: 20, pipFlexionDeficit: 0, stopSigns: ['infection'] },
      flags: { ...NONE, swelling: true },
    });
    expect(notes.map(({ rule, level }) => [rule, level])).toEqual([
      ['STOP_SIGN', 'stop'],
      ['SWELLING', 'caution'],
    ]);
  });

  it("minds a child's hand", () => {
    expect(careNotes({ flags: NONE, child: true }).map(({ rule }) => rule)).toEqual(['CHILD']);
  });
});

describe('stopNotes(target)', () => {
  it('stops for every sign and says whom to ask', () => {
    const asked = stopNotes({ stopSigns: STOP_SIGNS }).map((note) => note.rule === 'STOP_SIGN' && [note.sign, note.ask, note.level]);
    expect(asked).toEqual([
      ['paleBlueOrCold', 'surgeonSameDay', 'stop'],
      ['infection', 'surgeonSameDay', 'stop'],
      ['newNumbness', 'surgeonSameDay', 'stop'],
      ['newActiveLoss', 'surgeonSameDay', 'stop'],
      ['unstableJoint', 'surgeonSameDay', 'stop'],
      ['suspectedCrps', 'surgeonWorkingDay', 'stop'],
      ['openWound', 'surgeonBefore', 'stop'],
      ['pins', 'surgeonBefore', 'stop'],
      ['inflamedJoint', 'referrer', 'stop'],
    ]);
  });

  it("lifts an open wound and pins by the surgeon's word, and nothing else", () => {
    const left = stopNotes({ stopSigns: STOP_SIGNS, surgeonAgrees: true }).map((note) => note.rule === 'STOP_SIGN' && note.sign);
    expect(left).toEqual(STOP_SIGNS.filter((sign) => sign !== 'openWound' && sign !== 'pins'));
  });
});

describe('confirmNotes(hand, confirmed)', () => {
  it('waits for the clinician with a hard end-feel and an unprotected repair, and is a caution once confirmed', () => {
    const flags = { ...NONE, hardEndFeel: true, unprotectedRepair: true };
    expect(confirmNotes({ flags }, false).map(({ rule, level }) => `${rule} ${level}`)).toEqual([
      'UNPROTECTED_REPAIR confirm',
      'HARD_END_FEEL confirm',
    ]);
    expect(confirmNotes({ flags }, true).map(({ level }) => level)).toEqual(['caution', 'caution']);
  });

  it('waits for nothing else', () => {
    expect(confirmNotes({ flags: { ...NONE, swelling: true, sensation: true, hypermobile: DIGITS } }, false)).toEqual([]);
  });
});
