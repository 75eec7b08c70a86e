import { WEBS, type WebName } from './digits.ts';
import { handBreadthOf } from './estimate-palm.ts';
import type { Hand } from './hand.ts';

/**
 * How far each web lies behind the foremost in an average adult, in hand breadths: web heights of women and men (Greiner 1991, NATICK/TR-92/011,
 * second-hand) over the breadths of ANSUR II (Gordon et al. 2014).
 */
const SETBACK_SHARE: Readonly<Record<WebName, number>> = { 'index-long': 0, 'long-ring': 0.004, 'ring-little': 0.159 };

/** Standard deviation to reckon with where a web's setback is estimated, mm: from memory, as for MP setbacks. */
export const ESTIMATED_SETBACK_SPREAD = 3;

export interface WebLevels {
  /** Along the digits, mm, distal positive: 0 at the foremost web, the others below. */
  readonly level: Readonly<Record<WebName, number>>;
  /** Webs whose setback was not measured. */
  readonly estimated: readonly WebName[];
}

/** Levels of the webs from their measured setbacks, or estimated from the hand breadth (model rule 11). */
export function webLevels(hand: Pick<Hand, 'webs' | 'palm' | 'digits'>): WebLevels {
  const measured = hand.webs?.webSetback ?? {};
  const estimated = WEBS.filter((web) => measured[web] === undefined);
  const breadth = estimated.length > 0 ? handBreadthOf(hand) : 0;
  const setbacks = WEBS.map((web) => measured[web] ?? SETBACK_SHARE[web] * breadth);
  const foremost = Math.min(...setbacks);
  return {
    level: Object.fromEntries(WEBS.map((web, k) => [web, foremost - (setbacks[k] ?? 0)])) as Record<WebName, number>,
    estimated,
  };
}
