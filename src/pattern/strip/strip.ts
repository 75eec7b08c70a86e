import type { Block } from '../../block/block.ts';
import { heightsBetween } from '../../geometry/broken-line.ts';
import { boxOf, unionBox } from '../../geometry/path.ts';
import { placePath, reversePath } from '../../geometry/transform.ts';
import { webLevels } from '../../hand/estimate-palm.ts';
import type { Hand } from '../../hand/hand.ts';
import { type Result, success } from '../../units/result.ts';
import { blockTitle } from '../../words/hand-words.ts';
import { type Language, spokenIn } from '../../words/language.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { Part, Pattern } from '../pattern.ts';
import { boxOfDrawn, shiftDrawn, shiftPart } from '../place-marks.ts';
import { bentDrawn } from './flat-frame.ts';
import { GEOMETRY_VERSION, type GeometryVersion } from './geometry-version.ts';
import { layStrip } from './lay-strip.ts';
import { type LengthBand, lengthBand95, readingBand } from './length-band.ts';
import { type LaidStrip, placeOnStrip } from './strip-labels.ts';
import { loopSizes } from './strip-loops.ts';
import { stripNotes } from './strip-notes.ts';
import type { StripOptions, StripSettings } from './strip-options.ts';
import { flattened } from './strip-outline.ts';
import { type StripFigures, type StripReport, stripReport } from './strip-report.ts';
import { stripSheet } from './strip-sheet.ts';
import { stripWarnings } from './strip-warnings.ts';
import { uprightMarks } from './upright-marks.ts';
import { layFirst } from './version-1/lay-first.ts';

/** Free margin round everything drawn, mm. */
const MARGIN = 5;
const GAP_UNDER_STRIP = 8;

export interface Strip {
  readonly pattern: Pattern;
  readonly report: StripReport;
  /** What it was drawn from; pictures of the same strip are drawn from these. */
  readonly figures: StripFigures;
}

/** All that a strip's figures need, before anything is drawn. Refused when the block cannot be made for this hand, with every reason. */
export function stripFigures(
  hand: Hand,
  block: Block,
  options: StripOptions,
  version: GeometryVersion = GEOMETRY_VERSION,
  offers?: 'offers' | 'no offers',
): Result<StripFigures> {
  const laid = version === '1' ? layFirst(hand, block, options) : layStrip(hand, block, options, offers);
  if (!laid.ok) return laid;
  const { settings, standing, path, edges, ...shape } = laid.value;
  const figures = {
    block,
    options: settings,
    asked: options,
    geometryVersion: version,
    path,
    ...shape,
    ...edges,
    loops: loopSizes(standing, settings),
    band: flatBand(options.paperReading === 'none' ? lengthBand95(hand, block, settings, path) : readingBand(), settings),
    estimated: estimatedFor(hand, block, version),
  };
  return success({ ...figures, warnings: [...laid.warnings, ...stripWarnings(hand, figures)] });
}

/** Measurements of the block's digits and webs that were estimated. */
function estimatedFor(hand: Hand, block: Block, version: GeometryVersion): readonly string[] {
  const digits = hand.estimated
    .map((e) => e.where)
    .filter((where) => Object.keys(block.places).some((digit) => where.startsWith(`digits.${digit}.`)));
  return [...digits, ...(version === '1' ? [] : webLevels(hand).estimated.map((web) => `webSetback.${web}`))];
}

/** The band of the flat length: the path's, less the stretch that the warm sheet gives. */
function flatBand({ below, above }: LengthBand, options: StripSettings): LengthBand {
  return { below: flattened(below, options), above: flattened(above, options) };
}

/** The strip for a hand and a block: its full-scale pattern and its report. `date` is the person's, ISO, or null; the clock is never read. */
export function makeStrip(
  hand: Hand,
  block: Block,
  options: StripOptions,
  date: string | null,
  version: GeometryVersion = GEOMETRY_VERSION,
  language: Language = 'en',
): Result<Strip> {
  const found = stripFigures(hand, block, options, version);
  if (!found.ok) return found;
  const figures = found.value;
  const speech = speechIn(language);
  const { part, left } = stripPart(figures, hand, speech);
  const sheet = shiftDrawn(stripSheet(figures, hand, date, left, speech), 0, boxOf([part.outline]).minY - GAP_UNDER_STRIP);
  const box = unionBox([boxOf([part.outline]), boxOfDrawn(part), boxOfDrawn(sheet)]);
  const dx = MARGIN - box.minX;
  const dy = MARGIN - box.minY;
  const pattern: Pattern = {
    kind: 'strip',
    title: speech.strip.title(hand.code, speech.hand.side[hand.side], blockTitle(block, language)),
    parts: [shiftPart(part, dx, dy)],
    beside: shiftDrawn(sheet, dx, dy),
    extents: { minX: 0, minY: 0, maxX: box.maxX + dx + MARGIN, maxY: box.maxY + dy + MARGIN },
    inputs: {
      schema: 'knucklewright/inputs@1',
      geometryVersion: version,
      date,
      kind: 'strip',
      hand: hand.source,
      block: { schema: 'knucklewright/block@1', id: block.id, title: block.title, places: block.places },
      options,
      ...spokenIn(language),
    },
    notes: stripNotes(figures, hand, date, left, speech),
    warnings: figures.warnings,
  };
  return success({ pattern, report: stripReport(figures), figures }, figures.warnings);
}

/**
 * The strip as it lies on the sheet: skin side down, distal edge up. Seen so, u runs to the right on a right hand with raised digits and
 * on a left hand with lowered ones, to the left otherwise (the outer face looks at the reader; the courses of model rule 5, followed round a hand).
 */
function stripPart(figures: StripFigures, hand: Hand, speech: Speech): { part: Part; left: readonly string[] } {
  const { flat, path, options, block } = figures;
  const runsRight = (hand.side === 'right') === (path.held === 'raised');
  const xOf = (v: number) => (runsRight ? v - flat.start : flat.end - v);
  const laid: LaidStrip = {
    length: flat.flatLength,
    xOf,
    edgesBetween: (from, to) => {
      const [v1, v2] = runsRight ? [from + flat.start, to + flat.start] : [flat.end - to, flat.end - from];
      return { bottom: heightsBetween(flat.proximal, v1, v2).greatest, top: heightsBetween(flat.distal, v1, v2).least };
    },
    startX: xOf(flat.start),
    inward: runsRight ? 1 : -1,
  };
  const outline = runsRight
    ? placePath(flat.outline, { dx: -flat.start, dy: 0 })
    : reversePath(placePath(flat.outline, { mirrorX: true, dx: flat.end, dy: 0 }));
  const { left, ...unbent } = placeOnStrip(laid, uprightMarks(path, flat, options, speech), hand.side, hand.code, speech.strip);
  return {
    part: {
      id: 'strip',
      title: speech.strip.part(blockTitle(block, speech.language), speech.hand.side[hand.side]),
      outline,
      holes: [],
      ...bentDrawn(unbent, flat, runsRight),
    },
    left,
  };
}
