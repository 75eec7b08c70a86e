/** The digits of the work, from radial to ulnar; the thumb has no part in it. */
export const DIGITS = ['index', 'long', 'ring', 'little'] as const;
export type DigitName = (typeof DIGITS)[number];

/** The webs between them, from radial to ulnar. */
export const WEBS = ['index-long', 'long-ring', 'ring-little'] as const;
export type WebName = (typeof WEBS)[number];

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];
