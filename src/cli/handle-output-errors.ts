import { EXIT } from './exit.ts';

/**
 * Lets the command live on when nobody reads what it prints. A reader that has seen enough (`head`, a pager that was left) closes the pipe:
 * that is no fault, and files are still written. Any other failure, such as a full disk behind `> report.json`, is said and ends with 1.
 */
export function handleOutputErrors(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    const why = error.code === 'ENOSPC' ? 'the disk is full' : `the system says ${error.code ?? error.message}`;
    process.stderr.write(
      `error OUTPUT_FAILED: the report cannot be printed: ${why}; files that were asked for are written or named above.\n`,
    );
    process.exitCode = EXIT.badInput;
  });
  // Where even errors cannot be printed, the exit code still tells.
  process.stderr.on('error', () => {});
}
