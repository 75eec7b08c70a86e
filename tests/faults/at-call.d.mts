export type FaultKind = 'kill' | 'torn' | 'lost-data' | 'lost-names' | 'EIO' | 'ENOSPC';
export function arm(at: number, kind: FaultKind): void;
export function disarm(): readonly string[];
