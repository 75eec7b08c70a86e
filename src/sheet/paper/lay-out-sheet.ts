import type { Box } from '../../geometry/path.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { boxOfDrawn } from '../../pattern/place-marks.ts';
import { plain } from '../../units/number.ts';
import { failure, type Result, success, type Warning } from '../../units/result.ts';
import { capital } from '../../words/hand-words.ts';
import { type SheetSpeech, sheetSpeech } from '../../words/sheet-words.ts';
import { besidePattern } from './beside-pattern.ts';
import { type Frame, type FrameWords, frameLayer, frameOf, plainRoom } from './frame.ts';
import { makingPages } from './making-pages.ts';
import { drawnLayer, type Measure, type PageLayer, type PrintedSheet, placeLayer, scaleLayer, text, wrapWords } from './page.ts';
import { isOffice, type Orientation, printableBox, turned } from './paper.ts';
import { type PageContent, type PaperMaker, patternPages } from './pattern-pages.ts';
import { isTiled, type PlannedPages, pageCount, planPattern } from './plan-pattern.ts';
import { BAR } from './scale-check.ts';
import { sheetPlanPages } from './sheet-plan-pages.ts';
import type { SheetPart, SheetSettings } from './sheet-settings.ts';

/** A sheet laid out, with the way round that all its pages have. */
export interface LaidSheet extends PrintedSheet {
  readonly orientation: Orientation;
  readonly tiled: boolean;
}

/** One way to lay the pattern: on which way round, in which area, turned or not. */
interface Plan {
  readonly orientation: Orientation;
  readonly box: Box;
  readonly frame: Frame;
  readonly pages: PlannedPages;
  readonly ownArea: boolean;
}

/**
 * Pages for a pattern: a list or chart on one; else its parts at 1:1, then what its notes say. All pages have one orientation: the one with fewer pages, without tiles
 * wherever a quarter turn or the other orientation avoids them. Refused when the paper is too small (`PAPER_TOO_SMALL`). Warns
 * `SHEET_TILED`, and `SHEET_OWN_AREA` when a page fits only the chosen one of A4 and Letter.
 */
export function layOutSheet(pattern: Pattern, settings: SheetSettings, measure: Measure, papers: PaperMaker): Result<LaidSheet> {
  if (pattern.kind === 'page') {
    const { layer, orientation, width, height } = layOutPage(pattern, settings);
    const page = { title: pattern.title, width, height, layers: [layer] };
    return success({ title: pattern.title, pages: [page], scale: { x: 1, y: 1 }, orientation, tiled: false });
  }
  const speech = sheetSpeech(settings.language);
  const words = frameWords(pattern, settings, speech);
  const plan = bestPlan(pattern, settings, words, measure);
  if (!plan) return tooSmall(settings);
  const { frame, box, orientation } = plan;
  const notes = pattern.notes ?? null;
  const invented = notes?.invented === true;
  const beside = notes && settings.parts.includes('pattern') ? plan.pages.map((page) => besidePattern(page, frame, notes, measure)) : [];
  // Without the pattern there are no lines to be explained.
  const shown = { legend: beside.every((b) => b.legend), facts: beside.length > 0 && beside.every((b) => b.facts) };
  // What is only read stands upright and uses its paper's own area, whatever the pattern needs.
  const upright = correctedBox(settings, 'portrait', 'paper');
  const room = { box: upright, measure, language: settings.language, clinic: settings.clinic };
  const frameWordsOf = (title: string, frame: PageContent['frame']): FrameWords => ({
    ...words,
    // How to print concerns what is at true size.
    under: [invented ? `${title}   ${speech.w.invented}` : title, ...(frame === 'scale' || frame === undefined ? words.under : [])],
  });
  const contents: PageContent[] = [];
  const pagesOf = (part: SheetPart) => {
    const trial = () => (pattern.paperTrial ? trialPages(pattern.paperTrial, frame, measure, speech) : []);
    if (part === 'trial') return trial();
    if (part === 'pattern') {
      const [pages, own] = [patternPages(plan.pages, frame, notes, measure, speech), trial()];
      return own && [...pages, ...own];
    }
    const plain = (title: string) => plainRoom(upright, frameWordsOf(title, 'plain'), measure);
    if (part === 'making' && pattern.kind === 'sheet') return sheetPlanPages(pattern, plain(speech.w.plan('0.00')), measure, speech);
    if (notes === null) return [];
    if (part === 'making') {
      const story = papers.story(notes, { ...room, box: plain('') });
      const rest = makingPages(notes, frame, measure, { ...shown, pictures: story.length > 0 }, speech);
      return rest && [...story, ...rest];
    }
    return papers.handout(notes, room);
  };
  // A sheet of plastic is read before it is cut.
  const parts =
    pattern.kind === 'sheet' ? settings.parts.toSorted((a, b) => Number(b === 'making') - Number(a === 'making')) : settings.parts;
  for (const part of parts) {
    const pages = pagesOf(part);
    if (pages === null) return tooSmall(settings);
    contents.push(...pages);
  }
  const pages = contents.map((content, k) => {
    const read = content.frame === 'none' || content.frame === 'plain';
    const page = printed(settings, read ? 'portrait' : orientation);
    const own = frameWordsOf(content.title, content.frame);
    return {
      title: content.title,
      kind: content.kind,
      ...page,
      layers: [frameLayer(read ? upright : box, own, k + 1, contents.length, measure, speech, content.frame), ...content.layers],
    };
  });
  const tiled = settings.parts.includes('pattern') && isTiled(plan.pages);
  const scale = { x: BAR / (settings.correction?.across ?? BAR), y: BAR / (settings.correction?.along ?? BAR) };
  return success({ title: pattern.title, language: settings.language, pages, scale, orientation, tiled }, warnings(settings, plan, tiled));
}

