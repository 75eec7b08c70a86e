import type { DigitName, Side } from '../../hand/digits.ts';
import { plain } from '../../units/number.ts';
import { capital, handEnglish } from '../hand-words.ts';

const n = (value: number) => plain(value, 1);
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`);
const digit = handEnglish.finger;

/** The letter on a case in English. */
export const englishLetter = {
  title: (code: string) => `Letter on case ${code}`,
  invented: 'INVENTED: nobody was measured.',
  hand: { left: 'left hand', right: 'right hand' },
  digit,
  who: ({ side, digit: treated, diagnosis, weeks }: LetterFigures['who']) =>
    `${capital(digit[treated])}, ${side === 'left' ? 'left' : 'right'} hand${diagnosis === null ? '' : `; ${diagnosis}`}${weeks === null ? '' : `; ${n(weeks)} weeks since injury or operation at the first visit`}.`,
  course: ({ from, to, weeks, hours }: LetterFigures['course']) =>
    from === null
      ? `Active PIP motion ${to}.`
      : `Active PIP motion ${from} to ${to} in ${weeks === 1 ? '1 week' : `${n(weeks)} weeks`}${hours === null ? '' : `, worn ${n(hours)} hours a day`}.`,
  notation: 'Motion is extension-0-flexion (neutral-zero method), degrees.',
  motion: 'Motion',
  visit: 'visit',
  jointMotion: {
    mp: { active: 'MP active', passive: 'MP passive' },
    pip: { active: 'PIP active', passive: 'PIP passive' },
    dip: { active: 'DIP active', passive: 'DIP passive' },
  },
  lacks: (deficit: string, flexion: string) => `lacks ${deficit}, bends to ${flexion}`,
  beyond: (degrees: string, flexion: string) => `${degrees} beyond straight, bends to ${flexion}`,
  tam: 'Total active motion (TAM)',
  tpm: 'Total passive motion (TPM)',
  ofNormal: (percent: string, normal: string) => `${percent} % of the normal ${normal}`,
  ofOther: (percent: string, other: string) => `${percent} % of the other hand's ${other}`,
  pain: 'Pain at rest, 0 to 10',
  wear: 'Worn, hours a day',
  made: 'What was made',
  nothingMade: 'Nothing is noted.',
  earlier: (count: number) => `${count} more before.`,
  strip: ({ held, higher, others, differential }: LetterFigures['strip']) =>
    `Relative motion orthosis: ${list(held.map((one) => digit[one]))} held ${higher ? 'higher' : 'lower'} than ${list(others.map((one) => digit[one]))}${differential === null ? '' : `, by ${n(differential)} degrees at the MP joint`}.`,
  plate: (degrees: string) => `Hand-based plate, MP joint at ${degrees} degrees.`,
  goalHeading: 'Goal',
  goal: ({ degrees, own, flexionFull, other }: LetterFigures['goal']) =>
    `No more than ${n(degrees)} degrees lacking${own ? ', as agreed with the patient' : ''}. Flexion is compared with ${other ? `the other hand's ${n(flexionFull)}` : `the usual ${n(flexionFull)}`}.`,
  advice: 'Assessment and next step',
  evidence: 'Evidence for exercise use is thin: this is a starting point, the treating clinician decides.',
  clinician: 'Clinician',
  signature: 'Signature',
  date: 'Date',
  page: (page: number, pages: number) => `page ${page} of ${pages}`,
};

/** What the sentences of a letter are put together from. Degrees; motion in neutral-zero notation. */
export interface LetterFigures {
  readonly who: { readonly side: Side; readonly digit: DigitName; readonly diagnosis: string | null; readonly weeks: number | null };
  /** `from` is null for a case of one visit; `hours` worn a day, the mean of what was noted. */
  readonly course: { readonly from: string | null; readonly to: string; readonly weeks: number; readonly hours: number | null };
  readonly strip: {
    readonly held: readonly DigitName[];
    readonly higher: boolean;
    readonly others: readonly DigitName[];
    readonly differential: number | null;
  };
  /** `own`: the patient has a goal of their own; `other`: full flexion is the other hand's. */
  readonly goal: { readonly degrees: number; readonly own: boolean; readonly flexionFull: number; readonly other: boolean };
}
