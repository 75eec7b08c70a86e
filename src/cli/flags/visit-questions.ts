import * as z from 'zod';
import { DIGIT_FIELDS, type DigitFieldId } from '../../hand/fields.ts';
import { readMeasures } from '../../hand/read-measures.ts';
import { JOINT_NAMES, type Joint } from '../../hand/target-motion.ts';
import type { Case } from '../../record/case.ts';
import { commentProblem } from '../../record/case-problems.ts';
import { notedShape, visitSchema } from '../../record/case-schema.ts';
import { motionHint, parseMotion } from '../../record/motion-text.ts';
import { tidyDay } from '../../units/day.ts';
import { formatLength, type LengthUnit, MM_PER } from '../../units/length.ts';
import { plain, readNumber, tidyNumberText } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import type { Question } from '../ask.ts';
import { DEVICE_QUESTIONS, HARM_QUESTIONS } from './noted-flags.ts';

/** A visit that is being put together, as JSON: every value at its path, checked only when whole. */
export type PartialVisit = Readonly<Record<string, unknown>>;

/** The value at a path of points, e.g. `goniometry.pip.active`; undefined where the path leads nowhere. */
export function partialValue(draft: PartialVisit, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => (isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined), draft);
}

/** The draft with a value at a path; what stands in the way and is no object is replaced. Paths are ours, never a person's. */
export function withPartialValue(draft: PartialVisit, path: string, value: unknown): PartialVisit {
  const [key = '', ...rest] = path.split('.');
  if (rest.length === 0) return { ...draft, [key]: value };
  const inner = draft[key];
  return { ...draft, [key]: withPartialValue(isRecord(inner) ? inner : {}, rest.join('.'), value) };
}

/**
 * The draft with what a flag or an answer says. A length without a unit of its own is in `units`: the measurements get these units, or the
 * length its own where they have others.
 */
export function withAnswer(draft: PartialVisit, path: string, value: unknown, units: LengthUnit): PartialVisit {
  if (!path.startsWith('measures.')) return withPartialValue(draft, path, value);
  const other = partialValue(draft, 'measures.units');
  if (other === undefined) return withPartialValue(withPartialValue(draft, 'measures.units', units), path, value);
  return withPartialValue(draft, path, other !== units && typeof value === 'number' ? `${plain(value, 4)} ${units}` : value);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The questions of a visit, harm first and then in the order of measuring, keyed by the visit's paths. The answers are values of a visit file. */
export function visitQuestions(record: Case): readonly Question[] {
  return [
    { key: 'date', label: 'Day of the visit', hint: 'as 2026-03-31', required: true, read: readDate },
    ...HARM_QUESTIONS,
    girth(record, 'circumference'),
    girth(record, 'pipCircumference'),
    motion('mp', 'active', false),
    motion('mp', 'passive', false),
    motion('pip', 'active', true),
    motion('pip', 'passive', false),
    motion('dip', 'active', false),
    motion('dip', 'passive', false),
    ...DEVICE_QUESTIONS,
    {
      key: 'comment',
      label: 'Comment',
      hint: 'one line of at most 300 characters; never who the person is',
      required: false,
      read: readComment,
    },
  ];
}

function girth(record: Case, field: Extract<DigitFieldId, 'circumference' | 'pipCircumference'>): Question {
  const { label, howToMeasure, refuse } = DIGIT_FIELDS[field];
  const units = lengthUnit(record);
  return {
    key: `measures.digits.${record.digit}.${field}`,
    label: `${record.digit} ${label}`,
    hint: `${howToMeasure} ${plain(refuse.from / MM_PER[units])} to ${formatLength(refuse.to, units)}`,
    required: false,
    read: (text) => readGirth(text, record, field),
  };
}

/** The unit of lengths that are typed without one: that of the hand that the case was opened with. */
export function lengthUnit(record: Case): LengthUnit {
  return record.hand?.units ?? 'mm';
}

/** A length by the hand module's own reader: the message is its first problem. A bare number is in the unit of the case's hand. */
export function readGirth(text: string, record: Case, field: DigitFieldId): ReturnType<Question['read']> {
  const value = readNumber(tidyNumberText(text)) ?? text;
  const [problem] = readMeasures({ digits: { [record.digit]: { [field]: value } } }, lengthUnit(record)).problems;
  return problem === undefined ? { ok: true, value } : { ok: false, reason: problem.message.replace(/\.$/, '') };
}

function motion(joint: Joint, kind: 'active' | 'passive', required: boolean): Question {
  const read = (text: string) => readMotionText(text, joint);
  return { key: `goniometry.${joint}.${kind}`, label: `${JOINT_NAMES[joint]} motion, ${kind}`, hint: motionHint(joint), required, read };
}

export function readMotionText(text: string, joint: Joint): ReturnType<Question['read']> {
  const parsed = parseMotion(text, joint);
  return parsed.ok ? { ok: true, value: parsed.motion } : parsed;
}

/** A day as a person writes it, as the page takes it; 3/4/2026, which is another day in another country, is asked about again. */
export function readDate(text: string): ReturnType<Question['read']> {
  const day = tidyDay(text);
  if (visitSchema.shape.date.safeParse(day).success) return { ok: true, value: day };
  return { ok: false, reason: `${quote(text)} is not a day from 2000 to 2099; write it as 2026-03-31` };
}

export function readComment(text: string): ReturnType<Question['read']> {
  const read = z.safeParse(notedShape.comment, text);
  if (!read.success) return { ok: false, reason: 'a comment is one line of at most 300 characters, without control characters' };
  const [problem] = commentProblem(text, 'comment');
  return problem === undefined ? { ok: true, value: text } : { ok: false, reason: problem.message.replace(/\.$/, '') };
}
