import { type Block, type Place, placedDigits, RELATIVE_FLEXION } from '../../block/block.ts';
import { DIGITS, type DigitName, WEBS, type WebName } from '../../hand/digits.ts';
import { webLevels } from '../../hand/estimate-palm.ts';
import { digitPath } from '../../hand/fields.ts';
import type { DigitMeasures, Hand } from '../../hand/hand.ts';
import { digitSection, digitTaper } from '../../hand/section.ts';
import { radians } from '../../units/angle.ts';
import type { LengthUnit } from '../../units/length.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { CREASE_TO_JOINT } from '../free-flexion.ts';
import { GEOMETRY_VERSION, type GeometryVersion } from './geometry-version.ts';
import type { StripSettings } from './strip-options.ts';

/** One digit's section where it stands in the plane square to the digits' mean direction. mm; x radial to ulnar, y dorsal. */
export interface StandingSection {
  readonly digit: DigitName;
  readonly place: Place;
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  /** Of the digit's own section. */
  readonly halfDepth: number;
  /** As the plane cuts it: half depth / cos(theta). */
  readonly standingHalfDepth: number;
  /** MP flexion relative to the mean of the block's digits, radians; negative is extension. */
  readonly theta: number;
  /** From the MP axis to the middle of the strip, along the digit. */
  readonly lever: number;
  readonly palmarRoom: number;
  /** Half the angle of the digit's cone, radians: positive where it narrows toward its tip, 0 where its root was not measured (model rule 18). */
  readonly taper: number;
  /** Where the digit's root lies along the digits, distal positive, 0 at the foremost web: the mean of its two webs' levels (model rule 11). */
  readonly rootLevel: number;
  /** The same on the half that looks out of the block: not behind the web there. */
  readonly borderLevel: number;
}

/** The space between two neighbours. */
export interface Web {
  readonly between: readonly [DigitName, DigitName];
  /** Along the digits, distal positive, 0 at the foremost web of the hand. */
  readonly level: number;
  /** Middle of the gap. */
  readonly x: number;
  readonly gap: number;
  /** Layers that cross from dorsal to palmar here. */
  readonly crossing: number;
}

export interface StandingHand {
  readonly version: GeometryVersion;
  readonly sections: readonly StandingSection[];
  readonly webs: readonly Web[];
}

/**
 * Stands the block's digits side by side at their MP angles (model rules 3 and 4).
 * What a section's measurements say of each other was judged when the hand was read, so its warnings are not repeated here.
 * Fails when the block uses a digit that was not measured, or whose width and circumference belong to no ellipse.
 */
export function standSections(
  hand: Hand,
  block: Block,
  options: StripSettings,
  version: GeometryVersion = GEOMETRY_VERSION,
): Result<StandingHand> {
  const placed = placedDigits(block);
  const flexion = placed.map(({ place }) => RELATIVE_FLEXION[place] * radians(options.differential));
  const mean = flexion.reduce((sum, angle) => sum + angle, 0) / placed.length;
  const levels: Readonly<Record<WebName, number>> =
    version === '1' ? { 'index-long': 0, 'long-ring': 0, 'ring-little': 0 } : webLevels(hand).level;
  const problems: Problem[] = [];
  const sections: StandingSection[] = [];
  const webs: Web[] = [];
  for (const [k, { digit, place }] of placed.entries()) {
    const measures = hand.digits[digit];
    if (!measures) {
      problems.push(notMeasured(block, digit));
      continue;
    }
    const stands = digitStands(measures, digit, (flexion[k] ?? 0) - mean, options, version, hand.units);
    if (!stands.ok) {
      problems.push(...stands.problems);
      continue;
    }
    const { halfWidth } = stands.value;
    const before = sections.at(-1);
    let x = 0;
    if (before) {
      const web = webBetween(before, digit, place, options);
      x = before.x + before.halfWidth + web.gap + halfWidth;
      webs.push({ ...web, level: levels[WEBS[DIGITS.indexOf(before.digit)] as WebName], x: before.x + before.halfWidth + web.gap / 2 });
    }
    sections.push({
      digit,
      place,
      x,
      ...stands.value,
      ...digitLevels(digit, k === 0 ? -1 : k === placed.length - 1 ? 1 : 0, levels),
    });
  }
  return problems.length > 0 ? failure(...problems) : success({ version, sections, webs });
}

