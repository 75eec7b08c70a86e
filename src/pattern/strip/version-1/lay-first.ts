import { type Block, blockProblems } from '../../../block/block.ts';
import type { Hand } from '../../../hand/hand.ts';
import { failure, type Result, success } from '../../../units/result.ts';
import type { LaidBand } from '../lay-strip.ts';
import { pathFaults } from '../prove-path.ts';
import type { StripOptions } from '../strip-options.ts';
import { stripPath } from '../strip-path.ts';
import { standSections } from '../strip-sections.ts';
import { usualSettings } from '../strip-settings.ts';
import { firstFlatStrip } from './outline.ts';
import { freePipFlexion, palmarRelief } from './palmar-relief.ts';

/** A strip as the first version laid it, for files that were made with it: every digit's own web as its baseline, reliefs by the room that is left. */
export function layFirst(hand: Hand, block: Block, options: StripOptions): Result<LaidBand> {
  const rules = blockProblems(block);
  if (rules.length > 0) return failure(...rules);
  const settings = usualSettings(options);
  const standing = standSections(hand, block, settings, '1');
  if (!standing.ok) return standing;
  const path = stripPath(standing.value, settings);
  const relief = palmarRelief(standing.value, settings);
  if (!path.ok || !relief.ok) return failure(...(path.ok ? [] : path.problems), ...(relief.ok ? [] : relief.problems));
  const faults = pathFaults(path.value, settings);
  if (faults.length > 0) return failure(...faults);
  const flat = firstFlatStrip(path.value, relief.value, settings);
  const shape = {
    reliefs: relief.value,
    narrowest: settings.width,
    edges: [],
    straightWidth: settings.width,
    pull: null,
    seamSlope: 0,
    tooNarrow: null,
  };
  return success(
    {
      settings,
      standing: standing.value,
      path: path.value,
      flat,
      onHand: flat.proximal,
      freePip: freePipFlexion(standing.value, relief.value, settings),
      edges: shape,
    },
    standing.warnings,
  );
}
