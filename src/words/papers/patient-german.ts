import { handGerman } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { patientEnglish } from './patient-english.ts';

export const patientGerman: Translations<typeof patientEnglish> = {
  title: { strip: (finger) => `Ihre Orthese für den ${finger}`, plate: (finger) => `Ihre Handschiene für den ${finger}` },
  titleNoFinger: 'Ihre Orthese für die Hand',
  finger: { ...handGerman.finger, little: 'kleinen Finger' },
  and: 'und',
  hand: { left: 'Linke Hand', right: 'Rechte Hand' },
  invented: 'Erfundenes Beispiel. Niemand wurde gemessen.',
  does: {
    heldLower: (finger) => `Sie hält den ${finger} etwas tiefer als die Finger daneben.`,
    heldHigher: (finger) => `Sie hält den ${finger} etwas höher als die Finger daneben.`,
    othersLower: (finger) => `Sie hält andere Finger etwas tiefer als den ${finger}.`,
    othersHigher: (finger) => `Sie hält andere Finger etwas höher als den ${finger}.`,
    extension: 'So streckt sich das mittlere Gelenk besser.',
    flexion: 'So beugt sich das mittlere Gelenk besser.',
    plate: 'Sie hält die Knöchel still. So müssen sich die mittleren Gelenke bewegen.',
    use: 'Benutzen Sie die Hand damit.',
  },
  wear: { hours: 'So lange tragen Sie sie am Tag:', unit: 'Stunden', nightOn: 'Nachts: an', nightOff: 'Nachts: ab' },
  on: {
    heading: 'An',
    strip: 'Über die Finger schieben. Die Schrift zeigt nach außen.',
    plate: 'Auf die Hand legen. Bänder schließen, nicht zu fest.',
  },
  off: { heading: 'Ab', strip: 'Ziehen Sie sie ab, Finger für Finger.', plate: 'Bänder öffnen. Abheben.' },
  exercise: {
    heading: 'Üben Sie damit',
    extension: ['Die Hand ist locker.', 'Das mittlere Gelenk strecken und halten.', 'Wieder locker lassen.'],
    flexion: ['Die Finger sind gestreckt.', 'Das mittlere Gelenk beugen und halten.', 'Wieder strecken.'],
    times: 'Mal',
    aDay: 'Mal am Tag',
    seconds: 'Sekunden halten',
    hurts: 'Es darf ziehen. Es darf nicht wehtun.',
  },
  skin: {
    heading: 'Schauen Sie die Haut an',
    lines: [
      'Tragen Sie sie zuerst 20 Minuten.',
      'Dann abnehmen und die Haut ansehen.',
      'Rote Stellen müssen in 20 Minuten weg sein.',
      'Sonst nicht tragen und uns anrufen.',
    ],
  },
  heat: {
    heading: 'Halten Sie sie kühl',
    lines: ['Hitze macht sie weich und krumm.', 'Nicht auf Heizungen, nicht ins heiße Auto.', 'Mit Seife und kühlem Wasser waschen.'],
  },
  stop: {
    heading: 'Nehmen Sie sie ab und rufen Sie an, wenn',
    lines: [
      'es wehtut,',
      'ein Finger kribbelt oder taub wird,',
      'ein Finger weiß, blau oder kalt wird,',
      'die Hand anschwillt,',
      'die Haut aufgeht oder Blasen hat,',
      'sie bricht oder festsitzt.',
    ],
    telephone: 'Telefon',
  },
  drive: 'Damit nicht Auto fahren, keine Maschinen bedienen. Außer wir erlauben es.',
  diary: {
    heading: {
      strip: 'Ihr Tagebuch. Bringen Sie es und die Orthese zu jedem Termin mit.',
      plate: 'Ihr Tagebuch. Bringen Sie es und die Handschiene zu jedem Termin mit.',
    },
    columns: ['Tag', 'Stunden', 'Geübt', 'Haut gut', 'Schmerz 0-10'],
  },
};
