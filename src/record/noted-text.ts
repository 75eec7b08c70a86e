import { plain } from '../units/number.ts';
import type { Noted } from './case.ts';
import { neutralZero } from './motion-text.ts';

const number = (value: number | null) => (value === null ? '' : plain(value, 1));
const yesNo = (value: boolean | null) => (value === null ? '' : value ? 'yes' : 'no');

/** What was noted at a visit, a row or a column each, harm first; '' where it was not noted. Comments stand for themselves. */
export const NOTED_ROWS: readonly (readonly [heading: string, value: (noted: Noted) => string])[] = [
  ['pain, 0 to 10', ({ pain }) => number(pain)],
  ['skin', ({ skin }) => skin ?? ''],
  ['feeling', ({ sensation }) => sensation ?? ''],
  ['colour', ({ colour }) => colour ?? ''],
  ['infection', ({ infection }) => yesNo(infection)],
  ['new deformity', ({ deformity }) => yesNo(deformity)],
  ['signs of CRPS', ({ crpsSigns }) => (crpsSigns === null ? '' : `${crpsSigns.length}`)],
  ['worn, h/day', ({ wear }) => number(wear)],
  ['agreed, h/day', ({ wearAgreed }) => number(wearAgreed)],
  ['fits', ({ fits }) => yesNo(fits)],
  ['redirects', ({ redirects }) => yesNo(redirects)],
  ['measured differential', ({ measuredDifferential }) => number(measuredDifferential)],
  ['free PIP flexion', ({ freePip }) => number(freePip)],
  [
    'pencil test, without and with',
    ({ pencil }) => [pencil?.without, pencil?.with].flatMap((motion) => (motion ? [neutralZero(motion)] : [])).join(' and '),
  ],
  ['closed at, mm', ({ closedAt }) => number(closedAt)],
  ['rater', ({ rater }) => rater ?? ''],
  ['measured three times', ({ repeated }) => yesNo(repeated)],
  ['weaning', ({ weaning }) => yesNo(weaning)],
  ['goal', ({ goal }) => number(goal)],
];
