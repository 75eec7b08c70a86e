import type { NextArrangement } from '../../../block/next-arrangement.ts';
import { plain } from '../../../units/number.ts';
import { capital } from '../../hand-words.ts';
import type { Translations } from '../../language.ts';
import type { PlanSpeech } from '../plan/plan-words.ts';
import { sayStep } from '../plan/say-plan.ts';
import type { CourseFigures, Loss, PauseCause, Slope, StopNowSign, StopRingSign } from './course-figures.ts';
import type { englishCourse } from './english.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`);
const motions = { flexion: 'Beugung', extension: 'Streckung' } as const;
const since = (noted: string | null) => (noted === null ? '' : ` (notiert am ${noted}, seither nicht nachgesehen)`);
const crpsSign = {
  swelling: 'Schwellung',
  colourOrWarmth: 'Farbe oder Wärme',
  sweating: 'Schwitzen',
  touchHurts: 'Berührung schmerzt',
  otherJointsStiffen: 'andere Gelenke versteifen',
};

const harm = {
  pain: 'Schmerz',
  skin: 'Haut',
  sensation: 'Gefühl',
  colour: 'Farbe und Wärme',
  infection: 'Zeichen einer Infektion',
  deformity: 'neue Fehlstellung',
  crpsSigns: 'Zeichen eines CRPS',
};

const lost = ({ motion, lost: by, before, after, between: [from] }: Loss) =>
  `der aktiven PIP-${motions[motion]} fehlen ${n(after)} Grad, am ${from} fehlten ${n(before)}: ${n(by)} Grad verloren`;
const rate = ({ degreesPerWeek, low, high }: Slope) => `${n(degreesPerWeek)} Grad pro Woche (${n(low)} bis ${n(high)})`;
const goalBy = ({ goalBy: by }: Slope) =>
  by === null ? '' : ` So ist das Ziel etwa am ${by.date} erreicht (${by.earliest} bis ${by.latest ?? 'später als in 12 Wochen'}).`;
const next = (steps: readonly NextArrangement[], speech?: PlanSpeech) =>
  steps.length === 0
    ? 'Neu planen und die nächste Variante nehmen.'
    : `Der Plan versucht als Nächstes: ${steps.map((step) => sayStep(step, 'de', speech)).join(', dann ')}.`;

function stopNowSign(found: StopNowSign): string {
  switch (found.sign) {
    case 'colour':
      return `Farbe oder Wärme ist verändert und bleibt es${since(found.noted)}`;
    case 'sensation':
      return `das Gefühl ist verändert und bleibt es${since(found.noted)}`;
    case 'infection':
      return `Zeichen einer Infektion${since(found.noted)}`;
    case 'deformity':
      return `eine neue Fehlstellung oder ein instabiles Gelenk${since(found.noted)}`;
    case 'activeLoss':
      return `${lost(found.loss)}, dreimal gemessen, bei erhaltener passiver Beweglichkeit`;
  }
}

function stopRingSign(found: StopRingSign): string {
  switch (found.sign) {
    case 'crps':
      return `Ruheschmerz ${n(found.pain)} von 10 mit ${list(found.signs.map((sign) => crpsSign[sign]))}: ein CRPS ist möglich`;
    case 'pain':
      return `Ruheschmerz ${n(found.pain)} von 10, beim Anfertigen ${found.atMaking === null ? 'nicht notiert' : n(found.atMaking)}`;
    case 'notRecovered':
      return `seit der Pause vom ${found.pausedOn} nicht erholt`;
    case 'mpLost':
      return `passive MP-Beweglichkeit seit ${found.between[0]} um ${n(found.lost)} Grad geringer`;
    case 'beyondStraight':
      return `das PIP-Gelenk ist nun ${n(found.degrees)} Grad überstreckbar${found.otherHand === null ? '' : ` (andere Hand ${n(found.otherHand)})`}`;
  }
}

