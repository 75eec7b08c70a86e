import { type Block, placedDigits } from '../../block/block.ts';
import type { DigitName } from '../../hand/digits.ts';
import { rounded } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import type { LengthBand } from './length-band.ts';
import type { Course } from './strip-courses.ts';
import type { Loop } from './strip-loops.ts';
import type { StripOptions } from './strip-options.ts';
import type { FlatStrip } from './strip-outline.ts';
import type { StripPath } from './strip-path.ts';
import type { Relief } from './strip-relief.ts';

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
  readonly relief: readonly Relief[];
  readonly freePipFlexion: Readonly<Partial<Record<DigitName, number>>>;
  readonly standOff: readonly { readonly digit: DigitName; readonly distance: number }[];
  /** 95 % band of the flat length, from the measuring errors. */
  readonly lengthBand95: readonly [number, number];
  /** Measurements that were estimated, not taken. */
  readonly estimated: readonly string[];
  readonly warnings: readonly Warning[];
}

/** Figures are given to a micrometre; more would only show rounding. */
const DECIMALS = 3;

export interface StripFigures {
  readonly block: Block;
  readonly options: StripOptions;
  readonly geometryVersion: string;
  readonly path: StripPath;
  readonly flat: FlatStrip;
  readonly reliefs: readonly Relief[];
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
    relief: f.reliefs.filter((x) => x.depth > 0).map((x) => ({ digit: x.digit, depth: r(x.depth) })),
    freePipFlexion: Object.fromEntries(Object.entries(f.freePip).map(([digit, angle]) => [digit, rounded(angle, 1)])),
    standOff: f.path.standOff.map((s) => ({ digit: s.digit, distance: r(s.distance) })),
    lengthBand95: [r(f.flat.flatLength - f.band.below), r(f.flat.flatLength + f.band.above)],
    estimated: f.estimated,
    warnings: f.warnings,
  };
}
