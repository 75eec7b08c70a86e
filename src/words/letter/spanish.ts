import { plain } from '../../units/number.ts';
import { handSpanish } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { englishLetter } from './english.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} y ${parts.at(-1)}`);
const digit = handSpanish.finger;

/** The letter on a case in Spanish. */
export const spanishLetter: Translations<typeof englishLetter> = {
  title: (code) => `Carta sobre el caso ${code}`,
  invented: 'INVENTADO: no se midió a nadie.',
  hand: { left: 'mano izquierda', right: 'mano derecha' },
  digit,
  who: ({ side, digit: treated, diagnosis, weeks }) =>
    `${digit[treated].replace('dedo', 'Dedo')}, mano ${side === 'left' ? 'izquierda' : 'derecha'}${diagnosis === null ? '' : `; ${diagnosis}`}${weeks === null ? '' : `; ${n(weeks)} semanas desde la lesión u operación en la primera sesión`}.`,
  course: ({ from, to, weeks, hours }) =>
    from === null
      ? `Movimiento activo de la IFP ${to}.`
      : `Movimiento activo de la IFP ${from} a ${to} en ${weeks === 1 ? '1 semana' : `${n(weeks)} semanas`}${hours === null ? '' : `, con ${n(hours)} horas de uso al día`}.`,
  notation: 'Movimiento como extensión-0-flexión (método neutro-cero), grados.',
  motion: 'Movimiento',
  visit: 'sesión',
  jointMotion: {
    mp: { active: 'MCF activo', passive: 'MCF pasivo' },
    pip: { active: 'IFP activo', passive: 'IFP pasivo' },
    dip: { active: 'IFD activo', passive: 'IFD pasivo' },
  },
  lacks: (deficit, flexion) => `faltan ${deficit}, flexiona hasta ${flexion}`,
  beyond: (degrees, flexion) => `${degrees} más allá de recto, flexiona hasta ${flexion}`,
  tam: 'Movimiento activo total (TAM)',
  tpm: 'Movimiento pasivo total (TPM)',
  ofNormal: (percent, normal) => `${percent} % de lo normal (${normal})`,
  ofOther: (percent, other) => `${percent} % de la otra mano (${other})`,
  pain: 'Dolor en reposo, 0 a 10',
  wear: 'Uso, horas al día',
  made: 'Qué se hizo',
  nothingMade: 'No hay nada anotado.',
  earlier: (count) => `${count} más antes.`,
  strip: ({ held, higher, others, differential }) =>
    `Ortesis de movimiento relativo: ${list(held.map((one) => digit[one]))} más ${higher ? 'alto' : 'bajo'} que ${list(others.map((one) => digit[one]))}${differential === null ? '' : `, ${n(differential)} grados en la MCF`}.`,
  plate: (degrees) => `Férula de mano, MCF a ${degrees} grados.`,
  goalHeading: 'Meta',
  goal: ({ degrees, own, flexionFull, other }) =>
    `Que falten como mucho ${n(degrees)} grados${own ? ', según lo acordado con el paciente' : ''}. La flexión se compara con ${other ? `los ${n(flexionFull)} de la otra mano` : `los ${n(flexionFull)} habituales`}.`,
  advice: 'Valoración y paso siguiente',
  evidence: 'La evidencia del uso como ejercicio es escasa: un punto de partida, decide el/la terapeuta.',
  clinician: 'Terapeuta',
  signature: 'Firma',
  date: 'Fecha',
  page: (page, pages) => `página ${page} de ${pages}`,
};
