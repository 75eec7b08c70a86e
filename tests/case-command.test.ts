import { spawn } from 'node:child_process';
import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { loadCase } from '../src/files/case-store.ts';
import { optionsText } from '../src/record/case-text.ts';
import { inkedPixels, rasterise } from './picture.ts';
import { needsReader } from './readers.ts';
import { type CommandRun, runCommandIn } from './run-command.ts';

/** Some tests start several processes, which take a second each on a busy machine. */
const LONG = 120_000;
const ROOT = fileURLToPath(new URL('..', import.meta.url));
const fixture = (name: string) => join(ROOT, 'fixtures', name);

let built = '';
/** Built once before all tests, as it is shipped. */
const command = join(ROOT, 'dist/knucklewright.js');
let folder = '';
let runs = 0;
beforeAll(async () => {
  built = await mkdtemp(join(tmpdir(), 'case-command-'));
});
afterAll(() => rm(built, { recursive: true }));
beforeEach(async () => {
  folder = await mkdtemp(join(built, `run-${++runs}-`));
});

const run = (...args: readonly string[]) => runCommandIn(folder, ...args);

/** In a process of its own. */
function inProcess(...args: readonly string[]): Promise<CommandRun> {
  return finished(spawn(process.execPath, [command, ...args], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] }));
}

function finished(child: ReturnType<typeof spawn>): Promise<CommandRun> {
  const text = { out: '', err: '' };
  child.stdout?.setEncoding('utf8').on('data', (part: string) => {
    text.out += part;
  });
  child.stderr?.setEncoding('utf8').on('data', (part: string) => {
    text.err += part;
  });
  return new Promise((resolve) => child.on('close', (code) => resolve({ exit: code ?? Number.NaN, ...text })));
}

const newCase = () => run('case', 'new', 'c.json', '--code', 'TEST-1', '--side', 'left', '--digit', 'ring', '--invented');

