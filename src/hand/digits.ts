/** The digits of the work, from radial to ulnar; the thumb has no part in it. */
export const DIGITS = ['index', 'long', 'ring', 'little'] as const;
export type DigitName = (typeof DIGITS)[number];

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];
