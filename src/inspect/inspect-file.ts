import { gunzipSync } from 'node:zlib';
import { type DrawingFormat, decodeText, drawingFormat, isBinaryDxf, isGzip } from '../units/file-format.ts';
import { type Budget, type Finding, LIMITS, LimitReached, newBudget, type ReadDrawing, Unreadable } from './drawing.ts';
import { binaryTags, textTags } from './dxf/dxf-tags.ts';
import { readDxf } from './dxf/read-dxf.ts';
import { type Inspection, type InspectSettings, judge, judged, notRead } from './inspection.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { readSvg } from './svg/read-svg.ts';

/**
 * Reads a file back and says what is in it and what is wrong with it. Never throws on what a file holds: one that cannot be read at all has
 * finding 101, one that is too large, too deep or too slow has 102. What the file is, it tells by its content.
 */
export function inspectFile(packed: Uint8Array, settings: InspectSettings = {}): Inspection {
  const budget = newBudget(packed.byteLength);
  let format: DrawingFormat | null = null;
  try {
    if (packed.byteLength > LIMITS.bytes)
      throw new LimitReached(`the file has ${packed.byteLength} bytes; at most ${LIMITS.bytes} are read`);
    const bytes = unpacked(packed);
    format = drawingFormat(bytes);
    if (format === null) throw new Unreadable('this is neither SVG nor DXF nor PDF');
    return judge(read(format, bytes, budget), budget, settings);
  } catch (error) {
    if (error instanceof LimitReached) return notRead(format, { code: 102, message: `stopped reading: ${error.message}` });
    if (error instanceof Unreadable) return notRead(format, { code: 101, message: `cannot be read: ${error.message}` });
    throw error;
  }
}

/**
 * The inspection with finding 505: files beside this one that have its name were drawn from something else, so that what is cut, printed
 * and written down would not be one pattern.
 * @param others their names
 */
export function withMixedSet(found: Inspection, others: readonly string[]): Inspection {
  if (others.length === 0) return found;
  const named = others.slice(0, 5).join(', ') + (others.length > 5 ? ` and ${others.length - 5} more` : '');
  const finding: Finding = { code: 505, message: `files of one name are of different patterns, this one and ${named}: use none of them` };
  return { ...found, findings: judged([...found.findings, finding]) };
}

function read(format: DrawingFormat, bytes: Uint8Array, budget: Budget): ReadDrawing {
  if (format === 'svg') return readSvg(decodeText(bytes), budget);
  if (format === 'pdf') return readPdf(bytes, budget);
  return readDxf(isBinaryDxf(bytes) ? binaryTags(bytes, budget) : textTags(decodeText(bytes), budget), budget);
}

/** A packed SVG (.svgz) unpacked; anything else as it is. */
function unpacked(bytes: Uint8Array): Uint8Array {
  if (!isGzip(bytes)) return bytes;
  try {
    return gunzipSync(bytes, { maxOutputLength: LIMITS.bytes });
  } catch (error) {
    if ((error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE')
      throw new LimitReached(`unpacked, the file has more than ${LIMITS.bytes} bytes`);
    throw new Unreadable('the packed file (gzip) is damaged');
  }
}
