/** Skin under the device: whole (marks that are gone in 20 minutes count as whole), marks that stay longer, or broken. */
export const SKIN_STATES = ['ok', 'marks', 'broken'] as const;
export type SkinState = (typeof SKIN_STATES)[number];

/** Feeling, or colour and warmth: as always, changed and back once the device was off, or changed and staying so. */
export const CHANGE_STATES = ['ok', 'returned', 'stays'] as const;
export type ChangeState = (typeof CHANGE_STATES)[number];

/** Signs that, two or more with pain, may mean a complex regional pain syndrome. */
export const CRPS_SIGNS = ['swelling', 'colourOrWarmth', 'sweating', 'touchHurts', 'otherJointsStiffen'] as const;
export type CrpsSign = (typeof CRPS_SIGNS)[number];

/** Signs by which a device can be doing harm; asked for first at every visit. */
export const HARM_KEYS = ['pain', 'skin', 'sensation', 'colour', 'infection', 'deformity', 'crpsSigns'] as const;
export type HarmKey = (typeof HARM_KEYS)[number];

/** What is noted when all is well. */
export const ALL_WELL = {
  pain: 0,
  skin: 'ok',
  sensation: 'ok',
  colour: 'ok',
  infection: false,
  deformity: false,
  crpsSigns: [],
} as const;
