import { type Block, serves } from '../../block/block.ts';
import { blocks } from '../../block/library.ts';
import type { WebName } from '../../hand/digits.ts';
import { webLevels } from '../../hand/estimate-palm.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import type { Problem, Result, Warning } from '../../units/result.ts';
import type { EdgeLevel } from './edge-levels.ts';
import type { WidthAt } from './least-width.ts';
import { NUMBER_OPTIONS, type StripOptions, type StripSettings } from './strip-options.ts';
import { flattened } from './strip-outline.ts';

/**
 * Share of its least width under which a strip is not drawn, and the narrowest that any may be, which is the least that can be asked for, mm: a narrower
 * one cools and bends at once where it is narrow, and its edges press (common practice, no source).
 */
const DRAWN_SHARE = 2 / 3;
const NARROWEST_DRAWN = NUMBER_OPTIONS.find((o) => o.key === 'minimumWidth')?.low ?? 0;

/** A strip that came out under its least width, and for whom. */
export interface NarrowStrip {
  readonly hand: Hand;
  readonly block: Block;
  /** What was asked for, and what it is drawn with. */
  readonly asked: StripOptions;
  readonly options: StripSettings;
  readonly edges: readonly EdgeLevel[];
  readonly tooNarrow: WidthAt;
}

/** Lays a strip; what it says of its width is looked at. */
export type LayWidth = (
  hand: Hand,
  block: Block,
  options: StripOptions,
) => Result<{ readonly edges: { readonly tooNarrow: WidthAt | null } }>;

/** The narrowest that is drawn of a strip with this least width, mm. */
export function narrowestDrawn({ minimumWidth }: Pick<StripSettings, 'minimumWidth'>): number {
  return Math.max(NARROWEST_DRAWN, DRAWN_SHARE * minimumWidth);
}

/** The warning of a strip that is drawn although it is under its least width. */
export function narrowWarning(strip: NarrowStrip, lay: LayWidth): Warning {
  const { tooNarrow, options } = strip;
  return {
    code: 'STRIP_UNDER_LEAST_WIDTH',
    where: `webSetback.${webNear(strip)}`,
    message: `${said(strip, 'is')}: ${plain(options.minimumWidth - tooNarrow.width, 2)} mm under its least width of ${plain(options.minimumWidth, 1)} mm`,
    value: tooNarrow.width,
    limit: options.minimumWidth,
    next: `measure the web setbacks again; ${widthOffer(strip, lay).words}; do not make this strip as it is drawn`,
  };
}

/** The refusal of a strip that is too narrow to be drawn; without a way to lay it, without an offer. */
export function narrowRefusal(strip: NarrowStrip, lay: LayWidth | null): Problem {
  const { words, setback } = lay ? widthOffer(strip, lay) : { words: null, setback: undefined };
  const least = narrowestDrawn(strip.options);
  return {
    code: 'STRIP_TOO_NARROW',
    where: `webSetback.${setback?.web ?? webNear(strip)}`,
    message: `${said(strip, 'would be')}, and under ${plain(least, 1)} mm none is drawn for a least width of ${plain(strip.options.minimumWidth, 1)} mm. Measure the web setbacks again${words === null ? '' : `; ${words}`}.`,
    kind: 'refused',
    ...(setback ? { limit: setback.mm } : {}),
  };
}

function said(strip: NarrowStrip, is: string): string {
  const { options, tooNarrow } = strip;
  const { v, width } = tooNarrow;
  return `the ${options.paper ? 'paper strip' : 'strip'} ${is} ${plain(width, 2)} mm wide near the ${webNear(strip)} web, ${plain(v, 0)} mm from the seam`;
}

/** The web that the narrow place lies nearest to. */
function webNear({ edges, options, tooNarrow }: NarrowStrip): string {
  const off = (e: EdgeLevel) => Math.abs(flattened(e.u, options) - tooNarrow.v);
  const webs = edges.flatMap((e) => (e.kind === 'web' ? [e] : [])).toSorted((a, b) => off(a) - off(b));
  return webs[0]?.between.join('-') ?? '';
}

const NOTHING_KEEPS = 'no other block and no smaller setback of one web that was tried keeps it';

/**
 * One change that keeps the least width, in words, tried on this hand: a block that serves as well, or the largest setback of one web in whole mm. A straight
 * outline would keep it too, but where webs are so steep it cannot be pulled to follow them.
 */
function widthOffer(
  { hand, block, asked, edges }: NarrowStrip,
  lay: LayWidth,
): { readonly words: string; readonly setback?: { readonly web: WebName; readonly mm: number } } {
  const keeps = (h: Hand, b: Block) => {
    const laid = lay(h, b, asked);
    return laid.ok && laid.value.edges.tooNarrow === null;
  };
  const other = blocks().find((b) => b.id !== block.id && serves(b, block, hand.target?.digit) && keeps(hand, b));
  if (other) return { words: `the block ${other.id} keeps it` };
  const { level } = webLevels(hand);
  const webs = [...new Set(edges.flatMap((e) => (e.kind === 'web' ? [e.between.join('-') as WebName] : [])))];
  for (const web of webs.toSorted((a, b) => level[a] - level[b])) {
    const within = (mm: number) => keeps({ ...hand, webs: { webSetback: { ...hand.webs?.webSetback, [web]: mm } } }, block);
    const mm = largestWhole(within, Math.ceil(-level[web]) - 1);
    if (mm !== null) return { words: `a setback of ${mm} mm at the ${web} web keeps it`, setback: { web, mm } };
  }
  return { words: NOTHING_KEEPS };
}

/** The largest whole number up to `most` that holds, by halving from 0, which holds or none is looked for. */
export function largestWhole(holds: (n: number) => boolean, most: number): number | null {
  if (most < 0 || !holds(0)) return null;
  let [low, high] = [0, most + 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
