import { describe, expect } from 'vitest';
import { times } from '../by-night.ts';
import { begun, CASE_FILE, field, inBrowser, openDemo, openFile, openPanel, PAGE_ADDRESS, reload } from './browser.ts';

const width = 'digits.ring.width';

describe('what the page keeps', () => {
  inBrowser('is nothing, unless the switch is on', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await openPanel(page, 'files');
    expect(await page.locator('#field-keep').isChecked()).toBe(false);
    expect(await page.evaluate(() => [localStorage.length, sessionStorage.length, document.cookie])).toEqual([0, 0, '']);
    await reload(page);
    expect(await field(page, width).inputValue()).toBe('');
  });

  inBrowser('with the switch on survives reload and going back; switched off it is gone from this computer', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await openPanel(page, 'files');
    await page.locator('#field-keep').check();
    await page.keyboard.press('Escape');
    await field(page, 'digits.ring.width').fill('16,9');
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(1);
    await reload(page);
    expect(await field(page, 'digits.ring.width').inputValue()).toBe('16,9');
    await page.locator('#sentence').waitFor();
    await page.goto('about:blank');
    await page.goBack();
    await begun(page);
    expect(page.url()).toBe(PAGE_ADDRESS);
    expect(await field(page, 'digits.ring.width').inputValue()).toBe('16,9');
    await openPanel(page, 'files');
    expect(await page.locator('#field-keep').isChecked()).toBe(true);
    await page.locator('#field-keep').uncheck();
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0);
  });

  inBrowser('that was changed by something else is not taken for entries', async (open) => {
    const { page } = await open({});
    await page.evaluate(() =>
      localStorage.setItem('knucklewright-entries', '{"version":2,"entries":{"code":7},"settings":{"language":"xx"}}'),
    );
    await reload(page);
    expect(await field(page, width).inputValue()).toBe('');
    await openPanel(page, 'files');
    expect(await page.locator('#field-keep').isChecked()).toBe(false);
  });

  inBrowser('is the case as well, wherever the entries are kept', async (open) => {
    const { page } = await open({});
    await openFile(page, CASE_FILE);
    await page.locator('#case-heading').waitFor();
    await page.locator('#mode-design').click();
    await openPanel(page, 'files');
    await page.locator('#field-keep').check();
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(1);
    await reload(page);
    await page.locator('#case-heading').waitFor();
    expect(await page.locator('#case-heading').textContent()).toContain('DEMO-11');
    expect(await page.locator('table.visits tbody tr').count()).toBeGreaterThan(1);
  });

  inBrowser('is emptied at once for a new patient, kept entries included', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    await openPanel(page, 'files');
    await page.locator('#field-keep').check();
    await page.locator('#new-patient').click();
    await expect.poll(() => field(page, width).inputValue()).toBe('');
    expect(await page.locator('#sentence').count()).toBe(0);
    expect(await page.evaluate(() => localStorage.getItem('knucklewright-entries')?.includes('DEMO-01') ?? false)).toBe(false);
  });

  inBrowser('in memory stays that of a small tablet after many changes', async (open) => {
    const each = times(60, 125);
    const { page, context } = await open({});
    await openDemo(page);
    const session = await context.newCDPSession(page);
    const heap = async () => {
      // What follows a pause in typing, the plan, has then been worked out as well.
      await page.waitForTimeout(500);
      await session.send('HeapProfiler.collectGarbage');
      return (await session.send('Runtime.getHeapUsage')).usedSize / 1e6;
    };
    const change = (count: number) =>
      page.evaluate(async (most) => {
        const input = document.getElementById('field-digits-ring-circumference') as HTMLInputElement;
        const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
        for (let k = 0; k < most; k++) {
          set?.call(input, String(52 + (k % 30) / 10));
          input.dispatchEvent(new InputEvent('input', { bubbles: true }));
          await new Promise((done) => requestAnimationFrame(() => done(null)));
        }
      }, count);
    await change(50);
    const heaps = [await heap()];
    for (let stretch = 0; stretch < 4; stretch++) {
      await change(each);
      heaps.push(await heap());
    }
    // A tablet with 1 GB leaves a page a few hundred MB; ours must stay far below.
    expect(Math.max(...heaps)).toBeLessThan(60);
    // What is kept of every change grows in every stretch; code that is compiled and pictures that are kept for later come in steps. 6 kB a change.
    const growth = heaps.slice(1).map((after, k) => after - (heaps[k] ?? 0));
    expect(Math.min(...growth)).toBeLessThan(0.006 * each);
  });
});
