import { inflateSync } from 'node:zlib';
import { readHand } from '../hand/read-hand.ts';
import type { PatternRequest } from '../pattern/make-pattern.ts';
import { chooseForHand } from '../pattern/plan-hand.ts';
import { requestFromInputs } from '../pattern/request-from-inputs.ts';
import { DEFAULT_STRIP_OPTIONS } from '../pattern/strip/strip-options.ts';
import { getOwn } from '../units/get-own.ts';
import { parseJsonText } from '../units/json-text.ts';
import { failure, type Result, success } from '../units/result.ts';
import { inputsFromDxf, inputsFromPdf, inputsFromSvg } from '../writers/inputs-text.ts';
import { readBytes } from './read-file.ts';

/** A drawing may be much larger than a hand file; one of ours is under 1 MB. */
const LARGEST_DRAWING_BYTES = 50_000_000;
const LARGEST_INFLATED_BYTES = 2_000_000;

/** The request that a drawing carries; told by its content, not by its name. Fails with every reason, each with the file named. */
export async function requestFromDrawing(path: string): Promise<Result<PatternRequest>> {
  const bytes = await readBytes(path, LARGEST_DRAWING_BYTES);
  return bytes.ok ? carried(bytes.value, path) : bytes;
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

/** The same, or from a hand file: its suggested block with default options. */
export async function requestFromDrawingOrHand(path: string): Promise<Result<PatternRequest>> {
  const bytes = await readBytes(path, LARGEST_DRAWING_BYTES);
  if (!bytes.ok) return bytes;
  const text = textOf(bytes.value);
  if (!text.trimStart().startsWith('{')) return carried(bytes.value, path);
  const json = parseJsonText(text, path);
  const hand = json.ok ? readHand(json.value, path) : json;
  if (!hand.ok) return hand;
  const chosen = chooseForHand(hand.value, DEFAULT_STRIP_OPTIONS, { clinicianConfirms: false });
  if (!chosen.ok) return chosen;
  return success({ kind: 'strip', hand: hand.value, block: chosen.value.block, options: DEFAULT_STRIP_OPTIONS, date: null }, hand.warnings);
}

function carried(bytes: Uint8Array, path: string): Result<PatternRequest> {
  const inputs = embeddedInputs(bytes);
  if (!inputs.ok) return failure(...inputs.problems.map((p) => ({ ...p, where: path, message: `${path}: ${p.message}` })));
  return requestFromInputs(inputs.value, path);
}

/** What a drawing carries in its metadata, comments or attachment, parsed but not yet checked. Fails with `FILE_KIND`, `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function embeddedInputs(bytes: Uint8Array): Result<unknown> {
  const text = textOf(bytes);
  if (text.startsWith('%PDF-')) return inputsFromPdf(bytes, inflated);
  if (/^\s*(<\?xml|<svg|<!--|<!DOCTYPE)/i.test(text)) return inputsFromSvg(text);
  if (/^\s*(999|0)\s*\r?\n/.test(text)) return inputsFromDxf(text);
  const message = 'is no SVG, DXF or PDF that can be read; name a file that knucklewright drew';
  return failure({ code: 'FILE_KIND', where: '', message, kind: 'input' });
}

function textOf(bytes: Uint8Array): string {
  return new TextDecoder('utf-8').decode(bytes);
}

/** What deflate left, or null where it is something else. */
function inflated(bytes: Uint8Array): Uint8Array | null {
  try {
    return inflateSync(bytes, { maxOutputLength: LARGEST_INFLATED_BYTES });
  } catch {
    // Most streams of a PDF are not deflated text; that is no fault of the file.
    return null;
  }
}
