import type { Block } from '../../block/block.ts';
import { heightAt } from '../../geometry/broken-line.ts';
import { polyline } from '../../geometry/path.ts';
import { boxOf, unionBox } from '../../geometry/path-measures.ts';
import { placePath, reversePath } from '../../geometry/transform.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { type Result, success } from '../../units/result.ts';
import { DASHES, dashed } from '../dashes.ts';
import type { Label, Mark, Part, Pattern } from '../pattern.ts';
import { boxOfDrawn, shiftDrawn, shiftPart } from '../place-marks.ts';
import { referenceSquare } from '../reference-square.ts';
import { textBlock, wrapText } from '../text-lines.ts';
import { bentDrawn } from './flat-frame.ts';
import { GEOMETRY_VERSION } from './geometry-version.ts';
import { type LaidBand, layPaperStrip } from './lay-strip.ts';
import type { StripOptions } from './strip-options.ts';
import { PAPER_SCALE } from './strip-outline.ts';

const MARGIN = 5;
const GAP = 8;
const TEXT = 2.2;
const TICK = { one: 2, five: 3, ten: 4.5 } as const;

/**
 * The paper strip of a hand and a block (model rule 15): the strip for paper, without an allowance at its starting end and with a millimetre scale at
 * its finishing end, zero where the model says that the ends meet. Refused as the strip itself is.
 */
export function paperTrial(hand: Hand, block: Block, options: StripOptions, date: string | null): Result<Pattern> {
  const laid = layPaperStrip(hand, block, options);
  if (!laid.ok) return laid;
  const part = paperPart(laid.value, hand, block);
  const below = shiftDrawn(words(hand, block, laid.value, date, boxOf([part.outline]).maxX), 0, boxOf([part.outline]).minY - GAP);
  const box = unionBox([boxOf([part.outline]), boxOfDrawn(part), boxOfDrawn(below)]);
  const [dx, dy] = [MARGIN - box.minX, MARGIN - box.minY];
  return success({
    kind: 'strip',
    title: `${hand.code}, ${hand.side} hand: paper strip, ${block.title}`,
    parts: [shiftPart(part, dx, dy)],
    beside: shiftDrawn(below, dx, dy),
    extents: { minX: 0, minY: 0, maxX: box.maxX + dx + MARGIN, maxY: box.maxY + dy + MARGIN },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: GEOMETRY_VERSION,
      date,
      kind: 'strip',
      paper: true,
      hand: hand.source,
      block: { schema: 'knucklewright/block@1', id: block.id, title: block.title, places: block.places },
      options,
    },
    warnings: [],
  });
}

/** The paper lies as the plastic does: outside up, distal edge up. */
function paperPart({ flat, path, settings }: LaidBand, hand: Hand, block: Block): Part {
  const runsRight = (hand.side === 'right') === (path.held === 'raised');
  const xOf = (v: number) => (runsRight ? v - flat.start : flat.end - v);
  const outline = runsRight
    ? placePath(flat.outline, { dx: -flat.start, dy: 0 })
    : reversePath(placePath(flat.outline, { mirrorX: true, dx: flat.end, dy: 0 }));
  const edges = (v: number) => ({ low: heightAt(flat.proximal, v), high: heightAt(flat.distal, v) });
  const across = (v: number, role: string, title: string, dashes: (typeof DASHES)[keyof typeof DASHES]): Mark => {
    const { low, high } = edges(v);
    return { layer: 'MARK', role, title, paths: dashed({ x: xOf(v), y: low }, { x: xOf(v), y: high }, dashes), circles: [] };
  };
  const upright = (text: string, v: number, beside = 0.8): Label => {
    const { low, high } = edges(v);
    return { layer: 'MARK', text, at: { x: xOf(v) - beside, y: (low + high) / 2 }, height: 1.8, align: 'center', angle: 90 };
  };
  const u = (at: number) => at / (1 + settings.stretch);
  const passes = path.passes.map((p) => ({
    v: u(p.u),
    title: `${p.digit} midline, ${p.aspect}, ${p.layer} layer`,
    word: p.digit.toUpperCase(),
    aspect: p.aspect,
  }));
  const webs = path.webCrossings.map((w) => ({ v: u(w.u), title: `web ${w.between.join('-')}, ${w.layer} layer` }));
  const scale = scaleMarks(flat.seamEnd, xOf, (v) => edges(v).low);
  const unbent = {
    marks: [
      // The seam's own digit lies on the starting end itself, which is cut.
      ...passes.filter((p) => p.v > 0.5).map((p) => across(p.v, `midline-${p.aspect}`, p.title, DASHES[p.aspect])),
      ...webs.map((w) => across(w.v, 'web-crossing', w.title, DASHES.web)),
      ...scale.marks,
    ],
    labels: [...passes.filter((p) => p.v > 4).map((p) => upright(p.word, p.v)), ...scale.labels],
  };
  const title = `paper strip, ${block.title}, ${hand.side} hand`;
  return { id: 'paper-strip', title, outline, holes: [], ...bentDrawn(unbent, flat, runsRight) };
}

/** Strokes up from the proximal edge at every millimetre round the place where the ends should meet, tens with their number. */
function scaleMarks(zero: number, xOf: (v: number) => number, lowAt: (v: number) => number) {
  const marks: Mark[] = [];
  const labels: Label[] = [];
  for (let mm = -PAPER_SCALE; mm <= PAPER_SCALE; mm++) {
    const [v, tick] = [zero + mm, mm % 10 === 0 ? TICK.ten : mm % 5 === 0 ? TICK.five : TICK.one];
    const low = lowAt(v);
    const stroke = polyline([
      { x: xOf(v), y: low },
      { x: xOf(v), y: low + tick },
    ]);
    marks.push({ layer: 'MARK', role: 'paper-scale', title: `${mm} mm on the scale`, paths: [stroke], circles: [] });
    if (mm % 5 !== 0) continue;
    const text = `${mm > 0 ? '+' : ''}${mm}`;
    labels.push({ layer: 'MARK', text, at: { x: xOf(v), y: low + TICK.ten + 0.8 }, height: 1.8, align: 'center', angle: 0 });
  }
  return { marks, labels };
}

function words(hand: Hand, block: Block, { settings, path }: LaidBand, date: string | null, width: number) {
  const square = referenceSquare(0, 0);
  const x = boxOfDrawn(square).maxX + GAP;
  const lines = [
    `PAPER STRIP   ${hand.code}   ${hand.side.toUpperCase()} HAND${hand.invented ? '   (invented demo)' : ''}`,
    block.title,
    `width ${plain(settings.width, 1)}, differential ${plain(settings.differential, 1)} degrees, ${settings.closure}, date ${date ?? '................'}`,
    `from end to zero ${plain(path.pathLength, 1)} mm`,
    '',
    ...[
      '1. Measure the 50 mm square, then cut the strip from plain paper (80 g).',
      '2. Outside up: weave it round the fingers as the strip will run, snug, not tight, the fingers held at the differential.',
      '3. Read on the scale where the starting end lies. + is longer than drawn.',
      '4. Draw the strip again with this reading: --paper-reading, or the field on the page.',
      'Reading: ............ mm',
    ].flatMap((line) => wrapText(line, Math.max(80, width - x), TEXT)),
  ];
  const text = textBlock(lines, { x, y: 0 }, TEXT);
  return { marks: square.marks, labels: [...square.labels, ...text.labels] };
}
