import { heightAt } from '../../geometry/broken-line.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { BandEdges } from './band-edges.ts';
import type { Course } from './strip-courses.ts';
import type { StripSettings } from './strip-options.ts';
import { flattened } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';

/** Levels of both edges where the band passes a web or a digit's midline; mm, distal positive, 0 at the foremost web; u from the seam. */
export type EdgeLevel = {
  readonly u: number;
  readonly layer: Course;
  readonly proximal: number;
  readonly distal: number;
} & (
  | { readonly kind: 'web'; readonly between: readonly [DigitName, DigitName] }
  | { readonly kind: 'midline'; readonly digit: DigitName; readonly aspect: 'dorsal' | 'palmar' }
);

/** What a straight strip must give way by to follow the webs: a step of `difference` mm along the hand between two fingers, a shear of `shear`. */
export interface StripPull {
  readonly between: readonly [DigitName, DigitName];
  readonly difference: number;
  readonly shear: number;
}

/** The levels of the edges at every web crossing and midline, in the order of u (model rule 11). */
export function edgeLevels(path: StripPath, { flat, sharp }: BandEdges, settings: StripSettings): readonly EdgeLevel[] {
  const levels = (u: number) => {
    const v = flattened(u, settings);
    return { u, proximal: heightAt(flat.proximal, v), distal: heightAt(sharp, v) };
  };
  const webs = path.webCrossings.map(({ u, between, layer }): EdgeLevel => ({ ...levels(u), kind: 'web', between, layer }));
  const midlines = path.passes.map(({ u, digit, layer, aspect }): EdgeLevel => ({ ...levels(u), kind: 'midline', digit, aspect, layer }));
  return [...webs, ...midlines].sort((a, b) => a.u - b.u);
}

/** How wide a band at one level on all digits could be: from the foremost web to the least that a palmar pass leaves free. mm */
export function straightWidth(path: StripPath, { palmar }: BandEdges, settings: StripSettings): number {
  const foremost = Math.max(...path.hand.webs.map((w) => w.level));
  return Math.min(...palmar.map((p) => p.wanted)) - foremost - settings.proximalGap;
}

/** The steepest pull of a straight strip, null where nothing is pulled. */
export function straightPull(path: StripPath, { onHand }: BandEdges, settings: StripSettings): StripPull | null {
  let steepest: StripPull | null = null;
  for (const web of path.hand.webs) {
    const [radial, ulnar] = web.between;
    for (const layer of ['outer', 'inner'] as const) {
      const at = (digit: DigitName) => flattened(path.passes.find((p) => p.digit === digit && p.layer === layer)?.u ?? 0, settings);
      const whole = flattened(path.pathLength, settings);
      const [a, b] = [at(radial), at(ulnar)];
      const apart = Math.min(Math.abs(a - b), whole - Math.abs(a - b));
      const difference = Math.abs(heightAt(onHand, a) - heightAt(onHand, b));
      if (difference > (steepest?.difference ?? 0)) steepest = { between: web.between, difference, shear: difference / apart };
    }
  }
  return steepest;
}
