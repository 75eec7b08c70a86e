import { checkCaseCode } from '../hand/case-code.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import type { Case, Visit } from './case.ts';
import { caseProblems, commentProblem, knownKeys } from './case-problems.ts';
import { type CaseFile, caseSchema } from './case-schema.ts';
import { MIGRATIONS, type MigrationStep, migrateCase } from './migrate.ts';
import { checkVisit, measureProblems } from './read-visit.ts';

/**
 * A case from the text of a case file; see `readCase`. Besides its problems: `FILE_EMPTY`, `JSON_SYNTAX`, `FILE_TOO_LARGE`.
 * @param source name of the file, set before each message
 */
export function parseCaseText(text: string, source?: string): Result<Case> {
  if (text.trim() === '') {
    const message = `${source === undefined ? '' : `${source}: `}the file is empty; it was damaged or is not a case file. Take the last copy of it`;
    return failure({ code: 'FILE_EMPTY', where: '', message, kind: 'input' });
  }
  const json = parseJsonText(text, source);
  return json.ok ? readCase(json.value, source) : json;
}

/**
 * A case from parsed JSON of any version: form, code, ranges, the hand, each visit. All problems at once; every kind is `input`.
 * Problems: those of `migrateCase`, `caseProblems`, `checkVisit` and `readHand`, `CASE_CODE`, `HAND_OF_ANOTHER`. Visits come out by
 * date, whatever their order in the file.
 * @param source name of the file, set before each message
 * @param steps for tests: other steps between versions
 */
export function readCase(json: unknown, source?: string, steps: readonly MigrationStep[] = MIGRATIONS): Result<Case> {
  const present = migrateCase(json, steps);
  const read = present.ok ? readPresent(present.value) : present;
  if (read.ok || source === undefined) return read;
  return failure(...read.problems.map((problem) => ({ ...problem, message: `${source}: ${problem.message}` })));
}

function readPresent(json: unknown): Result<Case> {
  const form = caseSchema.safeParse(json);
  const known = (path: readonly PropertyKey[]) => knownKeys(caseSchema, path);
  const problems: Problem[] = form.success ? [] : [...caseProblems(form.error.issues, json, known)];
  problems.push(...codeProblems(getOwn(json, 'code')));
  const hand = readOwnHand(json);
  if (hand !== null && !hand.ok) problems.push(...hand.problems);
  if (!form.success) {
    const visits = getOwn(json, 'visits');
    if (Array.isArray(visits)) problems.push(...visits.flatMap((visit, k) => measureProblems(visit, `visits.${k}`)));
    return failure(...problems);
  }
  const warnings: Warning[] = [...(hand?.ok ? hand.warnings : [])];
  const visits: Visit[] = [];
  for (const [k, visit] of form.data.visits.entries()) {
    const checked = checkVisit(visit, `visits.${k}`);
    if (checked.ok) visits.push(checked.value);
    if (checked.ok) warnings.push(...checked.warnings);
    else problems.push(...checked.problems);
  }
  problems.push(...commentProblem(form.data.note, 'note'));
  for (const [k, { why, was }] of (form.data.amendments ?? []).entries()) {
    problems.push(...commentProblem(why, `amendments.${k}.why`), ...commentProblem(was.comment, `amendments.${k}.was.comment`));
  }
  problems.push(...commentProblem(form.data.closed?.note, 'closed.note'), ...closedProblems(form.data));
  if (problems.length > 0) return failure(...problems);
  return success(assemble(form.data, hand?.ok ? hand.value : null, visits), warnings);
}

function assemble(file: CaseFile, hand: Hand | null, visits: readonly Visit[]): Case {
  return {
    code: file.code,
    side: file.side,
    digit: file.digit,
    invented: file.invented ?? false,
    note: file.note ?? null,
    hand,
    visits: visits.toSorted(byDate),
    closed: file.closed ?? null,
    file: { ...file, visits: file.visits.toSorted(byDate) },
  };
}

/** `CLOSED_EARLY` for a case that was closed before one of its visits. */
function closedProblems({ closed, visits }: CaseFile): readonly Problem[] {
  const last = visits.toSorted(byDate).at(-1)?.date ?? '';
  if (closed === undefined || closed.date >= last) return [];
  const message = `closed.date: the case is closed on ${closed.date}, but has a visit on ${last}; give the day of that visit or a later one.`;
  return [{ code: 'CLOSED_EARLY', where: 'closed.date', message, kind: 'input' }];
}

/** Keeps the order of visits of one day: sorting is stable. */
function byDate(a: { readonly date: string }, b: { readonly date: string }): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}

/** The hand in the case file, with its path before each problem; null when there is none. */
function readOwnHand(json: unknown): Result<Hand> | null {
  const given = getOwn(json, 'hand');
  if (given === undefined) return null;
  const read = readHand(given);
  if (!read.ok) {
    return failure(
      ...read.problems.map((p) => ({
        ...p,
        where: p.where === '' ? 'hand' : `hand.${p.where}`,
        message: `hand: ${p.message}`,
        kind: 'input' as const,
      })),
    );
  }
  const other = handProblems(read.value, { code: getOwn(json, 'code'), side: getOwn(json, 'side') }, 'hand');
  return other.length > 0 ? failure(...other) : success(read.value, read.warnings);
}

/** `HAND_OF_ANOTHER` for a hand whose code or side is not the case's. */
export function handProblems(
  hand: Pick<Hand, 'code' | 'side'>,
  owner: { readonly code: unknown; readonly side: unknown },
  where: string,
): Problem[] {
  return (['code', 'side'] as const)
    .filter((key) => hand[key] !== owner[key])
    .map((key) => {
      const message = `${where}: its ${key} is ${hand[key]}, that of the case ${quote(owner[key])}; a case holds one hand only.`;
      return { code: 'HAND_OF_ANOTHER', where: `${where}.${key}`, message, kind: 'input' };
    });
}

function codeProblems(code: unknown): Problem[] {
  if (typeof code !== 'string') return [];
  const checked = checkCaseCode(code);
  return checked.ok ? [] : [{ code: 'CASE_CODE', where: 'code', message: `code: ${checked.reason}.`, kind: 'input' }];
}
