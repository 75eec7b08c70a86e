import { heightAt } from '../../geometry/broken-line.ts';
import type { Point } from '../../geometry/path.ts';
import type { DigitName } from '../../hand/digits.ts';
import { LENGTH_COMPARED } from '../../units/tolerance.ts';
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

/** The levels of the edges at every web crossing and midline, in the order of u (model rule 11): of a corner that was moved for its arc, where it was. */
export function edgeLevels(path: StripPath, { flat, sharp, moved }: BandEdges, settings: StripSettings): readonly EdgeLevel[] {
  const levels = (u: number) => {
    const v = flattened(u, settings);
    return { u, proximal: heightAt(flat.proximal, v) - heightAt(moved, v), distal: heightAt(sharp, v) };
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

/** The steepest pull of a straight strip, at the web where it is, null where nothing is pulled. A step between two fingers is taken within half their distance, from one's midline to the web. */
export function straightPull(path: StripPath, { onHand }: BandEdges, settings: StripSettings): StripPull | null {
  const ramps = onHand.slice(1).map((to, k) => {
    const from = onHand[k] as Point;
    return { at: (from.x + to.x) / 2, shear: Math.abs((to.y - from.y) / (to.x - from.x)) };
  });
  const steepest = ramps.reduce((a, b) => (b.shear > a.shear ? b : a));
  if (steepest.shear < LENGTH_COMPARED) return null;
  const whole = flattened(path.pathLength, settings);
  const off = (u: number) =>
    Math.abs(flattened(u, settings) - steepest.at - whole * Math.round((flattened(u, settings) - steepest.at) / whole));
  const { between, layer } = path.webCrossings.reduce((a, b) => (off(b.u) < off(a.u) ? b : a));
  const level = (digit: DigitName) =>
    heightAt(onHand, flattened(path.passes.find((p) => p.digit === digit && p.layer === layer)?.u ?? 0, settings));
  return { between, difference: Math.abs(level(between[0]) - level(between[1])), shear: steepest.shear };
}
