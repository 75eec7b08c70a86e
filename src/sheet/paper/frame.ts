import type { Box } from '../../geometry/path.ts';
import type { SheetSpeech } from '../../words/sheet-words.ts';
import { joined, type Measure, NOTHING, type PageLayer, type PageText, text, wrapWords } from './page.ts';
import { BAR, CARD, cardOutline, scaleBars } from './scale-check.ts';

/** Room for the ticks and the words along a bar. mm */
const BAR_ROOM = 9;
const GAP = 4;
const HEAD = 2.8;
const SUBHEAD = 2;
const PITCH = 1.75;
const PAGE_NUMBER_ROOM = 34;

/**
 * What stands round a page's content. `scale`: head, scale bars and card, for what is at true size; `head`: the head alone, for what is only read; `plain`: so
 * too, on the paper upright with its own area, whatever the pattern needs; `none`: nothing, on such paper.
 */
export type PageFrame = 'scale' | 'head' | 'plain' | 'none';

/** What the frame of a page says. */
export interface FrameWords {
  /** Bold, in the head: code, side, block. */
  readonly head: string;
  /** Under it: how to print, version, date, correction. */
  readonly under: readonly string[];
}

/** The free places of a page inside its printable box; mm from the page's lower left corner. */
export interface Frame {
  /** Full width, above the bar along. */
  readonly high: Box;
  /** Right of the bar along, above the card. */
  readonly wide: Box;
  /** As `wide`, down to the foot of the page: on a page without bars and card. */
  readonly bare: Box;
  /** Under `high`, as wide as `wide`: free when `high` is used. */
  readonly shoulder: Box;
  /** In the corner of the bars, or inside the card where the paper is narrow. */
  readonly pocket: Box;
  /** Inside the card outline, under its words: free once the card was laid on. */
  readonly card: Box;
  /** Into which a column of text may reach down from `wide`. */
  readonly underText: readonly Box[];
  /** Right of the bars, as far as the card; null where there is no room to speak of. */
  readonly middle: Box | null;
}

/** The frame of a page: bars in the lower left corner, card in the lower right or, on narrow paper, between the bars. */
export function frameOf(box: Box, words: FrameWords, measure: Measure): Frame {
  const bottom = isNarrow(box) ? box.minY + BAR_ROOM + CARD.height : box.minY + CARD.height;
  const top = box.maxY - headDepth(box, words, measure);
  const left = box.minX + BAR_ROOM;
  const barTop = box.minY + BAR + GAP;
  const card = cardCorner(box);
  const inCard = { minX: card.x + 3, minY: card.y + 2, maxX: card.x + CARD.width - 3, maxY: card.y + CARD.height - 10 };
  const corner = { minX: left, minY: box.minY + BAR_ROOM - 2, maxX: box.minX + BAR - 2, maxY: bottom };
  const pocket = isNarrow(box) ? inCard : corner;
  const middle = { minX: box.minX + BAR + GAP, minY: box.minY, maxX: isNarrow(box) ? box.maxX : card.x - GAP, maxY: bottom };
  return {
    high: { minX: box.minX, minY: barTop, maxX: box.maxX, maxY: top },
    wide: { minX: left, minY: bottom + GAP, maxX: box.maxX, maxY: top },
    bare: { minX: left, minY: box.minY, maxX: box.maxX, maxY: top },
    shoulder: { minX: left, minY: bottom + GAP, maxX: box.maxX, maxY: barTop - GAP },
    pocket,
    card: inCard,
    underText: isNarrow(box) ? [{ minX: box.minX + BAR, minY: box.minY + BAR_ROOM - 2, maxX: box.maxX, maxY: bottom }] : [pocket],
    middle: middle.maxX - middle.minX > 40 ? middle : null,
  };
}

/** The room of a page without bars and card: all that is under the head. */
export function plainRoom(box: Box, words: FrameWords, measure: Measure): Box {
  return { ...box, maxY: box.maxY - headDepth(box, words, measure) - 1 };
}

/** What `frameOf` leaves its room for; without bars and card what `plainRoom` does. */
export function frameLayer(
  box: Box,
  words: FrameWords,
  page: number,
  pages: number,
  measure: Measure,
  speech: SheetSpeech,
  frame: PageFrame = 'scale',
): PageLayer {
  if (frame === 'none') return NOTHING;
  const card = cardCorner(box);
  const lines: PageText[] = [];
  let y = box.maxY - HEAD;
  for (const line of headLines(box, words, measure)) {
    lines.push(text(line, box.minX, y, HEAD, { bold: true }));
    y -= HEAD * PITCH;
  }
  y += HEAD * PITCH - SUBHEAD * PITCH - 0.6;
  for (const line of underLines(box, words, measure)) {
    lines.push(text(line, box.minX, y, SUBHEAD));
    y -= SUBHEAD * PITCH;
  }
  const number = text(speech.w.page(String(page), String(pages)), box.maxX, box.maxY - HEAD, HEAD, { bold: true, align: 'right' });
  const corner = { x: box.minX, y: box.minY };
  const head: PageLayer = { clip: null, strokes: [], texts: [...lines, number] };
  if (frame !== 'scale') return head;
  return joined(head, scaleBars(corner, speech.w), cardOutline(card.x, card.y, speech));
}

function isNarrow(box: Box): boolean {
  return box.maxX - box.minX < BAR + GAP + CARD.width;
}

function cardCorner(box: Box): { readonly x: number; readonly y: number } {
  return isNarrow(box) ? { x: box.minX + BAR_ROOM, y: box.minY + BAR_ROOM } : { x: box.maxX - CARD.width, y: box.minY };
}

function headLines(box: Box, words: FrameWords, measure: Measure): readonly string[] {
  return wrapWords(words.head, box.maxX - box.minX - PAGE_NUMBER_ROOM, HEAD, true, measure);
}

function underLines(box: Box, words: FrameWords, measure: Measure): readonly string[] {
  return words.under.flatMap((line) => wrapWords(line, box.maxX - box.minX, SUBHEAD, false, measure));
}

function headDepth(box: Box, words: FrameWords, measure: Measure): number {
  const under = underLines(box, words, measure).length;
  return headLines(box, words, measure).length * HEAD * PITCH + under * SUBHEAD * PITCH + 2;
}
