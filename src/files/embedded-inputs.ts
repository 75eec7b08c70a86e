import { gunzipSync, inflateSync } from 'node:zlib';
import { decodeText, drawingFormat, isGzip } from '../units/file-format.ts';
import { failure, type Result } from '../units/result.ts';
import { inputsFromDxf, inputsFromPdf, inputsFromSvg } from '../writers/inputs-text.ts';

const LARGEST_INFLATED_BYTES = 2_000_000;
const LARGEST_UNPACKED_BYTES = 20_000_000;

/**
 * What a drawing carries in its metadata, comments or attachment, parsed but not yet checked; an .svgz is unpacked first. Fails with
 * `FILE_KIND`, `INPUTS_MISSING` or `INPUTS_BROKEN`.
 */
export function embeddedInputs(packed: Uint8Array): Result<unknown> {
  const bytes = unpacked(packed);
  const format = bytes === null ? null : drawingFormat(bytes);
  if (bytes !== null && format === 'pdf') return inputsFromPdf(bytes, inflated);
  if (bytes !== null && format === 'svg') return inputsFromSvg(decodeText(bytes));
  if (bytes !== null && format === 'dxf') return inputsFromDxf(decodeText(bytes));
  const message = 'is no SVG, DXF or PDF that can be read; name a file that knucklewright drew';
  return failure({ code: 'FILE_KIND', where: '', message, kind: 'input' });
}

/** Null for what is damaged, or larger than any drawing of ours. */
function unpacked(bytes: Uint8Array): Uint8Array | null {
  if (!isGzip(bytes)) return bytes;
  try {
    return gunzipSync(bytes, { maxOutputLength: LARGEST_UNPACKED_BYTES });
  } catch {
    return null;
  }
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
