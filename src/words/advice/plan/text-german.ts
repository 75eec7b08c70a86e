import type { Device } from '../../../block/decide.ts';
import type { Translations } from '../../language.ts';
import type { planTextEnglish } from './text-english.ts';

const DEVICE: Readonly<Record<Device, string>> = { strip: 'ein Streifen', plate: 'eine Handschiene' };
const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

export const planTextGerman: Translations<typeof planTextEnglish> = {
  who: (code, side, invented) => `${code}, ${side === 'left' ? 'linke' : 'rechte'} Hand${invented ? ' (erfunden)' : ''}`,
  passively: (degrees) => ` (passiv ${degrees})`,
  lacks: (finger, extension, flexion, zero) =>
    `${finger}, der PIP-Streckung fehlen ${extension} Grad, der PIP-Beugung ${flexion}. Extension-0-Flexion: ${zero}.`,
  need: { none: 'keiner', both: 'beide Richtungen', extension: 'PIP-Streckung', flexion: 'PIP-Beugung' },
  needIs: (need) => `Bedarf: ${need}.`,
  nothingSeeErrors: 'Nichts wird vorgeschlagen; siehe die Fehler.',
  nothing: 'Nichts wird vorgeschlagen.',
  nothingMade: 'Nichts ist anzufertigen.',
  firstThen: (first, second) => `Zuerst ${DEVICE[first]}, dann ${DEVICE[second]}; angefertigt wird eines nach dem anderen.`,
  serves: (device) => `${capital(DEVICE[device])} dient dem.`,
  sure: (extension, flexion) =>
    `Wie sicher 10 Grad oder mehr fehlen, allein nach dem Messfehler: Streckung ${extension} von 100, Beugung ${flexion} von 100. Das ist keine Aussicht auf Erfolg.`,
  heading: { first: 'ZUERST', caution: 'VORSICHT', note: 'Warum', sources: 'Quellen' },
  stripLater: (need) => `Der Streifen, wenn er an der Reihe ist: für ${need}, der beste zuerst.`,
  drawStrip: 'Diesen Streifen zeichnen',
  drawFirst: 'Den ersten zeichnen',
  drawIt: 'Zeichnen',
  others: (command) => `(andere: ${command})`,
  plate: (degrees, range) =>
    `Handschiene: MP-Gelenk anfangs bei ${degrees} Grad Beugung${range === null ? '' : `, Bereich ${range[0]} bis ${range[1]}`}.`,
  notMakeable: (ids) => `Nicht anzufertigen: ${ids}`,
  other: (motion) => `Der andere Plan, wenn die ${motion === 'extension' ? 'PIP-Streckung' : 'PIP-Beugung'} anders abgelesen wird.`,
  otherStrip: (ids) => `Streifen: ${ids}.`,
  otherPlate: (degrees) => `Handschiene: MP-Gelenk bei ${degrees} Grad.`,
  ofPoints: (points, most) => `${points} von ${most}`,
  differential: (degrees, low, high) => `MP-Differenz ${degrees} Grad (laut Umfrage üblich: ${low} bis ${high})`,
  term: {
    rotation: 'Drehung',
    hold: 'Halt',
    neighbours: 'Nachbarn',
    freePip: 'PIP frei',
    length: 'Länge',
    layers: 'Lagen',
    weights: 'Gewichte',
    differential: 'MP-Differenz',
    next: 'danach',
  },
};
