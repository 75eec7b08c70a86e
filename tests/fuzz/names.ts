import { TARGETS } from './targets.ts';

/** What the targets are called; on its own, for the launcher. */
export const NAMES: readonly string[] = TARGETS.map((target) => target.name);
