import { FLAG_MEANINGS } from '../../../hand/fields.ts';
import { threeLanguages } from '../../texts/three-languages.ts';

export const moreWords = threeLanguages(
  {
    heading: 'More about the finger',
    nothing: 'More about the finger: nothing said',
    said: (count: number) => `More about the finger: ${count} said`,
    about: 'Nothing here is needed; each makes the advice more certain.',
    diagnosis: 'Diagnosis, in short',
    diagnosisHint: 'One line, never who the person is.',
    weeks: 'Weeks since injury or operation',
    flags: 'What calls for caution',
    flag: FLAG_MEANINGS as Readonly<Record<keyof typeof FLAG_MEANINGS, string>>,
    hypermobile: 'Hypermobile MP or CMC joint',
  },
  {
    heading: 'Más sobre el dedo',
    nothing: 'Más sobre el dedo: sin datos',
    said: (count) => `Más sobre el dedo: ${count} ${count === 1 ? 'dato' : 'datos'}`,
    about: 'Nada de esto es necesario; cada dato hace el consejo más seguro.',
    diagnosis: 'Diagnóstico, breve',
    diagnosisHint: 'Una línea, nunca quién es la persona.',
    weeks: 'Semanas desde la lesión u operación',
    flags: 'Lo que pide cuidado',
    flag: {
      hypermobile: 'Dedos con MCF o CMC hipermóvil.',
      swelling: 'Edema que cambia a lo largo del día o de la semana.',
      sensation: 'La sensibilidad de la mano está reducida.',
      hardEndFeel: 'La IFP del dedo tratado tiene sensación final dura.',
      unprotectedRepair: 'Una reparación de tendón o ligamento, o una fractura, aún no lo bastante protegida para moverse libremente.',
    },
    hypermobile: 'MCF o CMC hipermóvil',
  },
  {
    heading: 'Mehr zum Finger',
    nothing: 'Mehr zum Finger: nichts angegeben',
    said: (count) => `Mehr zum Finger: ${count} angegeben`,
    about: 'Nichts davon ist nötig; jedes macht den Rat sicherer.',
    diagnosis: 'Diagnose, kurz',
    diagnosisHint: 'Eine Zeile, nie, wer die Person ist.',
    weeks: 'Wochen seit Verletzung oder Operation',
    flags: 'Was Vorsicht verlangt',
    flag: {
      hypermobile: 'Finger mit hypermobilem MP- oder CMC-Gelenk.',
      swelling: 'Schwellung, die sich über den Tag oder die Woche ändert.',
      sensation: 'Das Gefühl in der Hand ist vermindert.',
      hardEndFeel: 'Das PIP-Gelenk des behandelten Fingers hat ein hartes Endgefühl.',
      unprotectedRepair: 'Eine Sehnen- oder Bandnaht oder ein Bruch, noch nicht fest genug, um frei bewegt zu werden.',
    },
    hypermobile: 'Hypermobiles MP- oder CMC-Gelenk',
  },
);
