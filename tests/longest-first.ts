import { basename } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The files that take longest, the longest first: begun last, one of them would run alone at the end. A machine that ran them before knows it better. */
const LONGEST = [
  'fuzz.test.ts',
  'accessible.test.ts',
  'readable.test.ts',
  'killed.test.ts',
  'never.test.ts',
  'never-printed.test.ts',
  'cutter-readers-plates.test.ts',
  'cutter-readers.test.ts',
  'fold.test.ts',
  'print.test.ts',
  'batch.test.ts',
  'batch-tables.test.ts',
  'sets.test.ts',
  'nested-plates.test.ts',
  'case-at-call.test.ts',
  'case-command.test.ts',
  'strip-files.test.ts',
];

/** One project after the other, since a worker that goes on with the same project has its modules: first those that wait for a browser. */
const PROJECTS = ['browser', 'whole', 'mocked', 'unit'];

/** Begins the long files of tests/ first, on a machine that never ran them as well. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ project, moduleId }: TestSpecification) => {
      const at = LONGEST.indexOf(basename(moduleId));
      return PROJECTS.indexOf(project.name) * (LONGEST.length + 1) + (at < 0 ? LONGEST.length : at);
    };
    return (await super.sort(files)).sort((a, b) => place(a) - place(b));
  }
}
