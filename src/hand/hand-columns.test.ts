import { describe, expect, it } from 'vitest';
import { columnOfProblem, HAND_COLUMNS, handColumnsText, handOfRow } from './hand-columns.ts';
import { readHand } from './read-hand.ts';

const ROW = {
  code: 'T-1',
  side: 'left',
  'index.width': '17,5',
  'index.circumference': 'ring 57',
  'long.width': '17.5',
  'long.circumference': '57',
  'ring.width': '16.5 mm',
  'ring.circumference': '53',
  'target.digit': 'ring',
  'target.pipExtensionDeficit': '25',
  'target.pipFlexionDeficit': '0',
  'flags.hypermobile': 'index ring',
  'flags.swelling': 'yes',
  'flags.sensation': 'no',
  invented: 'yes',
  note: '',
};

describe('handOfRow', () => {
  it('makes the hand that the same hand file makes', () => {
    const hand = readHand(handOfRow(ROW, 'mm'));
    const file = {
      schema: 'knucklewright/hand@1',
      units: 'mm',
      code: 'T-1',
      side: 'left',
      invented: true,
      digits: {
        index: { width: '17,5', circumference: 'ring 57' },
        long: { width: '17.5', circumference: '57' },
        ring: { width: '16.5 mm', circumference: '53' },
      },
      target: { digit: 'ring', pipExtensionDeficit: '25', pipFlexionDeficit: '0' },
      flags: { hypermobile: ['index', 'ring'], swelling: true, sensation: false },
    };
    expect(hand.ok).toBe(true);
    expect(hand).toEqual(readHand(file));
  });

  it('leaves a wrong word for the check of the form, and names its column', () => {
    const hand = readHand(handOfRow({ ...ROW, 'flags.swelling': 'maybe', 'ring.width': '' }, 'mm'));
    const wheres = hand.ok ? [] : hand.problems.map((p) => columnOfProblem(p.where));
    expect(wheres.toSorted()).toEqual(['flags.swelling', 'ring.width']);
  });
});

describe('columnOfProblem', () => {
  it.each([
    ['digits.ring.width', 'ring.width'],
    ['digits.ring', 'ring.width'],
    ['target.digit', 'target.digit'],
    ['target', 'target.digit'],
    ['handBreadth', 'handBreadth'],
    ['flags.hypermobile.1', 'flags.hypermobile'],
    ['code', 'code'],
    ['', null],
    ['digits', null],
  ])('%s is in %s', (where, column) => {
    expect(columnOfProblem(where)).toBe(column);
  });
});

it('the description names every column once in its header', () => {
  const header = handColumnsText()
    .split('\n')
    .find((line) => line.startsWith('code,'));
  expect(header?.split(',')).toEqual(HAND_COLUMNS.map((c) => c.name));
  expect(new Set(HAND_COLUMNS.map((c) => c.name)).size).toBe(HAND_COLUMNS.length);
});
