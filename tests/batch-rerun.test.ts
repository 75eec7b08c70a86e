import { appendFileSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { batchScratch } from './batch-scratch.ts';
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
