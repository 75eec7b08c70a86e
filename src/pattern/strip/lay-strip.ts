import { type Block, blockProblems } from '../../block/block.ts';
import { type BrokenLine, heightAt } from '../../geometry/broken-line.ts';
import type { DigitName } from '../../hand/digits.ts';
import { digitPath } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { LENGTH_COMPARED } from '../../units/tolerance.ts';
import { type BandEdges, bandEdges } from './band-edges.ts';
import { type EdgeLevel, edgeLevels, type StripPull, straightPull, straightWidth } from './edge-levels.ts';
import type { WidthAt } from './least-width.ts';
import { narrowestDrawn, narrowRefusal } from './least-width-offer.ts';
import { loopsOverPip } from './loops-over-pip.ts';
import { OFFERED, offerPaper, offerReading, offerStraighter, offerWith } from './path-offer.ts';
import { pathFaults } from './prove-path.ts';
import { leastKept, type SharpEdges, sharpEdges } from './sharp-edges.ts';
import { clearanceFor, PAPER_THICKNESS } from './solve-clearance.ts';
import { loopSizes } from './strip-loops.ts';
import type { StripOptions, StripSettings } from './strip-options.ts';
import { type FlatStrip, flattened } from './strip-outline.ts';
import { type StripPath, stripPath } from './strip-path.ts';
import { type StandingHand, standSections } from './strip-sections.ts';
import { settingsFor, widthsToTry } from './strip-settings.ts';

/** A strip laid round a hand's digits, with its edges. */
export interface LaidBand {
  readonly settings: StripSettings;
  readonly standing: StandingHand;
  readonly path: StripPath;
  readonly flat: FlatStrip;
  /** Level of the proximal edge on the hand, by v; the flat strip's own unless it is a straight one. */
  readonly onHand: BrokenLine;
  readonly freePip: Readonly<Partial<Record<DigitName, number>>>;
  readonly edges: {
    readonly reliefs: readonly { readonly digit: DigitName; readonly depth: number }[];
    /** What the reliefs were to leave of the width, before narrow places were made wider. */
    readonly narrowest: number;
    readonly edges: readonly EdgeLevel[];
    readonly straightWidth: number;
    readonly pull: StripPull | null;
    readonly seamSlope: number;
    /** Where the finished strip is narrowest, if under its least width there. */
    readonly tooNarrow: WidthAt | null;
  };
}

/** Share of the width that a width left to the program must keep at every palmar midline. */
const LEAST_SHARE = 2 / 3;

/** Strips of a hand that are kept: more than there are blocks. */
const MOST_KEPT = 12;
/** The strips that were laid of a hand of late, as long as that is kept: the plan lays every block that serves, the list and the pattern the one that was chosen. */
const laidOf = new WeakMap<Hand, readonly { readonly block: Block; readonly options: StripOptions; readonly laid: Result<LaidBand> }[]>();

/**
 * Lays the strip of a block round a hand: the width decided where it was left open (model rule 13), path and edges, the path proved. Refused
 * with every reason; where a smaller differential would hold, it is named. What would make a strip that is too narrow wide enough is tried where it is told:
 * not among many that are only compared.
 */
export function layStrip(hand: Hand, block: Block, options: StripOptions, offers: 'offers' | 'no offers' = 'offers'): Result<LaidBand> {
  const kept = laidOf.get(hand)?.find((one) => one.block === block && one.options === options);
  if (kept) return kept.laid;
  const laid = layAnyWidth(hand, block, options);
  if (!laid.ok) return laid;
  const { settings, edges } = laid.value;
  const { tooNarrow } = edges;
  if (tooNarrow === null || isWideEnough(laid.value)) {
    laidOf.set(hand, [...(laidOf.get(hand) ?? []), { block, options, laid }].slice(-MOST_KEPT));
    return laid;
  }
  const narrow = { hand, block, asked: options, options: settings, edges: edges.edges, tooNarrow };
  return failure(narrowRefusal(narrow, offers === 'offers' ? layAnyWidth : null));
}

/** Whether a strip is drawn, with a warning where it misses its least width. */
function isWideEnough({ settings, edges: { tooNarrow } }: Pick<LaidBand, 'settings' | 'edges'>): boolean {
  return tooNarrow === null || tooNarrow.width >= narrowestDrawn(settings);
}

/** The strip at the width that was asked for, or at the widest that keeps enough of itself, however narrow it comes out. */
function layAnyWidth(hand: Hand, block: Block, options: StripOptions): Result<LaidBand> {
  const rules = blockProblems(block);
  if (rules.length > 0) return failure(...rules);
  if (options.width !== 'auto') return layAtWidth(hand, block, options, options.width);
  const widths = widthsToTry(options);
  for (const width of widths.slice(0, -1)) {
    const laid = layIfWide(hand, block, options, width);
    if (laid?.ok) return laid;
  }
  return layAtWidth(hand, block, options, widths.at(-1) as number);
}

