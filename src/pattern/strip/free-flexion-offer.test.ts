import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BY_NIGHT, times } from '../../../tests/by-night.ts';
import { handJson, WORKED } from '../../../tests/hands.ts';
import { type Block, PALMAR_LAYERS, serves } from '../../block/block.ts';
import { blocks } from '../../block/library.ts';
import { NO_FIST } from '../../block/rank-blocks.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { readHand } from '../../hand/read-hand.ts';
import { stripFigures } from './strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from './strip-options.ts';

const tenths = (low: number, high: number) => fc.integer({ min: low * 1000, max: high * 1000 }).map((k) => k / 1000);

/** Hands as small as a child's, each finger by a tenth of its own, their webs as staggered as those of hands of their size: of many the strip stops the fist. */
const smallHand = fc
  .record({
    scale: tenths(0.55, 0.75),
    own: fc.array(tenths(0.9, 1.1), { minLength: 4, maxLength: 4 }),
    room: fc.array(tenths(0.8, 1), { minLength: 4, maxLength: 4 }),
    back: tenths(8, 18),
    target: fc.constantFrom(null, ...DIGITS),
  })
  .map(({ scale, own, room, back, target }) => {
    const measures = Object.fromEntries(
      DIGITS.map((digit, k) => {
        const [width, round, palmar, dorsal] = WORKED[digit].map((mm) => mm * scale * (own[k] as number)) as [
          number,
          number,
          number,
          number,
        ];
        return [digit, [width, round, palmar * (room[k] as number), dorsal]];
      }),
    ) as unknown as typeof WORKED;
    const webSetback = { 'index-long': 0, 'long-ring': 0.3, 'ring-little': back * scale };
    const treated = target ? { target: { digit: target, pipExtensionDeficit: 25, pipFlexionDeficit: 0 } } : {};
    return readHand({ ...handJson(measures), webSetback, ...treated });
  });
const anyOptions = fc.record({
  width: fc.constantFrom<StripOptions['width']>('auto', 'auto', 12, 20),
  minimumWidth: fc.constantFrom<StripOptions['minimumWidth']>('auto', 'auto', 6, 10),
  proximalGap: fc.constantFrom(0, 2, 2, 5),
  closure: fc.constantFrom<StripOptions['closure']>('tacked', 'spanning'),
  outline: fc.constantFrom<StripOptions['outline']>('staggered', 'staggered', 'straight'),
});

/** Degrees that a strip leaves a digit's PIP joint free; none passes palmar to it: infinitely many. Null where there is no such strip. */
function left(hand: Hand, block: Block, options: StripOptions, digit: DigitName): number | null {
  const found = stripFigures(hand, block, options);
  return found.ok ? (found.value.freePip[digit] ?? Number.POSITIVE_INFINITY) : null;
}

/** Every change that may be offered for a digit, from its words and from none: what a person would type. */
function offered(next: string): { readonly block?: string; readonly changes: Partial<StripOptions> } | null {
  const number = (key: string) => new RegExp(`${key} of ([\\d.]+)`).exec(next)?.[1];
  const block = /^in the block (\S+) no layer passes palmar to it$/.exec(next)?.[1];
  const [minimumWidth, proximalGap] = [number('minimumWidth'), number('proximalGap')];
  if (block === undefined && minimumWidth === undefined && proximalGap === undefined) return null;
  return {
    ...(block === undefined ? {} : { block }),
    changes: {
      ...(minimumWidth === undefined ? {} : { minimumWidth: Number(minimumWidth) }),
      ...(proximalGap === undefined ? {} : { proximalGap: Number(proximalGap) }),
    },
  };
}

