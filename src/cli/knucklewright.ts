import { Command, CommanderError } from 'commander';
import { addBatchCommand } from './batch-command.ts';
import { addCaseCommand } from './case-command.ts';
import { addDrawCommand } from './draw-command.ts';
import { EXIT } from './exit.ts';
import { handleOutputErrors } from './handle-output-errors.ts';
import { addInspectCommand } from './inspect-command.ts';
import { addLibraryCommands } from './library-commands.ts';
import { addPageCommand } from './page-command.ts';
import { addPlanCommand } from './plan-command.ts';
import { addSheetCommands } from './sheet-commands.ts';
import { addSheetsCommand } from './sheets-command.ts';
import { addSizesCommand } from './sizes-command.ts';
import { VERSION } from './version.ts';

/** The command line: parses, then loads what the chosen command needs and runs it. */
function program(): Command {
  const command = new Command('knucklewright')
    .description(
      'From a measured hand to an exact, full-scale flat pattern for a relative-motion finger orthosis. It suggests; the clinician decides.',
    )
    .version(VERSION)
    .showHelpAfterError('(see knucklewright --help)')
    .exitOverride();
  addPlanCommand(command);
  addDrawCommand(command);
  addPageCommand(command);
  addCaseCommand(command);
  addSheetCommands(command);
  addInspectCommand(command);
  addBatchCommand(command);
  addSizesCommand(command);
  addSheetsCommand(command);
  addLibraryCommands(command);
  for (const child of command.commands) child.exitOverride().showHelpAfterError(`(see knucklewright ${child.name()} --help)`);
  return command;
}

handleOutputErrors();
try {
  await program().parseAsync();
} catch (error) {
  // Commander throws for wrong usage (its message is printed by then) and, with code 0, after help and version.
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? EXIT.done : EXIT.wrongUsage;
  else {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(
      `error FAULT: knucklewright met a fault of its own; nothing more was written. Please report the inputs and this:\n${text}\n`,
    );
    process.exitCode = EXIT.badInput;
  }
}
