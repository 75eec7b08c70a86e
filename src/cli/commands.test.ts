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

describe('what every command has', () => {
  it('--quiet keeps warnings and drops the report; --no-input never asks', async () => {
    const quiet = await runCommand('plan', 'fixtures/demo-hand.json', '--quiet');
    expect([quiet.out, quiet.exit]).toEqual(['', 0]);
    expect((await runCommand('case', 'new', 'never.json', '--no-input')).err).toContain('--code, --side, --digit: missing');
    for (const { name, flags } of ALL)
      expect(
        flags.map(({ long }) => long),
        name,
      ).toEqual(expect.arrayContaining(['--quiet', '--no-input']));
  });

  it('each report names its schema and version, and schema report lists them all', async () => {
    const listed = JSON.parse((await runCommand('schema', 'report')).out);
    for (const [name, schema] of Object.entries(listed.reports))
      expect([name, schema]).toEqual([name, expect.stringMatching(/^knucklewright\/[a-z-]+@\d+$/)]);
    expect(Object.keys(listed.reports)).toEqual(ALL.filter(({ reportSchema }) => reportSchema !== null).map(({ name }) => name));
    for (const words of [
      ['blocks'],
      ['plan', 'fixtures/demo-hand.json'],
      ['case', 'next', 'fixtures/case-gains.json'],
      ['case', 'fit', 'fixtures/case-gains.json'],
      ['draw', 'fixtures/demo-hand.json'],
    ]) {
      const { schema } = JSON.parse((await runCommand(...words, '--json')).out);
      expect(schema).toBe(listed.reports[words.slice(0, words[0] === 'case' ? 2 : 1).join(' ')]);
    }
  });

  it('examples in the help are commands and flags that there are', () => {
    for (const { name, flags, examples } of ALL)
      for (const example of examples) {
        expect(`${example} `, name).toMatch(new RegExp(`^${name} `));
        for (const long of example.match(/ --[a-z-]+/g) ?? [])
          expect(
            flags.map((flag) => flag.long),
            example,
          ).toContain(long.trim());
      }
  });

  it('- is wrong usage where no standard input is read, and so is --out - where files are written', async () => {
    for (const words of [
      ['case', 'show', '-'],
      ['case', 'audit', '-'],
      ['sheets', '--sizes', '100x20', '--out', '-'],
      ['kerf-test', '--out', '-'],
    ]) {
      const { exit, out, err } = await runCommand(...words);
      expect([exit, out, err]).toEqual([2, '', expect.stringMatching(/standard (in|out)put/)]);
    }
    const formats = await runCommand('draw', 'fixtures/demo-hand.json', '--out', '-');
    expect([formats.exit, formats.err]).toEqual([2, expect.stringContaining('takes one format')]);
  });
});

describe('man', () => {
  it('has every command, flag and example, and no line that roff takes for a request of its own', async () => {
    const { out } = await runCommand('man');
    const plain = out.replaceAll('\\-', '-');
    for (const { name, flags, examples } of ALL) {
      expect(plain).toContain(`.SS knucklewright ${name}`);
      for (const { flags: typed } of flags) expect(plain).toContain(`.B ${typed}`);
      for (const example of examples) expect(plain).toContain(`knucklewright ${example}`);
    }
    const requests = new Set(out.split('\n').flatMap((line) => /^[.'](\S*)/.exec(line)?.[1] ?? []));
    expect([...requests].sort()).toEqual(['B', 'I', 'PP', 'RE', 'RS', 'SH', 'SS', 'TH', 'TP', 'fi', 'nf']);
  });
});

describe('completion', () => {
  it.each(['zsh', 'fish', 'powershell'])('%s looks up the same words as bash', async (shell) => {
    const table = (script: string) =>
      script
        .split('\n')
        .filter((line) => line.includes('\t') && !/awk|grep|StartsWith|string match/.test(line))
        .map((line) => line.replace(/^.*'(?=\t)/, '').replace(/'$/, ''));
    const [bash, other] = [(await runCommand('completion', 'bash')).out, (await runCommand('completion', shell)).out];
    expect(table(other)).toEqual(table(bash));
    expect(table(other).length).toBeGreaterThan(500);
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
