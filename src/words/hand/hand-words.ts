import { type Block, heldDigits, heldPlace, placedDigits } from '../../block/block.ts';
import { blockById } from '../../block/library.ts';
import type { Language, Translations } from '../language.ts';
import { handEnglish } from './english.ts';
import { handGerman } from './german.ts';
import { handSpanish } from './spanish.ts';

export type HandWords = Translations<typeof handEnglish>;

const WORDS: Readonly<Record<Language, HandWords>> = { en: handEnglish, de: handGerman, es: handSpanish };

export function handWords(language: Language): HandWords {
  return WORDS[language];
}

/** `long`, `long and ring`, `index, long and ring`. */
export function listed(names: readonly string[], and: string): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${and} ${names.at(-1)}`;
}

/** A block's name; one of the clinic's own keeps the title that it was given. */
export function blockTitle(block: Block, language: Language): string {
  const w = WORDS[language];
  if (language === 'en' || blockById(block.id)?.title !== block.title) return block.title;
  const held = heldDigits(block);
  const placed = placedDigits(block);
  const names = held.map((digit, k) => (k === 0 ? w.first[digit] : w.finger[digit]));
  const place = held.length > 1 ? w.placeOfTwo[heldPlace(block)] : w.place[heldPlace(block)];
  const range = placed.map(({ digit }) => w.short[digit]).join(', ');
  return w.block.title(listed(names, w.and), place, placed.length === 4 ? w.block.four : w.block.three, range);
}

/** What was estimated, from where it stands in a hand file: "ring: palmar room", never a path. */
export function measureName(where: string, w: HandWords): string {
  const [first = '', second = '', third = ''] = where.split('.');
  const named = (id: string) => (w.measure as Readonly<Record<string, string>>)[id] ?? id;
  const short = (digit: string) => (w.short as Readonly<Record<string, string>>)[digit] ?? digit;
  if (first === 'digits') return `${short(second)}: ${named(third)}`;
  if (first === 'webSetback') return `${second.split('-').map(short).join('-')}: ${named(first)}`;
  return named(first === 'palm' ? second : first);
}
