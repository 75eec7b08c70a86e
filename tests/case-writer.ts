// A process of its own for tests/case-killed.test.ts: adds visits to a case file and says of each, once it is kept, that it was added.
// Usage: case-writer FILE NAME COUNT [KILL_AT]. With KILL_AT it kills itself at that call of the file system, writes half-way through.
import fs, { writeSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { addVisit } from '../src/files/case-store.ts';
import { success } from '../src/units/result.ts';

const [, , file = '', name = '', count = '0', killAt] = process.argv;
let calls = 0;

if (killAt !== undefined) await dieAt(Number(killAt));
writeSync(1, 'ready\n');
for (let k = 0; k < Number(count); k++) {
  const comment = `${name}-${k}`;
  const active = { extensionDeficit: 20, flexion: 90 };
  const added = await addVisit(file, () => success({ date: '2026-03-02', goniometry: { pip: { active } }, comment }));
  if (!added.ok) throw new Error(added.problems.map((p) => p.message).join('\n'));
  writeSync(1, `added ${comment}\n`);
}
writeSync(1, `calls ${calls}\n`);

/** Counts every call that the store makes of the file system, and ends this process without warning at one of them. */
async function dieAt(fatal: number): Promise<void> {
  const own = await fs.promises.open(process.argv[1] ?? '', 'r');
  const handle = Object.getPrototypeOf(own) as object;
  await own.close();
  const targets: readonly (readonly [object, readonly string[]])[] = [
    [fs.promises, ['open', 'writeFile', 'readFile', 'link', 'unlink', 'rename', 'stat', 'realpath', 'readdir']],
    [handle, ['writeFile', 'sync', 'close', 'chmod']],
  ];
  for (const [target, methods] of targets) for (const method of methods) watch(target as Record<string, unknown>, method, fatal);
  syncBuiltinESMExports();
}

function watch(target: Record<string, unknown>, method: string, fatal: number): void {
  const real = target[method] as (...args: unknown[]) => Promise<unknown>;
  target[method] = async function (this: unknown, ...args: unknown[]) {
    if (++calls === fatal) {
      const at = target === (fs.promises as object) ? 1 : 0;
      const content = args[at];
      if (method === 'writeFile' && typeof content === 'string')
        await real.call(this, ...args.with(at, content.slice(0, content.length / 2)));
      process.kill(process.pid, 'SIGKILL');
      // The signal ends the process before anything more runs; never settles in case it takes a moment.
      await new Promise(() => {});
    }
    return real.apply(this, args);
  };
}
