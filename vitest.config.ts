import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  // The build of pdfkit that a page uses, as in scripts/build.mjs: the same bytes everywhere.
  resolve: {
    alias: [{ find: /^pdfkit$/, replacement: fileURLToPath(new URL('node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)) }],
  },
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    globalSetup: './tests/build-once.ts',
    setupFiles: './tests/seed.ts',
    reporters: ['default', './tests/reporter.ts'],
    // Outside readers and pictures at 600 dpi take seconds on a small machine.
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
