import { plain } from '../../units/number.ts';
import type { Translations } from '../language.ts';
import { germanChart } from './chart-german.ts';
import type { auditEnglish, englishRecord } from './english.ts';

const auditGerman: Translations<typeof auditEnglish> = {
  title: 'Auswertung abgeschlossener Fälle',
  head: 'AUSWERTUNG ABGESCHLOSSENER FÄLLE',
  inventedMark: 'ERFUNDEN',
  under: (cases) => `${cases === '1' ? '1 abgeschlossener Fall' : `${cases} abgeschlossene Fälle`}. Grad und Wochen.`,
  invented: 'Darunter sind ERFUNDENE Fälle: Niemand wurde gemessen.',
  gained: (gained, cases, gain) =>
    `${gained} von ${cases === '1' ? '1 abgeschlossenen Fall' : `${cases} abgeschlossenen Fällen`} ${gained === '1' ? 'gewann' : 'gewannen'} zwischen dem ersten und dem letzten Termin ${gain} Grad oder mehr an aktiver PIP-Beweglichkeit.`,
  half: (weeks) => `Die Hälfte davon hatte diesen Gewinn innerhalb von ${weeks} Wochen nach dem ersten Termin.`,
  because: (reasons) => `Abgeschlossen, weil: ${reasons}.`,
  open: (count) => (count === '1' ? '1 offener Fall ist nicht mitgezählt.' : `${count} offene Fälle sind nicht mitgezählt.`),
  tooFew: (count) =>
    count === '1'
      ? '1 abgeschlossener Fall mit weniger als zwei Terminen ist nicht mitgezählt.'
      : `${count} abgeschlossene Fälle mit weniger als zwei Terminen sind nicht mitgezählt.`,
  counted: (gain, source) =>
    `Gezählt wird der Gewinn der Bewegung, die beim ersten Termin mehr fehlte, ab ${gain} Grad, ab 13, wenn verschiedene Personen gemessen haben (${source}).`,
  alone:
    'Verglichen wurde mit niemandem: Steife Finger gewinnen auch durch Zeit und Üben allein; diese Zahlen sagen also nicht, was die Orthese bewirkt hat.',
  cases: 'Fälle',
  limits: 'Was die Zahlen sagen',
  column: {
    code: 'Fall',
    motion: 'Bewegung',
    before: 'Defizit zuerst',
    after: 'Defizit zuletzt',
    gained: 'Gewinn',
    weeks: 'Wochen bis zum Gewinn',
    strips: 'Streifen',
    plates: 'Handschienen',
    reason: 'abgeschlossen, weil',
  },
  motion: { extension: 'Streckung', flexion: 'Beugung' },
  underLimit: 'unter der Grenze',
};

const n = (value: number) => plain(value, 1).replace('.', ',');
const closedFor = {
  goal: 'das Ziel ist erreicht',
  plateau: 'es kam nichts mehr hinzu',
  harm: 'es hat geschadet',
  lost: 'die Person kam nicht mehr',
  other: 'aus einem anderen Grund',
};

