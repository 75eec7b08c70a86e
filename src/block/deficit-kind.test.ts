import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { needOf, WANTED_MP } from './deficit-kind.ts';

const need = (pipExtensionDeficit: number, pipFlexionDeficit: number) => needOf({ pipExtensionDeficit, pipFlexionDeficit });
const deficit = fc.integer({ min: 0, max: 120 });

describe('needOf(target)', () => {
  // Common practice, no source: any deficit counts, both together call for a plate (plate model).
  it.each([
    [0, 0, 'none'],
    [25, 0, 'pipExtension'],
    [0, 40, 'pipFlexion'],
    [25, 40, 'both'],
    [0.5, 40, 'both'],
  ] as const)('extension lacking %d and flexion lacking %d need %s', (e, f, expected) => {
    expect(need(e, f)).toBe(expected);
  });

  it('never turns toward extension when more flexion is lacking, nor the other way round', () => {
    fc.assert(
      fc.property(deficit, deficit, fc.integer({ min: 1, max: 60 }), (e, f, more) => {
        expect(need(e, f + more)).not.toBe('pipExtension');
        expect(need(e + more, f)).not.toBe('pipFlexion');
        if (need(e, f) === 'pipFlexion') expect(need(e, f + more)).toBe('pipFlexion');
      }),
    );
  });
});

// Trial registration NCT06985459: relative flexion serves an extension deficit, relative extension a flexion deficit.
it('WANTED_MP holds the MP joint the other way than the motion that is lacking', () => {
  expect(WANTED_MP).toEqual({ pipFlexion: 'extension', pipExtension: 'flexion' });
});
