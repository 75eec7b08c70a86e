import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { sampleCase } from '../../tests/sample-case.ts';
import { ALL_WELL, HARM_KEYS } from '../hand/signs.ts';
import { askAll, type Question, type Talk } from './ask.ts';
import { wholeVisit } from './commands/case-add.ts';
import { newCaseFile } from './commands/case-new.ts';
import { readDate, visitQuestions } from './flags/visit-questions.ts';

/** A talk in which these lines are typed, and then the input ends. */
function typing(...lines: readonly string[]): Talk & { readonly shown: () => string } {
  const input = new PassThrough();
  const output = new PassThrough();
  let shown = '';
  output.setEncoding('utf8').on('data', (text: string) => {
    shown += text;
  });
  input.end(lines.map((line) => `${line}\n`).join(''));
  return { input, output, terminal: false, shown: () => shown };
}

const digits: Question = {
  key: 'n',
  label: 'A number',
  hint: '0 to 9',
  required: true,
  read: (text) => (/^\d$/.test(text) ? { ok: true, value: Number(text) } : { ok: false, reason: `"${text}" is not one of 0 to 9` }),
};

describe('askAll(questions, talk)', () => {
  it('asks again until the answer can be taken, and says why and what is allowed', async () => {
    const talk = typing('x', '', '7');
    expect(await askAll([digits], talk)).toEqual(new Map([['n', 7]]));
    expect(talk.shown()).toMatch(/A number\n {2}0 to 9\n/);
    expect(talk.shown()).toMatch(/"x" is not one of 0 to 9\.\n/);
    expect(talk.shown()).toMatch(/this is needed\.\n/);
  });

  it('passes over what is not needed', async () => {
    const talk = typing('', '3');
    expect(await askAll([{ ...digits, key: 'a', required: false }, digits], talk)).toEqual(new Map([['n', 3]]));
  });

  it('gives nothing when the input ends before the last answer', async () => {
    expect(await askAll([digits, { ...digits, key: 'm' }], typing('3'))).toBeNull();
  });
});

describe('visitQuestions(record)', () => {
  it('ask for harm first and stand in the order of measuring, each with its allowed range', () => {
    const questions = visitQuestions(sampleCase([]));
    expect(questions.map(({ key }) => key)).toEqual([
      'date',
      'allWell',
      ...HARM_KEYS,
      'measures.digits.ring.circumference',
      'measures.digits.ring.pipCircumference',
      ...['mp', 'pip', 'dip'].flatMap((joint) => [`goniometry.${joint}.active`, `goniometry.${joint}.passive`]),
      'rater',
      'repeated',
      'wear',
      'fits',
      'redirects',
      'wearAgreed',
      'weaning',
      'comment',
    ]);
    expect(questions.filter(({ required }) => required).map(({ key }) => key)).toEqual(['date', 'goniometry.pip.active']);
    expect(questions[9]?.hint).toContain('25 to 110 mm');
    expect(questions[13]?.hint).toContain('deficit 0 to 120, flexion 0 to 130 degrees');
  });
});

describe('readDate(text)', () => {
  it.each(['2026-03-31', ' 31.3.2026 ', '31/3/2026', '3/31/2026'])('takes %j for the day that the page takes it for', (text) =>
    expect(readDate(text)).toEqual({ ok: true, value: '2026-03-31' }),
  );

  it.each(['3/4/2026', '31.2.2026', '1.1.1999', 'today', ''])('asks again about %j', (text) =>
    expect(readDate(text)).toEqual({ ok: false, reason: expect.stringContaining('write it as 2026-03-31') }),
  );
});

describe('wholeVisit(flags, record, talk)', () => {
  it('asks for what no flag says', async () => {
    const talk = typing('y', '53', '', '', '', '25/90', '', '', '', '', '', '', '', '', '', '', '');
    const visit = await wholeVisit({ date: '2026-03-02' }, sampleCase([]), talk);
    expect(visit).toMatchObject({
      ok: true,
      value: {
        date: '2026-03-02',
        goniometry: { pip: { active: { extensionDeficit: 25, flexion: 90 } } },
        measures: { units: 'mm', digits: { ring: { circumference: 53 } } },
        ...ALL_WELL,
      },
    });
    expect(talk.shown()).not.toContain('Day of the visit');
  });

  it('asks for signs of harm alone when the flags say all that is needed, and for nothing when they say those too', async () => {
    const needed = { date: '2026-03-02', pipActive: '25/90' };
    const talk = typing('n', '4', 'broken', '', '', '', '', 'swelling,touch-hurts');
    const visit = await wholeVisit(needed, sampleCase([]), talk);
    expect(visit).toMatchObject({ ok: true, value: { pain: 4, skin: 'broken', crpsSigns: ['swelling', 'touchHurts'] } });
    // What was passed over is blank, not well.
    expect(visit.ok ? Object.keys(visit.value) : []).not.toContain('infection');
    expect(talk.shown()).not.toContain('Hours worn');
    const silent = typing();
    expect(await wholeVisit({ ...needed, allWell: true }, sampleCase([]), silent)).toMatchObject({ ok: true, value: ALL_WELL });
    expect(silent.shown()).toBe('');
  });

  it('lets a sign that is given stand beside "all well"', async () => {
    const flags = { date: '2026-03-02', pipActive: '25/90', allWell: true as const, pain: '2', skin: 'marks' };
    expect(await wholeVisit(flags, sampleCase([]), null)).toMatchObject({ value: { ...ALL_WELL, pain: 2, skin: 'marks' } });
  });

  it('names everything missing at once without a terminal', async () => {
    const visit = await wholeVisit({ comment: 'x' }, sampleCase([]), null);
    expect(visit).toMatchObject({
      ok: false,
      problems: [{ code: 'FLAG', message: expect.stringMatching(/--date.*--pip-active.*missing/) }],
    });
  });

  it('names every wrong flag at once', async () => {
    const flags = {
      date: 'today',
      pipActive: '-25/85',
      circumference: '5',
      wear: '25',
      fits: 'perhaps',
      pain: '11',
      skin: 'sore',
      crpsSigns: 'swelling,fever',
      rater: 'Smith',
      block: 'rign-raised-in-three',
      plateFaces: 'dorsal',
      comment: 'Mr X',
    };
    const visit = await wholeVisit(flags, sampleCase([]), null);
    expect(visit.ok ? [] : visit.problems.map(({ where }) => where)).toEqual([
      '--date',
      '--circumference',
      '--pip-active',
      '--pain',
      '--skin',
      '--crps-signs',
      '--fits',
      '--wear',
      '--rater',
      '--comment',
      '--block',
    ]);
    expect(visit.ok ? '' : visit.problems.at(-1)?.message).toContain('did you mean ring-raised-in-three?');
  });

  it('adds nothing when the input ends', async () => {
    expect(await wholeVisit({}, sampleCase([]), typing('2026-03-02'))).toMatchObject({ ok: false });
  });
});

describe('newCaseFile(flags, talk)', () => {
  it('asks for code, side and digit', async () => {
    const talk = typing('SMITH', 'K-7', 'lft', 'left', 'middle', 'long');
    expect(await newCaseFile({}, talk)).toMatchObject({ ok: true, value: { code: 'K-7', side: 'left', digit: 'long', visits: [] } });
    expect(talk.shown()).toMatch(/looks like a name/);
    expect(talk.shown()).toMatch(/did you mean left\?/);
  });

  it('names what is missing without a terminal', async () => {
    expect(await newCaseFile({ side: 'left' }, null)).toMatchObject({ ok: false, problems: [{ where: '--code, --digit' }] });
  });
});
