import { loadCase } from '../../files/case-store.ts';
import { caseReport as reportOfCase } from '../../papers/case-report.ts';
import { layOutLetter } from '../../papers/lay-out-letter.ts';
import type { Case } from '../../record/case.ts';
import type { PrintedSheet } from '../../sheet/paper/page.ts';
import { layOutReport } from '../../sheet/paper/report-pages.ts';
import { DEFAULT_SHEET_SETTINGS } from '../../sheet/paper/sheet-settings.ts';
import { collect, type Result, success } from '../../units/result.ts';
import type { Language } from '../../words/language.ts';
import { terminalSpeech } from '../../words/terminal/terminal-words.ts';
import { writeSheet } from '../../writers/pdf/pdf.ts';
import { helveticaWidth } from '../../writers/pdf/pdf-document.ts';
import { defineCommand } from '../define-command.ts';
import { languageFlag, readLanguageFlag } from '../flags/common-flags.ts';
import { argument, flag } from '../flags/flag.ts';
import { forceFlag } from '../flags/output-flags.ts';
import { clinicLines, paperFlags, readPaperFlags } from '../flags/sheet-flags.ts';
import { checkFileToSave, readEnding, saveFileAs } from '../save-file-as.ts';
import { writeCaseChart } from './case-chart.ts';

/** `case report`: the whole case as PDF; for a name in .svg its chart alone, as `case chart` does. */
export const caseReport = defineCommand({
  name: 'case report',
  group: 'Keep a case',
  about: 'print a case: chart, visits, what was made, what next; or a letter of one page',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [
    flag('--out <file.pdf>', 'PDF to write; a name in .svg gets the chart alone').makeOptionMandatory(),
    flag('--letter', 'one page for a surgeon or the notes: course, motion, chart, advice, lines to sign'),
    languageFlag,
    paperFlags,
    forceFlag,
  ],
  read: async ([path], given) => {
    const { out } = given;
    const force = given.force === true;
    const read = collect({
      settings: readPaperFlags(given),
      ending: readEnding(out, ['pdf', 'svg'], '.pdf, or in .svg for the chart alone'),
      place: await checkFileToSave(out, { force }),
      record: await loadCase(path),
    });
    const language = readLanguageFlag(given.language);
    const rest = { out, force, letter: given.letter === true, language, clinic: clinicLines(given) };
    return read.ok ? success({ ...read.value, ...rest }, read.warnings) : read;
  },
  make: async ({ settings, ending, record, out, force, letter, language, clinic }): Promise<Result<string>> => {
    if (ending === 'svg') return writeCaseChart(record, out, force, language);
    const laid = { ...settings, area: DEFAULT_SHEET_SETTINGS.area };
    const sheet = letter ? layOutLetter(record, language, laid, helveticaWidth, clinic) : layOut(record, language, laid);
    if (!sheet.ok) return sheet;
    // The day of the last visit: the clock is never read, so that the same case gives the same bytes.
    const bytes = writeSheet(sheet.value, new Date(`${record.visits.at(-1)?.date}T00:00:00Z`), null);
    if (!bytes.ok) return bytes;
    const saved = await saveFileAs(out, bytes.value, { force });
    if (!saved.ok) return saved;
    const pages = terminalSpeech(language).w.file.pages(`${sheet.value.pages.length}`, settings.paper.name);
    return success(`${saved.value.path}   ${pages}\n`);
  },
  report: { text: (said) => said },
});

function layOut(record: Case, language: Language, settings: Parameters<typeof layOutReport>[1]): Result<PrintedSheet> {
  const report = reportOfCase(record, language);
  return report.ok ? layOutReport(report.value, settings, helveticaWidth) : report;
}
