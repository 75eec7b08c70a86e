import type { Box } from '../geometry/path.ts';
import type { MakingNotes } from '../pattern/making-notes.ts';
import type { PageLayer } from '../sheet/paper/page.ts';
import type { PageContent, PaperRoom } from '../sheet/paper/pattern-pages.ts';
import { paperWords } from '../words/papers/paper-words.ts';
import { sheetSpeech } from '../words/sheet-words.ts';
import { words } from './layout.ts';
import { plateSteps } from './plate-steps.ts';
import { storyPanel, stripSteps } from './storyboard.ts';

const COLUMNS = 2;
const ROWS = 3;
const GAP = 3;
const HEAD = 2.9;

/**
 * The making of a device as a storyboard, six steps a page: each from one named viewpoint, of a strip with the same section beside it. None on paper that is
 * too small for its pictures.
 */
export function storyPages({ made }: MakingNotes, { box, measure, language }: PaperRoom): readonly PageContent[] {
  const w = paperWords(language).story;
  const steps = made.kind === 'strip' ? stripSteps(made, w) : plateSteps(made, w);
  const perPage = COLUMNS * ROWS;
  const pages: PageContent[] = [];
  for (let from = 0; from < steps.length; from += perPage) {
    const width = box.maxX - box.minX;
    const head = words(w.heading, { x: box.minX, top: box.maxY, width, height: HEAD }, measure, { bold: true });
    const how = words(w.how, { x: box.minX, top: head.bottom, width, height: 2.2 }, measure);
    const area: Box = { ...box, maxY: how.bottom - 1 };
    const layers: PageLayer[] = [head.layer, how.layer];
    for (const [k, step] of steps.slice(from, from + perPage).entries()) {
      const panel = storyPanel(step, from + k + 1, cell(area, k % COLUMNS, Math.floor(k / COLUMNS)), measure);
      if (!panel) return [];
      layers.push(panel);
    }
    pages.push({ title: sheetSpeech(language).w.stepByStep, kind: 'story', frame: 'plain', layers });
  }
  return pages;
}

function cell(area: Box, column: number, row: number): Box {
  const width = (area.maxX - area.minX - (COLUMNS - 1) * GAP) / COLUMNS;
  const height = (area.maxY - area.minY - (ROWS - 1) * GAP) / ROWS;
  const minX = area.minX + column * (width + GAP);
  const maxY = area.maxY - row * (height + GAP);
  return { minX, maxX: minX + width, minY: maxY - height, maxY };
}
