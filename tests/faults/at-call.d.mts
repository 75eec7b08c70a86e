export type FaultKind = 'kill' | 'torn' | 'lost-data' | 'lost-names' | 'EIO' | 'ENOSPC' | 'SIGINT' | 'SIGTERM';
export function arm(at: number, kind: FaultKind): void;
export function disarm(): readonly string[];
