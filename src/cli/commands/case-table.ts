import { loadCases } from '../../files/case-store.ts';
import { caseTable as tableOfCases } from '../../record/case-table.ts';
import { csvLine } from '../../sheet/plastic/csv-text.ts';
import { counted } from '../../units/number.ts';
import { collect, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { argument, flag } from '../flags/flag.ts';
import { forceFlag } from '../flags/output-flags.ts';
import { checkFileToSave, readEnding, saveFileAs } from '../save-file-as.ts';

/** `case table`: the visits of cases as CSV, for a statistician or a spreadsheet. */
export const caseTable = defineCommand({
  name: 'case table',
  group: 'Keep a case',
  about: 'the visits of cases as one table (CSV): a row a visit, without comments, days since the first visit in place of dates',
  examples: ['case table cases/*.json --out cases.csv'],
  args: [argument('<files...>', 'case files (JSON)')],
  flags: [
    flag('--out <file.csv>', 'table to write').makeOptionMandatory(),
    flag('--dates', 'the days of the visits themselves, in place of days since the first'),
    forceFlag,
  ],
  read: async ([files], given) => {
    const { out } = given;
    const force = given.force === true;
    const read = collect({
      ending: readEnding(out, ['csv'], '.csv'),
      place: await checkFileToSave(out, { force }),
      records: await loadCases(files),
    });
    return read.ok ? success({ records: read.value.records, out, force, dates: given.dates === true }, read.warnings) : read;
  },
  make: async ({ records, out, force, dates }): Promise<Result<string>> => {
    const rows = tableOfCases(records, dates);
    const saved = await saveFileAs(out, rows.map((row) => `${csvLine(row)}\n`).join(''), { force });
    return saved.ok ? success(`${saved.value.path}   ${counted(records.length, 'case')}, ${counted(rows.length - 1, 'visit')}\n`) : saved;
  },
  report: { text: (said) => said },
});
