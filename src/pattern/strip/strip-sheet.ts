import type { Hand } from '../../hand/hand.ts';
import { degrees } from '../../units/angle.ts';
import { blockTitle, listed, measureName } from '../../words/hand-words.ts';
import type { Speech } from '../../words/speech.ts';
import type { Label } from '../pattern.ts';
import { boxOfDrawn, type Drawn, shiftDrawn } from '../place-marks.ts';
import { REFERENCE_SIDE, referenceSquare } from '../reference-square.ts';
import { textBlock, wrapText } from '../text-lines.ts';
import { sectionView } from './section-view.ts';
import { type StripFigures, tapering } from './strip-report.ts';
import { uprightMarks } from './upright-marks.ts';

const TEXT = 2.2;
const HEADING = 3;
const GAP = 6;
const TABLE_FIGURE_COLUMN = 16;

/** What stands under the strip: section view and 50 mm square on the left, facts and the table of marks on the right, cautions below. Top left corner at (0, 0). */
export function stripSheet(figures: StripFigures, hand: Hand, date: string | null, beside: readonly string[], speech: Speech): Drawn {
  const view = viewWithTitle(figures, hand, speech);
  const viewBox = boxOfDrawn(view);
  const square = referenceSquare(0, viewBox.minY - GAP, speech);
  const columnX = Math.max(viewBox.maxX, REFERENCE_SIDE) + 2 * GAP;
  const facts = textBlock(factLines(figures, hand, date, beside, speech), { x: columnX, y: 0 }, TEXT);
  const table = marksTable(figures, columnX, -facts.depth - GAP, speech);
  const columns = { marks: [...view.marks, ...square.marks], labels: [...view.labels, ...square.labels, ...facts.labels, ...table] };
  const box = boxOfDrawn(columns);
  const width = Math.max(box.maxX, figures.flat.flatLength);
  const cautions = textBlock(
    Object.values(speech.cautions).flatMap((text) => wrapText(text, width, TEXT)),
    { x: 0, y: box.minY - GAP },
    TEXT,
  );
  return { marks: columns.marks, labels: [...columns.labels, ...cautions.labels] };
}

function viewWithTitle(figures: StripFigures, hand: Hand, speech: Speech): Drawn {
  const { section } = speech.strip;
  const view = sectionView(figures.path, hand.side, figures.options, speech);
  const box = boxOfDrawn(view);
  const heading: Label = {
    layer: 'INFO',
    text: section.capitals[hand.side],
    at: { x: 0, y: -HEADING },
    height: HEADING,
    align: 'left',
    angle: 0,
  };
  const line = textBlock([section.first, section.second], { x: 0, y: -HEADING - 1.6 }, TEXT);
  const below = shiftDrawn(view, -box.minX, -HEADING - 1.6 - line.depth - GAP / 2 - box.maxY);
  return { marks: below.marks, labels: [heading, ...line.labels, ...below.labels] };
}

/** What the strip is, line by line. */
export function factLines(
  f: StripFigures,
  hand: Hand,
  date: string | null,
  beside: readonly string[],
  { hand: names, strip: w, number, language }: Speech,
): readonly string[] {
  const o = f.options;
  const mm = (value: number) => number(value, 1);
  const { fact, choice } = w;
  return [
    `${hand.code}   ${w.lettering.hand[hand.side]}${hand.invented ? `   ${w.invented}` : ''}`,
    blockTitle(f.block, language),
    fact.differential(mm(o.differential), choice[o.closure]),
    fact.strip(mm(o.width), f.asked.width === 'auto', choice[o.outline], mm(o.thickness)),
    ...(f.flat.frame
      ? [
          fact.curved(
            number(Math.abs(degrees(f.flat.frame.turn)), 0),
            listed(
              tapering(f).map((s) => names.short[s.digit]),
              names.and,
            ),
          ),
        ]
      : []),
    fact.length(mm(f.flat.flatLength), mm(f.band.below), mm(f.band.above), f.asked.paperReading !== 'none'),
    fact.seam(choice[o.seam], mm(o.seamAllowance), o.trim > 0 ? mm(o.trim) : '', o.stretch === 0 ? '' : mm(o.stretch * 100)),
    fact.date(date ?? '................'),
    ...f.loops.map((loop) =>
      fact.loop(
        listed(
          loop.digits.map((digit) => names.short[digit]),
          names.and,
        ),
        mm(loop.innerCircumference),
        String(loop.isoRingSize),
      ),
    ),
    ...(f.estimated.length > 0 ? wrapText(fact.estimated(f.estimated.map((where) => measureName(where, names)).join(', ')), 90, TEXT) : []),
    ...(beside.length > 0 ? wrapText(fact.noRoom(beside.join('; ')), 90, TEXT) : []),
  ];
}

/** Every mark with its distance from the starting end, so that one can work with a ruler alone. */
function marksTable(f: StripFigures, x: number, top: number, speech: Speech): readonly Label[] {
  const rows = uprightMarks(f.path, f.flat, f.options, speech).map(
    (mark) => [speech.number(mark.v - f.flat.start, 1), mark.title] as const,
  );
  const all = [...rows, [speech.number(f.flat.flatLength, 1), speech.strip.mark.end] as const];
  const heading = textBlock([speech.strip.marks], { x, y: top }, TEXT);
  const under = top - heading.depth - TEXT;
  const figures = textBlock(
    all.map(([distance]) => distance),
    { x, y: under },
    TEXT,
  ).labels.map((label): Label => ({ ...label, align: 'right', at: { x: x + TABLE_FIGURE_COLUMN - 4, y: label.at.y } }));
  const names = textBlock(
    all.map(([, name]) => name),
    { x: x + TABLE_FIGURE_COLUMN, y: under },
    TEXT,
  );
  return [...heading.labels, ...figures, ...names.labels];
}
