import { mkdirSync, readdirSync, rmSync, watch } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, expect, it } from 'vitest';
import { DEMO, ended, run, scratchFolder, start, visibleFiles } from './commands.ts';

/** Kills a command; 30 here, 200 by night (`npm run nightly`). */
const KILLS = Number(process.env.KNUCKLEWRIGHT_KILLS ?? 30);
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

it(`draw, killed ${KILLS} times while it writes over older files, leaves each file old or new and never half, seed ${SEED}`, {
  timeout: 60_000 + KILLS * 10_000,
}, async () => {
  const random = generator(SEED);
  const folder = join(scratch, 'out');
  mkdirSync(folder);
  const drawing = (trim: number) => ['draw', DEMO, '--out', folder, '--force', '--trim', String(trim)];
  const versions = [10, 20].map((trim) => {
    expect(run(drawing(trim)).status).toBe(0);
    return visibleFiles(folder);
  });
  const whole = (name: string) => versions.map((version) => version[name]);
  let inTheMiddle = 0;
  for (let k = 0; k < KILLS; k++) {
    const child = start(drawing(k % 2 === 0 ? 10 : 20));
    const over = ended(child);
    let began = false;
    const writing = new Promise<void>((yes) => {
      const watcher = watch(folder, (_, name) => {
        // The probe of the folder comes long before; a file under its hidden name is the beginning of writing.
        if (!name?.endsWith('.tmp')) return;
        began = true;
        watcher.close();
        yes();
      });
      over.then(() => watcher.close());
    });
    await Promise.race([writing, over]);
    await Promise.race([pause(random() * WRITING_MS), over]);
    child.kill('SIGKILL');
    if ((await over).status === null && began) inTheMiddle++;
    const files = visibleFiles(folder);
    expect(Object.keys(files)).toEqual(Object.keys(versions[0] ?? {}));
    for (const [name, content] of Object.entries(files)) expect(whole(name), `${name} after kill ${k + 1}`).toContain(content);
  }
  // A kill that comes too late tests nothing.
  expect(inTheMiddle).toBeGreaterThan(KILLS / 4);
  process.stdout.write(`${inTheMiddle} of ${KILLS} kills fell while files were written, seed ${SEED}\n`);
  expect(run(drawing(20)).status).toBe(0);
  expect(visibleFiles(folder)).toEqual(versions[1]);
  const leftovers = readdirSync(folder).filter((name) => name.startsWith('.'));
  for (const name of leftovers) expect(name).toMatch(/\.tmp$|^\.knucklewright-/);
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
      if (name?.endsWith('.tmp')) setTimeout(() => child.kill('SIGKILL'), random() * WRITING_MS);
    });
    await over;
    watcher.close();
    for (const [name, content] of Object.entries(visibleFiles(folder))) expect(content, name).toBe(complete[name]);
  }
});
