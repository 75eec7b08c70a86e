import { describe, expect, it } from 'vitest';
import demo from '../../fixtures/demo-hand.json' with { type: 'json' };
import { handOfRow } from './hand-columns.ts';
import { readHand } from './read-hand.ts';
import { STOP_SIGNS } from './signs.ts';

const withTarget = (target: object, more: object = {}) => readHand({ ...demo, ...more, target: { digit: 'ring', ...target } });
const targetOf = (target: object) => {
  const hand = withTarget(target);
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  return hand.value.target;
};
const codes = (target: object, more: object = {}) => {
  const hand = withTarget(target, more);
  return (hand.ok ? hand.warnings : hand.problems).map((p) => `${p.code} ${p.where}`);
};

describe('the target of a hand file', () => {
  it('reads on as it did with the deficits alone', () => {
    expect(targetOf({ pipExtensionDeficit: 25, pipFlexionDeficit: 0 })).toEqual({
      digit: 'ring',
      pipExtensionDeficit: 25,
      pipFlexionDeficit: 0,
    });
  });

  it('takes the deficits from the motion, flexion against the other hand where it is known, else against 100', () => {
    const pipActive = { extensionDeficit: '25', flexion: 85 };
    const pipPassive = { hyperextension: 5, flexion: '95°' };
    expect(targetOf({ pipActive, pipPassive })).toMatchObject({
      pipExtensionDeficit: 25,
      pipFlexionDeficit: 15,
      pipExtensionDeficitPassive: 0,
      pipFlexionDeficitPassive: 5,
      flexionExpected: { degrees: 100, from: 'norm' },
    });
    expect(targetOf({ pipActive, otherHandPip: { flexion: 110 } })).toMatchObject({
      pipFlexionDeficit: 25,
      flexionExpected: { degrees: 110, from: 'otherHand' },
    });
    // A finger that bends further than the other lacks nothing.
    expect(targetOf({ pipActive, otherHandPip: { flexion: 80 } })).toMatchObject({ pipFlexionDeficit: 0 });
  });

  it('keeps a named deficit before one that follows, and says where they differ by more than a goniometer is rounded to', () => {
    const pipActive = { extensionDeficit: 25, flexion: 90 };
    expect(targetOf({ pipExtensionDeficit: 30, pipFlexionDeficit: 10, pipActive })?.pipExtensionDeficit).toBe(30);
    expect(codes({ pipExtensionDeficit: 30, pipFlexionDeficit: 10, pipActive })).toEqual([]);
    expect(codes({ pipExtensionDeficit: 31, pipFlexionDeficit: 10, pipActive })).toEqual(['MOTION_DIFFERS target.pipExtensionDeficit']);
  });

  it('asks for what neither stands there nor follows', () => {
    expect(codes({ pipActive: { flexion: 90 } })).toEqual(['FIELD_MISSING target.pipExtensionDeficit']);
    expect(codes({ pipExtensionDeficit: 10 })).toEqual(['FIELD_MISSING target.pipFlexionDeficit']);
  });

  it('refuses a joint that is short of straight and beyond it', () => {
    const deficits = { pipExtensionDeficit: 0, pipFlexionDeficit: 20 };
    expect(codes({ ...deficits, pipPassive: { extensionDeficit: 5, hyperextension: 10 } })).toEqual([
      'MOTION_CONTRADICTS target.pipPassive',
    ]);
    expect(codes({ ...deficits, pipPassive: { extensionDeficit: 0, hyperextension: 10 } })).toEqual([]);
  });

  it('says what is no angle as such, whatever it is: an object cannot always be made a text', () => {
    const deficits = { pipExtensionDeficit: 0, pipFlexionDeficit: 20 };
    const unprintable = JSON.parse('{"toString": 1, "valueOf": 1}') as unknown;
    for (const wrong of [unprintable, [], true, null])
      expect(codes({ ...deficits, pipPassive: { extensionDeficit: 5, hyperextension: wrong } })).toEqual([
        'FIELD_TYPE target.pipPassive.hyperextension',
      ]);
  });

  it('refuses what is out of range or unknown, and says what is known', () => {
    const deficits = { pipExtensionDeficit: 20, pipFlexionDeficit: 0 };
    expect(codes({ ...deficits, mpPassive: { flexion: 130 } })).toEqual(['FIELD_OUT_OF_RANGE target.mpPassive.flexion']);
    expect(codes({ ...deficits, mpPassive: { flex: 30 } })).toEqual(['FIELD_UNKNOWN target.mpPassive.flex']);
    expect(codes({ ...deficits, weeks: -1 })).toEqual(['FIELD_OUT_OF_RANGE target.weeks']);
    expect(codes({ ...deficits, readings: { extension: 10 } })).toEqual(['FIELD_OUT_OF_RANGE target.readings.extension']);
    const wrong = withTarget({ ...deficits, stopSigns: ['infektion'] });
    expect(wrong.ok ? '' : wrong.problems[0]?.message).toContain('Did you mean "infection"?');
  });

  it('keeps every stop sign, once', () => {
    const stopSigns = [...STOP_SIGNS, 'pins'];
    expect(targetOf({ pipExtensionDeficit: 20, pipFlexionDeficit: 0, stopSigns: stopSigns.slice(0, 9) })?.stopSigns).toEqual(STOP_SIGNS);
    expect(targetOf({ pipExtensionDeficit: 20, pipFlexionDeficit: 0, stopSigns: ['pins', 'pins'] })?.stopSigns).toEqual(['pins']);
  });

  it('comes the same from a row of a table', () => {
    const row = {
      code: 'T-1',
      side: 'left',
      'target.digit': 'ring',
      'target.pipActive.extensionDeficit': '25',
      'target.pipActive.flexion': '85,5',
      'target.mpPassive.flexion': '80',
      'target.readings.flexion': '3',
      'target.weeks': '7,5',
      'target.stopSigns': 'pins openWound',
      'target.surgeonAgrees': 'yes',
      child: 'yes',
      ...Object.fromEntries(
        Object.entries(demo.digits).flatMap(([digit, measures]) =>
          Object.entries(measures).map(([id, value]) => [`${digit}.${id}`, String(value)]),
        ),
      ),
    };
    const hand = readHand(handOfRow(row, 'mm'));
    expect(hand.ok && hand.value).toMatchObject({
      child: true,
      target: {
        pipExtensionDeficit: 25,
        pipFlexionDeficit: 14.5,
        mpPassive: { flexion: 80 },
        readings: { flexion: 3 },
        weeks: 7.5,
        stopSigns: ['pins', 'openWound'],
        surgeonAgrees: true,
      },
    });
  });
});

describe('absent digits', () => {
  const { index: _, ...three } = demo.digits;
  const two = { ring: demo.digits.ring, little: demo.digits.little };
  const target = { pipExtensionDeficit: 20, pipFlexionDeficit: 0 };

  it('are neither measured nor asked for', () => {
    const hand = withTarget(target, { digits: three, absent: ['index'] });
    expect(hand.ok && hand.value.absent).toEqual(['index']);
    expect(codes(target, { digits: two, absent: ['index', 'long'] })).toEqual([]);
  });

  it('leave all others to be measured where fewer than three are left', () => {
    expect(codes(target, { digits: two })).toEqual(['TOO_FEW_DIGITS digits']);
    expect(codes(target, { digits: { ring: demo.digits.ring }, absent: ['index', 'long'] })).toEqual(['TOO_FEW_DIGITS digits']);
  });

  it('cannot be measured', () => {
    expect(codes(target, { absent: ['index'] })).toEqual(['ABSENT_MEASURED absent']);
  });
});
