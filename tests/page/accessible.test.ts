import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { field, inBrowser, openDemo } from './browser.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA and its good practices: rule and element. */
async function findings(page: Page): Promise<readonly string[]> {
  // A function, not an element: the page's policy lets no other script in.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const axe = (
      window as unknown as {
        axe: {
          run: (
            c: Document,
            o: object,
          ) => Promise<{ violations: { id: string; nodes: { target: unknown[]; failureSummary: string }[] }[] }>;
        };
      }
    ).axe;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: tags } });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${String(n.target)}: ${n.failureSummary}`));
  });
}

const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  empty: async () => {},
  valid: async (page) => {
    await openDemo(page);
    for (const details of await page.locator('details > summary').all()) await details.click();
  },
  plate: async (page) => {
    await openDemo(page);
    await field(page, 'target.pipFlexionDeficit').fill('40');
    await page.getByRole('heading', { name: 'MP plate, dorsal' }).waitFor();
  },
  case: async (page) => {
    await openDemo(page, CASE_FILE);
    await page.locator('#case-heading').waitFor();
  },
  invalid: async (page) => {
    await openDemo(page);
    await field(page, 'digits.ring.width').fill('no number');
    await page.locator('input[name="block"][value="own"]').check();
    await page.locator('input[name="places.long"][value="raised"]').check();
    await page.locator('#draw').click();
    await page.locator('#errors').waitFor();
  },
};

/** A case with its hand, visits, chart and what next: everything that the page can show of a strip. */
const CASE_FILE = fileURLToPath(new URL('../../fixtures/case-gains.json', import.meta.url));

const LOOKS: Readonly<Record<string, BrowserContextOptions>> = {
  light: { colorScheme: 'light' },
  narrow: { viewport: { width: 320, height: 700 } },
  dark: { colorScheme: 'dark' },
  'forced-colours': { forcedColors: 'active' },
};

describe('axe finds nothing', () => {
  for (const [look, options] of Object.entries(LOOKS)) {
    for (const [state, bring] of Object.entries(STATES)) {
      inBrowser(`on the ${state} ${look} page`, async (open) => {
        const { page } = await open(options);
        await bring(page);
        expect(await findings(page)).toEqual([]);
      });
    }
  }

  inBrowser('in Spanish and German', async (open) => {
    for (const locale of ['es-ES', 'de-DE']) {
      const { page } = await open({ locale });
      await openDemo(page);
      expect(await page.evaluate(() => document.documentElement.lang)).toBe(locale.slice(0, 2));
      expect(await findings(page)).toEqual([]);
    }
  });
});

describe('the page', () => {
  for (const [name, options, fontSize] of [
    ['at 320 px', { viewport: { width: 320, height: 700 } }, 100],
    ['at 640 px with text of 200 %', { viewport: { width: 640, height: 900 } }, 200],
  ] as const) {
    inBrowser(`${name} needs no scrolling sideways, in all three languages`, async (open) => {
      for (const locale of ['en-GB', 'es-ES', 'de-DE']) {
        const { page } = await open({ ...options, locale });
        await openDemo(page, CASE_FILE);
        await page.locator('#case-heading').waitFor();
        await page.evaluate((percent) => {
          document.documentElement.style.fontSize = `${(percent / 100) * 17}px`;
        }, fontSize);
        for (const details of await page.locator('details > summary').all()) await details.click();
        const wide = await page.evaluate(() => {
          const inside = (element: Element) => element.closest('.scroll') !== null && !element.classList.contains('scroll');
          const over = [...document.querySelectorAll('body *')].filter(
            (element) => !inside(element) && !element.closest('.hidden, .skip') && element.getBoundingClientRect().right > innerWidth + 1,
          );
          return over.map((element) => `${element.tagName}.${element.getAttribute('class') ?? ''}#${element.id}`);
        });
        expect(wide).toEqual([]);
      }
    });
  }

  inBrowser('has targets of at least 24 px', async (open) => {
    const { page } = await open({ viewport: { width: 320, height: 700 } });
    await openDemo(page);
    for (const details of await page.locator('details > summary').all()) await details.click();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('button, input, select, summary')]
        .map((element) => ({ name: element.id || element.textContent, box: (element.closest('label') ?? element).getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ name, box }) => `${name}: ${box.width} x ${box.height}`),
    );
    expect(small).toEqual([]);
  });

  inBrowser('names and describes its pictures and carries them in tables', async (open) => {
    const { page } = await open();
    await openDemo(page);
    for (const picture of ['svg.pattern', 'svg.section:not(.small)', 'svg.moulded']) {
      expect(await page.locator(picture).getAttribute('role')).toBe('img');
      expect((await page.locator(`${picture} > title`).textContent())?.length).toBeGreaterThan(5);
      expect((await page.locator(`${picture} > desc`).textContent())?.length).toBeGreaterThan(30);
    }
    const rows = await page.locator('table.marks tbody tr').allInnerTexts();
    // Strip model, worked example (long, ring lowered for raised is the mirror image): the ring midline of the outer course is the seam.
    expect(rows[0]?.split(/\s+/).slice(0, 2)).toEqual(['7.5', 'mm']);
    expect(rows.at(-1)).toContain('177.4 mm');
    expect(await page.locator('[role="status"]').count()).toBe(1);
  });
});
