import { spawnSync } from 'node:child_process';
import type { TestContext } from 'vitest';
import readers from '../scripts/readers.json' with { type: 'json' };

const found = new Map<string, boolean>();

/**
 * Says that a test needs a reader of scripts/readers.json. Without it the test is skipped with the reason; in CI it fails.
 * @throws Error for a name that is not in the list
 */
export function needsReader(context: TestContext, name: string): void {
  const reader = readers.find((entry) => entry.name === name);
  if (!reader) throw new Error(`no reader ${name} in scripts/readers.json`);
  const [command = '', ...args] = reader.detect;
  const there = found.get(name) ?? spawnSync(command, args, { stdio: 'ignore' }).status === 0;
  found.set(name, there);
  if (there) return;
  const reason = `needs ${name} (Debian package ${reader.package})`;
  if (process.env.CI) throw new Error(reason);
  context.skip(reason);
}