function pauseCause(found: PauseCause): string {
  switch (found.cause) {
    case 'skin':
      return `die Haut ist verletzt${since(found.noted)}`;
    case 'sensation':
      return `das Gefühl veränderte sich beim Tragen${since(found.noted)}`;
    case 'colour':
      return `Farbe oder Wärme veränderte sich beim Tragen${since(found.noted)}`;
    case 'pain':
      return `der Schmerz stieg von ${n(found.before)} auf ${n(found.after)} von 10${since(found.noted)}`;
    case 'motion':
      return `${lost(found.loss)} (ab ${n(found.limit)} gilt es als wirklich)`;
    case 'bothMotions':
      return `beide Bewegungen sind schlechter als beim Anfertigen: ${lost(found.extension)}; ${lost(found.flexion)}`;
  }
}

function fitSays({ marks, loose, girth }: CourseFigures['FIT']): string {
  const found = [
    ...(marks ? ['Druckstellen bleiben länger als 20 Minuten'] : []),
    ...(loose ? ['sie passt nicht'] : []),
    ...(girth
      ? [
          `der ${girth.at === 'circumference' ? 'Umfang' : 'PIP-Umfang'} ging seit dem Anfertigen von ${n(girth.before)} auf ${n(girth.after)} mm (Grenze ${n(girth.limit)})`,
        ]
      : []),
  ];
  const size = girth === null ? '' : girth.after > girth.before ? ' Größer anfertigen.' : ' Enger anfertigen.';
  const text = list(found);
  return `${capital(text)}. Alle gehaltenen Finger neu messen, entlasten oder mit demselben Winkel neu anfertigen.${size} Das zählt nicht als Änderung.`;
}

/** What the measuring error is taken from. */
const BETWEEN =
  ', 4,5 bei zwei Messenden, zwischen Engstrand et al., Am J Occup Ther 2012;66:98, und Reissner et al., J Orthop Surg Res 2019;14:173 (Abstracts gelesen); das Übrige übliche Praxis, ohne Quelle';

/** The one thing to change, or what comes where no angle is left. */
function changeOne(
  { change, nextBlocks }: Pick<CourseFigures['PLATEAU'], 'change' | 'nextBlocks'>,
  speech?: PlanSpeech,
  head = 'Eines ändern:',
): string {
  return change === null
    ? `Der Winkel kann nicht 5 Grad weiter. ${next(nextBlocks, speech)}`
    : `${head} ${change.what === 'mpAngle' ? 'den MP-Winkel der Handschiene' : 'die MP-Differenz'} von ${n(change.from)} auf ${change.to[0] === change.to[1] ? n(change.to[0]) : `${n(change.to[0])} bis ${n(change.to[1])}`} Grad, zugunsten der PIP-${motions[change.toward]}.`;
}

