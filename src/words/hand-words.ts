import { type Block, heldDigits, heldPlace, placedDigits } from '../block/block.ts';
import { blockById } from '../block/library.ts';
import { DIGIT_FIELDS, type Field, PALM_FIELDS, TARGET_FIELDS, WEB_FIELDS } from '../hand/fields.ts';
import type { Language, Translations } from './language.ts';

function labelsOf<Id extends string>(fields: Readonly<Record<Id, Field>>): Readonly<Record<Id, string>> {
  return Object.fromEntries(Object.entries<Field>(fields).map(([id, { label }]) => [id, label])) as Record<Id, string>;
}

/**
 * Names of what belongs to a hand. `finger` as in the middle of a sentence, `first` at its beginning, `short` for pictures and lists, `button` where one
 * finger of four is chosen; `between` names a length by its two ends, where somebody has just to measure it.
 */
export const handEnglish = {
  finger: { index: 'index finger', long: 'long finger', ring: 'ring finger', little: 'little finger' },
  first: { index: 'Index finger', long: 'Long finger', ring: 'Ring finger', little: 'Little finger' },
  short: { index: 'index', long: 'long', ring: 'ring', little: 'little' },
  button: { index: 'Index', long: 'Long', ring: 'Ring', little: 'Little' },
  and: 'and',
  side: { left: 'left', right: 'right' },
  handOf: { left: 'left hand', right: 'right hand' },
  place: { enclosed: 'enclosed', raised: 'raised', lowered: 'lowered' },
  placeOfTwo: { enclosed: 'enclosed', raised: 'raised', lowered: 'lowered' },
  aspect: { dorsal: 'dorsal', palmar: 'palmar' },
  layer: { inner: 'inner layer', outer: 'outer layer' },
  border: { radial: 'radial border', ulnar: 'ulnar border' },
  block: {
    title: (held: string, place: string, count: string, range: string) => `${held} ${place}, ${count} (${range})`,
    three: 'three digits',
    four: 'four digits',
  },
  /** Measures as they are named inside a sentence; English keeps them where it keeps the measures. */
  measure: labelsOf({ ...DIGIT_FIELDS, ...WEB_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS }),
  between: { palmarRoom: 'root to PIP crease', dorsalLength: 'MP to PIP line' },
};

const finger = { index: 'Zeigefinger', long: 'Mittelfinger', ring: 'Ringfinger', little: 'Kleinfinger' };

export const handGerman: Translations<typeof handEnglish> = {
  finger,
  first: finger,
  short: { index: 'D2', long: 'D3', ring: 'D4', little: 'D5' },
  button: { index: 'Zeige', long: 'Mittel', ring: 'Ring', little: 'Klein' },
  and: 'und',
  side: { left: 'links', right: 'rechts' },
  handOf: { left: 'linke Hand', right: 'rechte Hand' },
  place: { enclosed: 'umschlossen', raised: 'angehoben', lowered: 'abgesenkt' },
  placeOfTwo: { enclosed: 'umschlossen', raised: 'angehoben', lowered: 'abgesenkt' },
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
    rootCircumference: 'Umfang an der Fingerwurzel',
    mpSetback: 'MP-Versatz',
    webSetback: 'Versatz der Interdigitalfalte',
    handBreadth: 'Handbreite',
    handCircumference: 'Handumfang',
    metacarpalLength: 'Mittelhandlänge',
    mpDepth: 'MP-Tiefe',
    mpDorsalRadius: 'MP-Radius dorsal',
    thumbWebSetback: 'Versatz der Daumenfalte',
    pipExtensionDeficit: 'PIP-Streckdefizit',
    pipFlexionDeficit: 'PIP-Beugedefizit',
    pipExtensionDeficitPassive: 'passives PIP-Streckdefizit',
    pipFlexionDeficitPassive: 'passives PIP-Beugedefizit',
  },
  between: { palmarRoom: 'Wurzel bis PIP-Falte', dorsalLength: 'MP- bis PIP-Spalt' },
};

export const handSpanish: Translations<typeof handEnglish> = {
  finger: { index: 'dedo índice', long: 'dedo medio', ring: 'dedo anular', little: 'dedo meñique' },
  first: { index: 'Dedo índice', long: 'Dedo medio', ring: 'Dedo anular', little: 'Dedo meñique' },
  short: { index: 'índice', long: 'medio', ring: 'anular', little: 'meñique' },
  button: { index: 'Índice', long: 'Medio', ring: 'Anular', little: 'Meñique' },
  and: 'y',
  side: { left: 'izquierda', right: 'derecha' },
  handOf: { left: 'mano izquierda', right: 'mano derecha' },
  place: { enclosed: 'rodeado', raised: 'elevado', lowered: 'bajado' },
  placeOfTwo: { enclosed: 'rodeados', raised: 'elevados', lowered: 'bajados' },
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
    rootCircumference: 'perímetro en la raíz',
    mpSetback: 'desnivel MCF',
    webSetback: 'desnivel de la comisura',
    handBreadth: 'anchura de la mano',
    handCircumference: 'perímetro de la mano',
    metacarpalLength: 'longitud metacarpiana',
    mpDepth: 'grosor en la MCF',
    mpDorsalRadius: 'radio dorsal de la MCF',
    thumbWebSetback: 'desnivel de la comisura del pulgar',
    pipExtensionDeficit: 'déficit de extensión IFP',
    pipFlexionDeficit: 'déficit de flexión IFP',
    pipExtensionDeficitPassive: 'déficit pasivo de extensión IFP',
    pipFlexionDeficitPassive: 'déficit pasivo de flexión IFP',
  },
  between: { palmarRoom: 'raíz a pliegue IFP', dorsalLength: 'línea MCF a IFP' },
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

/** `text` as it stands at the beginning of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What a block does, from its places: "Ring finger raised, three digits (long, ring, little)"; null where nothing is held or the strip has no three fingers. */
export function placesTitle(block: Pick<Block, 'places'>, w: HandWords): string | null {
  const held = heldDigits(block);
  const placed = placedDigits(block);
  if (held.length === 0 || placed.length < 3) return null;
  const names = held.map((digit, k) => (k === 0 ? w.first[digit] : w.finger[digit]));
  const place = held.length > 1 ? w.placeOfTwo[heldPlace(block)] : w.place[heldPlace(block)];
  const range = placed.map(({ digit }) => w.short[digit]).join(', ');
  return w.block.title(listed(names, w.and), place, placed.length === 4 ? w.block.four : w.block.three, range);
}

/** A block's name; one of the clinic's own keeps the title that it was given. */
export function blockTitle(block: Block, language: Language): string {
  const isOurs = blockById(block.id)?.title === block.title || block.title === placesTitle(block, handEnglish);
  return language === 'en' || !isOurs ? block.title : (placesTitle(block, WORDS[language]) ?? block.title);
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
