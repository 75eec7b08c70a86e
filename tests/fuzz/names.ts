import { DOORS } from './doors.ts';

/** What the doors are called; on its own, for the launcher. */
export const NAMES: readonly string[] = DOORS.map((door) => door.name);