/** What of a standing section follows from the digit's own measures and its MP angle. */
type DigitStands = Omit<StandingSection, 'digit' | 'place' | 'x' | 'rootLevel' | 'borderLevel'>;

function digitStands(
  measures: DigitMeasures,
  digit: DigitName,
  theta: number,
  options: StripSettings,
  version: GeometryVersion,
  units: LengthUnit,
): Result<DigitStands> {
  const section = digitSection(measures.width, measures.circumference, `digits.${digit}`, units);
  if (!section.ok) return section;
  // The first version took fingers for cylinders.
  const taper = version === '1' ? success(0) : digitTaper(measures, digitPath(digit, 'rootCircumference'), units);
  if (!taper.ok) return taper;
  // The first version took the PIP crease for the joint, so that its strip sat 2.5 mm too far distal on its lever.
  const creaseToJoint = version === '1' ? 0 : CREASE_TO_JOINT;
  const lever = measures.dorsalLength - creaseToJoint - measures.palmarRoom + options.proximalGap + options.width / 2;
  const { halfWidth, halfDepth } = section.value;
  return success({
    y: -lever * Math.tan(theta),
    halfWidth,
    halfDepth,
    standingHalfDepth: halfDepth / Math.cos(theta),
    theta,
    lever,
    palmarRoom: measures.palmarRoom,
    taper: taper.value,
  });
}

/** The sections with one digit measured otherwise: it stands anew, those beside it as far from it as before. Fails as `standSections` does. */
export function restand(
  { sections, version }: StandingHand,
  digit: DigitName,
  measures: DigitMeasures,
  options: StripSettings,
  units: LengthUnit,
): Result<readonly StandingSection[]> {
  const k = sections.findIndex((s) => s.digit === digit);
  const before = sections[k] as StandingSection;
  const stands = digitStands(measures, digit, before.theta, options, version, units);
  if (!stands.ok) return stands;
  const wider = stands.value.halfWidth - before.halfWidth;
  const shift = (j: number) => (j === k ? (k === 0 ? 0 : wider) : j < k ? 0 : k === 0 ? wider : 2 * wider);
  return success(sections.map((s, j) => ({ ...s, ...(j === k ? stands.value : {}), x: s.x + shift(j) })));
}

/** @param border -1 where the digit is the radial border of the block, 1 where it is the ulnar one, 0 within */
function digitLevels(
  digit: DigitName,
  border: -1 | 0 | 1,
  levels: Readonly<Record<WebName, number>>,
): Pick<StandingSection, 'rootLevel' | 'borderLevel'> {
  const k = DIGITS.indexOf(digit);
  const radial = k > 0 ? levels[WEBS[k - 1] as WebName] : undefined;
  const ulnar = k < WEBS.length ? levels[WEBS[k] as WebName] : undefined;
  const own = [radial, ulnar].filter((level) => level !== undefined);
  const rootLevel = own.reduce((sum, level) => sum + level, 0) / own.length;
  const outside = border < 0 ? radial : border > 0 ? ulnar : undefined;
  return { rootLevel, borderLevel: Math.max(rootLevel, outside ?? rootLevel) };
}

function webBetween(radial: StandingSection, digit: DigitName, place: Place, options: StripSettings): Omit<Web, 'x' | 'level'> {
  const crossing = (radial.place === 'enclosed') === (place === 'enclosed') ? 0 : 1;
  const needed = 2 * options.skinClearance + crossing * options.thickness + options.crossingPlay;
  return { between: [radial.digit, digit], gap: crossing > 0 ? Math.max(options.webGap, needed) : options.webGap, crossing };
}

function notMeasured(block: Block, digit: DigitName): Problem {
  return {
    code: 'DIGIT_NOT_MEASURED',
    where: `digits.${digit}`,
    message: `digits.${digit}: block "${block.id}" takes in the ${digit} finger, but the hand file has no measurements of it. Measure it, or choose a block without it.`,
    kind: 'input',
  };
}
