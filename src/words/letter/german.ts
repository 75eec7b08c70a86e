import { plain } from '../../units/number.ts';
import { handGerman } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { englishLetter } from './english.ts';

const n = (value: number) => plain(value, 1).replace('.', ',');
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`);
const digit = handGerman.finger;

/** The letter on a case in German. */
export const germanLetter: Translations<typeof englishLetter> = {
  title: (code) => `Brief zu Fall ${code}`,
  invented: 'ERFUNDEN: niemand wurde gemessen.',
  hand: { left: 'linke Hand', right: 'rechte Hand' },
  digit,
  who: ({ side, digit: treated, diagnosis, weeks }) =>
    `${digit[treated]}, ${side === 'left' ? 'linke' : 'rechte'} Hand${diagnosis === null ? '' : `; ${diagnosis}`}${weeks === null ? '' : `; beim ersten Termin ${n(weeks)} Wochen nach Verletzung oder Operation`}.`,
  course: ({ from, to, weeks, hours }) =>
    from === null
      ? `Aktive PIP-Beweglichkeit ${to}.`
      : `Aktive PIP-Beweglichkeit ${from} auf ${to} in ${weeks === 1 ? '1 Woche' : `${n(weeks)} Wochen`}${hours === null ? '' : `, getragen ${n(hours)} Stunden am Tag`}.`,
  notation: 'Beweglichkeit als Extension-0-Flexion (Neutral-Null-Methode), Grad.',
  motion: 'Beweglichkeit',
  visit: 'Termin',
  jointMotion: {
    mp: { active: 'MP aktiv', passive: 'MP passiv' },
    pip: { active: 'PIP aktiv', passive: 'PIP passiv' },
    dip: { active: 'DIP aktiv', passive: 'DIP passiv' },
  },
  lacks: (deficit, flexion) => `es fehlen ${deficit}, beugt bis ${flexion}`,
  beyond: (degrees, flexion) => `${degrees} überstreckbar, beugt bis ${flexion}`,
  tam: 'Aktive Gesamtbeweglichkeit (TAM)',
  tpm: 'Passive Gesamtbeweglichkeit (TPM)',
  ofNormal: (percent, normal) => `${percent} % der normalen ${normal}`,
  ofOther: (percent, other) => `${percent} % der anderen Hand (${other})`,
  pain: 'Ruheschmerz, 0 bis 10',
  wear: 'Getragen, Stunden am Tag',
  made: 'Was angefertigt wurde',
  nothingMade: 'Nichts ist notiert.',
  earlier: (count) => `${count} weitere davor.`,
  strip: ({ held, higher, others, differential }) =>
    `Relative-Motion-Orthese: ${list(held.map((one) => digit[one]))} ${higher ? 'höher' : 'tiefer'} gehalten als ${list(others.map((one) => digit[one]))}${differential === null ? '' : `, um ${n(differential)} Grad im MP-Gelenk`}.`,
  plate: (degrees) => `Handschiene, MP-Gelenk bei ${degrees} Grad.`,
  goalHeading: 'Ziel',
  goal: ({ degrees, own, flexionFull, other }) =>
    `Höchstens ${n(degrees)} Grad fehlen${own ? ', wie mit dem Patienten oder der Patientin vereinbart' : ''}. Die Flexion wird mit ${other ? `${n(flexionFull)} Grad der anderen Hand` : `den üblichen ${n(flexionFull)} Grad`} verglichen.`,
  advice: 'Beurteilung und nächster Schritt',
  evidence: 'Die Belege für den Gebrauch als Übungsorthese sind dünn: ein Ausgangspunkt, die behandelnde Person entscheidet.',
  clinician: 'Behandelnde Person',
  signature: 'Unterschrift',
  date: 'Datum',
  page: (page, pages) => `Seite ${page} von ${pages}`,
};
