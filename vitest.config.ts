import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    globalSetup: './tests/build-once.ts',
    reporters: ['default', './tests/reporter.ts'],
    // Outside readers and pictures at 600 dpi take seconds on a small machine.
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
