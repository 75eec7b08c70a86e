import { LARGEST_JSON_BYTES } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';
import { type CaseFile, MOST_VISITS, type VisitFile } from './case-schema.ts';
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

/** The case with one more visit, after those of the same and earlier days. Fails with `CASE_FULL`. */
export function withVisit(file: CaseFile, visit: VisitFile): Result<CaseFile> {
  if (file.visits.length >= MOST_VISITS) {
    const message = `the case has ${file.visits.length} visits, the most that one file holds; open a new case`;
    return failure({ code: 'CASE_FULL', where: 'visits', message, kind: 'input' });
  }
  const after = file.visits.findLastIndex((other) => other.date <= visit.date) + 1;
  return success({ ...file, visits: file.visits.toSpliced(after, 0, visit) });
}