describe('what is offered where a strip stops the fist', () => {
  it('is another block where neither the narrowest strip nor no gap helps, and in it the digit is free', () => {
    const hand = readHand(handJson({ ...WORKED, index: [24, 80, 8, 40] }));
    const block = blocks().find((b) => b.id === 'ring-raised-in-four');
    if (!hand.ok || !block) throw new Error('no hand or block');
    const found = stripFigures(hand.value, block, DEFAULT_STRIP_OPTIONS);
    const warning = found.ok ? found.value.warnings.find((w) => w.code === 'PIP_FLEXION_NOT_FREE' && w.where?.includes('index')) : null;
    const other = blocks().find((b) => b.id === offered(warning?.next ?? '')?.block);
    if (!other) throw new Error(warning?.next);
    expect(left(hand.value, block, { ...DEFAULT_STRIP_OPTIONS, minimumWidth: 5, proximalGap: 0 }, 'index')).toBeLessThan(NO_FIST);
    expect(left(hand.value, other, DEFAULT_STRIP_OPTIONS, 'index')).toBeGreaterThanOrEqual(NO_FIST);
    // A reading is that of the block it was taken on: it does not go along.
    const read = stripFigures(hand.value, block, { ...DEFAULT_STRIP_OPTIONS, paperReading: 1 });
    const toRead = read.ok ? read.value.warnings.find((w) => w.code === 'PIP_FLEXION_NOT_FREE' && w.where?.includes('index')) : null;
    expect(toRead?.next).toBe(`${warning?.next}; its paper strip is to be read anew`);
    // The block without this finger does nothing for it where it is the one that is treated.
    const treated = { target: { digit: 'index', pipExtensionDeficit: 25, pipFlexionDeficit: 0 } };
    const same = readHand({ ...handJson({ ...WORKED, index: [24, 80, 8, 40] }), ...treated });
    const told = same.ok ? stripFigures(same.value, block, DEFAULT_STRIP_OPTIONS) : null;
    const nothing = told?.ok ? told.value.warnings.find((w) => w.code === 'PIP_FLEXION_NOT_FREE' && w.where?.includes('index')) : null;
    expect(nothing?.next).toMatch(/^no narrower least width, smaller gap to the web or other block that was tried helps/);
  });

  it('leaves the flexion when it is done, and nothing is offered only where nothing that may be offered does', {
    timeout: times(60_000, 1_800_000),
  }, () => {
    const seen = { width: 0, gap: 0, both: 0, block: 0, nothing: 0 };
    fc.assert(
      fc.property(smallHand, fc.constantFrom(...blocks()), anyOptions, (hand, block, changes) => {
        if (!hand.ok) return;
        const options = { ...DEFAULT_STRIP_OPTIONS, ...changes };
        // A least width over the width is refused where options are read.
        if (options.width !== 'auto' && options.minimumWidth !== 'auto' && options.minimumWidth > options.width) return;
        const found = stripFigures(hand.value, block, options);
        if (!found.ok) return;
        for (const { code, where = '', next = '' } of found.value.warnings) {
          if (code !== 'PIP_FLEXION_NOT_FREE') continue;
          const digit = where.split('.')[1] as DigitName;
          const offer = offered(next);
          if (offer) {
            const { minimumWidth, proximalGap } = offer.changes;
            seen[offer.block ? 'block' : proximalGap === undefined ? 'width' : minimumWidth === undefined ? 'gap' : 'both']++;
            const other = offer.block === undefined ? block : blocks().find((b) => b.id === offer.block);
            if (!other) throw new Error(next);
            expect(serves(other, block, hand.value.target?.digit), next).toBe(true);
            expect(left(hand.value, other, { ...options, ...offer.changes }, digit), next).toBeGreaterThanOrEqual(NO_FIST);
            continue;
          }
          seen.nothing++;
          expect(next).toMatch(
            /^no narrower least width, smaller gap to the web or other block that was tried helps: measure palmarRoom again/,
          );
          for (const change of [{ minimumWidth: 5 }, { proximalGap: 0 }, { minimumWidth: 5, proximalGap: 0 }])
            expect(left(hand.value, block, { ...options, ...change }, digit) ?? 0, JSON.stringify(change)).toBeLessThan(NO_FIST);
          const palmar = (b: Block) => PALMAR_LAYERS[b.places[digit] ?? 'lowered'];
          for (const other of blocks().filter((b) => palmar(b) === 0 && serves(b, block, hand.value.target?.digit)))
            expect(left(hand.value, other, options, digit), other.id).toBeNull();
        }
      }),
      { numRuns: times(6, 250) },
    );
    expect(seen.width + seen.gap).toBeGreaterThan(0);
    // Another block, or nothing, is so seldom that each has a hand of its own above.
    const { block: _, nothing: __, ...often } = seen;
    if (BY_NIGHT) for (const [what, count] of Object.entries(often)) expect(count, what).toBeGreaterThan(0);
  });
});
