import { readBlock } from '../block/read-block.ts';
import type { Hand } from '../hand/hand.ts';
import { readHand } from '../hand/read-hand.ts';
import { isDay } from '../units/day.ts';
import { getOwn } from '../units/json-text.ts';
import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../units/result.ts';
import { LANGUAGE_IDS, type Language } from '../words/language.ts';
import type { PatternRequest } from './make-pattern.ts';
import { PLATE_GEOMETRY_VERSION } from './plate/plate.ts';
import { readDesign, readPlateOptions } from './plate/read-plate.ts';
import { GEOMETRY_VERSION, knownVersion } from './strip/geometry-version.ts';
import { readStripOptions } from './strip/read-options.ts';

const SCHEMA = 'knucklewright/inputs@1';

/**
 * The request that made a file, from the inputs it carries. Nothing in them is trusted: hand, block, options and date are read as if a
 * person had written them, and what is missing or wrong is named, all at once (codes of those readers, `INPUTS_MISSING`, `INPUTS_BROKEN`).
 * A strip of an earlier geometry is drawn as it was, and `GEOMETRY_EARLIER` says so. Warns `GEOMETRY_CHANGED` when a version drew the file that this
 * program does not have, since the outline may then differ.
 * @param source name of the file, set before each message
 */
export function requestFromInputs(inputs: unknown, source: string): Result<PatternRequest> {
  const where = `inputs in ${source}`;
  const schema = getOwn(inputs, 'schema');
  if (schema !== SCHEMA)
    return failure(broken(where, 'schema', `is ${quote(schema)}, not "${SCHEMA}"; a newer knucklewright may have written it`));
  const kind = getOwn(inputs, 'kind');
  if (kind === 'strip' && getOwn(inputs, 'paper') !== undefined) {
    const message = `${where}: this is a paper strip for a trial. Draw the strip itself from the hand file, with --paper-reading.`;
    return failure({ code: 'INPUTS_OF_TRIAL', where: 'inputs.paper', message, kind: 'input' });
  }
  if (kind === 'strip') return stripRequest(inputs, where, source);
  if (kind === 'plate') return plateRequest(inputs, where, source);
  if (kind === 'sheet' || kind === 'page') {
    const what = kind === 'sheet' ? 'a sheet of many parts' : 'a list or a chart';
    const message = `${where}: this is ${what}, which is made from a table or a cut list, not from one hand. Make it again with batch, sizes or sheets.`;
    return failure({ code: 'INPUTS_OF_MANY', where: 'inputs.kind', message, kind: 'input' });
  }
  return failure(broken(where, 'kind', `is ${quote(kind)}, which this version cannot draw again`));
}

function stripRequest(inputs: unknown, where: string, source: string): Result<PatternRequest> {
  const block = getOwn(inputs, 'block') === undefined ? null : readBlock(getOwn(inputs, 'block'), where);
  const options = getOwn(inputs, 'options') === undefined ? null : readStripOptions([{ origin: where, values: getOwn(inputs, 'options') }]);
  const common = commonInputs(inputs, where, source, ['block', 'options'], [GEOMETRY_VERSION, '1']);
  const problems = [common, block, options].flatMap((read) => (read && !read.ok ? read.problems : []));
  if (problems.length > 0 || !common.ok || !block?.ok || !options?.ok) return failure(...problems);
  const version = knownVersion(getOwn(inputs, 'geometryVersion'));
  const request = { kind: 'strip', ...common.value, block: block.value, options: options.value } as const;
  return success(version === GEOMETRY_VERSION ? request : { ...request, version }, common.warnings);
}

function plateRequest(inputs: unknown, where: string, source: string): Result<PatternRequest> {
  const plate = getOwn(inputs, 'plate') === undefined ? null : readDesign(getOwn(inputs, 'plate'), where);
  const options = getOwn(inputs, 'options') === undefined ? null : readPlateOptions([{ origin: where, values: getOwn(inputs, 'options') }]);
  const common = commonInputs(inputs, where, source, ['plate', 'options'], [PLATE_GEOMETRY_VERSION]);
  const problems = [common, plate, options].flatMap((read) => (read && !read.ok ? read.problems : []));
  if (problems.length > 0 || !common.ok || !plate?.ok || !options?.ok) return failure(...problems);
  return success({ kind: 'plate', ...common.value, plate: plate.value, options: options.value }, common.warnings);
}

/** Hand and date, and whether the keys of this kind are there at all. */
function commonInputs(
  inputs: unknown,
  where: string,
  source: string,
  keys: readonly string[],
  versions: readonly string[],
): Result<{ hand: Hand; date: string | null; language?: Language }> {
  const missing = ['geometryVersion', 'date', 'hand', ...keys].filter((key) => getOwn(inputs, key) === undefined);
  const hand = getOwn(inputs, 'hand') === undefined ? null : readHand(getOwn(inputs, 'hand'), where);
  const date = readDate(getOwn(inputs, 'date'), where);
  const language = readLanguage(getOwn(inputs, 'language'), where);
  const version = getOwn(inputs, 'geometryVersion');
  const problems: Problem[] = [
    ...missing.map((key) => lacking(where, key)),
    ...(version === undefined || typeof version === 'string' ? [] : [broken(where, 'geometryVersion', `is ${quote(version)}, not a text`)]),
    ...[hand, date, language].flatMap((read) => (read && !read.ok ? read.problems : [])),
  ];
  if (problems.length > 0 || !hand?.ok || !date.ok || !language.ok) return failure(...problems);
  const spoken = language.value === 'en' ? {} : { language: language.value };
  return success({ hand: hand.value, date: date.value, ...spoken }, [...hand.warnings, ...versionWarnings(version, source, versions)]);
}

/** Files of English words say nothing of a language. */
function readLanguage(value: unknown, where: string): Result<Language> {
  const found = LANGUAGE_IDS.find((language) => language === (value ?? 'en'));
  return found ? success(found) : failure(broken(where, 'language', `is ${quote(value)}, not one of ${LANGUAGE_IDS.join(', ')}`));
}

function readDate(value: unknown, where: string): Result<string | null> {
  if (value === null || value === undefined) return success(null);
  const real = typeof value === 'string' && isDay(value);
  return real ? success(String(value)) : failure(broken(where, 'date', `is ${quote(value)}, not a date such as 2026-03-31`));
}

/** @param versions of the geometry that this program draws, the present one first */
function versionWarnings(version: unknown, source: string, versions: readonly string[]): readonly Warning[] {
  const [current] = versions;
  if (version === current) return [];
  if (versions.some((known) => known === version))
    return [
      {
        code: 'GEOMETRY_EARLIER',
        where: 'geometryVersion',
        message: `${source} is drawn again as it was, with geometry ${quote(version)}; geometry "${current}" lays the same hand's strip otherwise`,
        next: 'for a new strip draw anew from the hand file',
      },
    ];
  return [
    {
      code: 'GEOMETRY_CHANGED',
      where: 'geometryVersion',
      message: `${source} was drawn with geometry ${quote(version)}, this program draws with "${current}": the outline may differ`,
      next: 'compare the new pattern with the old one before cutting',
    },
  ];
}

function lacking(where: string, key: string): Problem {
  return {
    code: 'INPUTS_MISSING',
    where: key,
    message: `${where}: ${key} is missing; draw the pattern again from the hand file.`,
    kind: 'input',
  };
}

function broken(where: string, key: string, what: string): Problem {
  return {
    code: 'INPUTS_BROKEN',
    where: key,
    message: `${where}: ${key} ${what}. Draw the pattern again from the hand file.`,
    kind: 'input',
  };
}
