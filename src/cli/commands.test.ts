import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../tests/run-command.ts';
import { COMMANDS, commandsFor } from './commands.ts';

const ALL = await commandsFor([]);

/** What bash offers for a command line whose last word is being typed. */
function offered(script: string, ...words: readonly string[]): readonly string[] {
  const line = ['knucklewright', ...words].map((word) => `'${word}'`).join(' ');
  const ask = `${script}\nCOMP_WORDS=(${line}); COMP_CWORD=${words.length}; _knucklewright; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync('bash', ['-c', ask], { encoding: 'utf8' })
    .split('\n')
    .filter((word) => word !== '');
}

describe('the commands', () => {
  it('stand under their own names, say what they do, and have no flag twice', () => {
    expect(ALL.map(({ name }) => name)).toEqual(Object.keys(COMMANDS));
    for (const { name, about, args, flags } of ALL) {
      expect(about, name).toMatch(/^[a-z]/);
      const names = flags.map(({ long }) => long);
      expect(new Set(names).size, name).toBe(names.length);
      for (const { description } of [...args, ...flags]) expect(description, name).not.toBe('');
    }
  });

  it('are loaded alone when their words come first, all of them when the words name none', async () => {
    expect((await commandsFor(['case', 'next', 'x.json'])).map(({ name }) => name)).toEqual(['case next']);
    expect(await commandsFor(['--help'])).toHaveLength(ALL.length);
    expect(await commandsFor(['constructor'])).toHaveLength(ALL.length);
  });

  it('say with --json what was wrong as data on stdout, in words on stderr', async () => {
    const { out, err, exit } = await runCommand('plan', 'no-such.json', '--differential', 'abc', '--json');
    expect(JSON.parse(out)).toMatchObject({
      schema: 'knucklewright/errors@1',
      exit: 2,
      errors: [{ code: 'FILE_NOT_READ' }, { code: 'OPTION' }],
    });
    expect(err.match(/^error /gm)).toHaveLength(2);
    expect(exit).toBe(2);
    expect((await runCommand('plan', 'no-such.json')).out).toBe('');
  });
});

describe('completion bash', () => {
  it('offers commands, flags and the words that a flag may have', async () => {
    const { out: script } = await runCommand('completion', 'bash');
    expect(offered(script, 'pl')).toEqual(['plan', 'plates']);
    expect(offered(script, 'case', 'n')).toEqual(['new', 'next']);
    expect(offered(script, 'case', 'next', '--j')).toEqual(['--json']);
    expect(offered(script, 'sheets', 'list.csv', '--grain', '')).toEqual(['along', 'across', 'free']);
    expect(offered(script, 'schema', 'plate')).toEqual(['plate', 'plate-options']);
    expect(offered(script, 'nonsense', '')).toEqual([]);
  });
});
