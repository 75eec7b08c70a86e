import { ALL_WELL, CHANGE_STATES, CRPS_SIGNS, HARM_KEYS, SKIN_STATES } from '../../hand/signs.ts';
import { notedShape } from '../../record/case-schema.ts';
import { readNumber, tidyNumberText } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import { kebabCase } from '../../units/typed-name.ts';
import { type Question, readYesNo } from '../ask.ts';
import { flag, flagSet } from './flag.ts';

type Read = Question['read'];

/** The flags for what is noted at a visit besides motion, measurements and what was made. */
export const notedFlags = flagSet(
  flag('--all-well', 'harm: no pain at rest, skin whole, feeling and colour as always, no infection, no new deformity, no sign of CRPS'),
  flag('--pain <0-10>', 'harm: pain at rest, the mean of the last two days'),
  flag('--skin <state>', 'harm: skin under the device, ok (marks gone in 20 minutes are ok), marks or broken'),
  flag('--sensation <state>', 'harm: feeling, ok, returned (changed, came back after taking it off) or stays'),
  flag('--colour <state>', 'harm: colour and warmth, ok, returned or stays'),
  flag('--infection <yes|no>', 'harm: signs of infection'),
  flag('--deformity <yes|no>', 'harm: a new deformity or an unstable joint'),
  flag('--crps-signs <list>', `harm: none, or of ${CRPS_SIGNS.map(kebabCase).join(',')}`),
  flag('--fits <yes|no>', 'seen: whether it fits'),
  flag('--redirects <yes|no>', 'seen: whether it redirects the motion to the PIP joint'),
  flag('--measured-differential <degrees>', 'seen: MP differential as measured in the device'),
  flag('--free-pip <degrees>', 'seen: PIP flexion that the device leaves free'),
  flag('--closed-at <mm>', 'seen: where the finishing end was cut, from the trim mark; beyond it positive'),
  flag('--wear <hours>', 'hours worn a day since the visit before, 0 to 24'),
  flag('--wear-agreed <hours>', 'hours a day agreed from this visit on, 0 to 24'),
  flag('--rater <who>', 'who measured: a number or initials, never a name'),
  flag('--repeated <yes|no>', 'whether PIP motion was measured three times, and the mean of the three is given'),
  flag('--weaning <yes|no>', 'whether the device is being weaned off'),
  flag('--goal <degrees>', 'the deficit with which the patient is content (5 where none is noted)'),
  flag('--comment <text>', 'one line; never who the person is'),
);

/** A value that is noted: its path in the visit and how it is read. */
interface NotedValue {
  readonly path: string;
  readonly read: Read;
}

const refused = (text: string, expected: string) => ({ ok: false, reason: `${quote(text)} is not ${expected}` }) as const;

/** A number that the visit's form takes. */
function number(key: 'pain' | 'measuredDifferential' | 'freePip' | 'closedAt' | 'wear' | 'wearAgreed' | 'goal', expected: string): Read {
  return (text) => {
    const tidy = tidyNumberText(text);
    const negative = /^[-−–]/.test(tidy);
    const size = readNumber(negative ? tidy.slice(1) : tidy);
    const value = size === null ? null : negative ? -size : size;
    return value !== null && notedShape[key].safeParse(value).success ? { ok: true, value } : refused(text, expected);
  };
}

function choice(states: readonly string[]): Read {
  return (text) => {
    const found = states.find((state) => state === text.trim().toLowerCase());
    return found === undefined ? refused(text, `one of ${states.join(', ')}`) : { ok: true, value: found };
  };
}

const readCrpsSigns: Read = (text) => {
  const words = text
    .toLowerCase()
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
  if (words.length === 1 && words[0] === 'none') return { ok: true, value: [] };
  const wrong = words.find((word) => !CRPS_SIGNS.some((sign) => kebabCase(sign) === word));
  if (wrong !== undefined || words.length === 0) {
    return refused(wrong ?? text, `none, nor of ${CRPS_SIGNS.map(kebabCase).join(', ')} with commas between`);
  }
  return { ok: true, value: CRPS_SIGNS.filter((sign) => words.includes(kebabCase(sign))) };
};

