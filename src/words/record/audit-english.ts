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
