import type { Ask, Motion } from '../../../block/plan-notes.ts';
import type { DigitName } from '../../../hand/digits.ts';
import type { StopSign } from '../../../hand/signs.ts';
import { plain } from '../../../units/number.ts';
import { handSpanish } from '../../hand-words.ts';
import type { PlanWords } from './plan-words.ts';

const d = (value: number, decimals = 1) => plain(value, decimals).replace('.', ',');
const degrees = (value: number) => `${d(value)} ${d(value) === '1' ? 'grado' : 'grados'}`;
const inTen = (chance: number) => `en ${d(chance * 10, 0)} de cada 10 casos`;
const FINGER = handSpanish.short;
const finger = (digit: DigitName) => `dedo ${FINGER[digit]}`;
const list = (digits: readonly DigitName[]) => digits.map((digit) => FINGER[digit]).join(' y ');
const MOTION: Readonly<Record<Motion, string>> = { extension: 'extensión IFP', flexion: 'flexión IFP' };
const { place: PLACE, placeOfTwo: PLACE_OF_TWO } = handSpanish;
const WAY = { pipFlexion: 'extendida', pipExtension: 'flexionada' } as const;

const SIGN: Readonly<Record<StopSign, string>> = {
  paleBlueOrCold: 'El dedo está pálido, azul o frío',
  infection: 'Hay signos de infección',
  newNumbness: 'El adormecimiento es nuevo desde la última exploración de la lesión',
  newActiveLoss: 'Hay una pérdida nueva de movimiento activo y se conserva el pasivo',
  unstableJoint: 'Una articulación está inestable o tiene una deformidad nueva',
  suspectedCrps: 'Se sospecha un síndrome de dolor regional complejo',
  openWound: 'Hay una herida abierta',
  pins: 'Hay agujas o alambres puestos',
  inflamedJoint: 'Una articulación tiene una inflamación aguda',
};
const ASK: Readonly<Record<Ask, string>> = {
  surgeonSameDay: 'Retire lo que se lleve y consulte con cirugía o urgencias el mismo día.',
  surgeonWorkingDay: 'Retire lo que se lleve y consulte con cirugía en un día laborable; el uso suave de la mano sigue.',
  surgeonBefore: 'Consulte con cirugía antes de hacer nada; su palabra levanta esta señal.',
  referrer: 'Consulte con quien derivó antes de hacer nada.',
};
const ALTERNATIVES = 'yesos seriados, una ortesis de estiramiento o volver a quien derivó';