const readRater: Read = (text) =>
  notedShape.rater.safeParse(text.trim()).success
    ? { ok: true, value: text.trim() }
    : refused(text, 'a number or initials of at most four letters or digits; never a name');

const HOURS = 'a number of hours from 0 to 24';

/** Every value that is noted, by its flag. Comments are read by the visit's own reader. */
export const NOTED_VALUES = {
  pain: { path: 'pain', read: number('pain', 'a number from 0 to 10') },
  skin: { path: 'skin', read: choice(SKIN_STATES) },
  sensation: { path: 'sensation', read: choice(CHANGE_STATES) },
  colour: { path: 'colour', read: choice(CHANGE_STATES) },
  infection: { path: 'infection', read: readYesNo },
  deformity: { path: 'deformity', read: readYesNo },
  crpsSigns: { path: 'crpsSigns', read: readCrpsSigns },
  fits: { path: 'fits', read: readYesNo },
  redirects: { path: 'redirects', read: readYesNo },
  measuredDifferential: { path: 'measuredDifferential', read: number('measuredDifferential', 'a number of degrees from 0 to 60') },
  freePip: { path: 'freePip', read: number('freePip', 'a number of degrees from 0 to 130') },
  closedAt: { path: 'closedAt', read: number('closedAt', 'a number of mm from -50 to 50') },
  wear: { path: 'wear', read: number('wear', HOURS) },
  wearAgreed: { path: 'wearAgreed', read: number('wearAgreed', HOURS) },
  rater: { path: 'rater', read: readRater },
  repeated: { path: 'repeated', read: readYesNo },
  weaning: { path: 'weaning', read: readYesNo },
  goal: { path: 'goal', read: number('goal', 'a number of degrees from 0 to 60') },
} as const satisfies Readonly<Record<string, NotedValue>>;

type Asked = keyof typeof NOTED_VALUES;

function question(key: Asked, label: string, hint: string): Question {
  return { key: NOTED_VALUES[key].path, label, hint, required: false, read: NOTED_VALUES[key].read };
}

const YES_NO = 'yes or no';

/** Asked first: one keystroke when all is well, else one by one. */
export const ALL_WELL_KEY = 'allWell';
export const HARM_QUESTIONS: readonly Question[] = [
  {
    key: ALL_WELL_KEY,
    label: 'Is all well?',
    hint: 'no pain at rest, skin whole, feeling and colour as always, no infection, no new deformity, no sign of CRPS: y; else n, and each is asked',
    required: false,
    oneKey: true,
    read: readYesNo,
  },
  question('pain', 'Pain at rest', '0 to 10, the mean of the last two days'),
  question('skin', 'Skin under the device', 'ok (marks gone in 20 minutes are ok), marks or broken'),
  question('sensation', 'Feeling', 'ok, returned (changed, came back after taking it off) or stays'),
  question('colour', 'Colour and warmth', 'ok, returned or stays'),
  question('infection', 'Signs of infection', YES_NO),
  question('deformity', 'New deformity or unstable joint', YES_NO),
  question('crpsSigns', 'Signs of CRPS', `none, or of ${CRPS_SIGNS.map(kebabCase).join(',')}`),
].map((asked, k) => (k === 0 ? asked : { ...asked, unless: { key: ALL_WELL_KEY, value: true } }));

/** Asked after motion. */
export const DEVICE_QUESTIONS: readonly Question[] = [
  question('rater', 'Who measured', 'a number or initials; never a name'),
  question('repeated', 'PIP motion measured three times, and the mean noted?', YES_NO),
  question('wear', 'Hours worn a day', 'since the visit before, 0 to 24'),
  question('fits', 'Does it fit?', YES_NO),
  question('redirects', 'Does it redirect the motion to the PIP joint?', YES_NO),
  question('wearAgreed', 'Hours a day agreed from now on', '0 to 24'),
  question('weaning', 'Is it being weaned off?', YES_NO),
];

/** What "all well" notes, for the signs that nothing else was said of. */
export function allWell(said: (key: string) => boolean): readonly (readonly [string, unknown])[] {
  return HARM_KEYS.filter((key) => !said(key)).map((key) => [key, ALL_WELL[key]]);
}
