import { DIGITS, type DigitName } from '../hand/digits.ts';
import { DIGIT_FIELDS, type Field, PALM_FIELDS, WEB_FIELDS } from '../hand/fields.ts';
import { NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { getOwn } from '../units/json-text.ts';
import { visible } from '../units/quote.ts';
import type { Problem, Warning } from '../units/result.ts';
import { capital } from '../words/hand-words.ts';
import type { Format } from './format.ts';
import { type Entries, MOTION_IDS, typedAt } from './state.ts';
import type { Texts } from './texts/english.ts';
import type { MessageArgs } from './texts/message-args.ts';
import { MOTION_RANGE } from './typed-motion.ts';

/** A sentence for the reader; `english` when it is the program's own, because the page has none in his language. */
export interface Sentence {
  readonly text: string;
  readonly english: boolean;
}

export interface Speaker {
  readonly texts: Texts;
  readonly format: Format;
  readonly entries: Entries;
}

const FIELDS: Readonly<Record<string, Field>> = { ...DIGIT_FIELDS, ...PALM_FIELDS };
const fieldAt = (where: string): Field | undefined => {
  const parts = where.split('.');
  return FIELDS[parts.at(-1) ?? ''] ?? (getOwn(WEB_FIELDS, parts[0] ?? '') as Field | undefined);
};

export function sayProblem(problem: Problem, speaker: Speaker): Sentence {
  return say(speaker.texts.message.problem, problem, speaker);
}

export function sayWarning(warning: Warning, speaker: Speaker): Sentence {
  return say(speaker.texts.message.warning, warning, speaker);
}

/** What a field is called, with its digit: "Ring finger: width". The path itself where it is none of ours. */
export function fieldName(where: string, texts: Texts): string {
  const [first = '', second = '', third = ''] = where.split('.');
  const digit = DIGITS.find((d) => d === second);
  if (first === 'digits' && digit)
    return third === '' ? texts.hand.first[digit] : `${texts.hand.first[digit]}: ${measured(third, texts) ?? third}`;
  if (first === 'webSetback') return webName(second, texts);
  const motion = MOTION_IDS.find((id) => id === second);
  if (first === 'motion' && motion) return `${texts.finger.motion[motion]}: ${third === 'bends' ? texts.finger.bends : texts.finger.lacks}`;
  if (first === 'visit') return (getOwn(texts.visits.field, second) as string | undefined) ?? where;
  if (first === 'plate' || first === 'angle') return texts.plate.angle;
  if (first === 'target') return texts.finger.target;
  if (first === 'print') return second === 'across' ? texts.files.across : texts.files.along;
  const option = getOwn(texts.options.name, first) as string | undefined;
  if (typeof option === 'string') return option;
  const others: Record<string, string> = {
    code: texts.files.code,
    side: texts.finger.side,
    note: texts.files.note,
    date: texts.options.date,
    diagnosis: texts.more.diagnosis,
    weeks: texts.more.weeks,
  };
  const palm = measured(first, texts);
  return palm ? capital(palm) : (others[first] ?? where);
}

/** What a measure is called where it is taken: a length by its two ends, as its row has it. */
export function measured<Id extends string>(
  id: Id,
  { hand }: Texts,
): Id extends keyof Texts['hand']['measure'] ? string : string | undefined {
  return (getOwn(hand.between, id) ?? getOwn(hand.measure, id)) as string;
}

/** "Web setback, ring – little". */
export function webName(web: string, texts: Texts): string {
  return `${capital(texts.hand.measure.webSetback)}, ${web
    .split('-')
    .map((d) => texts.hand.short[d as DigitName])
    .join(' – ')}`;
}

function say(known: Readonly<Record<string, unknown>>, about: Problem | Warning, speaker: Speaker): Sentence {
  const message = getOwn(known, saidAs(about)) as ((said: MessageArgs) => string) | undefined;
  if (message) {
    const said = saidOf(about, speaker);
    const text = message(said);
    // A sentence that begins with an option's name begins with a capital.
    return { text: said.name !== '' && text.startsWith(said.name) ? capital(text) : text, english: false };
  }
  const where = about.where ?? '';
  const text = where !== '' && about.message.startsWith(`${where}: `) ? about.message.slice(where.length + 2) : about.message;
  const next = 'next' in about && about.next ? `${/[.!?]$/.test(text) ? '' : '.'} ${about.next}` : '';
  return { text: `${text}${next}`, english: true };
}

/** Codes that say the same to a reader of the page are said by one sentence. */
function saidAs({ code, where }: Problem | Warning): string {
  if (code === 'CASE_NEWER') return 'FILE_NEWER';
  return code === 'FIELD_OUT_OF_RANGE' && (where === 'visits' || where === 'amendments') ? 'CASE_FULL' : code;
}

function saidOf(about: Problem | Warning, { texts, format, entries }: Speaker): MessageArgs {
  const where = placeOf(about.where ?? '');
  const parts = where.split('.');
  const digit: DigitName | '' = DIGITS.find((d) => d === parts[1]) ?? (['target', 'motion'].includes(parts[0] ?? '') ? entries.target : '');
  const option = NUMBER_OPTIONS.find((o) => o.key === parts[0]);
  const field = fieldAt(where);
  const isMotion = parts[0] === 'motion' || parts[0] === 'target';
  const isFreeFlexion = about.code === 'PIP_FLEXION_NOT_FREE' || about.code === 'PLATE_STOPS_PIP';
  const isAngle = option ? option.unit === 'degrees' : isMotion || isFreeFlexion;
  const shown = (value: number | undefined) =>
    value === undefined ? '' : isFreeFlexion ? format.degrees(value, 0) : isAngle ? format.degrees(value) : format.length(value);
  const typed = typedAt(entries, where);
  const isWarning = !('kind' in about);
  const motionRange = MOTION_RANGE[parts[2] === 'bends' ? 'bends' : 'lacks'];
  return {
    // A name in a file is looked for as it stands there.
    name: about.code === 'JSON_NAME_TWICE' ? visible(where) : fieldName(where, texts),
    digit: digit === '' ? '' : texts.hand.finger[digit],
    value: isWarning ? shown(about.value) : typed === '' ? '' : texts.quoted(visible(typed)),
    limit: shown(about.limit),
    range: option
      ? optionRange(option, format, texts)
      : isMotion
        ? format.degreesRange(motionRange.from, motionRange.to)
        : field
          ? fieldRange(field, about.code === 'VALUE_UNUSUAL' ? field.typical : field.refuse, format)
          : '',
  };
}

/** The page's own path of a problem: it asks for motions where the hand file has deficits. */
function placeOf(where: string): string {
  const motions: Record<string, string> = {
    'target.pipExtensionDeficit': 'motion.active.lacks',
    'target.pipFlexionDeficit': 'motion.active.bends',
    'target.pipExtensionDeficitPassive': 'motion.passive.lacks',
    'target.pipFlexionDeficitPassive': 'motion.passive.bends',
  };
  return motions[where] ?? where;
}

function fieldRange(field: Field, range: Field['refuse'], format: Format): string {
  return field.unit === 'mm' ? format.lengthRange(range.from, range.to) : format.degreesRange(range.from, range.to);
}

function optionRange(option: (typeof NUMBER_OPTIONS)[number], format: Format, texts: Texts): string {
  if (option.unit === 'mm') return format.lengthRange(option.low, option.high);
  const bare = `${format.number(option.low)} ${texts.to} ${format.number(option.high)}`;
  return option.unit === 'fraction' ? bare : `${bare} ${texts.degrees}`;
}

/** The field that a problem's path belongs to: the one to mark and to lead to. */
export function fieldOf(path: string, entries: Entries): string {
  const where = placeOf(path);
  const parts = where.split('.');
  if (where === 'digits' || where === '') {
    const digit = DIGITS.find((d) => entries.digits[d].width.trim() === '') ?? 'index';
    return `digits.${digit}.width`;
  }
  if (parts[0] === 'digits' && parts.length === 2)
    return `${where}.${entries.digits[parts[1] as DigitName]?.width === '' ? 'width' : 'circumference'}`;
  if (where === 'target') return 'target.digit';
  if (where === 'angle') return 'plate.angle';
  return where;
}

/** Id of the element that holds a field. */
export function elementId(where: string): string {
  return `field-${where.replaceAll('.', '-')}`;
}

/** A problem as it is shown: at which field, in which words. */
export interface Fault {
  readonly field: string;
  readonly sentence: Sentence;
  readonly problem: Problem;
}

export function faultsOf(problems: readonly Problem[], speaker: Speaker): readonly Fault[] {
  const faults: Fault[] = [];
  for (const problem of problems) {
    const fault = { field: fieldOf(problem.where, speaker.entries), sentence: sayProblem(problem, speaker), problem };
    if (!faults.some((f) => f.field === fault.field && f.sentence.text === fault.sentence.text)) faults.push(fault);
  }
  // What is wrong with a motion is said once, in the two numbers in which it was typed.
  const isOfMotion = ({ problem }: Fault) => problem.code.startsWith('MOTION_');
  return faults.filter((fault) => isOfMotion(fault) || !faults.some((other) => other.field === fault.field && isOfMotion(other)));
}
