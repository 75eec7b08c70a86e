import { useMemo } from 'preact/hooks';
import { blockOnPaper } from '../../../papers/block-on-paper.ts';
import type { Case } from '../../../record/case.ts';
import type { CaseFile } from '../../../record/case-schema.ts';
import { type CourseAdvice, courseAdvice } from '../../../record/course/course-advice.ts';
import { readCase } from '../../../record/read-case.ts';
import { CHART_WORDS } from '../../../words/record/chart-words.ts';
import { useStore } from '../../parts/store-context.ts';
import { type Entries, HARM_ENTRIES } from '../../state.ts';
import { addVisit, proposedVisit } from '../../visit.ts';

export interface CourseNow {
  /** The case as it is recorded. */
  readonly record: Case;
  readonly advice: CourseAdvice;
  /** The advice counts what is typed now as well, which is not recorded yet. */
  readonly isAhead: boolean;
}

/** The course of the open case with its advice; what is typed now counts at once. Null where no case is open. */
export function useCourse(): CourseNow | null {
  const store = useStore();
  const file = store.file.value;
  const { visit } = store.entries.value;
  const { language } = store.settings.value;
  const record = useMemo(() => (file === null ? null : readCase(file)), [file]);
  const ahead = useMemo(() => (file === null || !isHarmTyped(visit) ? null : aheadOf(file, visit)), [file, visit]);
  return useMemo(() => {
    if (!record?.ok) return null;
    const speech = { blockName: blockOnPaper(CHART_WORDS[language]) };
    const recorded = () => ({ record: record.value, advice: courseAdvice(record.value, language, speech), isAhead: false });
    if (ahead === null) return recorded();
    const advice = courseAdvice(ahead.record, language, speech);
    if (ahead.counts === 'all') return { record: record.value, advice, isAhead: true };
    const steps = harmSteps(advice.steps);
    return steps.length === 0 ? recorded() : { record: record.value, advice: { ...advice, steps, reminders: [] }, isAhead: true };
  }, [record, ahead, language]);
}

/** What signs of harm ask for by themselves: every stop, and a pause that is not for motion alone, which was not measured yet. */
export function harmSteps(steps: CourseAdvice['steps']): CourseAdvice['steps'] {
  return steps.filter((step) =>
    step.rule === 'PAUSE' ? step.figures.causes.some(({ cause }) => cause !== 'motion' && cause !== 'bothMotions') : step.action === 'stop',
  );
}

const isHarmTyped = (visit: Entries['visit']): boolean => HARM_ENTRIES.some((id) => id !== 'date' && visit[id] !== '');

/**
 * The case with the visit that is typed. While its motion cannot be read the signs of harm count alone, with the motion of the last visit:
 * a stop must not wait for a goniometer.
 */
export function aheadOf(file: CaseFile, visit: Entries['visit']): { readonly record: Case; readonly counts: 'all' | 'harm' } | null {
  const whole = addVisit(file, visit, null);
  if (whole.ok) return { record: whole.value, counts: 'all' };
  const last = proposedVisit(file, file.visits.at(-1)?.date ?? NO_DAY);
  const motion = last.lacks === '' ? { lacks: '0', bends: '100' } : { lacks: last.lacks, bends: last.bends };
  const harm = Object.fromEntries(HARM_ENTRIES.map((id) => [id, visit[id]]));
  const alone = addVisit(file, { ...last, ...harm, date: last.date, ...motion, correcting: visit.correcting }, null);
  return alone.ok ? { record: alone.value, counts: 'harm' } : null;
}

/** Stands for the day of a first visit, on which no sign of harm hangs. */
const NO_DAY = '2000-01-01';
