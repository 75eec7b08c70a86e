import { loadCase } from '../files/case-store.ts';
import type { Case } from '../record/case.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';

/** Every case of these files, or every problem of all of them. A case that stands in two files is told (`CASE_TWICE`). */
export async function loadCases(paths: readonly string[]): Promise<Result<readonly Case[]>> {
  const records: Case[] = [];
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  const from = new Map<string, string>();
  for (const path of paths) {
    const read = await loadCase(path);
    if (!read.ok) {
      problems.push(...read.problems);
      continue;
    }
    const name = `${read.value.code} ${read.value.side} ${read.value.digit}`;
    const before = from.get(name);
    if (before !== undefined)
      problems.push({
        code: 'CASE_TWICE',
        where: path,
        message: `${path} holds the case ${name}, and ${before} does too; name one of them.`,
        kind: 'input',
      });
    from.set(name, path);
    records.push(read.value);
    warnings.push(...read.warnings);
  }
  return problems.length > 0 ? failure(...problems) : success(records, warnings);
}
