import type { Block } from '../../block/block.ts';
import { rootBetween } from '../../geometry/root.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { LENGTH_SOLVED } from '../../units/tolerance.ts';
import { GEOMETRY_VERSION, type GeometryVersion } from './geometry-version.ts';
import { NUMBER_OPTIONS, type StripSettings } from './strip-options.ts';
import { stripPathLength } from './strip-path.ts';
import { standSections } from './strip-sections.ts';

/** Thickness of the paper that a trial strip is cut from: 80 g/m² is 0.1 mm. */
export const PAPER_THICKNESS = 0.1;
/** Clearances that a reading may stand for, mm: skin that gives way by half a millimetre to air all round. Outside them the reading is a slip. */
const LEAST_CLEARANCE = -0.5;
const MOST_CLEARANCE = 1.5;
/** Steps from an end of that range to the clearance asked for. */
const STEPS = 8;
/** Standard deviation of one reading on the paper strip's scale, mm: an assumption, no source. */
export const READING_ERROR = 1;

/**
 * The clearance at which the path of a paper strip is as long as one read on the hand (model rule 15): it takes in what the model does not know
 * of this hand. `PAPER_READING` where no clearance from -0.5 to 1.5 mm makes it so; its `limit` is the nearest whole reading that one does. `PAPER_NOT_LAID`
 * where a strip of sheet can be laid, but none of paper.
 */
export function clearanceFor(hand: Hand, block: Block, settings: StripSettings, reading: number): Result<number> {
  const paper = { ...settings, thickness: PAPER_THICKNESS };
  const drawn = lengthAt(hand, block, paper, settings.skinClearance);
  if (drawn === null) {
    // Where the strip itself cannot be laid either, laying it says why.
    if (lengthAt(hand, block, settings, settings.skinClearance) === null) return success(settings.skinClearance);
    return failure({
      code: 'PAPER_NOT_LAID',
      where: 'paperReading',
      message: `paperReading: ${plain(reading, 1)} mm cannot have been read: at ${plain(settings.differential, 1)} degrees a paper strip of this hand holds nothing.`,
      kind: 'refused',
    });
  }
  const found = clearanceOfLength(hand, block, paper, drawn + reading);
  if (typeof found === 'number') return success(found);
  const [least, most] = [Math.ceil(found.shortest - drawn), Math.floor(found.longest - drawn)];
  const { low = least, high = most } = NUMBER_OPTIONS.find((o) => o.key === 'paperReading') ?? {};
  const range = `${plain(Math.max(least, low))} to ${plain(Math.min(most, high))} mm`;
  return failure({
    code: 'PAPER_READING',
    where: 'paperReading',
    message: `paperReading: ${plain(reading, 1)} mm is outside what skin and air can make on this hand, ${range}. Weave the paper strip again, and measure the fingers again.`,
    kind: 'refused',
    limit: drawn + reading > found.longest ? most : least,
  });
}

/** The clearance, mm, at which a strip's path has a length; where none of -0.5 to 1.5 has it, the lengths that these give. */
export function clearanceOfLength(
  hand: Hand,
  block: Block,
  settings: StripSettings,
  length: number,
  version: GeometryVersion = GEOMETRY_VERSION,
): number | { readonly shortest: number; readonly longest: number } {
  const at = (clearance: number) => lengthAt(hand, block, settings, clearance, version);
  // At an end of the range the thinnest of hands may have no path at all; the search begins where there is one.
  const reachable = (from: number): number => {
    for (let k = 0; k < STEPS; k++) {
      const clearance = from + ((settings.skinClearance - from) * k) / STEPS;
      if (at(clearance) !== null) return clearance;
    }
    return settings.skinClearance;
  };
  const [least, most] = [reachable(LEAST_CLEARANCE), reachable(MOST_CLEARANCE)];
  const miss = (clearance: number) => (at(clearance) ?? Number.NaN) - length;
  return rootBetween(miss, least, most, LENGTH_SOLVED) ?? { shortest: at(least) ?? Number.NaN, longest: at(most) ?? Number.NaN };
}

function lengthAt(
  hand: Hand,
  block: Block,
  settings: StripSettings,
  skinClearance: number,
  version: GeometryVersion = GEOMETRY_VERSION,
): number | null {
  const changed = { ...settings, skinClearance };
  const standing = standSections(hand, block, changed, version);
  return standing.ok ? stripPathLength(standing.value, changed) : null;
}