/** The paper strip on a page of its own, turned if it must be, its words beside it or, where they find no room, on the next page. */
function trialPages(trial: Pattern, frame: Frame, measure: Measure, speech: SheetSpeech): readonly PageContent[] | null {
  const ways = [false, true].flatMap((quarterTurn) => planPattern(trial.parts, frame, quarterTurn) ?? []);
  const plan = ways.find((page) => page.kind === 'whole') ?? ways[0];
  if (!plan) return null;
  const [{ heading, lines } = { heading: '', lines: [] }] = trial.lists ?? [];
  const words = { facts: lines, legend: [] };
  const pages = patternPages([plan], frame, words, measure, speech, heading);
  return besidePattern(plan, frame, words, measure).facts ? pages : [...pages, wordsPage(heading, lines, frame, measure)];
}

const WORDS = 3;
const PITCH = 1.75;

function wordsPage(title: string, lines: readonly string[], { wide }: Frame, measure: Measure): PageContent {
  const wrapped = lines.flatMap((line) => wrapWords(line, wide.maxX - wide.minX, WORDS, false, measure));
  const texts = wrapped.map((line, k) => text(line, wide.minX, wide.maxY - (k + 1) * WORDS * PITCH, WORDS));
  return { title, kind: 'making', frame: 'head', layers: [{ clip: null, strokes: [], texts }] };
}

/** The page as the printer prints it: a printer that shrinks has the less room. */
function printed(settings: SheetSettings, orientation: Orientation) {
  const { width, height } = turned(settings.paper, orientation);
  const { across, along } = settings.correction ?? { across: BAR, along: BAR };
  return { width: (width * across) / BAR, height: (height * along) / BAR };
}

function bestPlan(pattern: Pattern, settings: SheetSettings, words: FrameWords, measure: Measure): Plan | null {
  const orientations: readonly Orientation[] = settings.orientation === 'auto' ? ['portrait', 'landscape'] : [settings.orientation];
  const areas = settings.area === 'both' && isOffice(settings.paper) ? (['both', 'paper'] as const) : ([settings.area] as const);
  const ways = areas.flatMap((area) =>
    [false, true].flatMap((quarterTurn) => orientations.map((orientation) => ({ area, quarterTurn, orientation }))),
  );
  let best: Plan | null = null;
  // The first of equals: shared area before own, unturned before turned, portrait before landscape.
  for (const { area, quarterTurn, orientation } of ways) {
    const box = correctedBox(settings, orientation, area);
    // Each page names its content in one more line under the head.
    const frame = frameOf(box, { ...words, under: ['', ...words.under] }, measure);
    const pages = planPattern(pattern.parts, frame, quarterTurn);
    if (!pages) continue;
    const plan: Plan = { orientation, box, frame, pages, ownArea: area === 'paper' && areas.length > 1 };
    if (best === null || better(plan, best)) best = plan;
    if (pageCount(best.pages) === 1) break;
  }
  return best;
}

