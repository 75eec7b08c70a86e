import demo from '../fixtures/demo-hand.json' with { type: 'json' };
import { blocks } from '../src/block/library.ts';
import type { Hand } from '../src/hand/hand.ts';
import { readHand } from '../src/hand/read-hand.ts';
import { makePattern } from '../src/pattern/make-pattern.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../src/pattern/strip/strip-options.ts';
import type { Language } from '../src/words/language.ts';

const digit = (width: number, circumference: number, palmarRoom: number, dorsalLength: number) => ({
  width,
  circumference,
  palmarRoom,
  dorsalLength,
});

function handOf(code: string, side: string, digits: object): Hand {
  const read = readHand({ schema: 'knucklewright/hand@1', code, side, units: 'mm', invented: true, digits });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** An invented child's hand, about the smallest that a strip of 20 mm fits. */
export const SMALL_HAND = handOf('SMALL-1', 'right', {
  index: digit(10.5, 36, 17, 27),
  long: digit(10.5, 36, 18, 29),
  ring: digit(10, 34, 17, 27),
  little: digit(9, 31, 15, 23),
});

/** An invented hand larger than almost all. */
export const LARGE_HAND = handOf('LARGE-1', 'left', {
  index: digit(25, 80, 32, 56),
  long: digit(25, 80, 34, 60),
  ring: digit(24, 76, 32, 56),
  little: digit(21, 68, 27, 46),
});

export const DEMO_HAND = ((): Hand => {
  const read = readHand(demo);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
})();

const drawn = new Map<string, Pattern>();

/** The strip of a hand for a block by its id; the same one again, whose pictures are drawn once. */
export function stripOf(hand: Hand, blockId: string, date: string | null = null, language: Language = 'en'): Pattern {
  const key = [hand.code, blockId, date, language].join(' ');
  const before = drawn.get(key);
  if (before) return before;
  const block = blocks().find((b) => b.id === blockId);
  if (!block) throw new Error(`no block ${blockId}`);
  const made = makePattern({ kind: 'strip', hand, block, options: DEFAULT_STRIP_OPTIONS, date, language });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  drawn.set(key, made.value.pattern);
  return made.value.pattern;
}
