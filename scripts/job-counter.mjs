// What a job costs the person who does it: clicks, keys, Tabs, height scrolled and time, while the page is worked by mouse or by keys.

/** A page with counted hands: everything that a job does goes through it. */
export function countedHands(page) {
  const count = { clicks: 0, keys: 0, tabs: 0, enters: 0, scrolled: 0 };
  const start = performance.now();
  const scrolls = () =>
    page.evaluate(() => {
      let sum = scrollY;
      for (const element of document.querySelectorAll('*')) sum += element.scrollTop;
      return sum;
    });
  const near = async (locator) => {
    const before = await scrolls();
    await locator.scrollIntoViewIfNeeded();
    count.scrolled += Math.abs((await scrolls()) - before);
  };
  return {
    page,
    async click(selector) {
      const target = page.locator(selector).first();
      await near(target);
      await target.click();
      count.clicks++;
    },
    async type(text) {
      await page.keyboard.type(text);
      count.keys += text.length;
    },
    async press(key) {
      const before = await scrolls();
      await page.keyboard.press(key);
      if (key === 'Tab' || key === 'Shift+Tab') count.tabs++;
      else count.keys++;
      if (key === 'Enter') count.enters++;
      count.scrolled += Math.abs((await scrolls()) - before);
    },
    /** Presses Tab until the focus is on the element; fails after more stops than a page should have. */
    async tabTo(selector) {
      for (let stop = 0; stop < 250; stop++) {
        if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
        await this.press('Tab');
      }
      throw new Error(`Tab never reached ${selector}`);
    },
    result: () => ({ ...count, scrolled: Math.round(count.scrolled), seconds: Number(((performance.now() - start) / 1000).toFixed(1)) }),
  };
}
