import { type Block, blockProblems, placedDigits } from '../block/block.ts';
import { chooseBlock } from '../block/choose-block.ts';
import { blockById, blocks } from '../block/library.ts';
import type { Plan } from '../block/plan.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import { DIGIT_FIELDS, type DigitFieldId, type Field, PALM_FIELDS, type PalmFieldId } from '../hand/fields.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { planHand } from '../pattern/plan-hand.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { makeStrip, type Strip } from '../pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import { isDay } from '../units/day.ts';
import type { Problem, Result, Warning } from '../units/result.ts';
import { handEnglish, placesTitle } from '../words/hand-words.ts';
import { type BlockCard, blockCards } from './block-cards.ts';
import { type DrawnPlate, drawPlate, wantsPlate } from './derive-plate.ts';
import { handFileOf, isMeasured, isMotionGiven, unmeasuredEnd, withAverages } from './hand-file.ts';
import { optionValues } from './rewrite-entries.ts';
import type { Entries, Settings } from './state.ts';
import { motionProblems } from './typed-motion.ts';

/** A strip that could be drawn, with what it was drawn from. */
export interface DrawnStrip extends Strip {
  readonly kind: 'strip';
  readonly hand: Hand;
  readonly block: Block;
  readonly options: StripOptions;
  readonly date: string | null;
  readonly warnings: readonly Warning[];
}

export type Drawn = DrawnStrip | DrawnPlate;

/** Everything that follows from the entries. */
export interface Derived {
  /** The hand as it was measured. */
  readonly hand: Result<Hand>;
  /** The hand with the average where nothing was measured; null where something that was typed cannot be used. */
  readonly pictured: Hand | null;
  readonly options: StripOptions | null;
  /** Null until a treated finger is chosen and its motion given, and while a stop sign stands. */
  readonly plan: Plan | null;
  readonly cards: readonly BlockCard[];
  /** The block that the entries name, kept to the rules or not; null when nothing is suggested. */
  readonly block: Block | null;
  /** Why there is no block, or why the one named cannot be made. */
  readonly blockProblems: readonly Problem[];
  readonly drawn: Drawn | null;
  /** What is drawn stands partly on an average hand: to be looked at, never to be printed. */
  readonly average: boolean;
  /** Paths of the fields without which nothing can be printed, in the order of measuring. */
  readonly missing: readonly string[];
  /** Fingers that the arrangement takes in, so that their fields are asked for; all while there is none. */
  readonly asked: readonly DigitName[];
  /** What was typed or chosen and cannot be used, in the order of the fields. What is only missing is not among them. */
  readonly problems: readonly Problem[];
  /** What the order of the suggestions hangs on most; while it is the same, an earlier plan may stand for a moment. */
  readonly planKey: string;
  /** The plan and its cards are those of these very entries. */
  readonly settled: boolean;
}

/** Key of what stands before anything was worked out: nothing is suggested yet and no card is drawn, whatever the entries. */
const NO_PLAN = '';
export const NOTHING_YET = { planKey: NO_PLAN, plan: null, cards: [] } as const;

/** What is not there yet is asked for in its place, not refused. */
const ONLY_MISSING = ['FIELD_MISSING', 'TOO_FEW_DIGITS', 'TARGET_NOT_MEASURED', 'NO_TARGET'];

/**
 * @param before what followed from the entries just before: its plan, which takes the time of several strips, then stands in where only
 * a measurement changed, and `settled` is false
 */
