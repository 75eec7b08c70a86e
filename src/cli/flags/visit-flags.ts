import { readJson } from '../../files/read-file.ts';
import { readHandFile } from '../../files/read-hand-file.ts';
import { DIGITS } from '../../hand/digits.ts';
import { PALM_FIELDS, WEB_FIELDS } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import type { Case } from '../../record/case.ts';
import { flatVisit } from '../../record/migrate.ts';
import { handProblems } from '../../record/read-case.ts';
import { getOwn } from '../../units/json-text.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import type { Question } from '../ask.ts';
import { type FlagsOf, flag, flagProblem, flagSet } from './flag.ts';
import { madeDevice } from './made-device-flags.ts';
import { allWell, NOTED_VALUES, notedFlags } from './noted-flags.ts';
import {
  lengthUnit,
  type PartialVisit,
  partialValue,
  readComment,
  readDate,
  readGirth,
  readMotionText,
  withAnswer,
  withPartialValue,
} from './visit-questions.ts';

const MOTION = '<deficit/flexion>';

/** The flags of `case add`. */
export const visitFlags = flagSet(
  flag('--visit <file>', 'visit as JSON, see: knucklewright schema visit; flags win over it'),
  flag('--date <date>', 'day of the visit, YYYY-MM-DD; never taken from the clock'),
  flag('--hand <file>', 'hand file (JSON) measured at this visit'),
  flag('--circumference <length>', 'circumference of the treated digit'),
  flag('--pip-circumference <length>', 'PIP circumference of the treated digit'),
  flag(`--mp-active ${MOTION}`, 'MP motion, as 0/85; hyper 10/85 goes 10 degrees beyond straight'),
  flag(`--mp-passive ${MOTION}`, 'the same, moved by the examiner'),
  flag(`--pip-active ${MOTION}`, 'PIP motion, as 25/85 (needed)'),
  flag(`--pip-passive ${MOTION}`, 'the same, moved by the examiner'),
  flag(`--dip-active ${MOTION}`, 'DIP motion, as 0/60'),
  flag(`--dip-passive ${MOTION}`, 'the same, moved by the examiner'),
  flag(`--other-mp ${MOTION}`, "active MP motion of the other hand's digit"),
  flag(`--other-pip ${MOTION}`, "active PIP motion of the other hand's digit"),
  flag(`--other-dip ${MOTION}`, "active DIP motion of the other hand's digit"),
  flag('--pattern <file>', 'made: the pattern that was cut, as knucklewright wrote it (SVG, DXF or PDF)'),
  flag('--block <id>', 'made: a strip with this block'),
  flag('--differential <degrees>', 'made: differential of the strip'),
  flag('--options <file>', 'made: options file of the strip (JSON)'),
  flag('--plate-angle <degrees>', 'made: a plate that holds the MP joint at this angle'),
  flag('--plate-faces <faces>', 'made: dorsal, palmar or both (default: dorsal)'),
  flag('--flat-length <mm>', 'made: length of the flat pattern (default: as drawn from the hand in the case)'),
  flag(`--pencil-without ${MOTION}`, 'pencil test: active PIP motion without the pencil'),
  flag(`--pencil-with ${MOTION}`, 'pencil test: active PIP motion with it'),
  notedFlags,
);
export type VisitFlags = FlagsOf<[typeof visitFlags]>;

/** A flag with one value: the path of that value in the visit, and how it is read. */
interface ValueFlag {
  readonly flag: keyof VisitFlags;
  readonly path: string;
  readonly read: Question['read'];
}

