import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { times, tried } from '../by-night.ts';
import { COMMAND, DEMO, ended, INNARDS, run, scratchFolder, start, visibleFiles } from './commands.ts';

const scratch = scratchFolder('surroundings');
afterAll(() => rmSync(scratch, { recursive: true }));

describe('a reader that closes the pipe early', () => {
  const printing = [['draw', DEMO, '--json'], ['plan', DEMO], ['blocks'], ['schema', 'hand'], ['--help'], ['draw', 'no-such-hand.json']];
  // By day the one that prints most, help, and an error.
  it.each(tried(printing, ([first, second]) => first === 'schema' || first === '--help' || second === 'no-such-hand.json'))(
    'of %s %s meets no stack trace',
    (...args) => {
      const quoted = [process.execPath, COMMAND, ...args].map((word) => `"${word}"`).join(' ');
      // `true` reads nothing and has gone before the command prints.
      const { stderr } = spawnSync('sh', ['-c', `{ sleep 0.3; ${quoted}; } | true`], { encoding: 'utf8' });
      expect(stderr).not.toMatch(INNARDS);
    },
  );

  it('does not keep the files from being written', () => {
    const out = join(scratch, 'closed');
    spawnSync('sh', ['-c', `"${process.execPath}" "${COMMAND}" draw "${DEMO}" --out "${out}" | true`]);
    expect(Object.keys(visibleFiles(out))).toHaveLength(2);
  });

  it('of the errors as well leaves the exit code', () => {
    const line = `"${process.execPath}" "${COMMAND}" draw no-such-hand.json 2>&1 >/dev/null | true`;
    const { stdout } = spawnSync('bash', ['-c', `${line}; echo "\${PIPESTATUS[0]}"`], { encoding: 'utf8' });
    expect(stdout.trim()).toBe('1');
  });
});

it('a pipe or a device instead of a hand file is refused, without waiting', () => {
  const pipe = join(scratch, 'pipe.json');
  expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
  for (const path of [pipe, '/dev/zero']) {
    const { status, stderr } = run(['draw', path, '--json']);
    expect(status).toBe(1);
    expect(stderr).toContain('is a pipe or a device');
  }
});

describe('two writers at once', () => {
  it('without --force: one writes, the others are told and touch nothing', { timeout: 120_000 }, async () => {
    const out = join(scratch, 'both');
    const all = await Promise.all([1, 2, 3].map(() => ended(start(['draw', DEMO, '--content', 'cut', '--out', out]))));
    expect(all.filter(({ status }) => status === 0)).toHaveLength(1);
    for (const { stderr } of all.filter(({ status }) => status !== 0))
      expect(stderr).toMatch(/exists and was not touched|exist and were not touched/);
    const alone = join(scratch, 'alone');
    run(['draw', DEMO, '--content', 'cut', '--out', alone]);
    expect(visibleFiles(out)).toEqual(visibleFiles(alone));
    expect(readdirSync(out)).toEqual(readdirSync(alone));
  });

  it('with --force: every file is whole, one or the other', { timeout: 120_000 }, async () => {
    const out = join(scratch, 'forced');
    const trims = ['10', '20'];
    const versions = trims.map((trim) => {
      const alone = join(scratch, `alone-${trim}`);
      run(['draw', DEMO, '--out', alone, '--trim', trim]);
      return visibleFiles(alone);
    });
    for (let round = 0; round < times(1, 3); round++) {
      const both = await Promise.all(trims.map((trim) => ended(start(['draw', DEMO, '--out', out, '--force', '--trim', trim]))));
      expect(both.map(({ status }) => status)).toEqual([0, 0]);
      for (const [name, content] of Object.entries(visibleFiles(out))) expect(versions.map((v) => v[name])).toContain(content);
      expect(readdirSync(out)).toHaveLength(2);
    }
  });
});

describe('the same bytes', () => {
  const clock = join(scratch, 'clock.mjs');
  writeFileSync(
    clock,
    `const shift = Number(process.env.CLOCK) - Date.now();
     const True = Date;
     globalThis.Date = class extends True {
       constructor(...args) { super(...(args.length ? args : [True.now() + shift])); }
       static now() { return True.now() + shift; }
     };`,
  );
  const drawn = (name: string, environment: NodeJS.ProcessEnv) => {
    const out = join(scratch, name);
    // Without --language the words follow the environment; nothing else may.
    const { status, stdout } = run(['draw', DEMO, '--out', out, '--language', 'en'], environment);
    expect(status).toBe(0);
    return { files: visibleFiles(out), stdout: stdout.replaceAll(out, 'OUT') };
  };
  const plain = drawn('plain', {});

  const surroundings: readonly (readonly [string, NodeJS.ProcessEnv])[] = [
    ['in another time zone', { TZ: 'Pacific/Kiritimati' }],
    ['with a comma as the decimal sign', { LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' }],
    ['with digits of another script', { LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8', LANGUAGE: 'ar' }],
    ['in the C locale', { LANG: 'C', LC_ALL: 'C' }],
    ['in 1970', { CLOCK: '0', NODE_OPTIONS: `--import=${clock}` }],
    [
      'a second before the end of a leap day in 2104',
      { CLOCK: String(Date.UTC(2104, 1, 29, 23, 59, 59)), NODE_OPTIONS: `--import=${clock}` },
    ],
    ['without a home, a terminal or colours', { HOME: '', TERM: 'dumb', NO_COLOR: '1' }],
  ];
  // By day one of the words, one of the clock, and one that lacks everything.
  const isTelling = ([name]: (typeof surroundings)[number]) => /digits|leap day|home/.test(name);
  it.each(tried(surroundings, isTelling))('%s', (name, environment) => {
    expect(drawn(name.replaceAll(' ', '-'), environment)).toEqual(plain);
  });

  it('of a case to which one adds while the clock jumps far ahead and back, and no lock is left', () => {
    const kept = (name: string, clocks: readonly string[]) => {
      const file = join(scratch, `${name}.json`);
      writeFileSync(file, JSON.stringify({ schema: 'knucklewright/case@2', code: 'T-1', side: 'left', digit: 'ring', visits: [] }));
      const said = ['2026-03-02', '2026-02-02'].map((date, k) => {
        const at = clocks[k];
        const environment: NodeJS.ProcessEnv = at === undefined ? {} : { CLOCK: at, NODE_OPTIONS: `--import=${clock}` };
        const { status, stdout } = run(['case', 'add', file, '--date', date, '--pip-active', '25/85'], environment);
        expect(status).toBe(0);
        return stdout;
      });
      // A day before the last, by a slip or a wrong calendar, is told.
      expect(said[0]).toContain('visit of 2026-03-02 added, 1 visit now');
      expect(said[1]).toContain('visit of 2026-02-02 added before that of 2026-03-02, which stays the last, 2 visits now');
      return readFileSync(file, 'utf8');
    };
    expect(kept('jumping', [String(Date.UTC(2104, 1, 29)), '0'])).toBe(kept('steady', []));
    expect(readdirSync(scratch).filter((name) => name.startsWith('.'))).toEqual([]);
  });
});
