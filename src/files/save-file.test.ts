import type * as fs from 'node:fs/promises';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { renamePatiently } from './draft.ts';
import { checkWritable, outputFileName, saveFiles } from './save-file.ts';

/** Faults of the file system, switched on by a test. */
const faults = vi.hoisted(() => ({ link: '', renameTo: '', renames: [] as string[] }));

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof fs>();
  const fault = (code: string) => Object.assign(new Error(code), { code });
  return {
    ...real,
    link: (from: string, to: string) => (faults.link ? Promise.reject(fault(faults.link)) : real.link(from, to)),
    rename: (from: string, to: string) => {
      const next = faults.renames.shift();
      if (next !== undefined) return Promise.reject(fault(next));
      return faults.renameTo && to.endsWith(faults.renameTo) && from.endsWith('.draft')
        ? Promise.reject(fault('EIO'))
        : real.rename(from, to);
    },
  };
});

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'save-'));
});
afterEach(async () => {
  Object.assign(faults, { link: '', renameTo: '', renames: [] });
  await rm(folder, { recursive: true });
});

const content = async () =>
  Object.fromEntries(await Promise.all((await readdir(folder)).map(async (name) => [name, await readFile(join(folder, name), 'utf8')])));
const codes = (result: Awaited<ReturnType<typeof saveFiles>> | Awaited<ReturnType<typeof checkWritable>>) =>
  result.ok ? [] : result.problems.map((problem) => problem.code);
const two = [
  { name: 'a_mm.svg', content: 'é' },
  { name: 'b_mm.dxf', content: new Uint8Array([48, 10]) },
];

describe('outputFileName(text, extension)', () => {
  it.each([
    ['DEMO-01 ring raised', 'DEMO-01-ring-raised_mm.svg'],
    ['../../etc/passwd', 'etc-passwd_mm.svg'],
    ['C:\\hand\n', 'C-hand_mm.svg'],
    ['Hände', 'Hande_mm.svg'],
    ['\u624b', 'pattern_mm.svg'],
    ['', 'pattern_mm.svg'],
    ['already_mm', 'already_mm.svg'],
    ['con', 'con_mm.svg'],
    ['x'.repeat(300), `${'x'.repeat(80)}_mm.svg`],
  ])('makes of %j %s', (text, name) => {
    expect(outputFileName(text, 'svg')).toBe(name);
  });
});

describe('saveFiles(folder, files, options)', () => {
  it('writes all files, makes the folder and says how large they are', async () => {
    const inner = join(folder, 'x', 'y');
    const saved = await saveFiles(inner, two);
    expect(saved).toMatchObject({ ok: true, value: [{ name: 'a_mm.svg', path: join(inner, 'a_mm.svg'), bytes: 2 }, { bytes: 2 }] });
    expect(await readdir(inner)).toEqual(['a_mm.svg', 'b_mm.dxf']);
    expect(await readFile(join(inner, 'a_mm.svg'), 'utf8')).toBe('é');
  });

  it('touches nothing when one of the files exists, and names it', async () => {
    await writeFile(join(folder, 'b_mm.dxf'), 'old');
    const saved = await saveFiles(folder, two);
    expect(saved).toMatchObject({ ok: false, problems: [{ code: 'OUTPUT_EXISTS', message: expect.stringContaining('b_mm.dxf') }] });
    expect(await content()).toEqual({ 'b_mm.dxf': 'old' });
  });

  it('names files that exist in one message, of many the first three and how many more', async () => {
    const many = ['a', 'b', 'c', 'd', 'e'].map((stem) => ({ name: `${stem}_mm.svg`, content: stem }));
    await saveFiles(folder, many);
    const again = await saveFiles(folder, many);
    const message = again.ok ? '' : again.problems.map((problem) => problem.message).join('\n');
    expect(message).toBe(
      `${join(folder, 'a_mm.svg')}, b_mm.svg, c_mm.svg and 2 more exist and were not touched; choose another folder, or ask for them to be replaced (--force)`,
    );
  });

  it('leaves a write-protected file as it is even when told to replace', async () => {
    await writeFile(join(folder, 'b_mm.dxf'), 'old', { mode: 0o444 });
    for (const force of [false, true]) expect(codes(await saveFiles(folder, two, { force }))).toEqual(['OUTPUT_PROTECTED']);
    expect(await content()).toEqual({ 'b_mm.dxf': 'old' });
  });

  it('replaces when told to', async () => {
    await writeFile(join(folder, 'b_mm.dxf'), 'old');
    expect(codes(await saveFiles(folder, two, { force: true }))).toEqual([]);
    expect(await content()).toEqual({ 'a_mm.svg': 'é', 'b_mm.dxf': '0\n' });
  });

  it('takes everything back when a later file cannot be put in place', async () => {
    await writeFile(join(folder, 'a_mm.svg'), 'old');
    faults.renameTo = 'b_mm.dxf';
    const saved = await saveFiles(folder, two, { force: true });
    expect(saved).toMatchObject({
      ok: false,
      problems: [{ code: 'OUTPUT_FAILED', message: expect.stringContaining('nothing was written') }],
    });
    expect(await content()).toEqual({ 'a_mm.svg': 'old' });
  });

  it('takes new files back when a later one cannot be put in place', async () => {
    faults.link = 'EPERM';
    faults.renameTo = 'b_mm.dxf';
    expect(codes(await saveFiles(folder, two))).toEqual(['OUTPUT_FAILED']);
    expect(await content()).toEqual({});
  });

  it('works the same on a file system without hard links', async () => {
    faults.link = 'ENOTSUP';
    expect(codes(await saveFiles(folder, two))).toEqual([]);
    expect(codes(await saveFiles(folder, two))).toEqual(['OUTPUT_EXISTS']);
    expect(codes(await saveFiles(folder, two, { force: true }))).toEqual([]);
    expect(await content()).toEqual({ 'a_mm.svg': 'é', 'b_mm.dxf': '0\n' });
  });

  it('does not overwrite a file that appears after the check', async () => {
    faults.link = 'EEXIST';
    expect(codes(await saveFiles(folder, two))).toEqual(['OUTPUT_EXISTS']);
    expect(await content()).toEqual({});
  });

  it('leaves nothing behind when a file cannot be written', async () => {
    const tooLong = { name: `${'x'.repeat(300)}_mm.svg`, content: '' };
    expect(codes(await saveFiles(folder, [...two, tooLong]))).toEqual(['OUTPUT_FAILED']);
    expect(await content()).toEqual({});
  });

  it.each(['../a_mm.svg', 'x/a_mm.svg', '.hidden_mm.svg', 'con.svg', 'a_mm', '', 'a:b.svg', 'a_mm.svg.'])(
    'refuses the name %j',
    async (name) => {
      expect(codes(await saveFiles(folder, [{ name, content: '' }]))).toEqual(['OUTPUT_NAME']);
      expect(await content()).toEqual({});
    },
  );

  it.each([
    ['my page.html', []],
    ['Übersicht März (2).pdf', []],
    ['../up.html', ['OUTPUT_NAME']],
    ['a:b.html', ['OUTPUT_NAME']],
    ['con.html', ['OUTPUT_NAME']],
    ['.hidden.html', ['OUTPUT_NAME']],
    ['-force.html', ['OUTPUT_NAME']],
    ['line\nend.html', ['OUTPUT_NAME']],
    ['turned\u202e.html', ['OUTPUT_NAME']],
  ])('of a name that a person gave, %j, says %j', async (name, said) => {
    expect(codes(await saveFiles(folder, [{ name, content: '' }], { ownNames: true }))).toEqual(said);
    expect(await readdir(folder)).toEqual(said.length === 0 ? [name] : []);
  });

  it('refuses two files of one name, where case may not count', async () => {
    const again = { name: 'A_MM.svg', content: '' };
    expect(codes(await saveFiles(folder, [...two, again]))).toEqual(['OUTPUT_NAME']);
  });
});

