import { CommanderError } from '@commander-js/extra-typings';
import { readInProcess } from './bounded/bounded-reading.ts';
import { commandsFor } from './commands.ts';
import { EXIT } from './exit.ts';
import { handleOutputErrors } from './handle-output-errors.ts';
import { programOf } from './program.ts';

/** Wrong usage in the form of any other error, for a program that asked for JSON. */
function sayUsage({ exitCode, message }: CommanderError): void {
  process.exitCode = exitCode === 0 ? EXIT.done : EXIT.wrongUsage;
  if (exitCode === 0 || !process.argv.includes('--json')) return;
  const problem = { code: 'USAGE', where: '', message: message.replace(/^error: /, ''), kind: 'usage' };
  process.stdout.write(`${JSON.stringify({ schema: 'knucklewright/errors@1', errors: [problem], exit: EXIT.wrongUsage }, null, 2)}\n`);
}

handleOutputErrors();
// Beside this file when the program is built.
readInProcess(new URL('./reader.js', import.meta.url));
const words = process.argv.slice(2);
try {
  // Asked of the files as they lie there, not of what was built into them.
  if (words.length === 2 && words.includes('--version') && words.includes('--json')) {
    const { installed } = await import('./installed.ts');
    process.stdout.write(`${JSON.stringify(await installed(new URL('./', import.meta.url)), null, 2)}\n`);
  } else await programOf(await commandsFor(words)).parseAsync();
} catch (error) {
  // Commander throws for wrong usage (its message is printed by then) and, with code 0, after help and version.
  if (error instanceof CommanderError) sayUsage(error);
  else {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(
      `error FAULT: knucklewright met a fault of its own; nothing more was written. Please report the inputs and this:\n${text}\n`,
    );
    process.exitCode = EXIT.badInput;
  }
}
