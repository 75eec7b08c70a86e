import type { HandFile } from '../hand/hand-schema.ts';
import { readHand } from '../hand/read-hand.ts';
import type { CaseFile } from '../record/case-schema.ts';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { type Result, success } from '../units/result.ts';

/** What a file that a person opened holds: a case, a hand, or a case with its hand. */
export interface Opened {
  readonly record: CaseFile | null;
  readonly hand: HandFile | null;
}

/** Reads the text of a hand file or of a case file, whichever its schema says; fails with everything that is wrong with it. */
export async function readOpened(text: string): Promise<Result<Opened>> {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const schema = getOwn(json.value, 'schema');
  if (typeof schema !== 'string' || !schema.startsWith('knucklewright/case@')) {
    const hand = readHand(json.value);
    return hand.ok ? success({ record: null, hand: hand.value.source }, hand.warnings) : hand;
  }
  // The form of a case is made ready only when one is opened.
  const { readCase } = await import('../record/read-case.ts');
  const record = readCase(json.value);
  return record.ok ? success({ record: record.value.file, hand: record.value.hand?.source ?? null }, record.warnings) : record;
}
