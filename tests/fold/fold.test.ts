import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blocks } from '../../src/block/library.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../../src/pattern/strip/strip-options.ts';
import { loadWriter } from '../../src/writers/load-writer.ts';
import { times, tried } from '../by-night.ts';
import { LARGEST, type Measures, WORKED } from '../hands.ts';
import { type DrawnStrip, drawnStrip } from './drawn-strip.ts';
import { foldFaults } from './fold-faults.ts';
import { type Band, modelledBand } from './modelled-band.ts';
import { type ModelledHand, modelledHand, NAMES, type Name, type Setting } from './modelled-hand.ts';
import { rolledStraight, taperOf } from './rolled-strip.ts';

type AllMeasures = Readonly<Record<Name, Measures>>;

/** The worked hand at 0.7, as of a child of about seven; invented. */
const CHILD = Object.fromEntries(NAMES.map((name) => [name, WORKED[name].map((mm) => 0.7 * mm)])) as unknown as AllMeasures;
interface Measured {
  readonly measures: AllMeasures;
  readonly webs: readonly [number, number, number];
}
const HANDS = {
  worked: { measures: WORKED, webs: [0, 0, 12.5] },
  child: { measures: CHILD, webs: [0, 0.3, 8.8] },
  largest: { measures: LARGEST, webs: [3, 0, 15] },
} as const satisfies Record<string, Measured>;

async function fileOf(
  hand: Measured,
  id: string,
  side: 'left' | 'right',
  changes: Partial<StripOptions> = {},
  webs: readonly number[] = hand.webs,
  roots: Readonly<Partial<Record<Name, number>>> = {},
): Promise<{ svg: string; width: number; free: Setting['free'] }> {
  const digits = Object.fromEntries(
    NAMES.map((name) => {
      const [width, circumference, palmarRoom, dorsalLength] = hand.measures[name];
      return [name, { width, circumference, palmarRoom, dorsalLength, ...(roots[name] ? { rootCircumference: roots[name] } : {}) }];
    }),
  );
  const webSetback = { 'index-long': webs[0], 'long-ring': webs[1], 'ring-little': webs[2] };
  const read = readHand({ schema: 'knucklewright/hand@1', code: 'TEST-01', side, units: 'mm', invented: true, digits, webSetback });
  const block = blocks().find((b) => b.id === id);
  if (!read.ok || !block) throw new Error(id);
  const made = makePattern({ kind: 'strip', hand: read.value, block, options: { ...DEFAULT_STRIP_OPTIONS, ...changes }, date: null });
  if (!made.ok) throw new Error(made.problems[0]?.message);
  const written = (await loadWriter('svg')).write(made.value.pattern);
  if (!written.ok) throw new Error('not written');
  return {
    svg: String(written.value),
    width: made.value.report.flatWidth,
    free: made.value.report.freePipFlexion,
  };
}

const settingOf = (
  hand: Measured,
  id: string,
  side: 'left' | 'right',
  width: number,
  closure: 'tacked' | 'spanning' = 'tacked',
  free: Setting['free'] = {},
): Setting => ({
  side,
  measures: hand.measures,
  webSetback: hand.webs,
  places: blocks().find((b) => b.id === id)?.places ?? {},
  closure,
  differential: 20,
  width,
  free,
});

const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

/** By day each block once, each hand in turn; by night each block on each hand. */
const cases = blocks().flatMap(({ id }) => (['worked', 'child', 'largest'] as const).map((hand) => [id, hand] as const));

const turns = tried(cases, (c) => cases.indexOf(c) % 3 === Math.floor(cases.indexOf(c) / 3) % 3);
const SIDES = ['left', 'right'] as const;
const CLOSURES = ['tacked', 'spanning'] as const;

describe('the finished SVG, folded round the modelled digits by a program that shares nothing with the layout', () => {
  it.each(turns)(
    '%s, %s hand: every mark over its digit and web, no edge over a web or too near a crease, layers apart',
    async (id, hand) => {
      // By day one closure and one side, and the next block the other.
      const turn = turns.findIndex((each) => each[0] === id && each[1] === hand);
      for (const closure of tried(CLOSURES, (each) => each === CLOSURES[turn % 2])) {
        let modelled: { hand: ModelledHand; band: Band } | null = null;
        for (const side of tried(SIDES, (each) => each === SIDES[(turn >> 1) % 2])) {
          const { svg, width, free } = await fileOf(HANDS[hand], id, side, { closure });
          const setting = settingOf(HANDS[hand], id, side, width, closure, free);
          modelled ??= modelledFor(setting);
          expect(foldFaults(drawnStrip(svg), setting, modelled.hand, modelled.band), `${side}, ${closure}`).toEqual([]);
        }
      }
    },
  );
});

/** A hand about the worked one, of any size from a child's to the largest, each finger and each web by itself, none behind its neighbour by more than is usual: beside a web that is, the edge may fall by more than the gap within half of it. */
const anyHand: fc.Arbitrary<Measured> = fc
  .record({
    size: within(0.65, 1.4),
    fingers: fc.array(fc.tuple(within(0.93, 1.07), within(0.92, 1.08), within(0.9, 1.1)), { minLength: 4, maxLength: 4 }),
    webs: fc.tuple(within(0, 5), within(0, 5), within(5, 13)),
  })
  .map(({ size, fingers, webs }) => {
    const own = NAMES.map((name, k) => {
      const [thick, near, far] = fingers[k] ?? [1, 1, 1];
      const [width, round, room, back] = WORKED[name];
      return [name, [width * size * thick, round * size * thick, room * size * near, back * size * far]];
    });
    const [first, second, third] = webs.map((mm) => mm * size) as [number, number, number];
    return { measures: Object.fromEntries(own) as AllMeasures, webs: [first, second, third] };
  });