export function derive(
  entries: Entries,
  settings: Pick<Settings, 'unit'> & Partial<Pick<Settings, 'language'>>,
  before: Pick<Derived, 'planKey' | 'plan' | 'cards'> | null = null,
): Derived {
  const file = handFileOf(entries, settings.unit);
  const hand = readHand(file);
  const full = readHand(withAverages(file, entries, settings.unit));
  const pictured = full.ok ? full.value : null;
  const options = readStripOptions([{ origin: '', values: optionValues(entries, settings.unit) }]);
  const chosen = options.ok ? options.value : DEFAULT_STRIP_OPTIONS;
  const isStopped = entries.stop === 'some';
  // While a measure cannot be used, the plan of the hand as it was before stays.
  const isMotionKnown = isMotionGiven(entries) && unmeasuredEnd(entries) === null;
  const isHeld = pictured === null && before !== null && !isStopped && entries.target !== '' && isMotionKnown;
  const planKey = isHeld
    ? before.planKey
    : JSON.stringify([pictured?.target, pictured?.flags, entries.clinicianConfirms, isStopped, isMotionKnown]);
  const isSame = before !== null && (before.planKey === planKey || before.planKey === NO_PLAN);
  const planned =
    pictured?.target && !isSame && !isStopped && isMotionKnown
      ? planHand(pictured, chosen, { clinicianConfirms: entries.clinicianConfirms })
      : null;
  const plan = isSame ? before.plan : planned?.ok ? planned.value : null;
  const cards = isSame ? before.cards : blockCards(pictured, plan, chosen);
  const isPlate = !isStopped && wantsPlate(entries, plan);
  const block = isPlate || isStopped ? null : namedBlock(entries, plan);
  const rules = isPlate || isStopped ? [] : block ? blockProblems(block) : missingBlock(plan);
  const asked = askedDigits(entries, block, isPlate);
  const missing = missingFields(entries, asked, isPlate);
  const isWhole = missing.length === 0 && hand.ok && asked.every((digit) => hand.value.digits[digit] !== undefined);
  const problems = unlike([
    ...(hand.ok ? [] : hand.problems.filter((p) => !ONLY_MISSING.includes(p.code) && !isAskedOfChild(p, missing))),
    ...(full.ok ? [] : full.problems.filter((p) => !ONLY_MISSING.includes(p.code))),
    ...motionProblems(entries),
    ...rules,
    ...(options.ok ? [] : options.problems),
    ...dateProblems(entries.date),
  ]);
  const common = {
    hand,
    pictured,
    options: options.ok ? options.value : null,
    plan,
    cards,
    block,
    blockProblems: rules,
    asked,
    missing,
    planKey,
    settled: !isSame || isHeld,
  };
  const nothing = { ...common, drawn: null, average: false, problems };
  const from = isWhole && hand.ok ? hand.value : pictured;
  if (problems.length > 0 || from === null || isStopped) return nothing;
  const date = entries.date === '' ? null : entries.date;
  const average = !isWhole;
  const spoken = average ? [] : hand.ok ? hand.warnings : [];
  if (isPlate) {
    const plate = drawPlate(from, plan, entries, settings.unit, date, asked, settings.language);
    if (!plate.ok) return { ...nothing, problems: plate.problems };
    return { ...common, drawn: { ...plate.value, warnings: unlike([...spoken, ...plate.warnings]) }, average, problems: [] };
  }
  if (!options.ok || !block) return nothing;
  const made = makeStrip(from, block, options.value, date, undefined, settings.language);
  if (!made.ok) return { ...nothing, problems: made.problems };
  const warnings = unlike([...spoken, ...(plan?.warnings ?? []), ...made.warnings]);
  return {
    ...common,
    drawn: { kind: 'strip', ...made.value, hand: from, block, options: options.value, date, warnings },
    average,
    problems: [],
  };
}

/** The fingers whose fields are asked for: of a block its own, of a plate those it takes in. */
function askedDigits(entries: Entries, block: Block | null, isPlate: boolean): readonly DigitName[] {
  if (isPlate) {
    const at = entries.target === '' ? -1 : DIGITS.indexOf(entries.target);
    const beside = DIGITS.filter((_, k) => at < 0 || Math.abs(k - at) <= 1);
    // At a border there is one neighbour, and a plate needs three fingers.
    const three = beside.length >= 3 ? beside : at === 0 ? DIGITS.slice(0, 3) : DIGITS.slice(1);
    return entries.plate.digits === 'neighbours' ? three : DIGITS.filter((d) => three.includes(d) || isMeasured(entries, d));
  }
  return block ? placedDigits(block).map(({ digit }) => digit) : DIGITS;
}