/** The strip at a width, if it can be laid and keeps enough of it, else null. What it would keep is asked before anything is proved or rounded: most widths that are tried keep too little. */
function layIfWide(hand: Hand, block: Block, options: StripOptions, width: number): Result<LaidBand> | null {
  const open = settingsFor(options, hand, width);
  const clearance = clearanceOf(hand, block, open);
  if (!clearance.ok) return null;
  const settings = { ...open, skinClearance: clearance.value };
  const band = layBand(hand, block, settings);
  if (!band.ok) return null;
  const { path } = band.value;
  const sharp = sharpEdges(path, settings);
  if (isTooBent(sharp) || leastKept(path, settings, sharp) < LEAST_SHARE * width - LENGTH_COMPARED) return null;
  return withSeam(edged(band.value, settings, sharp), options, hand);
}

/** The clearance that a strip is drawn with: the one asked for, or the one that a paper reading stands for. */
function clearanceOf(hand: Hand, block: Block, settings: StripSettings): Result<number> {
  const { paperReading } = settings;
  return paperReading === 'none' ? success(settings.skinClearance) : clearanceFor(hand, block, settings, paperReading);
}

function layAtWidth(hand: Hand, block: Block, options: StripOptions, width: number): Result<LaidBand> {
  const open = settingsFor(options, hand, width);
  // Offers nothing itself: a change that does not hold either would ask for another for ever.
  const holds = (changes: Partial<StripSettings>, of = hand) => {
    const changed = { ...open, ...changes };
    const found = clearanceOf(of, block, changed);
    if (!found.ok) return false;
    const laid = laidWith(of, block, { ...changed, skinClearance: found.value });
    return laid.ok && isWideEnough(laid.value);
  };
  const clearance = clearanceOf(hand, block, open);
  if (!clearance.ok) return failure(...clearance.problems.map((problem) => offerReading(problem, holds)));
  const settings = { ...open, skinClearance: clearance.value };
  const laid = laidWith(hand, block, settings);
  if (laid.ok) return withSeam(laid, options, hand);
  if (laid.problems.some((p) => p.code === 'STRIP_TOO_BENT')) {
    const asked = { width, minimumWidth: options.minimumWidth };
    const narrower = (mm: number) => holds(settingsFor(options, hand, mm));
    return failure(...laid.problems.map((p) => offerStraighter(p, narrower, () => holds({}, withoutRoots(hand)), asked)));
  }
  if (!laid.problems.some((p) => OFFERED.includes(p.code))) return laid;
  return failure(...offerWith(laid.problems, holds, settings));
}

/** A seam that was left to the program opens where a closed loop cannot pass the PIP joint; the drawing is that of a lap either way. */
function withSeam(laid: Result<LaidBand>, { seam }: StripOptions, hand: Hand): Result<LaidBand> {
  if (!laid.ok || seam !== 'auto') return laid;
  const { standing, settings } = laid.value;
  const opens = loopsOverPip(hand, loopSizes(standing, settings)).length > 0;
  return opens ? success({ ...laid.value, settings: { ...settings, seam: 'opening' } }, laid.warnings) : laid;
}

function laidWith(hand: Hand, block: Block, settings: StripSettings): Result<LaidBand> {
  const band = layBand(hand, block, settings);
  return band.ok ? edged(band.value, settings) : band;
}

/** The strip of a band that was laid, with its edges; refused where the proof of its path fails. */
function edged(band: Band, settings: StripSettings, known?: SharpEdges): Result<LaidBand> {
  const proved = provedBand(band, settings);
  if (!proved.ok) return proved;
  const { standing, path, warnings } = band;
  const sharp = known ?? sharpEdges(path, settings);
  if (isTooBent(sharp)) return failure(tooBent(path, settings, sharp.fine));
  const edges = bandEdges(path, settings, sharp);
  return success(
    {
      settings,
      standing,
      path,
      flat: edges.flat,
      onHand: edges.onHand,
      freePip: leastFree(edges),
      edges: {
        reliefs: deepestReliefs(edges),
        narrowest: Math.min(...edges.palmar.map((p) => settings.width - p.intended)),
        edges: edgeLevels(path, edges, settings),
        straightWidth: straightWidth(path, edges, settings),
        pull: settings.outline === 'straight' ? straightPull(path, edges, settings) : null,
        seamSlope: seamSlope(path, edges, settings),
        tooNarrow: edges.tooNarrow,
      },
    },
    warnings,
  );
}

/**
 * The same strip for a paper trial, with its scale at the finishing end (model rule 15). Refused as the strip itself is; besides where thin paper, whose path is
 * straighter, holds nothing, and where its edges, which end elsewhere and are not stretched, come out too narrow.
 */
