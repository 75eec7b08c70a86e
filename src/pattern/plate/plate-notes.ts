import type { Hand } from '../../hand/hand.ts';
import { measureName } from '../../words/hand-words.ts';
import type { Speech } from '../../words/speech.ts';
import { dashed } from '../dashes.ts';
import type { CutList, LegendRow, MakingNotes } from '../making-notes.ts';
import type { Label, Mark } from '../pattern.ts';
import { boxOfDrawn, type Drawn, shiftDrawn } from '../place-marks.ts';
import { REFERENCE_SIDE, referenceSquare } from '../reference-square.ts';
import { textBlock, wrapText } from '../text-lines.ts';
import { angleGauge } from './angle-gauge.ts';
import { PLATE_LINES, type PlateLine } from './plate-marks.ts';
import { holdsIn, plateName, strapPlace } from './plate-names.ts';
import type { PlateFigures } from './plate-report.ts';

const TEXT = 2.2;
const GAP = 6;
const SAMPLE = 16;
/** Narrower than this the steps become a tower of short lines. mm */
const LEAST_WIDTH = 205;

/** What stands under the plate: angle gauge on the left, facts, straps and legend beside it, 50 mm square on the right, steps and cautions below. Top left corner at (0, 0). */
export function plateSheet(
  figures: PlateFigures,
  hand: Hand,
  date: string | null,
  beside: readonly string[],
  partsWidth: number,
  used: ReadonlySet<string>,
  speech: Speech,
): Drawn {
  const { plate: w } = speech;
  const width = Math.max(LEAST_WIDTH, partsWidth);
  const gauge = gaugeWithTitle(figures, speech);
  const gaugeBox = boxOfDrawn(gauge);
  const left = shiftDrawn(gauge, -gaugeBox.minX, -gaugeBox.maxY);
  const square = referenceSquare(width - REFERENCE_SIDE, 0, speech);
  const columnX = gaugeBox.maxX - gaugeBox.minX + GAP;
  const room = width - REFERENCE_SIDE - GAP - columnX;
  const facts = textBlock(
    factLines(figures, hand, date, beside, speech).flatMap((text) => wrapText(text, room, TEXT)),
    { x: columnX, y: 0 },
    TEXT,
  );
  const legend = legendBlock(used, columnX, -facts.depth - GAP, speech);
  const columns = {
    marks: [...left.marks, ...square.marks, ...legend.marks],
    labels: [...left.labels, ...square.labels, ...facts.labels, ...legend.labels],
  };
  const under = boxOfDrawn(columns).minY - GAP;
  const steps = textBlock(
    [
      w.moulding,
      ...Object.values(w.step).flatMap((text, k) => wrapText(`${k + 1}. ${text}`, width, TEXT)),
      '',
      w.cautionsHeading,
      ...[...Object.values(w.caution), ...Object.values(speech.cautions)].flatMap((text) => wrapText(text, width, TEXT)),
    ],
    { x: 0, y: under },
    TEXT,
  );
  return { marks: columns.marks, labels: [...columns.labels, ...steps.labels] };
}

function gaugeWithTitle({ design }: PlateFigures, speech: Speech): Drawn {
  const w = speech.plate.gauge;
  const gauge = angleGauge(design.angle, speech);
  const box = boxOfDrawn(gauge);
  const title = textBlock([w.first, w.second], { x: box.minX, y: box.maxY + 3 + TEXT * 2.75 }, TEXT);
  return { marks: gauge.marks, labels: [...title.labels, ...gauge.labels] };
}

/** What the plate is, line by line; the last lines are the straps. */
function factLines(f: PlateFigures, hand: Hand, date: string | null, beside: readonly string[], speech: Speech): readonly string[] {
  const { design, options: o, frame } = f;
  const { plate, strip, hand: names, number } = speech;
  const w = plate.fact;
  const mm = (value: number) => number(value, 1);
  const faces = frame.faces.map((face, k) => {
    const wide = mm(face.midLateral + face.wing + (f.outlines[k]?.bar.out ?? 0));
    const bend = mm(Math.max(...face.parts.map((part) => part.bend.length)));
    return w.face(names.aspect[face.face], wide, bend, w.bend[face.bend.form], mm(f.outlines[k]?.smallestRadius ?? 0));
  });
  return [
    `${hand.code}   ${strip.lettering.hand[hand.side]}${hand.invented ? `   ${strip.invented}` : ''}`,
    plateName(design, speech),
    w.holds(holdsIn(design, speech)),
    w.sheet(mm(o.thickness), mm(o.skinClearance)),
    w.palm(mm(frame.section.breadth), mm(frame.section.circumference), mm(frame.section.thickness)),
    ...faces,
    w.wrist(mm(frame.palm.metacarpalLength - frame.cover - o.trim)),
    strip.fact.date(date ?? '................'),
    ...(frame.estimated.length > 0 ? [strip.fact.estimated(frame.estimated.map((where) => measureName(where, names)).join(', '))] : []),
    ...(beside.length > 0 ? [w.noRoom(beside.join('; '))] : []),
    '',
    w.straps,
    ...f.straps.map((s) => w.strap(s.id, mm(s.width), mm(s.length), strapPlace(s, f.design.digits, speech))),
  ];
}

