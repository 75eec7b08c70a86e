import { REAL } from '../block/figures.ts';
import type { Drawing, DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { plain } from '../units/number.ts';
import { failure, type Result, success } from '../units/result.ts';
import type { Case } from './case.ts';
import { chartFrame, MARGIN } from './chart-frame.ts';
import { chartNotes } from './chart-notes.ts';
import { type ChartPart, chartPart, type ShownVisits } from './chart-part.ts';
import { chartPlot, LANE_HEIGHT } from './chart-plot.ts';
import { chartText } from './chart-shapes.ts';
import { chartTable } from './chart-table.ts';
import { madeText } from './made-text.ts';

const TITLE = 4.4;
const SUBTITLE = 2.8;
const TITLES = 20;

/**
 * PIP motion by visit as a picture: active and passive range, flexion and extension deficit, what was made, and the band inside which no
 * change is read; under it a table of the same figures. mm, lower left corner at (0, 0). Fails with `NO_VISITS`. Visits stand at equal
 * distances, whatever the days between them.
 * @param shown which visits; all of them where it is not given
 */
export function caseChart(record: Case, shown: ShownVisits = { first: 0, last: record.visits.length - 1 }): Result<Drawing> {
  if (record.visits.length === 0) {
    return failure({
      code: 'NO_VISITS',
      where: 'visits',
      message: 'the case has no visit yet, so there is nothing to draw. Add one with case add.',
      kind: 'refused',
    });
  }
  const part = chartPart(record, shown);
  const frame = chartFrame(record, part.visits.length);
  const [left, right] = [frame.left + MARGIN, frame.right - MARGIN];
  const table = chartTable(part, frame);
  const notes = chartNotes(part, left, right, -table.depth);
  const top = frame.height + LANE_HEIGHT + TITLES + MARGIN;
  const bottom = notes.bottom - MARGIN;
  const items = [
    ...headings(record, whichVisits(record, shown), left, right, top - MARGIN),
    ...chartPlot(part, frame),
    ...table.items,
    ...notes.items,
  ];
  return success({
    title: `${titleOf(record)}${whichVisits(record, shown)}`,
    description: description(part),
    items: items.map((item) => moved(item, -frame.left, -bottom)),
    extents: { minX: 0, minY: 0, maxX: frame.right - frame.left, maxY: top - bottom },
  });
}

function titleOf({ digit, side, code }: Case): string {
  return `${code}: PIP motion of the ${digit} finger, ${side} hand, by visit`;
}

/** ", visits 1 to 8 of 24" for a picture of a part of the case, else nothing. */
function whichVisits({ visits }: Case, { first, last }: ShownVisits): string {
  return first === 0 && last === visits.length - 1 ? '' : `, visits ${first + 1} to ${last + 1} of ${visits.length}`;
}

function headings(record: Case, which: string, left: number, right: number, top: number): readonly DrawnText[] {
  const { digit, side, code, invented } = record;
  const title = `PIP motion, ${digit} finger, ${side} hand`;
  const texts = [
    chartText('title', title, { x: left, y: top - TITLE }, { height: TITLE, strong: true }),
    chartText(
      'subtitle',
      `Active and passive range by visit, degrees of flexion from straight${which}`,
      { x: left, y: top - TITLE - 6 },
      { height: SUBTITLE, tone: 'grey' },
    ),
    chartText('code', code, { x: right, y: top - TITLE }, { height: TITLE, align: 'right', strong: true }),
  ];
  if (invented)
    texts.push(
      chartText(
        'invented',
        'INVENTED: nobody was measured',
        { x: right, y: top - TITLE - 6 },
        { height: SUBTITLE, align: 'right', strong: true },
      ),
    );
  return texts;
}

function description({ visits, made: all }: ChartPart): string {
  const motion = visits.map(({ date, goniometry: { pip } }) => {
    const passive = pip.passive ? `, passive ${plain(pip.passive.extensionDeficit, 1)} to ${plain(pip.passive.flexion, 1)}` : '';
    return `${date}: active ${plain(pip.active.extensionDeficit, 1)} to ${plain(pip.active.flexion, 1)}${passive}`;
  });
  const made = all.map(({ letter, date, made: one }) => `${letter}, ${date}: ${madeText(one)}`);
  const parts = [`PIP range in degrees of flexion, extension deficit first. ${motion.join('; ')}.`];
  if (made.length > 0) parts.push(`Made: ${made.join('; ')}.`);
  parts.push(`Changes under ${REAL.same} degrees (${REAL.mixed} between two raters) are not read as changes.`);
  return parts.join(' ');
}

function moved<T extends DrawnShape | DrawnText>(item: T, dx: number, dy: number): T {
  if (item.kind === 'text') return { ...item, at: { x: item.at.x + dx, y: item.at.y + dy } };
  return {
    ...item,
    paths: item.paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy })) })),
    circles: item.circles.map(({ center, radius }) => ({ center: { x: center.x + dx, y: center.y + dy }, radius })),
  };
}
