import { describe, expect, it } from 'vitest';
import { demoPlateHand } from '../../../tests/demo-plate.ts';
import { DEFAULT_PLATE_OPTIONS, PLATE_NUMBER_OPTIONS } from './plate-options.ts';
import { designFor, plateJsonSchema, readPlate, readPlateOptions } from './read-plate.ts';

const file = { schema: 'knucklewright/plate@1', id: 'mine', faces: 'palmar', digits: ['ring', 'long'], angle: 20 };
const hand = demoPlateHand();
const nothing = { digits: null, angle: null, planned: null };

function preset(json: unknown) {
  const read = readPlate(json, 'mine.json');
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.value;
}

describe('readPlate', () => {
  it('reads a plate file, its digits from radial to ulnar', () => {
    expect(preset(file)).toMatchObject({ id: 'mine', title: 'mine', faces: 'palmar', digits: ['long', 'ring'], angle: 20, angles: null });
  });
  it.each([
    [{ ...file, faces: 'front' }, 'faces'],
    [{ ...file, angle: 91 }, 'angle'],
    [{ ...file, digits: [] }, 'digits'],
    [{ ...file, extra: 1 }, ''],
    [{ ...file, options: { wing: 99 } }, 'options.wing'],
    [{ ...file, id: 'Not Good' }, 'id'],
  ])('refuses %j and names the place', (json, where) => {
    const read = readPlate(json, 'mine.json');
    expect(read.ok ? [] : read.problems.map((p) => p.where)).toContain(where);
    expect(read.ok ? '' : read.problems[0]?.message).toMatch(/^mine\.json: .*A plate file looks like/);
  });
  it('has a JSON Schema that lists what it reads', () => {
    expect(Object.keys((plateJsonSchema() as { properties: object }).properties)).toEqual(
      expect.arrayContaining(['schema', 'id', 'faces', 'digits', 'angle', 'options']),
    );
  });
});

describe('designFor', () => {
  it('takes the person before the file, and the file before the plan', () => {
    const angle = (choice: object, json: object = file) => {
      const design = designFor(hand, preset(json), { ...nothing, ...choice });
      return design.ok ? design.value.angle : design.problems[0]?.code;
    };
    const { angle: _, ...open } = file;
    expect([angle({ angle: 35, planned: 60 }), angle({ planned: 60 }), angle({ planned: 60 }, open), angle({}, open)]).toEqual([
      35,
      20,
      60,
      'PLATE_ANGLE',
    ]);
  });
  it('takes in the target with its measured neighbours', () => {
    const design = designFor(hand, preset({ ...file, digits: 'target-and-neighbours' }), nothing);
    expect(design.ok ? design.value.digits : design.problems).toEqual(['long', 'ring', 'little']);
    const without = designFor({ ...hand, target: null }, preset({ ...file, digits: 'target-and-neighbours' }), nothing);
    expect(without.ok ? '' : without.problems[0]?.code).toBe('NO_TARGET');
  });
  it('warns outside the angles that a plate is meant for', () => {
    const design = designFor(hand, preset({ ...file, angles: { from: 0, to: 30 } }), { ...nothing, angle: 40 });
    expect(design.ok ? design.warnings : []).toMatchObject([{ code: 'PLATE_ANGLE_UNUSUAL', value: 40, limit: 30 }]);
  });
});

describe('readPlateOptions', () => {
  it('gives the defaults, which lie in their own ranges', () => {
    const read = readPlateOptions([]);
    expect(read.ok ? read.value : null).toEqual(DEFAULT_PLATE_OPTIONS);
    for (const o of PLATE_NUMBER_OPTIONS) expect(o.default >= o.low && o.default <= o.high).toBe(true);
  });
  it('names every wrong key and value at once', () => {
    const read = readPlateOptions([{ origin: 'flags', values: { wing: '99', wimg: 3, webNotch: 'x' } }]);
    expect(read.ok ? [] : read.problems.map((p) => p.where)).toEqual(['wing', 'wimg', 'webNotch']);
  });
  it('refuses a notch too shallow to be rounded', () => {
    const read = readPlateOptions([{ origin: 'flags', values: { webNotch: 3 } }]);
    expect(read.ok ? '' : read.problems[0]?.message).toMatch(/0 for none, or 6/);
  });
});
