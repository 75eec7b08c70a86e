import { describe, expect, it } from 'vitest';
import { readBlock } from '../src/block/read-block.ts';
import { HAND_SCHEMA_ID } from '../src/hand/hand-schema.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { readPlate } from '../src/pattern/plate/read-plate.ts';
import { readCutter } from '../src/sheet/cutter/cutter-profile.ts';
import { newerVersion } from '../src/units/form-problems.ts';

describe('newerVersion(json, known, source)', () => {
  it('tells a later version of the same kind alone', () => {
    expect(newerVersion({ schema: 'knucklewright/hand@3' }, 'knucklewright/hand@2', 'a.json')).toMatchObject({
      code: 'FILE_NEWER',
      message: expect.stringMatching(/^a\.json: the file has version 3 of the hand file, and this program knows up to version 2/),
    });
    for (const schema of ['knucklewright/hand@2', 'knucklewright/hand@1', 'knucklewright/block@9', 'hand@9', 9, undefined])
      expect(newerVersion({ schema }, 'knucklewright/hand@2')).toBeNull();
  });

  it.each([
    ['hand', (json: unknown) => readHand(json, 'a.json')],
    ['block', (json: unknown) => readBlock(json, 'a.json')],
    ['plate', (json: unknown) => readPlate(json, 'a.json')],
    ['cutter', (json: unknown) => readCutter(json, 'a.json')],
  ])('is all that is said of a %s file of a later version', (kind, read) => {
    const found = read({ schema: `knucklewright/${kind}@99`, somethingNew: true });
    expect(found.ok ? [] : found.problems.map(({ code }) => code)).toEqual(['FILE_NEWER']);
    expect(HAND_SCHEMA_ID).not.toContain('@99');
  });
});
