import type { Block } from '../../block/block.ts';
import { readEmbeddedRequest } from '../../files/file-inputs.ts';
import type { Hand } from '../../hand/hand.ts';
import { makePattern } from '../../pattern/make-pattern.ts';
import { PLATE_GEOMETRY_VERSION } from '../../pattern/plate/plate.ts';
import { GEOMETRY_VERSION } from '../../pattern/strip/geometry-version.ts';
import type { StripOptions } from '../../pattern/strip/strip-options.ts';
import type { Case } from '../../record/case.ts';
import { LONGEST_FLAT, type MadeFile, PLATE_FACES } from '../../record/case-schema.ts';
import { handProblems } from '../../record/read-case.ts';
import { parseDegrees } from '../../units/angle.ts';
import { parseLength } from '../../units/length.ts';
import { rounded } from '../../units/number.ts';
import { quote } from '../../units/quote.ts';
import { collect, failure, type Problem, type Result, success, type Warning } from '../../units/result.ts';
import { kebabCase } from '../../units/typed-name.ts';
import { libraryBlock } from './device-flags.ts';
import { flagProblem } from './flag.ts';
import { readStripOptionFlags } from './option-flags.ts';

/** Decimals of a kept length, mm: as in the report of `draw`. */
const DECIMALS = 3;

interface MadeFlags {
  readonly pattern?: string;
  readonly block?: string;
  readonly differential?: string;
  readonly options?: string;
  readonly plateAngle?: string;
  readonly plateFaces?: string;
  readonly flatLength?: string;
}

/** What was made, as the flags say it; null when they say nothing. `hand`: what the length is computed from where it is not given. */
export async function madeDevice(flags: MadeFlags, record: Case, hand: Hand | null): Promise<Result<MadeFile | null>> {
  const ways = [
    ['--pattern', flags.pattern],
    ['--block', flags.block],
    ['--plate-angle', flags.plateAngle],
  ].filter(([, value]) => value !== undefined);
  if (ways.length > 1) return failure(flagProblem(ways.map(([name]) => name).join(', '), 'each says what was made; give one of them'));
  const length = flatLengthOf(flags);
  if (!length.ok) return length;
  if (flags.pattern !== undefined) return fromPattern(flags.pattern, record, length.value);
  if (flags.block !== undefined) return fromBlock(flags.block, flags, hand, length.value);
  if (flags.plateAngle !== undefined) return fromPlate(flags.plateAngle, flags, length.value);
  const lone = (['differential', 'options', 'plateFaces', 'flatLength'] as const).filter((key) => flags[key] !== undefined);
  if (lone.length === 0) return success(null);
  return failure(
    flagProblem(
      lone.map((key) => `--${kebabCase(key)}`).join(', '),
      'tells of what was made; give --pattern, --block or --plate-angle too',
    ),
  );
}

async function fromPattern(path: string, record: Case, flatLength: number | null): Promise<Result<MadeFile>> {
  const drawn = await readEmbeddedRequest(path);
  if (!drawn.ok) return drawn;
  const { request, geometryVersion } = drawn.value;
  const problems = handProblems(request.hand, record, path);
  if (problems.length > 0) return failure(...problems);
  if (request.kind === 'plate') {
    const { faces, angle } = request.plate;
    const length = flatLength === null ? {} : { flatLength };
    return success({ kind: 'plate', faces, mpAngle: angle, options: { ...request.options }, geometryVersion, ...length });
  }
  // Another version of the geometry may have drawn another length; then none is better than a wrong one.
  const computed =
    flatLength === null && geometryVersion === GEOMETRY_VERSION
      ? computedLength(request.hand, request.block, request.options)
      : success(flatLength);
  return strip(request.block, request.options, geometryVersion, computed);
}

async function fromBlock(id: string, flags: MadeFlags, hand: Hand | null, flatLength: number | null): Promise<Result<MadeFile>> {
  const { options: file, differential } = flags;
  const given = { ...(file === undefined ? {} : { options: file }), ...(differential === undefined ? {} : { differential }) };
  const read = collect({ options: await readStripOptionFlags(given), block: libraryBlock(id) });
  if (!read.ok) return read;
  const { block, options } = read.value;
  const computed = flatLength === null && hand !== null ? computedLength(hand, block, options) : success(flatLength);
  return strip(block, options, GEOMETRY_VERSION, computed);
}

function strip(block: Block, options: StripOptions, geometryVersion: string, length: Result<number | null>): Result<MadeFile> {
  const made: MadeFile = {
    kind: 'strip',
    block: { id: block.id, places: { ...block.places } },
    options: { ...options },
    geometryVersion,
    ...(length.ok && length.value !== null ? { flatLength: length.value } : {}),
  };
  return success(made, length.ok ? [] : length.problems.map(lengthWarning));
}

function computedLength(hand: Hand, block: Block, options: StripOptions): Result<number> {
  const made = makePattern({ kind: 'strip', hand, block, options, date: null });
  return made.ok ? success(rounded(made.value.report.flatLength, DECIMALS)) : made;
}

/** A strip may have been made from another hand file than the case's; that it cannot be drawn from this one is worth saying, no more. */
function lengthWarning({ message }: Problem): Warning {
  return {
    code: 'LENGTH_NOT_COMPUTED',
    message: `the length of the flat pattern is not noted: ${message}`,
    next: 'Give it with --flat-length.',
  };
}

function fromPlate(text: string, flags: MadeFlags, flatLength: number | null): Result<MadeFile> {
  const problems: Problem[] = [];
  const angle = parseDegrees(text);
  if (!angle.ok) problems.push(flagProblem('--plate-angle', `${angle.reason}; 0 to 90 degrees is allowed`));
  else if (angle.degrees > 90) problems.push(flagProblem('--plate-angle', `${quote(text)} is out of range; 0 to 90 degrees is allowed`));
  const faces = PLATE_FACES.find((known) => known === (flags.plateFaces ?? 'dorsal'));
  if (faces === undefined) problems.push(flagProblem('--plate-faces', `${quote(flags.plateFaces)} can be ${PLATE_FACES.join(', ')}`));
  if (!angle.ok || faces === undefined || problems.length > 0) return failure(...problems);
  const length = flatLength === null ? {} : { flatLength };
  return success({ kind: 'plate', faces, mpAngle: angle.degrees, options: {}, geometryVersion: PLATE_GEOMETRY_VERSION, ...length });
}

function flatLengthOf({ flatLength }: MadeFlags): Result<number | null> {
  if (flatLength === undefined) return success(null);
  const parsed = parseLength(flatLength, 'mm');
  if (!parsed.ok) return failure(flagProblem('--flat-length', `${parsed.reason}; up to ${LONGEST_FLAT} mm is allowed`));
  if (parsed.mm <= LONGEST_FLAT) return success(parsed.mm);
  return failure(flagProblem('--flat-length', `${quote(flatLength)} is out of range; up to ${LONGEST_FLAT} mm is allowed`));
}
