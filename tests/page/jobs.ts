import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';

/** What a job costs the person who does it. Enter counts as a key; typed characters do as well; scrolled is what window and parts moved, px. */
export interface Cost {
  readonly clicks: number;
  readonly keys: number;
  readonly tabs: number;
  readonly scrolled: number;
  readonly seconds: number;
}

/** A hand of figures by the name of their fields, as they are typed. */
type Figures = Readonly<Record<string, string>>;

const ADULT: Figures = {
  ...figures('width', ['17.5', '17.5', '16.5', '14.5']),
  ...figures('circumference', ['57', '57', '53', '47']),
  ...figures('palmarRoom', ['25', '27', '25', '19']),
  ...figures('dorsalLength', ['44', '48', '45', '36']),
};
/** A child of six: seven tenths of the adult, from memory. */
const CHILD: Figures = {
  ...figures('width', ['12.5', '12.5', '11.5', '10.5']),
  ...figures('circumference', ['40', '40', '37', '33']),
  ...figures('palmarRoom', ['17', '18', '17', '13']),
  ...figures('dorsalLength', ['31', '34', '31', '25']),
};
/** 25.4 mm are 1 in: the adult to the nearest 32nd. */
const INCHES: Figures = {
  ...figures('width', ['11/16', '11/16', '21/32', '9/16']),
  ...figures('circumference', ['2 1/4', '2 1/4', '2 3/32', '1 27/32']),
  ...figures('palmarRoom', ['31/32', '1 1/16', '31/32', '3/4']),
  ...figures('dorsalLength', ['1 23/32', '1 7/8', '1 25/32', '1 13/32']),
};

function figures(id: string, [index = '', long = '', ring = '', little = '']: readonly string[]): Figures {
  return {
    [`digits.index.${id}`]: index,
    [`digits.long.${id}`]: long,
    [`digits.ring.${id}`]: ring,
    [`digits.little.${id}`]: little,
  };
}

/** Hands that count what they do: every act of a job goes through them. `watch` is called after each. */
export class CountedHands {
  readonly page: Page;
  readonly #watch: (page: Page) => Promise<void>;
  readonly #start = performance.now();
  readonly #count = { clicks: 0, keys: 0, tabs: 0, scrolled: 0 };

  constructor(page: Page, watch: (page: Page) => Promise<void> = async () => {}) {
    this.page = page;
    this.#watch = watch;
  }

  /** Name or id of what has the focus. */
  at(): Promise<string> {
    return this.page.evaluate(() => document.activeElement?.getAttribute('name') ?? document.activeElement?.id ?? '');
  }

