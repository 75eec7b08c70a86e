import { PALMAR_LAYERS } from '../../block/block.ts';
import { rootBetween } from '../../geometry/root.ts';
import { ANGLE_SOLVED } from '../../units/tolerance.ts';
import { freeFlexionOver } from '../free-flexion.ts';
import type { PalmarZone } from './palmar-zones.ts';
import { DEFAULT_STRIP_OPTIONS, type StripSettings } from './strip-options.ts';
import { endAllowances } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';
import type { StandingSection } from './strip-sections.ts';

/** The edge stays at least so far from the PIP crease, however little flexion is asked for: 2 to 3 mm off creases is common practice, no source. mm */
const LEAST_TO_CREASE = 2;
/** Farther from the crease than this no edge is. mm */
const MOST_TO_CREASE = 60;

/** What stops the middle phalanx of a digit when its PIP joint bends. */
export interface PalmarStop {
  readonly halfDepth: number;
  /** Layers of sheet between the digit and the outer face, the seam's lap counted. */
  readonly layers: number;
  /** Free space under a spanning outer layer, mm. */
  readonly standOff: number;
}

/** Layers palmar to a digit (model rule 12): those of its place, one more where the seam's lap covers any of it. */
export function palmarStop(section: StandingSection, path: StripPath, zones: readonly PalmarZone[], settings: StripSettings): PalmarStop {
  const lap = settings.seam !== 'pinch' ? endAllowances(settings).seam * (1 + settings.stretch) : 0;
  const turns = [-path.pathLength, 0, path.pathLength];
  const lapped = zones.some((z) => z.digit === section.digit && turns.some((turn) => z.uFrom + turn < lap && z.uTo + turn > -lap));
  return {
    halfDepth: section.halfDepth,
    layers: PALMAR_LAYERS[section.place] + (lapped && lap > 0 ? 1 : 0),
    standOff: path.standOff.find((s) => s.digit === section.digit)?.distance ?? 0,
  };
}

/**
 * PIP flexion, degrees, that a distal edge leaves which lies `toCrease` mm proximal of the PIP crease (model rule 12). The clearance is the usual one, not
 * one that a paper strip solved for.
 */
export function freeFlexion({ halfDepth, layers, standOff }: PalmarStop, toCrease: number, thickness: number): number {
  return freeFlexionOver(halfDepth, DEFAULT_STRIP_OPTIONS.skinClearance + layers * thickness + standOff, toCrease);
}

/** How far the edge must lie proximal of the PIP crease to leave the wanted flexion free, mm; at least 2. */
export function edgeToCrease(stop: PalmarStop, wanted: number, thickness: number): number {
  const miss = (toCrease: number) => freeFlexion(stop, toCrease, thickness) - wanted;
  if (miss(LEAST_TO_CREASE) >= 0) return LEAST_TO_CREASE;
  return rootBetween(miss, LEAST_TO_CREASE, MOST_TO_CREASE, ANGLE_SOLVED) ?? MOST_TO_CREASE;
}
