/** Whose published means and spreads hands may be drawn from. */
export const NORM_GROUPS = ['female', 'male', 'mixed'] as const;

export type NormGroup = (typeof NORM_GROUPS)[number];
