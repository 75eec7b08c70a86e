import { describe, expect } from 'vitest';
import { field, inBrowser, openDemo, PAGE_ADDRESS } from './browser.ts';

describe('what the page keeps', () => {
  inBrowser('is nothing, unless the switch is on', async (open) => {
    const { page } = await open();
    await openDemo(page);
    expect(await page.locator('#keep').isChecked()).toBe(false);
    expect(await page.evaluate(() => [localStorage.length, sessionStorage.length, document.cookie])).toEqual([0, 0, '']);
    await page.reload();
    expect(await field(page, 'code').inputValue()).toBe('');
  });

  inBrowser('with the switch on survives reload and going back; switched off it is gone from this computer', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await page.locator('#keep').check();
    await field(page, 'digits.ring.width').fill('16,9');
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(1);
    await page.reload();
    expect(await field(page, 'digits.ring.width').inputValue()).toBe('16,9');
    await page.locator('#pattern-picture').waitFor();
    await page.goto('about:blank');
    await page.goBack();
    expect(page.url()).toBe(PAGE_ADDRESS);
    expect(await field(page, 'digits.ring.width').inputValue()).toBe('16,9');
    expect(await page.locator('#keep').isChecked()).toBe(true);
    await page.locator('#keep').uncheck();
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0);
  });

  inBrowser('that was changed by something else is not taken for entries', async (open) => {
    const { page } = await open();
    await page.evaluate(() =>
      localStorage.setItem('knucklewright-entries', '{"version":1,"entries":{"code":7},"settings":{"language":"xx"}}'),
    );
    await page.reload();
    expect(await field(page, 'code').inputValue()).toBe('');
    expect(await page.locator('#keep').isChecked()).toBe(false);
  });

  inBrowser('is emptied at once by the button, kept entries included', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await page.locator('#keep').check();
    await page.getByRole('button', { name: 'Empty the page' }).click();
    await expect.poll(() => field(page, 'code').inputValue()).toBe('');
    expect(await page.evaluate(() => localStorage.length)).toBe(0);
    expect(await page.locator('#pattern-picture').count()).toBe(0);
  });

  inBrowser('in memory stays that of a small tablet after 500 changes', async (open) => {
    const { page, context } = await open();
    await openDemo(page);
    const session = await context.newCDPSession(page);
    const heap = async () => {
      // What follows a pause in typing, the plan, has then been worked out as well.
      await page.waitForTimeout(500);
      await session.send('HeapProfiler.collectGarbage');
      return (await session.send('Runtime.getHeapUsage')).usedSize / 1e6;
    };
    const change = (count: number) =>
      page.evaluate(async (times) => {
        const input = document.getElementById('field-digits-ring-circumference') as HTMLInputElement;
        const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
        for (let k = 0; k < times; k++) {
          set?.call(input, String(52 + (k % 30) / 10));
          input.dispatchEvent(new InputEvent('input', { bubbles: true }));
          await new Promise((done) => requestAnimationFrame(() => done(null)));
        }
      }, count);
    await change(50);
    const before = await heap();
    await change(500);
    const after = await heap();
    // A tablet with 1 GB leaves a page a few hundred MB; ours must stay far below, and must not grow with use.
    expect(after).toBeLessThan(60);
    expect(after - before).toBeLessThan(3);
  });
});
