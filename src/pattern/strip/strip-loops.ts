import { hullPerimeter } from '../../geometry/taut-path.ts';
import type { DigitName } from '../../hand/digits.ts';
import { nearestIsoRingSize } from '../../units/length.ts';
import type { StripSettings } from './strip-options.ts';
import type { StandingHand, StandingSection } from './strip-sections.ts';

/** A closed loop of the strip round neighbouring enclosed digits; inner circumference in mm. */
export interface Loop {
  readonly digits: readonly DigitName[];
  readonly innerCircumference: number;
  /** ISO 8653: the size number is the inner circumference in mm, so a mandrel can be used. */
  readonly isoRingSize: number;
}

/**
 * The loop round each run of enclosed digits: the perimeter of the convex hull of their own sections plus 2 pi clearances (Steiner).
 * The digits of a run hold one MP angle, so in the plane square to them their sections stand level and unslanted.
 */
export function loopSizes(hand: StandingHand, options: StripSettings): readonly Loop[] {
  const runs: StandingSection[][] = [];
  for (const [k, s] of hand.sections.entries()) {
    if (s.place !== 'enclosed') continue;
    if (hand.sections[k - 1]?.place === 'enclosed') runs.at(-1)?.push(s);
    else runs.push([s]);
  }
  return runs.flatMap((run) => {
    const bodies = run.map((s) => ({ center: { x: s.x, y: 0 }, a: s.halfWidth, b: s.halfDepth, offset: 0 }));
    const perimeter = hullPerimeter(bodies);
    if (perimeter === null) return [];
    const innerCircumference = perimeter + 2 * Math.PI * options.skinClearance;
    return [{ digits: run.map((s) => s.digit), innerCircumference, isoRingSize: nearestIsoRingSize(innerCircumference) }];
  });
}
