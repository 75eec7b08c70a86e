import { plain } from '../../units/number.ts';
import type { Translations } from '../language.ts';
import { spanishChart } from './chart-spanish.ts';
import type { auditEnglish, englishRecord } from './english.ts';

const auditSpanish: Translations<typeof auditEnglish> = {
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

const n = (value: number) => plain(value, 1).replace('.', ',');
const closedFor = {
  goal: 'se alcanzó la meta',
  plateau: 'ya no se ganaba nada',
  harm: 'hizo daño',
  lost: 'la persona no volvió',
  other: 'por otro motivo',
};

/** What is said of a case and its visits, in Spanish. */
export const spanishRecord: Translations<typeof englishRecord> = {
  ...spanishChart,
  audit: auditSpanish,
  title: (code) => `Informe del caso ${code}`,
  span: ({ visits, first, last }) => (visits === 1 ? `1 sesión, ${first}` : `${visits} sesiones, del ${first} al ${last}`),
  scale: 'Grados y mm; nada de esto está dibujado a tamaño real.',
  page: (page, pages) => `página ${page} de ${pages}`,
  heading: {
    note: 'Nota',
    closed: 'Cerrado',
    visits: 'Sesiones',
    made: 'Qué se hizo',
    next: (date) => `Qué sigue, tras la sesión del ${date}`,
    totals: 'Movimiento total, activo y pasivo',
    cautions: 'Precauciones',
  },
  reading:
    'El movimiento es déficit de extensión / flexión (25/85: faltan 25 y flexiona hasta 85; hiper es más allá de recto) y, debajo, extensión-0-flexión, la notación neutro-cero. Lo vacío no se anotó.',
  amended: ({ kind, was, on, why }) =>
    `La sesión del ${was} se ${kind === 'corrected' ? 'corrigió' : 'retiró'}${on === undefined ? '' : ` el ${on}`}${why === undefined ? '' : `: ${why}`}. El archivo guarda lo que había antes.`,
  closed: ({ date, reason, note }) => `se cerró el ${date}: ${closedFor[reason]}${note === undefined ? '' : ` (${note})`}`,
  closedFor,
  caseWas: (closed) => `El caso ${closed}.`,
  whatFollows: 'Lo que sigue es lo que sugería la última sesión.',
  nothingMade: 'No hay nada anotado.',
  lengthNotNoted: 'El largo no está anotado.',
  option: ({ name, value, unit, usual }) => `${name} ${value}${unit} (habitual ${usual})`,
  optionsDiffer: (options) => `Distinto de lo habitual: ${options.join(', ')}.`,
  optionsUsual: 'Ninguna opción anotada difiere de lo habitual.',
  optionsNotNoted: 'Las opciones no están anotadas.',
  source: (text) => `Fuente: ${text}.`,
  also: (title) => `También ${title.toLowerCase()}`,
  joint: {
    mp: { active: 'MCF activo', passive: 'MCF pasivo' },
    pip: { active: 'IFP activo', passive: 'IFP pasivo' },
    dip: { active: 'IFD activo', passive: 'IFD pasivo' },
  },
  girth: { circumference: 'perímetro', pipCircumference: 'perímetro de la IFP' },
  noVisit: 'Aún no hay sesiones.',
  addOne: 'Añada una: knucklewright case add',
  motionNow: (first, last) =>
    `Movimiento activo de la IFP (extensión-0-flexión): ${first === null ? '' : `${first.motion} el ${first.date}, `}${last.motion} el ${last.date}`,
  visits: (count) => (count === 1 ? '1 sesión' : `${count} sesiones`),
  tam: 'TAM, grados',
  tpm: 'TPM, grados',
  ofNormal: 'de lo normal',
  ofOther: 'de la otra mano',
  grade: 'grado',
  grades: { excellent: 'excelente', good: 'bueno', fair: 'regular', poor: 'malo' },
  total: ({ degrees, percent, reference, otherHand, grade }) =>
    `Movimiento activo total (TAM) ${n(degrees)}, ${n(percent)} % ${otherHand ? `de la otra mano (${n(reference)})` : `de lo normal (${n(reference)})`}: ${grade} (ASSH, total active motion)`,
  totalPassive: (degrees) => `Movimiento pasivo total (TPM) ${n(degrees)}`,
  aboutTam: ({ reference, otherHand }) =>
    `TAM: movimiento activo total, flexión de MCF + IFP + IFD menos los déficits de extensión, frente a ${otherHand ? `los ${n(reference)} de la otra mano` : `los ${n(reference)} normales (85 + 110 + 65)`}. Grados: ASSH total active motion; American Society for Surgery of the Hand, según material docente (de segunda mano; no se leyó el texto de la propia sociedad).`,
  aboutTpm: 'TPM: movimiento pasivo total, lo mismo en pasivo.',
  yes: 'sí',
  no: 'no',
  noted: {
    pain: 'dolor, 0 a 10',
    skin: 'piel',
    sensation: 'sensibilidad',
    colour: 'color',
    infection: 'infección',
    deformity: 'deformidad nueva',
    crpsSigns: 'signos de SDRC',
    wear: 'uso, h/día',
    wearAgreed: 'acordado, h/día',
    fits: 'ajusta',
    redirects: 'redirige',
    measuredDifferential: 'diferencia MCF medida',
    freePip: 'flexión libre de la IFP',
    pencil: 'prueba del lápiz, sin y con',
    closedAt: 'cerrada en, mm',
    rater: 'midió',
    repeated: 'medido tres veces',
    weaning: 'retirada gradual',
    goal: 'meta',
  },
  skin: { ok: 'bien', marks: 'marcas', broken: 'rota' },
  change: { ok: 'como siempre', returned: 'cambió y volvió', stays: 'cambió y sigue así' },
  and: 'y',
};
