import { type Block, blockProblems, type Place } from '../block/block.ts';
import { blockById, blocks } from '../block/library.ts';
import { DIGITS, type DigitName } from '../hand/digits.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { readStripOptions } from '../pattern/strip/read-options.ts';
import { makeStrip, type Strip } from '../pattern/strip/strip.ts';
import { DEFAULT_STRIP_OPTIONS, type StripOptions } from '../pattern/strip/strip-options.ts';
import type { Problem, Result, Warning } from '../units/result.ts';
import { type BlockCard, blockCards, type Suggested, suggestedBlocks } from './block-cards.ts';
import { handFileOf } from './hand-file.ts';
import type { Entries, Settings } from './state.ts';

/** A strip that could be drawn, with what it was drawn from. */
export interface DrawnStrip extends Strip {
  readonly hand: Hand;
  readonly block: Block;
  readonly options: StripOptions;
  readonly date: string | null;
  readonly warnings: readonly Warning[];
}

/** Everything that follows from the entries. */
export interface Derived {
  readonly hand: Result<Hand>;
  readonly options: StripOptions | null;
  readonly suggested: Suggested;
  readonly cards: readonly BlockCard[];
  /** The block that the entries name, kept to the rules or not; null when nothing is suggested. */
  readonly block: Block | null;
  readonly blockProblems: readonly Problem[];
  readonly drawn: DrawnStrip | null;
  /** All problems, in the order of the fields. */
  readonly problems: readonly Problem[];
}

const DATE = /^\d{4}-\d\d-\d\d$/;

export function derive(entries: Entries, settings: Pick<Settings, 'unit'>): Derived {
  const hand = readHand(handFileOf(entries, settings.unit));
  const options = readStripOptions([{ origin: '', values: entries.options }]);
  const suggested: Suggested = hand.ok ? suggestedBlocks(hand.value) : { blocks: [], problems: [] };
  const cards = blockCards(hand.ok ? hand.value : null, suggested, options.ok ? options.value : DEFAULT_STRIP_OPTIONS);
  const block = namedBlock(entries, suggested);
  const rules = block ? blockProblems(block) : suggested.problems;
  const dates = dateProblems(entries.date);
  const before = [...(hand.ok ? [] : hand.problems), ...rules, ...(options.ok ? [] : options.problems), ...dates];
  if (!hand.ok || !options.ok || !block || before.length > 0) {
    return { hand, options: options.ok ? options.value : null, suggested, cards, block, blockProblems: rules, drawn: null, problems: before };
  }
  const date = entries.date === '' ? null : entries.date;
  const made = makeStrip(hand.value, block, options.value, date);
  const drawn = made.ok
    ? { ...made.value, hand: hand.value, block, options: options.value, date, warnings: [...hand.warnings, ...made.warnings] }
    : null;
  return {
    hand,
    options: options.value,
    suggested,
    cards,
    block,
    blockProblems: rules,
    drawn,
    problems: made.ok ? [] : made.problems,
  };
}

function namedBlock(entries: Entries, suggested: Suggested): Block | null {
  if (entries.block === 'auto') return suggested.blocks[0] ?? null;
  return entries.block === 'own' ? ownBlock(entries.places) : (blockById(entries.block) ?? null);
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
