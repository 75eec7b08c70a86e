import { plain } from '../../units/number.ts';
import { handEnglish } from '../hand-words.ts';
import type { RecordFigures } from './record-figures.ts';

const n = (value: number) => plain(value, 1);
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`);
const digit = handEnglish.short;
const faces = { dorsal: 'dorsal plate', palmar: 'palmar plate', both: 'dorsal and palmar plate' };
const long = (length: number | null) => (length === null ? '' : `, ${n(length)} mm long`);
const runs = ({ held, higher, others }: Pick<RecordFigures['strip'], 'held' | 'higher' | 'others'>) =>
  `${list(held.map((one) => digit[one]))} ${higher ? 'higher' : 'lower'} than ${list(others.map((one) => digit[one]))}`;

/** What is said of a case on its chart, in English. */
export const englishChart = {
  number: n,
  decimal: '.',
  who: ({ side, digit: treated }: RecordFigures['who']) => `${digit[treated]} finger, ${side} hand`,
  invented: 'INVENTED: nobody was measured',
  visit: 'visit',
  made: 'made',
  hyper: 'hyper',
  strip: ({ held, higher, others, differential, length }: RecordFigures['strip']) =>
    `strip: ${runs({ held, higher, others })}${differential === null ? '' : `, differential ${n(differential)} degrees`}${long(length)}`,
  /** How a strip runs, in the middle of a sentence. */
  runs,
  plate: ({ faces: on, mpAngle, length }: RecordFigures['plate']) => `${faces[on]}, MP at ${n(mpAngle)} degrees${long(length)}`,
  chart: {
    title: ({ side, digit: treated }: RecordFigures['who']) => `PIP motion, ${digit[treated]} finger, ${side} hand`,
    subtitle: 'Active and passive range by visit, degrees of flexion from straight',
    shown: ({ first, last, of }: RecordFigures['shown']) => `, visits ${first} to ${last} of ${of}`,
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'].join(' '),
    activeFlexion: 'active flexion',
    activeDeficit: 'active extension deficit',
    passiveFlexion: 'passive flexion',
    passiveDeficit: 'passive extension deficit',
    sinceBefore: 'since the visit before',
    worn: 'worn, hours a day',
    gained: (degrees: number) => `${n(degrees)} gained`,
    lost: (degrees: number) => `${n(degrees)} lost`,
    noChange: 'no change',
    legend: {
      active: 'active; bar: its range',
      passive: 'passive',
      inside: 'inside: not read as a change',
      made: 'made, until the next',
    },
    band: (same: number, mixed: number) =>
      `Band: ${n(same)} degrees (${n(mixed)} between two raters) above and below each active value, up to the next visit. A value inside it is not read as a change`,
    plot: {
      end: {
        active: { flexion: 'active flexion', extensionDeficit: 'active extension deficit', hyperextension: 'active hyperextension' },
        passive: { flexion: 'passive flexion', extensionDeficit: 'passive extension deficit', hyperextension: 'passive hyperextension' },
      },
      active: 'active',
      passive: 'passive',
      straight: 'straight',
      beyond: 'hyper',
    },
  },
};
