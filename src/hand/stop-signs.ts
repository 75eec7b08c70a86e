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
