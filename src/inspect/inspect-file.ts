import { gunzipSync } from 'node:zlib';
import { type Budget, type Finding, FLATTENING, LIMITS, LimitReached, newBudget, type ReadDrawing, Unreadable } from './drawing.ts';
import { binaryTags, isBinaryDxf } from './dxf/dxf-binary.ts';
import { textTags } from './dxf/dxf-tags.ts';
import { readDxf } from './dxf/read-dxf.ts';
import { type Inspection, type InspectSettings, judge, judged } from './inspection.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { readSvg } from './svg/read-svg.ts';

/**
 * Reads a file back and says what is in it and what is wrong with it. Never throws on what a file holds: one that cannot be read at all has
 * finding 101, one that is too large, too deep or too slow has 102. What the file is, it tells by its content.
 */
export function inspectFile(packed: Uint8Array, settings: InspectSettings = {}): Inspection {
  const budget = newBudget();
  let format: 'svg' | 'dxf' | 'pdf' | null = null;
  try {
    if (packed.byteLength > LIMITS.bytes)
      throw new LimitReached(`the file has ${packed.byteLength} bytes; at most ${LIMITS.bytes} are read`);
    const bytes = unpacked(packed);
    format = formatOf(bytes);
    if (format === null) throw new Unreadable('this is neither SVG nor DXF nor PDF');
    return judge(read(format, bytes, budget), budget, settings);
  } catch (error) {
    if (error instanceof LimitReached) return unread(format, { code: 102, message: `stopped reading: ${error.message}` });
    if (error instanceof Unreadable) return unread(format, { code: 101, message: `cannot be read: ${error.message}` });
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

type Format = 'svg' | 'dxf' | 'pdf';

function read(format: Format, bytes: Uint8Array, budget: Budget): ReadDrawing {
  if (format === 'svg') return readSvg(textOf(bytes), budget);
  if (format === 'pdf') return readPdf(bytes, budget);
  return readDxf(isBinaryDxf(bytes) ? binaryTags(bytes, budget) : textTags(textOf(bytes), budget), budget);
}

/** A packed SVG (.svgz) unpacked; anything else as it is. */
function unpacked(bytes: Uint8Array): Uint8Array {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes;
  try {
    return gunzipSync(bytes, { maxOutputLength: LIMITS.bytes });
  } catch (error) {
    if ((error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE')
      throw new LimitReached(`unpacked, the file has more than ${LIMITS.bytes} bytes`);
    throw new Unreadable('the packed file (gzip) is damaged');
  }
}

/** As UTF-16 where its mark or its zeros say so, else as UTF-8. */
function textOf(bytes: Uint8Array): string {
  const [a, b] = bytes;
  const little = (a === 0xff && b === 0xfe) || (a !== 0 && b === 0);
  const big = (a === 0xfe && b === 0xff) || (a === 0 && b !== 0);
  return new TextDecoder(little ? 'utf-16le' : big ? 'utf-16be' : 'utf-8').decode(bytes);
}

function formatOf(bytes: Uint8Array): Format | null {
  if (isBinaryDxf(bytes)) return 'dxf';
  // An even cut, so that no letter of UTF-16 is halved.
  const head = textOf(bytes.subarray(0, 4096));
  if (head.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (/^\s*</.test(head)) return 'svg';
  if (/^\s*(0\s*[\r\n]+\s*SECTION|999\s*[\r\n])/.test(head)) return 'dxf';
  return null;
}

function unread(format: string | null, finding: Finding): Inspection {
  return {
    format: format ?? 'unknown',
    version: null,
    unit: null,
    mmPerUnit: 1,
    frame: null,
    size: null,
    layers: [],
    parts: [],
    closedContours: 0,
    openContours: 0,
    kerf: null,
    lines: 0,
    arcs: 0,
    flattened: 0,
    flatteningError: FLATTENING,
    shortestEdge: null,
    cutLength: 0,
    markLength: 0,
    texts: 0,
    findings: judged([finding]),
  };
}
