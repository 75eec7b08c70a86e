import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { collect, failure, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { flag } from '../flags/flag.ts';
import { flagProblem } from '../flags/flag-problem.ts';
import { forceFlag } from '../flags/output-flags.ts';
import { saveFileAs } from '../save-file-as.ts';
import { servePage } from '../serve-page.ts';

/** The page as it was built, beside the bundled command. */
const PAGE = new URL('./knucklewright.html', import.meta.url);

/** `page`: saves the page that a therapist opens in a browser, or serves it until the program is stopped. */
export const page = defineCommand({
  name: 'page',
  group: 'Suggest and draw',
  about: 'the page for the browser: serve it on this computer alone, or save it as one file that works without a network',
  args: [],
  flags: [
    flag('--save <file>', 'write the page to this file instead of serving it'),
    forceFlag,
    flag('--port <number>', 'port on 127.0.0.1; 0 takes a free one').default('0'),
  ],
  read: async (_, { port, save, force }) => {
    const read = collect({ html: await readPage(), port: readPort(port) });
    return read.ok ? success({ ...read.value, save, force: force === true }) : read;
  },
  make: async ({ html, port, save, force }): Promise<Result<string>> => {
    if (save === undefined) {
      const served = await servePage(html, port);
      return served.ok ? success(`${served.value.address}\nOnly this computer can open it. Stop it with Ctrl+C.\n`) : served;
    }
    const saved = await saveFileAs(save, html, { force });
    if (!saved.ok) return saved;
    return success(`${saved.value.path}   ${Math.round(saved.value.bytes / 1000)} kB, opens in a browser without a network\n`);
  },
  report: { text: (said) => said },
});

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
