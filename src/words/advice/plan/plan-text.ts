import type { Device } from '../../../block/decide.ts';
import type { Motion } from '../../../block/plan-notes.ts';
import type { Side } from '../../../hand/digits.ts';
import { capital } from '../../hand-words.ts';
import type { Language, Translations } from '../../language.ts';

const DEVICE_ENGLISH: Readonly<Record<Device, string>> = { strip: 'a strip', plate: 'a plate' };

/** What `plan` says round its notes, in English. Figures come as text. */
const planTextEnglish = {
  who: (code: string, side: Side, invented: boolean) => `${code}, ${side} hand${invented ? ' (invented)' : ''}`,
  passively: (degrees: string) => ` (passively ${degrees})`,
  lacks: (finger: string, extension: string, flexion: string, zero: string) =>
    `${finger}, PIP extension lacks ${extension} degrees, PIP flexion ${flexion}. Extension-0-flexion: ${zero}.`,
  need: { none: 'none', both: 'both motions', extension: 'PIP extension', flexion: 'PIP flexion' },
  needIs: (need: string) => `Need: ${need}.`,
  nothingSeeErrors: 'Nothing is suggested; see the errors.',
  nothing: 'Nothing is suggested.',
  nothingMade: 'Nothing is to be made.',
  firstThen: (first: Device, second: Device) => `First ${DEVICE_ENGLISH[first]}, then ${DEVICE_ENGLISH[second]}; one is made at a time.`,
  serves: (device: Device) => `${DEVICE_ENGLISH[device].replace('a', 'A')} serves.`,
  sure: (extension: string, flexion: string) =>
    `How sure that 10 degrees or more are lacking, by measuring error alone: extension ${extension} in 100, flexion ${flexion} in 100. It is no chance of success.`,
  heading: { first: 'FIRST', caution: 'CAUTION', note: 'Why', sources: 'Sources' },
  stripLater: (need: string) => `Strip, when its turn comes: for ${need}, best first.`,
  drawStrip: 'To draw this strip',
  drawFirst: 'To draw the first',
  drawIt: 'To draw it',
  others: (command: string) => `(others: ${command})`,
  plate: (degrees: string, range: readonly [string, string] | null) =>
    `Plate: MP joint at ${degrees} degrees of flexion to begin with${range === null ? '' : `, range ${range[0]} to ${range[1]}`}.`,
  notMakeable: (ids: string) => `Not makeable: ${ids}`,
  other: (motion: Motion) => `The other plan, if PIP ${motion} is read the other way.`,
  otherStrip: (ids: string) => `Strip: ${ids}.`,
  otherPlate: (degrees: string) => `Plate: MP joint at ${degrees} degrees.`,
  ofPoints: (points: string, most: string) => `${points} of ${most}`,
  differential: (degrees: string, low: string, high: string) => `differential ${degrees} degrees (surveyed use ${low} to ${high})`,
  term: {
    rotation: 'rotation',
    hold: 'hold',
    neighbours: 'neighbours',
    freePip: 'free PIP',
    length: 'length',
    layers: 'layers',
    weights: 'weights',
    differential: 'differential',
    next: 'next',
  },
};

const DEVICE_SPANISH: Readonly<Record<Device, string>> = { strip: 'una tira', plate: 'una férula' };

const planTextSpanish: Translations<typeof planTextEnglish> = {
  who: (code, side, invented) => `${code}, mano ${side === 'left' ? 'izquierda' : 'derecha'}${invented ? ' (inventado)' : ''}`,
  passively: (degrees) => ` (pasivo ${degrees})`,
  lacks: (finger, extension, flexion, zero) =>
    `${finger}: a la extensión de la IFP le faltan ${extension} grados, a la flexión ${flexion}. Extensión-0-flexión: ${zero}.`,
  need: { none: 'ninguna', both: 'los dos movimientos', extension: 'extensión de la IFP', flexion: 'flexión de la IFP' },
  needIs: (need) => `Necesidad: ${need}.`,
  nothingSeeErrors: 'No se sugiere nada; vea los errores.',
  nothing: 'No se sugiere nada.',
  nothingMade: 'No hay nada que hacer.',
  firstThen: (first, second) => `Primero ${DEVICE_SPANISH[first]}, después ${DEVICE_SPANISH[second]}; se hace una cada vez.`,
  serves: (device) => `Sirve ${DEVICE_SPANISH[device]}.`,
  sure: (extension, flexion) =>
    `Con qué seguridad faltan 10 grados o más, solo por el error de medida: extensión ${extension} de 100, flexión ${flexion} de 100. No es una probabilidad de éxito.`,
  heading: { first: 'PRIMERO', caution: 'CUIDADO', note: 'Por qué', sources: 'Fuentes' },
  stripLater: (need) => `La tira, cuando le toque: para ${need}, la mejor primero.`,
  drawStrip: 'Para dibujar esta tira',
  drawFirst: 'Para dibujar la primera',
  drawIt: 'Para dibujarla',
  others: (command) => `(otras: ${command})`,
  plate: (degrees, range) =>
    `Férula: articulación MCF a ${degrees} grados de flexión para empezar${range === null ? '' : `, de ${range[0]} a ${range[1]}`}.`,
  notMakeable: (ids) => `No se puede hacer: ${ids}`,
  other: (motion) => `El otro plan, si la ${motion === 'extension' ? 'extensión' : 'flexión'} de la IFP se lee de la otra manera.`,
  otherStrip: (ids) => `Tira: ${ids}.`,
  otherPlate: (degrees) => `Férula: articulación MCF a ${degrees} grados.`,
  ofPoints: (points, most) => `${points} de ${most}`,
  differential: (degrees, low, high) => `diferencia MCF ${degrees} grados (uso según encuesta: de ${low} a ${high})`,
  term: {
    rotation: 'rotación',
    hold: 'sujeción',
    neighbours: 'vecinos',
    freePip: 'IFP libre',
    length: 'longitud',
    layers: 'capas',
    weights: 'pesos',
    differential: 'diferencia MCF',
    next: 'después',
  },
};

const DEVICE_GERMAN: Readonly<Record<Device, string>> = { strip: 'ein Streifen', plate: 'eine Handschiene' };

const planTextGerman: Translations<typeof planTextEnglish> = {
  who: (code, side, invented) => `${code}, ${side === 'left' ? 'linke' : 'rechte'} Hand${invented ? ' (erfunden)' : ''}`,
  passively: (degrees) => ` (passiv ${degrees})`,
  lacks: (finger, extension, flexion, zero) =>
    `${finger}, der PIP-Streckung fehlen ${extension} Grad, der PIP-Beugung ${flexion}. Extension-0-Flexion: ${zero}.`,
  need: { none: 'keiner', both: 'beide Richtungen', extension: 'PIP-Streckung', flexion: 'PIP-Beugung' },
  needIs: (need) => `Bedarf: ${need}.`,
  nothingSeeErrors: 'Nichts wird vorgeschlagen; siehe die Fehler.',
  nothing: 'Nichts wird vorgeschlagen.',
  nothingMade: 'Nichts ist anzufertigen.',
  firstThen: (first, second) => `Zuerst ${DEVICE_GERMAN[first]}, dann ${DEVICE_GERMAN[second]}; angefertigt wird eines nach dem anderen.`,
  serves: (device) => `${capital(DEVICE_GERMAN[device])} dient dem.`,
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

export type PlanText = Translations<typeof planTextEnglish>;

/** What a plan in words says round its notes, by language. */
export const PLAN_TEXT: Readonly<Record<Language, PlanText>> = { en: planTextEnglish, es: planTextSpanish, de: planTextGerman };
