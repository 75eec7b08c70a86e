import { PALMAR_LAYERS } from '../../../block/block.ts';
import type { DigitName } from '../../../hand/digits.ts';
import { degrees } from '../../../units/angle.ts';
import { plain } from '../../../units/number.ts';
import { failure, type Problem, type Result, success } from '../../../units/result.ts';
import { RETIRED_OPTIONS, type StripSettings } from '../strip-options.ts';
import type { StandingHand, StandingSection } from '../strip-sections.ts';

/** How far the distal edge is cut back at a digit, mm; 0 where the full width fits. */
export interface Relief {
  readonly digit: DigitName;
  readonly depth: number;
}

/** A cut-back shallower than this is not made: no hand-held tool can make it. mm */
const SMALLEST_RELIEF = 0.01;

/**
 * First version. The relief that keeps PIP flexion free: palmar to a digit the strip may be at most palmarRoom - proximalGap - pipClearance wide.
 * Refused when that is under the minimum width, with the digit and the width that would do.
 */
export function palmarRelief(hand: StandingHand, options: StripSettings): Result<readonly Relief[]> {
  const pipClearance = pipClearanceOf(options);
  const problems: Problem[] = [];
  const reliefs: Relief[] = [];
  for (const s of hand.sections) {
    if (s.place === 'lowered') continue;
    const room = s.palmarRoom - options.proximalGap - pipClearance;
    const depth = options.width - room;
    if (room < options.minimumWidth && depth > SMALLEST_RELIEF) problems.push(tooNarrow(s, room, options));
    reliefs.push({ digit: s.digit, depth: depth > SMALLEST_RELIEF ? depth : 0 });
  }
  return problems.length > 0 ? failure(...problems) : success(reliefs);
}

/** What files of the first version were drawn with where they do not say. mm */
function pipClearanceOf(options: StripSettings): number {
  return options.pipClearance ?? RETIRED_OPTIONS[0]?.default ?? 0;
}

function tooNarrow(s: StandingSection, room: number, options: StripSettings): Problem {
  const pipClearance = pipClearanceOf(options);
  const sum = `palmarRoom ${plain(s.palmarRoom)} less proximalGap ${plain(options.proximalGap)} and pipClearance ${plain(pipClearance)}`;
  const remedy =
    room >= 5
      ? `A strip of width ${plain(Math.floor(room * 2) / 2)} mm would do (minimumWidth must allow it)`
      : 'No strip is wide enough to hold there: choose a block without this digit on the palmar side';
  return {
    code: 'RELIEF_TOO_DEEP',
    where: `digits.${s.digit}.palmarRoom`,
    message: `digits.${s.digit}.palmarRoom: only ${plain(room)} mm of strip fits between the web and the PIP crease of the ${s.digit} finger (${sum}), under the minimumWidth of ${plain(options.minimumWidth)} mm. ${remedy}, or measure palmarRoom again.`,
    kind: 'refused',
    ...(room >= 5 ? { limit: Math.floor(room * 2) / 2 } : {}),
  };
}

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
