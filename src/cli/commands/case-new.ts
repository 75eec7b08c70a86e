import { createCase } from '../../files/case-store.ts';
import { readHandFile } from '../../files/read-hand-file.ts';
import { checkCaseCode } from '../../hand/case-code.ts';
import { DIGITS, SIDES } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import type { Case } from '../../record/case.ts';
import { CASE_SCHEMA_ID, type CaseFile } from '../../record/case-schema.ts';
import { readCase } from '../../record/read-case.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { didYouMean } from '../../units/typed-name.ts';
import { askAll, personsTerminal, type Question, type Talk } from '../ask.ts';
import { defineCommand } from '../define-command.ts';
import { sayWaiting } from '../exit.ts';
import { argument, type FlagsOf, flag, flagProblem } from '../flags/flag.ts';

const flags = [
  flag('--code <code>', 'case code of capital letters, digits and hyphens; never a name or a date of birth'),
  flag('--side <side>', `hand: ${SIDES.join(' or ')}`),
  flag('--digit <digit>', `digit to be treated: ${DIGITS.join(', ')}`),
  flag('--hand <file>', 'hand file (JSON); gives code, side and target digit where the flags do not'),
  flag('--note <text>', 'one line; never who the person is'),
  flag('--invented', 'mark the case as made up'),
] as const;
type CaseNewFlags = FlagsOf<typeof flags>;

/** `case new`: reads the hand, asks for what is missing at a terminal, and writes a new file; an existing one is never touched. */
export const caseNew = defineCommand({
  name: 'case new',
  group: 'Keep a case',
  about: 'open a case: a file without visits yet',
  args: [argument('<file>', 'case file to write (JSON)')],
  flags,
  read: async ([path], given) => {
    const made = await newCaseFile(given, personsTerminal());
    return made.ok ? success({ path, file: made.value.file }, made.warnings) : made;
  },
  make: async ({ path, file }) => {
    const written = await createCase(path, file, { onWait: sayWaiting(path) });
    return written.ok ? success({ path, made: written.value }, written.warnings) : written;
  },
  report: {
    text: ({ path, made: { code, side, digit } }) =>
      `${path}: case ${code}, ${digit} finger, ${side} hand, no visit yet. Add one: knucklewright case add ${path}\n`,
  },
});

/** The case that the flags, the hand file and the person's answers make, with all their problems at once. */
export async function newCaseFile(flags: CaseNewFlags, talk: Talk | null): Promise<Result<Case>> {
  const hand = flags.hand === undefined ? null : await readHandFile(flags.hand);
  if (hand && !hand.ok) return hand;
  const answered = await withAnswers(given(flags, hand?.ok ? hand.value : null), talk);
  if (!answered.ok) return answered;
  const known = hand?.ok ? hand.value : null;
  const read = readCase({
    schema: CASE_SCHEMA_ID,
    ...answered.value,
    ...(flags.invented || known?.invented ? { invented: true } : {}),
    ...(flags.note === undefined ? {} : { note: flags.note }),
    ...(known === null ? {} : { hand: known.source }),
    visits: [],
  } satisfies Record<keyof CaseFile, unknown> | object);
  return read;
}

type Known = Readonly<Record<'code' | 'side' | 'digit', unknown>>;

function given(flags: CaseNewFlags, hand: Hand | null): Known {
  return { code: flags.code ?? hand?.code, side: flags.side ?? hand?.side, digit: flags.digit ?? hand?.target?.digit };
}

async function withAnswers(known: Known, talk: Talk | null): Promise<Result<Known>> {
  const missing = QUESTIONS.filter(({ key }) => known[key as keyof Known] === undefined);
  if (missing.length === 0) return success(known);
  const names = missing.map(({ key }) => `--${key}`).join(', ');
  if (talk === null) return failure(flagProblem(names, 'missing; give them as flags, or run this at a terminal, which asks for them'));
  const answers = await askAll(missing, talk);
  if (answers === null) return failure(flagProblem(names, 'the input ended before all was answered; nothing was written'));
  return success({ ...known, ...Object.fromEntries(answers) });
}

const QUESTIONS: readonly Question[] = [
  {
    key: 'code',
    label: 'Case code',
    hint: 'capital letters, digits and hyphens, at most 24, as DEMO-01; never a name or a date of birth',
    required: true,
    read: (text) => {
      const checked = checkCaseCode(text);
      return checked.ok ? { ok: true, value: checked.code } : checked;
    },
  },
  { key: 'side', label: 'Side of the hand', hint: SIDES.join(' or '), required: true, read: word(SIDES) },
  { key: 'digit', label: 'Digit whose PIP joint is treated', hint: DIGITS.join(', '), required: true, read: word(DIGITS) },
];

function word(words: readonly string[]): Question['read'] {
  return (text) => {
    const typed = text.toLowerCase();
    if (words.includes(typed)) return { ok: true, value: typed };
    return { ok: false, reason: `${quote(text)} is not it${didYouMean(typed, words, 'it can be')}` };
  };
}
