import { readFile } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { saveFiles } from '../files/save-file.ts';
import { failure, type Result, success } from '../units/result.ts';
import { fail } from './exit.ts';
import { flagProblem } from './flags/flag-problem.ts';
import type { PageFlags } from './page-command.ts';
import { servePage } from './serve-page.ts';

/** The page as it was built, beside the bundled command. */
const PAGE = new URL('./knucklewright.html', import.meta.url);

/** Runs `page`: saves the page, or serves it until the program is stopped. */
export async function page(flags: PageFlags): Promise<void> {
  const html = await readPage();
  const port = readPort(flags.port);
  const problems = [html, port].flatMap((r) => (r.ok ? [] : r.problems));
  if (!html.ok || !port.ok) return fail(problems);
  if (flags.save !== undefined) return save(flags.save, html.value, flags.force === true);
  const served = await servePage(html.value, port.value);
  if (!served.ok) return fail(served.problems);
  process.stdout.write(`${served.value.address}\nOnly this computer can open it. Stop it with Ctrl+C.\n`);
}

async function save(file: string, html: string, force: boolean): Promise<void> {
  const saved = await saveFiles(dirname(file), [{ name: basename(file), content: html }], { force });
  if (!saved.ok) return fail(saved.problems);
  for (const { path, bytes } of saved.value)
    process.stdout.write(`${path}   ${Math.round(bytes / 1000)} kB, opens in a browser without a network\n`);
}

async function readPage(): Promise<Result<string>> {
  try {
    return success(await readFile(PAGE, 'utf8'));
  } catch {
    const path = fileURLToPath(PAGE);
    return failure({ code: 'PAGE_MISSING', where: path, message: `${path} is missing. Build it: npm run build.`, kind: 'input' });
  }
}

function readPort(text: string): Result<number> {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return port <= 65_535 ? success(port) : failure(flagProblem('--port', `"${text}" is not a port; 0 to 65535, 0 takes a free one`));
}
