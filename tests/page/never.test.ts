import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import {
  choose,
  closePanel,
  DEMO_FILE,
  drawnAnew,
  field,
  fillHand,
  inBrowser,
  noStopSign,
  openDemo,
  openFile,
  openPanel,
  saved,
  show,
} from './browser.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'knucklewright-never-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const width = 'digits.ring.width';
const fixture = (name: string) => fileURLToPath(new URL(`../../fixtures/${name}.json`, import.meta.url));

describe('what must never happen', () => {
  inBrowser('work lost: a field, a choice and a cleared field come back, and the button says which', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const undo = page.locator('#undo');
    await field(page, width).fill('17.2');
    await page.keyboard.press('Tab');
    expect(await undo.getAttribute('title')).toBe('Undo: Ring finger: width 17.2');
    await choose(page, 'target.digit', 'long');
    expect(await undo.getAttribute('title')).toBe('Undo: Treated finger long finger');
    await undo.click();
    expect(await page.locator('input[name="target.digit"][value="ring"]').isChecked()).toBe(true);
    await undo.click();
    expect(await field(page, width).inputValue()).toBe('16.5');
    await page.locator('#redo').click();
    expect(await field(page, width).inputValue()).toBe('17.2');
    // By keys, outside a field.
    await page.locator('#measure-heading').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(() => field(page, width).inputValue()).toBe('16.5');
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(() => field(page, width).inputValue()).toBe('17.2');
  });

  inBrowser("one step a key: what is typed in a field is one step, and in that field the keys are the browser's own", async (open) => {
    const { page } = await open();
    await field(page, width).focus();
    await page.keyboard.type('16.5');
    await page.keyboard.press('Control+z');
    // The browser has its own steps while typing; ours would have emptied the field and the history.
    expect(await page.locator('#redo').getAttribute('title')).toBe('Nothing to redo');
    await field(page, width).fill('16.5');
    await page.keyboard.press('Enter');
    await page.locator('#undo').click();
    expect(await field(page, width).inputValue()).toBe('');
    expect(await page.locator('#undo').getAttribute('title')).toBe('Nothing to undo');
  });

  inBrowser("one person's figures in another's: a new patient ends the history", async (open) => {
    const { page } = await open();
    await fillHand(page);
    await page.locator('#new-patient').click();
    await expect.poll(() => field(page, width).inputValue()).toBe('');
    await page.locator('#undo').click({ force: true });
    await page.keyboard.press('Control+z');
    expect(await field(page, width).inputValue()).toBe('');
    expect(await page.locator('#sentence').count()).toBe(0);
    // The same when another file is opened.
    await openDemo(page);
    await page.locator('#undo').click({ force: true });
    expect(await field(page, width).inputValue()).toBe('16.5');
  });

  inBrowser(
    "what was looked at of one person's hand: with the next one everything begins anew, and the result is said anew",
    async (open) => {
      const { page } = await open();
      const heading = page.locator('#measure .heading-row');
      const [how, status] = [page.locator('#how-line'), page.locator('footer [role="status"]')];
      const [begun, palmUp] = [await how.textContent(), await heading.textContent()];
      const begin = [async () => page.locator('#new-patient').click(), async () => openDemo(page)];
      for (const anew of begin) {
        await openDemo(page);
        await status.getByText('Drawn: Ring finger').waitFor();
        await field(page, 'digits.ring.dorsalLength').focus();
        await expect.poll(() => heading.textContent()).toContain('back up');
        await page.getByRole('button', { name: 'Turn right' }).click();
        await show(page, 'flat');
        await page.getByRole('button', { name: 'Larger' }).click();
        await page.getByRole('button', { name: 'the whole drawing' }).click();
        const enlarged = await page.locator('#pattern-picture').evaluate((svg) => svg.getBoundingClientRect().width);
        await anew();
        await expect.poll(() => heading.textContent()).toBe(palmUp);
        expect(await how.textContent()).toBe(begun);
        await openDemo(page);
        expect(await page.locator('input[name="picture"][value="hand"]').isChecked()).toBe(true);
        // The same sentence as of the hand before, which is another's now.
        await status.getByText('Drawn: Ring finger').waitFor();
        await show(page, 'flat');
        expect(await page.getByRole('button', { name: 'the whole drawing' }).getAttribute('aria-pressed')).toBe('false');
        expect(await page.locator('#pattern-picture').evaluate((svg) => svg.getBoundingClientRect().width)).toBeLessThan(enlarged);
      }
    },
  );

  inBrowser('a stray tap that changes the design: pictures are only looked at, and no tab stop', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const design = () => page.locator('#sentence').textContent();
    const before = await design();
    for (const picture of ['hand', 'section', 'flat'] as const) {
      await show(page, picture);
      await page.locator('.result-picture').click({ position: { x: 90, y: 60 } });
    }
    const fingers = page.locator('.hand-picture');
    const { width: across = 0, height: down = 0 } = (await fingers.boundingBox()) ?? {};
    await fingers.click({ position: { x: across / 2, y: down - 8 } });
    await page.locator('.motion-picture').click({ force: true });
    // A tap on a finger moves the focus to its field, in the row that was last in focus, and does nothing else.
    await field(page, 'digits.ring.circumference').focus();
    const tips = await page
      .locator('.grid tbody .row-width input')
      .evaluateAll((inputs) => inputs.map((input) => input.getBoundingClientRect()));
    const box = await fingers.boundingBox();
    for (const [k, digit] of (['index', 'long', 'ring', 'little'] as const).entries()) {
      const over = tips[k];
      if (!over || !box) throw new Error(`no column of the ${digit} finger`);
      await page.mouse.click(over.x + over.width / 2, box.y + box.height * 0.45);
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe(`field-digits-${digit}-circumference`);
    }
    expect(await design()).toBe(before);
    expect(await page.locator('#undo').getAttribute('title')).toBe('Nothing to undo');
    expect(await page.locator('.hand-picture[tabindex], .motion-picture[tabindex], svg [tabindex]').count()).toBe(0);
  });

  inBrowser('units by half: options, ranges, fractions and figures follow the unit that was chosen', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await page.locator('#unit').selectOption('in');
    await field(page, width).fill('21/32');
    await page.keyboard.press('Tab');
    await openPanel(page, 'options');
    // 10 mm are 0.3937 in; the inch is 25.4 mm exactly.
    expect(await field(page, 'trim').inputValue()).toBe('0.3937');
    expect(await page.locator('#sentence').textContent()).toContain(' in');
    expect(await page.locator('main').textContent()).not.toMatch(/\d mm\b(?! bars)/);
    await page.locator('#unit').selectOption('mm');
    await expect.poll(() => field(page, 'trim').inputValue()).toBe('10');
    await page.keyboard.press('Escape');
    // 21/32 in are 16.66875 mm.
    await expect.poll(() => field(page, width).inputValue()).toBe('16.67');
    await field(page, width).fill('1.65');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Did you mean 1.65 cm?' }).click();
    await expect.poll(() => field(page, width).inputValue()).toBe('1.65 cm');
    expect(await page.locator('#how-line.error').count()).toBe(0);
    // Half a number of the palm is no palm, and nothing is drawn: its field stays, with the focus.
    await fillHand(page, { 'motion.active.lacks': '30', 'motion.active.bends': '70' });
    await choose(page, 'target.digit', 'long');
    await choose(page, 'middle', 'palm');
    await field(page, 'handBreadth').focus();
    for (const key of '80') {
      await page.keyboard.press(key);
      await page
        .locator(key === '8' ? '.banner.kept' : '#sentence')
        .first()
        .waitFor();
      await drawnAnew(page);
    }
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('80');
    // A passive deficit of 2 is another matter than one of 20: while it is typed its field stays, and what is said of 2 is in the reader's language.
    await page.locator('#language').selectOption('de');
    await field(page, 'motion.passive.lacks').focus();
    await page.keyboard.press('2');
    await page.locator('.suggestions .note').getByText('Mittelzügel').waitFor();
    await page.keyboard.press('0');
    await drawnAnew(page);
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('20');
    await page.locator('#language').selectOption('en');
  });

  inBrowser('a finding nobody made: blank fields lack nothing and suggest nothing; one end alone is said', async (open) => {
    const { page } = await open();
    await choose(page, 'target.digit', 'ring');
    await choose(page, 'side', 'left');
    expect(await page.locator('main').textContent()).not.toContain('lacks neither');
    expect(await page.locator('input[name="block"]').count()).toBe(0);
    await field(page, 'motion.active.lacks').fill('25');
    await page.keyboard.press('Tab');
    await page.locator('.look-box').getByText('bending not measured, taken as full').waitFor();
    // What is measured lacks nothing, so that all hangs on what is not: no word on that, and no suggestion, until it is measured or said to be full.
    for (const [typed, blank, asks] of [
      ['lacks', 'bends', 'type how far it bends too'],
      ['bends', 'lacks', 'type what it lacks to straight too'],
    ] as const) {
      await field(page, `motion.active.${blank}`).fill('');
      await field(page, `motion.active.${typed}`).fill(typed === 'lacks' ? '0' : '100');
      await page.locator('.look-box').getByText(asks).waitFor();
      expect(await page.locator('main').textContent()).not.toContain('lacks neither');
      expect(await page.locator('input[name="block"]').count()).toBe(0);
    }
    await field(page, 'motion.active.lacks').fill('0');
    await page.locator('.suggestions').getByText('lacks neither').waitFor();
  });

  inBrowser('focus lost or Enter punished: Enter never submits, empties or jumps to a list of faults', async (open) => {
    const { page } = await open();
    for (const where of ['motion.active.lacks', 'digits.long.width', 'digits.little.dorsalLength']) {
      await field(page, where).focus();
      await page.keyboard.press('Enter');
      await drawnAnew(page);
      const at = await page.evaluate(() => document.activeElement?.tagName ?? 'BODY');
      expect([where, at === 'INPUT' || at === 'BUTTON']).toEqual([where, true]);
    }
    expect(await page.locator('#how-line.error').count()).toBe(0);
  });

  inBrowser("a dead end: a refusal carries a button that mends it, for a child's hand too", async (open) => {
    const { page } = await open();
    const child = JSON.parse(readFileSync(DEMO_FILE, 'utf8'));
    child.digits = {
      long: { width: 11.5, circumference: 38, palmarRoom: 15, dorsalLength: 30 },
      ring: { width: 11, circumference: 35, palmarRoom: 13, dorsalLength: 28 },
      little: { width: 10, circumference: 32, palmarRoom: 12, dorsalLength: 22 },
    };
    const path = join(folder, 'child.json');
    writeFileSync(path, JSON.stringify(child));
    await openFile(page, path);
    await page.locator('#sentence, .look-box.stops').first().waitFor();
    if ((await page.locator('#sentence').count()) === 0) {
      await openPanel(page, 'look');
      await page
        .getByRole('button', { name: /^Use width/ })
        .first()
        .click();
    }
    await page.locator('#sentence').waitFor();
    expect(await page.locator('.kept').count()).toBe(0);
    await noStopSign(page);
    expect((await saved(page, '#print')).content.subarray(0, 5).toString()).toBe('%PDF-');
  });

  inBrowser('a dead end: whatever is refused, the button beside it mends it, and a pattern is printed', async (open) => {
    const { page } = await open();
    const refused: readonly (readonly [string, string, string, string | null])[] = [
      ['motion.active.lacks', '-10', 'Use 10', null],
      ['digits.ring.width', '1.65', 'Did you mean 1.65 cm?', null],
      ['digits.ring.circumference', '20', 'Go to the field', null],
      ['digits.ring.circumference', '30', 'Clear circumference', null],
      ['trim', '99', 'Use 10', 'options'],
      ['width', '3', 'Use auto', 'options'],
      ['date', 'soon', 'Clear Date on the pattern', 'options'],
    ];
    for (const [where, text, button, panel] of refused) {
      await openDemo(page);
      await noStopSign(page);
      if (panel) await openPanel(page, panel);
      await field(page, where).fill(text);
      await page.keyboard.press('Tab');
      await page.locator('#print').click();
      const mend = page.locator('.looks .stops').getByRole('button', { name: button });
      await mend.waitFor();
      await mend.click();
      // The button goes away with what it mended; the focus does not.
      await expect.poll(() => page.evaluate(() => document.activeElement?.id ?? ''), { message: `focus, ${where}` }).not.toBe('');
      // The field that is gone to, or that was cleared, is typed anew.
      if (button === 'Go to the field' || button === 'Clear circumference') {
        await page.waitForFunction((id) => document.activeElement?.id === id, `field-${where.replaceAll('.', '-')}`);
        await field(page, where).fill('53');
      }
      await expect.poll(() => page.locator('.look-box.stops, .looks .stops').count(), { message: where }).toBe(0);
      expect([where, (await saved(page, '#print')).name]).toEqual([where, expect.stringMatching(/\.pdf$/)]);
      await page.keyboard.press('Escape');
    }
  });

  inBrowser('focus lost: what closes gives it back to its button, and what goes away leaves it on the page', async (open) => {
    const { page } = await open();
    await openDemo(page);
    const at = () => page.evaluate(() => document.activeElement?.id);
    for (const panel of ['more', 'stop', 'ways', 'look', 'figures', 'options', 'files']) {
      await openPanel(page, panel);
      await page.keyboard.press('Escape');
      await expect.poll(at, { message: panel }).toBe(`open-${panel}`);
    }
    await page.locator('#new-patient').click();
    await expect.poll(at).toBe('finger-heading');
    await page.locator('#example').click();
    await expect.poll(async () => (await at()) === '', { message: 'the example' }).toBe(false);
    // On a phone the options open from the menu, which closes: its button has the focus in the end.
    await page.setViewportSize({ width: 390, height: 844 });
    await page.locator('#menu').click();
    await openPanel(page, 'options');
    expect(await page.locator('#open-options').isVisible()).toBe(false);
    await page.keyboard.press('Escape');
    await expect.poll(at).toBe('menu');
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  inBrowser(
    'an answer about another finger: that no sign stands is asked anew when the finger changes, a sign that stands goes on standing',
    async (open) => {
      const { page } = await open();
      await openDemo(page);
      const none = page.locator('#stop-none');
      await noStopSign(page);
      await expect.poll(() => none.getAttribute('aria-pressed')).toBe('true');
      await choose(page, 'target.digit', 'long');
      await expect.poll(() => none.getAttribute('aria-pressed')).toBe('false');
      await page.locator('#undo').click();
      await expect.poll(() => none.getAttribute('aria-pressed')).toBe('true');
      await openPanel(page, 'stop');
      await page.locator('#panel-stop input').first().check();
      await closePanel(page);
      await choose(page, 'target.digit', 'long');
      await page.locator('#open-stop.grave').waitFor();
    },
  );

  inBrowser('a save that is not confirmed beside its button', async (open) => {
    const { page } = await open();
    await openDemo(page);
    await noStopSign(page);
    const { name } = await saved(page, '#print');
    await page.locator('#saved').getByText(name).waitFor();
    await page.getByRole('status').filter({ hasText: name }).waitFor();
  });

  inBrowser(
    "another patient's figures: a file that is opened leaves nothing of the person before, answers and options included",
    async (open) => {
      const { page } = await open();
      await openDemo(page);
      await noStopSign(page);
      await field(page, 'digits.ring.pipCircumference').fill('61');
      await openPanel(page, 'options');
      await field(page, 'trim').fill('12');
      await page.keyboard.press('Escape');
      await openFile(page, fixture('case-gains'));
      await page.locator('#nothing-wrong').click();
      await field(page, 'visit.pain').fill('7');
      await openFile(page, fixture('case-stalls'));
      await page.getByRole('heading', { name: /DEMO-12/ }).waitFor();
      expect(await field(page, 'visit.pain').inputValue()).toBe('');
      expect(await page.locator('input[name="visit.skin"]:checked').count()).toBe(0);
      await page.locator('#mode-design').click();
      expect(await page.locator('#stop-none').getAttribute('aria-pressed')).toBe('false');
      expect(await field(page, 'digits.ring.pipCircumference').inputValue()).toBe('');
      await openPanel(page, 'options');
      expect(await field(page, 'trim').inputValue()).toBe('10');
      expect(await page.locator('#undo').getAttribute('title')).toBe('Nothing to undo');
    },
  );
});
