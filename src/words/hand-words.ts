import { type Block, heldDigits, heldPlace, placedDigits } from '../block/block.ts';
import { blockById } from '../block/library.ts';
import type { Language, Translations } from './language.ts';

/** Names of what belongs to a hand. `finger` as in the middle of a sentence, `first` at its beginning, `short` for pictures and lists. */
export const handEnglish = {
  finger: { index: 'index finger', long: 'long finger', ring: 'ring finger', little: 'little finger' },
  first: { index: 'Index finger', long: 'Long finger', ring: 'Ring finger', little: 'Little finger' },
  short: { index: 'index', long: 'long', ring: 'ring', little: 'little' },
  and: 'and',
  side: { left: 'left', right: 'right' },
  handOf: { left: 'Left hand', right: 'Right hand' },
  place: { enclosed: 'enclosed', raised: 'raised', lowered: 'lowered' },
  placeOfTwo: { raised: 'raised', lowered: 'lowered' },
  aspect: { dorsal: 'dorsal', palmar: 'palmar' },
  layer: { inner: 'inner layer', outer: 'outer layer' },
  border: { radial: 'radial border', ulnar: 'ulnar border' },
  block: {
    title: (held: string, place: string, count: string, range: string) => `${held} ${place}, ${count} (${range})`,
    three: 'three digits',
    four: 'four digits',
  },
  /** Measures as they are named in a list of what was estimated. */
  measure: {
    width: 'width',
    circumference: 'circumference',
    palmarRoom: 'palmar room',
    dorsalLength: 'dorsal length',
    pipCircumference: 'PIP circumference',
    mpSetback: 'MP setback',
    webSetback: 'web setback',
    handBreadth: 'hand breadth',
    handCircumference: 'hand circumference',
    metacarpalLength: 'metacarpal length',
    mpDepth: 'MP depth',
    mpDorsalRadius: 'MP dorsal radius',
    thumbWebSetback: 'thumb web setback',
  },
};

const finger = { index: 'Zeigefinger', long: 'Mittelfinger', ring: 'Ringfinger', little: 'Kleinfinger' };

export const handGerman: Translations<typeof handEnglish> = {
  finger,
  first: finger,
  short: { index: 'D2', long: 'D3', ring: 'D4', little: 'D5' },
  and: 'und',
  side: { left: 'links', right: 'rechts' },
  handOf: { left: 'Linke Hand', right: 'Rechte Hand' },
  place: { enclosed: 'umschlossen', raised: 'angehoben', lowered: 'abgesenkt' },
  placeOfTwo: { raised: 'angehoben', lowered: 'abgesenkt' },
  aspect: { dorsal: 'dorsal', palmar: 'palmar' },
  layer: { inner: 'innere Lage', outer: 'äußere Lage' },
  border: { radial: 'radialer Rand', ulnar: 'ulnarer Rand' },
  block: {
    title: (held, place, count, range) => `${held} ${place}, ${count} (${range})`,
    three: 'drei Finger',
    four: 'vier Finger',
  },
  measure: {
    width: 'Breite',
    circumference: 'Umfang',
    palmarRoom: 'palmare Länge',
    dorsalLength: 'dorsale Länge',
    pipCircumference: 'PIP-Umfang',
    mpSetback: 'MP-Versatz',
    webSetback: 'Versatz der Interdigitalfalte',
    handBreadth: 'Handbreite',
    handCircumference: 'Handumfang',
    metacarpalLength: 'Mittelhandlänge',
    mpDepth: 'MP-Tiefe',
    mpDorsalRadius: 'MP-Radius dorsal',
    thumbWebSetback: 'Versatz der Daumenfalte',
  },
};

export const handSpanish: Translations<typeof handEnglish> = {
  finger: { index: 'dedo índice', long: 'dedo medio', ring: 'dedo anular', little: 'dedo meñique' },
  first: { index: 'Dedo índice', long: 'Dedo medio', ring: 'Dedo anular', little: 'Dedo meñique' },
  short: { index: 'índice', long: 'medio', ring: 'anular', little: 'meñique' },
  and: 'y',
  side: { left: 'izquierda', right: 'derecha' },
  handOf: { left: 'Mano izquierda', right: 'Mano derecha' },
  place: { enclosed: 'rodeado', raised: 'elevado', lowered: 'bajado' },
  placeOfTwo: { raised: 'elevados', lowered: 'bajados' },
  aspect: { dorsal: 'dorsal', palmar: 'palmar' },
  layer: { inner: 'capa interior', outer: 'capa exterior' },
  border: { radial: 'borde radial', ulnar: 'borde cubital' },
  block: {
    title: (held, place, count, range) => `${held} ${place}, ${count} (${range})`,
    three: 'tres dedos',
    four: 'cuatro dedos',
  },
  measure: {
    width: 'ancho',
    circumference: 'perímetro',
    palmarRoom: 'longitud palmar',
    dorsalLength: 'longitud dorsal',
    pipCircumference: 'perímetro de la IFP',
    mpSetback: 'desnivel MCF',
    webSetback: 'desnivel de la comisura',
    handBreadth: 'anchura de la mano',
    handCircumference: 'perímetro de la mano',
    metacarpalLength: 'longitud metacarpiana',
    mpDepth: 'grosor en la MCF',
    mpDorsalRadius: 'radio dorsal de la MCF',
    thumbWebSetback: 'desnivel de la comisura del pulgar',
  },
};

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
