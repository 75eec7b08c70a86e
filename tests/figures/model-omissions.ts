import { blockById } from '../../src/block/library.ts';
import { DIGITS, type DigitName } from '../../src/hand/digits.ts';
import type { DigitMeasures, Hand } from '../../src/hand/hand.ts';
import { stripFigures } from '../../src/pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../../src/pattern/strip/strip-options.ts';
import { type StripPath, stripPath } from '../../src/pattern/strip/strip-path.ts';
import { type StandingHand, type StandingSection, standSections } from '../../src/pattern/strip/strip-sections.ts';
import { usualSettings } from '../../src/pattern/strip/strip-settings.ts';
import { plain } from '../../src/units/number.ts';
import { handOf, WORKED } from '../hands.ts';

/** What the model leaves out: by how much it would change the length of the strip's path on the demo hand. mm */
export interface ModelOmission {
  readonly what: string;
  /** The assumed size, and where it is from. */
  readonly assumption: string;
  readonly how: string;
  /** For each of `NEGLECT_BLOCKS`; positive: the strip would have to be longer. */
  readonly change: readonly number[];
}

export const OMISSION_BLOCKS = ['ring-lowered-in-three', 'ring-raised-in-four'] as const;

const hand = handOf(WORKED);
const NO_SOURCE = 'no source';
/** Digits do not stand parallel but at the differential, so the band is no cylinder; a share of the path. */
const EDGE_SHORT = 0.017;

/** Each thing that is left out, with a small and a large size of it. */
export function modelOmissions(): readonly ModelOmission[] {
  return [
    ...[3, 6].map((sagitta) => ({
      what: 'transverse arch',
      assumption: `the row of fingers is ${sagitta} mm higher in the middle than at its ends (${NO_SOURCE})`,
      how: 'sections raised on a parabola over the row, path laid anew; an upper bound, since a row that is arched is also a little narrower',
      change: changes((id) => lengthOf(id, {}, (standing) => arched(standing, sagitta))),
    })),
    ...[1, 2].map((mm) => ({
      what: 'taper of fingers whose roots were not measured',
      assumption: `each finger is ${mm} mm rounder at the proximal edge than at the middle of the strip (${NO_SOURCE})`,
      how: 'path laid anew with these circumferences; the distal edge then differs by about as much the other way; a measured root takes it away (docs/model.md rule 18)',
      change: changes((id) => lengthOf(id, {}, undefined, thicker(hand, mm))),
    })),
    {
      what: 'tilt of oblique webs',
      assumption: `the proximal edge of the staggered strip is ${plain(100 * EDGE_SHORT, 1)} % short of the tilted surface, the most that two programs found at 20 degrees`,
      how: 'that share of the path; the edges of the webs themselves are modelled (docs/model.md rule 11)',
      change: OMISSION_BLOCKS.map((id) => EDGE_SHORT * lengthOf(id)),
    },
    ...[0.5, 1].map((mm) => ({
      what: 'compression of the skin',
      assumption: `the skin gives way by ${mm} mm under the strip, all round (${NO_SOURCE})`,
      how: `path laid anew with the skin clearance of ${DEFAULT_STRIP_OPTIONS.skinClearance} mm less ${mm} mm`,
      change: changes((id) => lengthOf(id, { skinClearance: DEFAULT_STRIP_OPTIONS.skinClearance - mm })),
    })),
    ...[0.05, 0.15].map((stretch) => ({
      what: 'thinning of the sheet',
      assumption: `the warm sheet is drawn ${100 * stretch} % longer and only its thickness gives, at constant volume (${NO_SOURCE})`,
      how: 'path laid anew with the thinner sheet; the length that stretching itself gives is the option stretch',
      change: changes((id) => lengthOf(id, { thickness: DEFAULT_STRIP_OPTIONS.thickness / (1 + stretch) })),
    })),
  ];
}

/** The 95 % band of the same strips from the errors of measuring, mm longer and shorter; and the trim that is there for all of it. */
export function measuringBand(): { readonly longer: readonly number[]; readonly shorter: readonly number[]; readonly trim: number } {
  const bands = OMISSION_BLOCKS.map((id) => {
    const found = stripFigures(hand, blockOf(id), DEFAULT_STRIP_OPTIONS);
    if (!found.ok) throw new Error(found.problems.map((p) => p.message).join('\n'));
    return found.value.band;
  });
  return { longer: bands.map((b) => b.above), shorter: bands.map((b) => b.below), trim: DEFAULT_STRIP_OPTIONS.trim };
}

function changes(length: (id: (typeof OMISSION_BLOCKS)[number]) => number): readonly number[] {
  return OMISSION_BLOCKS.map((id) => length(id) - lengthOf(id));
}

function blockOf(id: string) {
  const block = blockById(id);
  if (!block) throw new Error(`no block ${id}`);
  return block;
}

function laid(
  id: string,
  changed: Partial<StripOptions> = {},
  stand: (standing: StandingHand) => StandingHand = (standing) => standing,
  of: Hand = hand,
): StripPath {
  const options = usualSettings({ ...DEFAULT_STRIP_OPTIONS, ...changed });
  const standing = standSections(of, blockOf(id), options);
  const path = standing.ok ? stripPath(stand(standing.value), options) : standing;
  if (!path.ok) throw new Error(path.problems.map((p) => p.message).join('\n'));
  return path.value;
}

function lengthOf(...given: Parameters<typeof laid>): number {
  return laid(...given).pathLength;
}

/** The path of a block round fingers whose row is arched; and by how much each section is then lifted for each mm of the arch. */
export function archedPath(id: string, sagitta: number): { readonly path: StripPath; readonly lift: (x: number) => number } {
  const path = laid(id, {}, (standing) => arched(standing, sagitta));
  return { path, lift: liftOf(path.hand) };
}

function liftOf({ sections }: StandingHand): (x: number) => number {
  const xs = sections.map((s) => s.x);
  const [first = 0, last = 0] = [xs[0], xs.at(-1)];
  return (x) => 1 - ((2 * x - first - last) / (last - first)) ** 2;
}

function arched(standing: StandingHand, sagitta: number): StandingHand {
  const lift = liftOf(standing);
  return { ...standing, sections: standing.sections.map((s): StandingSection => ({ ...s, y: s.y + sagitta * lift(s.x) })) };
}

function thicker(of: Hand, mm: number): Hand {
  const digits: Partial<Record<DigitName, DigitMeasures>> = {};
  for (const digit of DIGITS) {
    const measures = of.digits[digit];
    if (measures) digits[digit] = { ...measures, width: measures.width + mm / Math.PI, circumference: measures.circumference + mm };
  }
  return { ...of, digits };
}