describe('checkWritable(folder, names, options)', () => {
  it('accepts a folder that can be made, without making it', async () => {
    expect(codes(await checkWritable(join(folder, 'new', 'deep'), ['a_mm.svg']))).toEqual([]);
    expect(await readdir(folder)).toEqual([]);
  });

  it('refuses a folder that is a file or lies under one', async () => {
    await writeFile(join(folder, 'file'), '');
    expect(codes(await checkWritable(join(folder, 'file')))).toEqual(['OUTPUT_NOT_WRITABLE']);
    expect(codes(await checkWritable(join(folder, 'file', 'below')))).toEqual(['OUTPUT_NOT_WRITABLE']);
  });

  it('refuses a folder whose name is longer than a system takes at once, and does not look for each folder above it', async () => {
    for (const long of [join(folder, 'x'.repeat(300), 'below'), join(folder, 'a/'.repeat(30_000))]) {
      const asked = await checkWritable(long, ['a_mm.svg']);
      expect(codes(asked)).toEqual(['OUTPUT_NOT_WRITABLE']);
      const { message } = (asked.ok ? [] : asked.problems)[0] ?? { message: '' };
      expect(message).toContain('a name in it is longer than this system takes; choose');
      expect(message.length).toBeLessThan(250);
    }
  });

  it('finds everything that stands in the way at once', async () => {
    await writeFile(join(folder, 'a_mm.svg'), 'old');
    await mkdir(join(folder, 'b_mm.dxf'));
    expect(codes(await checkWritable(folder, ['a_mm.svg', 'b_mm.dxf', 'no/name']))).toEqual([
      'OUTPUT_NAME',
      'OUTPUT_EXISTS',
      'OUTPUT_EXISTS',
    ]);
    expect(codes(await checkWritable(folder, ['a_mm.svg', 'b_mm.dxf'], { force: true }))).toEqual(['OUTPUT_EXISTS']);
  });
});

describe('renamePatiently(from, to, pauses)', () => {
  const renamed = async (renames: readonly string[], pauses: readonly number[]) => {
    const [from, to] = [join(folder, 'from'), join(folder, 'to')];
    await writeFile(from, 'new');
    await writeFile(to, 'old');
    faults.renames = [...renames];
    const code = await renamePatiently(from, to, pauses).then(
      () => '',
      (error: NodeJS.ErrnoException) => error.code,
    );
    return { code, left: faults.renames.length, content: await content() };
  };
  const untouched = { from: 'new', to: 'old' };

  it('waits for a program that holds a file for a moment, as scanners on Windows do', async () => {
    expect(await renamed(['EPERM', 'EACCES', 'EBUSY'], [1, 1, 1])).toEqual({ code: '', left: 0, content: { to: 'new' } });
  });

  it('gives up when it is held on, and at once on any other fault', async () => {
    expect(await renamed(['EPERM', 'EPERM', 'EPERM'], [1, 1])).toEqual({ code: 'EPERM', left: 0, content: untouched });
    expect(await renamed(['EIO', 'EPERM'], [1, 1])).toEqual({ code: 'EIO', left: 1, content: untouched });
    expect(await renamed(['EPERM', 'EPERM'], [])).toEqual({ code: 'EPERM', left: 1, content: untouched });
  });
});
