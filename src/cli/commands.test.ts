import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CommandUnknownOpts } from '@commander-js/extra-typings';
import { describe, expect, it, vi } from 'vitest';
import { runCommand } from '../../tests/run-command.ts';
import { COMMANDS, commandsFor } from './commands.ts';
import { programOf } from './program.ts';

const ALL = await commandsFor([]);

/** What a terminal obeys or hides: control characters but line ends and tabs, and those that turn the writing round. */
const OBEYED = /[^\P{Cc}\n\t]|[\u202a-\u202e]/u;

/** What prints every kind of text: reports, lists, warnings, a sparkline, errors, wrong usage. */
const SAID = [
  ['plan', 'fixtures/demo-hand.json'],
  ['plan', 'fixtures/demo-hand.json', '--json'],
  ['plan', 'no-such.json'],
  ['plan', 'fixtures/demo-hand.json', '--no-such'],
  ['case', 'show', 'fixtures/case-gains.json'],
  ['case', 'next', 'fixtures/case-swells.json'],
  ['case', 'fit', 'fixtures/case-gains.json', '--all'],
  ['sizes', '--norms', 'mixed', '--block', 'ring-lowered-in-three', '--count', '2', '--hands', '10'],
  ['sheets', '--sizes', '900x20'],
  ['print-check', '--across', '98.5', '--along', '100'],
  ['inspect', 'fixtures/foreign/makerjs.svg'],
  ['blocks'],
  ['plates'],
  ['schema', 'hand'],
  ['man'],
  ['completion', 'bash'],
] as const;

function withChildren(command: CommandUnknownOpts): readonly CommandUnknownOpts[] {
  return [command, ...command.commands.flatMap(withChildren)];
}

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

  it('each report has a name and a version, which schema report lists with its form', async () => {
    const listed = Object.keys(JSON.parse((await runCommand('schema', 'report')).out));
    for (const name of listed) expect(name).toMatch(/^knucklewright\/[a-z-]+@\d+$/);
    expect(listed).toEqual(expect.arrayContaining(ALL.flatMap(({ reportSchema }) => (reportSchema === null ? [] : [reportSchema]))));
  });

  it.each([{}, { NO_COLOR: '1' }, { NO_COLOR: '', FORCE_COLOR: '1' }])(
    'no command prints an escape sequence, at a terminal with %j',
    async (set) => {
      for (const [name, value] of Object.entries(set)) vi.stubEnv(name, value);
      const terminals = [process.stdout, process.stderr].map((stream) => [stream, stream.isTTY] as const);
      for (const [stream] of terminals) stream.isTTY = true;
      try {
        for (const words of SAID) {
          const { out, err } = await runCommand(...words).catch((error: unknown) => ({ out: '', err: String(error) }));
          expect([words, OBEYED.exec(out + err)]).toEqual([words, null]);
          expect([words, (out + err).length > 0]).toEqual([words, true]);
        }
        // Help is commander's: asked for as text, and with its own output kept.
        for (const command of withChildren(programOf(ALL))) expect(command.helpInformation()).not.toContain('\u001b');
      } finally {
        for (const [stream, was] of terminals) stream.isTTY = was;
        vi.unstubAllEnvs();
      }
    },
  );

  it('a file name with control characters is escaped in reports, warnings, errors and data', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'names-'));
    let escaped = 0;
    const named = (ending: string) => join(folder, `a\u001b[31m\u009b1m\u202eb\r\u0007${ending}`);
    try {
      copyFileSync('fixtures/foreign/makerjs.svg', named('.svg'));
      copyFileSync('fixtures/case-gains.json', named('.json'));
      writeFileSync(named('.csv'), 'code,side\n');
      for (const words of [
        ['inspect', named('.svg')],
        ['inspect', named('.svg'), '--json'],
        ['plan', named(' none.json')],
        ['plan', named(' none.json'), '--json'],
        ['case', 'show', named('.json')],
        ['case', 'add', named('.json'), '--date', '2026-09-01', '--pip-active', '25/85', '--no-input'],
        ['case', 'chart', named('.json'), '--out', named(' chart.svg')],
        ['batch', named('.csv'), '--files', 'none', '--out', named('')],
        ['kerf-test', '--material', 'PCL', '--out', named(' kerf')],
        ['blocks', named('.svg')],
      ]) {
        const { out, err } = await runCommand(...words).catch((error: unknown) => ({ out: '', err: String(error) }));
        const said = out + err;
        expect([words[0], OBEYED.exec(said)]).toEqual([words[0], null]);
        expect(said.length).toBeGreaterThan(0);
        if (/\\u(\{1b\}|001b)\[31m/.test(said)) escaped += 1;
      }
      // Most of them name the file in what they say.
      expect(escaped).toBeGreaterThanOrEqual(8);
    } finally {
      rmSync(folder, { recursive: true });
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
