import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import LongestFirst from './tests/longest-first.ts';

// The build of pdfkit that a page uses, as in scripts/build.mjs: the same bytes everywhere.
const resolve = {
  alias: [{ find: /^pdfkit$/, replacement: fileURLToPath(new URL('node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)) }],
};
/** Outside readers and pictures at 600 dpi take seconds on a small machine, and a machine may be busy with other things; ms. */
const testTimeout = 60_000;
const setupFiles = './tests/seed.ts';
/** Replaces node:fs, which no other test may meet. */
const MOCKS = ['src/files/save-file.test.ts'];

export default defineConfig({
  test: {
    // On two cores vitest takes one worker by itself.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    reporters: ['default', './tests/reporter.ts'],
    projects: [
      {
        resolve,
        // Most of the time of a unit test is loading; without isolation each module is loaded once a worker.
        test: { name: 'unit', include: ['src/**/*.test.ts'], exclude: MOCKS, setupFiles, testTimeout, isolate: false },
      },
      { resolve, test: { name: 'mocked', include: MOCKS, setupFiles, testTimeout } },
      {
        resolve,
        test: {
          name: 'whole',
          include: ['tests/**/*.test.ts'],
          setupFiles,
          globalSetup: './tests/build-once.ts',
          testTimeout,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
