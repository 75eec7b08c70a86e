import type { Translations } from '../language.ts';
import type { handEnglish } from './english.ts';

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
