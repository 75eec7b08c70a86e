import { quote } from '../units/quote.ts';

export const LONGEST_CODE = 24;

export type CheckedCode = { readonly ok: true; readonly code: string } | { readonly ok: false; readonly reason: string };

const BIRTH_YEAR = String.raw`(?:19|20)\d\d`;
const MONTH = '(?:0?[1-9]|1[0-2])';
const DAY = String.raw`(?:0?[1-9]|[12]\d|3[01])`;
const MM = '(?:0[1-9]|1[0-2])';
const DD = String.raw`(?:0[1-9]|[12]\d|3[01])`;
const MONTH_NAME = '(?:JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC)[A-Z]*';

/**
 * Day, month and year in any usual order, run together or parted by hyphens, standing alone among the digits. Run together
 * with a year of two digits they are read only where the code has no other digits: six digits elsewhere are a running number.
 */
const DATES: readonly RegExp[] = [
  new RegExp(`(?<!\\d)${BIRTH_YEAR}(?:${MM}${DD}|-${MONTH}-${DAY})(?!\\d)`),
  new RegExp(`(?<!\\d)(?:${DD}${MM}|${MM}${DD}|${DAY}-${MONTH}-|${MONTH}-${DAY}-)${BIRTH_YEAR}(?!\\d)`),
  new RegExp(`(?<!\\d)(?:${DAY}-${MONTH}-|${MONTH}-${DAY}-)\\d\\d(?!\\d)`),
  new RegExp(`(?<!\\d)\\d\\d-${MM}-${DD}(?!\\d)`),
  new RegExp(`^\\D*(?:${DD}${MM}\\d\\d|${MM}${DD}\\d\\d|\\d\\d${MM}${DD})\\D*$`),
  new RegExp(`(?<!\\d)${DAY}-?${MONTH_NAME}-?(?:${BIRTH_YEAR}|\\d\\d)(?!\\d)`),
  new RegExp(`(?<!\\d)${BIRTH_YEAR}-?${MONTH_NAME}-?${DAY}(?!\\d)`),
  new RegExp(`(?<![A-Z])${MONTH_NAME}-?${DAY}-${BIRTH_YEAR}(?!\\d)`),
];

/** Names of devices on Windows, on which a file of that name cannot be written. */
const DEVICE = /^(?:COM|LPT)\d$/;

/**
 * A case code as it may stand in files and on patterns: 1 to 24 of A-Z, 0-9 and hyphen, hyphens only inside. Refused when it
 * looks like a name (no digit in it) or like a date of birth. It cannot know a name with a number behind it.
 */
export function checkCaseCode(text: string): CheckedCode {
  const refused = (why: string): CheckedCode => ({ ok: false, reason: `${quote(text)} ${why}` });
  const form = `use 1 to ${LONGEST_CODE} of the capital letters A-Z, the digits 0-9 and the hyphen, as DEMO-01`;
  if (text === '') return refused(`is empty; ${form}`);
  if (text.length > LONGEST_CODE) return refused(`has more than ${LONGEST_CODE} characters; ${form}`);
  if (/^[A-Za-z0-9-]+$/.test(text) && /[a-z]/.test(text)) return refused('has small letters; write the code in capitals');
  if (!/^[A-Z0-9-]+$/.test(text)) return refused(`has other characters than a case code may have; ${form}`);
  if (/^-|-$/.test(text)) return refused('begins or ends with a hyphen; put hyphens only between letters and digits');
  if (!/\d/.test(text)) return refused('looks like a name, since it has no digit; use a code that does not tell who it is, as DEMO-01');
  if (DATES.some((date) => date.test(text)))
    return refused('looks like a date of birth; use a code that does not tell who it is, as DEMO-01');
  if (DEVICE.test(text)) return refused('is the name of a device on some computers, so no file can have it; choose another');
  return { ok: true, code: text };
}
