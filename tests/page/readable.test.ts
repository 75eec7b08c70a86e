import { describe, expect } from 'vitest';
import { tried } from '../by-night.ts';
import {
  CASE_FILE,
  choose,
  closePanel,
  DEMO_FILE,
  drawnAnew,
  field,
  inBrowser,
  LOCALES,
  MP_HELD,
  openDemo,
  openFile,
  openPanel,
  PLATE_DEMO_FILE,
  show,
} from './browser.ts';

/** By day German, whose words are the longest. */
const WORDIEST = tried(LOCALES, (locale) => locale === 'de-DE');

describe('the page', () => {
  inBrowser('needs no scrolling sideways at 320 px, and at 640 and 1280 px with text of 200 %, in each language', async (open) => {
    for (const locale of WORDIEST) {
      const { page } = await open({ viewport: { width: 320, height: 700 }, locale });
      await openDemo(page);
      for (const [width, height, percent] of [
        [320, 700, 100],
        [640, 900, 200],
        [1280, 660, 200],
      ] as const) {
        await page.setViewportSize({ width, height });
        await page.evaluate((share) => {
          document.documentElement.style.fontSize = `${(share / 100) * 15}px`;
        }, percent);
        // The page takes up the width of a window in the frame after.
        await drawnAnew(page);
        for (const turn of ['finger', 'measure', 'make']) {
          if (await page.locator(`#turn-${turn}`).isVisible()) await page.locator(`#turn-${turn}`).click();
          const wide = await page.evaluate(() => {
            const inside = (element: Element) => element.closest('.scroll') !== null && !element.classList.contains('scroll');
            const over = [...document.querySelectorAll('body *')].filter(
              (element) =>
                !inside(element) && !element.closest('.hidden, .skip, svg') && element.getBoundingClientRect().right > innerWidth + 1,
            );
            return over.map((element) => `${element.tagName}.${element.getAttribute('class') ?? ''}#${element.id}`);
          });
          expect([locale, width, turn, wide]).toEqual([locale, width, turn, []]);
        }
      }
    }
  });

  inBrowser(
    'scrolls nothing at 1280 x 660, 1366 x 630 and 1093 x 490: empty, with a pattern, with warnings and an error, with a plate, with a visit, in each language',
    async (open) => {
      const windows = [
        [1366, 630],
        [1280, 660],
        [1093, 490],
      ] as const;
      for (const locale of WORDIEST) {
        const { page } = await open({ viewport: { width: 1366, height: 630 }, locale });
        const inEach = async (state: string, also?: (height: number) => Promise<void>) => {
          for (const [width, height] of windows) {
            await page.setViewportSize({ width, height });
            const size = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]);
            expect([locale, state, size]).toEqual([locale, state, [width, height]]);
            await also?.(height);
          }
        };
        await inEach('empty');
        await openDemo(page);
        await inEach('with a pattern');
        // Three things to look at and an error: no stop sign asked, bending not measured, a loop, and a width that no finger has.
        await field(page, 'motion.active.bends').fill('');
        await field(page, 'digits.ring.palmarRoom').fill('');
        await field(page, 'digits.ring.width').fill('160');
        await page.keyboard.press('Tab');
        await page.locator('#how-line.error').waitFor();
        await inEach('with an error');
        await field(page, 'digits.ring.width').fill('16');
        await field(page, 'motion.active.bends').fill('60');
        await page.locator('#sentence').getByText(MP_HELD).waitFor();
        await inEach('with a plate', async (height) => {
          // And what must be seen is seen.
          for (const id of ['print', 'stop-none', 'open-ways', 'open-look', 'undo']) {
            const box = await page.locator(`#${id}`).boundingBox();
            expect([id, (box?.y ?? 1e9) + (box?.height ?? 0) <= height]).toEqual([id, true]);
          }
        });
        await openFile(page, CASE_FILE);
        await page.locator('#nothing-wrong').click();
        await inEach('with a visit');
      }
    },
  );

  inBrowser('scrolls nothing on a tablet upright, 820 x 1180: empty, with a strip, with a plate, in each language', async (open) => {
    for (const locale of tried(LOCALES, (one) => one !== 'en-GB')) {
      const { page } = await open({ viewport: { width: 820, height: 1180 }, hasTouch: true, locale });
      const holds = async (state: string) => {
        const size = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]);
        expect([locale, state, size]).toEqual([locale, state, [820, 1180]]);
      };
      await page.locator('.worn svg').waitFor();
      await holds('empty');
      await openDemo(page);
      await holds('with a strip');
      await openDemo(page, PLATE_DEMO_FILE);
      await page.locator('#sentence').getByText(MP_HELD).waitFor();
      await holds('with a plate');
    }
  });

  inBrowser('shows on an empty page one that is worn, described and said to be of an invented hand', async (open) => {
    const { page } = await open();
    const picture = page.locator('.worn svg[role="img"]');
    await picture.waitFor();
    expect((await picture.locator('desc').textContent()) ?? '').toContain('Ring finger 20 degrees flexed');
    expect(await page.locator('.worn figcaption').textContent()).toContain('invented');
    expect(await page.locator('.worn :is(button, [tabindex])').count()).toBe(0);
    // It is gone as soon as there is something of one's own.
    await choose(page, 'target.digit', 'ring');
    expect(await picture.count()).toBe(1);
    await field(page, 'motion.active.lacks').fill('25');
    await page.locator('#sentence').waitFor();
    expect(await picture.count()).toBe(0);
  });

  inBrowser(
    'hides nothing that has the focus behind what sticks, with the keyboard of a phone up; in a lower window nothing sticks',
    async (open) => {
      for (const locale of WORDIEST) {
        const { page } = await open({ viewport: { width: 390, height: 450 }, hasTouch: true, locale });
        await openDemo(page);
        for (const height of [450, 360, 340]) {
          await page.setViewportSize({ width: 390, height });
          await drawnAnew(page);
          const sticks = await page.evaluate(() =>
            ['header', '.bottom-bar'].map((part) => getComputedStyle(document.querySelector(part) as Element).position === 'sticky'),
          );
          // The result goes on being seen while a keyboard is up; the head gives its height, and under 360 px the fields need all of it.
          expect([height, sticks]).toEqual([height, [false, height >= 360]]);
          for (const turn of ['finger', 'measure'] as const) {
            await page.locator(`#turn-${turn}`).click();
            await page.locator(`#${turn}-heading`).focus();
            let looked = 0;
            for (let stop = 0; stop < 30; stop++) {
              await page.keyboard.press('Tab');
              await drawnAnew(page);
              const seen = await page.evaluate((within) => {
                const at = document.activeElement;
                if (!at?.closest(`#${within}`)) return null;
                const { left, right, top, bottom } = (at.closest('label') ?? at).getBoundingClientRect();
                const found = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
                return { id: at.id, seen: found !== null && (at.closest('label') ?? at).contains(found) };
              }, turn);
              if (seen === null) break;
              looked++;
              expect([height, turn, seen]).toEqual([height, turn, { ...seen, seen: true }]);
            }
            expect(looked).toBeGreaterThan(4);
          }
        }
      }
    },
  );

  inBrowser('has targets of at least 24 px, and of 44 where one touches', async (open) => {
    const { page } = await open({ viewport: { width: 1280, height: 660 } });
    await openDemo(page);
    await page.locator('svg.moulded').waitFor();
    // A width that no finger has shows the error's mend as well.
    await field(page, 'digits.ring.width').fill('160');
    await page.keyboard.press('Tab');
    const small = (least: number) =>
      page.evaluate(
        (px) =>
          [...document.querySelectorAll<HTMLElement>('button, input, select')]
            .filter((element) => !element.closest('.skip') && !element.classList.contains('hidden') && !element.classList.contains('skip'))
            .map((element) => ({
              name: element.id || element.textContent,
              box: (element.closest('label') ?? element).getBoundingClientRect(),
            }))
            .filter(({ box }) => box.width > 0 && (box.width < px || box.height < px))
            .map(({ name, box }) => `${name}: ${box.width} x ${box.height}`),
        least,
      );
    for (const [width, height, least] of [
      [1280, 660, 24],
      [1093, 490, 24],
      [820, 1180, 44],
      [390, 844, 44],
    ] as const) {
      await page.setViewportSize({ width, height });
      if (width < 600) await page.locator('#turn-finger').waitFor();
      for (const turn of ['finger', 'measure', 'make'] as const) {
        const tab = page.locator(`#turn-${turn}`);
        if ((await tab.count()) > 0) await tab.click();
        expect([width, turn, await small(least)]).toEqual([width, turn, []]);
        if (turn !== 'make') continue;
        for (const panel of ['look', 'files'] as const) {
          await openPanel(page, panel);
          expect([width, panel, await small(least)]).toEqual([width, panel, []]);
          await closePanel(page);
        }
      }
    }
  });

  inBrowser('has letters of at least 10 px on the drawn and the moulded hand, in every window', async (open) => {
    for (const [file, locale] of [
      [DEMO_FILE, 'de-DE'],
      [PLATE_DEMO_FILE, 'es-ES'],
    ] as const) {
      const { page, context } = await open({ locale, viewport: { width: 1280, height: 660 } });
      await openDemo(page, file);
      for (const [width, height] of [
        [1280, 660],
        [1093, 490],
        [820, 1180],
        [390, 844],
      ] as const) {
        await page.setViewportSize({ width, height });
        if (width < 600) await page.locator('#turn-finger').waitFor();
        for (const [turn, picture] of [
          ['measure', '.hand-picture text'],
          ['make', '.moulded .name'],
        ] as const) {
          const tab = page.locator(`#turn-${turn}`);
          if ((await tab.count()) > 0) await tab.click();
          await page.locator(picture).first().waitFor();
          const least = () =>
            page
              .locator(picture)
              .evaluateAll((all) =>
                Math.min(
                  ...(all as SVGTextElement[]).map(
                    (text) => Number.parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.a ?? 0),
                  ),
                ),
              );
          await expect.poll(least, { message: `${width} ${picture}` }).toBeGreaterThan(10);
          // Each name is seen whole, and none lies on another.
          const boxes = await page.locator(picture).evaluateAll((all) =>
            (all as SVGTextElement[]).map((text) => {
              const { x, y, width: w, height: h } = text.getBBox();
              const seen = text.ownerSVGElement?.viewBox.baseVal;
              return { name: text.textContent, x, y, w, h, bottom: (seen?.y ?? 0) + (seen?.height ?? 0) };
            }),
          );
          for (const [k, box] of boxes.entries()) {
            if (turn === 'make') expect(box.y + 0.8 * box.h, `${width} ${box.name}`).toBeLessThan(box.bottom);
            for (const other of boxes.slice(k + 1)) {
              // What stands over and under the letters is left out of their boxes.
              const isApart =
                Math.abs(box.y - other.y) > 0.8 * box.h || Math.max(box.x, other.x) > Math.min(box.x + box.w, other.x + other.w);
              expect([width, box.name, other.name, isApart]).toEqual([width, box.name, other.name, true]);
            }
          }
        }
      }
      await context.close();
    }
  });

  inBrowser(
    'has letters of at least 10 px on the enlarged chart of a case, and on a tablet and a phone on the chart itself',
    async (open) => {
      const { page } = await open({ viewport: { width: 1280, height: 660 } });
      await openFile(page, CASE_FILE);
      await page.locator('#open-chart').click();
      const letters = async (chart: string) => {
        const drawing = page.locator(`svg:has(> #${chart}-title)`);
        await drawing.waitFor();
        // Figures of the chart are 2.5 mm high; a letter of 10 px has capitals of 7.2.
        return drawing.evaluate((svg: SVGSVGElement) => (2.5 / 0.72) * (svg.getScreenCTM()?.a ?? 0));
      };
      expect(await letters('chart-large')).toBeGreaterThan(10);
      await closePanel(page);
      for (const [width, height] of [
        [820, 1180],
        [390, 844],
      ] as const) {
        await page.setViewportSize({ width, height });
        if (width < 600) await page.locator('#visit-next').click();
        expect([width, (await letters('chart')) >= 10]).toEqual([width, true]);
      }
    },
  );

  inBrowser('names and describes its pictures and carries them in tables', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const pictures = [
      ['hand', 'svg.moulded'],
      ['section', 'svg.section:not(.small)'],
      ['flat', 'svg#pattern-picture'],
    ] as const;
    for (const [which, picture] of pictures) {
      await show(page, which);
      expect(await page.locator(picture).getAttribute('role')).toBe('img');
      expect((await page.locator(`${picture} > title`).textContent())?.length).toBeGreaterThan(5);
      expect((await page.locator(`${picture} > desc`).textContent())?.length).toBeGreaterThan(30);
      if (which === 'flat') continue;
      // Both are named after the hand: its sides, the thumb's, and its fingers, the treated one in its colour.
      const words = await page.locator(`${picture} text`).allTextContents();
      expect([which, words.some((word) => word.includes('thumb side')), words.includes('back')]).toEqual([which, true, true]);
      expect(await page.locator(`${picture} .treated, ${picture} .fill-treated`).count()).toBeGreaterThan(0);
    }
    await openPanel(page, 'figures');
    const rows = await page.locator('table.marks tbody tr').allInnerTexts();
    expect(rows.length).toBeGreaterThan(8);
    expect(rows.at(-1)).toContain('End of the strip');
    // One polite line; an output element would speak at every key.
    expect(await page.getByRole('status').count()).toBe(1);
  });
});
