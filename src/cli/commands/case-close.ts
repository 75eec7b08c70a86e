import { changeCase, loadCase } from '../../files/case-store.ts';
import { CLOSE_REASONS, type ClosedFile } from '../../record/case-schema.ts';
import { closedText } from '../../record/case-text.ts';
import { withClosed } from '../../record/write-case.ts';
import { collect, failure, type Problem, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { describeCase } from '../describe-case.ts';
import { sayWaiting } from '../exit.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';
import { readComment, readDate } from '../flags/visit-questions.ts';
import { replaced, sameCase } from './case-add.ts';

const flags = [
  flag('--date <date>', 'day of closing, YYYY-MM-DD, not before the last visit; never taken from the clock'),
  flag('--reason <word>', 'why: the goal was reached, no more was gained, harm, came no more (lost), or other').choices(CLOSE_REASONS),
  flag('--note <text>', 'one line about it; never who the person is'),
  flag('--reopen', 'open a closed case again'),
  flag('--json', 'print the case as JSON afterwards'),
] as const;
type CloseFlags = FlagsOf<typeof flags>;

/** `case close`: writes down that a case has ended, and why; closed cases are what an audit counts. */
export const caseClose = defineCommand({
  name: 'case close',
  group: 'Keep a case',
  about: 'close a case, and say why; it is read on and counted, and no visit is added to it',
  examples: ['case close case.json --date 2026-05-04 --reason goal'],
  args: [argument('<file>', 'case file (JSON)')],
  flags,
  read: async ([path], given) => {
    const read = collect({ closed: readClosed(given), record: await loadCase(path) });
    return read.ok ? success({ path, ...read.value }, read.warnings) : read;
  },
  make: async ({ path, record, closed }) => {
    const changed = await changeCase(
      path,
      (now) => (sameCase(now, record) ? withClosed(now.file, closed, path) : failure(replaced(path))),
      {
        onWait: sayWaiting(path),
      },
    );
    return changed.ok ? success({ path, record: changed.value }, changed.warnings) : changed;
  },
  report: {
    text: ({ path, record: { code, closed } }) => `${path}: case ${code} ${closed === null ? 'is open again' : closedText(closed)}\n`,
    json: ({ record }) => describeCase(record),
  },
});

/** What the flags say of the end; null to open it again. */
function readClosed({ date, reason, note, reopen }: CloseFlags): Result<ClosedFile | null> {
  if (reopen) {
    const others = [date, reason, note].some((value) => value !== undefined);
    return others ? failure(flagProblem('--reopen', 'opens the case again; leave --date, --reason and --note out')) : success(null);
  }
  const problems: Problem[] = [];
  if (date === undefined) problems.push(flagProblem('--date', 'missing; give the day of closing as 2026-03-31'));
  if (reason === undefined) problems.push(flagProblem('--reason', `missing; one of ${CLOSE_REASONS.join(', ')}`));
  const day = date === undefined ? null : readDate(date);
  const said = note === undefined ? null : readComment(note);
  if (day && !day.ok) problems.push(flagProblem('--date', day.reason));
  if (said && !said.ok) problems.push(flagProblem('--note', said.reason));
  if (date === undefined || reason === undefined || problems.length > 0) return failure(...problems);
  return success({ date, reason, ...(note === undefined ? {} : { note }) });
}
