import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../../tests/run-command.ts';

const scratch = mkdtempSync(join(tmpdir(), 'case-audit-'));
afterAll(() => rmSync(scratch, { recursive: true }));

interface Said {
  readonly day: string;
  readonly deficit: number;
  readonly more?: object;
}
const strip = {
  made: {
    kind: 'strip',
    block: { id: 'ring-raised-in-three', places: { long: 'enclosed', ring: 'raised', little: 'enclosed' } },
    options: { differential: 20 },
    geometryVersion: '2.0.0',
    flatLength: 180,
  },
};

/** An invented case whose ring finger lacks so much extension at each visit. */
function write(code: string, visits: readonly Said[], closed?: object): string {
  const path = join(scratch, `${code}.json`);
  const file = {
    schema: 'knucklewright/case@2',
    code,
    side: 'left',
    digit: 'ring',
    invented: true,
    visits: visits.map(({ day, deficit, more }) => ({
      date: day,
      goniometry: { pip: { active: { extensionDeficit: deficit, flexion: 95 } } },
      ...more,
    })),
    ...(closed === undefined ? {} : { closed }),
  };
  writeFileSync(path, JSON.stringify(file));
  return path;
}

// By hand: A gains 10 first on day 28 (4 weeks) with two strips; B gains 9 only; C gains 12 on day 14 by another rater, which is
// believed from 13 alone, and 14 on day 42 (6 weeks); D gained and lost it again; E is open; F has one visit.
const FILES = [
  write(
    'AUDIT-A1',
    [
      { day: '2026-01-05', deficit: 40, more: strip },
      { day: '2026-01-19', deficit: 34, more: { ...strip, comment: 'Tried on.', rater: 'XY' } },
      { day: '2026-02-02', deficit: 30 },
      { day: '2026-03-02', deficit: 22 },
    ],
    { date: '2026-03-02', reason: 'goal' },
  ),
  write(
    'AUDIT-B1',
    [
      { day: '2026-01-05', deficit: 40, more: strip },
      { day: '2026-02-16', deficit: 31 },
    ],
    { date: '2026-03-01', reason: 'plateau' },
  ),
  write(
    'AUDIT-C1',
    [
      { day: '2026-01-05', deficit: 40, more: { ...strip, rater: 'A' } },
      { day: '2026-01-19', deficit: 28, more: { rater: 'B' } },
      { day: '2026-02-16', deficit: 26, more: { rater: 'B' } },
    ],
    { date: '2026-02-16', reason: 'lost' },
  ),
  write(
    'AUDIT-D1',
    [
      { day: '2026-01-05', deficit: 40 },
      { day: '2026-01-19', deficit: 25 },
      { day: '2026-02-16', deficit: 38 },
    ],
    { date: '2026-02-16', reason: 'harm' },
  ),
  write('AUDIT-E1', [{ day: '2026-01-05', deficit: 40 }]),
  write('AUDIT-F1', [{ day: '2026-01-05', deficit: 40 }], { date: '2026-02-16', reason: 'other' }),
];

describe('case audit', () => {
  it('counts who gained, in how many weeks, with how many strips, and why cases were closed', async () => {
    const { out, exit, err } = await runCommand('case', 'audit', ...FILES, '--json');
    expect([exit, err]).toEqual([0, '']);
    const audit = JSON.parse(out);
    expect(audit).toMatchObject({ schema: 'knucklewright/audit@1', gained: 2, medianWeeks: 5, open: 1, tooFewVisits: 1, invented: true });
    expect(audit.reasons).toEqual({ goal: 1, plateau: 1, harm: 1, lost: 1, other: 0 });
    expect(audit.cases.map((c: Record<string, unknown>) => [c.code, c.gained, c.weeks, c.strips, c.before, c.after])).toEqual([
      ['AUDIT-A1', true, 4, 2, 40, 22],
      ['AUDIT-B1', false, null, 1, 40, 31],
      ['AUDIT-C1', true, 6, 1, 40, 26],
      ['AUDIT-D1', false, null, 0, 40, 38],
    ]);
  });

  it('says it in words and on paper, the same bytes each time; nothing closed is refused', async () => {
    const [one, two] = [join(scratch, 'one.pdf'), join(scratch, 'two.pdf')];
    const said = await runCommand('case', 'audit', ...FILES, '--out', one);
    expect(said.out).toContain('2 of 4 closed cases gained 10 degrees or more');
    expect(said.out).toContain('these figures do not say what the orthosis did');
    await runCommand('case', 'audit', ...FILES, '--out', two);
    expect(readFileSync(one).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(one)).toEqual(readFileSync(two));
    const none = await runCommand('case', 'audit', FILES[4] ?? '');
    expect([none.exit, none.err]).toEqual([3, expect.stringContaining('NOTHING_CLOSED')]);
  });
});

describe('case table', () => {
  it('has a row a visit with days since the first, no comments, no raters; the days themselves on request', async () => {
    const out = join(scratch, 'cases.csv');
    expect((await runCommand('case', 'table', ...FILES, '--out', out)).out).toContain('6 cases, 14 visits');
    const text = readFileSync(out, 'utf8');
    const alone = join(scratch, 'alone.csv');
    expect((await runCommand('case', 'table', FILES[0] ?? '', '--out', alone)).out).toContain(`${alone}   1 case, `);
    expect(text).not.toMatch(/Tried on|XY|2026-/);
    const rows: Record<string, string>[] = parse(text, { columns: true });
    expect(rows).toHaveLength(14);
    expect(
      rows.slice(0, 4).map((row) => [row.code, row.visit, row.day, row['PIP active extension deficit'], row.made, row.closed]),
    ).toEqual([
      ['AUDIT-A1', '1', '0', '40', 'strip', 'goal'],
      ['AUDIT-A1', '2', '14', '34', 'strip', 'goal'],
      ['AUDIT-A1', '3', '28', '30', '', 'goal'],
      ['AUDIT-A1', '4', '56', '22', '', 'goal'],
    ]);
    const dated = join(scratch, 'dated.csv');
    await runCommand('case', 'table', FILES[0] ?? '', '--dates', '--out', dated);
    const [row] = parse(readFileSync(dated, 'utf8'), { columns: true }) as Record<string, string>[];
    expect([row?.date, row?.['closed on']]).toEqual(['2026-01-05', '2026-03-02']);
  });

  it('tells every file that cannot be read, and a case that is named twice', async () => {
    const { exit, err } = await runCommand(
      'case',
      'table',
      FILES[0] ?? '',
      FILES[0] ?? '',
      'no-such.json',
      '--out',
      join(scratch, 'never.csv'),
    );
    expect(exit).toBe(1);
    expect(err).toMatch(/CASE_TWICE[\s\S]*FILE_NOT_READ/);
  });
});
