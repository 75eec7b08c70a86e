import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { getOwn } from '../units/json-text.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { kebabCase } from '../units/typed-name.ts';
import { flagProblem } from './flags/flag.ts';
import { DASH, StandardStreams } from './standard-input.ts';

export interface Placed<Args, Flags> {
  readonly args: Args;
  readonly flags: Flags;
  /** Null where neither stream is meant. */
  readonly streams: StandardStreams | null;
  /** The folder whose one drawing is printed in place of the report; null where files are written. */
  readonly printed: string | null;
}

/**
 * Arguments and flags with files in place of the standard streams, and among the flags `isPrinted` where the one drawing in that folder is printed; a
 * `-` that the command cannot take is wrong usage.
 */
export async function withStandardStreams<Args extends readonly unknown[], Flags extends object>(
  {
    name,
    standardInput = false,
    standardOutput = false,
  }: { readonly name: string; readonly standardInput?: boolean; readonly standardOutput?: boolean },
  args: Args,
  flags: Flags,
): Promise<Result<Placed<Args, Flags>>> {
  const isIn = (args.flat() as readonly unknown[]).includes(DASH);
  const isOut = getOwn(flags, 'out') === DASH;
  if (!isIn && !isOut) return success({ args, flags, streams: null, printed: null });
  const problems: Problem[] = [];
  if (isIn && !standardInput) problems.push(flagProblem(DASH, `${name} reads no standard input; name a file`));
  if (isOut && !standardOutput) problems.push(flagProblem('--out', `${name} writes files, not to standard output; name a folder or file`));
  if (isOut && standardOutput) problems.push(...printProblems(flags));
  if (problems.length > 0) return failure(...problems);
  const streams = await StandardStreams.open();
  const read = isIn ? await streams.input() : success('');
  if (!read.ok) {
    streams.close();
    return read;
  }
  const file = (word: unknown) => (word === DASH ? read.value : word);
  const placed = args.map((word) => (Array.isArray(word) ? word.map(file) : file(word))) as unknown as Args;
  const printed = isOut ? join(streams.folder, 'out') : null;
  return success({ args: placed, flags: printed ? { ...flags, out: printed, isPrinted: true } : flags, streams, printed });
}

/** What does not go with a drawing on standard output: several formats, and whatever else would be printed or written. */
function printProblems(flags: object): readonly Problem[] {
  const formats = String(getOwn(flags, 'formats') ?? '')
    .split(',')
    .filter((word) => word.trim() !== '');
  const others = ['json', 'reports', 'paperTrial', 'shelf'].filter((key) => getOwn(flags, key) !== undefined);
  return [
    ...(formats.length === 1
      ? []
      : [flagProblem('--out', `- takes one format; say which, as --formats svg, not ${quote(formats.join(','))}`)]),
    ...others.map((key) =>
      flagProblem(`--${kebabCase(key)}`, 'prints or writes more than the one drawing of --out -; leave one of the two out'),
    ),
  ];
}

/** The one drawing in a folder, as bytes on standard output. Words that go with it are for files alone. */
export async function printOnly(folder: string): Promise<void> {
  const [drawing] = (await readdir(folder)).filter((name) => !name.endsWith('.txt'));
  if (drawing === undefined) throw new Error('nothing was drawn');
  process.stdout.write(await readFile(join(folder, drawing)));
}
