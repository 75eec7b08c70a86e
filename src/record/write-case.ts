import { LARGEST_JSON_BYTES } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';
import { type AmendmentFile, type CaseFile, type ClosedFile, MOST_VISITS, type VisitFile } from './case-schema.ts';
import { readCase } from './read-case.ts';

/**
 * The text of a case file: JSON, two blanks a level, a line break at the end; the same for the same case. What would not be read again
 * is not written: problems of `readCase`, or `FILE_TOO_LARGE`.
 */
export function caseText(file: CaseFile): Result<string> {
  const read = readCase(file);
  if (!read.ok) return read;
  const text = `${JSON.stringify(read.value.file, null, 2)}\n`;
  if (new TextEncoder().encode(text).length > LARGEST_JSON_BYTES) {
    const message = `the case would be larger than ${LARGEST_JSON_BYTES} bytes, the most that is read; open a new case`;
    return failure({ code: 'FILE_TOO_LARGE', where: '', message, kind: 'input' });
  }
  return success(text);
}

/** The case with one more visit, after those of the same and earlier days; `name` is what a message calls the case. Fails with `CASE_CLOSED`, `CASE_FULL`. */
export function withVisit(file: CaseFile, visit: VisitFile, name = 'the case'): Result<CaseFile> {
  if (file.closed !== undefined) {
    const message = `${name} was closed on ${file.closed.date} (${file.closed.reason}); open it again first (case close --reopen), or open a new case`;
    return failure({ code: 'CASE_CLOSED', where: 'closed', message, kind: 'input' });
  }
  if (file.visits.length >= MOST_VISITS) {
    const message = `${name} has ${file.visits.length} visits, the most that one file holds; open a new case`;
    return failure({ code: 'CASE_FULL', where: 'visits', message, kind: 'input' });
  }
  const after = file.visits.findLastIndex((other) => other.date <= visit.date) + 1;
  return success({ ...file, visits: file.visits.toSpliced(after, 0, visit) });
}

/** The case closed, or open again where nothing is said of it. Fails with `CASE_CLOSED` when it is closed already, `CASE_OPEN` when it is open. */
export function withClosed(file: CaseFile, closed: ClosedFile | null, name: string): Result<CaseFile> {
  if (closed !== null && file.closed !== undefined) {
    const message = `${name} was closed on ${file.closed.date} already (${file.closed.reason}); open it again first (case close --reopen)`;
    return failure({ code: 'CASE_CLOSED', where: 'closed', message, kind: 'input' });
  }
  if (closed === null && file.closed === undefined)
    return failure({ code: 'CASE_OPEN', where: 'closed', message: `${name} is open already`, kind: 'input' });
  const { closed: _before, ...open } = file;
  return success(closed === null ? open : { ...open, closed });
}

/** What a correction says: why, and on which day. */
export interface AmendmentNote {
  readonly why?: string | undefined;
  readonly on?: string | undefined;
}

/**
 * The case with a visit corrected, or withdrawn where nothing takes its place; what stood before is kept among the amendments. Fails with
 * `CASE_FULL` when no more of them fit.
 * @param index of the visit, from 0, in the order of `visits`
 */
export function withAmendment(file: CaseFile, index: number, becomes: VisitFile | null, { why, on }: AmendmentNote): Result<CaseFile> {
  const was = file.visits[index];
  if (was === undefined) throw new RangeError(`there is no visit ${index} in a case of ${file.visits.length}`);
  const amendments = file.amendments ?? [];
  if (amendments.length >= MOST_VISITS) {
    const message = `the case has ${amendments.length} corrections, the most that one file holds; open a new case`;
    return failure({ code: 'CASE_FULL', where: 'amendments', message, kind: 'input' });
  }
  const amendment: AmendmentFile = {
    kind: becomes === null ? 'withdrawn' : 'corrected',
    ...(on === undefined ? {} : { on }),
    ...(why === undefined ? {} : { why }),
    was,
    ...(becomes === null ? {} : { becameDate: becomes.date }),
  };
  const visits = becomes === null ? file.visits.toSpliced(index, 1) : file.visits.with(index, becomes);
  return success({ ...file, visits, amendments: [...amendments, amendment] });
}
