import type { Device } from '../../../block/decide.ts';
import type { Translations } from '../../language.ts';
import type { planTextEnglish } from './text-english.ts';

const DEVICE: Readonly<Record<Device, string>> = { strip: 'una tira', plate: 'una férula' };

export const planTextSpanish: Translations<typeof planTextEnglish> = {
  who: (code, side, invented) => `${code}, mano ${side === 'left' ? 'izquierda' : 'derecha'}${invented ? ' (inventado)' : ''}`,
  passively: (degrees) => ` (pasivo ${degrees})`,
  lacks: (finger, extension, flexion, zero) =>
    `${finger}: a la extensión de la IFP le faltan ${extension} grados, a la flexión ${flexion}. Extensión-0-flexión: ${zero}.`,
  need: { none: 'ninguna', both: 'los dos movimientos', extension: 'extensión de la IFP', flexion: 'flexión de la IFP' },
  needIs: (need) => `Necesidad: ${need}.`,
  nothingSeeErrors: 'No se sugiere nada; vea los errores.',
  nothing: 'No se sugiere nada.',
  nothingMade: 'No hay nada que hacer.',
  firstThen: (first, second) => `Primero ${DEVICE[first]}, después ${DEVICE[second]}; se hace una cada vez.`,
  serves: (device) => `Sirve ${DEVICE[device]}.`,
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
