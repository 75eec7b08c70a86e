import type { Ask, Motion } from '../../../block/plan-notes.ts';
import type { DigitName } from '../../../hand/digits.ts';
import type { StopSign } from '../../../hand/signs.ts';
import { plain } from '../../../units/number.ts';
import { handGerman } from '../../hand-words.ts';
import type { PlanWords } from './plan-words.ts';

const d = (value: number, decimals = 1) => plain(value, decimals).replace('.', ',');
const degrees = (value: number) => `${d(value)} Grad`;
const inTen = (chance: number) => `in ${d(chance * 10, 0)} von 10 Fällen`;
const FINGER = handGerman.finger;
const list = (digits: readonly DigitName[]) => digits.map((digit) => FINGER[digit]).join(' und ');
const MOTION: Readonly<Record<Motion, string>> = { extension: 'PIP-Streckung', flexion: 'PIP-Beugung' };
const PLACE = handGerman.place;
const WAY = { pipFlexion: 'gestreckt', pipExtension: 'gebeugt' } as const;

const SIGN: Readonly<Record<StopSign, string>> = {
  paleBlueOrCold: 'Der Finger ist blass, blau oder kalt',
  infection: 'Es gibt Zeichen einer Infektion',
  newNumbness: 'Taubheit ist neu, seit die Verletzung zuletzt untersucht wurde',
  newActiveLoss: 'Aktive Bewegung ist neu verloren, die passive ist erhalten',
  unstableJoint: 'Ein Gelenk ist instabil oder hat eine neue Fehlstellung',
  suspectedCrps: 'Ein komplexes regionales Schmerzsyndrom wird vermutet',
  openWound: 'Es gibt eine offene Wunde',
  pins: 'Drähte oder Stifte liegen noch',
  inflamedJoint: 'Ein Gelenk ist akut entzündet',
};
const ASK: Readonly<Record<Ask, string>> = {
  surgeonSameDay: 'Abnehmen, was getragen wird, und am selben Tag ärztliche Rücksprache mit der Handchirurgie oder der Notaufnahme.',
  surgeonWorkingDay:
    'Abnehmen, was getragen wird, und innerhalb eines Werktags ärztliche Rücksprache mit der Handchirurgie; die Hand wird sanft weiter benutzt.',
  surgeonBefore: 'Vor dem Anfertigen ärztliche Rücksprache mit der Handchirurgie; ihr Wort hebt das auf.',
  referrer: 'Vor dem Anfertigen ärztliche Rücksprache mit der zuweisenden Praxis.',
};
const ALTERNATIVES = 'Seriengips, eine Quengelschiene oder zurück an die Zuweisenden';

