import { type Block, placedDigits } from '../../block/block.ts';
import type { BrokenLine } from '../../geometry/broken-line.ts';
import type { DigitName } from '../../hand/digits.ts';
import { degrees } from '../../units/angle.ts';
import { rounded } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import type { EdgeLevel, StripPull } from './edge-levels.ts';
import type { WidthAt } from './least-width.ts';
import type { LengthBand } from './length-band.ts';
import type { Course } from './strip-courses.ts';
import type { Loop } from './strip-loops.ts';
import type { StripOptions, StripSettings } from './strip-options.ts';
import type { FlatStrip } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';

/** What `draw --json` prints about a strip: mm and degrees, u along the neutral line from the seam. */
export interface StripReport {
  readonly pathLength: number;
  readonly flatLength: number;
  readonly flatWidth: number;
  readonly block: { readonly id: string; readonly places: Block['places'] };
  readonly closure: StripOptions['closure'];
  readonly passes: readonly {
    readonly digit: DigitName;
    readonly layer: Course;
    readonly aspect: 'dorsal' | 'palmar';
    readonly u: number;
  }[];
  readonly webCrossings: readonly { readonly between: readonly [DigitName, DigitName]; readonly layer: Course; readonly u: number }[];
  readonly borderTurns: readonly { readonly digit: DigitName; readonly border: 'radial' | 'ulnar'; readonly u: number }[];
  readonly sections: Readonly<Partial<Record<DigitName, { readonly depth: number }>>>;
  readonly loops: readonly Loop[];
  readonly relief: readonly { readonly digit: DigitName; readonly depth: number }[];
  readonly outline: StripSettings['outline'];
  /** Levels of the two edges along the digits, mm, distal positive, 0 at the foremost web; before corners are rounded. */
  readonly edges: readonly EdgeLevel[];
  /** How wide a straight band could be that lies at one level on all digits, mm; under 0 none lies there. */
  readonly straightWidth: number;
  /** A straight strip is pulled to follow the webs: by how much, between which fingers, and how steeply. Null where the outline is staggered. */
  readonly pull: StripPull | null;
  /** Fingers whose root was measured, by how many degrees each narrows to each side; and by how many the flat strip is curved for it, from end to end. */
  readonly taper: Readonly<Partial<Record<DigitName, number>>>;
  readonly curve: number;
  /** Where a paper strip was tried: what it read, and the clearance that follows from it. */
  readonly paperTrial: { readonly reading: number; readonly skinClearance: number } | null;
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
  readonly standOff: readonly { readonly digit: DigitName; readonly distance: number }[];
  /** 95 % band of the flat length, from the measuring errors; with a paper strip that was read, of the reading. */
  readonly lengthBand95: readonly [number, number];
  /** Measurements that were estimated, not taken. */
  readonly estimated: readonly string[];
  readonly warnings: readonly Warning[];
}

/** Figures are given to a micrometre; more would only show rounding. */
const DECIMALS = 3;

export interface StripFigures {
  readonly block: Block;
  /** What it is drawn with. */
  readonly options: StripSettings;
  /** What was asked for. */
  readonly asked: StripOptions;
  readonly geometryVersion: string;
  readonly path: StripPath;
  readonly flat: FlatStrip;
  /** Level of the proximal edge on the hand, by v. */
  readonly onHand: BrokenLine;
  readonly reliefs: StripReport['relief'];
  readonly edges: readonly EdgeLevel[];
  readonly straightWidth: number;
  readonly pull: StripPull | null;
  /** How far the edges shift along the digits for each mm that the strip is closed longer: their slope at the seam. */
  readonly seamSlope: number;
  /** Where the finished strip is narrowest, if under its least width there. */
  readonly tooNarrow: WidthAt | null;
  readonly loops: readonly Loop[];
  readonly freePip: StripReport['freePipFlexion'];
  /** Of the flat length. */
  readonly band: LengthBand;
  readonly estimated: readonly string[];
  readonly warnings: readonly Warning[];
}

export function stripReport(f: StripFigures): StripReport {
  const r = (value: number) => rounded(value, DECIMALS);
  return {
    pathLength: r(f.path.pathLength),
    flatLength: r(f.flat.flatLength),
    flatWidth: r(f.options.width),
    block: { id: f.block.id, places: Object.fromEntries(placedDigits(f.block).map(({ digit, place }) => [digit, place])) },
    closure: f.options.closure,
    passes: f.path.passes.map(({ digit, layer, aspect, u }) => ({ digit, layer, aspect, u: r(u) })),
    webCrossings: f.path.webCrossings.map(({ between, layer, u }) => ({ between, layer, u: r(u) })),
    borderTurns: f.path.borderTurns.map(({ digit, border, u }) => ({ digit, border, u: r(u) })),
    sections: Object.fromEntries(f.path.hand.sections.map((s) => [s.digit, { depth: r(2 * s.halfDepth) }])),
    loops: f.loops.map((loop) => ({ ...loop, innerCircumference: r(loop.innerCircumference) })),
    relief: f.reliefs.filter((x) => x.depth > 0.0005).map((x) => ({ digit: x.digit, depth: r(x.depth) })),
    outline: f.options.outline,
    edges: f.edges.map((e) => ({ ...e, u: r(e.u), proximal: r(e.proximal), distal: r(e.distal) })),
    straightWidth: r(f.straightWidth),
    pull: f.pull && { ...f.pull, difference: r(f.pull.difference), shear: r(f.pull.shear) },
    taper: Object.fromEntries(tapering(f).map((s) => [s.digit, rounded(degrees(s.taper), 2)])),
    curve: rounded(degrees(f.flat.frame?.turn ?? 0), 1),
    paperTrial: f.asked.paperReading === 'none' ? null : { reading: f.asked.paperReading, skinClearance: r(f.options.skinClearance) },
    freePipFlexion: Object.fromEntries(Object.entries(f.freePip).map(([digit, angle]) => [digit, rounded(angle, 1)])),
    standOff: f.path.standOff.map((s) => ({ digit: s.digit, distance: r(s.distance) })),
    lengthBand95: [r(f.flat.flatLength - f.band.below), r(f.flat.flatLength + f.band.above)],
    estimated: f.estimated,
    warnings: f.warnings,
  };
}

/** The fingers of a strip that do not keep their size from root to tip. */
export function tapering({ path }: Pick<StripFigures, 'path'>): StripFigures['path']['hand']['sections'] {
  return path.hand.sections.filter((s) => s.taper !== 0);
}
