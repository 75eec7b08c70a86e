/** The code of an error of the system, as `ENOENT`; empty for any other error. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** What a code of the system means to a person; other codes as they are. */
export function systemReason(code: string): string {
  const reasons: Readonly<Record<string, string>> = {
    ENOSPC: 'the disk is full',
    EDQUOT: 'your share of the disk is full',
    ENOENT: 'the folder does not exist',
    EACCES: 'you may not write there',
    EROFS: 'the disk is read-only',
    ENAMETOOLONG: 'a name in it is longer than this system takes',
    EIO: 'the disk has a fault (EIO)',
  };
  return reasons[code] ?? `the system says ${code}`;
}