/** The sentences of the plan in German. */
export const german: PlanWords = {
  ask: ASK,
  note: {
    STOP_SIGN: ({ sign, ask }) =>
      `${SIGN[sign]}, darum wird nichts vorgeschlagen. ${ASK[ask]}${ask === 'surgeonBefore' ? ' Einzutragen als surgeonAgrees.' : ''}`,
    UNPROTECTED_REPAIR: () =>
      'Eine Naht oder ein Bruch ist nicht geschützt: Bewegung außerhalb des Nachbehandlungsschemas kann sie sprengen. Ärztliche Rücksprache. Wer die Hand untersucht hat und es im Schema verantwortet, bestätigt es (--clinician-confirms).',
    HARD_END_FEEL: () =>
      'Das PIP-Gelenk hat ein hartes Endgefühl: Umgelenkte aktive Bewegung bewegt einen solchen Anschlag nicht. Ärztliche Rücksprache. Wer die Hand untersucht hat und es verantwortet, bestätigt es (--clinician-confirms).',
    CENTRAL_SLIP: ({ active, passive, weeks }) =>
      `Dem Finger fehlen aktiv ${degrees(active)} zur Geraden, passiv ${d(passive)}, ${weeks === null ? 'und die Zeit seit der Verletzung ist nicht bekannt' : `${d(weeks)} Wochen nach der Verletzung`}: Der Mittelzügel kann gerissen sein. Zuerst prüfen und ärztliche Rücksprache; das Ergebnis (centralSlip), die Wochen oder das ärztliche Wort (surgeonAgrees) eintragen.`,
    CENTRAL_SLIP_TORN: () =>
      'Der Mittelzügel ist gerissen: vor dem Anfertigen ärztliche Rücksprache; das ärztliche Wort eintragen (surgeonAgrees).',
    BOUTONNIERE_EARLY: ({ weeks }) =>
      `Eine Knopflochdeformität ${weeks === null ? 'unbekannten Alters' : `von ${d(weeks)} Wochen`} wird nach dem Nachbehandlungsschema behandelt: zuerst ärztliche Rücksprache; die Wochen oder das ärztliche Wort eintragen (surgeonAgrees).`,
    BOUTONNIERE_CAST: ({ passive }) =>
      `Einer alten Knopflochdeformität fehlen passiv ${degrees(passive)} zur Geraden: zuerst Gips, ab 20 Grad kann ein Streifen folgen. Ärztliche Rücksprache.`,
    BOUTONNIERE_MEASURE: () =>
      'Bei einer alten Knopflochdeformität wird zuerst die passive Streckung gemessen: Fehlen höchstens 20 Grad, kann ein Streifen folgen, sonst zuerst Gips.',
    BEYOND_STRAIGHT: ({ beyond, other }) =>
      `Das PIP-Gelenk hat ${degrees(beyond)} Überstreckung, ${other === null ? 'und die andere Hand ist nicht gemessen' : `das der anderen Hand ${d(other)}`}: kein Streifen für die Streckung und keine Handschiene über 45 Grad. Ärztliche Rücksprache.`,
    NOTHING_LACKS: ({ extension, flexion }) =>
      `Der Streckung fehlen ${degrees(extension)}, der Beugung ${d(flexion)}, beide unter 10: Es gibt nichts anzufertigen.`,
    SLIGHT: ({ motion, deficit }) =>
      `Der ${MOTION[motion]} fehlen ${degrees(deficit)}, das ist wenig: üben; eine Schiene nur auf Wunsch (--anyway).`,
    ANYWAY: ({ motion, deficit }) => `Der ${MOTION[motion]} fehlen nur ${degrees(deficit)}; geplant wird, weil es gewünscht ist.`,
    PLATE_FIRST: ({ smaller, larger }) =>
      `Beide Bewegungen fehlen, und das kleinere Defizit (${d(smaller)}) ist mindestens ein Drittel des größeren (${d(larger)}): zuerst eine Handschiene, danach ein Streifen für das größere. Angefertigt wird eins nach dem anderen.`,
    STRIP_FIRST: ({ smaller, larger }) =>
      `Beide Bewegungen fehlen, aber das kleinere Defizit (${d(smaller)}) ist unter einem Drittel des größeren (${d(larger)}): zuerst ein Streifen für das größere, danach eine Handschiene. Angefertigt wird eins nach dem anderen.`,
    MEASURE_AGAIN: ({ motion, deficit, chance }) =>
      `Bei einem Messwert von ${degrees(deficit)} fehlen der ${MOTION[motion]} ${inTen(chance)} wirklich 10 oder mehr (allein nach dem Messfehler). Noch zweimal messen und das Mittel der drei eintragen.`,
    STILL_UNSURE: ({ motion, deficit, chance, readings }) =>
      `Auch das Mittel aus ${readings} Messungen, ${degrees(deficit)}, lässt es offen: Der ${MOTION[motion]} fehlen ${inTen(chance)} wirklich 10 oder mehr. Beide Pläne stehen da, Sie entscheiden.`,
    PASSIVE_ALIKE: ({ motion, active, passive }) =>
      `Der ${MOTION[motion]} fehlen aktiv ${degrees(active)} und passiv ${d(passive)}: Das Gelenk ist steif, umgelenkte aktive Bewegung bringt vielleicht wenig. Zuerst abwägen: ${ALTERNATIVES}.`,
    LARGE_DEFICIT: ({ motion, deficit }) =>
      `Der ${MOTION[motion]} fehlen ${degrees(deficit)}, viel für Üben allein. Zuerst abwägen: ${ALTERNATIVES}.`,
    MEASURE_PASSIVE: ({ motion }) =>
      `Die passive ${MOTION[motion]} messen: Sie unterscheidet ein steifes Gelenk von einer schwachen oder gerissenen Sehne${motion === 'extension' ? '. Früh nach einer Verletzung verlangt freie passive Streckung mit 20 Grad oder mehr Streckrückstand zuerst die Prüfung des Mittelzügels' : ''}.`,
    MEASURE_MP: () => 'Die passive Bewegung des MP-Gelenks messen: Der Winkel der Handschiene muss darin liegen.',
    PLATE_ANGLE: ({ extension, flexion, degrees: angle }) =>
      `Der Streckung fehlen ${degrees(extension)}, der Beugung ${d(flexion)}: Nach ihren Anteilen wird das MP-Gelenk in ${degrees(angle)} Beugung gehalten. Mehr erleichtert die PIP-Streckung, weniger die PIP-Beugung.`,
    PLATE_MOVED: ({ wanted, degrees: angle, from, to }) =>
      `Die Defizite verlangen ${degrees(wanted)}; das Gelenk und seine Beweglichkeit erlauben ${d(from)} bis ${d(to)}, geplant sind darum ${d(angle)}.`,
    NO_PLATE: ({ extension, flexion, from, to }) =>
      `Keine Handschiene begünstigt hier ${extension > flexion ? 'die Streckung' : flexion > extension ? 'die Beugung' : 'beide gleich'}: Das verlangt ${extension > flexion ? '45 bis 90' : flexion > extension ? '0 bis 45' : '45'} Grad MP-Beugung, halten lässt sich das MP-Gelenk in ${d(from)} bis ${d(to)}.`,
    PLATE_NEXT: () =>
      'Bleibt die PIP-Streckung zurück, 5 bis 10 Grad mehr MP-Beugung versuchen; bleibt die PIP-Beugung zurück, 5 bis 10 weniger, innerhalb der passiven MP-Bewegung.',
    PLATE_HOURS: () =>
      'Stunden vereinbaren und aufschreiben, nie den ganzen Tag. Bei jedem Abnehmen das MP-Gelenk durch seine ganze Bewegung führen.',
    STRIP_WEAR: () =>
      'Vier von fünf Befragten verwenden einen solchen Streifen 2 bis 6 Wochen lang, beim Üben und im Alltag. Wie viele Stunden am Tag, ist für diese Art nicht bekannt; von anderen sah eine Übersicht für die PIP-Streckung ab 6 am meisten Gewinn. Die Stunden vereinbaren und aufschreiben.',
    FLEXION_AGAINST: ({ degrees: expected, from }) =>
      from === 'otherHand'
        ? `Die Beugung wird an der anderen Hand gemessen, ${degrees(expected)}.`
        : `Die Beugung wird an ${degrees(expected)} gemessen, da die andere Hand nicht bekannt ist.`,
    SENSATION: () =>
      'Vermindertes Gefühl: Wärme und Druck werden nicht gespürt. Kunststoff länger abkühlen lassen, auf der eigenen Haut prüfen, die Haut früh und oft ansehen.',
    SWELLING: () =>
      'Wechselnde Schwellung verändert den Sitz. Messen, wenn sie wie üblich ist, noch einmal vor dem Anfertigen und bei jedem Termin; locker anpassen.',
    HYPERMOBILE: ({ digits }) =>
      `Hypermobiles MP- oder CMC-Gelenk (${list(digits)}): auf Drehung achten, und dass das MP-Gelenk eines angehobenen Fingers nicht über die Gerade geht.`,
    CHILD: () =>
      'Eine Kinderhand: Kleine Teile können verschluckt werden, Wärme verbrennt früher. Nur unter Aufsicht tragen, und neu messen, wenn die Hand wächst.',
    NO_NEIGHBOUR: ({ digit }) =>
      `Dem ${FINGER[digit]} fehlt auf einer Seite der Nachbar: Er liegt am Rand von drei Fingern, seine Drehung ist nicht geführt. Darauf achten.`,
    NO_BLOCK_LEFT: ({ digit, absent }) =>
      `Ohne ${list(absent)} führt kein Streifen um den ${FINGER[digit]}: Er braucht drei benachbarte Finger. Mit den Zuweisenden über ein anderes Hilfsmittel sprechen.`,
    EVIDENCE: ({ motion }) =>
      motion === 'extension'
        ? 'Die Belege sind dünn: Andere Schienen halfen in Studien der PIP-Streckung nach Verletzung; für diese Art gibt es eine Fallserie. Entschieden wird in der Behandlung.'
        : 'Die Belege sind dünn: Für die PIP-Beugung fand sich keine Studie mit irgendeiner Schiene; für diese Art gibt es eine Fallserie. Entschieden wird in der Behandlung.',
  },
  reason: {
    ROTATION_FOUR: () => 'Vier Finger führen die Drehung.',
    ROTATION_HYPERMOBILE: () =>
      'Der hypermobile Kleinfinger liegt am Rand von drei Fingern: Seine Drehung ist nicht geführt, darum kommt dies nach allen Varianten mit vier.',
    ROTATION_BORDER: ({ digit }) => `Drei Finger führen die Drehung des ${FINGER[digit]}s an ihrem Rand nicht; vier sind die übliche Wahl.`,
    ROTATION_BOTH_SIDES: ({ digit }) => `Ein Finger auf jeder Seite hält den ${FINGER[digit]} vom Drehen ab.`,
    HOLD_OWN: ({ digit, place, need, degrees: angle }) =>
      `Der ${FINGER[digit]} selbst ist ${PLACE[place]}: Sein MP-Gelenk ist gegen die anderen Finger um ${degrees(angle)} ${WAY[need]}.`,
    HOLD_OTHERS: ({ digit, held, place, need, degrees: angle }) =>
      `${list(held)} ${held.length > 1 ? 'sind' : 'ist'} ${PLACE[place]}: Das MP-Gelenk des ${FINGER[digit]}s ist gegen die anderen Finger um ${degrees(angle)} ${WAY[need]}.`,
    NEIGHBOURS: ({ degrees: angle }) => `Gegen die Finger daneben sind es ${degrees(angle)}.`,
    NEIGHBOURS_NONE: ({ digit }) => `Der Finger neben dem ${FINGER[digit]} ist nicht gehalten, zwischen beiden gibt es keinen Winkel.`,
    FREE_ALL: () => 'Kein Finger hat Kunststoff auf der Hohlhandseite.',
    FREE: ({ digit, degrees: angle }) => `Die PIP-Beugung bleibt frei: ${d(angle, 0)} Grad oder mehr (am wenigsten am ${FINGER[digit]}).`,
    FREE_STOPPED: ({ digit, degrees: angle, least }) =>
      `Der Streifen kann die PIP-Beugung am ${FINGER[digit]} bei ${d(angle, 0)} Grad anhalten, unter ${d(least, 0)}.`,
    LENGTH_SHORTEST: ({ mm }) => `Der Streifen ist ${d(mm)} mm lang, der kürzeste von diesen.`,
    LENGTH_MORE: ({ mm, more }) => `Der Streifen ist ${d(mm)} mm lang, ${d(more)} mm mehr als der kürzeste.`,
    LAYERS: ({ count }) => `${count} Lagen Kunststoff in der Hohlhand, über die Finger gezählt.`,
  },
  next: {
    differential: ({ to }) => `eine MP-Differenz von ${degrees(to)}`,
    block: ({ block }, { blockName }) => blockName(block),
    plate: ({ degrees: angle }) => `eine Handschiene mit ${degrees(angle)}`,
    refer: () => 'neu messen und mit den Zuweisenden besprechen',
  },
  ifNot: (steps) => `Lenkt es nicht um: zuerst ${steps.join(', dann ')}.`,
};
