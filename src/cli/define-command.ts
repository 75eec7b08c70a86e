import { escapeInvisible, escapeInvisibleJson } from '../units/quote.ts';
import type { Problem, Result, Warning } from '../units/result.ts';
import type { ClinicFlag } from './clinic-file.ts';
import { EXIT, fail, failAsJson, warn } from './exit.ts';
import { clinicFlag, settleClinic, usesClinic } from './flags/clinic-flag.ts';
import { type AnyArgument, type AnyOption, type ArgumentsOf, type FlagEntry, type FlagsOf, optionsOf } from './flags/flag.ts';

/** Headings of the help, in their order. */
export type CommandGroup = 'Suggest and draw' | 'Keep a case' | 'Many hands' | 'Files and printers' | 'What it knows';

/** A command as data: the command line, its help, completion and tests all take it from here. */
interface CommandForm<Args extends readonly AnyArgument[], Flags extends readonly FlagEntry[], Inputs, Made> {
  /** As it is typed: `plan`, `case add`. */
  readonly name: string;
  readonly group: CommandGroup;
  readonly about: string;
  readonly args: Args;
  readonly flags: Flags;
  /** What of a clinic's file the command leaves aside. */
  readonly clinicLeaves?: readonly ClinicFlag[];
  /** Reads and checks all that the person gave; every problem at once, nothing written. */
  readonly read: (args: ArgumentsOf<Args>, flags: FlagsOf<Flags>) => Result<Inputs> | Promise<Result<Inputs>>;
  /** Does the work: computes, then writes. */
  readonly make: (inputs: Inputs) => Result<Made> | Promise<Result<Made>>;
  /** What is printed: words, or with `--json` the same as data; then the data carry the warnings. */
  readonly report: {
    readonly text: (made: Made, flags: FlagsOf<Flags>) => string;
    readonly json?: (made: Made, warnings: readonly Warning[]) => unknown;
  };
  /** What the work says of the exit code when it was reported: problems, told like any other, or a code. Without it: 0. */
  readonly exit?: (made: Made) => readonly Problem[] | number;
}

/** A command, whatever its types. */
export interface Command {
  readonly name: string;
  readonly group: CommandGroup;
  readonly about: string;
  readonly args: readonly AnyArgument[];
  readonly flags: readonly AnyOption[];
  /**
   * Runs it on what commander parsed, prints, and sets the exit code.
   * @param isGiven whether the person typed the flag of this key; its value is a default otherwise
   */
  run(args: readonly unknown[], flags: object, isGiven?: (key: string) => boolean): Promise<void>;
}

export interface TypedCommand<Args extends readonly AnyArgument[], Flags extends readonly FlagEntry[]> extends Command {
  run(args: ArgumentsOf<Args>, flags: FlagsOf<Flags>, isGiven?: (key: string) => boolean): Promise<void>;
}

export function defineCommand<const Args extends readonly AnyArgument[], const Flags extends readonly FlagEntry[], Inputs, Made>(
  form: CommandForm<Args, Flags, Inputs, Made>,
): TypedCommand<Args, Flags> {
  const { name, group, about, read, make, report, exit } = form;
  const options = optionsOf(form.flags);
  const withClinic = usesClinic(options);
  const run = async (args: ArgumentsOf<Args>, typed: FlagsOf<Flags>, isGiven: (key: string) => boolean = () => false): Promise<void> => {
    const asJson = report.json !== undefined && 'json' in typed && typed.json === true;
    const stop = asJson ? failAsJson : fail;
    const settled = withClinic ? await settleClinic(typed, options, isGiven, form.clinicLeaves) : null;
    if (settled && !settled.ok) return stop(settled.problems);
    const flags = settled?.value.flags ?? typed;
    const inputs = await read(args, flags);
    if (!inputs.ok) return stop(inputs.problems);
    const made = await make(inputs.value);
    if (!made.ok) return stop(made.problems);
    const warnings = [...inputs.warnings, ...made.warnings];
    if (asJson && report.json) {
      const data = report.json(made.value, warnings);
      const isObject = typeof data === 'object' && data !== null && !Array.isArray(data);
      const whole = isObject && settled ? { ...data, valuesFrom: settled.value.valuesFrom } : data;
      process.stdout.write(`${escapeInvisibleJson(JSON.stringify(whole, null, 2))}
`);
    } else {
      warn(warnings);
      process.stdout.write(escapeInvisible(report.text(made.value, flags), true));
    }
    const end = exit?.(made.value) ?? EXIT.done;
    if (typeof end === 'number') process.exitCode = end;
    else if (end.length > 0) fail(end);
  };
  return { name, group, about, args: form.args, flags: withClinic ? [...options, clinicFlag] : options, run };
}
