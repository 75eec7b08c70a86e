import fc from 'fast-check';
import { expect, it } from 'vitest';
import { blocks } from '../../src/block/library.ts';
import { DIGIT_FIELDS } from '../../src/hand/fields.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { layStrip } from '../../src/pattern/strip/lay-strip.ts';
import { DEFAULT_STRIP_OPTIONS, NUMBER_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { times } from '../by-night.ts';
import type { Measures } from '../hands.ts';
import { modelledHand, NAMES, type Name, type Setting } from './modelled-hand.ts';
import { slowPath } from './slow-path.ts';

/** How far the two lengths may lie apart: the string's places are 0.02 mm apart. */
const APART = 0.03;
/** A finger that the string only just touches may be touched or not. */
const TOUCH = 0.02;

const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const option = (key: string) => {
  const found = NUMBER_OPTIONS.find((o) => o.key === key);
  if (!found) throw new Error(key);
  return within(found.low, found.high);
};
const field = (id: 'width' | 'palmarRoom' | 'dorsalLength') => within(DIGIT_FIELDS[id].refuse.from, DIGIT_FIELDS[id].refuse.to);
/** Any finger that a hand file may have: its depth from half to 1.6 times its width, by the perimeter of an ellipse about so deep. */
const anyDigit = fc
  .tuple(field('width'), within(0.75, 1.2), field('palmarRoom'), field('dorsalLength'))
  .map(([width, ratio, room, dorsal]): Measures => [width, (width * Math.PI * (1 + ratio)) / 2, Math.min(room, 0.9 * dorsal), dorsal]);

/** Hands of fingers that have nothing to do with each other, and every option of the path anywhere in its range. */
const anyCase = fc.record({
  digits: fc.tuple(anyDigit, anyDigit, anyDigit, anyDigit),
  block: fc.constantFrom(...blocks()),
  closure: fc.constantFrom('tacked' as const, 'spanning' as const),
  differential: fc.oneof(within(1, 45), within(1, 25)),
  width: option('width'),
  thickness: option('thickness'),
  clearance: option('skinClearance'),
  webGap: option('webGap'),
  play: option('crossingPlay'),
  proximalGap: option('proximalGap'),
});

it('any path of any hand and options is as long as a string pulled tight in small steps, or is refused with reason', {
  timeout: times(60_000, 1_800_000),
}, () => {
  const seen = { laid: 0, holdsNothing: 0, refused: 0 };
  fc.assert(
    fc.property(anyCase, ({ digits, block, closure, differential, width, ...lying }) => {
      const measures = Object.fromEntries(NAMES.map((name, k) => [name, digits[k]])) as unknown as Readonly<Record<Name, Measures>>;
      const json = Object.fromEntries(
        NAMES.map((name) => {
          const [wide, circumference, palmarRoom, dorsalLength] = measures[name];
          return [name, { width: wide, circumference, palmarRoom, dorsalLength }];
        }),
      );
      const read = readHand({ schema: 'knucklewright/hand@1', code: 'TEST-01', side: 'left', units: 'mm', invented: true, digits: json });
      if (!read.ok) return;
      const { thickness, clearance: skinClearance, webGap, play: crossingPlay, proximalGap } = lying;
      const asked = { differential, width, thickness, skinClearance, webGap, crossingPlay, proximalGap, closure };
      const laid = layStrip(read.value, block, { ...DEFAULT_STRIP_OPTIONS, ...asked, minimumWidth: 5 });
      const setting: Setting = {
        side: 'left',
        measures,
        webSetback: [0, 0, 0],
        places: block.places,
        closure,
        differential,
        width,
        free: {},
        lying,
      };
      const slow = slowPath(modelledHand(setting), setting);
      if (laid.ok) {
        seen.laid++;
        expect(slow, 'laid where no string passes').not.toBeNull();
        expect(Math.abs(laid.value.path.pathLength - (slow?.length ?? Number.NaN))).toBeLessThan(APART);
        expect(slow?.slack).toBeLessThan(TOUCH);
        return;
      }
      const [problem] = laid.problems;
      if (problem?.code === 'HOLDS_NOTHING') {
        seen.holdsNothing++;
        if (slow) expect(slow.slack).toBeGreaterThan(-TOUCH);
      } else seen.refused++;
    }),
    { numRuns: times(15, 1500) },
  );
  expect(seen.laid).toBeGreaterThan(2);
});