export function layPaperStrip(hand: Hand, block: Block, options: StripOptions): Result<LaidBand> {
  const unread: StripOptions = { ...options, paperReading: 'none' };
  const plastic = layStrip(hand, block, unread);
  if (!plastic.ok) return plastic;
  const paper = paperOf(plastic.value, hand, block);
  if (!paper.ok) {
    const both = (differential: number) => layPaperWidth(hand, block, { ...unread, differential }).ok;
    return failure(...paper.problems.map((problem) => offerPaper(problem, both, plastic.value.settings)));
  }
  const { settings, edges } = paper.value;
  const { tooNarrow } = edges;
  if (tooNarrow === null || isWideEnough(paper.value)) return paper;
  return failure(narrowRefusal({ hand, block, asked: unread, options: settings, edges: edges.edges, tooNarrow }, layPaperWidth));
}

function paperOf({ settings }: LaidBand, hand: Hand, block: Block): Result<LaidBand> {
  return laidWith(hand, block, { ...settings, thickness: PAPER_THICKNESS, stretch: 0, paper: true });
}

/** The paper strip, however narrow, where the strip itself keeps its width; else the strip, to be told from it. */
function layPaperWidth(hand: Hand, block: Block, options: StripOptions): Result<LaidBand> {
  const plastic = layAnyWidth(hand, block, options);
  return plastic.ok && plastic.value.edges.tooNarrow === null ? paperOf(plastic.value, hand, block) : plastic;
}

/** The digits stood side by side and the path round them, not yet proved. */
interface Band {
  readonly standing: StandingHand;
  readonly path: StripPath;
  readonly warnings: readonly Warning[];
}

function layBand(hand: Hand, block: Block, settings: StripSettings): Result<Band> {
  const standing = standSections(hand, block, settings);
  if (!standing.ok) return standing;
  const path = stripPath(standing.value, settings);
  return path.ok ? success({ standing: standing.value, path: path.value, warnings: standing.warnings }) : path;
}

function provedBand(band: Band, settings: StripSettings): Result<Band> {
  const faults = pathFaults(band.path, settings);
  return faults.length > 0 ? failure(...faults) : success(band);
}

/** What is left of a finger's circumference at an edge of the strip, by its taper, under which no strip is drawn: half of it. Common practice, no source. */
const LEAST_ROUND = 0.5;

function isTooBent({ fine }: SharpEdges): boolean {
  return fine.scale < LEAST_ROUND;
}

/** The refusal of a strip whose edge reaches to where a finger, if it went on tapering so, would have next to no circumference: no finger is a cone up to its point. */
function tooBent(path: StripPath, settings: StripSettings, { scale, at }: SharpEdges['fine']): Problem {
  const whole = flattened(path.pathLength, settings);
  const off = (u: number) => Math.abs(((flattened(u, settings) - at + 1.5 * whole) % whole) - whole / 2);
  const { digit } = path.passes.reduce((a, b) => (off(b.u) < off(a.u) ? b : a));
  const left = scale > 0 ? `${Math.floor(100 * scale)} % of its circumference` : 'no circumference at all';
  return {
    code: 'STRIP_TOO_BENT',
    where: digitPath(digit, 'rootCircumference'),
    message: `the ${digit} finger tapers so much that at an edge of the strip it would have ${left}, which no finger has; at least ${100 * LEAST_ROUND} % is needed. Measure its circumference and root circumference again.`,
    kind: 'refused',
  };
}

function withoutRoots(hand: Hand): Hand {
  const digits = Object.entries(hand.digits).map(([digit, { rootCircumference: _, ...measures }]) => [digit, measures]);
  return { ...hand, digits: Object.fromEntries(digits) };
}

/** The least that each digit is left, over its palmar passes; degrees. A digit with no palmar pass is not there. */
function leastFree({ palmar }: BandEdges): LaidBand['freePip'] {
  const free: Partial<Record<DigitName, number>> = {};
  for (const p of palmar) free[p.digit] = Math.min(free[p.digit] ?? Number.POSITIVE_INFINITY, p.freeFlexion);
  return free;
}

function deepestReliefs({ palmar }: BandEdges): LaidBand['edges']['reliefs'] {
  const digits = [...new Set(palmar.map((p) => p.digit))];
  return digits.map((digit) => ({ digit, depth: Math.max(...palmar.filter((p) => p.digit === digit).map((p) => p.depth)) }));
}

/** Slope of the proximal edge where the band closes. */
function seamSlope(path: StripPath, { onHand }: BandEdges, settings: StripSettings): number {
  const at = flattened(path.pathLength, settings);
  return heightAt(onHand, at + 0.5) - heightAt(onHand, at - 0.5);
}
