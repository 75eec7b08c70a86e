import { expect, it } from 'vitest';
import { handOf, WORKED } from '../../tests/hands.ts';
import { blockById } from '../block/library.ts';
import { makePattern } from '../pattern/make-pattern.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import type { Language } from '../words/language.ts';
import { devicePicture } from './device-pictures.ts';

const REST = { pose: { mp: 0, pip: 0 }, view: { across: 90, up: 0 } };

function pictureOf(side: 'left' | 'right', changes: Partial<StripOptions> = {}, language: Language = 'en') {
  const block = blockById('ring-lowered-in-three');
  if (!block) throw new Error('no block');
  const options = { ...DEFAULT_STRIP_OPTIONS, ...changes };
  const made = makePattern({ kind: 'strip', hand: handOf(WORKED, side), block, options, date: null, language });
  const device = made.ok ? made.value.pattern.notes?.made : undefined;
  if (!device) throw new Error('not made');
  return devicePicture(device, REST);
}

it('a device that is made again, in another language too, has the pictures that were drawn; any other has its own', () => {
  const first = pictureOf('left');
  expect(pictureOf('left')).toBe(first);
  expect(pictureOf('left', {}, 'de')).toBe(first);
  expect(pictureOf('right').drawing).not.toEqual(first.drawing);
  expect(pictureOf('left', { differential: 10 }).drawing).not.toEqual(first.drawing);
  // Of the last few alone.
  pictureOf('left', { width: 13 });
  pictureOf('left', { width: 14 });
  expect(pictureOf('left')).not.toBe(first);
  expect(pictureOf('left').drawing).toEqual(first.drawing);
});