  async #act(act: () => Promise<void>): Promise<void> {
    const before = await scrolls(this.page);
    await act();
    // The page moves the focus in the next frame.
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    this.#count.scrolled += Math.abs((await scrolls(this.page)) - before);
    await this.#watch(this.page);
  }

  async click(selector: string): Promise<void> {
    this.#count.clicks++;
    const target = this.page.locator(selector).first();
    await this.#act(async () => {
      const at = await target.evaluate(pointInSight);
      if (at === null) await target.click();
      else await this.page.mouse.click(at.x, at.y);
    });
  }

  async choose(selector: string, value: string): Promise<void> {
    // A list that drops down takes one press to open and one to choose.
    this.#count.clicks += 2;
    await this.#act(async () => {
      await this.page.locator(selector).selectOption(value);
    });
  }

  async type(text: string): Promise<void> {
    this.#count.keys += text.length;
    await this.page.keyboard.type(text);
  }

  async press(key: string): Promise<void> {
    if (key === 'Tab') this.#count.tabs++;
    else this.#count.keys++;
    await this.#act(() => this.page.keyboard.press(key));
  }

  async tabTo(name: string): Promise<void> {
    for (let stop = 0; stop < 80; stop++) {
      if ((await this.at()) === name) return;
      await this.press('Tab');
    }
    throw new Error(`Tab never reached ${name}`);
  }

  /** A click or key after which a file must have been saved; returns its name. */
  async saved(act: () => Promise<void>): Promise<string> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), act()]);
    return download.suggestedFilename();
  }

  cost(): Cost {
    const seconds = (performance.now() - this.#start) / 1000;
    return { ...this.#count, scrolled: Math.round(this.#count.scrolled), seconds: Number(seconds.toFixed(1)) };
  }
}

/**
 * Where a hand would press what is wholly in sight, px; null where it is not, so that it must be scrolled to. The driver's own click scrolls at times
 * to what is in sight already, which no hand does.
 */
function pointInSight(element: Element): { readonly x: number; readonly y: number } | null {
  const { left, top, right, bottom } = element.getBoundingClientRect();
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const isWhole = left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight && right > left;
  const isOnTop = element.contains(document.elementFromPoint(x, y));
  return isWhole && isOnTop ? { x, y } : null;
}

/** How far the window and all that scrolls in it stand from their beginnings, px. */
function scrolls(page: Page): Promise<number> {
  return page.evaluate(() => {
    let sum = scrollY;
    for (const element of document.querySelectorAll('body *')) sum += element.scrollTop;
    return sum;
  });
}

interface Wanted {
  readonly digit: 'index' | 'long' | 'ring' | 'little';
  readonly lacks: string;
  readonly bends: string;
  readonly hand: Figures;
  /** How circumferences are typed, where not as lengths. */
  readonly roundIn?: string;
}

const radio = (name: string, value: string) => `input[name="${name}"][value="${value}"]`;
const input = (name: string) => `input[name="${name}"]`;

/** The design by mouse and keys: clicks to get somewhere, Enter to go on. Ends with the printed pattern, whose name it gives. */
async function design(hands: CountedHands, { digit, lacks, bends, hand, roundIn }: Wanted): Promise<string> {
  await hands.click(radio('target.digit', digit));
  await hands.click(radio('side', 'left'));
  await hands.click(input('motion.active.lacks'));
  await hands.type(lacks);
  await hands.press('Enter');
  await hands.type(bends);
  await hands.press('Enter');
  await hands.click('#stop-none');
  const isNarrow = (await hands.page.locator('#bar-measure').count()) > 0;
  if (isNarrow) await hands.click('#bar-measure');
  await hands.click('.grid tr.current input, .grid input');
  await measure(hands, hand, roundIn);
  return hands.saved(() => hands.press('Enter'));
}

/** Every field that Enter leads to gets its figure, until it leads to Print. */
async function measure(hands: CountedHands, hand: Figures, roundIn?: string): Promise<void> {
  let isRoundAsked = roundIn === undefined;
  for (let k = 0; k < 30; k++) {
    const at = await hands.at();
    if (at === 'print' || at === 'bar-print') return;
    const figure = hand[at];
    if (figure === undefined) throw new Error(`Enter led to ${at}`);
    if (roundIn !== undefined && !isRoundAsked && at.endsWith('.circumference')) {
      await hands.choose('#round-in', roundIn);
      await hands.click(input(at));
      isRoundAsked = true;
    }
    await hands.type(figure);
    await hands.press('Enter');
  }
  throw new Error('Enter never led to Print');
}

/**
 * The first job with three things to look at (stop signs not asked, bending not measured, a length left out) and an error (a width that
 * no finger has), which Print names and each of which is mended from there.
 */
async function designWithFaults(hands: CountedHands): Promise<string> {
  await hands.click(radio('target.digit', 'ring'));
  await hands.click(radio('side', 'left'));
  await hands.click(input('motion.active.lacks'));
  await hands.type('25');
  const isNarrow = (await hands.page.locator('#bar-measure').count()) > 0;
  if (isNarrow) await hands.click('#bar-measure');
  await hands.click(input('digits.long.width'));
  await measure(hands, { ...ADULT, 'digits.ring.width': '160', 'digits.little.palmarRoom': '' });
  await hands.press('Enter');
  // What is in the way stops the print and leads to its field, which has the focus then.
  await hands.click('.looks .stops .mend');
  if ((await hands.at()) !== 'digits.ring.width') throw new Error(`the mend led to ${await hands.at()}`);
  await hands.press('Control+a');
  await hands.type('16.5');
  if (isNarrow) await hands.click('#turn-finger');
  await hands.click('#stop-none');
  return hands.saved(() => hands.click(isNarrow ? '#bar-print' : '#print'));
}

/** The first job without a mouse. */
async function designByKeys(hands: CountedHands): Promise<string> {
  await hands.tabTo('skip-finger');
  await hands.press('Enter');
  await hands.press('ArrowRight');
  await hands.press('ArrowRight');
  await hands.tabTo('side');
  await hands.press('Space');
  await hands.tabTo('motion.active.lacks');
  await hands.type('25');
  await hands.press('Enter');
  await hands.type('100');
  await hands.press('Enter');
  // What a rule asks for besides is left open.
  while ((await hands.at()).startsWith('motion.')) await hands.press('Enter');
  await hands.press('Enter');
  await hands.tabTo('digits.long.width');
  await measure(hands, ADULT);
  return hands.saved(() => hands.press('Enter'));
}

/** The first job with Tab from field to field, for whoever does not use Enter. */
async function designByTabs(hands: CountedHands): Promise<string> {
  await hands.tabTo('skip-finger');
  await hands.press('Enter');
  await hands.press('ArrowRight');
  await hands.press('ArrowRight');
  await hands.tabTo('side');
  await hands.press('Space');
  await hands.tabTo('motion.active.lacks');
  await hands.type('25');
  await hands.press('Tab');
  await hands.type('100');
  await hands.tabTo('stop-none');
  await hands.press('Space');
  await hands.tabTo('digits.long.width');
  for (const row of ['width', 'circumference', 'palmarRoom', 'dorsalLength'])
    for (const digit of ['long', 'ring', 'little']) {
      const where = `digits.${digit}.${row}`;
      await hands.tabTo(where);
      await hands.type(ADULT[where] ?? '');
    }
  await hands.tabTo('print');
  return hands.saved(() => hands.press('Enter'));
}

const CASE = fileURLToPath(new URL('../../fixtures/case-gains.json', import.meta.url));

async function addVisit(hands: CountedHands): Promise<string> {
  await hands.page.locator('#open-file').waitFor({ state: 'attached' });
  // Where the window is narrow the button stands in the menu.
  if (!(await hands.page.locator('label[for="open-file"]').isVisible())) await hands.click('#menu');
  const [chooser] = await Promise.all([hands.page.waitForEvent('filechooser'), hands.click('label[for="open-file"]')]);
  await chooser.setFiles(CASE);
  await hands.page.locator('#nothing-wrong').waitFor();
  await hands.click('#nothing-wrong');
  await hands.type('1');
  const isNarrow = (await hands.page.locator('#bar-next').count()) > 0;
  if (isNarrow) await hands.click('#bar-next');
  if ((await hands.at()) !== 'visit.lacks') await hands.click(input('visit.lacks'));
  await hands.press('Control+a');
  await hands.type('12');
  await hands.press('Tab');
  await hands.press('Control+a');
  await hands.type('98');
  if (isNarrow) await hands.click('#bar-next');
  if ((await hands.at()) !== 'visit.wear') await hands.click(input('visit.wear'));
  await hands.type('6');
  await hands.click(radio('visit.fits', 'yes'));
  await hands.click(radio('visit.redirects', 'yes'));
  if (isNarrow) await hands.click('#bar-next');
  await hands.click(isNarrow ? '#bar-record' : '#add-visit');
  return hands.saved(() => hands.click(isNarrow ? '#bar-save' : '#save-case'));
}

export interface Job {
  readonly name: string;
  /** Does the job from an empty page and returns the name of the file that was saved. */
  readonly run: (hands: CountedHands) => Promise<string>;
}

/** The jobs that are counted, in the order of the page's rules. */
export const JOBS: readonly Job[] = [
  {
    name: 'ring lacks 25 of extension, three fingers',
    run: (hands) => design(hands, { digit: 'ring', lacks: '25', bends: '100', hand: ADULT }),
  },
  { name: 'the same by keys alone', run: designByKeys },
  { name: 'the same by keys, Tab alone', run: designByTabs },
  { name: 'little lacks flexion', run: (hands) => design(hands, { digit: 'little', lacks: '0', bends: '60', hand: ADULT }) },
  { name: 'long lacks both', run: (hands) => design(hands, { digit: 'long', lacks: '30', bends: '70', hand: ADULT }) },
  { name: 'child of six', run: (hands) => design(hands, { digit: 'ring', lacks: '25', bends: '100', hand: CHILD }) },
  {
    name: 'inches',
    async run(hands) {
      await hands.page.locator('#unit').waitFor({ state: 'attached' });
      // Where the window is narrow the choice stands in the menu.
      const isInMenu = !(await hands.page.locator('#unit').isVisible());
      if (isInMenu) await hands.click('#menu');
      await hands.choose('#unit', 'in');
      if (isInMenu) await hands.click('#menu');
      return design(hands, { digit: 'ring', lacks: '25', bends: '100', hand: INCHES });
    },
  },
  {
    name: 'ring sizes round the fingers',
    run: (hands) => design(hands, { digit: 'ring', lacks: '25', bends: '100', hand: ADULT, roundIn: 'EU' }),
  },
  { name: 'the first with three warnings and one error', run: designWithFaults },
  { name: 'reopen a case, add a visit', run: addVisit },
];

/** Usual clinic screens less the browser's bars, a tablet upright, a phone, and the phone with its keyboard up. */
export const WINDOWS = [
  [1280, 660],
  [1366, 630],
  [1093, 490],
  [820, 1180],
  [390, 844],
  [390, 450],
] as const;
