import type { DigitName } from '../hand/digits.ts';
import { DIGITS } from '../hand/digits.ts';
import { DIGIT_FIELDS, type Field, PALM_FIELDS, TARGET_FIELDS } from '../hand/fields.ts';
import { NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { getOwn } from '../units/get-own.ts';
import { visible } from '../units/quote.ts';
import type { Problem, Warning } from '../units/result.ts';
import type { Format } from './format.ts';
import type { Entries } from './state.ts';
import type { Texts } from './texts/english.ts';
import type { MessageArgs } from './texts/message-args.ts';

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

const FIELDS: Readonly<Record<string, Field>> = { ...DIGIT_FIELDS, ...PALM_FIELDS, ...TARGET_FIELDS };

export function sayProblem(problem: Problem, speaker: Speaker): Sentence {
  return say(speaker.texts.message.problem, problem, speaker);
}

export function sayWarning(warning: Warning, speaker: Speaker): Sentence {
  return say(speaker.texts.message.warning, warning, speaker);
}

/** What a field is called, with its digit: "Ring finger: width". The path itself where it is none of ours. */
export function fieldName(where: string, texts: Texts): string {
  const [first = '', second = '', third = ''] = where.split('.');
  const label = (id: string) => getOwn(texts.field, id) as { label: string } | undefined;
  const digit = DIGITS.find((d) => d === second);
  if (first === 'digits' && digit) return third === '' ? texts.digit[digit] : `${texts.digit[digit]}: ${label(third)?.label ?? third}`;
  if (first === 'visit')
    return getOwn(
      { pipActive: texts.cases.active, pipPassive: texts.cases.passive, wear: texts.cases.wear, date: texts.cases.date },
      second,
    ) as string;
  if (first === 'plate' || first === 'angle') return texts.plate.angle;
  if (first === 'target') return second === 'digit' || second === '' ? texts.motion.target : (label(second)?.label ?? second);
  const option = getOwn(texts.options.name, first);
  if (typeof option === 'string') return option;
  const others: Record<string, string> = { code: texts.hand.code, side: texts.hand.side, note: texts.hand.note, date: texts.options.date };
  return label(first)?.label ?? others[first] ?? where;
}

function say(known: Readonly<Record<string, unknown>>, about: Problem | Warning, speaker: Speaker): Sentence {
  const message = getOwn(known, about.code) as ((said: MessageArgs) => string) | undefined;
  if (message) return { text: message(saidOf(about, speaker)), english: false };
  const where = about.where ?? '';
  const text = where !== '' && about.message.startsWith(`${where}: `) ? about.message.slice(where.length + 2) : about.message;
  const next = 'next' in about && about.next ? `${/[.!?]$/.test(text) ? '' : '.'} ${about.next}` : '';
  return { text: `${text}${next}`, english: true };
}

function saidOf(about: Problem | Warning, { texts, format, entries }: Speaker): MessageArgs {
  const where = about.where ?? '';
  const parts = where.split('.');
  const digit: DigitName | '' = DIGITS.find((d) => d === parts[1]) ?? (parts[0] === 'target' ? entries.target : '');
  const option = NUMBER_OPTIONS.find((o) => o.key === parts[0]);
  const field = FIELDS[parts.at(-1) ?? ''];
  const isAngle = option ? option.unit === 'degrees' : field?.unit === 'degrees' || about.code === 'PIP_FLEXION_NOT_FREE';
  const shown = (value: number | undefined) =>
    value === undefined
      ? ''
      : about.code === 'PIP_FLEXION_NOT_FREE'
        ? format.degrees(value, 0)
        : isAngle
          ? format.degrees(value)
          : option
            ? format.mm(value)
            : format.length(value);
  const typed = typedAt(where, entries);
  const isWarning = !('kind' in about);
  return {
    name: fieldName(where, texts),
    digit: digit === '' ? '' : texts.digitIn[digit],
    value: isWarning ? shown(about.value) : typed === '' ? '' : `“${visible(typed)}”`,
    limit: shown(about.limit),
    range: option
      ? optionRange(option, format, texts)
      : field
        ? fieldRange(field, about.code === 'VALUE_UNUSUAL' ? field.typical : field.refuse, format)
        : '',
  };
}

function fieldRange(field: Field, range: Field['refuse'], format: Format): string {
  return field.unit === 'mm' ? format.lengthRange(range.from, range.to) : format.degreesRange(range.from, range.to);
}

function optionRange(option: (typeof NUMBER_OPTIONS)[number], format: Format, texts: Texts): string {
  const bare = `${format.number(option.low)} ${texts.to} ${format.number(option.high)}`;
  return option.unit === 'fraction' ? bare : `${bare} ${option.unit === 'mm' ? texts.mm : texts.degrees}`;
}

/** What stands in the field of a path. */
export function typedAt(where: string, entries: Entries): string {
  const [first = '', second = '', third = ''] = where.split('.');
  const at: unknown =
    first === 'digits'
      ? getOwn(getOwn(entries.digits, second), third)
      : first === 'visit' || first === 'print' || first === 'plate'
        ? getOwn(entries[first], second)
        : first === 'target'
          ? second === 'digit'
            ? entries.target
            : getOwn(entries.deficits, second)
          : (getOwn(entries.palm, first) ?? getOwn(entries.options, first) ?? getOwn(entries, first));
  return typeof at === 'string' ? at : '';
}

/** The field that a problem's path belongs to: the one to mark and to link to. */
export function fieldOf(where: string, entries: Entries): string {
  const parts = where.split('.');
  if (where === 'digits' || where === '') {
    const digit = DIGITS.find((d) => entries.digits[d].width.trim() === '') ?? 'index';
    return `digits.${digit}.width`;
  }
  if (parts[0] === 'digits' && parts.length === 2)
    return `${where}.${entries.digits[parts[1] as DigitName]?.width === '' ? 'width' : 'circumference'}`;
  if (where === 'target') return 'target.digit';
  if (where === 'angle') return 'plate.angle';
  if (where === 'block.places') return entries.block === 'own' ? 'places.index' : 'block';
  return where;
}

/** Id of the element that holds a field. */
export function elementId(where: string): string {
  return `field-${where.replaceAll('.', '-')}`;
}
