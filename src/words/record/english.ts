import { plain } from '../../units/number.ts';
import { englishChart } from './chart-english.ts';
import type { RecordFigures } from './record-figures.ts';

/** What closed cases came to. Counts, degrees and weeks come as text. */
export const auditEnglish = {
  title: 'Audit of closed cases',
  head: 'AUDIT OF CLOSED CASES',
  inventedMark: 'INVENTED',
  under: (cases: string) => `${cases === '1' ? '1 closed case' : `${cases} closed cases`}. Degrees and weeks.`,
  invented: 'INVENTED cases are among these: nobody was measured.',
  gained: (gained: string, cases: string, gain: string) =>
    `${gained} of ${cases === '1' ? '1 closed case' : `${cases} closed cases`} gained ${gain} degrees or more of active PIP motion between the first and the last visit.`,
  half: (weeks: string) => `Half of them had that gain within ${weeks} weeks of the first visit.`,
  because: (reasons: string) => `Closed because: ${reasons}.`,
  open: (count: string) => `${count === '1' ? '1 open case is' : `${count} open cases are`} not counted.`,
  tooFew: (count: string) =>
    count === '1'
      ? '1 closed case with fewer than two visits is not counted.'
      : `${count} closed cases with fewer than two visits are not counted.`,
  counted: (gain: string, source: string) =>
    `A gain is counted of the motion that lacked more at the first visit, from ${gain} degrees, from 13 where the raters differ (${source}).`,
  alone: 'Nobody was compared with: stiff fingers also gain by time and exercise alone, so these figures do not say what the orthosis did.',
  cases: 'Cases',
  limits: 'What the figures say',
  column: {
    code: 'case',
    motion: 'motion',
    before: 'deficit first',
    after: 'deficit last',
    gained: 'gained',
    weeks: 'weeks to the gain',
    strips: 'strips',
    plates: 'plates',
    reason: 'closed because',
  },
  motion: { extension: 'extension', flexion: 'flexion' },
  underLimit: 'under the limit',
};

const n = (value: number) => plain(value, 1);
const closedFor = {
  goal: 'the goal was reached',
  plateau: 'no more was gained',
  harm: 'it harmed',
  lost: 'the person came no more',
  other: 'another reason',
};

/** What is said of a case and its visits, in English. */
export const englishRecord = {
  ...englishChart,
  audit: auditEnglish,
  title: (code: string) => `Case report ${code}`,
  span: ({ visits, first, last }: RecordFigures['span']) => (visits === 1 ? `1 visit, ${first}` : `${visits} visits, ${first} to ${last}`),
  scale: 'Degrees and mm; nothing here is drawn at true size.',
  page: (page: number, pages: number) => `page ${page} of ${pages}`,
  heading: {
    note: 'Note',
    closed: 'Closed',
    visits: 'Visits',
    made: 'What was made',
    next: (date: string) => `What next, after the visit of ${date}`,
    totals: 'Total motion, active and passive',
    cautions: 'Cautions',
  },
  reading:
    'Motion is extension deficit / flexion (25/85 lacks 25 and bends to 85; hyper is beyond straight), and under it extension-0-flexion, the neutral-zero notation. An empty place was not noted.',
  amended: ({ kind, was, on, why }: RecordFigures['amended']) =>
    `The visit of ${was} was ${kind}${on === undefined ? '' : ` on ${on}`}${why === undefined ? '' : `: ${why}`}. The file keeps what stood before.`,
  closed: ({ date, reason, note }: RecordFigures['closed']) =>
    `closed on ${date}: ${closedFor[reason]}${note === undefined ? '' : ` (${note})`}`,
  closedFor,
  caseWas: (closed: string) => `The case was ${closed}.`,
  whatFollows: 'What follows is what the last visit suggested.',
  nothingMade: 'Nothing is noted.',
  lengthNotNoted: 'Length not noted.',
  option: ({ name, value, unit, usual }: RecordFigures['option']) => `${name} ${value}${unit} (default ${usual})`,
  optionsDiffer: (options: readonly string[]) => `Differs from the default: ${options.join(', ')}.`,
  optionsUsual: 'No noted option differs from its default.',
  optionsNotNoted: 'Options not noted.',
  source: (text: string) => `Source: ${text}.`,
  also: (title: string) => `Also ${title.toLowerCase()}`,
  joint: {
    mp: { active: 'MP active', passive: 'MP passive' },
    pip: { active: 'PIP active', passive: 'PIP passive' },
    dip: { active: 'DIP active', passive: 'DIP passive' },
  },
  girth: { circumference: 'circumference', pipCircumference: 'PIP circumference' },
  noVisit: 'No visit yet.',
  addOne: 'Add one: knucklewright case add',
  motionNow: (first: { readonly motion: string; readonly date: string } | null, last: { readonly motion: string; readonly date: string }) =>
    `Active PIP motion (extension-0-flexion): ${first === null ? '' : `${first.motion} on ${first.date}, `}${last.motion} on ${last.date}`,
  visits: (count: number) => (count === 1 ? '1 visit' : `${count} visits`),
  tam: 'TAM, degrees',
  tpm: 'TPM, degrees',
  ofNormal: 'of normal',
  ofOther: 'of the other hand',
  grade: 'grade',
  grades: { excellent: 'excellent', good: 'good', fair: 'fair', poor: 'poor' },
  total: ({ degrees, percent, reference, otherHand, grade }: RecordFigures['total']) =>
    `Total active motion ${n(degrees)}, ${n(percent)} % of ${otherHand ? `the other hand's ${n(reference)}` : `the normal ${n(reference)}`}: ${grade} (ASSH total active motion)`,
  totalPassive: (degrees: number) => `Total passive motion ${n(degrees)}`,
  aboutTam: ({ reference, otherHand }: Pick<RecordFigures['total'], 'reference' | 'otherHand'>) =>
    `TAM: total active motion, MP + PIP + DIP flexion less the extension deficits, against ${otherHand ? `the other hand's ${n(reference)}` : `the normal ${n(reference)} (85 + 110 + 65)`}. Grades: ASSH total active motion; American Society for Surgery of the Hand, as handed down in teaching material (second-hand; the society's own text was not read).`,
  aboutTpm: 'TPM: total passive motion, the same of passive motion.',
  yes: 'yes',
  no: 'no',
  noted: {
    pain: 'pain, 0 to 10',
    skin: 'skin',
    sensation: 'feeling',
    colour: 'colour',
    infection: 'infection',
    deformity: 'new deformity',
    crpsSigns: 'signs of CRPS',
    wear: 'worn, h/day',
    wearAgreed: 'agreed, h/day',
    fits: 'fits',
    redirects: 'redirects',
    measuredDifferential: 'measured differential',
    freePip: 'free PIP flexion',
    pencil: 'pencil test, without and with',
    closedAt: 'closed at, mm',
    rater: 'rater',
    repeated: 'measured three times',
    weaning: 'weaning',
    goal: 'goal',
  },
  skin: { ok: 'ok', marks: 'marks', broken: 'broken' },
  change: { ok: 'ok', returned: 'changed, came back', stays: 'changed, stays' },
  and: 'and',
};
