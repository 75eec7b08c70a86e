import { changeCase, loadCase } from '../../files/case-store.ts';
import type { Case, Visit } from '../../record/case.ts';
import type { VisitFile } from '../../record/case-schema.ts';
import { readVisit } from '../../record/read-visit.ts';
import { withAmendment } from '../../record/write-case.ts';
import { tidyDay } from '../../units/day.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { describeCase } from '../describe-case.ts';
import { sayWaiting } from '../exit.ts';
import { argument, flag, flagProblem } from '../flags/flag.ts';
import { type VisitFlags, visitFlags, visitFromFlags } from '../flags/visit-flags.ts';
import { type PartialVisit, readComment, readDate } from '../flags/visit-questions.ts';
import { replaced, sameCase } from './case-add.ts';

/** `case amend`: corrects a visit or withdraws it; what stood before is kept in the file. */
export const caseAmend = defineCommand({
  name: 'case amend',
  group: 'Keep a case',
  about: 'correct a visit, or withdraw it; the file keeps what stood before',
  args: [argument('<file>', 'case file (JSON)'), argument('<visit>', 'the visit: its day, or its number from 1 as case show counts them')],
  flags: [
    visitFlags,
    flag('--withdraw', 'take the visit out of the course'),
    flag('--remove <names>', 'what to leave blank again, with commas between, as pain,fits,made'),
    flag('--why <text>', 'why; one line, never who the person is'),
    flag('--on <date>', 'day of the correction, YYYY-MM-DD; never taken from the clock'),
    flag('--json', 'print the case as JSON afterwards'),
  ],
  read: async ([path, visit], flags) => {
    const record = await loadCase(path);
    if (!record.ok) return record;
    const index = visitIndex(record.value, visit);
    if (!index.ok) return index;
    const note = readNote(flags);
    if (!note.ok) return note;
    const becomes = flags.withdraw ? withdrawn(flags) : await corrected(flags, flags.remove, record.value, index.value);
    if (!becomes.ok) return becomes;
    return success({ path, record: record.value, index: index.value, becomes: becomes.value, note: note.value }, becomes.warnings);
  },
  make: async ({ path, record, index, becomes, note }) => {
    const was = JSON.stringify(record.file.visits[index]);
    const changed = await changeCase(
      path,
      (now) =>
        sameCase(now, record) && JSON.stringify(now.file.visits[index]) === was
          ? withAmendment(now.file, index, becomes, note)
          : failure(replaced(path)),
      { onWait: sayWaiting(path) },
    );
    const date = record.visits[index]?.date ?? '';
    return changed.ok ? success({ path, date, withdrawn: becomes === null, record: changed.value }, changed.warnings) : changed;
  },
  report: {
    text: ({ path, date, withdrawn: gone }) =>
      `${path}: visit of ${date} ${gone ? 'withdrawn' : 'corrected'}; what stood before is kept in the file. What next: knucklewright case next ${path}\n`,
    json: ({ record }) => describeCase(record),
  },
});

/** The index of the visit that is meant by its day or its number. */
function visitIndex({ visits }: Case, meant: string): Result<number> {
  const refused = (why: string) => failure<number>(flagProblem('<visit>', why));
  const numbered = (shown: readonly Visit[]) => shown.map((visit) => `${visits.indexOf(visit) + 1} is ${visit.date}`).join(', ');
  if (visits.length === 0) return refused('the case has no visit yet, so there is nothing to correct');
  if (/^\d{1,3}$/.test(meant)) {
    const index = Number(meant) - 1;
    return index in visits ? success(index) : refused(`there is no visit ${meant}; the case has visits 1 to ${visits.length}`);
  }
  const found = visits.filter(({ date }) => date === tidyDay(meant));
  const [only] = found;
  if (only !== undefined && found.length === 1) return success(visits.indexOf(only));
  if (found.length > 1) return refused(`${meant} has ${found.length} visits; give the number: ${numbered(found)}`);
  return refused(`${quote(meant)} is no day or number of a visit; ${numbered(visits)}`);
}

function readNote({ why, on }: { readonly why?: string; readonly on?: string }): Result<{ why?: string; on?: string }> {
  const read = [
    ...(why === undefined ? [] : [['--why', readComment(why)] as const]),
    ...(on === undefined ? [] : [['--on', readDate(on)] as const]),
  ];
  const problems = read.flatMap(([name, value]) => (value.ok ? [] : [flagProblem(name, value.reason)]));
  if (problems.length > 0) return failure(...problems);
  return success({ ...(why === undefined ? {} : { why }), ...(on === undefined ? {} : { on }) });
}

const NOT_OF_THE_VISIT = ['withdraw', 'why', 'on', 'json', 'quiet', 'input'];

function withdrawn(flags: object): Result<null> {
  const others = Object.keys(flags).filter((key) => !NOT_OF_THE_VISIT.includes(key));
  if (others.length === 0) return success(null);
  return failure(flagProblem('--withdraw', 'takes the whole visit out; nothing else can be said of it at the same time'));
}

/** The visit as the flags correct it. A visit file takes its place as a whole. */
async function corrected(flags: VisitFlags, remove: string | undefined, record: Case, index: number): Promise<Result<VisitFile>> {
  const stands = (record.file.visits[index] ?? {}) as PartialVisit;
  const names = (remove ?? '').split(',').map((name) => name.trim());
  const wrong = names.find((name) => name !== '' && !Object.hasOwn(stands, name));
  if (wrong !== undefined) {
    const known = Object.keys(stands).filter((name) => name !== 'date' && name !== 'goniometry');
    return failure(
      flagProblem('--remove', `${quote(wrong)} is not noted at this visit; noted are ${known.join(', ') || 'day and motion alone'}`),
    );
  }
  const left = Object.fromEntries(Object.entries(stands).filter(([name]) => !names.includes(name)));
  const said = await visitFromFlags(flags, record, left);
  if (!said.ok) return said;
  const visit = readVisit(said.value, flags.visit);
  if (!visit.ok) return visit;
  if (JSON.stringify(visit.value.file) === JSON.stringify(stands)) {
    return failure(flagProblem('case amend', 'nothing was said that is not noted already; give what is to be corrected, or --withdraw'));
  }
  return success(visit.value.file, [...said.warnings, ...visit.warnings]);
}
