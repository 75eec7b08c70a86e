import '../units/configure-zod.ts';
import { getOwn } from '../units/json-text.ts';
import { escapeInvisible, escapeInvisibleJson } from '../units/quote.ts';
import type { Problem, Result, Warning } from '../units/result.ts';
import { neverAsk } from './ask.ts';
import type { ClinicFlag } from './clinic-file.ts';
import { EXIT, fail, failAsJson, roundedReport, warn } from './exit.ts';
import { clinicFlag, settleClinic, usesClinic, type ValuesFrom } from './flags/clinic-flag.ts';
import { type AnyArgument, type AnyOption, type ArgumentsOf, type FlagEntry, type FlagsOf, flag, optionsOf } from './flags/flag.ts';
import { printOnly, withStandardStreams } from './with-standard-streams.ts';

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
  /** As they would be typed after the program's name, for its help. */
  readonly examples?: readonly string[];
  /** A file argument may be `-`, standard input. */
  readonly standardInput?: boolean;
  /** `--out -` prints its one drawing in place of a report. */
  readonly standardOutput?: boolean;
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
    /** Name and version of the data, where it is not that of the command. */
    readonly schema?: string;
  };
  /** What the work says of the exit code when it was reported: problems, told like any other, or a code. Without it: 0. */
  readonly exit?: (made: Made) => readonly Problem[] | number;
}

/** A command, whatever its types. */
export interface Command {
  readonly name: string;
  readonly group: CommandGroup;
  readonly about: string;
  readonly examples: readonly string[];
  readonly args: readonly AnyArgument[];
  readonly flags: readonly AnyOption[];
  /** Of what `--json` prints; null where it prints none. */
  readonly reportSchema: string | null;
  /** Reads and checks what commander parsed, as `run` does first; nothing is made, written or printed. */
  read(args: readonly unknown[], flags: object): Promise<Result<unknown>>;
  /**
   * Runs it on what commander parsed, prints, and sets the exit code.
   * @param isGiven whether the person typed the flag of this key; its value is a default otherwise
   */
  run(args: readonly unknown[], flags: object, isGiven?: (key: string) => boolean): Promise<void>;
}

export interface TypedCommand<Args extends readonly AnyArgument[], Flags extends readonly FlagEntry[]> extends Command {
  read(args: ArgumentsOf<Args>, flags: FlagsOf<Flags>): Promise<Result<unknown>>;
  run(args: ArgumentsOf<Args>, flags: FlagsOf<Flags>, isGiven?: (key: string) => boolean): Promise<void>;
}

/** Flags that every command has. */
const quietFlag = flag('--quiet', 'print no report: warnings and errors alone; files are written as without it');
const noInputFlag = flag('--no-input', 'never ask, at a terminal either; what is missing is an error');

export function defineCommand<const Args extends readonly AnyArgument[], const Flags extends readonly FlagEntry[], Inputs, Made>(
  form: CommandForm<Args, Flags, Inputs, Made>,
): TypedCommand<Args, Flags> {
  const { name, group, about, read, make, report, exit, examples = [] } = form;
  const own = optionsOf(form.flags);
  const withClinic = usesClinic(own);
  const options = [...own, ...(withClinic ? [clinicFlag] : []), quietFlag, noInputFlag];
  const reportSchema = report.json === undefined ? null : (report.schema ?? `knucklewright/${name.replaceAll(' ', '-')}-report@1`);
  const run = async (args: ArgumentsOf<Args>, typed: FlagsOf<Flags>, isGiven: (key: string) => boolean = () => false): Promise<void> => {
    const asJson = report.json !== undefined && 'json' in typed && typed.json === true;
    neverAsk(getOwn(typed, 'input') === false);
    const named = await withStandardStreams(form, args, typed);
    if (!named.ok) return (asJson ? failAsJson : fail)(named.problems);
    const { streams, args: files, flags: placed, printed } = named.value;
    const spoken = (text: string) => streams?.spoken(text) ?? text;
    const said = (problems: readonly Problem[]) =>
      problems.map((each) => ({ ...each, message: spoken(each.message), where: spoken(each.where) }));
    const stop = (problems: readonly Problem[]) => (asJson ? failAsJson : fail)(said(problems));
    try {
      const settled = withClinic ? await settleClinic(placed, own, isGiven, form.clinicLeaves) : null;
      if (settled && !settled.ok) return stop(settled.problems);
      const flags = settled?.value.flags ?? placed;
      const inputs = await read(files, flags);
      if (!inputs.ok) return stop(inputs.problems);
      const made = await make(inputs.value);
      if (!made.ok) return stop(made.problems);
      const warnings = [...inputs.warnings, ...made.warnings];
      if (asJson && report.json) {
        const data = reportData(report.json(made.value, warnings), reportSchema, name, settled?.value.valuesFrom);
        process.stdout.write(`${escapeInvisibleJson(spoken(JSON.stringify(data, null, 2)))}\n`);
      } else {
        warn(warnings.map((each) => ({ ...each, message: spoken(each.message) })));
        if (printed) await printOnly(printed);
        else if (getOwn(typed, 'quiet') !== true) process.stdout.write(escapeInvisible(spoken(report.text(made.value, flags)), true));
      }
      const end = exit?.(made.value) ?? EXIT.done;
      if (typeof end === 'number') process.exitCode = end;
      else if (end.length > 0) fail(said(end));
    } finally {
      streams?.close();
    }
  };
  return { name, group, about, examples, args: form.args, flags: options, reportSchema, read: async (...given) => read(...given), run };
}

/** A report with its schema first and, where a clinic's file may have a say, where its values came from; a list is named after its command. */
function reportData(data: unknown, schema: string | null, name: string, valuesFrom: ValuesFrom | undefined): unknown {
  const body = Array.isArray(data) ? { [name]: data } : typeof data === 'object' ? data : { value: data };
  return roundedReport({ schema, ...body, ...(valuesFrom ? { valuesFrom } : {}) });
}
