import { loadCase } from '../files/case-store.ts';
import { caseTable, describeCase } from './describe-case.ts';
import { fail, warn } from './exit.ts';

/** Runs `case show`. */
export async function caseShow(path: string, json: boolean): Promise<void> {
  const record = await loadCase(path);
  if (!record.ok) return fail(record.problems);
  warn(record.warnings);
  process.stdout.write(
    json ? `${JSON.stringify(describeCase(record.value), null, 2)}\n` : caseTable(record.value, process.stdout.isTTY === true),
  );
}
