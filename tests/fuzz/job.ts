/** What a thread of targets is given. */
export interface Job {
  readonly names: readonly string[];
  readonly cases: number;
  readonly seed: number;
  /** [0]: cases begun; [1]: feedings begun, which are more where a slow case is tried again. So the watcher sees when one hangs. */
  readonly begun: Int32Array;
}

/** What came of one target. */
export interface TargetRun {
  readonly target: string;
  readonly cases: number;
  /** Those of the cases that were the same text as one before and were not fed again. */
  readonly repeated: number;
  readonly seconds: number;
  readonly slowestMs: number;
  /** Null when everything held. */
  readonly fault: string | null;
}

/** A case that takes longer is a hang; processor time, since the machine may be busy with other things. */
export const LONGEST_MS = 2000;

/** Processor time that this process has used, ms. */
export function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
