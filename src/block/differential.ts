/** MP differentials in use, degrees: survey range 11 to 30 (Merritt & Jarrell, Ann Plast Surg 2020; Yates et al., J Hand Ther 2023). */
export const SURVEYED_DIFFERENTIAL = { low: 11, high: 30 } as const;

/** One step of trying, degrees. Common practice, no source. */
export const DIFFERENTIAL_STEP = 5;
