import type { Translations } from '../language.ts';
import type { auditEnglish } from './audit-english.ts';

export const auditSpanish: Translations<typeof auditEnglish> = {
  title: 'Balance de los casos cerrados',
  head: 'BALANCE DE LOS CASOS CERRADOS',
  inventedMark: 'INVENTADO',
  under: (cases) => `${cases === '1' ? '1 caso cerrado' : `${cases} casos cerrados`}. Grados y semanas.`,
  invented: 'Hay casos INVENTADOS entre estos: no se midió a nadie.',
  gained: (gained, cases, gain) =>
    `${gained} de ${cases === '1' ? '1 caso cerrado' : `${cases} casos cerrados`} ${gained === '1' ? 'ganó' : 'ganaron'} ${gain} grados o más de movilidad IFP activa entre la primera y la última sesión.`,
  half: (weeks) => `La mitad de ellos logró esa ganancia en las ${weeks} semanas siguientes a la primera sesión.`,
  because: (reasons) => `Cerrados porque: ${reasons}.`,
  open: (count) => (count === '1' ? '1 caso abierto no se cuenta.' : `${count} casos abiertos no se cuentan.`),
  tooFew: (count) =>
    count === '1'
      ? '1 caso cerrado con menos de dos sesiones no se cuenta.'
      : `${count} casos cerrados con menos de dos sesiones no se cuentan.`,
  counted: (gain, source) =>
    `Se cuenta la ganancia del movimiento que más faltaba en la primera sesión, desde ${gain} grados, desde 13 si midieron personas distintas (${source}).`,
  alone:
    'No se comparó con nadie: los dedos rígidos también ganan solo con el tiempo y el ejercicio, así que estas cifras no dicen qué hizo la ortesis.',
  cases: 'Casos',
  limits: 'Qué dicen las cifras',
  column: {
    code: 'caso',
    motion: 'movimiento',
    before: 'déficit inicial',
    after: 'déficit final',
    gained: 'ganancia',
    weeks: 'semanas hasta la ganancia',
    strips: 'tiras',
    plates: 'férulas',
    reason: 'cerrado porque',
  },
  motion: { extension: 'extensión', flexion: 'flexión' },
  underLimit: 'bajo el límite',
};
