import { addVisit, loadCase } from '../../files/case-store.ts';
import { HARM_KEYS } from '../../hand/signs.ts';
import type { Case } from '../../record/case.ts';
import { readVisit } from '../../record/read-visit.ts';
import { counted } from '../../units/number.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import { askAll, personsTerminal, type Talk } from '../ask.ts';
import { defineCommand } from '../define-command.ts';
import { describeCase } from '../describe-case.ts';
import { sayWaiting } from '../exit.ts';
import { argument, flag, flagProblem } from '../flags/flag.ts';
import { ALL_WELL_KEY, allWell, HARM_QUESTIONS } from '../flags/noted-flags.ts';
import { type VisitFlags, visitFlags, visitFromFlags } from '../flags/visit-flags.ts';
import { lengthUnit, type PartialVisit, partialValue, visitQuestions, withAnswer, withPartialValue } from '../flags/visit-questions.ts';

/** `case add`: reads the case, the flags and the answers, and adds the visit under the file's lock. */
export const caseAdd = defineCommand({
  name: 'case add',
  group: 'Keep a case',
  about: 'add a visit; at a terminal it asks for what the flags do not say, signs of harm first',
  examples: ['case add case.json --date 2026-03-02 --pip-active 25/85', 'case add case.json --no-input --visit visit.json'],
  args: [argument('<file>', 'case file (JSON)')],
  flags: [visitFlags, flag('--json', 'print the case as JSON afterwards')],
  read: async ([path], flags) => {
    const record = await loadCase(path);
    if (!record.ok) return record;
    const draft = await wholeVisit(flags, record.value, personsTerminal());
    if (!draft.ok) return draft;
    const visit = readVisit(draft.value, flags.visit);
    return visit.ok ? success({ path, record: record.value, visit: visit.value }, [...draft.warnings, ...visit.warnings]) : visit;
  },
  make: async ({ path, record, visit }) => {
    // The person may have answered for minutes: the case is read again under the lock, and must still be that case.
    const added = await addVisit(path, (now) => (sameCase(now, record) ? success(visit.file) : failure(replaced(path))), {
      onWait: sayWaiting(path),
    });
    return added.ok ? success({ path, date: visit.visit.date, record: added.value }, added.warnings) : added;
  },
  report: {
    text: ({ path, date, record: { visits } }) =>
      `${path}: visit of ${date} added${beforeLast(visits, date)}, ${counted(visits.length, 'visit')} now. What next: knucklewright case next ${path}\n`,
    json: ({ record }) => describeCase(record),
  },
});

/**
 * The visit that the flags and, at a terminal, the answers make. Without a terminal one problem names everything needed that is missing.
 * @param talk the terminal, or null
 */
export async function wholeVisit(flags: VisitFlags, record: Case, talk: Talk | null): Promise<Result<PartialVisit>> {
  const said = await visitFromFlags(flags, record);
  if (!said.ok) return said;
  const open = visitQuestions(record).filter(({ key }) => partialValue(said.value, key) === undefined);
  const needed = open.filter(({ required }) => required);
  if (talk === null) {
    if (needed.length === 0) return said;
    const names = needed.map(({ key, label, hint }) => `${FLAGS[key] ?? kebabCase(key)} (${label}: ${hint})`);
    return failure(
      flagProblem(names.join('; '), 'missing; give them as flags or in the file of --visit, or run this at a terminal, which asks'),
    );
  }
  // Who gave everything that is needed by flags is asked for signs of harm alone, unless something was said of each.
  const harmSaid = HARM_KEYS.every((key) => partialValue(said.value, key) !== undefined);
  const harm = new Set(HARM_QUESTIONS.map(({ key }) => key));
  const asked = open.filter(({ key }) => (harm.has(key) ? !harmSaid : needed.length > 0));
  const answers = await askAll(asked, talk);
  if (answers === null) return failure(flagProblem('visit', 'the input ended before all was answered; nothing was added'));
  let draft = said.value;
  for (const [key, value] of answers) {
    if (key !== ALL_WELL_KEY) draft = withAnswer(draft, key, value, lengthUnit(record));
    else if (value === true) {
      for (const [sign, state] of allWell((path) => partialValue(said.value, path) !== undefined))
        draft = withPartialValue(draft, sign, state);
    }
  }
  return success(draft, said.warnings);
}

/** Advice goes by the last visit: who dates one before it, by a slip or a wrong calendar, is told. */
function beforeLast(visits: Case['visits'], date: string): string {
  const last = visits.at(-1)?.date ?? date;
  return last > date ? ` before that of ${last}, which stays the last` : '';
}

const FLAGS: Readonly<Record<string, string>> = { date: '--date', 'goniometry.pip.active': '--pip-active' };

export function sameCase(a: Case, b: Case): boolean {
  return a.code === b.code && a.side === b.side && a.digit === b.digit;
}

export function replaced(path: string) {
  const message = `${path} holds another case than when this began; nothing was added. Look at the file`;
  return { code: 'CASE_REPLACED', where: path, message, kind: 'input' } as const;
}
