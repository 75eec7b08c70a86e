import { spawn } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BoundedReading, readInProcess } from '../../src/cli/bounded/bounded-reading.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(ROOT, 'out', `test-reading-${process.pid}`);
const reader = pathToFileURL(join(folder, 'spinning-reader.js'));

beforeAll(async () => {
  await build({
    entryPoints: [join(ROOT, 'tests/hostile/spinning-reader.ts'), join(ROOT, 'src/cli/bounded/bounded-reading.ts')],
    outdir: folder,
    outbase: ROOT,
    entryNames: '[name]',
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    banner: { js: 'import { createRequire as kwRequire } from "node:module"; const require = kwRequire(import.meta.url);' },
    logLevel: 'error',
  });
  readInProcess(reader);
});
afterAll(() => {
  readInProcess(null);
  rmSync(folder, { recursive: true, force: true });
});

const isThere = (pid: number) => {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
};
const pidOf = async (reading: BoundedReading) => {
  const read = await reading.read('drawingOrHand', 'a');
  if (read.stopped !== null || !read.value.ok) throw new Error('not read');
  return (read.value.value as unknown as readonly [path: string, pid: number])[1];
};

describe('the process that reads files', () => {
  it('reads one after the other, and is another one after a file that never ended', async () => {
    const reading = new BoundedReading();
    const first = await pidOf(reading);
    expect(await pidOf(reading)).toBe(first);
    expect(await reading.read('inspect', 'spins', {})).toEqual({ stopped: 'reading took more than 0.6 seconds of the processor' });
    expect(isThere(first)).toBe(false);
    const second = await pidOf(reading);
    expect(second).not.toBe(first);
    reading.close();
    await expect.poll(() => isThere(second), { timeout: 10_000 }).toBe(false);
  });

  it.each(['heap', 'buffers'])('says that memory was too much: %s', async (what) => {
    process.env.SLOWLY = 'yes';
    const reading = new BoundedReading();
    const read = await reading.read('cutList', what);
    delete process.env.SLOWLY;
    reading.close();
    expect(read.stopped).toMatch(/^it took more (memory than there is for it \(450 MB\)|than 450 MB of memory)$/);
  });

  it('hands a fault of the program on as one', async () => {
    const reading = new BoundedReading();
    await expect(reading.read('ownDrawing', 'x.svg')).rejects.toThrow();
    const fault = await reading.read('ownDrawing', 'x.svg').catch((error: Error) => error.stack);
    reading.close();
    expect(fault).toContain('a fault at x.svg');
  });

  it('ends with the program that began it, though it is caught in a file', async () => {
    const parent = join(folder, 'parent.mjs');
    writeFileSync(
      parent,
      `import { BoundedReading, readInProcess } from './bounded-reading.js';
      readInProcess(new URL('./spinning-reader.js', import.meta.url));
      const reading = new BoundedReading();
      const { value } = await reading.read('drawingOrHand', 'a');
      console.log(value.value[1]);
      await reading.read('inspect', 'spins', {});`,
    );
    const program = spawn(process.execPath, [parent], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, SLOWLY: 'yes' } });
    const pid = Number(await new Promise<Buffer>((done) => program.stdout.once('data', done)));
    expect(isThere(pid)).toBe(true);
    program.kill('SIGKILL');
    await expect.poll(() => isThere(pid), { timeout: 20_000 }).toBe(false);
  });
});
