import { mkdirSync, rmSync } from 'node:fs';
import type { TestProject } from 'vitest/node';

/** Makes the folder that the workers take for the temporary one, and removes it with the profiles of browsers whose worker was ended before it could. */
export default function keepProfilesTogether({ config }: TestProject): () => void {
  const folder = config.env.TMPDIR;
  if (folder === undefined) throw new Error('the project names no folder for profiles');
  mkdirSync(folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 10 });
}
