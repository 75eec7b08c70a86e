import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { loadCase } from '../src/files/case-store.ts';
import { boxOf } from '../src/geometry/path.ts';
import { ALL_WELL } from '../src/hand/signs.ts';
import { blockOnPaper } from '../src/papers/block-on-paper.ts';
import { caseReport } from '../src/papers/case-report.ts';
import type { Report } from '../src/pattern/report.ts';
import type { Case } from '../src/record/case.ts';
import { caseChart } from '../src/record/case-chart.ts';
import { chartParts } from '../src/record/chart-frame.ts';
import { courseAdvice } from '../src/record/course/course-advice.ts';
import { ASSH_SCHEME } from '../src/record/total-active-motion.ts';
import type { PrintedSheet } from '../src/sheet/paper/page.ts';
import { drawingLayer, inkOf } from '../src/sheet/paper/page-layers.ts';
import { PAPERS, type Paper, printableBox } from '../src/sheet/paper/paper.ts';
import { layOutReport } from '../src/sheet/paper/report-pages.ts';
import { LANGUAGE_IDS, type Language } from '../src/words/language.ts';
import { RECORD_WORDS } from '../src/words/record/record-words.ts';
import { writeSheet } from '../src/writers/pdf/pdf.ts';
import { helveticaWidth } from '../src/writers/pdf/pdf-document.ts';
import { tried } from './by-night.ts';
import { collisions, corners, inkBox, overlap, rectangle, TOUCHING } from './page-boxes.ts';
import { MM_PER_POINT, pageSizes, pageText, tracePaths } from './read-pdf.ts';
import { needsReader } from './readers.ts';
import { plate, type SampleVisit, sampleCase, strip } from './sample-case.ts';

const folder = mkdtempSync(join(tmpdir(), 'case-report-'));
afterAll(() => rmSync(folder, { recursive: true }));
let files = 0;

const MARGIN = 10;
/** The widest that each column can be, and comments of the full length. */
const FULL = 'Tight at the radial edge after long use; worn at work, taken off at night. '.repeat(4).slice(0, 300).trim();
const motion = (hyperextension: number, flexion: number) => ({ hyperextension, flexion });

function fullVisit(k: number): SampleVisit {
  const wide = { active: motion(12.5, 88.5), passive: motion(15.5, 90.5) };
  return {
    pip: [40.5 - k, 90.5],
    passive: [38.5 - k, 95.5],
    rest: {
      goniometry: {
        mp: wide,
        dip: wide,
        pip: {
          active: { extensionDeficit: 40.5 - k, flexion: 90.5 },
          passive: { extensionDeficit: 38.5 - k, flexion: 95.5 },
        },
      },
      measures: { units: 'mm', digits: { ring: { circumference: 53, pipCircumference: 60.5 } } },
      ...ALL_WELL,
      skin: k % 2 === 0 ? 'marks' : 'ok',
      wear: 11.5,
      wearAgreed: 12,
      fits: true,
      redirects: false,
      comment: `${k + 1}: ${FULL}`.slice(0, 300).trim(),
      ...(k % 3 === 0 ? (k % 2 === 0 ? strip(20 + k / 4) : plate(30)) : {}),
    },
  };
}

const fullCase = (count: number): Case => sampleCase(Array.from({ length: count }, (_, k) => fullVisit(k)));
/** As little as a visit can have. */
const bareCase = (count: number): Case => sampleCase(Array.from({ length: count }, () => ({ pip: [20, 90] as const })));

function layOut(record: Case, paper: Paper = PAPERS.a4, language: Language = 'en'): PrintedSheet {
  const report = caseReport(record, language);
  if (!report.ok) throw new Error(JSON.stringify(report.problems));
  const sheet = layOutReport(report.value, { paper, margin: MARGIN, area: 'both' }, helveticaWidth);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
  return sheet.value;
}

