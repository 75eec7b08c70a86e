/** What stops a suggestion until somebody else has seen the hand: the eight of the decision, in the order in which they are asked. */
export const STOP_SIGNS = ['wound', 'infection', 'numbness', 'colour', 'crps', 'activeLoss', 'unstable', 'inflamed'] as const;
export type StopSign = (typeof STOP_SIGNS)[number];
