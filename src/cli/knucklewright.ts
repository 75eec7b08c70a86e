import { readInProcess } from './bounded/bounded-reading.ts';
import { EXIT } from './exit.ts';
import { handleOutputErrors } from './handle-output-errors.ts';
import { makeRowsInThreads } from './row-crew.ts';
import { runWords } from './run-words.ts';

handleOutputErrors();
// Beside this file when the program is built.
readInProcess(new URL('./reader.js', import.meta.url));
makeRowsInThreads(new URL('./row-worker.js', import.meta.url));
const words = process.argv.slice(2);
try {
  // Asked of the files as they lie there, not of what was built into them.
  if (words.length === 2 && words.includes('--version') && words.includes('--json')) {
    const { installed } = await import('./installed.ts');
    process.stdout.write(`${JSON.stringify(await installed(new URL('./', import.meta.url)), null, 2)}\n`);
  } else await runWords(words);
} catch (error) {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(
    `error FAULT: knucklewright met a fault of its own; nothing more was written. Please report the inputs and this:\n${text}\n`,
  );
  process.exitCode = EXIT.badInput;
}
