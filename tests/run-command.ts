import { vi } from 'vitest';
import { runWords } from '../src/cli/run-words.ts';
import { kebabCase } from '../src/units/typed-name.ts';

export interface CommandRun {
  readonly out: string;
  readonly err: string;
  readonly exit: number;
}

/** Runs the command line on these words in this process, as the program does; what it prints, and its exit code. A process of its own costs a second. */
export async function runCommand(...words: readonly string[]): Promise<CommandRun> {
  const printed = { out: '', err: '' };
  const catching = (where: 'out' | 'err') => (text: string | Uint8Array) => {
    printed[where] += String(text);
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(catching('out')),
    vi.spyOn(process.stderr, 'write').mockImplementation(catching('err')),
  ];
  const before = process.exitCode;
  process.exitCode = undefined;
  try {
    await runWords(words);
    return { ...printed, exit: Number(process.exitCode ?? 0) };
  } finally {
    for (const spy of spies) spy.mockRestore();
    process.exitCode = before;
  }
}

/** The same, begun in a folder. */
export async function runCommandIn(folder: string, ...words: readonly string[]): Promise<CommandRun> {
  const before = process.cwd();
  process.chdir(folder);
  try {
    return await runCommand(...words);
  } finally {
    process.chdir(before);
  }
}

/** Flags of a test as they are typed: `{ json: true, angle: '45' }` is `--json --angle 45`. */
export function asTyped(flags: Readonly<Record<string, string | boolean | undefined>>): readonly string[] {
  return Object.entries(flags).flatMap(([key, value]) => {
    const name = `--${kebabCase(key)}`;
    return value === undefined || value === false ? [] : value === true ? [name] : [name, value];
  });
}
