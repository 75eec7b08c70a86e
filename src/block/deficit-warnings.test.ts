import { describe, expect, it } from 'vitest';
import type { Target } from '../hand/hand.ts';
import { deficitWarnings } from './deficit-warnings.ts';

const warned = (target: Partial<Target>) =>
  deficitWarnings({ digit: 'ring', pipExtensionDeficit: 0, pipFlexionDeficit: 0, ...target }).map((w) => `${w.code} ${w.where}`);

describe('deficitWarnings(target)', () => {
  // Macionis, BMC Musculoskelet Disord 2013;14:17 and the 51-therapist study: repeats within 4 to 5 degrees.
  it.each([
    [0, []],
    [0.5, ['DEFICIT_WITHIN_ERROR target.pipFlexionDeficit']],
    [4.9, ['DEFICIT_WITHIN_ERROR target.pipFlexionDeficit']],
    [5, []],
    [40, []],
  ])('a deficit of %d degrees against the measuring error: %o', (pipFlexionDeficit, expected) => {
    expect(warned({ pipFlexionDeficit })).toEqual(expected);
  });

  // Common practice, no source: a joint that passive motion takes no further is stiff.
  it.each([
    [30, 30, ['NO_PASSIVE_GAIN target.pipExtensionDeficitPassive']],
    [30, 26, ['NO_PASSIVE_GAIN target.pipExtensionDeficitPassive']],
    [30, 25, []],
    [30, 0, []],
    [0, 0, []],
  ])('active %d and passive %d: %o', (pipExtensionDeficit, pipExtensionDeficitPassive, expected) => {
    expect(warned({ pipExtensionDeficit, pipExtensionDeficitPassive })).toEqual(expected);
  });

  it('says nothing of passive motion that was not measured, and that its rule has no source', () => {
    expect(warned({ pipExtensionDeficit: 30 })).toEqual([]);
    const [warning] = deficitWarnings({ digit: 'ring', pipExtensionDeficit: 30, pipExtensionDeficitPassive: 30, pipFlexionDeficit: 0 });
    expect(warning?.message).toContain('common practice, no source');
  });
});
