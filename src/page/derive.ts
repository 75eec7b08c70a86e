import { type Block, blockProblems, type Place } from '../block/block.ts';
import { chooseBlock } from '../block/choose-block.ts';
import { blockById, blocks } from '../block/library.ts';
import type { Plan } from '../block/plan.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { planHand } from '../pattern/plan-hand.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { makeStrip, type Strip } from '../pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import type { Problem, Result, Warning } from '../units/result.ts';
import { type BlockCard, blockCards } from './block-cards.ts';
import { type DrawnPlate, drawPlate, wantsPlate } from './derive-plate.ts';
import { handFileOf } from './hand-file.ts';
import type { Entries, Settings } from './state.ts';

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
  readonly hand: Result<Hand>;
  readonly options: StripOptions | null;
  /** Null until the hand is measured and a treated finger chosen. */
  readonly plan: Plan | null;
  readonly cards: readonly BlockCard[];
  /** The block that the entries name, kept to the rules or not; null when nothing is suggested. */
  readonly block: Block | null;
  /** Why there is no block, or why the one named cannot be made. */
  readonly blockProblems: readonly Problem[];
  readonly drawn: Drawn | null;
  /** All problems, in the order of the fields. */
  readonly problems: readonly Problem[];
  /** What the order of the suggestions hangs on most; while it is the same, an earlier plan may stand for a moment. */
  readonly planKey: string;
  /** The plan and its cards are those of these very entries. */
  readonly settled: boolean;
}

/** Key of what stands before anything was worked out: nothing is suggested yet and no card is drawn, whatever the entries. */
const NO_PLAN = '';
export const NOTHING_YET = { planKey: NO_PLAN, plan: null, cards: [] } as const;

const DATE = /^\d{4}-\d\d-\d\d$/;

/**
 * @param before what followed from the entries just before: its plan, which takes the time of several strips, then stands in where only
 * a measurement changed, and `settled` is false
 */
export function derive(
  entries: Entries,
  settings: Pick<Settings, 'unit'>,
  before: Pick<Derived, 'planKey' | 'plan' | 'cards'> | null = null,
): Derived {
  const hand = readHand(handFileOf(entries, settings.unit));
  const options = readStripOptions([{ origin: '', values: entries.options }]);
  const given = hand.ok ? hand.value : null;
  const planKey = JSON.stringify([
    given?.target?.digit,
    needs(given),
    given?.flags,
    Object.keys(given?.digits ?? {}),
    entries.clinicianConfirms,
  ]);
  const chosen = options.ok ? options.value : DEFAULT_STRIP_OPTIONS;
  const isSame = before !== null && (before.planKey === planKey || before.planKey === NO_PLAN);
  const planned = given && !isSame ? planHand(given, chosen, { clinicianConfirms: entries.clinicianConfirms }) : null;
  const plan = isSame ? before.plan : planned?.ok ? planned.value : null;
  const cards = isSame ? before.cards : blockCards(given, plan, chosen);
  const isPlate = wantsPlate(entries, plan);
  const block = isPlate ? null : namedBlock(entries, plan);
  const rules = isPlate ? [] : block ? blockProblems(block) : given ? missingBlock(given, plan) : [];
  const problems = [...(hand.ok ? [] : hand.problems), ...rules, ...(options.ok ? [] : options.problems), ...dateProblems(entries.date)];
  const common = { hand, options: options.ok ? options.value : null, plan, cards, block, blockProblems: rules, planKey, settled: !isSame };
  const date = entries.date === '' ? null : entries.date;
  if (isPlate && hand.ok && problems.length === 0) {
    const plate = drawPlate(hand.value, plan, entries, date);
    if (!plate.ok) return { ...common, drawn: null, problems: plate.problems };
    const warnings = different([...hand.warnings, ...plate.warnings]);
    return { ...common, drawn: { ...plate.value, warnings }, problems: [] };
  }
  if (!hand.ok || !options.ok || !block || problems.length > 0) return { ...common, drawn: null, problems };
  const made = makeStrip(hand.value, block, options.value, date);
  if (!made.ok) return { ...common, drawn: null, problems: made.problems };
  const warnings = different([...hand.warnings, ...(plan?.warnings ?? []), ...made.warnings]);
  return {
    ...common,
    drawn: { kind: 'strip', ...made.value, hand: hand.value, block, options: options.value, date, warnings },
    problems: [],
  };
}

/** What turns the plan over. */
function needs(hand: Hand | null): readonly number[] {
  const target = hand?.target;
  return target ? [target.pipExtensionDeficit, target.pipFlexionDeficit] : [];
}

function different(warnings: readonly Warning[]): readonly Warning[] {
  return warnings.filter((w, k) => warnings.findIndex((other) => other.code === w.code && other.message === w.message) === k);
}

function namedBlock(entries: Entries, plan: Plan | null): Block | null {
  if (entries.block === 'auto') return plan?.suggestions[0]?.block ?? null;
  return entries.block === 'own' ? ownBlock(entries.places) : (blockById(entries.block) ?? null);
}

/** Why the hand has no block of its own accord. */
function missingBlock(hand: Hand, plan: Plan | null): readonly Problem[] {
  if (plan === null) {
    const none = planHand(hand, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false });
    return none.ok ? [] : none.problems;
  }
  const chosen = chooseBlock(plan);
  return chosen.ok ? [] : chosen.problems;
}

/** The block of places chosen digit by digit; one of the library where it is the same, so that files get its name. */
export function ownBlock(places: Entries['places']): Block {
  const kept = Object.fromEntries(DIGITS.flatMap((digit) => (places[digit] === 'out' ? [] : [[digit, places[digit]]]))) as Partial<
    Record<DigitName, Place>
  >;
  const known = blocks().find((block) => DIGITS.every((digit) => block.places[digit] === kept[digit]));
  return known ?? { id: 'own', title: 'Own block', places: kept };
}

/** A date that exists, as 2026-03-31; empty is none. */
function dateProblems(date: string): readonly Problem[] {
  if (date === '') return [];
  const time = DATE.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  const real = Number.isFinite(time) && new Date(time).toISOString().startsWith(date);
  return real ? [] : [{ code: 'DATE', where: 'date', message: 'date: write it as 2026-03-31.', kind: 'input' }];
}