function bytesOf(sheet: PrintedSheet): Uint8Array {
  const bytes = writeSheet(sheet, new Date('2026-03-02T00:00:00Z'), null);
  if (!bytes.ok) throw new Error(JSON.stringify(bytes.problems));
  return bytes.value;
}

function fileOf(sheet: PrintedSheet): string {
  const file = join(folder, `${++files}.pdf`);
  writeFileSync(file, bytesOf(sheet));
  return file;
}

async function demo(name: string): Promise<Case> {
  const read = await loadCase(join('fixtures', name));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** Lines of text that are not of a picture and lie on one. */
function onPicture(page: PrintedSheet['pages'][number]): readonly string[] {
  const pictures = page.layers.flatMap((layer) => {
    const strokes = layer.strokes.filter(({ pen, role }) => typeof pen !== 'string' && role !== 'row-rule');
    const letters = layer.texts
      .filter((t) => t.asStrokes)
      .map((t) => boxOf([{ closed: true, vertices: corners(t).map((p) => ({ ...p, bulge: 0 })) }]));
    const boxes = [...strokes.filter((s) => s.paths.length > 0).map((s) => boxOf(s.paths)), ...letters];
    return boxes;
  });
  return page.layers.flatMap((layer) =>
    layer.texts
      .filter((t) => !t.asStrokes && pictures.some((box) => overlap(corners(t), rectangle(box))))
      .map((t) => `"${t.text}" on the picture`),
  );
}

const PAPER_NAMES = ['a4', 'letter'] as const;
const cases = [
  ...[1, 5, 24].flatMap((count) =>
    PAPER_NAMES.flatMap((paper) => [
      [`${count} full visits, ${paper}`, fullCase(count), paper, 'en'] as const,
      [`${count} bare visits, ${paper}`, bareCase(count), paper, 'en'] as const,
    ]),
  ),
  ...(['es', 'de'] as const).map((language) => [`9 full visits, a4, ${language}`, fullCase(9), 'a4', language] as const),
];

describe('pages of a case report', () => {
  it.each(cases)('%s: nothing overlaps, nothing outside what A4 and Letter both print', (_, record, paper, language) => {
    const sheet = layOut(record, PAPERS[paper], language);
    const words = RECORD_WORDS[language];
    const room = printableBox(PAPERS[paper], 'portrait', MARGIN, 'both');
    for (const [k, page] of sheet.pages.entries()) {
      expect(collisions(page), page.title).toEqual([]);
      expect(onPicture(page), page.title).toEqual([]);
      const ink = inkBox(page);
      expect(ink.minX).toBeGreaterThanOrEqual(room.minX - TOUCHING);
      expect(ink.maxX).toBeLessThanOrEqual(room.maxX + TOUCHING);
      expect(ink.minY).toBeGreaterThanOrEqual(room.minY - TOUCHING);
      expect(ink.maxY).toBeLessThanOrEqual(room.maxY + TOUCHING);
      const texts = page.layers.flatMap((layer) => layer.texts.map((t) => t.text));
      expect(texts).toContain(words.page(k + 1, sheet.pages.length));
      expect(
        texts.some(
          (t) => t.includes(record.code) && t.includes(words.who(record).toUpperCase()) && t.includes(words.invented.split(':')[0] ?? ''),
        ),
      ).toBe(true);
    }
  });

  it('grow with the visits, and repeat the head of the table on each page where it goes on', () => {
    const sheets = [1, 5, 24].map((count) => layOut(fullCase(count)));
    expect(sheets.map(({ pages }) => pages.length)).toEqual([...sheets.map(({ pages }) => pages.length)].sort((a, b) => a - b));
    expect(sheets[2]?.pages.length).toBeGreaterThan(5);
    expect(
      sheets[2]?.pages.filter((page) => page.layers.some((layer) => layer.texts.some((t) => t.bold && t.text === 'visit' && !t.asStrokes)))
        .length,
    ).toBeGreaterThan(2);
    for (const page of sheets[2]?.pages ?? []) {
      const texts = page.layers.flatMap((layer) => layer.texts).filter((t) => !t.asStrokes);
      const dates = texts.filter((t) => t.bold && /^2026-\d\d-\d\d$/.test(t.text)).map((t) => t.text);
      // Dates run on within a table; a page that has an earlier one again has a second table.
      const tables = dates.length === 0 ? 0 : 1 + dates.filter((date, k) => k > 0 && date <= (dates[k - 1] ?? '')).length;
      expect(texts.filter((t) => t.bold && t.text === 'visit')).toHaveLength(tables);
    }
  });

  it('set no letter of a picture under 1.4 mm, on the narrowest paper under 1.2', () => {
    const least = (paper: Paper) =>
      Math.min(...layOut(fullCase(24), paper).pages.flatMap((page) => page.layers.flatMap((layer) => layer.texts.map((t) => t.height))));
    expect(least(PAPERS.a4)).toBeGreaterThanOrEqual(1.4);
    expect(least({ name: '190 x 260 mm', width: 190, height: 260 })).toBeGreaterThanOrEqual(1.2);
  });

  it('are refused on paper too small for a chart that can be read', () => {
    const report = caseReport(bareCase(1));
    if (!report.ok) throw new Error('no report');
    const paper = { name: '148 x 210 mm', width: 148, height: 210 };
    expect(layOutReport(report.value, { paper, margin: MARGIN, area: 'both' }, helveticaWidth)).toMatchObject({
      ok: false,
      problems: [{ code: 'PAPER_TOO_SMALL', message: expect.stringContaining('165 x 200') }],
    });
  });
});

describe('caseReport(record)', () => {
  it('is refused without a visit', () => {
    expect(caseReport(sampleCase([]))).toMatchObject({ ok: false, problems: [{ code: 'NO_VISITS' }] });
  });

  it('says every step of what next with its source and names no rule, and the scheme of the grades where they are given', async () => {
    for (const name of ['case-gains.json', 'case-stalls.json', 'case-swells.json']) {
      const record = await demo(name);
      const words = JSON.stringify(caseReport(record));
      for (const { rule, sourceText, message } of courseAdvice(record, 'en', { blockName: blockOnPaper(RECORD_WORDS.en) }).steps) {
        expect(words).toContain(`Source: ${sourceText}.`);
        expect(words).toContain(message);
        expect(words).not.toMatch(new RegExp(`Rule ${rule}|[A-Z]_[A-Z]|eometry version`));
      }
      // The swelling case has no MP or DIP measured, so no total.
      expect(words.includes(`Grades: ${ASSH_SCHEME.name}`)).toBe(name !== 'case-swells.json');
    }
  });

  it('is in one language throughout: the same sections, no English left in Spanish or German, nothing lost', async () => {
    for (const record of [await demo('case-gains.json'), await demo('case-stalls.json'), fullCase(5)]) {
      const reports = LANGUAGE_IDS.map((language) => {
        const report = caseReport(record, language);
        if (!report.ok) throw new Error(language);
        return report.value;
      });
      const shape = (report: Report) =>
        report.sections.map(({ lines, table, drawing }) => [
          lines.length,
          table?.rows.length,
          table?.columns.length,
          drawing?.items.filter(({ kind }) => kind === 'text').length === 0,
        ]);
      for (const report of reports) expect(shape(report)).toEqual(shape(reports[0] as Report));
      for (const report of reports.slice(1)) {
        const said = [
          report.title,
          ...report.under,
          ...report.sections.flatMap(({ heading, lines, table, drawing }) => [
            heading,
            ...lines.map(({ text }) => text),
            ...(table?.columns.map((column) => column.heading) ?? []),
            ...(table?.rows.flatMap(({ cells }) => cells) ?? []),
            ...(drawing?.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])) ?? []),
          ]),
        ].filter((text) => text !== record.note);
        const left = said.filter((text) =>
          /\b(the|and|of|is|to|with|not|visits?|worn|made|deficit|finger is|yes)\b/i.test(
            text.replace('American Society for Surgery of the Hand', '').replaceAll(/[A-Z][a-z]+ et al\.[^;)]*/g, ''),
          ),
        );
        expect(left).toEqual([]);
      }
    }
  });

  it('tells of what was made its options that differ from the default, the plate as noted, and what is not noted', () => {
    const made = { kind: 'strip', block: { id: 'sample', places: { long: 'enclosed', ring: 'lowered', little: 'enclosed' } } };
    const options = { differential: 25, thickness: 1.6, seam: 'pinch', width: 20, stretch: 0.05 };
    const record = sampleCase([
      { pip: [20, 90], rest: { made: { ...made, options, geometryVersion: '7', flatLength: 161.25 } } },
      { pip: [20, 90], rest: { made: { ...made, options: { width: 'auto', outline: 'staggered' }, geometryVersion: '7' } } },
      { pip: [20, 90], rest: plate(45) },
    ]);
    const report = caseReport(record);
    const lines = report.ok ? report.value.sections.find(({ heading }) => heading === 'What was made')?.lines : [];
    expect(lines).toEqual([
      {
        mark: 'A',
        text: '2026-01-05   Strip: ring lower than long and little, differential 25 degrees, 161.3 mm long. Differs from the default: sheet thickness 1.6 mm (default 2.4), seam pinched (default left to the program), stretch 0.05 (default 0).',
      },
      {
        mark: 'B',
        text: '2026-01-12   Strip: ring lower than long and little. No noted option differs from its default. Length not noted.',
      },
      { mark: 'C', text: '2026-01-19   Dorsal plate, MP at 45 degrees. Options not noted. Length not noted.' },
    ]);
  });
});

