import { plain } from '../../units/number.ts';
import type { Translations } from '../language.ts';
import type { englishRecord } from './english.ts';
import type { RecordFigures } from './record-figures.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`);
const digit = { index: 'Zeigefinger', long: 'Mittelfinger', ring: 'Ringfinger', little: 'Kleinfinger' };
const closedFor = {
  goal: 'das Ziel ist erreicht',
  plateau: 'es kam nichts mehr hinzu',
  harm: 'es hat geschadet',
  lost: 'die Person kam nicht mehr',
  other: 'aus einem anderen Grund',
};
const faces = { dorsal: 'dorsale Handschiene', palmar: 'palmare Handschiene', both: 'dorsale und palmare Handschiene' };
const long = (length: number | null) => (length === null ? '' : `, ${n(length)} mm lang`);

const runs = ({ held, higher, others }: Pick<RecordFigures['strip'], 'held' | 'higher' | 'others'>) =>
  `${list(held.map((one) => digit[one]))} ${higher ? 'höher' : 'tiefer'} als ${list(others.map((one) => digit[one]))}`;

/** What is said of a case and its visits, in German. */
export const germanRecord: Translations<typeof englishRecord> = {
  number: n,
  decimal: ',',
  who: ({ side, digit: treated }) => `${digit[treated]}, ${side === 'left' ? 'linke' : 'rechte'} Hand`,
  invented: 'ERFUNDEN: niemand wurde gemessen',
  title: (code) => `Bericht zu Fall ${code}`,
  span: ({ visits, first, last }) => (visits === 1 ? `1 Termin, ${first}` : `${visits} Termine, ${first} bis ${last}`),
  scale: 'Grad und mm; nichts hier ist in wahrer Größe gezeichnet.',
  page: (page, pages) => `Seite ${page} von ${pages}`,
  visit: 'Termin',
  made: 'angefertigt',
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
    'Beweglichkeit als Extensionsdefizit / Flexion (25/85: es fehlen 25, beugt bis 85; „über“ heißt überstreckt), darunter Extension-0-Flexion nach der Neutral-Null-Methode. Was leer ist, wurde nicht notiert.',
  hyper: 'über',
  amended: ({ kind, was, on, why }) =>
    `Der Termin vom ${was} wurde${on === undefined ? '' : ` am ${on}`} ${kind === 'corrected' ? 'berichtigt' : 'zurückgezogen'}${why === undefined ? '' : `: ${why}`}. Die Datei behält, was vorher dastand.`,
  closed: ({ date, reason, note }) => `am ${date} abgeschlossen: ${closedFor[reason]}${note === undefined ? '' : ` (${note})`}`,
  caseWas: (closed) => `Der Fall wurde ${closed}.`,
  whatFollows: 'Es folgt, was der letzte Termin nahelegte.',
  nothingMade: 'Nichts ist notiert.',
  strip: ({ held, higher, others, differential, length }) =>
    `Streifen: ${runs({ held, higher, others })}${differential === null ? '' : `, Differenzial ${n(differential)} Grad`}${long(length)}`,
  runs,
  plate: ({ faces: on, mpAngle, length }) => `${faces[on]}, MP-Gelenk bei ${n(mpAngle)} Grad${long(length)}`,
  lengthNotNoted: 'Die Länge ist nicht notiert.',
  option: ({ key, value, unit, usual }) => `${key} ${value}${unit} (sonst ${usual})`,
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
    `TAM: aktive Gesamtbeweglichkeit, Flexion von MP + PIP + DIP weniger die Extensionsdefizite, gegen ${otherHand ? `${n(reference)} der anderen Hand` : `die normalen ${n(reference)} (85 + 110 + 65)`}. Stufen: ASSH total active motion; American Society for Surgery of the Hand, wie in Lehrmaterial überliefert (aus zweiter Hand; der Text der Gesellschaft selbst wurde nicht gelesen).`,
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
    measuredDifferential: 'gemessenes Differenzial',
    freePip: 'freie PIP-Flexion',
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
  chart: {
    title: ({ side, digit: treated }) => `PIP-Beweglichkeit, ${digit[treated]}, ${side === 'left' ? 'linke' : 'rechte'} Hand`,
    subtitle: 'Aktiver und passiver Bereich nach Termin, Grad Flexion von gerade aus',
    shown: ({ first, last, of }) => `, Termine ${first} bis ${last} von ${of}`,
    months: 'Jan Feb März Apr Mai Juni Juli Aug Sep Okt Nov Dez',
    activeFlexion: 'Flexion aktiv',
    activeDeficit: 'Extensionsdefizit aktiv',
    passiveFlexion: 'Flexion passiv',
    passiveDeficit: 'Extensionsdefizit passiv',
    sinceBefore: 'seit dem Termin davor',
    worn: 'getragen, Stunden am Tag',
    gained: (degrees) => `${n(degrees)} besser`,
    lost: (degrees) => `${n(degrees)} verloren`,
    noChange: 'unverändert',
    legend: {
      active: 'aktiv; Balken: Bereich',
      passive: 'passiv',
      inside: 'darin: keine Änderung',
      made: 'angefertigt, bis zum nächsten',
    },
    band: (same, mixed) =>
      `Band: ${n(same)} Grad (${n(mixed)} bei zwei Messenden) über und unter jedem aktiven Wert, bis zum nächsten Termin. Ein Wert darin gilt nicht als Änderung`,
    plot: {
      flexion: 'Flexion',
      extensionDeficit: 'Extensionsdefizit',
      hyperextension: 'Überstreckung',
      active: 'aktiv',
      passive: 'passiv',
      straight: 'gerade',
      beyond: 'über',
    },
  },
};