/** The printable box of a page as its printer prints it. */
function correctedBox(settings: SheetSettings, orientation: Orientation, area: SheetSettings['area']): Box {
  const room = printableBox(settings.paper, orientation, settings.margin, area);
  const { across, along } = settings.correction ?? { across: BAR, along: BAR };
  return {
    minX: (room.minX * across) / BAR,
    maxX: (room.maxX * across) / BAR,
    minY: (room.minY * along) / BAR,
    maxY: (room.maxY * along) / BAR,
  };
}

/** The paper's own area is taken only to save tiles; it does not fit the other paper. */
function better(plan: Plan, best: Plan): boolean {
  if (plan.ownArea && !best.ownArea) return isTiled(best.pages) && !isTiled(plan.pages);
  const [tiled, bestTiled] = [isTiled(plan.pages), isTiled(best.pages)];
  return tiled === bestTiled ? pageCount(plan.pages) < pageCount(best.pages) : bestTiled;
}

function frameWords(pattern: Pattern, settings: SheetSettings, { w, number }: SheetSpeech): FrameWords {
  const { notes, inputs } = pattern;
  const head = notes ? `${notes.code}   ${w.hand[notes.side]}   ${capital(notes.block)}` : pattern.title;
  const date = inputs.date === null ? '' : `   ${w.date(inputs.date)}`;
  const { correction } = settings;
  return {
    head,
    under: [
      `${w.print}   ${settings.paper.name}${date}`,
      ...(correction ? [w.corrected(number(correction.across, 3), number(correction.along, 3))] : []),
    ],
  };
}

function warnings(settings: SheetSettings, plan: Plan, tiled: boolean): readonly Warning[] {
  if (tiled) {
    return [
      {
        code: 'SHEET_TILED',
        message: `the pattern does not fit one page of ${settings.paper.name}, so it is printed in tiles`,
        next: 'lay the crosses of the same letter on each other, or use larger paper (--paper a3)',
      },
    ];
  }
  if (!plan.ownArea || !settings.parts.includes('pattern')) return [];
  const other = settings.paper.name === 'A4' ? 'Letter' : 'A4';
  return [
    {
      code: 'SHEET_OWN_AREA',
      message: `the pattern fits one page of ${settings.paper.name}, but not of ${other}`,
      next: `print it on ${settings.paper.name} only, or draw it again with --paper ${other.toLowerCase()}`,
    },
  ];
}

function tooSmall(settings: SheetSettings): Result<never> {
  return failure({
    code: 'PAPER_TOO_SMALL',
    where: '--paper',
    message: `paper: ${settings.paper.name} with margins of ${plain(settings.margin)} mm leaves no room beside the bars and the card outline. Use larger paper or smaller margins.`,
    kind: 'input',
  });
}

/** A drawing that is a page already, on one page of paper. */
interface LaidPage {
  readonly orientation: Orientation;
  readonly width: number;
  readonly height: number;
  readonly layer: PageLayer;
}

/**
 * A list or a chart (`kind: 'page'`) at the head of one page of the paper, in the middle between its edges, at its own size or, where the paper is smaller, as large
 * as it has room: nothing is cut by it, so it needs no scale. Upright where that makes it larger or as large.
 */
function layOutPage(pattern: Pattern, { paper, margin, area, orientation }: SheetSettings): LaidPage {
  const ink = boxOfDrawn(pattern.beside);
  const ways = (orientation === 'auto' ? (['portrait', 'landscape'] as const) : [orientation]).map((way) => {
    const room = printableBox(paper, way, margin, area);
    const factor = Math.min(1, (room.maxX - room.minX) / (ink.maxX - ink.minX), (room.maxY - room.minY) / (ink.maxY - ink.minY));
    return { way, room, factor };
  });
  const best = ways.reduce((a, b) => (b.factor > a.factor + 1e-9 ? b : a));
  const { room, factor, way } = best;
  const size = turned(paper, way);
  const layer = placeLayer(scaleLayer(placeLayer(drawnLayer(pattern.beside), { dx: -ink.minX, dy: -ink.maxY }), factor), {
    dx: (room.minX + room.maxX - factor * (ink.maxX - ink.minX)) / 2,
    dy: room.maxY,
  });
  return { orientation: way, width: size.width, height: size.height, layer };
}