/** The sentences of the plan in Spanish. */
export const spanish: PlanWords = {
  ask: ASK,
  note: {
    STOP_SIGN: ({ sign, ask }) =>
      `${SIGN[sign]}, así que no se sugiere nada. ${ASK[ask]}${ask === 'surgeonBefore' ? ' Anótela como surgeonAgrees.' : ''}`,
    UNPROTECTED_REPAIR: () =>
      'Una reparación o fractura no está protegida: moverla fuera del protocolo de cirugía puede romperla. Consulte con cirugía. Si ha explorado la mano y lo asume dentro del protocolo, confírmelo (--clinician-confirms).',
    HARD_END_FEEL: () =>
      'La IFP tiene una sensación final dura: redirigir el movimiento activo no mueve una articulación así. Consulte con quien derivó. Si ha explorado la mano y lo asume, confírmelo (--clinician-confirms).',
    CENTRAL_SLIP: ({ active, passive, weeks }) =>
      `Al dedo le faltan ${degrees(active)} para la extensión completa por sí solo y ${d(passive)} con ayuda, ${weeks === null ? 'y no se sabe el tiempo desde la lesión' : `${d(weeks)} semanas después de la lesión`}: la bandeleta central puede estar rota. Explórela primero y consulte con cirugía; anote el resultado (centralSlip), las semanas o la palabra de cirugía (surgeonAgrees).`,
    CENTRAL_SLIP_TORN: () => 'La bandeleta central está rota: consulte con cirugía antes de hacer nada y anote su palabra (surgeonAgrees).',
    BOUTONNIERE_EARLY: ({ weeks }) =>
      `Una deformidad en ojal ${weeks === null ? 'de antigüedad desconocida' : `de ${d(weeks)} semanas`} se trata según el protocolo de cirugía: consulte primero y anote las semanas o la palabra de cirugía (surgeonAgrees).`,
    BOUTONNIERE_CAST: ({ passive }) =>
      `A una deformidad en ojal crónica le faltan ${degrees(passive)} con ayuda: primero yeso; a 20 grados o menos puede seguir una tira. Consulte con cirugía o con quien derivó.`,
    BOUTONNIERE_MEASURE: () =>
      'En una deformidad en ojal crónica se mide primero la extensión pasiva: si faltan 20 grados o menos puede seguir una tira; si no, primero yeso.',
    BEYOND_STRAIGHT: ({ beyond, other }) =>
      `La IFP pasa ${degrees(beyond)} de la extensión completa, ${other === null ? 'y la otra mano no se midió' : `la de la otra mano ${d(other)}`}: ninguna tira para la extensión y ninguna férula de más de 45 grados. Consulte con quien derivó.`,
    NOTHING_LACKS: ({ extension, flexion }) =>
      `A la extensión le faltan ${degrees(extension)} y a la flexión ${d(flexion)}, menos de 10 cada una: no hay nada que hacer.`,
    SLIGHT: ({ motion, deficit }) =>
      `A la ${MOTION[motion]} le faltan ${degrees(deficit)}, que es poco: ejercicio; un dispositivo solo si se pide (--anyway).`,
    ANYWAY: ({ motion, deficit }) => `A la ${MOTION[motion]} solo le faltan ${degrees(deficit)}; se planea porque se pidió.`,
    PLATE_FIRST: ({ smaller, larger }) =>
      `Faltan los dos movimientos, y el déficit menor (${d(smaller)}) es al menos un tercio del mayor (${d(larger)}): primero una férula, después una tira para el mayor. Se hace una cosa cada vez.`,
    STRIP_FIRST: ({ smaller, larger }) =>
      `Faltan los dos movimientos, pero el déficit menor (${d(smaller)}) es menos de un tercio del mayor (${d(larger)}): primero una tira para el mayor, después una férula. Se hace una cosa cada vez.`,
    MEASURE_AGAIN: ({ motion, deficit, chance }) =>
      `Con una lectura de ${degrees(deficit)}, ${inTen(chance)} a la ${MOTION[motion]} le faltan de verdad 10 o más (solo por el error de medida). Mídala dos veces más y anote la media de las tres.`,
    STILL_UNSURE: ({ motion, deficit, chance, readings }) =>
      `Tampoco la media de ${readings} medidas, ${degrees(deficit)}, lo aclara: ${inTen(chance)} a la ${MOTION[motion]} le faltan de verdad 10 o más. Se muestran los dos planes, usted decide.`,
    PASSIVE_ALIKE: ({ motion, active, passive }) =>
      `A la ${MOTION[motion]} le faltan ${degrees(active)} en activo y ${d(passive)} en pasivo: la articulación está rígida, y redirigir el movimiento activo quizá gane poco. Valore primero ${ALTERNATIVES}.`,
    LARGE_DEFICIT: ({ motion, deficit }) =>
      `A la ${MOTION[motion]} le faltan ${degrees(deficit)}, mucho para solo ejercicio. Valore primero ${ALTERNATIVES}.`,
    MEASURE_PASSIVE: ({ motion }) =>
      `Mida la ${MOTION[motion]} pasiva: distingue una articulación rígida de un tendón débil o roto${motion === 'extension' ? '. Poco después de una lesión, un movimiento pasivo libre con 20 grados o más de retraso activo pide primero la prueba de la bandeleta central' : ''}.`,
    MEASURE_MP: () => 'Mida el movimiento pasivo de la MCF: el ángulo de la férula debe quedar dentro.',
    PLATE_ANGLE: ({ extension, flexion, degrees: angle }) =>
      `A la extensión le faltan ${degrees(extension)} y a la flexión ${d(flexion)}: según su proporción, la MCF se mantiene a ${degrees(angle)} de flexión. Más facilita la extensión IFP, menos la flexión IFP.`,
    PLATE_MOVED: ({ wanted, degrees: angle, from, to }) =>
      `Los déficits piden ${degrees(wanted)}; la articulación y su movimiento permiten de ${d(from)} a ${d(to)}, así que se planea a ${d(angle)}.`,
    NO_PLATE: ({ extension, flexion, from, to }) =>
      `Ninguna férula favorece aquí ${extension > flexion ? 'la extensión' : flexion > extension ? 'la flexión' : 'a las dos por igual'}: eso pide ${extension > flexion ? 'de 45 a 90' : flexion > extension ? 'de 0 a 45' : '45'} grados de flexión MCF, y la MCF puede mantenerse de ${d(from)} a ${d(to)}.`,
    PLATE_NEXT: () =>
      'Si la extensión IFP se queda atrás, pruebe 5 a 10 grados más de flexión MCF; si es la flexión IFP, 5 a 10 menos, dentro del movimiento pasivo de la MCF.',
    PLATE_HOURS: () =>
      'Acuerde las horas y anótelas; nunca todo el día. Mueva la MCF en todo su recorrido cada vez que se quite la férula.',
    STRIP_WEAR: () =>
      'Cuatro de cada cinco terapeutas encuestados usan una tira así de 2 a 6 semanas, en el ejercicio y la función. Cuántas horas al día no se sabe para este tipo; de otros, para la extensión IFP, una revisión vio la mayor ganancia desde 6. Acuerde las horas y anótelas.',
    FLEXION_AGAINST: ({ degrees: expected, from }) =>
      from === 'otherHand'
        ? `La flexión se compara con la otra mano, ${degrees(expected)}.`
        : `La flexión se compara con ${degrees(expected)}, porque la otra mano no se midió.`,
    SENSATION: () =>
      'Sensibilidad reducida: no se notan el calor ni la presión. Deje enfriar más el plástico, pruébelo en su piel, mire la piel pronto y a menudo.',
    SWELLING: () =>
      'El edema cambiante cambia el ajuste. Mida cuando esté como siempre, otra vez antes de hacerla y en cada sesión; ajuste con holgura.',
    HYPERMOBILE: ({ digits }) =>
      `Articulación MCF o CMC hipermóvil (${list(digits)}): vigile la rotación, y que la MCF de un dedo elevado no pase de la extensión completa.`,
    CHILD: () =>
      'Una mano infantil: las piezas pequeñas se pueden tragar y el calor quema antes. Úsese solo con supervisión, y mida de nuevo al crecer la mano.',
    NO_NEIGHBOUR: ({ digit }) =>
      `Al ${finger(digit)} le falta un vecino en un lado: queda en el borde de tres dedos y su rotación no se controla. Vigílela.`,
    NO_BLOCK_LEFT: ({ digit, absent }) =>
      `Ninguna tira rodea el ${finger(digit)} sin ${absent.length > 1 ? 'los dedos' : 'el dedo'} ${list(absent)}: necesita tres dedos vecinos. Consulte con quien derivó sobre otro dispositivo.`,
    EVIDENCE: ({ motion }) =>
      motion === 'extension'
        ? 'La evidencia es escasa: otras ortesis ayudaron a la extensión IFP tras un traumatismo en ensayos; de este tipo hay una serie de casos. Decide quien trata.'
        : 'La evidencia es escasa: no se halló ningún ensayo de ninguna ortesis para la flexión IFP; de este tipo hay una serie de casos. Decide quien trata.',
  },
  reason: {
    ROTATION_FOUR: () => 'Cuatro dedos controlan la rotación.',
    ROTATION_HYPERMOBILE: () =>
      'El meñique hipermóvil es el borde de tres dedos: su rotación no se controla, así que va después de toda configuración de cuatro.',
    ROTATION_BORDER: ({ digit }) => `Tres dedos no controlan la rotación del ${finger(digit)} en su borde; lo habitual son cuatro.`,
    ROTATION_BOTH_SIDES: ({ digit }) => `Un dedo a cada lado impide que el ${finger(digit)} gire.`,
    HOLD_OWN: ({ digit, place, need, degrees: angle }) =>
      `El ${finger(digit)} mismo está ${PLACE[place]}: su MCF queda ${WAY[need]} ${degrees(angle)} respecto a los otros dedos.`,
    HOLD_OTHERS: ({ digit, held, place, need, degrees: angle }) =>
      `${held.length > 1 ? `Los dedos ${list(held)} están ${PLACE_OF_TWO[place]}` : `El dedo ${list(held)} está ${PLACE[place]}`}: la MCF del ${finger(digit)} queda ${WAY[need]} ${degrees(angle)} respecto a los otros dedos.`,
    NEIGHBOURS: ({ degrees: angle }) => `Respecto a los dedos de al lado el ángulo es de ${degrees(angle)}.`,
    NEIGHBOURS_NONE: ({ digit }) => `El dedo junto al ${finger(digit)} no está sujeto, así que entre los dos no hay ángulo.`,
    FREE_ALL: () => 'Ningún dedo lleva plástico en su lado palmar.',
    FREE: ({ digit, degrees: angle }) => `La flexión IFP queda libre: ${d(angle, 0)} grados o más (la menor, en el ${finger(digit)}).`,
    FREE_STOPPED: ({ digit, degrees: angle, least }) =>
      `La tira puede parar la flexión IFP del ${finger(digit)} en ${d(angle, 0)} grados, por debajo de ${d(least, 0)}.`,
    LENGTH_SHORTEST: ({ mm }) => `La tira mide ${d(mm)} mm, la más corta de estas.`,
    LENGTH_MORE: ({ mm, more }) => `La tira mide ${d(mm)} mm, ${d(more)} mm más que la más corta.`,
    LAYERS: ({ count }) => `${count} capas de plástico en la palma, sumadas por dedos.`,
  },
  next: {
    differential: ({ to }) => `una diferencia MCF de ${degrees(to)}`,
    block: ({ block }, { blockName }) => blockName(block),
    plate: ({ degrees: angle }) => `una férula a ${degrees(angle)}`,
    refer: () => 'medir de nuevo y hablarlo con quien derivó',
  },
  ifNot: (steps) => `Si no redirige: primero ${steps.join(', después ')}.`,
};
