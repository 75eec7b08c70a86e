import type { Hand } from '../../hand/hand.ts';
import { degrees } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import { CAUTIONS } from '../cautions.ts';
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
export function stripSheet(figures: StripFigures, hand: Hand, date: string | null, beside: readonly string[]): Drawn {
  const view = viewWithTitle(figures, hand);
  const viewBox = boxOfDrawn(view);
  const square = referenceSquare(0, viewBox.minY - GAP);
  const columnX = Math.max(viewBox.maxX, REFERENCE_SIDE) + 2 * GAP;
  const facts = textBlock(factLines(figures, hand, date, beside), { x: columnX, y: 0 }, TEXT);
  const table = marksTable(figures, columnX, -facts.depth - GAP);
  const columns = { marks: [...view.marks, ...square.marks], labels: [...view.labels, ...square.labels, ...facts.labels, ...table] };
  const box = boxOfDrawn(columns);
  const width = Math.max(box.maxX, figures.flat.flatLength);
  const cautions = textBlock(
    Object.values(CAUTIONS).flatMap((text) => wrapText(text, width, TEXT)),
    { x: 0, y: box.minY - GAP },
    TEXT,
  );
  return { marks: columns.marks, labels: [...columns.labels, ...cautions.labels] };
}

function viewWithTitle(figures: StripFigures, hand: Hand): Drawn {
  const view = sectionView(figures.path, hand.side, figures.options);
  const box = boxOfDrawn(view);
  const heading: Label = {
    layer: 'INFO',
    text: `SECTION, ${hand.side.toUpperCase()} HAND`,
    at: { x: 0, y: -HEADING },
    height: HEADING,
    align: 'left',
    angle: 0,
  };
  const line = textBlock(
    ['seen from the fingertips, dorsal up;', 'inner layer against the held digits'],
    { x: 0, y: -HEADING - 1.6 },
    TEXT,
  );
  const below = shiftDrawn(view, -box.minX, -HEADING - 1.6 - line.depth - GAP / 2 - box.maxY);
  return { marks: below.marks, labels: [heading, ...line.labels, ...below.labels] };
}

/** What the strip is, line by line. */
export function factLines(f: StripFigures, hand: Hand, date: string | null, beside: readonly string[]): readonly string[] {
  const o = f.options;
  const mm = (value: number) => plain(value, 1);
  const trim = o.trim > 0 ? `, trim ${mm(o.trim)}` : '';
  return [
    `${hand.code}   ${hand.side.toUpperCase()} HAND${hand.invented ? '   (invented demo)' : ''}`,
    f.block.title,
    `differential ${plain(o.differential, 1)} degrees, ${o.closure}`,
    `strip ${mm(o.width)} wide${f.asked.width === 'auto' ? ' (auto)' : ''}, ${o.outline}, from low-temperature sheet ${mm(o.thickness)} thick`,
    ...(f.flat.frame
      ? [
          `curved by ${plain(Math.abs(degrees(f.flat.frame.turn)), 0)} degrees for the taper of ${tapering(f)
            .map((s) => s.digit)
            .join(', ')}: cut along the line, not by ruler`,
        ]
      : []),
    `flat length ${mm(f.flat.flatLength)} mm (95 % band -${mm(f.band.below)} to +${mm(f.band.above)})`,
    `${o.seam} seam ${mm(o.seamAllowance)}${trim}${o.stretch === 0 ? '' : `, stretch ${plain(o.stretch * 100, 1)} %`}`,
    `date ${date ?? '................'}   geometry ${f.geometryVersion}`,
    ...f.loops.map(
      (loop) => `loop ${loop.digits.join(' and ')}: ${mm(loop.innerCircumference)} round inside (ring size ${loop.isoRingSize})`,
    ),
    ...(f.estimated.length > 0 ? wrapText(`ESTIMATED, not measured: ${f.estimated.join(', ')}`, 90, TEXT) : []),
    ...(beside.length > 0 ? wrapText(`No room on the strip for: ${beside.join('; ')}`, 90, TEXT) : []),
  ];
}

/** Every mark with its distance from the starting end, so that one can work with a ruler alone. */
function marksTable(f: StripFigures, x: number, top: number): readonly Label[] {
  const rows = uprightMarks(f.path, f.flat, f.options).map((mark) => [plain(mark.v - f.flat.start, 1), mark.title] as const);
  const all = [...rows, [plain(f.flat.flatLength, 1), 'end of the strip'] as const];
  const heading = textBlock(['MARKS, mm from the starting end (corner mark)'], { x, y: top }, TEXT);
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
