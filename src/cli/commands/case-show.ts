import { loadCase } from '../../files/case-store.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { caseTable, describeCase } from '../describe-case.ts';
import { argument } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `case show`: the visits as a table. */
export const caseShow = defineCommand({
  name: 'case show',
  group: 'Keep a case',
  about: 'show a case as a table',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [jsonFlag],
  read: ([path]) => loadCase(path),
  make: (record) => success(record),
  report: {
    text: (record) => caseTable(record, process.stdout.isTTY === true),
    json: (record, warnings) => ({ ...describeCase(record), warnings }),
  },
});
