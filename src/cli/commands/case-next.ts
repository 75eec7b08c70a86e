import { loadCase } from '../../files/case-store.ts';
import { CAUTIONS } from '../../pattern/cautions.ts';
import { BELIEVED_CHANGE_SOURCE } from '../../record/believed-change.ts';
import type { Case } from '../../record/case.ts';
import { closedText } from '../../record/closed-text.ts';
import { type CourseAdvice, courseAdvice } from '../../record/course/course-advice.ts';
import { neutralZero } from '../../record/motion-text.ts';
import { otherHandTotal, totalAtVisit } from '../../record/total-active-motion.ts';
import { plain } from '../../units/number.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { roundedTotal } from '../describe-case.ts';
import { argument } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `case next`: what the visits suggest, the gravest first, each step with what it was computed from. */
export const caseNext = defineCommand({
  name: 'case next',
  group: 'Keep a case',
  about: 'what to do after the last visit, the gravest first, with figures and sources',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [jsonFlag],
  read: ([path]) => loadCase(path),
  make: (record) => success({ record, advice: courseAdvice(record, 'en') }),
  report: {
    text: ({ record, advice }) => nextText(record, advice),
    json: ({ record, advice }, warnings) => ({ ...nextJson(record, advice), warnings }),
  },
});

function lastTotal(record: Case) {
  const last = record.visits.at(-1);
  return last === undefined ? null : roundedTotal(totalAtVisit(last, otherHandTotal(record)));
}

function nextJson(record: Case, { steps, reminders, slope }: CourseAdvice): object {
  const { code, side, digit, invented, closed } = record;
  return {
    code,
    side,
    digit,
    invented,
    closed,
    steps: steps.map(({ rule, action, urgency, message, sourceText, figures }) => ({
      rule,
      action,
      ...(urgency && { urgency }),
      message,
      source: sourceText,
      figures,
    })),
    reminders,
    slope,
    believedChange: { source: BELIEVED_CHANGE_SOURCE },
    totalActiveMotion: lastTotal(record),
    cautions: [CAUTIONS.skin, CAUTIONS.contraindications, CAUTIONS.evidence],
  };
}

function nextText(record: Case, { steps, reminders, starting }: CourseAdvice): string {
  const { code, digit, side, invented, visits, closed } = record;
  const lines = [`${code}, ${digit} finger, ${side} hand${invented ? ' (INVENTED: nobody was measured)' : ''}`];
  if (closed !== null) lines.push(`The case was ${closedText(closed)}. What follows is what the last visit suggested.`);
  const [first, last] = [visits[0], visits.at(-1)];
  if (first === undefined || last === undefined) return `${lines.join('\n')}\n\nNo visit yet. Add one: knucklewright case add\n`;
  const from = visits.length > 1 ? `${neutralZero(first.goniometry.pip.active)} on ${first.date}, ` : '';
  lines.push(
    `Active PIP motion (extension-0-flexion): ${from}${neutralZero(last.goniometry.pip.active)} on ${last.date}; ${visits.length} ${visits.length === 1 ? 'visit' : 'visits'}`,
  );
  const total = lastTotal(record);
  if (total !== null) {
    const against = total.comparedWith === 'otherHand' ? `the other hand's ${plain(total.reference, 1)}` : `the normal ${total.reference}`;
    lines.push(
      `Total active motion ${plain(total.degrees, 1)}, ${plain(total.percent, 1)} % of ${against}: ${total.grade} (${total.scheme})`,
    );
  }
  for (const [k, { title, when, message, sourceText }] of steps.entries()) {
    const head = `${title.toUpperCase()}${when === null ? '' : `, ${when.toUpperCase()}`}`;
    lines.push('', k === 0 ? `${head}: ${message}` : `Also ${title.toLowerCase()}: ${message}`, `  (${sourceText})`);
  }
  if (reminders.length > 0) lines.push('', ...reminders.map((reminder) => `! ${reminder}`));
  lines.push('', starting, CAUTIONS.skin, CAUTIONS.contraindications, CAUTIONS.evidence);
  return `${lines.join('\n')}\n`;
}