/** What is said of a case and its visits, in German. */
export const germanRecord: Translations<typeof englishRecord> = {
  ...germanChart,
  audit: auditGerman,
  title: (code) => `Bericht zu Fall ${code}`,
  span: ({ visits, first, last }) => (visits === 1 ? `1 Termin, ${first}` : `${visits} Termine, ${first} bis ${last}`),
  scale: 'Grad und mm; nichts hier ist in wahrer Größe gezeichnet.',
  page: (page, pages) => `Seite ${page} von ${pages}`,
  heading: {
    note: 'Anmerkung',
    closed: 'Abgeschlossen',
    visits: 'Termine',
    made: 'Was angefertigt wurde',
    next: (date) => `Wie weiter, nach dem Termin vom ${date}`,
    totals: 'Gesamtbeweglichkeit, aktiv und passiv',
    cautions: 'Vorsicht',
  },
  reading:
    'Beweglichkeit als Streckdefizit / Beugung (25/85: es fehlen 25, beugt bis 85; „über“ heißt überstreckt), darunter Extension-0-Flexion nach der Neutral-Null-Methode. Was leer ist, wurde nicht notiert.',
  amended: ({ kind, was, on, why }) =>
    `Der Termin vom ${was} wurde${on === undefined ? '' : ` am ${on}`} ${kind === 'corrected' ? 'berichtigt' : 'zurückgezogen'}${why === undefined ? '' : `: ${why}`}. Die Datei behält, was vorher dastand.`,
  closed: ({ date, reason, note }) => `am ${date} abgeschlossen: ${closedFor[reason]}${note === undefined ? '' : ` (${note})`}`,
  closedFor,
  caseWas: (closed) => `Der Fall wurde ${closed}.`,
  whatFollows: 'Es folgt, was der letzte Termin nahelegte.',
  nothingMade: 'Nichts ist notiert.',
  lengthNotNoted: 'Die Länge ist nicht notiert.',
  option: ({ name, value, unit, usual }) => `${name} ${value}${unit} (sonst ${usual})`,
  optionsDiffer: (options) => `Abweichend von der Vorgabe: ${options.join(', ')}.`,
  optionsUsual: 'Keine notierte Einstellung weicht von der Vorgabe ab.',
  optionsNotNoted: 'Die Einstellungen sind nicht notiert.',
  source: (text) => `Quelle: ${text}.`,
  also: (title) => `Außerdem ${title}`,
  joint: {
    mp: { active: 'MP aktiv', passive: 'MP passiv' },
    pip: { active: 'PIP aktiv', passive: 'PIP passiv' },
    dip: { active: 'DIP aktiv', passive: 'DIP passiv' },
  },
  girth: { circumference: 'Umfang', pipCircumference: 'PIP-Umfang' },
  noVisit: 'Noch kein Termin.',
  addOne: 'Einen hinzufügen: knucklewright case add',
  motionNow: (first, last) =>
    `Aktive PIP-Beweglichkeit (Extension-0-Flexion): ${first === null ? '' : `${first.motion} am ${first.date}, `}${last.motion} am ${last.date}`,
  visits: (count) => (count === 1 ? '1 Termin' : `${count} Termine`),
  tam: 'TAM, Grad',
  tpm: 'TPM, Grad',
  ofNormal: 'der normalen',
  ofOther: 'der anderen Hand',
  grade: 'Stufe',
  grades: { excellent: 'sehr gut', good: 'gut', fair: 'mäßig', poor: 'schlecht' },
  total: ({ degrees, percent, reference, otherHand, grade }) =>
    `Aktive Gesamtbeweglichkeit (TAM) ${n(degrees)}, ${n(percent)} % ${otherHand ? `der anderen Hand (${n(reference)})` : `der normalen ${n(reference)}`}: ${grade} (ASSH, total active motion)`,
  totalPassive: (degrees) => `Passive Gesamtbeweglichkeit (TPM) ${n(degrees)}`,
  aboutTam: ({ reference, otherHand }) =>
    `TAM: aktive Gesamtbeweglichkeit, Beugung von MP + PIP + DIP weniger die Streckdefizite, gegen ${otherHand ? `${n(reference)} der anderen Hand` : `die normalen ${n(reference)} (85 + 110 + 65)`}. Stufen: ASSH total active motion; American Society for Surgery of the Hand, wie in Lehrmaterial überliefert (aus zweiter Hand; der Text der Gesellschaft selbst wurde nicht gelesen).`,
  aboutTpm: 'TPM: passive Gesamtbeweglichkeit, dasselbe passiv.',
  yes: 'ja',
  no: 'nein',
  noted: {
    pain: 'Schmerz, 0 bis 10',
    skin: 'Haut',
    sensation: 'Gefühl',
    colour: 'Farbe',
    infection: 'Infektion',
    deformity: 'neue Fehlstellung',
    crpsSigns: 'Zeichen eines CRPS',
    wear: 'getragen, h/Tag',
    wearAgreed: 'vereinbart, h/Tag',
    fits: 'sitzt',
    redirects: 'lenkt um',
    measuredDifferential: 'gemessene MP-Differenz',
    freePip: 'freie PIP-Beugung',
    pencil: 'Stiftprobe, ohne und mit',
    closedAt: 'geschlossen bei, mm',
    rater: 'gemessen von',
    repeated: 'dreimal gemessen',
    weaning: 'Abtrainieren',
    goal: 'Ziel',
  },
  skin: { ok: 'gut', marks: 'Druckstellen', broken: 'offen' },
  change: { ok: 'wie immer', returned: 'verändert, kam zurück', stays: 'verändert, bleibt' },
  and: 'und',
};
