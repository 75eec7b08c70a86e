import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { loadCase } from '../src/files/case-store.ts';
import { layOutLetter } from '../src/papers/lay-out-letter.ts';
import type { Case } from '../src/record/case.ts';
import { COURSE_RULES } from '../src/record/course/course-rules.ts';
import { readCase } from '../src/record/read-case.ts';
import type { PrintedSheet } from '../src/sheet/paper/page.ts';
import { PAPERS, type Paper, printableBox } from '../src/sheet/paper/paper.ts';
import { type ClinicLines, NO_CLINIC } from '../src/sheet/paper/sheet-settings.ts';
import { LANGUAGE_IDS, type Language } from '../src/words/language.ts';
import { writeSheet } from '../src/writers/pdf/pdf.ts';
import { helveticaWidth } from '../src/writers/pdf/pdf-document.ts';
import { collisions, inkBox, TOUCHING } from './page-boxes.ts';
import { pageSizes, pageText } from './read-pdf.ts';
import { needsReader } from './readers.ts';
import { type CourseVisit, sampleCourse } from './sample-course.ts';

const folder = mkdtempSync(join(tmpdir(), 'case-letter-'));
afterAll(() => rmSync(folder, { recursive: true }));
const MARGIN = 10;
const PAPER_NAMES = ['a4', 'letter'] as const;

function layOut(record: Case, language: Language = 'en', paper: Paper = PAPERS.a4, clinic: ClinicLines = NO_CLINIC): PrintedSheet {
  const sheet = layOutLetter(record, language, { paper, margin: MARGIN, area: 'both' }, helveticaWidth, clinic);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
  return sheet.value;
}

const textsOf = (sheet: PrintedSheet) =>
  sheet.pages.flatMap(({ layers }) => layers.flatMap((layer) => layer.texts.map(({ text }) => text)));
const wordsOf = (sheet: PrintedSheet) => textsOf(sheet).join(' ');

/** Everything that a letter can hold, at its widest, and as many steps as can stand beside each other. */
const full: readonly CourseVisit[] = Array.from({ length: 24 }, (_, k): CourseVisit => {
  const wide = { active: { hyperextension: 12.5, flexion: 88.5 }, passive: { hyperextension: 15.5, flexion: 90.5 } };
  const made = k % 4 === 0 ? { made: k % 8 === 0 ? `strip for extension, ${20 + k / 8}` : 'plate at 45' } : {};
  const last =
    k === 23 ? { infection: true, skin: 'broken', colour: 'returned', pain: 9, crpsSigns: ['swelling', 'touchHurts'], fits: false } : {};
  const goniometry = { mp: wide, dip: wide, pip: { active: { extensionDeficit: 30.5 + k, flexion: 88.5 }, passive: wide.passive } };
  return [7 * k, '30/90', { pain: 3, wear: 1.5, wearAgreed: 11.5, girth: 53 + k, goal: 12.5, ...made, ...last, goniometry }];
});
const bare: readonly CourseVisit[] = [[0, '20/90']];

