import { readHand } from '../hand/read-hand.ts';
import type { PatternRequest } from '../pattern/make-pattern.ts';
import { chooseForHand } from '../pattern/plan-hand.ts';
import { requestFromInputs } from '../pattern/request-from-inputs.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import { decodeText } from '../units/file-format.ts';
import { getOwn, parseJsonText } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';
import { embeddedInputs, mixedSet } from './drawing-set.ts';
import { readBytes } from './read-file.ts';

/** A drawing may be much larger than a hand file; one of ours is under 1 MB. */
const LARGEST_DRAWING_BYTES = 50_000_000;

/**
 * The request that a drawing carries, and all that it carries besides, the machine that it was made for too, which is not checked; told by its content, not by
 * its name. Fails with every reason, each with the file named, and with `SET_MIXED` when the files beside it that have its name are of another pattern.
 */
export async function readOwnDrawing(path: string): Promise<Result<{ readonly request: PatternRequest; readonly inputs: unknown }>> {
  const bytes = await readBytes(path, LARGEST_DRAWING_BYTES);
  if (!bytes.ok) return bytes;
  const request = await unmixed(bytes.value, path);
  const inputs = embeddedInputs(bytes.value);
  if (!request.ok) return request;
  return inputs.ok ? success({ request: request.value, inputs: inputs.value }, request.warnings) : inputs;
}

/** The request that a drawing carries, with the version of the geometry that drew it. */
export async function readEmbeddedRequest(
  path: string,
): Promise<Result<{ readonly request: PatternRequest; readonly geometryVersion: string }>> {
  const bytes = await readBytes(path, LARGEST_DRAWING_BYTES);
  if (!bytes.ok) return bytes;
  const request = carried(bytes.value, path);
  const inputs = embeddedInputs(bytes.value);
  if (!request.ok) return request;
  if (!inputs.ok) return inputs;
  return success({ request: request.value, geometryVersion: String(getOwn(inputs.value, 'geometryVersion')) }, request.warnings);
}

/** The request that a drawing carries, or one from a hand file: its suggested block with default options. */
export async function requestFromDrawingOrHand(path: string): Promise<Result<PatternRequest>> {
  const bytes = await readBytes(path, LARGEST_DRAWING_BYTES);
  if (!bytes.ok) return bytes;
  const text = decodeText(bytes.value, { keepMark: true });
  if (!/^\uFEFF?\s*\{/.test(text)) return unmixed(bytes.value, path);
  const json = parseJsonText(text, path);
  const hand = json.ok ? readHand(json.value, path) : json;
  if (!hand.ok) return hand;
  const chosen = chooseForHand(hand.value, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false });
  if (!chosen.ok) return chosen;
  return success({ kind: 'strip', hand: hand.value, block: chosen.value.block, options: DEFAULT_STRIP_OPTIONS, date: null }, hand.warnings);
}

async function unmixed(bytes: Uint8Array, path: string): Promise<Result<PatternRequest>> {
  const request = carried(bytes, path);
  const mixed = request.ok ? await mixedSet(path, bytes) : null;
  return mixed ? failure(mixed) : request;
}

function carried(bytes: Uint8Array, path: string): Result<PatternRequest> {
  const inputs = embeddedInputs(bytes);
  if (!inputs.ok) return failure(...inputs.problems.map((p) => ({ ...p, where: path, message: `${path}: ${p.message}` })));
  return requestFromInputs(inputs.value, path);
}
