import type { Target } from '../hand/hand.ts';
import { LACK, SLIGHT } from './figures.ts';

/** What the target's PIP joint lacks: one motion, both, or none. */
export const NEEDS = ['pipFlexion', 'pipExtension', 'both', 'none'] as const;
export type Need = (typeof NEEDS)[number];

/** A need that a strip serves; with both a strip would gain one motion and lose the other. */
export type StripNeed = Extract<Need, 'pipFlexion' | 'pipExtension'>;

/** Which motions count as lacking. */
export interface Lacks {
  readonly extension: boolean;
  readonly flexion: boolean;
}

/** The motions that lack `LACK` degrees or more; where none does and a device is wanted all the same, those that lack `SLIGHT` or more. */
export function lacksOf({ pipExtensionDeficit: e, pipFlexionDeficit: f }: Target, anyway: boolean): Lacks {
  const least = anyway && e < LACK && f < LACK ? SLIGHT : LACK;
  return { extension: e >= least, flexion: f >= least };
}

export function needOf({ extension, flexion }: Lacks): Need {
  if (extension && flexion) return 'both';
  return flexion ? 'pipFlexion' : extension ? 'pipExtension' : 'none';
}

/** Which way the target's own MP joint is to be held: the other way than the motion its PIP joint lacks (trial registration NCT06985459). */
export const WANTED_MP: Readonly<Record<StripNeed, 'extension' | 'flexion'>> = { pipFlexion: 'extension', pipExtension: 'flexion' };

/** The motion that is lacking, in a sentence. */
export const LACKING: Readonly<Record<StripNeed, 'flexion' | 'extension'>> = { pipFlexion: 'flexion', pipExtension: 'extension' };
