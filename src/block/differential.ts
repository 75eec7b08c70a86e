/** MP differentials in use, degrees: 11 to 30 by 98 % (extension) and 92 % (flexion) of 108 surveyed therapists, Yates et al., J Hand Ther 2023;36:414. */
export const SURVEYED_DIFFERENTIAL = { low: 11, high: 30 } as const;

/** One step of trying, degrees. Common practice, no source. */
export const DIFFERENTIAL_STEP = 5;