/** What a pattern needs of a finger in the order of measuring: of an adult two measures, the others are estimated; of a child nothing is. */
const neededOf = (id: DigitFieldId) => (DIGIT_FIELDS[id] as Field).needed;
const NEEDED = (Object.keys(DIGIT_FIELDS) as DigitFieldId[]).filter((id) => neededOf(id) !== undefined);
const NEVER_ESTIMATED = NEEDED.filter((id) => neededOf(id) === 'always');

/** What a child lacks is asked for in its place as long as that is one of the fields that stand still open. */
function isAskedOfChild({ code, where }: Problem, missing: readonly string[]): boolean {
  return code === 'NO_CHILD_NORMS' && missing.includes(where);
}

/** Without these nothing can be printed: finger, side, motion or an arrangement, and the measures of every finger that is taken in. */
function missingFields(entries: Entries, asked: readonly DigitName[], isPlate: boolean): readonly string[] {
  const blank = (text: string) => text.trim() === '';
  const isAuto = entries.block === 'auto';
  const isChild = entries.sizeGroup === 'child';
  const end = unmeasuredEnd(entries);
  return [
    ...(isAuto && entries.target === '' ? ['target.digit'] : []),
    ...(entries.side === '' ? ['side'] : []),
    ...(isAuto && entries.target !== '' && !isMotionGiven(entries) ? ['motion.active.lacks'] : []),
    ...(isAuto && entries.target !== '' && end !== null ? [`motion.active.${end}`] : []),
    ...(isChild ? NEEDED : NEVER_ESTIMATED).flatMap((id) =>
      asked.filter((digit) => blank(entries.digits[digit][id])).map((digit) => `digits.${digit}.${id}`),
    ),
    ...(isChild && isPlate ? missingOfPalm(entries) : []),
  ];
}

/** What a plate needs besides the fingers; beside a free finger its edge stands by that finger's setback too. */
function missingOfPalm({ palm, digits }: Entries): readonly string[] {
  return [
    ...DIGITS.filter((digit) => digit !== 'long' && digits[digit].mpSetback.trim() === '').map((digit) => `digits.${digit}.mpSetback`),
    ...(Object.keys(PALM_FIELDS) as PalmFieldId[]).filter((id) => palm[id].trim() === ''),
  ];
}

function unlike<T extends Problem | Warning>(list: readonly T[]): readonly T[] {
  return list.filter((w, k) => list.findIndex((other) => other.code === w.code && other.message === w.message) === k);
}

function namedBlock(entries: Entries, plan: Plan | null): Block | null {
  if (entries.block === 'auto') return plan?.suggestions[0]?.block ?? null;
  return entries.block === 'own' ? ownBlock(entries.places) : (blockById(entries.block) ?? null);
}

/** Why the plan has no block of its own accord; a reading of the paper strip that rules out every one is said itself, at its field. */
function missingBlock(plan: Plan | null): readonly Problem[] {
  if (plan === null) return [];
  const readings = plan.notMakeable.map(({ reasons }) => reasons.find(({ code }) => code === 'PAPER_READING'));
  if (plan.suggestions.length === 0 && readings[0] && readings.every((reading) => reading !== undefined)) return [readings[0]];
  const chosen = chooseBlock(plan);
  return chosen.ok ? [] : chosen.problems;
}

/** The block of places chosen digit by digit; one of the library where it is the same, so that files get its name. */
export function ownBlock(places: Entries['places']): Block {
  const kept = Object.fromEntries(DIGITS.flatMap((digit) => (places[digit] === 'out' ? [] : [[digit, places[digit]]]))) as Block['places'];
  const known = blocks().find((block) => DIGITS.every((digit) => block.places[digit] === kept[digit]));
  return known ?? { id: 'own', title: placesTitle({ places: kept }, handEnglish) ?? 'Own block', places: kept };
}

/** A date that exists, as 2026-03-31; empty is none. */
function dateProblems(date: string): readonly Problem[] {
  return date === '' || isDay(date) ? [] : [{ code: 'DATE', where: 'date', message: 'date: write it as 2026-03-31.', kind: 'input' }];
}
