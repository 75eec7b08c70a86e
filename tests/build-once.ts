import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Builds what the tests of the whole command and of the page run, once before them all; `npm test` has done so by itself. */
export default function buildOnce(): void {
  if (process.env.KNUCKLEWRIGHT_BUILT !== undefined) return;
  const root = fileURLToPath(new URL('..', import.meta.url));
  execFileSync(process.execPath, ['scripts/build.mjs'], { cwd: root, stdio: 'inherit' });
  process.env.KNUCKLEWRIGHT_BUILT = '1';
}
