import type { PatternInputs } from '../pattern/pattern.ts';
import { failure, type Result, success } from '../units/result.ts';
import { asciiText, escaped } from './clean-text.ts';

/** Characters of a DXF comment line; the format allows 255 in its older versions. */
export const DXF_LINE_LENGTH = 250;

const COMMENT = 'knucklewright inputs';
/** `999`, then `knucklewright inputs 1/3 [...]`; the brackets keep blanks at a piece's ends from being trimmed. */
const COMMENT_LINE = /^[ \t]*999[ \t]*\r?\n[ \t]*knucklewright inputs (\d+)\/(\d+) \[(.*)\][ \t]*\r?$/gm;
const METADATA = /<metadata\b[^>]*>([\s\S]*?)<\/metadata>/g;
const SCHEMA_KEY = '"schema":"knucklewright/inputs@';

/**
 * The inputs as one line of ASCII JSON without `<`, `>` and `&`: it reads the same in XML, in a DXF comment and in any code page.
 * @throws RangeError when a number in it is not finite, which JSON would write as null without a word
 */
export function inputsToText(inputs: PatternInputs): string {
  const text = JSON.stringify(inputs, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`inputs.${key} is ${String(value)}`);
    return value;
  });
  return text.replace(/[^\x20-\x7e]|[<>&]/g, escaped);
}

/** Comment texts for a DXF file: title and notes, then the inputs in numbered pieces, none longer than `DXF_LINE_LENGTH`. */
export function dxfComments(title: string, inputs: PatternInputs, notes: readonly string[] = []): readonly string[] {
  const text = inputsToText(inputs);
  const room = DXF_LINE_LENGTH - `${COMMENT} 9999/9999 []`.length;
  const count = Math.ceil(text.length / room);
  const pieces = Array.from({ length: count }, (_, i) => text.slice(i * room, (i + 1) * room));
  const heads = [`title: ${asciiText(title)}`, ...notes.map(asciiText)].map((line) => line.slice(0, DXF_LINE_LENGTH));
  return [...heads, ...pieces.map((piece, i) => `${COMMENT} ${i + 1}/${count} [${piece}]`)];
}

/** The inputs that an SVG of ours carries in its metadata, parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function inputsFromSvg(svg: string): Result<unknown> {
  for (const [, content = ''] of svg.matchAll(METADATA)) {
    const text = content
      .replace(/&quot;|&#34;/g, '"')
      .replace(/&apos;|&#39;/g, "'")
      .trim();
    if (text.startsWith('{') && text.includes(SCHEMA_KEY)) return parsed(text);
  }
  return missing('no <metadata> with inputs: this SVG was not written by knucklewright, or was saved again by a program that dropped them');
}

/** The inputs that a DXF of ours carries in its comments (group 999), parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function inputsFromDxf(dxf: string): Result<unknown> {
  const pieces = [...dxf.matchAll(COMMENT_LINE)].map(([, number, count, piece = '']) => ({
    number: Number(number),
    count: Number(count),
    piece,
  }));
  const count = pieces[0]?.count ?? 0;
  if (count === 0) {
    return missing('no comment with inputs: this DXF was not written by knucklewright, or was saved again by a program that dropped them');
  }
  const inOrder = Array.from({ length: count }, (_, i) => pieces.find((p) => p.number === i + 1 && p.count === count));
  const lost = inOrder.flatMap((piece, i) => (piece ? [] : [i + 1]));
  if (lost.length > 0) return broken(`comment ${lost.join(', ')} of ${count} is missing`);
  return parsed(inOrder.map((piece) => piece?.piece ?? '').join(''));
}

/** The start of an embedded file of ours: written on one line, never compressed by us. */
const ATTACHED = /^\s*(\{.*"schema":"knucklewright\/inputs@.*\})\s*$/;
const STREAM = /stream\r?\n/g;

/**
 * The inputs that a PDF of ours carries as an attached file, parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`.
 * @param inflate undoes the compression that another program may have given the file; returns null for what is not compressed so
 */
export function inputsFromPdf(pdf: Uint8Array, inflate: (bytes: Uint8Array) => Uint8Array | null = () => null): Result<unknown> {
  const file = latin1(pdf);
  for (const match of file.matchAll(STREAM)) {
    const start = match.index + match[0].length;
    const end = file.indexOf('endstream', start);
    if (end < 0) break;
    const plain = ATTACHED.exec(file.slice(start, end));
    if (plain?.[1]) return parsed(plain[1]);
    // Only what might be ours is inflated: fonts and pictures are larger.
    const inflated = end - start <= LARGEST_ATTACHMENT ? inflate(pdf.subarray(start, end)) : null;
    const packed = inflated ? ATTACHED.exec(latin1(inflated)) : null;
    if (packed?.[1]) return parsed(packed[1]);
  }
  return file.includes(SCHEMA_KEY)
    ? broken('the attached file is cut short')
    : missing(
        'no attached file with inputs: this PDF was not written by knucklewright, or was printed or saved again by a program that dropped them',
      );
}

const LARGEST_ATTACHMENT = 1_000_000;

function latin1(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) pieces.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return pieces.join('');
}

function parsed(text: string): Result<unknown> {
  try {
    return success(JSON.parse(text) as unknown);
  } catch (error) {
    return broken(error instanceof Error ? error.message : String(error));
  }
}

function missing(message: string): Result<unknown> {
  return failure({ code: 'INPUTS_MISSING', where: '', message, kind: 'input' });
}

function broken(detail: string): Result<unknown> {
  const message = `the inputs in this file are damaged (${detail}); draw the pattern again from the hand file`;
  return failure({ code: 'INPUTS_BROKEN', where: '', message, kind: 'input' });
}
