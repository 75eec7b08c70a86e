import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { HOSTILE_FILES } from './hostile-files.ts';
import { measured } from './measured.ts';

/** Of the processor, by the kernel's own count of the command and all that it began: a busy machine adds little. */
const MOST_SECONDS = 5;
const MOST_MEGABYTES = 500;
/** What a person can still read. Characters */
const MOST_PRINTED = 20_000;

const byNight = process.env.KNUCKLEWRIGHT_NIGHTLY !== undefined;
const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('a file that is made to hold the program up', () => {
  it.each(HOSTILE_FILES.filter((file) => byNight || file.byDay).map((file) => [file.name, file] as const))('%s', (_, file) => {
    const { exit, seconds, megabytes, out, err, bytes } = measured(file, folder);
    expect(bytes).toBeLessThanOrEqual(1_000_100);
    expect(err).not.toMatch(/FAULT|\n\s+at /);
    expect([0, 1, 3]).toContain(exit);
    expect(out.length + err.length).toBeLessThan(MOST_PRINTED);
    expect(seconds).toBeLessThan(MOST_SECONDS);
    expect(megabytes).toBeLessThan(MOST_MEGABYTES);
  });
});

it('knows each of these files by its own name', () => {
  expect(new Set(HOSTILE_FILES.map(({ name }) => name)).size).toBe(HOSTILE_FILES.length);
});
