import { plain } from '../../units/number.ts';
import { handGerman } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { englishChart } from './chart-english.ts';
import type { RecordFigures } from './record-figures.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`);
const digit = handGerman.finger;
const faces = { dorsal: 'dorsale Handschiene', palmar: 'palmare Handschiene', both: 'dorsale und palmare Handschiene' };
const long = (length: number | null) => (length === null ? '' : `, ${n(length)} mm lang`);
const runs = ({ held, higher, others }: Pick<RecordFigures['strip'], 'held' | 'higher' | 'others'>) =>
  `${list(held.map((one) => digit[one]))} ${higher ? 'höher' : 'tiefer'} als ${list(others.map((one) => digit[one]))}`;

/** What is said of a case on its chart, in German. */
export const germanChart: Translations<typeof englishChart> = {
  number: n,
  decimal: ',',
  who: ({ side, digit: treated }) => `${digit[treated]}, ${side === 'left' ? 'linke' : 'rechte'} Hand`,
  invented: 'ERFUNDEN: niemand wurde gemessen',
  visit: 'Termin',
  made: 'angefertigt',
  hyper: 'über',
  strip: ({ held, higher, others, differential, length }) =>
    `Streifen: ${runs({ held, higher, others })}${differential === null ? '' : `, MP-Differenz ${n(differential)} Grad`}${long(length)}`,
  runs,
  plate: ({ faces: on, mpAngle, length }) => `${faces[on]}, MP-Gelenk bei ${n(mpAngle)} Grad${long(length)}`,
  chart: {
    title: ({ side, digit: treated }) => `PIP-Beweglichkeit, ${digit[treated]}, ${side === 'left' ? 'linke' : 'rechte'} Hand`,
    subtitle: 'Aktiver und passiver Bereich nach Termin, Grad Beugung von gerade aus',
    shown: ({ first, last, of }) => `, Termine ${first} bis ${last} von ${of}`,
    months: 'Jan Feb März Apr Mai Juni Juli Aug Sep Okt Nov Dez',
    activeFlexion: 'Beugung aktiv',
    activeDeficit: 'Streckdefizit aktiv',
    passiveFlexion: 'Beugung passiv',
    passiveDeficit: 'Streckdefizit passiv',
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
      end: {
        active: { flexion: 'Beugung aktiv', extensionDeficit: 'Streckdefizit aktiv', hyperextension: 'Überstreckung aktiv' },
        passive: { flexion: 'Beugung passiv', extensionDeficit: 'Streckdefizit passiv', hyperextension: 'Überstreckung passiv' },
      },
      active: 'aktiv',
      passive: 'passiv',
      straight: 'gerade',
      beyond: 'über',
    },
  },
};
