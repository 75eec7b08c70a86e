import { DIGITS } from '../hand/digits.ts';
import { usualValue } from '../pattern/option-entries.ts';
import { PLATE_CHOICE_OPTIONS, PLATE_NUMBER_OPTIONS } from '../pattern/plate/plate-options.ts';
import { CHOICE_OPTIONS, NUMBER_OPTIONS, RETIRED_OPTIONS } from '../pattern/strip/strip-options.ts';
import { plain } from '../units/number.ts';
import type { Language } from '../words/language.ts';
import type { ChartWords } from '../words/record/chart-words.ts';
import { OPTION_WORDS, type OptionWords } from '../words/record/option-words.ts';
import type { RecordFigures } from '../words/record/record-figures.ts';
import { RECORD_WORDS, type RecordWords } from '../words/record/record-words.ts';
import type { Made, MadeStrip, Noted } from './case.ts';
import type { MadeFile } from './case-schema.ts';
import { neutralZero } from './motion-text.ts';

/** What was made, in words: "strip ring-raised-in-three, differential 20 degrees, 159.9 mm long". */
export function madeText(made: Made): string {
  const length = made.flatLength === null ? '' : `, ${plain(made.flatLength, 1)} mm long`;
  if (made.kind === 'plate') {
    const faces = made.faces === 'both' ? 'dorsal and palmar' : made.faces;
    return `${faces} plate, MP at ${plain(made.mpAngle)} degrees${length}`;
  }
  const differential = made.differential === null ? '' : `, differential ${plain(made.differential)} degrees`;
  return `strip ${made.block.id}${differential}${length}`;
}

/** A to Z, then AA, AB, ...: the name of the k-th thing made in a case, from 0. */
function madeLetter(k: number): string {
  const last = String.fromCharCode(65 + (k % 26));
  return k < 26 ? last : madeLetter(Math.floor(k / 26) - 1) + last;
}

/** Everything made in a case, in order, each with its letter and the index of its visit. */
export function madeInOrder(visits: readonly { readonly made: Made | null }[]): readonly { letter: string; visit: number; made: Made }[] {
  const found = visits.flatMap(({ made }, visit) => (made === null ? [] : [{ visit, made }]));
  return found.map((one, k) => ({ letter: madeLetter(k), ...one }));
}

/** Which digits of a strip are held apart from the others, above or below them. */
export function heldDigits({ block: { places } }: Pick<MadeStrip, 'block'>) {
  const placed = DIGITS.filter((one) => places[one] !== undefined);
  const held = placed.filter((one) => places[one] !== 'enclosed');
  return { held, higher: held.some((one) => places[one] === 'raised'), others: placed.filter((one) => places[one] === 'enclosed') };
}

/** What was made, for paper: "strip: ring lower than long and little, differential 20 degrees, 159.9 mm long". */
export function madeOnPaper(made: Made, words: ChartWords): string {
  const { flatLength: length } = made;
  if (made.kind === 'plate') return words.plate({ faces: made.faces, mpAngle: made.mpAngle, length });
  return words.strip({ ...heldDigits(made), differential: made.differential, length });
}

type NotedKey = keyof RecordWords['noted'];

/** What was noted at a visit in the words of a language, a row or a column each, harm first; '' where it was not noted. Comments stand for themselves. */
export function notedRows(
  words: RecordWords,
): readonly { readonly key: NotedKey; readonly heading: string; readonly value: (noted: Noted) => string }[] {
  const number = (value: number | null) => (value === null ? '' : words.number(value));
  const yesNo = (value: boolean | null) => (value === null ? '' : value ? words.yes : words.no);
  const values: { readonly [K in NotedKey]: (noted: Noted) => string } = {
    pain: ({ pain }) => number(pain),
    skin: ({ skin }) => (skin === null ? '' : words.skin[skin]),
    sensation: ({ sensation }) => (sensation === null ? '' : words.change[sensation]),
    colour: ({ colour }) => (colour === null ? '' : words.change[colour]),
    infection: ({ infection }) => yesNo(infection),
    deformity: ({ deformity }) => yesNo(deformity),
    crpsSigns: ({ crpsSigns }) => (crpsSigns === null ? '' : `${crpsSigns.length}`),
    wear: ({ wear }) => number(wear),
    wearAgreed: ({ wearAgreed }) => number(wearAgreed),
    fits: ({ fits }) => yesNo(fits),
    redirects: ({ redirects }) => yesNo(redirects),
    measuredDifferential: ({ measuredDifferential }) => number(measuredDifferential),
    freePip: ({ freePip }) => number(freePip),
    pencil: ({ pencil }) =>
      [pencil?.without, pencil?.with].flatMap((motion) => (motion ? [neutralZero(motion, words.number)] : [])).join(` ${words.and} `),
    closedAt: ({ closedAt }) => number(closedAt),
    rater: ({ rater }) => rater ?? '',
    repeated: ({ repeated }) => yesNo(repeated),
    weaning: ({ weaning }) => yesNo(weaning),
    goal: ({ goal }) => number(goal),
  };
  return (Object.keys(values) as NotedKey[]).map((key) => ({ key, heading: words.noted[key], value: values[key] }));
}

type Value = MadeFile['options'][string];

/** Decimals of an option's value: stretch is a fraction. */
const DECIMALS = 4;

/**
 * The options that a thing was made with, where they differ from the defaults of its kind, in one sentence or more; an option unknown
 * to this version is told as it is. The differential of a strip is left to the words for what was made.
 */
export function optionsText({ kind, options }: MadeFile, language: Language = 'en'): string {
  const words = RECORD_WORDS[language];
  const named = OPTION_WORDS[language];
  const noted = Object.entries(options).filter(([key]) => key !== 'differential' || kind !== 'strip');
  if (noted.length === 0) return words.optionsNotNoted;
  const all =
    kind === 'plate' ? [...PLATE_NUMBER_OPTIONS, ...PLATE_CHOICE_OPTIONS] : [...NUMBER_OPTIONS, ...CHOICE_OPTIONS, ...RETIRED_OPTIONS];
  const other = noted.flatMap(([key, value]) => {
    const option = all.find((one) => one.key === key);
    const shown = (of: Value) => valueText(of, words, named);
    if (option === undefined) return [`${key} ${shown(value)}`];
    // A figure that the program would take is as usual as leaving it to the program.
    if (value === option.default || value === usualValue(option)) return [];
    const unit =
      'unit' in option && option.unit !== 'fraction' && typeof value === 'number'
        ? ` ${option.unit === 'degrees' ? named.degrees : option.unit}`
        : '';
    return [words.option({ name: wordFor(named.name, key), value: shown(value), unit, usual: shown(usualValue(option)) })];
  });
  return other.length === 0 ? words.optionsUsual : words.optionsDiffer(other);
}

/** The word for a key; one that this version does not know stands as it is. */
function wordFor(words: Readonly<Record<string, string>>, key: string): string {
  return Object.hasOwn(words, key) ? (words[key] ?? key) : key;
}

function valueText(value: Value, { yes, no, decimal }: RecordWords, named: OptionWords): string {
  if (typeof value === 'number') return plain(value, DECIMALS).replace('.', decimal);
  return typeof value === 'string' ? wordFor(named.value, value) : value ? yes : no;
}

/** "closed on 2026-05-04: the goal was reached". */
export function closedText(closed: RecordFigures['closed'], words: RecordWords = RECORD_WORDS.en): string {
  return words.closed(closed);
}