describe('knucklewright case', { timeout: LONG }, () => {
  it('goes from a hand to a chart: new, three visits, show, next, chart', async () => {
    expect(await run('case', 'new', 'c.json', '--hand', fixture('demo-hand.json'))).toMatchObject({ exit: 0, err: '' });
    const add = (...args: string[]) => run('case', 'add', 'c.json', ...args);
    expect(
      await add(
        '--date',
        '2026-03-02',
        '--pip-active',
        '40/95',
        '--pip-passive',
        '30/98',
        '--block',
        'ring-lowered-in-three',
        '--differential',
        '15',
      ),
    ).toMatchObject({ exit: 0, err: '' });
    expect(await add('--date', '2026-03-16', '--pip-active', '33/95', '--wear', '5')).toMatchObject({ exit: 0, err: '' });
    expect(await add('--date', '2026-03-09', '--pip-active', '41/95', '--comment', 'A late entry.')).toMatchObject({ exit: 0, err: '' });
    const read = await loadCase(join(folder, 'c.json'));
    expect(read.ok && read.value.visits.map(({ date }) => date)).toEqual(['2026-03-02', '2026-03-09', '2026-03-16']);
    // The length is that of `draw` for the same hand, block and differential.
    const drawn = await run('draw', fixture('demo-hand.json'), '--block', 'ring-lowered-in-three', '--differential', '15', '--json');
    expect(read.ok && read.value.visits[0]?.made).toMatchObject({ differential: 15, flatLength: JSON.parse(drawn.out).flatLength });

    const shown = await run('case', 'show', 'c.json');
    expect(shown.out).toMatch(/^DEMO-01, ring finger, left hand \(INVENTED: nobody was measured\)\n/);
    expect(shown.out).toMatch(/PIP active +40\/95 +41\/95 +33\/95\n/);
    expect(shown.out).not.toMatch(/[▁-█]/u);
    const next = await run('case', 'next', 'c.json');
    // Three readings over 14 days, 8 degrees: not certain yet, and harm was not asked about.
    expect(next.out).toContain('0-40-95 on 2026-03-02, 0-33-95 on 2026-03-16');
    expect(next.out).toMatch(/\nWAIT: .*by 2026-03-30\.\n {2}\(common practice, no source\)/);
    expect(next.out).toMatch(/! Not noted at this visit: pain, skin, /);

    expect(await run('case', 'chart', 'c.json', '--out', 'c.svg')).toMatchObject({ exit: 0, err: '' });
    const svg = await readFile(join(folder, 'c.svg'), 'utf8');
    expect(inkedPixels(rasterise(svg, 50))).toBeGreaterThan(10_000);
    expect(await run('case', 'chart', 'c.json', '--out', 'c.svg')).toMatchObject({
      exit: 1,
      err: expect.stringContaining('OUTPUT_EXISTS'),
    });
    expect(await run('case', 'chart', 'c.json', '--out', 'c.svg', '--force')).toMatchObject({ exit: 0 });
    expect(await readFile(join(folder, 'c.svg'), 'utf8')).toBe(svg);
    expect((await readdir(folder)).toSorted()).toEqual(['c.json', 'c.svg']);

    const report = await run('case', 'report', 'c.json', '--out', 'c.pdf', '--paper', 'letter');
    expect(report).toMatchObject({ exit: 0, err: '', out: expect.stringMatching(/c\.pdf {3}2 pages, Letter\n$/) });
    expect((await readFile(join(folder, 'c.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
    expect(await run('case', 'report', 'c.json', '--out', 'c.pdf')).toMatchObject({
      exit: 1,
      err: expect.stringContaining('OUTPUT_EXISTS'),
    });
    // A name in .svg gets the chart, the same as from case chart; any other ending and a wrong paper are told at once.
    expect(await run('case', 'report', 'c.json', '--out', 'r.svg')).toMatchObject({ exit: 0, err: '' });
    expect(await readFile(join(folder, 'r.svg'), 'utf8')).toBe(svg);
    expect(await run('case', 'report', 'c.json', '--out', 'r.txt', '--paper', 'a9')).toMatchObject({
      exit: 2,
      err: expect.stringMatching(/^error PAPER: [^\n]*\nerror FLAG: --out: [^\n]*must end in \.pdf[^\n]*\n$/),
    });
  });

  it('notes what was made from the pattern file that was cut', async () => {
    await run('case', 'new', 'c.json', '--hand', fixture('demo-hand.json'));
    await run('draw', fixture('demo-hand.json'), '--block', 'long-raised-in-three', '--differential', '17', '--out', '.');
    const files = await readdir(folder);
    const reports = [];
    for (const ending of ['.svg', '.dxf']) {
      const pattern = files.find((name) => name.endsWith(ending)) ?? '';
      expect(await run('case', 'add', 'c.json', '--date', '2026-03-02', '--pip-active', '0/60', '--pattern', pattern)).toMatchObject({
        exit: 0,
        err: '',
      });
      const read = await loadCase(join(folder, 'c.json'));
      reports.push(read.ok ? read.value.visits.at(-1)?.made : null);
    }
    const drawn = await run('draw', fixture('demo-hand.json'), '--block', 'long-raised-in-three', '--differential', '17', '--json');
    expect(reports[0]).toMatchObject({
      kind: 'strip',
      block: { id: 'long-raised-in-three' },
      differential: 17,
      flatLength: JSON.parse(drawn.out).flatLength,
    });
    expect(reports[1]).toEqual(reports[0]);
  });

  it('notes a plate from its pattern file, with its angle and options, and says what differs from the defaults', async () => {
    const hand = fixture('demo-hand-plate.json');
    await run('case', 'new', 'c.json', '--hand', hand);
    await run('draw', hand, '--plate', 'both', '--angle', '40', '--wing', '9', '--out', '.', '--formats', 'svg,pdf');
    for (const ending of ['.svg', '.pdf']) {
      const pattern = (await readdir(folder)).find((name) => name.endsWith(`both_mm${ending}`)) ?? '';
      const added = await run('case', 'add', 'c.json', '--date', '2026-03-02', '--pip-active', '30/80', '--pattern', pattern);
      expect(added).toMatchObject({ exit: 0, err: '' });
    }
    const read = await loadCase(join(folder, 'c.json'));
    const made = read.ok ? read.value.visits.map((visit) => visit.made) : [];
    expect(made[0]).toMatchObject({ kind: 'plate', faces: 'both', mpAngle: 40 });
    expect(made[1]).toEqual(made[0]);
    const file = JSON.parse(await readFile(join(folder, 'c.json'), 'utf8'));
    expect(file.visits[0].made).toMatchObject({ options: { wing: 9 } });
    expect(optionsText(file.visits[0].made)).toBe('Differs from the default: wing 9 mm (default 12).');
  });

  it("refuses another hand's pattern and another hand's measurements", async () => {
    await newCase();
    await run('draw', fixture('demo-hand.json'), '--block', 'long-raised-in-three', '--out', '.', '--formats', 'svg');
    const pattern = (await readdir(folder)).find((name) => name.endsWith('.svg')) ?? '';
    const added = await run(
      'case',
      'add',
      'c.json',
      '--date',
      '2026-03-02',
      '--pip-active',
      '0/60',
      '--pattern',
      pattern,
      '--hand',
      fixture('demo-hand.json'),
    );
    expect(added.exit).toBe(1);
    expect(added.err.match(/HAND_OF_ANOTHER/g)).toHaveLength(2);
  });

  it('takes a visit as JSON, flags winning, lengths in the units of each', async () => {
    await newCase();
    const visit = {
      date: '2026-03-02',
      goniometry: { pip: { active: { extensionDeficit: 40, flexion: 90 } } },
      measures: { units: 'cm', digits: { ring: { circumference: 5.3 } } },
    };
    await writeFile(join(folder, 'v.json'), JSON.stringify(visit));
    expect(
      await run('case', 'add', 'c.json', '--visit', 'v.json', '--pip-active', 'hyper 5/95', '--pip-circumference', '60'),
    ).toMatchObject({ exit: 0, err: '' });
    const read = await loadCase(join(folder, 'c.json'));
    expect(read.ok && read.value.visits[0]).toMatchObject({
      goniometry: { pip: { active: { extensionDeficit: -5, flexion: 95 } } },
      measures: { digits: { ring: { circumference: 53, pipCircumference: 60 } } },
    });
  });

  it('leaves a damaged file alone in every command, and never opens a case over a file', async () => {
    const text = '{"schema": "knucklewright/case@1", "code": "TEST-1", "si';
    await writeFile(join(folder, 'c.json'), text);
    for (const args of [
      ['add', 'c.json', '--date', '2026-03-02', '--pip-active', '0/60'],
      ['show', 'c.json'],
      ['next', 'c.json'],
      ['chart', 'c.json', '--out', 'c.svg'],
      ['report', 'c.json', '--out', 'c.pdf'],
    ]) {
      expect(await run('case', ...args)).toMatchObject({
        exit: 1,
        out: '',
        err: expect.stringMatching(/^error JSON_SYNTAX: c\.json: not JSON at line 1, column 57/),
      });
    }
    expect(await newCase()).toMatchObject({ exit: 1, err: expect.stringContaining('OUTPUT_EXISTS') });
    expect(await readFile(join(folder, 'c.json'), 'utf8')).toBe(text);
    expect(await readdir(folder)).toEqual(['c.json']);
  });

  it('loses neither visit when two commands add at once', async () => {
    await newCase();
    const weeks = ['02', '09', '16', '23'];
    const added = await Promise.all(
      weeks.map((day) => inProcess('case', 'add', 'c.json', '--date', `2026-03-${day}`, '--pip-active', '20/90')),
    );
    expect(added.map(({ exit, err }) => [exit, err])).toEqual(weeks.map(() => [0, '']));
    const read = await loadCase(join(folder, 'c.json'));
    expect(read.ok && read.value.visits.map(({ date }) => date.slice(8))).toEqual(weeks);
  });

  it('corrects and withdraws a visit by its day or number, and writes a letter of one page', async () => {
    await newCase();
    const add = (date: string, pip: string, ...more: string[]) =>
      run('case', 'add', 'c.json', '--date', date, '--pip-active', pip, '--all-well', ...more);
    await add('2026-03-02', '40/95', '--block', 'ring-lowered-in-three');
    await add('2026-03-09', '55/95', '--pain', '2', '--crps-signs', 'swelling,touch-hurts');
    const amend = (...args: string[]) => run('case', 'amend', 'c.json', ...args);
    expect(JSON.parse((await run('case', 'next', 'c.json', '--json')).out)).toMatchObject({
      steps: [{ rule: 'PAUSE', action: 'pause', figures: { measureAgain: true, causes: [{ loss: { lost: 15 } }] } }],
      slope: { motion: 'extension', degreesPerWeek: -15 },
    });
    expect(await amend('2026-03-09', '--pip-active', '36/95', '--remove', 'pain', '--why', 'Read off wrongly.')).toMatchObject({ exit: 0 });
    const read = async () => {
      const found = await loadCase(join(folder, 'c.json'));
      if (!found.ok) throw new Error(JSON.stringify(found.problems));
      return found.value;
    };
    expect((await read()).visits[1]).toMatchObject({
      goniometry: { pip: { active: { extensionDeficit: 36 } } },
      noted: { pain: null, crpsSigns: ['swelling', 'touchHurts'] },
    });
    for (const [args, why] of [
      [['2026-01-01', '--pain', '3'], '2 is 2026-03-09'],
      [['3', '--withdraw'], 'visits 1 to 2'],
      [['2'], 'nothing was said'],
      [['2', '--remove', 'pain'], 'not noted at this visit'],
      [['2', '--withdraw', '--pain', '3'], 'takes the whole visit out'],
      [['2', '--pain', '3', '--on', 'today'], 'is not a day'],
    ] as const) {
      expect(await amend(...args), args.join(' ')).toMatchObject({ exit: 2, out: '', err: expect.stringContaining(why) });
    }
    const letter = await run('case', 'report', 'c.json', '--letter', '--language', 'es', '--out', 'l.pdf');
    expect(letter).toMatchObject({ exit: 0, err: '', out: expect.stringMatching(/l\.pdf {3}1 página, A4\n$/) });
    expect(await amend('2', '--withdraw')).toMatchObject({ exit: 0 });
    expect((await read()).visits).toHaveLength(1);
    expect((await run('case', 'show', 'c.json')).out).toMatch(
      /Corrections\n {2}2026-03-09 {2}corrected: Read off wrongly\.\n {2}2026-03-09 {2}withdrawn\n/,
    );
  });

  it('names what is missing in one message when nobody can be asked', async () => {
    expect(await run('case', 'new', 'c.json')).toMatchObject({ exit: 2, err: expect.stringMatching(/--code, --side, --digit: missing/) });
    await newCase();
    const added = await run('case', 'add', 'c.json', '--json');
    // With --json the same stands on stdout as data.
    expect(JSON.parse(added.out)).toMatchObject({ schema: 'knucklewright/errors@1', exit: 2, errors: [{ code: 'FLAG' }] });
    expect(added).toMatchObject({ exit: 2, err: expect.stringMatching(/^error FLAG: --date .*--pip-active .*missing[^\n]*\n$/) });
  });

  it('asks at a terminal, and draws a sparkline there', async (context) => {
    needsReader(context, 'script');
    await newCase();
    const terminal = (args: string) =>
      spawn('script', ['-qec', `'${process.execPath}' '${command}' ${args}`, '/dev/null'], {
        cwd: folder,
        stdio: ['pipe', 'pipe', 'pipe'],
      });
    const child = terminal('case add c.json');
    const answers = [
      '2026-03-02',
      'y',
      '53',
      '',
      '',
      '',
      '-20/90',
      '20/90',
      '',
      '',
      '',
      'KW',
      '',
      '6',
      'yes',
      'no',
      '',
      '',
      'Asked and answered.',
    ];
    // "y" alone is taken by one key.
    const typed = (answer: string) => (answer === 'y' ? 'y' : `${answer}\n`);
    // Each answer is typed when its question stands there, as a person does.
    let prompts = 0;
    child.stdout.on('data', (part: Buffer) => {
      const asked = part.toString('utf8').split('> ').length - 1;
      for (let k = 0; k < asked; k++) child.stdin.write(typed(answers[prompts++] ?? ''));
    });
    const ran = await finished(child);
    expect(ran.exit).toBe(0);
    expect(ran.out).toContain('minus sign');
    expect(ran.out).toContain('visit of 2026-03-02 added');
    const read = await loadCase(join(folder, 'c.json'));
    expect(read.ok && read.value.visits).toMatchObject([
      {
        date: '2026-03-02',
        goniometry: { pip: { active: { extensionDeficit: 20, flexion: 90 } } },
        measures: { digits: { ring: { circumference: 53 } } },
        noted: {
          pain: 0,
          skin: 'ok',
          infection: false,
          crpsSigns: [],
          wear: 6,
          fits: true,
          redirects: false,
          weaning: null,
          comment: 'Asked and answered.',
        },
      },
    ]);
    const shown = await finished(terminal('case show c.json'));
    expect(shown.out).toMatch(/PIP active range {2}▆ {2}70 degrees/);
  });

  it.each(['case', 'visit'])('prints the schema of a %s', async (kind) => {
    const printed = await run('schema', kind);
    expect(JSON.parse(printed.out)).toMatchObject({ type: 'object', additionalProperties: false });
  });
});

describe('demo cases (invented)', { timeout: LONG }, () => {
  it.each([
    ['case-gains.json', 'keep', 'GAINING'],
    ['case-stalls.json', 'refit', 'FIT'],
    ['case-swells.json', 'pause', 'PAUSE'],
  ])('%s: %s', async (name, action, rule) => {
    await copyFile(fixture(name), join(folder, name));
    const next = await run('case', 'next', name, '--json');
    expect(JSON.parse(next.out)).toMatchObject({
      invented: true,
    });
    expect(JSON.parse(next.out).steps[0]).toMatchObject({ action, rule });
    const shown = JSON.parse((await run('case', 'show', name, '--json')).out);
    expect(shown).toMatchObject({ invented: true, note: expect.stringContaining('invented') });
    expect(shown.visits.length).toBeGreaterThanOrEqual(3);
    expect(await run('case', 'chart', name, '--out', 'chart.svg')).toMatchObject({ exit: 0 });
    expect(await readFile(join(folder, 'chart.svg'), 'utf8')).toContain('<title>INVENTED: nobody was measured</title>');
  });

  it('are files as the program writes them', async () => {
    for (const name of ['case-gains.json', 'case-stalls.json', 'case-swells.json']) {
      const read = await loadCase(fixture(name));
      expect(read.ok && `${JSON.stringify(read.value.file, null, 2)}\n`).toBe(await readFile(fixture(name), 'utf8'));
    }
  });
});