describe('charts of a long case', () => {
  it('show every visit, each beginning with the last of the one before, and never more than eight', () => {
    for (let count = 1; count <= 60; count++) {
      const parts = chartParts(count);
      expect([parts[0]?.first, parts.at(-1)?.last]).toEqual([0, count - 1]);
      for (const [k, { first, last }] of parts.entries()) {
        expect(last - first + 1).toBeLessThanOrEqual(8);
        if (k > 0) expect(first).toBe(parts[k - 1]?.last);
      }
    }
    expect(chartParts(8)).toHaveLength(1);
  });

  it('keep letters and scale of the whole case', () => {
    const record = fullCase(24);
    const whole = caseChart(record);
    const part = caseChart(record, { first: 10, last: 16 });
    if (!whole.ok || !part.ok) throw new Error('no chart');
    const texts = (drawing: typeof whole, role: string) =>
      drawing.ok ? drawing.value.items.flatMap((item) => (item.kind === 'text' && item.role === role ? [item.text] : [])) : [];
    // Made at every third visit: D at the tenth is still worn at the eleventh, E and F follow.
    expect(texts(whole, 'made-letter')).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H']);
    expect(texts(part, 'made-letter')).toEqual(['D', 'E', 'F']);
    expect(texts(part, 'scale-number')).toEqual(texts(whole, 'scale-number'));
    expect(part.value.title).toContain('visits 11 to 17 of 24');
  });
});

