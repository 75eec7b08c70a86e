import { loadCase } from '../../files/case-store.ts';
import { blockOnPaper } from '../../papers/block-on-paper.ts';
import { BELIEVED_CHANGE_SOURCE, type Case, type Visit } from '../../record/case.ts';
import { closedText } from '../../record/case-text.ts';
import { type CourseAdvice, courseAdvice } from '../../record/course/course-advice.ts';
import { neutralZero } from '../../record/motion-text.ts';
import { otherHandTotal, totalAtVisit, totalPassiveMotion } from '../../record/total-active-motion.ts';
import { success } from '../../units/result.ts';
import type { PlanSpeech } from '../../words/advice/plan/plan-words.ts';
import { cautionsEnglish, cautionWords } from '../../words/cautions.ts';
import type { Language } from '../../words/language.ts';
import { RECORD_WORDS } from '../../words/record/record-words.ts';
import { defineCommand } from '../define-command.ts';
import { roundedTotal } from '../describe-case.ts';
import { languageFlag, readLanguageFlag } from '../flags/common-flags.ts';
import { argument } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `case next`: what the visits suggest, the gravest first, each step with what it was computed from. */
export const caseNext = defineCommand({
  name: 'case next',
  group: 'Keep a case',
  about: 'what to do after the last visit, the gravest first, with figures and sources',
  args: [argument('<file>', 'case file (JSON)')],
  flags: [languageFlag, jsonFlag],
  read: async ([path], given) => {
    const read = await loadCase(path);
    return read.ok ? success({ record: read.value, language: readLanguageFlag(given.language) }, read.warnings) : read;
  },
  make: (asked) => success(asked),
  report: {
    text: ({ record, language }) => nextText(record, courseAdvice(record, language, { blockName: nameAndId(language) }), language),
    json: ({ record }, warnings) => ({ ...nextJson(record, courseAdvice(record, 'en')), warnings }),
  },
});

/** How a block runs, and its id, by which it is drawn. */
function nameAndId(language: Language): PlanSpeech['blockName'] {
  return (block) => `${blockOnPaper(RECORD_WORDS[language])(block)} (${block.id})`;
}

function lastTotal(record: Case) {
  const last = record.visits.at(-1);
  return last === undefined ? null : roundedTotal(totalAtVisit(last, otherHandTotal(record)));
}

function nextJson(record: Case, { steps, reminders, slope }: CourseAdvice): object {
  const { code, side, digit, invented, closed, visits } = record;
  const last = visits.at(-1);
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
    totalPassiveMotion: last === undefined ? null : totalPassiveMotion(last),
    cautions: [cautionsEnglish.skin, cautionsEnglish.contraindications, cautionsEnglish.evidence],
  };
}

function nextText(record: Case, { steps, reminders, starting }: CourseAdvice, language: Language): string {
  const words = RECORD_WORDS[language];
  const { code, invented, visits, closed } = record;
  const lines = [`${code}, ${words.who(record)}${invented ? ` (${words.invented})` : ''}`];
  const [first, last] = [visits[0], visits.at(-1)];
  if (closed !== null) lines.push(`${words.caseWas(closedText(closed, words))} ${words.whatFollows}`);
  if (first === undefined || last === undefined) return `${lines.join('\n')}\n\n${words.noVisit} ${words.addOne}\n`;
  const motionOf = ({ date, goniometry }: Visit) => ({ date, motion: neutralZero(goniometry.pip.active, words.number) });
  lines.push(`${words.motionNow(visits.length > 1 ? motionOf(first) : null, motionOf(last))}; ${words.visits(visits.length)}`);
  const total = lastTotal(record);
  const passive = totalPassiveMotion(last);
  if (total !== null)
    lines.push(words.total({ ...total, otherHand: total.comparedWith === 'otherHand', grade: words.grades[total.grade] }));
  if (passive !== null) lines.push(words.totalPassive(passive));
  for (const [k, { title, when, message, sourceText }] of steps.entries()) {
    const head = `${k === 0 ? title : words.also(title)}${when === null ? '' : `, ${when}`}`;
    lines.push('', `${k === 0 ? head.toUpperCase() : head}: ${message}`, `  (${sourceText})`);
  }
  if (reminders.length > 0) lines.push('', ...reminders.map((reminder) => `! ${reminder}`));
  const { skin, contraindications, evidence } = cautionWords(language);
  lines.push('', starting, skin, contraindications, evidence);
  return `${lines.join('\n')}\n`;
}
