import { isRound } from '../hand/fields.ts';
import { NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import type { LengthUnit } from '../units/length.ts';
import { OPTION_WORDS } from '../words/record/option-words.ts';
import { retyped } from './format.ts';
import { fingerWords } from './sections/finger/finger-words.ts';
import { type Entries, emptyEntries, type Settings } from './state.ts';
import { withBeyondWord } from './typed-motion.ts';

type Writing = Pick<Settings, 'unit' | 'decimal'> & Partial<Pick<Settings, 'language'>>;

const LENGTH_OPTIONS: readonly string[] = NUMBER_OPTIONS.filter((o) => o.unit === 'mm').map((o) => o.key);
/** Options that there may be none of, or that may be left to the program: their field is empty then, or says so in the files' word or in any of the languages. */
const OPTION_WORD = new Map<string, 'none' | 'auto'>(
  NUMBER_OPTIONS.flatMap((o) => (o.word === undefined ? [] : [[o.key, o.word] as const])),
);
const WORDS_TYPED = {
  none: ['', ...Object.values(OPTION_WORDS).map(({ value }) => value.none)],
  auto: ['', 'auto', ...Object.values(OPTION_WORDS).map(({ automatic }) => automatic)],
};

/** The entries written anew for another unit or decimal sign, so that every length stays the length it was. */
export function rewritten(entries: Entries, from: Writing, to: Writing): Entries {
  const length = (text: string) => retyped(text, from, to);
  // Angles and shares have one unit; only their sign changes.
  const sign = (text: string) => retyped(text, { unit: 'mm' }, { unit: 'mm', decimal: to.decimal });
  const each = <T extends Readonly<Record<string, string>>>(values: T, write: (text: string, key: string) => string): T =>
    Object.fromEntries(Object.entries(values).map(([key, text]) => [key, write(text, key)])) as T;
  const round = (text: string, key: string) => (entries.roundIn !== 'length' && isRound(key) ? sign(text) : length(text));
  const beyond = to.language && fingerWords[to.language].beyond;
  const end = (text: string) => sign(beyond ? withBeyondWord(text, beyond) : text);
  const motion = Object.entries(entries.motion).map(([id, typed]) => [id, { lacks: end(typed.lacks), bends: sign(typed.bends) }]);
  return {
    ...entries,
    digits: {
      index: each(entries.digits.index, round),
      long: each(entries.digits.long, round),
      ring: each(entries.digits.ring, round),
      little: each(entries.digits.little, round),
    },
    palm: each(entries.palm, length),
    webs: each(entries.webs, length),
    motion: Object.fromEntries(motion) as unknown as Entries['motion'],
    options: each(entries.options, (text, key) => (LENGTH_OPTIONS.includes(key) ? length(text) : sign(text))),
    visit: {
      ...entries.visit,
      ...Object.fromEntries((['lacks', 'passiveLacks', 'mpLacks'] as const).map((id) => [id, end(entries.visit[id])])),
    },
    print: { ...entries.print, across: length(entries.print.across), along: length(entries.print.along) },
  };
}

/** The options as they are read: a bare length is in the page's unit. */
export function optionValues({ options }: Entries, unit: LengthUnit): Record<string, string> {
  const word = (key: string, text: string) => {
    const known = OPTION_WORD.get(key);
    return known !== undefined && WORDS_TYPED[known].includes(text.trim().toLowerCase()) ? known : null;
  };
  const own = (key: string, text: string) =>
    word(key, text) ??
    (unit !== 'mm' && LENGTH_OPTIONS.includes(key) && /^[\d.,/ ½¼¾-]+$/.test(text.trim()) ? `${text.trim()} ${unit}` : text);
  return Object.fromEntries(Object.entries(options).map(([key, text]) => [key, own(key, text)]));
}

/** Empty entries as they are written in a unit and with a sign. */
export function freshEntries({ unit, decimal }: Pick<Settings, 'unit' | 'decimal'>): Entries {
  return rewritten(emptyEntries('.'), { unit: 'mm', decimal: '.' }, { unit, decimal });
}
