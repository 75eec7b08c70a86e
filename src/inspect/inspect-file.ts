import { type Finding, FLATTENING, LIMITS, LimitReached, newBudget, type ReadDrawing, Unreadable } from './drawing.ts';
import { readDxf } from './dxf/read-dxf.ts';
import { type Inspection, judge } from './inspection.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { readSvg } from './svg/read-svg.ts';

/**
 * Reads a file back and says what is in it and what is wrong with it. Never throws on what a file holds: one that cannot be read at all has
 * finding 101, one that is too large, too deep or too slow has 102. What the file is, it tells by its content; `name` is used for nothing.
 */
export function inspectFile(bytes: Uint8Array, _name = ''): Inspection {
  const budget = newBudget();
  const format = formatOf(bytes);
  try {
    if (bytes.byteLength > LIMITS.bytes) throw new LimitReached(`the file has ${bytes.byteLength} bytes; at most ${LIMITS.bytes} are read`);
    if (format === null) throw new Unreadable('this is neither SVG nor DXF nor PDF');
    const text = () => new TextDecoder('utf-8').decode(bytes);
    const drawing: ReadDrawing =
      format === 'svg' ? readSvg(text(), budget) : format === 'dxf' ? readDxf(text(), budget) : readPdf(bytes, budget);
    return judge(drawing, budget);
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
  return { ...found, findings: [...found.findings, finding] };
}

function formatOf(bytes: Uint8Array): 'svg' | 'dxf' | 'pdf' | null {
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 4096)).replace(/^\u00ef\u00bb\u00bf/, '');
  if (head.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (/^\s*</.test(head)) return 'svg';
  if (/^\s*(0\s*[\r\n]+\s*SECTION|999\s*[\r\n])/.test(head) || head.startsWith('AutoCAD Binary DXF')) return 'dxf';
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
    findings: [finding],
  };
}
