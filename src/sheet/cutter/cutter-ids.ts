/** Ids of the profiles in `templates/cutters`, for the help of commands; a test keeps it equal to the files. */
export const CUTTER_IDS = ['knife', 'pen-and-scissors', 'laser-if-allowed'] as const;

/** Width of a hold-down bridge in the plastic where none is asked for, mm. */
export const DEFAULT_BRIDGE_WIDTH = 1;