/** What each rule of the course says, in German. */
export const germanCourse: Translations<typeof englishCourse> = {
  action: {
    stop: 'Stopp',
    pause: 'Pause',
    wean: 'Abtrainieren',
    refit: 'Anpassen',
    switch: 'Wechseln',
    teach: 'Fragen und anleiten',
    change: 'Eines ändern',
    keep: 'Beibehalten',
    refer: 'Ärztliche Rücksprache',
    review: 'Beurteilen',
    wait: 'Abwarten',
  },
  urgency: { 'same-day': 'am selben Tag', 'working-day': 'innerhalb eines Werktags' },
  message: {
    STOP_NOW: ({ signs }) =>
      `Abnehmen und nicht wieder anlegen. Noch am selben Tag zur Handchirurgie oder in die Notaufnahme: ${list(signs.map(stopNowSign))}. Erst wieder anlegen, wenn von dort die Erlaubnis kommt.`,
    STOP_RING: ({ signs }) =>
      `Abnehmen und nicht wieder anlegen; die Hand vorsichtig weiter gebrauchen. Innerhalb eines Werktags in der Handchirurgie anrufen: ${list(signs.map(stopRingSign))}.`,
    PAUSE: ({ causes, measureAgain }) =>
      `${measureAgain ? 'Diese Bewegung zuerst noch zweimal messen und das Mittel der drei notieren; bis dahin nicht anlegen' : 'Nicht anlegen'}, die Ursache beheben und in 1 bis 3 Tagen wieder nachsehen: ${list(causes.map(pauseCause))}. Erholt: mit der halben Tragezeit beginnen. Nicht erholt: in der Handchirurgie anrufen.`,
    RELAPSE: ({ motion, lost: by, hours, again }) =>
      again
        ? `Beim Abtrainieren gingen zum zweiten Mal ${n(by)} Grad PIP-${motions[motion]} verloren. Zurück zu den Stunden, die hielten${hours === null ? '' : ` (${n(hours)} am Tag)`}, und ärztliche Rücksprache.`
        : `Beim Abtrainieren gingen ${n(by)} Grad PIP-${motions[motion]} gegenüber dem Besten verloren. Zwei Wochen zurück zu den Stunden, die zuletzt hielten${hours === null ? '' : ` (${n(hours)} am Tag)`}, dann jede Woche eine Stunde weniger.`,
    WEAN: ({ hours }) =>
      `Das Gewonnene hält. Die nächste Stufe weniger${hours === null ? '' : ` als ${n(hours)} Stunden am Tag`}: jede Woche eine Stunde weniger, und jede Woche messen.`,
    GOAL: ({ extension, flexion, goal, plate }) =>
      `Das Ziel ist an zwei Terminen hintereinander erreicht (es fehlen ${n(extension)} Grad Streckung und ${n(flexion)} Grad Beugung; Ziel ${n(goal)}). Mit dem Abtrainieren beginnen: jede Woche eine Stunde weniger, und jede Woche messen.${plate ? ' Vorher prüfen, ob das MP-Gelenk frei beweglich ist.' : ''}`,
    MP_STIFF: ({ lost: by, between: [from] }) =>
      `Die passive MP-Beweglichkeit ist seit ${from} um ${n(by)} Grad geringer. Halbe Tragezeit, das MP-Gelenk stündlich durchbewegen, in einer Woche wieder messen.`,
    FIT: fitSays,
    SWITCH: ({ other, otherDeficit, servedDeficit, why }) =>
      `Der PIP-${motions[other]} fehlen ${n(otherDeficit)} Grad; der Bewegung, für die sie angefertigt wurde, fehlen ${n(servedDeficit)}${why === 'otherWorse' ? ', und die andere wurde seit dem Anfertigen schlechter' : ' an zwei Terminen'}. Mit den heutigen Maßen neu planen.`,
    TEACH: ({ wear, agreed, times }) =>
      `Getragen ${n(wear)} Stunden am Tag${agreed === null ? '' : ` von ${n(agreed)} vereinbarten`}. Fragen, was hindert; weniger Stunden vereinbaren, die einzuhalten sind.${times >= 3 ? ' Das ist das dritte Mal: etwas anderes anfertigen oder ärztliche Rücksprache.' : ''}`,
    IDLE: ({ nextBlocks }, speech) => `Sie lenkt die Bewegung nicht um. ${next(nextBlocks, speech)} Das zählt als Änderung.`,
    ENOUGH: ({ extension, flexion, days }) =>
      `Seit ${n(days)} Tagen fehlt wenig (${n(extension)} Grad Streckung, ${n(flexion)} Grad Beugung), und es kommt nichts mehr dazu. Den Patienten oder die Patientin fragen: abtrainieren oder weitermachen.`,
    GAINING: (slope) => `Die PIP-${motions[slope.motion]} gewinnt ${rate(slope)}. So lassen.${goalBy(slope)}`,
    REFER: ({ slope, changes }) =>
      `Die PIP-${motions[slope.motion]} steht (${rate(slope)}) nach ${changes} Änderungen, denen je vier Wochen gegeben wurden. Der überweisenden Stelle schreiben; nicht dringend.`,
    PLATEAU: (figures, speech) =>
      `Die PIP-${motions[figures.slope.motion]} steht: ${rate(figures.slope)}, obwohl getragen wurde. ${changeOne(figures, speech)}`,
    REVIEW: ({ days, slope }) =>
      `${n(days)} Tage seit dem Anfertigen, und es ist nach keiner Seite sicher${slope === null ? '' : ` (${rate(slope)})`}. Die behandelnde Person behält bei oder ändert.`,
    WAIT: ({ nextBy }) =>
      `Noch zu wenige Messungen, um mehr zu sagen. Nächster Termin ${nextBy === null ? 'innerhalb von zwei Wochen' : `bis ${nextBy}`}.`,
  },
  harm,
  crpsSign,
  reminder: {
    HARM_NOT_NOTED: ({ missing }) =>
      `An diesem Termin nicht notiert: ${list(missing.map((key) => harm[key]))}. Fragen und nachsehen, bevor man dem hier folgt.`,
    MEASURE_AGAIN: (found) =>
      found.why === 'making'
        ? 'Die PIP-Beweglichkeit wurde einmal gemessen, und jeder spätere Termin wird mit diesem verglichen: noch zweimal messen und das Mittel der drei notieren.'
        : `Der aktiven PIP-${motions[found.gain.motion]} fehlen ${n(found.gain.after)} Grad, am ${found.gain.between[0]} fehlten ${n(found.gain.before)}. So viel besser kann eine einzelne Messung durch Zufall sein: noch zweimal messen und das Mittel der drei notieren.`,
    WEAR_NOT_NOTED: () => 'Die Tragezeit ist nicht notiert: fragen.',
    AFTER_PAUSE: ({ on }) => `Nach der Pause vom ${on}: erholt heißt zuerst die halbe Tragezeit.`,
    AFTER_STOP: ({ on }) => `Am ${on} hieß es Stopp: ohne das Wort der untersuchenden Ärztin oder des Arztes wird nichts wieder angelegt.`,
    MP_NOT_MEASURED: () =>
      'Die passive MP-Beweglichkeit ist nicht notiert: messen, denn in einer Handschiene kann dieses Gelenk versteifen.',
    DEVICE_NOT_NOTED: () => 'Was angefertigt wurde, ist nicht notiert; über den Winkel lässt sich nichts sagen.',
  },
  source: {
    noSource: 'übliche Praxis, ohne Quelle',
    crps: 'Schmerz ab 5 bald nach einem Handgelenkbruch: Moseley et al., J Pain 2014;15:16 (Abstract gelesen); das Übrige übliche Praxis, ohne Quelle',
    measuring: `Messfehler: 1,96 x Wurzel 2 x 3,5 Grad${BETWEEN}`,
    slope: `kleinste Quadrate; Messfehler 3,5 Grad je Messung${BETWEEN}`,
  },
  afterHarm: 'erst wenn das abgeklungen ist',
  beside: {
    gaining: 'Zugewinn',
    GAINING: (slope) => `Die PIP-${motions[slope.motion]} gewinnt ${rate(slope)}; was darüber steht, geht vor.`,
    slow: 'Langsam',
    PLATEAU: (figures, speech) =>
      `Weniger als 1 Grad pro Woche (${rate(figures.slope)}). Die Person fragen, ob ihr das reicht. ${changeOne(figures, speech, 'Wenn nicht, eines ändern:')}`,
    REFER: ({ slope, changes }) =>
      `Weniger als 1 Grad pro Woche (${rate(slope)}) nach ${changes} Änderungen, denen je vier Wochen gegeben wurden. Wenn ihr das nicht reicht, der überweisenden Stelle schreiben; nicht dringend.`,
    PAUSE: ({ causes }) => `${capital(list(causes.map(pauseCause)))}. Nicht anlegen.`,
  },
  starting: 'Ein Ausgangspunkt; die behandelnde Person entscheidet.',
};
