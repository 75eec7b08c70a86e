import { basename } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The files that take longest, the longest first: begun last, one of them would run alone at the end. A machine that ran them before knows it better. */
const LONGEST = [
  'killed.test.ts',
  'fuzz.test.ts',
  'batch.test.ts',
  'batch-tables.test.ts',
  'batch-rerun.test.ts',
  'case-at-call.test.ts',
  'cutter-readers-plates.test.ts',
  'cutter-readers.test.ts',
  'never.test.ts',
  'accessible.test.ts',
  'case-command.test.ts',
  'fold.test.ts',
  'strip-files.test.ts',
];

/** Begins the long files of tests/ first, on a machine that never ran them as well. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) => {
      const at = LONGEST.indexOf(basename(moduleId));
      return at < 0 ? LONGEST.length : at;
    };
    return (await super.sort(files)).sort((a, b) => place(a) - place(b));
  }
}
