import { type Block, heldDigits, heldPlace, placedDigits } from '../block/block.ts';
import type { Plan } from '../block/plan.ts';
import { visible } from '../units/quote.ts';
import { capital, listed } from '../words/hand-words.ts';
import type { Derived, Drawn } from './derive.ts';
import type { Format } from './format.ts';
import type { Entries } from './state.ts';
import type { Texts } from './texts/english.ts';

/** The arrangement in a sentence: "Strip: ring lower than long and little". */
export function arrangementTitle(block: Pick<Block, 'places'>, texts: Texts): string {
  const held = heldDigits(block).map((digit) => texts.hand.short[digit]);
  const others = placedDigits(block).flatMap(({ digit, place }) => (place === 'enclosed' ? [texts.hand.short[digit]] : []));
  if (held.length === 0 || others.length === 0) return texts.suggestions.own;
  const { lower, higher } = texts.suggestions;
  const names = listed(held, texts.hand.and);
  return texts.suggestions.strip(heldPlace(block) === 'lowered' ? lower(names) : higher(names), listed(others, texts.hand.and));
}

/** Its second line: "ring 20° more bent; three fingers". */
export function arrangementDetail(block: Pick<Block, 'places'>, differential: number, texts: Texts, format: Format): string {
  const { moreBent, straighter, second, three, four } = texts.suggestions;
  const held = listed(
    heldDigits(block).map((digit) => texts.hand.short[digit]),
    texts.hand.and,
  );
  const degrees = `${format.number(differential, 0)}°`;
  const way = heldPlace(block) === 'lowered' ? moreBent(degrees) : straighter(degrees);
  return second(held, way, placedDigits(block).length === 4 ? four : three);
}

/** The angle of the plate that is chosen or planned, as text; null where neither names one. */
export function plateAngleText(entries: Entries, plan: Plan | null, format: Format): string | null {
  if (entries.plate.angle.trim() !== '') return `${visible(entries.plate.angle.trim())}°`;
  return plan?.plate ? `${format.number(plan.plate.degrees, 0)}°` : null;
}

/** What stands in for measures that nobody took: the widths alone, from what is round the fingers, or an average hand. Neither is printed. */
export function standInWords({ missing }: Pick<Derived, 'missing'>, { make }: Texts): string {
  const isWidth = missing.length > 0 && missing.every((where) => /^digits\.\w+\.width$/.test(where));
  return isWidth ? make.widthsEstimated : make.onAverage;
}

/** What is made in one sentence: "Ring finger: MP held 20° more bent than its neighbours; long, ring, little". */
export function resultSentence(drawn: Drawn, texts: Texts, format: Format): string {
  const { target } = drawn.hand;
  const words = texts.make;
  if (drawn.kind === 'plate') {
    const { faces, angle, digits } = drawn.design;
    const names = digits.map((digit) => texts.hand.short[digit]).join(', ');
    const who = target ? texts.hand.first[target.digit] : capital(texts.hand.handOf[drawn.hand.side]);
    return words.plate(who, `${format.number(angle, 0)}°`, texts.plate.face[faces], names);
  }
  const { block, options } = drawn;
  const place = target ? block.places[target.digit] : undefined;
  const held = heldPlace(block);
  // An enclosed finger is held the other way by comparison.
  const isBent = place === 'enclosed' ? held === 'raised' : held === 'lowered';
  const who =
    target && place !== undefined
      ? texts.hand.first[target.digit]
      : listed(
          heldDigits(block).map((d) => texts.hand.short[d]),
          texts.hand.and,
        );
  const names = placedDigits(block)
    .map(({ digit }) => texts.hand.short[digit])
    .join(', ');
  return words.sentence(who, words.byItself(`${format.number(options.differential, 0)}°`, isBent ? words.bent : words.straight), names);
}
