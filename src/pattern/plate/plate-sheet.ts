import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { CAUTIONS } from '../cautions.ts';
import { dashed } from '../dashes.ts';
import type { Label, Mark } from '../pattern.ts';
import { boxOfDrawn, type Drawn, shiftDrawn } from '../place-marks.ts';
import { REFERENCE_SIDE, referenceSquare } from '../reference-square.ts';
import { textBlock, wrapText } from '../text-lines.ts';
import { angleGauge } from './angle-gauge.ts';
import { holdsInWords } from './plate-design.ts';
import { PLATE_LINES, type PlateLine } from './plate-marks.ts';
import type { PlateFigures } from './plate-report.ts';
import { PLATE_CAUTIONS, PLATE_STEPS } from './plate-steps.ts';

/** What the fact line says of the way a plate is folded. */
const BEND_WORDS = { straight: 'one straight line', split: 'split between ring and little', kinked: 'kinked at each joint' } as const;

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
  geometryVersion: string,
  beside: readonly string[],
  partsWidth: number,
  used: ReadonlySet<string>,
): Drawn {
  const width = Math.max(LEAST_WIDTH, partsWidth);
  const gauge = gaugeWithTitle(figures);
  const gaugeBox = boxOfDrawn(gauge);
  const left = shiftDrawn(gauge, -gaugeBox.minX, -gaugeBox.maxY);
  const square = referenceSquare(width - REFERENCE_SIDE, 0);
  const columnX = gaugeBox.maxX - gaugeBox.minX + GAP;
  const room = width - REFERENCE_SIDE - GAP - columnX;
  const facts = textBlock(
    factLines(figures, hand, date, geometryVersion, beside).flatMap((text) => wrapText(text, room, TEXT)),
    { x: columnX, y: 0 },
    TEXT,
  );
  const legend = legendBlock(used, columnX, -facts.depth - GAP);
  const columns = {
    marks: [...left.marks, ...square.marks, ...legend.marks],
    labels: [...left.labels, ...square.labels, ...facts.labels, ...legend.labels],
  };
  const under = boxOfDrawn(columns).minY - GAP;
  const steps = textBlock(
    [
      'MOULDING',
      ...PLATE_STEPS.flatMap((text, k) => wrapText(`${k + 1}. ${text}`, width, TEXT)),
      '',
      'CAUTIONS',
      ...[...PLATE_CAUTIONS, ...Object.values(CAUTIONS)].flatMap((text) => wrapText(text, width, TEXT)),
    ],
    { x: 0, y: under },
    TEXT,
  );
  return { marks: columns.marks, labels: [...columns.labels, ...steps.labels] };
}

function gaugeWithTitle({ design }: PlateFigures): Drawn {
  const gauge = angleGauge(design.angle);
  const box = boxOfDrawn(gauge);
  const title = textBlock(
    ['ANGLE GAUGE: cut out of the paper,', 'lay the ring on the MP joint from the side'],
    { x: box.minX, y: box.maxY + 3 + TEXT * 2.75 },
    TEXT,
  );
  return { marks: gauge.marks, labels: [...title.labels, ...gauge.labels] };
}

/** What the plate is, line by line; the last lines are the straps. */
export function factLines(
  f: PlateFigures,
  hand: Hand,
  date: string | null,
  geometryVersion: string,
  beside: readonly string[],
): readonly string[] {
  const { design, options: o, frame } = f;
  const mm = (value: number) => plain(value, 1);
  const faces = frame.faces.map((face, k) => {
    const wide = mm(face.midLateral + face.wing + (f.outlines[k]?.bar.out ?? 0));
    return `${face.face} plate: hand part ${wide} wide, bend ${mm(Math.max(...face.parts.map((part) => part.bend.length)))} long, ${BEND_WORDS[face.bend.form]}, tightest corner ${mm(f.outlines[k]?.smallestRadius ?? 0)}`;
  });
  return [
    `${hand.code}   ${hand.side.toUpperCase()} HAND${hand.invented ? '   (invented demo)' : ''}`,
    design.title,
    `${holdsInWords(design)}   (0 to 90 possible: the clinician decides)`,
    `low-temperature sheet ${mm(o.thickness)} thick, ${mm(o.skinClearance)} off the skin`,
    `palm ${mm(frame.section.breadth)} broad, ${mm(frame.section.circumference)} round, so ${mm(frame.section.thickness)} thick`,
    ...faces,
    `wrist free: ${mm(frame.palm.metacarpalLength - frame.cover - o.trim)} to the wrist crease`,
    `date ${date ?? '................'}   geometry ${geometryVersion}`,
    ...(frame.estimated.length > 0 ? [`ESTIMATED, not measured: ${frame.estimated.join(', ')}`] : []),
    ...(beside.length > 0 ? [`No room on the plate for: ${beside.join('; ')}`] : []),
    '',
    'STRAPS to cut (hook and loop)',
    ...f.straps.map((s) => `${s.id}   ${mm(s.width)} wide, ${mm(s.length)} long, ${s.where}`),
  ];
}

/** A sample of each kind of line with its meaning. */
function legendBlock(used: ReadonlySet<string>, x: number, top: number): Drawn {
  const kinds = (Object.keys(PLATE_LINES) as PlateLine[]).filter((kind) => used.has(kind));
  const heading: Label = { layer: 'INFO', text: 'LINES', at: { x, y: top - TEXT }, height: TEXT, align: 'left', angle: 0 };
  const words = textBlock(
    kinds.map((kind) => PLATE_LINES[kind].words),
    { x: x + SAMPLE + 3, y: top - 2 * TEXT },
    TEXT,
  );
  const marks = kinds.map((kind, k): Mark => {
    const y = (words.labels[k]?.at.y ?? top) + TEXT / 2;
    const paths = dashed({ x, y }, { x: x + SAMPLE, y }, PLATE_LINES[kind].dashes);
    return { layer: 'INFO', role: `legend-${kind}`, title: `sample: ${PLATE_LINES[kind].words}`, paths, circles: [] };
  });
  return { marks, labels: [heading, ...words.labels] };
}
