import type { NextArrangement } from '../../../block/next-arrangement.ts';
import { plain } from '../../../units/number.ts';
import { capital } from '../../hand-words.ts';
import type { Translations } from '../../language.ts';
import type { PlanSpeech } from '../plan/plan-words.ts';
import { sayStep } from '../plan/say-plan.ts';
import type { CourseFigures, Loss, PauseCause, Slope, StopNowSign, StopRingSign } from './course-figures.ts';
import type { englishCourse } from './english.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} y ${parts.at(-1)}`);
const motions = { flexion: 'flexión', extension: 'extensión' } as const;
const since = (noted: string | null) => (noted === null ? '' : ` (anotado el ${noted}, sin mirar desde entonces)`);
const crpsSign = {
  swelling: 'edema',
  colourOrWarmth: 'color o calor',
  sweating: 'sudoración',
  touchHurts: 'dolor al tacto',
  otherJointsStiffen: 'rigidez de otras articulaciones',
};

const harm = {
  pain: 'dolor',
  skin: 'piel',
  sensation: 'sensibilidad',
  colour: 'color y calor',
  infection: 'signos de infección',
  deformity: 'deformidad nueva',
  crpsSigns: 'signos de SDRC',
};

const lost = ({ motion, lost: by, before, after, between: [from] }: Loss) =>
  `a la ${motions[motion]} activa de la IFP le faltan ${n(after)} grados y el ${from} le faltaban ${n(before)}: ${n(by)} grados perdidos`;
const rate = ({ degreesPerWeek, low, high }: Slope) => `${n(degreesPerWeek)} grados por semana (${n(low)} a ${n(high)})`;
const goalBy = ({ goalBy: by }: Slope) =>
  by === null
    ? ''
    : ` A este ritmo la meta se alcanza hacia el ${by.date} (${by.earliest} a ${by.latest ?? 'más tarde que en 12 semanas'}).`;
const next = (steps: readonly NextArrangement[], speech?: PlanSpeech) =>
  steps.length === 0
    ? 'Planificar de nuevo y tomar la configuración siguiente.'
    : `El plan prueba a continuación: ${steps.map((step) => sayStep(step, 'es', speech)).join(', después ')}.`;

function stopNowSign(found: StopNowSign): string {
  switch (found.sign) {
    case 'colour':
      return `el color o el calor cambió y sigue así${since(found.noted)}`;
    case 'sensation':
      return `la sensibilidad cambió y sigue así${since(found.noted)}`;
    case 'infection':
      return `signos de infección${since(found.noted)}`;
    case 'deformity':
      return `una deformidad nueva o una articulación inestable${since(found.noted)}`;
    case 'activeLoss':
      return `${lost(found.loss)}, medido tres veces, con el movimiento pasivo conservado`;
  }
}

function stopRingSign(found: StopRingSign): string {
  switch (found.sign) {
    case 'crps':
      return `dolor en reposo ${n(found.pain)} de 10 con ${list(found.signs.map((sign) => crpsSign[sign]))}: es posible un síndrome de dolor regional complejo`;
    case 'pain':
      return `dolor en reposo ${n(found.pain)} de 10, ${found.atMaking === null ? 'sin anotar' : n(found.atMaking)} cuando se hizo`;
    case 'notRecovered':
      return `no se ha recuperado desde la pausa del ${found.pausedOn}`;
    case 'mpLost':
      return `el movimiento pasivo de la MCF perdió ${n(found.lost)} grados desde el ${found.between[0]}`;
    case 'beyondStraight':
      return `la IFP pasa ahora ${n(found.degrees)} grados de la extensión completa${found.otherHand === null ? '' : ` (otra mano ${n(found.otherHand)})`}`;
  }
}

function pauseCause(found: PauseCause): string {
  switch (found.cause) {
    case 'skin':
      return `la piel está abierta${since(found.noted)}`;
    case 'sensation':
      return `la sensibilidad cambió al llevarla${since(found.noted)}`;
    case 'colour':
      return `el color o el calor cambió al llevarla${since(found.noted)}`;
    case 'pain':
      return `el dolor subió de ${n(found.before)} a ${n(found.after)} de 10${since(found.noted)}`;
    case 'motion':
      return `${lost(found.loss)} (desde ${n(found.limit)} se da por cierto)`;
    case 'bothMotions':
      return `los dos movimientos están peor que cuando se hizo: ${lost(found.extension)}; ${lost(found.flexion)}`;
  }
}

