import type { Target } from '../hand/hand.ts';
import { plain } from '../units/number.ts';
import type { Warning } from '../units/result.ts';

/** Finger goniometry: SEM up to 4.9 degrees, repeats of one rater within 4 to 5 (Macionis, BMC Musculoskelet Disord 2013;14:17; 51-therapist study). */
const GONIOMETRY_REPEAT = 5;

/**
 * What the deficits themselves say against the plan. `DEFICIT_WITHIN_ERROR`: a deficit that one repeat of the measurement may take
 * away, and with it the need. `NO_PASSIVE_GAIN`: passive motion ends where active motion does, so the joint is stiff and not only
 * underused (common practice, no source; the 5 degrees are the repeatability above).
 */
export function deficitWarnings(target: Target): readonly Warning[] {
  return (['Extension', 'Flexion'] as const).flatMap((motion) => {
    const active = target[`pip${motion}Deficit`];
    const passive = target[`pip${motion}DeficitPassive`];
    const words = `PIP ${motion.toLowerCase()} deficit`;
    const warnings: Warning[] = [];
    if (active > 0 && active < GONIOMETRY_REPEAT) {
      warnings.push({
        code: 'DEFICIT_WITHIN_ERROR',
        where: `target.pip${motion}Deficit`,
        message: `the ${words} of ${plain(active)} degrees is less than one measurement differs from the next (${GONIOMETRY_REPEAT}; Macionis 2013)`,
        value: active,
        limit: GONIOMETRY_REPEAT,
        next: 'measure it again; write 0 when the motion is full, since the need changes with it',
      });
    }
    if (active > 0 && passive !== undefined && active - passive < GONIOMETRY_REPEAT) {
      warnings.push({
        code: 'NO_PASSIVE_GAIN',
        where: `target.pip${motion}DeficitPassive`,
        message: `the ${words} is ${plain(active)} degrees actively and ${plain(passive)} passively, the same within measuring: the joint is stiff, so redirecting active motion may gain little (common practice, no source)`,
        value: active - passive,
        limit: GONIOMETRY_REPEAT,
        next: 'feel the end-feel, treat the stiffness first or beside it, and set flags.hardEndFeel when it is hard',
      });
    }
    return warnings;
  });
}
