import fc from 'fast-check';
import { expect, it } from 'vitest';
import { blockById } from '../../src/block/library.ts';
import { flattened } from '../../src/geometry/path.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { stripFigures } from '../../src/pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { BY_NIGHT, times } from '../by-night.ts';
import { handJson } from '../hands.ts';
import { edgesAt } from './drawn-strip.ts';
import { anyCase, type Case, CHORDS, ENDS, edgeFaults, WIDTH_OFF, WIDTH_SAID_OFF } from './edge-faults.ts';
import { distanceTo } from './plain-edges.ts';

it("any strip's edges stand at the wanted distance from the webs and leave the flexion free that is said, and it is nowhere under its least width", {
  timeout: times(60_000, 1_800_000),
}, () => {
  let looked = 0;
  fc.assert(
    fc.property(anyCase, (each) => {
      const faults = edgeFaults(each);
      if (faults === null) return;
      looked++;
      expect(faults.slice(0, 5)).toEqual([]);
    }),
    { numRuns: times(6, 400), endOnFailure: !BY_NIGHT },
  );
  expect(looked).toBeGreaterThan(2);
});

/** Fingers of 8 to 14 mm on a hand that is typed far too broad, so that their webs pass as those of a large one: nonsense, but a hand file may hold it. */
const steepHands = [
  [30, 0, 30, 'ring-lowered-in-three', 'spanning', { stretch: 0.3, width: 30, minimumWidth: 29.5, differential: 21 }],
  [30, 0, 30, 'long-raised-in-four', 'spanning', { stretch: 0.3, trim: 20, seamAllowance: 0.4 }],
  [0, 0, 30, 'long-raised-in-four', 'spanning', { minimumWidth: 15.7, width: 20, differential: 4.3, seamAllowance: 3.3 }],
  [0, 0, 30, 'long-and-ring-raised-in-four', 'tacked', { width: 40, minimumWidth: 40 }],
  [22, 0, 22, 'ring-raised-in-three', 'tacked', { width: 30, minimumWidth: 28.8, stretch: 0.17 }],
] as const;

it.each(steepHands)(
  'webs %d, %d and %d behind the foremost on narrow fingers, %s, %s: as wide as it says',
  (index, long, ring, id, closure, changes) => {
    const measures = { index: [9, 28, 15, 30], long: [11, 34, 20, 38], ring: [10, 32, 15, 30], little: [9.5, 29, 15, 31] } as const;
    const webSetback = { 'index-long': index, 'long-ring': long, 'ring-little': ring };
    const read = readHand({ ...handJson(measures), handBreadth: 115, webSetback });
    const block = blockById(id);
    if (!read.ok || !block) throw new Error('no hand or block');
    const made = stripFigures(read.value, block, { ...DEFAULT_STRIP_OPTIONS, ...changes, closure });
    if (!made.ok) throw new Error(made.problems[0]?.message);
    const { flat, warnings, options } = made.value;
    const drawn = { marks: new Map(), lines: new Map(), outline: flattened(flat.outline, CHORDS).vertices };
    const spots = [];
    for (let v = flat.start + ENDS; v < flat.end - ENDS; v += 0.25) spots.push({ v, ...edgesAt(drawn, v) });
    const proximal = spots.map(({ v, low }) => ({ x: v, y: low }));
    const least = Math.min(...spots.map(({ v, high }) => distanceTo(proximal, { x: v, y: high })));
    // 18 of these strips of 200 came out under 1 mm wide before.
    expect(least).toBeGreaterThan(0.9 * options.minimumWidth);
    const said = warnings.find(({ code }) => code === 'STRIP_UNDER_LEAST_WIDTH');
    if (said) expect(Math.abs(Number(said.value) - least)).toBeLessThan(WIDTH_SAID_OFF);
    else expect(least).toBeGreaterThan(options.minimumWidth - WIDTH_OFF);
  },
);

it('finds edges that lie 1 mm nearer to the web, or to the crease', () => {
  const usual = {
    scale: 1,
    own: [1, 1, 1, 1],
    stagger: [0, 0, 12.5],
    websOf: null,
    closure: 'tacked',
    outline: 'staggered',
    differential: 20,
    seam: 'lap',
    width: 20,
  } as const;
  const more = { minimumWidth: 'auto', freeFlexion: 100, proximalGap: 2, seamAllowance: 15, trim: 10, stretch: 0 } as const;
  const block = blockById('ring-lowered-in-three');
  if (!block) throw new Error('no block');
  const each: Case = { ...usual, ...more, own: [...usual.own], stagger: [...usual.stagger], block };
  expect(edgeFaults(each)).toEqual([]);
  expect(edgeFaults(each, -1)?.join()).toContain('too near to a web');
  expect(edgeFaults(each, 0.1)?.join()).toContain('too far over the little finger');
  expect(edgeFaults(each, 1)?.join()).toContain('too far over the little finger');
  const straight: Case = { ...each, outline: 'straight' };
  expect(edgeFaults(straight)).toEqual([]);
  expect(edgeFaults(straight, 0.1)?.join()).toMatch(/the edge is not straight.*too far over the little finger/);
});
