import { describe, expect } from 'vitest';
import { begun, CASE_FILE, field, inBrowser, openDemo, openFile, openPanel, PAGE_ADDRESS, reload } from './browser.ts';

const width = 'digits.ring.width';
const KEPT = 'knucklewright-entries';

describe('what the page keeps', () => {
  inBrowser('is not written over by a second window, which says that the first stops', async (open) => {
    const { page: first, context } = await open({});
    await openFile(first, CASE_FILE);
    await first.locator('#case-heading').waitFor();
    await first.locator('#mode-design').click();
    await openPanel(first, 'files');
    await first.locator('#field-keep').check();
    await expect.poll(() => first.evaluate(() => localStorage.length)).toBe(1);

    const second = await context.newPage();
    await second.goto(PAGE_ADDRESS);
    await begun(second);
    await second.locator('#mode-design').click();
    await field(second, width).fill('16.6');
    await expect.poll(() => second.evaluate((key) => localStorage.getItem(key)?.includes('16.6'), KEPT)).toBe(true);
    // The first window neither keeps on nor forgets what the second one kept.
    await expect.poll(() => first.locator('[role="status"]').textContent()).toContain('Another window keeps');
    expect(await first.locator('#field-keep').isChecked()).toBe(false);
    await first.keyboard.press('Escape');
    await field(first, width).fill('15.5');
    await first.waitForTimeout(300);
    const kept = await second.evaluate((key) => localStorage.getItem(key), KEPT);
    expect(kept).toContain('16.6');
    expect(kept).not.toContain('15.5');
    expect(JSON.parse(kept ?? '{}').file.visits.length).toBeGreaterThan(3);
    await reload(second);
    await second.locator('#mode-design').click();
    expect(await field(second, width).inputValue()).toBe('16.6');
  });

  inBrowser('is said to be nothing when the storage is full or refused, and the entries stay in the window', async (open) => {
    for (const kind of ['full', 'refused']) {
      const { page } = await open({});
      await openDemo(page);
      await page.evaluate((how) => {
        if (how === 'full') {
          // To the last character, whatever the browser's limit is.
          for (let size = 4_000_000, k = 0; size >= 1; size = Math.floor(size / 2)) {
            try {
              for (;;) localStorage.setItem(`fill-${k++}`, 'x'.repeat(size));
            } catch {
              // The next one is half as long.
            }
          }
        } else
          Storage.prototype.setItem = () => {
            throw new DOMException('no', 'QuotaExceededError');
          };
      }, kind);
      await openPanel(page, 'files');
      await page.locator('#field-keep').click();
      await expect.poll(() => page.locator('[role="status"]').textContent()).toContain('does not let the page keep anything');
      expect(await page.locator('#field-keep').isChecked(), kind).toBe(false);
      expect(await page.evaluate((key) => localStorage.getItem(key), KEPT), kind).toBeNull();
      await page.keyboard.press('Escape');
      expect(await field(page, width).inputValue(), kind).not.toBe('');
    }
  });

  inBrowser('and what follows from it does not hang on the clock, which may jump', async (open) => {
    const { page } = await open({});
    await openDemo(page);
    const said = await page.locator('#sentence').textContent();
    await page.evaluate(() => {
      const own = Date.now.bind(Date);
      Date.now = () => own() - 40 * 365 * 86_400_000;
    });
    const before = await field(page, width).inputValue();
    await field(page, width).fill('15.9');
    await page.keyboard.press('Tab');
    await field(page, width).fill(before);
    await page.keyboard.press('Tab');
    await expect.poll(() => page.locator('#sentence').textContent()).toBe(said);
  });
});
