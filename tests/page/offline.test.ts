import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fillHand, inBrowser, noStopSign, PAGE_ADDRESS, PAGE_FILE, saved, show } from './browser.ts';

describe('the page as a file', () => {
  it('is one file under 900 kB with a policy that lets it load nothing', () => {
    expect(statSync(PAGE_FILE).size).toBeLessThan(900_000);
    const html = readFileSync(PAGE_FILE, 'utf8');
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    expect(policy.split('; ').map((directive) => directive.replace(/'sha256-[A-Za-z0-9+/]{43}='/, "'sha256-…'"))).toEqual([
      "default-src 'none'",
      "script-src 'sha256-…' blob:",
      "style-src 'sha256-…'",
      'img-src data:',
      "connect-src 'none'",
      "form-action 'none'",
      "base-uri 'none'",
    ]);
  });

  inBrowser('opens over file:// with the network off, makes exactly one request and breaks no policy, drawing included', async (open) => {
    const { page, requests } = await open({});
    await fillHand(page);
    await page.getByRole('button', { name: 'Turn left' }).click();
    await show(page, 'flat');
    await page.getByRole('button', { name: 'Actual size' }).click();
    await noStopSign(page);
    await saved(page, '#print');
    await page.locator('#language').selectOption('de');
    await page.getByRole('heading', { name: 'Anfertigen' }).waitFor();
    // The empty icon is a data address inside the page, the unpacked writers are a blob of its own; no network carries them.
    expect(requests.filter((url) => url !== 'data:,' && !url.startsWith('blob:'))).toEqual([PAGE_ADDRESS]);
  });

  inBrowser('may not ask the network for anything, and runs no code that was not in it', async (open) => {
    const { page, errors } = await open({ offline: false });
    const refused = await page.evaluate(async () => {
      const breaches: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => breaches.push(event.effectiveDirective));
      await fetch('http://127.0.0.1:9/').catch(() => undefined);
      const image = new Image();
      image.src = 'http://127.0.0.1:9/x.png';
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(image, script);
      // All three are told of before anything else is; a busy machine takes its time.
      for (let k = 0; k < 200 && breaches.length < 3; k++) await new Promise((done) => setTimeout(done, 50));
      return { breaches: breaches.toSorted(), ran: 'ran' in window };
    });
    expect(refused).toEqual({ breaches: ['connect-src', 'img-src', 'script-src-elem'], ran: false });
    // The browser reports each of them, which is what this test is about; nothing else may be among the errors.
    expect(errors.splice(0).filter((error) => !/Content Security Policy/.test(error))).toEqual([]);
  });
});
