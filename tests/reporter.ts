import type { Reporter, TestModule } from 'vitest/node';

interface Counts {
  passed: number;
  failed: number;
  skipped: number;
  /** How many tests were skipped for each reason. */
  readonly reasons: Map<string, number>;
}

/** Closes the run with one line that any reader of the output understands: `N passed, N failed, N skipped`. Stands last in the list of reporters. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const counts: Counts = { passed: 0, failed: unhandledErrors.length, skipped: 0, reasons: new Map() };
    for (const module of modules) count(module, counts);
    for (const [reason, times] of counts.reasons) process.stdout.write(`skipped ${times}: ${reason}\n`);
    process.stdout.write(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped\n`);
  }
}

function count(module: TestModule, counts: Counts): void {
  // A file that cannot be loaded, or a hook that fails, has no test to carry the failure.
  counts.failed += module.errors().length;
  for (const suite of module.children.allSuites()) counts.failed += suite.errors().length;
  for (const test of module.children.allTests()) {
    const result = test.result();
    if (result.state === 'passed') counts.passed++;
    else if (result.state === 'failed') counts.failed++;
    else {
      counts.skipped++;
      const reason = result.state === 'skipped' ? (result.note ?? 'marked to be skipped in the test itself') : 'did not run';
      counts.reasons.set(reason, (counts.reasons.get(reason) ?? 0) + 1);
    }
  }
}
