import type { Block } from '../../block/block.ts';
import { heightAt } from '../../geometry/broken-line.ts';
import { boxOf, polyline, unionBox } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import { placePath, reversePath } from '../../geometry/transform.ts';
import type { Hand } from '../../hand/hand.ts';
import { type Result, success } from '../../units/result.ts';
import { blockTitle } from '../../words/hand-words.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
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
/** Places of the scale that have a figure, mm; its height, and its top over the proximal edge. */
const SCALE_FIGURES = [-15, -10, -5, 0, 5, 10, 15].filter((mm) => Math.abs(mm) <= PAPER_SCALE);
const FIGURE = 1.8;
const FIGURE_TOP = TICK.ten + 0.8 + FIGURE;
/** A name whose line is nearer to a figure's place than this stands over it; and the space between them. mm */
const BESIDE_FIGURE = 5;
const CLEAR = 0.5;

/**
 * The paper strip of a hand and a block (model rule 15): the strip for paper, without an allowance at its starting end and with a millimetre scale at
 * its finishing end, zero where the model says that the ends meet. Refused as the strip itself is.
 */
export function paperTrial(
  hand: Hand,
  block: Block,
  options: StripOptions,
  date: string | null,
  language: Language = 'en',
): Result<Pattern> {
  const laid = layPaperStrip(hand, block, options);
  if (!laid.ok) return laid;
  const speech = speechIn(language);
  const part = paperPart(laid.value, hand, block, speech);
  const below = shiftDrawn(words(hand, block, laid.value, date, boxOf([part.outline]).maxX, speech), 0, boxOf([part.outline]).minY - GAP);
  const box = unionBox([boxOf([part.outline]), boxOfDrawn(part), boxOfDrawn(below)]);
  const [dx, dy] = [MARGIN - box.minX, MARGIN - box.minY];
  return success({
    kind: 'strip',
    title: speech.strip.trial.title(hand.code, speech.hand.side[hand.side], blockTitle(block, language)),
    parts: [shiftPart(part, dx, dy)],
    lists: [{ heading: speech.strip.trial.heading, lines: trialLines(laid.value, date, speech, speech.strip.trial.bars) }],
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
      ...spokenIn(language),
    },
    warnings: [],
  });
}

/** The paper lies as the plastic does: outside up, distal edge up. */
function paperPart({ flat, path, settings }: LaidBand, hand: Hand, block: Block, speech: Speech): Part {
  const { strip: w, hand: names } = speech;
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
  const figures = SCALE_FIGURES.map((mm) => flat.seamEnd + mm);
  /** Beside its line, over the figures of the scale where it stands among them, smaller where too little room is left. */
  const upright = (text: string, v: number): Label => {
    const { low, high } = edges(v);
    const near = figures.filter((at) => Math.abs(at - v) < BESIDE_FIGURE).map((at) => edges(at).low + FIGURE_TOP + CLEAR);
    const from = Math.max(low, ...near);
    const height = Math.min(FIGURE, (FIGURE * (high - from - CLEAR)) / textWidth(text, FIGURE));
    return { layer: 'MARK', text, at: { x: xOf(v) - 0.8, y: (from + high) / 2 }, height, align: 'center', angle: 90 };
  };
  const u = (at: number) => at / (1 + settings.stretch);
  const passes = path.passes.map((p) => ({
    v: u(p.u),
    title: w.mark.midline(names.short[p.digit], names.aspect[p.aspect], names.layer[p.layer]),
    word: w.lettering.digit[p.digit],
    aspect: p.aspect,
  }));
  const webs = path.webCrossings.map((web) => ({
    v: u(web.u),
    title: w.mark.web(names.short[web.between[0]], names.short[web.between[1]], names.layer[web.layer]),
  }));
  const scale = scaleMarks(flat.seamEnd, xOf, (v) => edges(v).low, w);
  const unbent = {
    marks: [
      // The seam's own digit lies on the starting end itself, which is cut.
      ...passes.filter((p) => p.v > 0.5).map((p) => across(p.v, `midline-${p.aspect}`, p.title, DASHES[p.aspect])),
      ...webs.map((web) => across(web.v, 'web-crossing', web.title, DASHES.web)),
      ...scale.marks,
    ],
    labels: [...passes.filter((p) => p.v > 4).map((p) => upright(p.word, p.v)), ...scale.labels],
  };
  const title = w.trial.part(blockTitle(block, speech.language), names.side[hand.side]);
  return { id: 'paper-strip', title, outline, holes: [], ...bentDrawn(unbent, flat, runsRight) };
}

/** Strokes up from the proximal edge at every millimetre round the place where the ends should meet, tens with their number. */
function scaleMarks(zero: number, xOf: (v: number) => number, lowAt: (v: number) => number, w: Speech['strip']) {
  const marks: Mark[] = [];
  const labels: Label[] = [];
  for (let mm = -PAPER_SCALE; mm <= PAPER_SCALE; mm++) {
    const [v, tick] = [zero + mm, mm % 10 === 0 ? TICK.ten : mm % 5 === 0 ? TICK.five : TICK.one];
    const low = lowAt(v);
    const stroke = polyline([
      { x: xOf(v), y: low },
      { x: xOf(v), y: low + tick },
    ]);
    marks.push({ layer: 'MARK', role: 'paper-scale', title: w.trial.tick(String(mm)), paths: [stroke], circles: [] });
    if (!SCALE_FIGURES.includes(mm)) continue;
    const text = `${mm > 0 ? '+' : ''}${mm}`;
    labels.push({ layer: 'MARK', text, at: { x: xOf(v), y: low + FIGURE_TOP - FIGURE }, height: FIGURE, align: 'center', angle: 0 });
  }
  return { marks, labels };
}

/** What the paper strip is and how it is tried; `first` says what is measured before it is cut. */
function trialLines({ settings, path }: LaidBand, date: string | null, { strip: w, number }: Speech, first: string): readonly string[] {
  return [
    w.trial.settings(number(settings.width, 1), number(settings.differential, 1), w.choice[settings.closure], date ?? '................'),
    w.trial.length(number(path.pathLength, 1)),
    '',
    first,
    w.trial.second,
    w.trial.third,
    w.trial.fourth,
    w.trial.reading,
  ];
}

function words(hand: Hand, block: Block, laid: LaidBand, date: string | null, width: number, speech: Speech) {
  const { strip: w } = speech;
  const square = referenceSquare(0, 0, speech);
  const x = boxOfDrawn(square).maxX + GAP;
  const lines = [
    `${w.trial.heading}   ${hand.code}   ${w.lettering.hand[hand.side]}${hand.invented ? `   ${w.invented}` : ''}`,
    blockTitle(block, speech.language),
    ...trialLines(laid, date, speech, w.trial.first).flatMap((line) => wrapText(line, Math.max(80, width - x), TEXT)),
  ];
  const text = textBlock(lines, { x, y: 0 }, TEXT);
  return { marks: square.marks, labels: [...square.labels, ...text.labels] };
}
