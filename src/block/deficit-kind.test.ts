import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lacksOf, needOf, WANTED_MP } from './deficit-kind.ts';

const need = (pipExtensionDeficit: number, pipFlexionDeficit: number, anyway = false) =>
  needOf(lacksOf({ digit: 'ring', pipExtensionDeficit, pipFlexionDeficit }, anyway));
const deficit = fc.integer({ min: 0, max: 120 });

describe('needOf(lacksOf(target, anyway))', () => {
  // 10 degrees and more count; trial registration NCT06985459 asks 10. Common practice, no source.
  it.each([
    [0, 0, 'none'],
    [9, 9, 'none'],
    [10, 9, 'pipExtension'],
    [9, 10, 'pipFlexion'],
    [10, 10, 'both'],
    [25, 1, 'pipExtension'],
    [0, 40, 'pipFlexion'],
    [25, 40, 'both'],
  ] as const)('extension lacking %d and flexion lacking %d need %s', (e, f, expected) => {
    expect(need(e, f)).toBe(expected);
  });

  it.each([
    [4, 4, 'none'],
    [5, 4, 'pipExtension'],
    [5, 9, 'both'],
    // Where one motion lacks 10, a slight deficit of the other does not count, asked for or not.
    [10, 9, 'pipExtension'],
  ] as const)('asked for anyway, %d and %d need %s', (e, f, expected) => {
    expect(need(e, f, true)).toBe(expected);
  });

  it('never turns toward extension when more flexion is lacking, nor the other way round', () => {
    fc.assert(
      fc.property(deficit, deficit, fc.integer({ min: 1, max: 60 }), (e, f, more) => {
        if (need(e, f) !== 'pipExtension') expect(need(e, f + more)).not.toBe('pipExtension');
        if (need(e, f) !== 'pipFlexion') expect(need(e + more, f)).not.toBe('pipFlexion');
        if (need(e, f) === 'pipFlexion') expect(need(e, f + more)).toBe('pipFlexion');
      }),
    );
  });
});

// Trial registration NCT06985459: relative flexion serves an extension deficit, relative extension a flexion deficit.
it('WANTED_MP holds the MP joint the other way than the motion that is lacking', () => {
  expect(WANTED_MP).toEqual({ pipFlexion: 'extension', pipExtension: 'flexion' });
});