/** A sample of each kind of line with its meaning. */
function legendBlock(used: ReadonlySet<string>, x: number, top: number, { plate: w }: Speech): Drawn {
  const kinds = (Object.keys(PLATE_LINES) as PlateLine[]).filter((kind) => used.has(kind));
  const heading: Label = { layer: 'INFO', text: w.lines, at: { x, y: top - TEXT }, height: TEXT, align: 'left', angle: 0 };
  const words = textBlock(
    kinds.map((kind) => w.line[kind]),
    { x: x + SAMPLE + 3, y: top - 2 * TEXT },
    TEXT,
  );
  const marks = kinds.map((kind, k): Mark => {
    const y = (words.labels[k]?.at.y ?? top) + TEXT / 2;
    const paths = dashed({ x, y }, { x: x + SAMPLE, y }, PLATE_LINES[kind]);
    return { layer: 'INFO', role: `legend-${kind}`, title: w.sample(w.line[kind]), paths, circles: [] };
  });
  return { marks, labels: [heading, ...words.labels] };
}

/** The words and drawings that go with a plate. `used` are the kinds of line that it has, `left` what found no room on it. */
export function plateNotes(
  f: PlateFigures,
  hand: Hand,
  date: string | null,
  left: readonly string[],
  used: ReadonlySet<string>,
  speech: Speech,
): MakingNotes {
  const { design } = f;
  const { plate: w, number } = speech;
  return {
    code: hand.code,
    side: hand.side,
    block: w.name(plateName(design, speech), holdsIn(design, speech)),
    invented: hand.invented,
    // The first three lines (code, side, title, what it holds) stand in the head of every page; the straps have a list of their own.
    facts: factLines(f, hand, date, left, speech).slice(3),
    legend: legend(used, speech),
    view: null,
    cutLists: straps(f, speech),
    gauges: [
      {
        title: w.gauge.title(number(design.angle, 1)),
        drawn: angleGauge(design.angle, speech),
      },
    ],
    // A page has bars in place of the square.
    steps: Object.values({ ...w.step, paper: w.paperByBars }),
    besidePictures: null,
    checks: checks(f, speech),
    cautions: [...Object.values(w.caution), ...Object.values(speech.cautions)],
    made: { kind: 'plate', figures: f, hand },
  };
}

function legend(used: ReadonlySet<string>, { plate: w, strip }: Speech): readonly LegendRow[] {
  const kinds = (Object.keys(PLATE_LINES) as PlateLine[]).filter((kind) => used.has(kind));
  return [
    { dashes: [], layer: 'CUT', title: strip.legend.cut },
    ...kinds.map((kind): LegendRow => ({ dashes: PLATE_LINES[kind], layer: 'MARK', title: w.line[kind] })),
  ];
}

function straps(f: PlateFigures, speech: Speech): readonly CutList[] {
  const { plate: w } = speech;
  return f.straps.map((strap) => ({
    title: w.strap.title(strap.id),
    length: strap.length,
    width: strap.width,
    from: '',
    rows: [],
    remarks: [w.strap.goes(strapPlace(strap, f.design.digits, speech))],
  }));
}

function checks({ design }: PlateFigures, { plate: w, strip, hand: names, number }: Speech): readonly string[] {
  const blanks = design.digits.map((digit) => `${names.short[digit]} ......`).join(' ');
  return [
    strip.check.bars,
    w.check.mp(number(design.angle, 1)),
    strip.check.flexion('', blanks),
    strip.check.extension(blanks),
    w.check.free,
    w.check.clear,
    w.check.straps,
    strip.check.skin,
  ];
}
