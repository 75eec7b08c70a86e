/** The formats of drawings that are read back. */
export type DrawingFormat = 'svg' | 'dxf' | 'pdf';

/** How a binary DXF begins (DXF reference, "Binary DXF Files"). */
export const BINARY_DXF = 'AutoCAD Binary DXF\r\n\u001a\u0000';
/** Some programs write a line before a PDF's own first one; readers look into the first kilobyte (ISO 32000-1, annex H.3). */
const PDF_WITHIN = 1024;

/** The text of a file: as UTF-16 where its mark or its zeros say so, else as UTF-8. A mark at its beginning stays where `keepMark` says so. */
export function decodeText(bytes: Uint8Array, { strict = false, keepMark = false } = {}): string {
  const [a, b] = bytes;
  const little = (a === 0xff && b === 0xfe) || (bytes.length > 1 && a !== 0 && b === 0);
  const big = (a === 0xfe && b === 0xff) || (bytes.length > 1 && a === 0 && b !== 0);
  const encoding = little ? 'utf-16le' : big ? 'utf-16be' : 'utf-8';
  return new TextDecoder(encoding, { fatal: strict, ignoreBOM: keepMark }).decode(bytes);
}

/** What a drawing is, by its content alone; null when it is none of these. */
export function drawingFormat(bytes: Uint8Array): DrawingFormat | null {
  if (isBinaryDxf(bytes)) return 'dxf';
  // An even cut, so that no letter of UTF-16 is halved.
  const head = decodeText(bytes.subarray(0, 4096));
  if (head.slice(0, PDF_WITHIN).includes('%PDF-')) return 'pdf';
  if (/^\s*</.test(head)) return 'svg';
  return /^\s*(0\s*[\r\n]+\s*SECTION|999\s*[\r\n])/.test(head) ? 'dxf' : null;
}

export function isBinaryDxf(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes.subarray(0, BINARY_DXF.length)) === BINARY_DXF;
}

/** Whether the bytes are packed with gzip, as an .svgz is (RFC 1952, 2.3.1). */
export function isGzip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x1f && bytes[1] === 0x8b;
}
