import { daysBetween } from '../units/day.ts';
import type { Lacking } from '../words/advice/course/course-figures.ts';
import { believedChange, type Case } from './case.ts';
import { CLOSE_REASONS, type CloseReason } from './case-schema.ts';
import { deficitsOf } from './course/course.ts';

/** Degrees from which a gain is counted, unless two raters' readings ask for more to be believed. */
export const GAIN = 10;

/** A closed case in an audit. */
export interface AuditedCase {
  readonly code: string;
  readonly invented: boolean;
  /** The active PIP motion that lacked more at the first visit; of equals extension. */
  readonly motion: Lacking;
  /** Its deficit at the first and the last visit, degrees. */
  readonly before: number;
  readonly after: number;
  /** Whether so much was gained at the last visit, and is believed. */
  readonly gained: boolean;
  /** Weeks from the first visit to the first at which the gain stood; null where it did not. */
  readonly weeks: number | null;
  readonly strips: number;
  readonly plates: number;
  readonly reason: CloseReason;
}

export interface Audit {
  readonly cases: readonly AuditedCase[];
  readonly gained: number;
  /** Median of those who gained; null where nobody did. */
  readonly medianWeeks: number | null;
  readonly reasons: Readonly<Record<CloseReason, number>>;
  /** Left out: open cases, and closed ones with fewer than two visits. */
  readonly open: number;
  readonly tooFewVisits: number;
  readonly invented: boolean;
}

const DAYS_A_WEEK = 7;

/** What closed cases came to: who gained 10 degrees or more of the motion that lacked more, in how many weeks, with how many strips, why they were closed. */
export function auditOf(records: readonly Case[]): Audit {
  const closed = records.filter((record) => record.closed !== null);
  const counted = closed.filter(({ visits }) => visits.length >= 2);
  const cases = counted.map(audited);
  const weeks = cases.flatMap((one) => (one.weeks === null ? [] : [one.weeks]));
  return {
    cases,
    gained: cases.filter(({ gained }) => gained).length,
    medianWeeks: median(weeks),
    reasons: Object.fromEntries(
      CLOSE_REASONS.map((reason) => [reason, cases.filter((one) => one.reason === reason).length]),
    ) as Audit['reasons'],
    open: records.length - closed.length,
    tooFewVisits: closed.length - counted.length,
    invented: cases.some(({ invented }) => invented),
  };
}

function audited(record: Case): AuditedCase {
  const { code, invented, visits, closed } = record;
  const deficits = deficitsOf(record);
  const start = deficits[0] ?? { extension: 0, flexion: 0 };
  const motion: Lacking = start.flexion > start.extension ? 'flexion' : 'extension';
  const gainAt = (k: number) => start[motion] - (deficits[k]?.[motion] ?? start[motion]);
  const enough = (k: number) => gainAt(k) >= Math.max(GAIN, believedChange(visits[0], visits[k]));
  const last = visits.length - 1;
  const gained = enough(last);
  const at = gained ? visits.findIndex((_, k) => enough(k)) : -1;
  const first = visits[0]?.date ?? '';
  return {
    code,
    invented,
    motion,
    before: start[motion],
    after: deficits[last]?.[motion] ?? start[motion],
    gained,
    weeks: at < 0 ? null : daysBetween(first, visits[at]?.date ?? first) / DAYS_A_WEEK,
    strips: visits.filter(({ made }) => made?.kind === 'strip').length,
    plates: visits.filter(({ made }) => made?.kind === 'plate').length,
    reason: closed?.reason ?? 'other',
  };
}

function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
