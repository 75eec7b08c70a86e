import type { Translations } from '../language.ts';
import type { auditEnglish } from './audit-english.ts';

export const auditGerman: Translations<typeof auditEnglish> = {
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
  motion: { extension: 'Extension', flexion: 'Flexion' },
  underLimit: 'unter der Grenze',
};