it('so does that of any hand with its webs anywhere, in any block', async () => {
  const any = {
    hand: anyHand,
    id: fc.constantFrom(...blocks().map((b) => b.id)),
    side: fc.constantFrom(...SIDES),
    closure: fc.constantFrom(...CLOSURES),
  };
  await fc.assert(
    fc.asyncProperty(fc.record(any), async ({ hand, id, side, closure }) => {
      const { svg, width, free } = await fileOf(hand, id, side, { closure });
      const setting = { ...settingOf(hand, id, side, width, closure, free), mayBeHeld: true as const };
      const { hand: modelled, band } = modelledFor(setting);
      expect(foldFaults(drawnStrip(svg), setting, modelled, band)).toEqual([]);
    }),
    { numRuns: times(4, 100), endOnFailure: true },
  );
});

/** The string does not know which side the hand is of. */
function modelledFor(setting: Setting): { hand: ModelledHand; band: Band } {
  const hand = modelledHand(setting);
  return { hand, band: modelledBand(hand, setting) };
}

/** The worked fingers, rounder at their roots, and a ring finger that is swollen further out. */
const ROOTS = { index: 61, long: 61.5, ring: 52, little: 50 } as const;

describe('the finished SVG of fingers that taper, rolled off cones by a program that shares nothing with the layout', () => {
  const rolled = async (
    id: string,
    side: 'left' | 'right',
    closure: 'tacked' | 'spanning',
    roots: Readonly<Record<Name, number>> = ROOTS,
  ) => {
    const { svg, width, free } = await fileOf(HANDS.worked, id, side, { closure }, undefined, ROOTS);
    const setting = settingOf(HANDS.worked, id, side, width, closure, free);
    const { hand, band } = modelledFor(setting);
    const drawn = drawnStrip(svg);
    const straight = rolledStraight(drawn, hand, band, taperOf(setting, roots));
    return { setting, drawn, straight, faults: (strip: DrawnStrip) => foldFaults(strip, setting, hand, band) };
  };

  const ids = ['ring-lowered-in-three', 'long-raised-in-three', 'long-and-ring-raised-in-four', 'ring-lowered-in-four'];

  it.each(tried(ids, (id) => id === 'ring-lowered-in-three' || id === 'long-and-ring-raised-in-four'))('%s', async (id) => {
    for (const side of ['left', 'right'] as const)
      for (const closure of tried(CLOSURES, (each) => each === (side === 'left' ? 'tacked' : 'spanning'))) {
        const { drawn, straight, faults } = await rolled(id, side, closure);
        expect(faults(straight), `${side}, ${closure}`).toEqual([]);
        // As it was drawn it is no strip for fingers that keep their size.
        expect(faults(drawn).length).toBeGreaterThan(3);
      }
  });

  it('finds a strip that was drawn for other roots', async () => {
    const others = { ...ROOTS, index: 57, long: 57 };
    const outcome = await rolled('long-raised-in-three', 'left', 'tacked', others).then(
      ({ straight, faults }) => faults(straight),
      (error: Error) => [error.message],
    );
    expect(outcome.length).toBeGreaterThan(0);
  });
});

describe('the fold finds what is wrong', () => {
  const id = 'ring-raised-in-three';
  const faults = async (
    changes: Partial<StripOptions>,
    spoil: (svg: string) => string = (svg) => svg,
    webs: readonly number[] = HANDS.worked.webs,
  ) => {
    const { svg } = await fileOf(HANDS.worked, id, 'left', { width: 20, ...changes }, webs);
    return foldFaults(drawnStrip(spoil(svg)), settingOf(HANDS.worked, id, 'left', 20)).join('; ');
  };

  it('a strip for another hand or another side', async () => {
    const { svg } = await fileOf(HANDS.worked, id, 'left');
    expect(foldFaults(drawnStrip(svg), settingOf(HANDS.worked, id, 'right', 20)).join()).toContain('wrong way round');
    expect(foldFaults(drawnStrip(svg), { ...settingOf(HANDS.worked, id, 'left', 20), differential: 5 }).join()).toContain(
      'round the digits',
    );
  });

  it('an edge over a web, and one too near a crease', async () => {
    expect(await faults({}, undefined, [0, 0, 0])).toMatch(/off its level|over the web/);
    expect(await faults({ freeFlexion: 98 })).toContain('too far over');
    expect(await faults({ pipClearance: 3 })).toBe('');
  });

  it('a mark that is 1 mm off, and sheet that stretches without being told', async () => {
    const moved = (svg: string) =>
      svg.replace(/d="([^"]+)"([^>]*)><title>web long-ring, inner layer/, (_, data: string, rest: string) => {
        const shifted = data.replace(/([ML]) (\d+\.\d+)/g, (__, command: string, x: string) => `${command} ${(Number(x) + 1).toFixed(4)}`);
        return `d="${shifted}"${rest}><title>web long-ring, inner layer`;
      });
    expect(await faults({}, moved)).toContain('web long-ring, inner layer');
    expect(await faults({ stretch: 0.01 })).toContain('long from seam to seam');
  });
});