function fitSays({ marks, loose, girth }: CourseFigures['FIT']): string {
  const found = [
    ...(marks ? ['las marcas de la piel duran más de 20 minutos'] : []),
    ...(loose ? ['no ajusta bien'] : []),
    ...(girth
      ? [
          `el ${girth.at === 'circumference' ? 'perímetro' : 'perímetro de la IFP'} pasó de ${n(girth.before)} a ${n(girth.after)} mm desde que se hizo (límite ${n(girth.limit)})`,
        ]
      : []),
  ];
  const size = girth === null ? '' : girth.after > girth.before ? ' Hacerla más amplia.' : ' Hacerla más ceñida.';
  const text = list(found);
  return `${capital(text)}. Medir de nuevo todos los dedos sujetos, aliviarla o hacerla de nuevo con el mismo ángulo.${size} No cuenta como cambio.`;
}

/** What the measuring error is taken from. */
const BETWEEN =
  ', 4,5 entre dos personas, entre Engstrand et al., Am J Occup Ther 2012;66:98, y Reissner et al., J Orthop Surg Res 2019;14:173 (resúmenes leídos); lo demás, práctica habitual, sin fuente';

/** The one thing to change, or what comes where no angle is left. */
function changeOne(
  { change, nextBlocks }: Pick<CourseFigures['PLATEAU'], 'change' | 'nextBlocks'>,
  speech?: PlanSpeech,
  head = 'Cambiar una cosa:',
): string {
  return change === null
    ? `El ángulo no puede avanzar 5 grados más. ${next(nextBlocks, speech)}`
    : `${head} ${change.what === 'mpAngle' ? 'el ángulo MCF de la férula' : 'la diferencia MCF'} de ${n(change.from)} a ${change.to[0] === change.to[1] ? n(change.to[0]) : `${n(change.to[0])} o ${n(change.to[1])}`} grados, a favor de la ${motions[change.toward]} de la IFP.`;
}

