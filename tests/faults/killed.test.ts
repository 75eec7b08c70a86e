import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { PROGRESS_NAME as PROGRESS } from '../../src/cli/batch-progress.ts';
import { DEMO, ended, ROOT, run, scratchFolder, start, visibleFiles } from './commands.ts';

/** Kills a command; 18 here, 200 by night (`npm run nightly`). */
const KILLS = Number(process.env.KNUCKLEWRIGHT_KILLS ?? 18);
const BY_NIGHT = process.env.KNUCKLEWRIGHT_KILLS !== undefined;
/** A batch takes longer. */
const BATCH_KILLS = BY_NIGHT ? KILLS : Math.ceil(KILLS / 3);
const CASE = join(ROOT, 'fixtures', 'case-gains.json');
const CLINIC = join(ROOT, 'fixtures', 'demo-clinic.csv');
/** After the first file appears, all are in place within about this; most kills fall in it. */
const WRITING_MS = 25;
const SEED = Number(process.env.KNUCKLEWRIGHT_SEED ?? Math.floor(Math.random() * 2 ** 31));

const scratch = scratchFolder('killed');
afterAll(() => rmSync(scratch, { recursive: true }));

/** Mulberry32. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What writes files, as arguments for a folder; `version` 0 and 1 give files of the same names and other contents. */
const WRITERS: Readonly<Record<string, (folder: string, version: number) => readonly string[]>> = {
  draw: (folder, version) => ['draw', DEMO, '--out', folder, '--trim', ['10', '20'][version] ?? ''],
  sheets: (folder, version) => ['sheets', '--sizes', '168x20:12', '--out', folder, '--gap', ['2', '3'][version] ?? ''],
  'print-check': (folder, version) => ['print-check', DEMO, '--across', ['97', '98'][version] ?? '', '--along', '99', '--out', folder],
  'case report': (folder, version) => [
    'case',
    'report',
    CASE,
    '--out',
    join(folder, 'report.pdf'),
    '--paper',
    ['a4', 'letter'][version] ?? '',
  ],
};

describe.each(Object.entries(WRITERS))('%s', (name, argsFor) => {
  // The others write by the same door, so that fewer will do between two nights.
  const kills = name === 'draw' || BY_NIGHT ? KILLS : Math.ceil(KILLS / 3);

  it(`killed ${kills} times while it writes over older files, leaves each file old or new and never half, seed ${SEED}`, {
    timeout: 60_000 + kills * 10_000,
  }, async () => {
    const random = generator(SEED);
    const folder = join(scratch, name);
    mkdirSync(folder);
    const writing = (version: number) => [...argsFor(folder, version), '--force'];
    const versions = [0, 1].map((version) => {
      expect(run(writing(version))).toMatchObject({ status: 0 });
      return visibleFiles(folder);
    });
    expect(Object.keys(versions[0] ?? {}).length).toBeGreaterThan(0);
    expect(versions[0]).not.toEqual(versions[1]);
    const whole = (file: string) => versions.map((version) => version[file]);
    let inTheMiddle = 0;
    for (let k = 0; k < kills; k++) {
      const child = start(writing(k % 2));
      const over = ended(child);
      let began = false;
      const begun = new Promise<void>((yes) => {
        const watcher = watch(folder, (_, file) => {
          // The probe of the folder comes long before; a file under its hidden name is the beginning of writing.
          if (!file?.endsWith('.draft')) return;
          began = true;
          watcher.close();
          yes();
        });
        over.then(() => watcher.close());
      });
      await Promise.race([begun, over]);
      await Promise.race([pause(random() * WRITING_MS), over]);
      child.kill('SIGKILL');
      if ((await over).status === null && began) inTheMiddle++;
      const files = visibleFiles(folder);
      expect(Object.keys(files)).toEqual(Object.keys(versions[0] ?? {}));
      for (const [file, content] of Object.entries(files)) expect(whole(file), `${file} after kill ${k + 1}`).toContain(content);
    }
    // A kill that comes too late tests nothing.
    expect(inTheMiddle).toBeGreaterThan(kills / 4);
    process.stdout.write(`${name}: ${inTheMiddle} of ${kills} kills fell while files were written, seed ${SEED}\n`);
    expect(run(writing(1)).status).toBe(0);
    expect(visibleFiles(folder)).toEqual(versions[1]);
    const leftovers = readdirSync(folder).filter((file) => file.startsWith('.'));
    for (const file of leftovers) expect(file).toMatch(/\.draft$/);
  });
});

it(`batch, killed at any moment ${BATCH_KILLS} times, shows no half file, and reruns end as one that was left alone, seed ${SEED}`, {
  timeout: 60_000 + BATCH_KILLS * 20_000,
}, async () => {
  const random = generator(SEED + 2);
  const table = join(scratch, 'hands.csv');
  writeFileSync(table, readFileSync(CLINIC, 'utf8').split('\n').slice(0, 25).join('\n'));
  const batch = (folder: string) => ['batch', table, '--files', 'each', '--formats', 'svg', '--out', folder];
  const wanted = join(scratch, 'batch-alone');
  const from = performance.now();
  expect(run(batch(wanted)).status).toBe(0);
  const lasts = performance.now() - from;
  const complete = visibleFiles(wanted);
  let folder = join(scratch, 'batch-0');
  let cut = 0;
  for (let k = 0; k < BATCH_KILLS; k++) {
    const child = start(batch(folder));
    const over = ended(child);
    await Promise.race([pause(random() * lasts), over]);
    child.kill('SIGKILL');
    const done = (await over).status !== null;
    cut += done ? 0 : 1;
    const files = existsSync(folder) ? visibleFiles(folder) : {};
    for (const [file, content] of Object.entries(files))
      if (file !== PROGRESS) expect(content, `${file} after kill ${k + 1}`).toBe(complete[file]);
    if (!done) continue;
    const all = Object.entries(complete).filter(([file]) => file !== PROGRESS);
    expect(Object.entries(files).filter(([file]) => file !== PROGRESS)).toEqual(all);
    folder = join(scratch, `batch-${k + 1}`);
  }
  expect(cut).toBeGreaterThan(BATCH_KILLS / 4);
  process.stdout.write(`batch: ${cut} of ${BATCH_KILLS} kills fell before it ended, seed ${SEED}\n`);
  expect(run(batch(folder)).status).toBe(0);
  const { [PROGRESS]: _, ...lists } = visibleFiles(folder);
  const { [PROGRESS]: __, ...same } = complete;
  expect(lists).toEqual(same);
});

it('draw, killed while it writes into an empty folder, leaves whole files or none', { timeout: 120_000 }, async () => {
  const random = generator(SEED + 1);
  const wanted = join(scratch, 'wanted');
  expect(run(['draw', DEMO, '--out', wanted]).status).toBe(0);
  const complete = visibleFiles(wanted);
  for (let k = 0; k < Math.ceil(KILLS / 5); k++) {
    const folder = join(scratch, `empty-${k}`);
    mkdirSync(folder);
    const child = start(['draw', DEMO, '--out', folder]);
    const over = ended(child);
    const watcher = watch(folder, (_, name) => {
      if (name?.endsWith('.draft')) setTimeout(() => child.kill('SIGKILL'), random() * WRITING_MS);
    });
    await over;
    watcher.close();
    for (const [name, content] of Object.entries(visibleFiles(folder))) expect(content, name).toBe(complete[name]);
  }
});
