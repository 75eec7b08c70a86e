import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
/** MB. Most objects of a test die young: with more room for them a seventh less of the processor is spent. */
const execArgv = ['--max-semi-space-size=64'];
/** Replaces node:fs, which no other test may meet. */
const MOCKS = ['src/files/save-file.test.ts'];
/** Files that a worker runs one after the other share its browser, see tests/page/browser.ts. */
const IN_BROWSER = ['tests/page/**/*.test.ts', 'tests/pdf-in-page.test.ts'];
/** The temporary folder of the files in a browser; tests/page/profiles.ts makes and removes it. */
const PROFILES = join(tmpdir(), `knucklewright-browsers-${process.pid}`);
const whole = { setupFiles, globalSetup: './tests/build-once.ts', testTimeout, hookTimeout: 60_000, execArgv };

export default defineConfig({
  test: {
    // On two cores vitest takes one worker by itself.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    reporters: ['default', './tests/reporter.ts'],
    projects: [
      {
        resolve,
        // Most of the time of a test is loading; without isolation each module is loaded once a worker, and code that has run before is fast.
        test: { name: 'unit', include: ['src/**/*.test.ts'], exclude: MOCKS, setupFiles, testTimeout, execArgv, isolate: false },
      },
      { resolve, test: { name: 'mocked', include: MOCKS, setupFiles, testTimeout } },
      { resolve, test: { ...whole, name: 'whole', include: ['tests/**/*.test.ts'], exclude: IN_BROWSER, isolate: false } },
      {
        resolve,
        test: {
          ...whole,
          name: 'browser',
          include: IN_BROWSER,
          isolate: false,
          globalSetup: [whole.globalSetup, './tests/page/profiles.ts'],
          env: { TMPDIR: PROFILES },
          // What a page comes to is waited for as long on a busy machine as the driver waits for an element, ms.
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
