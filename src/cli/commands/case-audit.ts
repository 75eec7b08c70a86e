import { loadCases } from '../../files/case-store.ts';
import { auditLimits, auditLines, auditReport } from '../../papers/audit-report.ts';
import { type Audit, auditOf } from '../../record/audit.ts';
import { layOutReport } from '../../sheet/paper/report-pages.ts';
import { DEFAULT_SHEET_SETTINGS } from '../../sheet/paper/sheet-settings.ts';
import { rounded } from '../../units/number.ts';
import { collect, failure, type Result, success } from '../../units/result.ts';
import type { Language } from '../../words/language.ts';
import { writeSheet } from '../../writers/pdf/pdf.ts';
import { helveticaWidth } from '../../writers/pdf/pdf-document.ts';
import { defineCommand } from '../define-command.ts';
import { languageFlag, readLanguageFlag } from '../flags/common-flags.ts';
import { argument, flag } from '../flags/flag.ts';
import { forceFlag, jsonFlag } from '../flags/output-flags.ts';
import { paperFlags, readPaperFlags } from '../flags/sheet-flags.ts';
import { checkFileToSave, readEnding, saveFileAs } from '../save-file-as.ts';

/** A fixed day: the same cases give the same bytes. */
const NO_DAY = new Date('2000-01-01T00:00:00Z');

interface Audited {
  readonly audit: Audit;
  readonly language: Language;
  readonly file: string | null;
}

/** `case audit`: what closed cases came to. */
export const caseAudit = defineCommand({
  name: 'case audit',
  group: 'Keep a case',
  about: 'what closed cases came to: how many gained 10 degrees or more, in how many weeks, with how many strips, why they were closed',
  args: [argument('<files...>', 'case files (JSON); open cases are not counted')],
  flags: [flag('--out <file.pdf>', 'print it as PDF as well'), paperFlags, languageFlag, forceFlag, jsonFlag],
  read: async ([files], given) => {
    const { out } = given;
    const force = given.force === true;
    const read = collect({
      paper: readPaperFlags(given),
      ending: out === undefined ? success(null) : readEnding(out, ['pdf'], '.pdf'),
      place: out === undefined ? success(null) : await checkFileToSave(out, { force }),
      records: await loadCases(files),
    });
    if (!read.ok) return read;
    const { records, paper } = read.value;
    return success({ audit: auditOf(records), out: out ?? null, force, paper, language: readLanguageFlag(given.language) }, read.warnings);
  },
  make: async ({ audit, out, force, paper, language }): Promise<Result<Audited>> => {
    if (audit.cases.length === 0) {
      const message = 'none of the cases is closed with two visits or more, so there is nothing to count. Close cases with case close.';
      return failure({ code: 'NOTHING_CLOSED', where: '', message, kind: 'refused' });
    }
    if (out === null) return success({ audit, language, file: null });
    const sheet = layOutReport(auditReport(audit, language), { ...paper, area: DEFAULT_SHEET_SETTINGS.area }, helveticaWidth);
    const bytes = sheet.ok ? writeSheet(sheet.value, NO_DAY, null) : sheet;
    if (!bytes.ok) return bytes;
    const saved = await saveFileAs(out, bytes.value, { force });
    return saved.ok ? success({ audit, language, file: saved.value.path }) : saved;
  },
  report: {
    schema: 'knucklewright/audit@1',
    text: ({ audit, language, file }) =>
      `${[...auditLines(audit, language), '', ...auditLimits(language), ...(file === null ? [] : ['', file])].join('\n')}\n`,
    json: ({ audit: { cases, ...audit }, file }, warnings) => ({
      ...audit,
      cases: cases.map((one) => ({ ...one, weeks: one.weeks === null ? null : rounded(one.weeks, 1) })),
      limits: auditLimits(),
      file,
      warnings,
    }),
  },
});