describe('drawingLayer(drawing, factor)', () => {
  it('keeps every shape and letter; nothing filled is drawn over a letter before it', () => {
    for (const record of [fullCase(1), fullCase(8), bareCase(5)]) {
      const drawing = caseChart(record);
      if (!drawing.ok) throw new Error('no chart');
      const { items } = drawing.value;
      const layer = drawingLayer(drawing.value, 0.5);
      expect(layer.strokes.length + layer.texts.length).toBe(items.length);
      for (const [k, item] of items.entries()) {
        if (item.kind !== 'text') continue;
        const alone = drawingLayer({ ...drawing.value, items: [item] }, 1).texts[0];
        if (!alone) throw new Error('no letter');
        const letters = inkOf({ ...drawing.value, items: [item] });
        const later = items.slice(k + 1).filter((other) => other.kind === 'shape' && other.fill !== null);
        for (const shape of later) {
          const box = inkOf({ ...drawing.value, items: [shape] });
          expect(overlap(rectangle(letters), rectangle(box)), `${item.text} under ${shape.role}`).toBe(false);
        }
      }
    }
  });
});

describe('the file by qpdf, pdfinfo, pdftotext and mutool', () => {
  it('is sound and has code, every date, rules, cautions; the same bytes each time', async (context) => {
    for (const reader of ['qpdf', 'poppler', 'mupdf-tools']) needsReader(context, reader);
    const records = [await demo('case-gains.json'), await demo('case-stalls.json'), await demo('case-swells.json'), fullCase(24)];
    for (const record of tried(records, (each) => records.indexOf(each) % 3 === 0)) {
      const sheet = layOut(record);
      const file = fileOf(sheet);
      expect(Buffer.compare(bytesOf(layOut(record)), bytesOf(sheet))).toBe(0);
      expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
      // ISO 216: A4 is 210 x 297 mm.
      const sizes = pageSizes(file);
      expect(sizes).toHaveLength(sheet.pages.length);
      for (const [width, height] of sizes) {
        expect(Math.abs(width - 210)).toBeLessThan(0.01 + MM_PER_POINT / 100);
        expect(Math.abs(height - 297)).toBeLessThan(0.01 + MM_PER_POINT / 100);
      }
      const pages = sizes.map((_, k) => pageText(file, k + 1));
      for (const [k, words] of pages.entries())
        for (const part of [record.code, 'INVENTED', `page ${k + 1} of ${pages.length}`]) expect(words).toContain(part);
      const all = pages.join(' ');
      for (const { date } of record.visits) expect(all).toContain(date);
      expect(all).not.toMatch(/Rule |[A-Z]{2,}_[A-Z]+|eometry version/);
      expect(all).toContain('the clinician decides');
    }
  });

  it('draws the chart as vectors where it was laid: each bar of the active range', async (context) => {
    needsReader(context, 'mupdf-tools');
    const record = await demo('case-gains.json');
    const sheet = layOut(record);
    const file = fileOf(sheet);
    expect(execFileSync('mutool', ['info', file], { encoding: 'utf8' })).not.toMatch(/Images \(/);
    const laid = sheet.pages[0]?.layers.flatMap((layer) => layer.strokes).filter(({ role }) => role === 'active-range') ?? [];
    expect(laid).toHaveLength(record.visits.length);
    const traced = tracePaths(file, 1)
      .filter(({ kind }) => kind === 'fill')
      .flatMap(({ subpaths }) => subpaths);
    for (const { paths } of laid) {
      const box = boxOf(paths);
      const near = traced.some((steps) => {
        const [xs, ys] = [steps.map(({ to }) => to.x), steps.map(({ to }) => to.y)];
        const off = [Math.min(...xs) - box.minX, Math.max(...xs) - box.maxX, Math.min(...ys) - box.minY, Math.max(...ys) - box.maxY];
        return off.every((d) => Math.abs(d) < 0.01);
      });
      expect(near).toBe(true);
    }
    // One degree is as high on every bar as on the scale of the chart.
    const heights = laid.map(({ paths }) => boxOf(paths).maxY - boxOf(paths).minY);
    const ranges = record.visits.map(({ goniometry: { pip } }) => pip.active.flexion - pip.active.extensionDeficit);
    for (const [k, height] of heights.entries()) expect(height / (ranges[k] ?? 0)).toBeCloseTo((heights[0] ?? 0) / (ranges[0] ?? 0), 9);
  });
});
