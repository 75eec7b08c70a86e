import type { Target } from '../hand/hand.ts';

/** What the target's PIP joint lacks: one motion, both, or none. */
export const NEEDS = ['pipFlexion', 'pipExtension', 'both', 'none'] as const;
export type Need = (typeof NEEDS)[number];

/** A need that a strip serves; with both a strip would gain one motion and lose the other. */
export type StripNeed = Extract<Need, 'pipFlexion' | 'pipExtension'>;

/** The need by the active deficits: any deficit over 0 degrees counts; small ones are warned of by `deficitWarnings`. */
export function needOf(target: Pick<Target, 'pipExtensionDeficit' | 'pipFlexionDeficit'>): Need {
  const lacksExtension = target.pipExtensionDeficit > 0;
  const lacksFlexion = target.pipFlexionDeficit > 0;
  if (lacksExtension && lacksFlexion) return 'both';
  return lacksFlexion ? 'pipFlexion' : lacksExtension ? 'pipExtension' : 'none';
}

/** Which way the target's own MP joint is to be held: the other way than the motion its PIP joint lacks (trial registration NCT06985459). */
export const WANTED_MP: Readonly<Record<StripNeed, 'extension' | 'flexion'>> = { pipFlexion: 'extension', pipExtension: 'flexion' };

/** The motion that is lacking, in a sentence. */
export const LACKING: Readonly<Record<StripNeed, 'flexion' | 'extension'>> = { pipFlexion: 'flexion', pipExtension: 'extension' };
