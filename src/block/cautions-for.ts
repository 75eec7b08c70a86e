import type { Flags } from '../hand/hand.ts';
import type { Problem } from '../units/result.ts';

/** Something in the hand file that calls for care, whatever is made. */
export interface Caution {
  readonly code: string;
  readonly message: string;
}

/**
 * The cautions that a hand's flags call for, gravest first; none when no flag is set. All are common practice, no source, but for
 * changing swelling, which makes the fit hard (Yates et al., J Hand Ther 2023).
 */
export function cautionsFor(flags: Flags): readonly Caution[] {
  const cautions: Caution[] = [];
  if (flags.unprotectedRepair)
    cautions.push({
      code: 'UNPROTECTED_REPAIR',
      message: "Unprotected repair or fracture: only within the surgeon's protocol. Ask before anything moves it.",
    });
  if (flags.hardEndFeel)
    cautions.push({
      code: 'HARD_END_FEEL',
      message: 'Hard end-feel: the joint itself stops the motion, and redirecting active motion does not move such a stop.',
    });
  if (flags.sensation)
    cautions.push({
      code: 'SENSATION',
      message:
        'Reduced sensation: heat and pressure are not felt. Let the plastic cool longer, try it on your own skin, look at the skin early and often.',
    });
  if (flags.swelling)
    cautions.push({
      code: 'SWELLING',
      message:
        'Changing swelling: the fit changes with it (Yates et al. 2023). Measure when it is as usual, again before making, and at each visit; fit loosely.',
    });
  if (flags.hypermobile.length > 0)
    cautions.push({
      code: 'HYPERMOBILE',
      message: `Hypermobile MP or CMC joint (${flags.hypermobile.join(', ')}): watch rotation, and that a raised digit's MP joint does not go past straight.`,
    });
  return cautions;
}

/**
 * Why nothing is suggested for this hand unless the clinician takes it on: an unprotected repair or fracture, a hard end-feel (the
 * design's standing cautions; common practice, no source). Each of kind `refused`; empty when neither flag is set.
 */
export function refusalsFor(flags: Flags): readonly Problem[] {
  const refusals: Problem[] = [];
  const add = (code: string, flag: keyof Flags, why: string) =>
    refusals.push({
      code,
      where: `flags.${flag}`,
      message: `flags.${flag}: ${why}, so nothing is suggested. If you have examined the hand and decide that it may be tried, say so with --clinician-confirms.`,
      kind: 'refused',
    });
  if (flags.unprotectedRepair)
    add(
      'UNPROTECTED_REPAIR',
      'unprotectedRepair',
      "a repair or fracture is not protected, and motion outside the surgeon's protocol may break it",
    );
  if (flags.hardEndFeel)
    add('HARD_END_FEEL', 'hardEndFeel', 'the PIP joint has a hard end-feel, and redirected active motion does not move such a stop');
  return refusals;
}
