import { inflateSync } from 'node:zlib';
import { failure, type Result } from '../units/result.ts';
import { inputsFromDxf, inputsFromPdf, inputsFromSvg } from '../writers/inputs-text.ts';

const LARGEST_INFLATED_BYTES = 2_000_000;

/** What a drawing carries in its metadata, comments or attachment, parsed but not yet checked. Fails with `FILE_KIND`, `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function embeddedInputs(bytes: Uint8Array): Result<unknown> {
  const text = textOf(bytes);
  if (text.startsWith('%PDF-')) return inputsFromPdf(bytes, inflated);
  if (/^\s*(<\?xml|<svg|<!--|<!DOCTYPE)/i.test(text)) return inputsFromSvg(text);
  if (/^\s*(999|0)\s*\r?\n/.test(text)) return inputsFromDxf(text);
  const message = 'is no SVG, DXF or PDF that can be read; name a file that knucklewright drew';
  return failure({ code: 'FILE_KIND', where: '', message, kind: 'input' });
}

export function textOf(bytes: Uint8Array): string {
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
