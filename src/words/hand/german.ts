import type { Translations } from '../language.ts';
import type { handEnglish } from './english.ts';

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
