import { parseDegrees } from '../units/angle.ts';
import { getOwn } from '../units/json-text.ts';
import { formatLength, LENGTH_UNITS, type LengthUnit, MM_PER, parseLength, US_RING_CHART_SPREAD } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import type { Problem, Warning } from '../units/result.ts';
import { DIGITS, type DigitName, WEBS, type WebName } from './digits.ts';
import {
  DIGIT_FIELDS,
  type DigitFieldId,
  digitPath,
  type Field,
  PALM_FIELDS,
  type PalmFieldId,
  TARGET_FIELDS,
  type TargetFieldId,
  WEB_FIELDS,
} from './fields.ts';
import type { WebMeasures } from './hand.ts';
import { type JointReading, TARGET_MOTIONS, type TargetMotion, targetMotionFields } from './target-motion.ts';

/** What could be read and lies in its range, mm and degrees; what could not is absent and has a problem. */
export interface ReadMeasures {
  readonly digits: Readonly<Partial<Record<DigitName, Readonly<Partial<Record<DigitFieldId, number>>>>>>;
  readonly webs: WebMeasures;
  readonly palm: Readonly<Partial<Record<PalmFieldId, number>>>;
  readonly target: Readonly<Partial<Record<TargetFieldId, number>>>;
  readonly motions: Readonly<Partial<Record<TargetMotion, JointReading>>>;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Warning[];
}

const UNIT_NAMES: Readonly<Record<LengthUnit, string>> = { mm: 'millimetres', cm: 'centimetres', in: 'inches' };

/**
 * Reads every measurement of a hand file, each by itself. Values that are neither number nor text are left to the check of the
 * form. Problems: `FIELD_UNREADABLE`, `FIELD_OUT_OF_RANGE`; warnings: `VALUE_UNUSUAL`, `RING_CHARTS_DIFFER`.
 * @param unit unit of bare numbers; null when the file names none that is known, then no length is read
 */
export function readMeasures(json: unknown, unit: LengthUnit | null): ReadMeasures {
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  const read = (raw: unknown, field: Field, where: string, name: string): number | undefined => {
    if (typeof raw !== 'number' && typeof raw !== 'string') return undefined;
    // The check of the form has a message for these already.
    if (typeof raw === 'number' && !Number.isFinite(raw)) return undefined;
    if (field.unit === 'mm' && unit === null) return undefined;
    const value = field.unit === 'mm' ? lengthValue(raw, field, where, name, unit ?? 'mm') : angleValue(raw, field, where, name);
    if ('problem' in value) problems.push(value.problem);
    else warnings.push(...value.warnings);
    return 'problem' in value ? undefined : value.value;
  };
  const readAll = <Id extends string>(
    fields: Readonly<Record<Id, Field>>,
    from: unknown,
    path: (id: Id) => string,
    name: (id: Id) => string,
  ) => {
    const values: Partial<Record<Id, number>> = {};
    for (const id of Object.keys(fields) as Id[]) {
      const value = read(getOwn(from, id), fields[id], path(id), name(id));
      if (value !== undefined) values[id] = value;
    }
    return values;
  };
  const readWebs = (field: Field, from: unknown): Partial<Record<WebName, number>> => {
    const same = Object.fromEntries(WEBS.map((web) => [web, field])) as Record<WebName, Field>;
    return readAll<WebName>(
      same,
      from,
      (web) => `${field.id}.${web}`,
      (web) => `${web} ${field.label}`,
    );
  };
  const digits: Partial<Record<DigitName, Partial<Record<DigitFieldId, number>>>> = {};
  for (const digit of DIGITS) {
    const raw = getOwn(getOwn(json, 'digits'), digit);
    if (typeof raw !== 'object' || raw === null) continue;
    digits[digit] = readAll<DigitFieldId>(
      DIGIT_FIELDS,
      raw,
      (id) => digitPath(digit, id),
      (id) => `${digit} ${DIGIT_FIELDS[id].label}`,
    );
  }
  const webs = Object.fromEntries(
    Object.values(WEB_FIELDS).map((field) => [field.id, readWebs(field, getOwn(json, field.id))]),
  ) as unknown as WebMeasures;
  const palm = readAll<PalmFieldId>(
    PALM_FIELDS,
    json,
    (id) => id,
    (id) => PALM_FIELDS[id].label,
  );
  const target = readAll<TargetFieldId>(
    TARGET_FIELDS,
    getOwn(json, 'target'),
    (id) => `target.${id}`,
    (id) => TARGET_FIELDS[id].label,
  );
  const motions: Partial<Record<TargetMotion, JointReading>> = {};
  for (const motion of TARGET_MOTIONS) {
    const raw = getOwn(getOwn(json, 'target'), motion);
    if (typeof raw !== 'object' || raw === null) continue;
    const fields = targetMotionFields(motion);
    motions[motion] = readAll(
      fields,
      raw,
      (key) => `target.${motion}.${key}`,
      (key) => fields[key].label,
    );
  }
  return { digits, webs, palm, target, motions, problems, warnings };
}

