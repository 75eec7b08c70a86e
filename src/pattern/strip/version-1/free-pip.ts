import { PALMAR_LAYERS } from '../../../block/block.ts';
import type { DigitName } from '../../../hand/digits.ts';
import { degrees } from '../../../units/angle.ts';
import type { StripSettings } from '../strip-options.ts';
import type { StandingHand } from '../strip-sections.ts';
import type { Relief } from './palmar-relief.ts';

/** First version. PIP flexion in degrees that each digit keeps over the strip's palmar edge: 180 - atan2(layers x thickness, edge to PIP crease). */
export function freePipFlexion(
  hand: StandingHand,
  reliefs: readonly Relief[],
  options: StripSettings,
): Readonly<Partial<Record<DigitName, number>>> {
  return Object.fromEntries(
    hand.sections.flatMap((s) => {
      const relief = reliefs.find((r) => r.digit === s.digit);
      if (s.place === 'lowered' || !relief) return [];
      const edgeToCrease = s.palmarRoom - options.proximalGap - (options.width - relief.depth);
      return [[s.digit, 180 - degrees(Math.atan2(PALMAR_LAYERS[s.place] * options.thickness, edgeToCrease))]];
    }),
  );
}