/** What each rule of the course says, in Spanish. */
export const spanishCourse: Translations<typeof englishCourse> = {
  action: {
    stop: 'Suspender',
    pause: 'Pausa',
    wean: 'Retirar poco a poco',
    refit: 'Reajustar',
    switch: 'Cambiar de dirección',
    teach: 'Preguntar y enseñar',
    change: 'Cambiar una cosa',
    keep: 'Mantener',
    refer: 'Derivar',
    review: 'Revisar',
    wait: 'Esperar',
  },
  urgency: { 'same-day': 'el mismo día', 'working-day': 'en un día laborable' },
  message: {
    STOP_NOW: ({ signs }) =>
      `Quitarla y no volver a ponerla. Cirugía o urgencias ve la mano el mismo día: ${list(signs.map(stopNowSign))}. Ponerla de nuevo solo cuando lo autoricen.`,
    STOP_RING: ({ signs }) =>
      `Quitarla y no volver a ponerla; la mano se sigue usando con suavidad. Llamar a cirugía en un día laborable: ${list(signs.map(stopRingSign))}.`,
    PAUSE: ({ causes, measureAgain }) =>
      `${measureAgain ? 'Primero medir ese movimiento dos veces más y anotar la media de las tres; hasta entonces no llevarla' : 'No llevarla'}, corregir la causa y mirar otra vez en 1 a 3 días: ${list(causes.map(pauseCause))}. Recuperado: empezar con la mitad de las horas. No recuperado: llamar a cirugía.`,
    RELAPSE: ({ motion, lost: by, hours, again }) =>
      again
        ? `Al retirarla se perdieron por segunda vez ${n(by)} grados de ${motions[motion]} de la IFP. Volver a las horas que bastaban${hours === null ? '' : ` (${n(hours)} al día)`} y derivar.`
        : `Al retirarla se perdieron ${n(by)} grados de ${motions[motion]} de la IFP respecto a lo mejor. Volver dos semanas a las últimas horas que bastaron${hours === null ? '' : ` (${n(hours)} al día)`}; después, una hora menos cada semana.`,
    WEAN: ({ hours }) =>
      `Lo ganado se mantiene. Dar el paso siguiente${hours === null ? '' : ` desde ${n(hours)} horas al día`}: una hora menos cada semana, y medir cada semana.`,
    GOAL: ({ extension, flexion, goal, plate }) =>
      `La meta se alcanzó en dos sesiones seguidas (faltan ${n(extension)} grados de extensión y ${n(flexion)} de flexión; meta ${n(goal)}). Empezar a retirarla: una hora menos cada semana, y medir cada semana.${plate ? ' Antes, comprobar que la MCF tiene todo su movimiento.' : ''}`,
    MP_STIFF: ({ lost: by, between: [from] }) =>
      `El movimiento pasivo de la MCF perdió ${n(by)} grados desde el ${from}. La mitad de las horas, mover la MCF en todo su recorrido cada hora, medir otra vez en una semana.`,
    FIT: fitSays,
    SWITCH: ({ other, otherDeficit, servedDeficit, why }) =>
      `A la ${motions[other]} de la IFP le faltan ${n(otherDeficit)} grados; al movimiento para el que se hizo le faltan ${n(servedDeficit)}${why === 'otherWorse' ? ', y el otro empeoró desde que se hizo' : ' en dos sesiones'}. Planificar de nuevo con las medidas de hoy.`,
    TEACH: ({ wear, agreed, times }) =>
      `Se lleva ${n(wear)} horas al día${agreed === null ? '' : ` de ${n(agreed)} acordadas`}. Preguntar qué lo impide; acordar menos horas que se puedan cumplir.${times >= 3 ? ' Es la tercera vez: hacer otra ortesis o derivar.' : ''}`,
    IDLE: ({ nextBlocks }, speech) => `No redirige el movimiento. ${next(nextBlocks, speech)} Cuenta como cambio.`,
    ENOUGH: ({ extension, flexion, days }) =>
      `Desde hace ${n(days)} días falta poco (${n(extension)} grados de extensión, ${n(flexion)} de flexión) y no se gana más. Preguntar al paciente: retirarla o seguir.`,
    GAINING: (slope) => `La ${motions[slope.motion]} de la IFP gana ${rate(slope)}. Dejarla como está.${goalBy(slope)}`,
    REFER: ({ slope, changes }) =>
      `La ${motions[slope.motion]} de la IFP se ha estancado (${rate(slope)}) tras ${changes} cambios con cuatro semanas cada uno. Escribir a quien derivó al paciente; no es urgente.`,
    PLATEAU: (figures, speech) =>
      `La ${motions[figures.slope.motion]} de la IFP se ha estancado: ${rate(figures.slope)} aunque se llevó. ${changeOne(figures, speech)}`,
    REVIEW: ({ days, slope }) =>
      `${n(days)} días desde que se hizo, y no es seguro en ningún sentido${slope === null ? '' : ` (${rate(slope)})`}. El/la terapeuta la mantiene o la cambia.`,
    WAIT: ({ nextBy }) =>
      `Aún faltan mediciones para decir más. Próxima sesión ${nextBy === null ? 'en dos semanas como mucho' : `a más tardar el ${nextBy}`}.`,
  },
  harm,
  crpsSign,
  reminder: {
    HARM_NOT_NOTED: ({ missing }) =>
      `No anotado en esta sesión: ${list(missing.map((key) => harm[key]))}. Preguntar y mirar antes de seguir esto.`,
    MEASURE_AGAIN: (found) =>
      found.why === 'making'
        ? 'El movimiento de la IFP se midió una vez, y con esta sesión se compara cada una de las siguientes: medirlo dos veces más y anotar la media de las tres.'
        : `A la ${motions[found.gain.motion]} activa de la IFP le faltan ${n(found.gain.after)} grados y el ${found.gain.between[0]} le faltaban ${n(found.gain.before)}. Una sola medición puede salir tanto mejor por azar: medirlo dos veces más y anotar la media de las tres.`,
    WEAR_NOT_NOTED: () => 'Las horas de uso no están anotadas: preguntar.',
    AFTER_PAUSE: ({ on }) => `Tras la pausa del ${on}: recuperado significa, al principio, la mitad de las horas.`,
    AFTER_STOP: ({ on }) => `El ${on} se aconsejó suspender: no se vuelve a poner nada sin la autorización de quien exploró la mano.`,
    MP_NOT_MEASURED: () =>
      'El movimiento pasivo de la MCF no está anotado: medirlo, porque esta férula puede volver rígida esa articulación.',
    DEVICE_NOT_NOTED: () => 'No está anotado qué se hizo; de su ángulo no se puede decir nada.',
  },
  source: {
    noSource: 'práctica habitual, sin fuente',
    crps: 'dolor de 5 o más poco después de una fractura de muñeca: Moseley et al., J Pain 2014;15:16 (resumen leído); lo demás, práctica habitual, sin fuente',
    measuring: `error de medición: 1,96 x raíz de 2 x 3,5 grados${BETWEEN}`,
    slope: `mínimos cuadrados; error de medición de 3,5 grados por lectura${BETWEEN}`,
  },
  afterHarm: 'solo cuando eso haya cedido',
  beside: {
    gaining: 'Mejora',
    GAINING: (slope) => `La ${motions[slope.motion]} de la IFP gana ${rate(slope)}; lo de arriba va primero.`,
    slow: 'Lento',
    PLATEAU: (figures, speech) =>
      `Menos de 1 grado por semana (${rate(figures.slope)}). Preguntar al paciente si le basta. ${changeOne(figures, speech, 'Si no le basta, cambiar una cosa:')}`,
    REFER: ({ slope, changes }) =>
      `Menos de 1 grado por semana (${rate(slope)}) tras ${changes} cambios con cuatro semanas cada uno. Si no le basta al paciente, escribir a quien lo derivó; no es urgente.`,
    PAUSE: ({ causes }) => `${capital(list(causes.map(pauseCause)))}. No llevarla.`,
  },
  starting: 'Un punto de partida; decide el/la terapeuta.',
};