type Read = { readonly value: number; readonly warnings: readonly Warning[] } | { readonly problem: Problem };

function lengthValue(raw: number | string, field: Field, where: string, name: string, unit: LengthUnit): Read {
  const zero = field.refuse.from === 0;
  const parsed = parseLength(raw, unit, { ringSizes: field.ringSizes === true, zero });
  if (!parsed.ok) {
    const message = `${where}: ${parsed.reason}. Give the ${name}, ${lengths(field.refuse, unit)}. ${field.howToMeasure}`;
    return { problem: { code: 'FIELD_UNREADABLE', where, message, kind: 'input' } };
  }
  const { mm, notation } = parsed;
  const shown = `${where}: ${name} ${typeof raw === 'string' ? `${quote(raw)}, which is ${formatLength(mm, unit)},` : formatLength(mm, unit)}`;
  const hint = notation === 'number' ? otherUnitHint(mm / MM_PER[unit], field, unit) : '';
  if (outside(mm, field.refuse)) {
    const message = `${shown} is out of range; ${lengths(field.refuse, unit)} is allowed.${hint} ${field.howToMeasure}`;
    return { problem: { code: 'FIELD_OUT_OF_RANGE', where, message, kind: 'input' } };
  }
  const warnings = unusual(mm, field, where, `${shown} is unusual; ${lengths(field.typical, unit)} is plausible.${hint}`);
  if (notation === 'ringUs')
    warnings.push(ringWarning(where, `charts of US ring sizes differ by up to ${US_RING_CHART_SPREAD} mm`, raw, mm));
  if (notation === 'ringUk')
    warnings.push(ringWarning(where, 'the figures for UK ring sizes were not read in the standard itself', raw, mm));
  return { value: mm, warnings };
}

function angleValue(raw: number | string, field: Field, where: string, name: string): Read {
  const parsed = parseDegrees(raw);
  const range = `${field.refuse.from} to ${field.refuse.to} degrees`;
  if (!parsed.ok) {
    const message = `${where}: ${parsed.reason}. Give the ${name}, ${range}. ${field.howToMeasure}`;
    return { problem: { code: 'FIELD_UNREADABLE', where, message, kind: 'input' } };
  }
  const { degrees } = parsed;
  if (outside(degrees, field.refuse)) {
    const message = `${where}: ${name} ${quote(raw)} is out of range; ${range} is allowed. ${field.howToMeasure}`;
    return { problem: { code: 'FIELD_OUT_OF_RANGE', where, message, kind: 'input' } };
  }
  const usual = `${field.typical.from} to ${field.typical.to} degrees is plausible.`;
  return { value: degrees, warnings: unusual(degrees, field, where, `${where}: ${name} ${plain(degrees)} degrees is unusual; ${usual}`) };
}

function outside(value: number, range: Field['refuse']): boolean {
  return value < range.from || value > range.to;
}

function lengths(range: Field['refuse'], unit: LengthUnit): string {
  return `${plain(range.from / MM_PER[unit])} to ${formatLength(range.to, unit)}`;
}

/** What the bare number would be in another unit, where that is plausible. */
function otherUnitHint(value: number, field: Field, unit: LengthUnit): string {
  const others = LENGTH_UNITS.filter((other) => other !== unit && !outside(value * MM_PER[other], field.typical));
  return others
    .map((other) => {
      const factor = MM_PER[other] / MM_PER[unit];
      const times = factor > 1 ? `times ${plain(factor)}` : `divided by ${plain(1 / factor)}`;
      return ` ${plain(value)} ${times} would be plausible: were these ${UNIT_NAMES[other]}?`;
    })
    .join('');
}

function unusual(value: number, field: Field, where: string, message: string): Warning[] {
  if (!outside(value, field.typical)) return [];
  const limit = value < field.typical.from ? field.typical.from : field.typical.to;
  return [{ code: 'VALUE_UNUSUAL', message, where, value, limit, next: `Measure again; go on if it is so. ${field.howToMeasure}` }];
}

function ringWarning(where: string, why: string, raw: number | string, mm: number): Warning {
  const message = `${where}: ${quote(raw)} is taken as ${formatLength(mm, 'mm')}; ${why}`;
  return { code: 'RING_CHARTS_DIFFER', message, where, value: mm, next: 'Measure with a tape, or give an ISO 8653 size, as ring 54.' };
}
