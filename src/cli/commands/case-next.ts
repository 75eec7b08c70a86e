import { loadCase } from '../../files/case-store.ts';
import { CAUTIONS } from '../../pattern/cautions.ts';
import type { Case } from '../../record/case.ts';
import { COURSE_RULES } from '../../record/course-rules.ts';
import { extensionText } from '../../record/motion-text.ts';
import { type NextSteps, nextSteps } from '../../record/next-step.ts';
import { MOTIONS } from '../../record/progress.ts';
import { otherHandTotal, totalAtVisit } from '../../record/total-active-motion.ts';
import { plain } from '../../units/number.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { roundedTotal } from '../describe-case.ts';
import { argument } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `case next`: what the last two visits suggest, each rule with its source. */
export const caseNext = defineCommand({
  name: 'case next',
  group: 'Keep a case',
  about: 'what the last two visits suggest, each rule with its source',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [jsonFlag],
  read: ([path]) => loadCase(path),
  make: (record) => success({ record, next: nextSteps(record) }),
  report: {
    text: ({ record, next }) => nextText(record, next),
    json: ({ record, next }, warnings) => ({ ...nextJson(record, next), warnings }),
  },
});

function lastTotal(record: Case) {
  const last = record.visits.at(-1);
  return last === undefined ? null : roundedTotal(totalAtVisit(last, otherHandTotal(record)));
}

function nextJson(record: Case, next: NextSteps): object {
  const { code, side, digit, invented } = record;
  return {
    code,
    side,
    digit,
    invented,
    ...next,
    totalActiveMotion: lastTotal(record),
    readingRule: { rule: 'MEASURING_ERROR', ...COURSE_RULES.MEASURING_ERROR },
    cautions: [CAUTIONS.skin, CAUTIONS.contraindications, CAUTIONS.evidence],
  };
}

function nextText(record: Case, { pip, between, steps }: NextSteps): string {
  const lines = [
    `${record.code}, ${record.digit} finger, ${record.side} hand${record.invented ? ' (INVENTED: nobody was measured)' : ''}`,
    '',
  ];
  if (pip !== null && between !== null) {
    lines.push(`Active PIP motion, ${between[0]} to ${between[1]}`);
    for (const motion of MOTIONS) {
      const { before, after, gain, reading, deficit } = pip[motion];
      const change = reading === 'unchanged' ? 'no change' : `${reading} ${plain(Math.abs(gain), 1)}`;
      const shown = motion === 'flexion' ? (value: number) => plain(value, 1) : extensionText;
      const name = motion === 'flexion' ? 'flexion' : 'extension deficit';
      lines.push(`  ${name.padEnd(18)}${shown(before)} to ${shown(after)}: ${change}; still lacks ${plain(deficit, 1)}`);
    }
    lines.push(`  ${COURSE_RULES.MEASURING_ERROR.says} (${COURSE_RULES.MEASURING_ERROR.source})`, '');
  }
  const total = lastTotal(record);
  if (total !== null) {
    const against = total.comparedWith === 'otherHand' ? `the other hand's ${plain(total.reference, 1)}` : `the normal ${total.reference}`;
    lines.push(
      `Total active motion ${plain(total.degrees, 1)}, ${plain(total.percent, 1)} % of ${against}: ${total.grade} (${total.scheme})`,
      '',
    );
  }
  for (const { action, message, ruleSays, source } of steps)
    lines.push(`${action.toUpperCase()}: ${message}`, `  Rule: ${ruleSays} (${source})`);
  lines.push('', CAUTIONS.skin, CAUTIONS.contraindications, CAUTIONS.evidence);
  return `${lines.join('\n')}\n`;
}
