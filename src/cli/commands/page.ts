import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { quote } from '../../units/quote.ts';
import { collect, failure, type Result, success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { flag, flagProblem } from '../flags/flag.ts';
import { forceFlag } from '../flags/output-flags.ts';
import { saveFileAs } from '../save-file-as.ts';

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
  return port <= 65_535 ? success(port) : failure(flagProblem('--port', `${quote(text)} is not a port; 0 to 65535, 0 takes a free one`));
}

/** Only the computer itself: never a name or an address that others on the network reach. */
const HOST = '127.0.0.1';

export interface ServedPage {
  readonly address: string;
  readonly server: Server;
}

/**
 * Serves the page at `/` on 127.0.0.1 and nothing else: only GET and HEAD, only under that address (so no other name can be pointed at
 * it), with the page's own policy as headers. Fails with `PORT_TAKEN` or `PORT_NOT_OPENED`.
 * @param port 0 takes a free one
 */
export async function servePage(html: string, port: number): Promise<Result<ServedPage>> {
  const body = Buffer.from(html, 'utf8');
  const headers = {
    ...SAFE_HEADERS,
    'Content-Security-Policy': policyOf(html),
    ETag: `"${createHash('sha256').update(body).digest('hex')}"`,
  };
  const server = createServer((request, response) => {
    const here = server.address() as AddressInfo;
    const refuse = (status: number, extra: Record<string, string> = {}) => {
      response.writeHead(status, { ...SAFE_HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...extra }).end(`${status}\n`);
    };
    if (request.headers.host !== `${HOST}:${here.port}`) return refuse(421);
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, { Allow: 'GET, HEAD' });
    if (request.url !== '/') return refuse(404);
    response.writeHead(200, { ...headers, 'Content-Type': 'text/html; charset=utf-8', 'Content-Length': body.byteLength });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  return new Promise((done) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const taken = error.code === 'EADDRINUSE';
      const message = taken
        ? `port ${port} is taken. Choose another with --port, or 0.`
        : `port ${port} cannot be opened (${error.code ?? error.message}).`;
      done(failure({ code: taken ? 'PORT_TAKEN' : 'PORT_NOT_OPENED', where: '--port', message: `--port: ${message}`, kind: 'input' }));
    });
    server.listen(port, HOST, () => done(success({ address: `http://${HOST}:${(server.address() as AddressInfo).port}/`, server })));
  });
}

const SAFE_HEADERS = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=()',
  'Cache-Control': 'no-store',
} as const;

/** The policy that the page carries in itself, and that no other page may frame it, which only a header can say. */
function policyOf(html: string): string {
  const own = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
  if (own === undefined) throw new Error('the page has no policy');
  return `${own}; frame-ancestors 'none'`;
}
