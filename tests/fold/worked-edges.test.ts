import { describe, expect, it } from 'vitest';
import { blocks } from '../../src/block/library.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { loadWriter } from '../../src/writers/load-writer.ts';
import { tried } from '../by-night.ts';
import { handOf, WORKED } from '../hands.ts';
import { drawnStrip, edgesAt } from './drawn-strip.ts';
import { modelledBand, mostDistal } from './modelled-band.ts';
import { modelledHand, type Setting } from './modelled-hand.ts';
import { plainProximal } from './plain-edges.ts';

const WIDTH = 20;
const WEBS = [0, 0, 12.5] as const;
/** Levels and places follow from the measures; the string's own places are 0.02 mm apart. */
const WORKED_OFF = 0.011;
const PLACE_OFF = 0.02;
/** Rounding takes at most 0.6 off a corner; SVG has four decimals. */
const ROUNDED_OFF = 0.601;

const cases = blocks().flatMap((block, k) =>
  (['tacked', 'spanning'] as const).map((closure) => ({ block, id: block.id, closure, byDay: (closure === 'tacked') === (k % 2 === 0) })),
);

describe('the worked edges, computed plainly, against report and finished file of both sides', () => {
  it.each(tried(cases, ({ byDay }) => byDay))('$id, $closure', async ({ block, closure }) => {
    const setting: Setting = {
      side: 'left',
      measures: WORKED,
      webSetback: WEBS,
      places: block.places,
      closure,
      differential: 20,
      width: WIDTH,
      free: {},
    };
    const hand = modelledHand(setting);
    const band = modelledBand(hand, setting);
    const wanted = plainProximal(hand, band, 2, 0);
    for (const side of ['left', 'right'] as const) {
      const made = makePattern({
        kind: 'strip',
        hand: handOf(WORKED, side),
        block,
        options: { ...DEFAULT_STRIP_OPTIONS, width: WIDTH, closure },
        date: null,
      });
      if (!made.ok) throw new Error(made.problems[0]?.message);
      const { edges, freePipFlexion, flatWidth } = made.value.report;
      expect(flatWidth).toBe(WIDTH);
      expect(edges).toHaveLength(hand.digits.length * 2 + hand.webs.length * 2);
      const written = (await loadWriter('svg')).write(made.value.pattern);
      if (!written.ok) throw new Error('not written');
      const strip = drawnStrip(String(written.value));
      const seam = strip.marks.get('seam, starting end') ?? Number.NaN;
      const way = Math.sign((strip.marks.get('seam, finishing end') ?? Number.NaN) - seam);
      const drawn = edges.map((edge) => ({ edge, ...edgesAt(strip, seam + way * edge.u) }));
      // Nothing in the file says where 0 is along the digits: where most of the edge says.
      const offs = drawn.map(({ edge, low }) => edge.proximal - low).sort((a, b) => a - b);
      const zero = offs[Math.floor(offs.length / 2)] ?? Number.NaN;
      for (const { edge, low, high } of drawn) {
        const what = `${side}, ${edge.kind === 'web' ? edge.between.join('-') : edge.digit}, ${edge.layer}`;
        const x =
          edge.kind === 'web'
            ? hand.webs.find((w) => w.between === edge.between.join('-'))?.x
            : hand.digits.find((d) => d.name === edge.digit)?.x;
        const spot = band.at(edge.u);
        expect(Math.abs(spot.x - (x ?? Number.NaN)), what).toBeLessThan(PLACE_OFF);
        expect(Math.abs(edge.proximal - wanted.level(edge.u)), what).toBeLessThan(WORKED_OFF + PLACE_OFF);
        expect(Math.abs(low + zero - edge.proximal), what).toBeLessThan(ROUNDED_OFF);
        const digit = edge.kind === 'midline' ? hand.digits.find((d) => d.name === edge.digit) : undefined;
        if (!digit || edge.kind !== 'midline') {
          // Beside a relief the distal level at a web is an upper bound.
          expect(edge.distal, what).toBeLessThan(edge.proximal + WIDTH + WORKED_OFF);
          continue;
        }
        const limit = edge.aspect === 'palmar' ? mostDistal(digit, band, 100, closure) : Number.POSITIVE_INFINITY;
        const distal = Math.min(edge.proximal + WIDTH, limit);
        // Where the least width of 10 keeps the edge up, less flexion is left, which is said.
        const isHeld = edge.aspect === 'palmar' && (freePipFlexion[digit.name] ?? 0) < 99.9;
        if (!isHeld) expect(Math.abs(edge.distal - distal), what).toBeLessThan(WORKED_OFF);
        expect(Math.abs(high + zero - edge.distal), what).toBeLessThan(ROUNDED_OFF);
      }
    }
  });
});