async function demo(name: string): Promise<Case> {
  const read = await loadCase(join('fixtures', name));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('the letter on a case', () => {
  it.each(LANGUAGE_IDS.flatMap((language) => PAPER_NAMES.map((paper) => [language, paper] as const)))(
    'in %s on %s is one page, nothing overlaps, nothing outside what can be printed',
    async (language, paper) => {
      const cases = [
        sampleCourse(full),
        sampleCourse(bare),
        await demo('case-gains.json'),
        await demo('case-stalls.json'),
        await demo('case-swells.json'),
      ];
      const room = printableBox(PAPERS[paper], 'portrait', MARGIN, 'both');
      for (const record of cases) {
        const sheet = layOut(record, language, PAPERS[paper]);
        expect(sheet.pages).toHaveLength(1);
        const [page] = sheet.pages;
        if (!page) throw new Error('no page');
        expect(collisions(page), record.code).toEqual([]);
        const ink = inkBox(page);
        expect(ink.minX).toBeGreaterThanOrEqual(room.minX - TOUCHING);
        expect(ink.maxX).toBeLessThanOrEqual(room.maxX + TOUCHING);
        expect(ink.minY).toBeGreaterThanOrEqual(room.minY - TOUCHING);
        expect(ink.maxY).toBeLessThanOrEqual(room.maxY + TOUCHING);
        expect(Math.min(...page.layers.flatMap((layer) => layer.texts.map(({ height }) => height)))).toBeGreaterThanOrEqual(1.2);
      }
    },
  );

  it('says who, the course in one sentence, motion both ways, what was made, the goal and the advice, in that order', () => {
    const record = sampleCourse(
      [
        [0, '40/90', { made: 'strip for extension, 20', passive: '30/100', wearAgreed: 6 }],
        ...[36, 32, 28, 24, 18, 12, 8].map((deficit, k): CourseVisit => [7 * (k + 1), `${deficit}/92`, { wear: 6, passive: '4/100' }]),
        [56, '4/95', { wear: 6, passive: '2/100' }],
      ],
      {},
    );
    const words = wordsOf(layOut(record));
    const parts = [
      'TEST-1',
      'Ring finger, left hand.',
      'Active PIP motion 0-40-90 to 0-4-95 in 8 weeks, worn 6 hours a day.',
      'lacks 40, bends to 90',
      '0-4-95 (lacks 4, bends to 95)',
      'Relative motion orthosis: ring finger held lower than long finger and little finger, by 20 degrees at the MP joint.',
      'No more than 5 degrees lacking. Flexion is compared with the usual 100.',
      'Keep: PIP extension gains',
      'Clinician',
      'Signature',
      'Date',
    ];
    const places = parts.map((part) => words.replace(/ {2,}/g, ' ').indexOf(part));
    expect(
      places.every((place) => place >= 0),
      JSON.stringify(parts.filter((_, k) => (places[k] ?? -1) < 0)),
    ).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it("has the hand file's diagnosis and weeks, and the totals with what they are measured against", async () => {
    const gains = await demo('case-gains.json');
    const file = JSON.parse(JSON.stringify(gains.file));
    file.hand.target = { ...file.hand.target, diagnosis: 'Boutonniere, closed', weeks: 6 };
    const read = readCase(file);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const words = wordsOf(layOut(read.value));
    expect(words).toContain('Ring finger, left hand; Boutonniere, closed; 6 weeks since injury or operation at the first visit.');
    expect(words).toContain("235, 90.4 % of the other hand's");
    expect(wordsOf(layOut(read.value, 'de'))).toContain('235, 90,4 % der anderen Hand');
  });

  it('has no name of a rule, of a block or of the program in it', async () => {
    for (const record of [sampleCourse(full), await demo('case-gains.json'), await demo('case-swells.json')]) {
      for (const language of LANGUAGE_IDS) {
        const words = wordsOf(layOut(record, language));
        for (const { rule } of COURSE_RULES.filter(({ rule: name }) => name.includes('_'))) expect(words).not.toContain(rule);
        expect(words).not.toMatch(/knucklewright|ring-(?:lowered|raised)|geometry version|undefined|NaN|\[object/i);
      }
    }
  });

  it('leads with the stop and whom to ask', () => {
    expect(wordsOf(layOut(sampleCourse(full)))).toContain('Stop, the same day: Take it off and leave it off.');
  });

  it("stands under the clinic's letterhead, on one page, clear of the page's number", () => {
    const clinic = { letterhead: ['Hand therapy, an invented clinic', '1 Example Street'], telephone: '0000 000000' };
    const bare = layOut(sampleCourse(full));
    const sheet = layOut(sampleCourse(full), 'en', PAPERS.a4, clinic);
    const [page] = sheet.pages;
    expect(sheet.pages).toHaveLength(1);
    const heights = [...clinic.letterhead, clinic.telephone].map(
      (line) => page?.layers.flatMap(({ texts }) => texts).find(({ text }) => text === line)?.at.y ?? Number.NaN,
    );
    const head = page?.layers[0]?.texts.find(({ bold }) => bold)?.at.y ?? Number.NaN;
    expect([...heights, head].toSorted((a, b) => b - a)).toEqual([...heights, head]);
    expect(collisions(page as NonNullable<typeof page>)).toEqual([]);
    expect(textsOf(bare)).not.toContain('0000 000000');
  });

  it('is refused without a visit', () => {
    const sheet = layOutLetter(sampleCourse([]), 'en', { paper: PAPERS.a4, margin: MARGIN, area: 'both' }, helveticaWidth, NO_CLINIC);
    expect(sheet).toMatchObject({ ok: false, problems: [{ code: 'NO_VISITS' }] });
  });

  it('is a sound file with its words, the same bytes each time (qpdf, pdftotext)', async (context) => {
    for (const reader of ['qpdf', 'poppler']) needsReader(context, reader);
    const bytes = () => {
      const written = writeSheet(layOut(sampleCourse(full)), new Date('2026-03-02T00:00:00Z'), null);
      if (!written.ok) throw new Error(JSON.stringify(written.problems));
      return written.value;
    };
    const file = join(folder, 'letter.pdf');
    writeFileSync(file, bytes());
    expect(Buffer.compare(readFileSync(file), bytes())).toBe(0);
    expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
    expect(pageSizes(file)).toHaveLength(1);
    expect(pageText(file, 1)).toContain('Assessment and next step');
  });
});
