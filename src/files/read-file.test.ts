import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../tests/run-command.ts';
import { samplePattern } from '../../tests/sample-pattern.ts';
import { svgNodeWriter } from '../writers/svg/svg-node.ts';
import { embeddedInputs } from './drawing-set.ts';
import { readHead, readText } from './read-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'read-'));
afterAll(() => rmSync(folder, { recursive: true }));
/** Control characters but line ends, and what turns writing round. */
const RAW = /(?!\n)[\p{Cc}\p{Cf}]/u;
const DEMO = join(import.meta.dirname, '../../fixtures/demo-hand.json');

function inUtf16(text: string, order: 'le' | 'be', mark: boolean): Buffer {
  const little = Buffer.from(`${mark ? '\uFEFF' : ''}${text}`, 'utf16le');
  return order === 'le' ? little : little.swap16();
}

describe('readText(path)', () => {
  it.each([
    ['le', true],
    ['be', true],
    ['le', false],
    ['be', false],
  ] as const)('reads UTF-16 %s, with its mark %s, as editors on Windows save it', async (order, mark) => {
    const path = join(folder, `${order}-${mark}.json`);
    const text = readFileSync(DEMO, 'utf8');
    writeFileSync(path, inUtf16(text, order, mark));
    const read = await readText(path);
    expect(read.ok && read.value.replace('\uFEFF', '')).toBe(text);
  });

  it.runIf(process.platform !== 'win32')('refuses a pipe without waiting, and says what to do, wherever a file is named', async () => {
    const pipe = join(folder, 'pipe.json');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    expect(await readText(pipe)).toMatchObject({
      ok: false,
      problems: [
        { message: expect.stringContaining('Give it as standard input and write - in place of its name, or save what it gives in a file') },
      ],
    });
    expect((await readHead(pipe, 10)).ok).toBe(false);
    const { exit, err } = await runCommand('draw', DEMO, '--cutter', pipe, '--out', join(folder, 'never'));
    expect([exit, err]).toEqual([1, expect.stringContaining('is a pipe or a device')]);
  });
});

it('what a drawing is, redraw tells as inspect does: in UTF-16, packed, behind a comment', () => {
  const written = svgNodeWriter.write(samplePattern);
  if (!written.ok) throw new Error('the sample is written');
  const svg = String(written.value);
  for (const bytes of [
    Buffer.from(svg),
    inUtf16(svg, 'le', true),
    gzipSync(svg),
    Buffer.from(svg.replace('<svg', '<!-- by hand -->\n<svg')),
  ])
    expect(embeddedInputs(bytes)).toMatchObject({ ok: true, value: { geometryVersion: 'sample' } });
  expect(embeddedInputs(gzipSync(svg).subarray(0, 300))).toMatchObject({ ok: false, problems: [{ code: 'FILE_KIND' }] });
});

it('a file name that a terminal would obey is shown with escapes, in messages and in JSON', async () => {
  const path = join(folder, 'a\u001b[31m\u009b1m\u202eb.svg');
  const missing = await runCommand('inspect', path);
  expect(missing.err).toContain('a\\u{1b}[31m\\u{9b}1m\\u{202e}b.svg');
  writeFileSync(path, '<svg xmlns="http://www.w3.org/2000/svg"/>');
  const found = await runCommand('inspect', path, '--json');
  expect(found.out).not.toMatch(RAW);
  expect(JSON.parse(found.out).file).toBe(path);
  expect((await runCommand('inspect', path)).out).not.toMatch(RAW);
});
