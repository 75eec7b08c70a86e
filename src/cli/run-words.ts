import { CommanderError } from '@commander-js/extra-typings';
import { commandsFor } from './commands.ts';
import { EXIT } from './exit.ts';
import { programOf } from './program.ts';

/** Runs the command that these words name: it prints, and sets the exit code. Wrong usage is told in the form of any other error. */
export async function runWords(words: readonly string[]): Promise<void> {
  try {
    await programOf(await commandsFor(words)).parseAsync(words, { from: 'user' });
  } catch (error) {
    // Commander throws for wrong usage (its message is printed by then) and, with code 0, after help and version.
    if (!(error instanceof CommanderError)) throw error;
    process.exitCode = error.exitCode === 0 ? EXIT.done : EXIT.wrongUsage;
    if (error.exitCode !== 0 && words.includes('--json')) sayUsage(error.message);
  }
}

/** For a program that asked for JSON. */
function sayUsage(message: string): void {
  const problem = { code: 'USAGE', where: '', message: message.replace(/^error: /, ''), kind: 'usage' };
  process.stdout.write(`${JSON.stringify({ schema: 'knucklewright/errors@1', errors: [problem], exit: EXIT.wrongUsage }, null, 2)}\n`);
}