function valueFlags(record: Case): readonly ValueFlag[] {
  const { digit } = record;
  const joints = (['mp', 'pip', 'dip'] as const).flatMap((joint): ValueFlag[] => [
    { flag: `${joint}Active`, path: `goniometry.${joint}.active`, read: (text) => readMotionText(text, joint) },
    { flag: `${joint}Passive`, path: `goniometry.${joint}.passive`, read: (text) => readMotionText(text, joint) },
    {
      flag: `other${joint === 'mp' ? 'Mp' : joint === 'pip' ? 'Pip' : 'Dip'}`,
      path: `otherHand.${joint}`,
      read: (text) => readMotionText(text, joint),
    },
  ]);
  return [
    { flag: 'date', path: 'date', read: readDate },
    ...(['circumference', 'pipCircumference'] as const).map(
      (field): ValueFlag => ({ flag: field, path: `measures.digits.${digit}.${field}`, read: (text) => readGirth(text, record, field) }),
    ),
    ...joints,
    { flag: 'pencilWithout', path: 'pencil.without', read: (text) => readMotionText(text, 'pip') },
    { flag: 'pencilWith', path: 'pencil.with', read: (text) => readMotionText(text, 'pip') },
    ...(Object.entries(NOTED_VALUES) as [keyof typeof NOTED_VALUES, { path: string; read: Question['read'] }][]).map(
      ([flagName, value]): ValueFlag => ({ flag: flagName, ...value }),
    ),
    { flag: 'comment', path: 'comment', read: readComment },
  ];
}

/**
 * What the visit file and the flags say of a visit, flags winning; all their problems at once. Whether it is whole is not asked here.
 * @param from what stands already, where a visit is corrected; a visit file takes its place
 */
export async function visitFromFlags(flags: VisitFlags, record: Case, from: PartialVisit = {}): Promise<Result<PartialVisit>> {
  const problems: Problem[] = [];
  const warnings: Warning[] = [];
  let draft: PartialVisit = from;
  const file = flags.visit === undefined ? null : await readVisitFile(flags.visit);
  if (file?.ok) draft = file.value;
  else if (file) problems.push(...file.problems);
  const hand = flags.hand === undefined ? null : await readHandOf(flags.hand, record);
  if (hand?.ok) draft = withPartialValue(draft, 'measures', measuresOf(hand.value));
  else if (hand) problems.push(...hand.problems);
  for (const { flag, path, read } of valueFlags(record)) {
    const text = flags[flag];
    if (typeof text !== 'string') continue;
    const value = read(text);
    if (value.ok) draft = withAnswer(draft, path, value.value, lengthUnit(record));
    else problems.push(flagProblem(`--${kebabCase(flag)}`, value.reason));
  }
  if (flags.allWell) {
    for (const [key, value] of allWell((path) => partialValue(draft, path) !== undefined)) draft = withPartialValue(draft, key, value);
  }
  const made = await madeDevice(flags, record, hand?.ok ? hand.value : record.hand);
  if (!made.ok) problems.push(...made.problems);
  else if (made.value !== null) draft = withPartialValue(draft, 'made', made.value);
  if (made.ok) warnings.push(...made.warnings);
  return problems.length > 0 ? failure(...problems) : success(draft, warnings);
}

async function readVisitFile(path: string): Promise<Result<PartialVisit>> {
  const json = await readJson(path);
  if (!json.ok) return json;
  if (typeof json.value === 'object' && json.value !== null && !Array.isArray(json.value))
    return success(flatVisit(json.value) as PartialVisit);
  return failure(flagProblem('--visit', `${path} must hold an object such as {"date": "2026-03-31", ...}, not ${quote(json.value)}`));
}

async function readHandOf(path: string, record: Case): Promise<Result<Hand>> {
  const hand = await readHandFile(path);
  if (!hand.ok) return hand;
  const other = handProblems(hand.value, record, path);
  return other.length > 0 ? failure(...other) : hand;
}

/** What was measured on the hand, as a visit keeps it: without what the case has already. */
function measuresOf({ source }: Hand): object {
  const whole = [...Object.keys(WEB_FIELDS), ...Object.keys(PALM_FIELDS)].flatMap((key) => {
    const value = getOwn(source, key);
    return value === undefined ? [] : [[key, value]];
  });
  const digits = DIGITS.flatMap((digit) => (source.digits[digit] === undefined ? [] : [[digit, source.digits[digit]]]));
  return { units: source.units, digits: Object.fromEntries(digits), ...Object.fromEntries(whole) };
}
