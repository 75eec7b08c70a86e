/** What makes a stop of any suggestion, as it stands in a hand file; the list is in order of urgency. Common practice, no source. */
export const STOP_SIGNS = [
  'paleBlueOrCold',
  'infection',
  'newNumbness',
  'newActiveLoss',
  'unstableJoint',
  'suspectedCrps',
  'openWound',
  'pins',
  'inflamedJoint',
] as const;
export type StopSign = (typeof STOP_SIGNS)[number];

/** What each sign says when it stands in the list. */
export const STOP_SIGN_MEANINGS: Readonly<Record<StopSign, string>> = {
  paleBlueOrCold: 'The finger is pale, blue or cold.',
  infection: 'Signs of infection: spreading redness, warmth, pus, fever.',
  newNumbness: 'Numbness that is new since the injury was last examined.',
  newActiveLoss: 'Active motion that was there is lost, and passive motion is kept: a tendon may have given way.',
  unstableJoint: 'A joint of the finger is unstable or newly deformed.',
  suspectedCrps: 'Complex regional pain syndrome is suspected.',
  openWound: "An open wound, until the surgeon's word is entered (surgeonAgrees).",
  pins: "Pins or wires in place, until the surgeon's word is entered (surgeonAgrees).",
  inflamedJoint: 'An acutely inflamed joint.',
};

/** What the central slip test of a PIP joint says. */
export const CENTRAL_SLIP = ['intact', 'torn'] as const;
export type CentralSlip = (typeof CENTRAL_SLIP)[number];

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
