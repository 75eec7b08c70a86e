import { plain } from '../../units/number.ts';
import { handSpanish } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { englishChart } from './chart-english.ts';
import type { RecordFigures } from './record-figures.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} y ${parts.at(-1)}`);
const digit = handSpanish.short;
const faces = { dorsal: 'férula dorsal', palmar: 'férula palmar', both: 'férula dorsal y palmar' };
const long = (length: number | null) => (length === null ? '' : `, ${n(length)} mm de largo`);
const runs = ({ held, higher, others }: Pick<RecordFigures['strip'], 'held' | 'higher' | 'others'>) =>
  `${list(held.map((one) => digit[one]))} más ${higher ? 'alto' : 'bajo'} que ${list(others.map((one) => digit[one]))}`;

/** What is said of a case on its chart, in Spanish. */
export const spanishChart: Translations<typeof englishChart> = {
  number: n,
  decimal: ',',
  who: ({ side, digit: treated }) => `dedo ${digit[treated]}, mano ${side === 'left' ? 'izquierda' : 'derecha'}`,
  invented: 'INVENTADO: no se midió a nadie',
  visit: 'sesión',
  made: 'hecho',
  hyper: 'hiper',
  strip: ({ held, higher, others, differential, length }) =>
    `tira: ${runs({ held, higher, others })}${differential === null ? '' : `, diferencia MCF ${n(differential)} grados`}${long(length)}`,
  runs,
  plate: ({ faces: on, mpAngle, length }) => `${faces[on]}, MCF a ${n(mpAngle)} grados${long(length)}`,
  chart: {
    title: ({ side, digit: treated }) => `Movimiento de la IFP, dedo ${digit[treated]}, mano ${side === 'left' ? 'izquierda' : 'derecha'}`,
    subtitle: 'Recorrido activo y pasivo por sesión, grados de flexión desde recto',
    shown: ({ first, last, of }) => `, sesiones ${first} a ${last} de ${of}`,
    months: 'ene feb mar abr may jun jul ago sep oct nov dic',
    activeFlexion: 'flexión activa',
    activeDeficit: 'déficit activo de extensión',
    passiveFlexion: 'flexión pasiva',
    passiveDeficit: 'déficit pasivo de extensión',
    sinceBefore: 'desde la sesión anterior',
    worn: 'uso, horas al día',
    gained: (degrees) => `${n(degrees)} ganados`,
    lost: (degrees) => `${n(degrees)} perdidos`,
    noChange: 'sin cambio',
    legend: {
      active: 'activo; barra: recorrido',
      passive: 'pasivo',
      inside: 'dentro: no es un cambio',
      made: 'hecho, hasta el siguiente',
    },
    band: (same, mixed) =>
      `Banda: ${n(same)} grados (${n(mixed)} entre dos personas) por encima y por debajo de cada valor activo, hasta la sesión siguiente. Un valor dentro de ella no se lee como cambio`,
    plot: {
      end: {
        active: { flexion: 'flexión activa', extensionDeficit: 'déficit activo de extensión', hyperextension: 'hiperextensión activa' },
        passive: { flexion: 'flexión pasiva', extensionDeficit: 'déficit pasivo de extensión', hyperextension: 'hiperextensión pasiva' },
      },
      active: 'activo',
      passive: 'pasivo',
      straight: 'recto',
      beyond: 'hiper',
    },
  },
};
