import { request } from 'node:http';
import { describe, expect, it } from 'vitest';
import { servePage } from './page.ts';

const HTML = `<!doctype html><meta http-equiv="Content-Security-Policy" content="default-src 'none'"><title>x</title>`;

interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

function ask(address: string, path: string, method = 'GET', headers: Record<string, string> = {}): Promise<Answer> {
  return new Promise((done, fail) => {
    const asked = request(new URL(path, address), { method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => {
        body += text;
      });
      response.on('end', () => done({ status: response.statusCode, headers: response.headers, body }));
    });
    asked.on('error', fail).end();
  });
}

async function served(run: (address: string) => Promise<void>): Promise<void> {
  const page = await servePage(HTML, 0);
  if (!page.ok) throw new Error(page.problems[0]?.message);
  try {
    await run(page.value.address);
  } finally {
    page.value.server.close();
  }
}

describe('servePage(html, port)', () => {
  it('gives the page at / on 127.0.0.1 with its own policy and headers that keep it to itself', async () => {
    await served(async (address) => {
      expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      const { status, headers, body } = await ask(address, '/');
      expect([status, body]).toEqual([200, HTML]);
      expect(headers).toMatchObject({
        'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cache-control': 'no-store',
        'content-type': 'text/html; charset=utf-8',
      });
    });
  });

  it.each([
    ['/', 'HEAD', {}, 200],
    ['/other', 'GET', {}, 404],
    ['/?x', 'GET', {}, 404],
    ['/', 'POST', {}, 405],
    ['/', 'DELETE', {}, 405],
    ['/', 'GET', { Host: 'example.org' }, 421],
    ['/', 'GET', { Host: 'localhost' }, 421],
  ])('answers %s %s %o with %d and no page', async (path, method, headers, status) => {
    await served(async (address) => {
      const answer = await ask(address, path, method, headers);
      expect(answer.status).toBe(status);
      expect(answer.body).not.toContain('<title>');
    });
  });

  it('fails with PORT_TAKEN when another has the port', async () => {
    await served(async (address) => {
      const again = await servePage(HTML, Number(new URL(address).port));
      expect(again).toMatchObject({ ok: false, problems: [{ code: 'PORT_TAKEN', where: '--port' }] });
    });
  });
});
