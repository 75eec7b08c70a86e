import { appendFileSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeRowsInThreads } from '../src/cli/row-crew.ts';
import { batchScratch, DEMO } from './batch-scratch.ts';
import { runCommand } from './run-command.ts';

const { folder, table, text } = batchScratch();

describe('a rerun of batch', () => {
  const again = (...more: string[]) =>
    runCommand(
      'batch',
      table('again.csv', (t) => t),
      '--files',
      'each',
      '--block',
      'ring-lowered-in-three',
      '--formats',
      'svg',
      '--out',
      folder('again'),
      '--json',
      ...more,
    );

  it('takes over what is done, makes what is missing, and does not mix settings', async () => {
    const first = await again();
    expect(JSON.parse(first.out)).toMatchObject({ made: 6, reused: 0, files: 6 });
    const list = text('again', 'cut-list.csv');
    const [svg = ''] = readdirSync(folder('again')).filter((name) => name.endsWith('.svg'));
    const drawn = text('again', svg);
    // As after a stop: one file is missing, the last line of the progress was cut off, and rubbish follows.
    rmSync(join(folder('again'), svg));
    const progress = join(folder('again'), 'batch-progress.jsonl');
    truncateSync(progress, readFileSync(progress).length - 200);
    appendFileSync(progress, '{"digest":');
    expect(JSON.parse((await again()).out)).toMatchObject({ made: 1, reused: 5 });
    expect(text('again', 'cut-list.csv')).toBe(list);
    expect(text('again', svg)).toBe(drawn);
    expect(JSON.parse((await again()).out)).toMatchObject({ made: 0, reused: 6, files: 0 });
    const other = await again('--width', '18');
    expect([other.exit, other.err.includes('OTHER_BATCH')]).toEqual([1, true]);
    expect(JSON.parse((await again('--width', '18', '--force')).out)).toMatchObject({ made: 6, reused: 0 });
    expect(text('again', 'cut-list.csv')).not.toBe(list);
  });

  it('never overwrites a list that is not its own', async () => {
    const hands = table('two.csv', (t) => t, 2);
    const ran = await runCommand('batch', hands, '--files', 'none', '--out', folder('walk2'));
    expect(ran.exit).toBe(0);
    rmSync(join(folder('walk2'), 'batch-progress.jsonl'));
    const second = await runCommand('batch', hands, '--files', 'none', '--out', folder('walk2'));
    expect([second.exit, second.err.includes('OUTPUT_EXISTS')]).toEqual([1, true]);
  });
});

describe('a long table, made by several threads', () => {
  const worker = new URL('../dist/row-worker.js', import.meta.url);
  const inThreads = async (file: URL, words: readonly string[]) => {
    makeRowsInThreads(file, 5);
    try {
      return await runCommand(...words);
    } finally {
      makeRowsInThreads(null);
    }
  };
  const made = (name: string) =>
    Object.fromEntries(
      readdirSync(folder(name))
        .filter((file) => file !== 'batch-progress.jsonl')
        .map((file) => [file, text(name, file)]),
    );

  it.each([
    ['none', 60],
    ['each', 9],
  ])(
    'files %s: has the report and the files of one thread, wrong rows among them; a rerun takes them over',
    { timeout: 120_000 },
    async (files, count) => {
      const words = (name: string) => {
        // The last row has the code of the first.
        const hands = table(`${name}.csv`, (t) => `${t}\n${t.split('\n')[1]}`, count);
        return ['batch', hands, '--width', '20', '--files', files, '--formats', 'svg', '--out', folder(name), '--json'];
      };
      const one = await runCommand(...words(`one-${files}`));
      const several = await inThreads(worker, words(`several-${files}`));
      const renamed = (said: string) => said.replaceAll(`several-${files}`, `one-${files}`);
      expect({ ...several, out: renamed(several.out), err: renamed(several.err) }).toEqual(one);
      expect([one.exit, one.err.includes('ROW_TWICE')]).toEqual([1, true]);
      expect(made(`several-${files}`)).toEqual(made(`one-${files}`));
      // A file that is gone is drawn again from what the earlier run left.
      const svg = readdirSync(folder(`several-${files}`)).findLast((name) => name.endsWith('.svg'));
      if (svg) rmSync(join(folder(`several-${files}`), svg));
      const again = JSON.parse((await inThreads(worker, words(`several-${files}`))).out);
      expect(again).toMatchObject({ made: 0, reused: JSON.parse(one.out).made, files: svg ? 1 : 0 });
      expect(made(`several-${files}`)).toEqual(made(`one-${files}`));
    },
  );

  it('ends with the fault of a thread that ends by one', async (context) => {
    if (availableParallelism() === 1) return context.skip('one processor: no threads are begun');
    const broken = new URL(`data:text/javascript,${encodeURIComponent("throw new Error('the thread broke')")}`);
    const words = ['batch', DEMO, '--files', 'none', '--out', folder('broken'), '--json'];
    await expect(inThreads(broken, words)).rejects.toThrow('the thread broke');
    // Nothing is left of the lists, not even a draft; what was done is kept.
    expect(readdirSync(folder('broken'))).toEqual(['batch-progress.jsonl']);
  });
});
