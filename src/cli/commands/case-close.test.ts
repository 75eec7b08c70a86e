import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../../tests/run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'case-close-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** A copy of the invented case that gains, whose last visit is on 2026-03-30. */
function aCase(name: string): string {
  const path = join(scratch, name);
  copyFileSync('fixtures/case-gains.json', path);
  return path;
}
const fileOf = (path: string) => JSON.parse(readFileSync(path, 'utf8'));
const lastVisit: string = fileOf('fixtures/case-gains.json').visits.at(-1).date;

describe('case close', () => {
  it('writes day and reason, which show, next and the report tell; no visit is added until it is opened again', async () => {
    const path = aCase('closed.json');
    const closed = await runCommand('case', 'close', path, '--date', '2026-12-01', '--reason', 'plateau', '--note', 'Gains stopped.');
    expect([closed.exit, closed.err]).toEqual([0, '']);
    expect(closed.out).toContain('closed on 2026-12-01: no more was gained (Gains stopped.)');
    expect(fileOf(path).closed).toEqual({ date: '2026-12-01', reason: 'plateau', note: 'Gains stopped.' });
    for (const command of ['show', 'next'])
      expect((await runCommand('case', command, path)).out).toContain('The case was closed on 2026-12-01');
    expect(JSON.parse((await runCommand('case', 'next', path, '--json')).out).closed).toMatchObject({ reason: 'plateau' });
    const added = await runCommand('case', 'add', path, '--date', '2026-12-02', '--pip-active', '25/95');
    expect([added.exit, added.err]).toEqual([1, expect.stringContaining(`CASE_CLOSED: ${path} was closed on 2026-12-01`)]);
    const twice = await runCommand('case', 'close', path, '--date', '2026-12-03', '--reason', 'goal');
    expect([twice.exit, twice.err]).toEqual([1, expect.stringContaining(`${path} was closed on 2026-12-01 already`)]);
    expect((await runCommand('case', 'close', path, '--reopen')).out).toContain('is open again');
    expect(fileOf(path).closed).toBeUndefined();
    expect((await runCommand('case', 'add', path, '--date', '2026-12-02', '--pip-active', '25/95')).exit).toBe(0);
  });

  it('is refused before the last visit, without a day or a reason, with a name in its note, and open cases are not opened', async () => {
    const path = aCase('refused.json');
    const before = readFileSync(path, 'utf8');
    for (const [words, message, code] of [
      [['--date', '2026-02-03', '--reason', 'goal'], `has a visit on ${lastVisit}`, 1],
      [[], '--reason: missing; one of goal, plateau, harm, lost, other', 2],
      [['--date', '2026-13-01', '--reason', 'goal'], 'is not a day', 2],
      [['--date', '2026-12-01', '--reason', 'goal', '--note', 'two\nlines'], '--note', 2],
      [['--reopen', '--reason', 'goal'], 'leave --date, --reason and --note out', 2],
      [['--reopen'], `CASE_OPEN: ${path} is open already`, 1],
    ] as const) {
      const { exit, err } = await runCommand('case', 'close', path, ...words);
      expect([exit, err]).toEqual([code, expect.stringContaining(message)]);
    }
    expect(readFileSync(path, 'utf8')).toBe(before);
  });
});
