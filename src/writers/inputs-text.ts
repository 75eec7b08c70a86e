import type { PatternInputs } from '../pattern/pattern.ts';
import { setIdOf } from '../pattern/set-id.ts';
import { parseJsonText } from '../units/json-text.ts';
import { plain } from '../units/number.ts';
import { failure, type Result } from '../units/result.ts';
import { asciiText, escaped } from './clean-text.ts';

/** Characters of a DXF comment line; the format allows 255 in its older versions. */
export const DXF_LINE_LENGTH = 250;

const COMMENT = 'knucklewright inputs';
/** `999`, then `knucklewright inputs 1/3 [...]`; the brackets keep blanks at a piece's ends from being trimmed. */
const COMMENT_LINE = /^[ \t]*999[ \t]*\r?\n[ \t]*knucklewright inputs (\d{1,9})\/(\d{1,9}) \[(.*)\][ \t]*\r?$/gm;
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

/** What every file carries: the inputs, and the id of the set of files that belong together. Throws as `inputsToText`. */
export function embeddedText(inputs: PatternInputs): string {
  return inputsToText({ ...inputs, set: setIdOf(inputs) });
}

/** How a DXF names its set in the header, where programs that drop comments keep it. */
export const DXF_SET = 'knucklewright set ';

/** Comment texts for a DXF file: title and notes, then the inputs in numbered pieces, none longer than `DXF_LINE_LENGTH`. */
export function dxfComments(title: string, inputs: PatternInputs, notes: readonly string[] = []): readonly string[] {
  const text = embeddedText(inputs);
  const room = DXF_LINE_LENGTH - `${COMMENT} 9999/9999 []`.length;
  const count = Math.ceil(text.length / room);
  const pieces = Array.from({ length: count }, (_, i) => text.slice(i * room, (i + 1) * room));
  const heads = [`title: ${asciiText(title)}`, ...notes.map(asciiText)].map((line) => line.slice(0, DXF_LINE_LENGTH));
  return [...heads, ...pieces.map((piece, i) => `${COMMENT} ${i + 1}/${count} [${piece}]`)];
}

/** The inputs that an SVG of ours carries in its metadata, parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function inputsFromSvg(svg: string): Result<unknown> {
  for (const content of metadataIn(svg)) {
    const text = content
      .replace(/&quot;|&#34;/g, '"')
      .replace(/&apos;|&#39;/g, "'")
      .trim();
    if (text.startsWith('{') && text.includes(SCHEMA_KEY)) return parsed(text);
  }
  return missing('no <metadata> with inputs: this SVG was not written by knucklewright, or was saved again by a program that dropped them');
}

/** What stands between each `<metadata>` and its end. Searched, not matched: a pattern would begin anew at every start that has no end. */
function* metadataIn(svg: string): Generator<string> {
  for (let at = svg.indexOf('<metadata'); at >= 0; ) {
    const start = svg.indexOf('>', at) + 1;
    if (start === 0) return;
    let next = start;
    if (svg[start - 2] !== '/') {
      // Looked for only where there is content: else each empty one would look through the rest of the file.
      const end = svg.indexOf('</metadata>', start);
      if (end < 0) return;
      yield svg.slice(start, end);
      next = end;
    }
    at = svg.indexOf('<metadata', next);
  }
}

/** The inputs that a DXF of ours carries in its comments (group 999), parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`. */
export function inputsFromDxf(dxf: string): Result<unknown> {
  const comments = [...dxf.matchAll(COMMENT_LINE)];
  const count = Number(comments[0]?.[2] ?? 0);
  if (count === 0) {
    return missing('no comment with inputs: this DXF was not written by knucklewright, or was saved again by a program that dropped them');
  }
  const pieces = new Map<number, string>();
  for (const [, number, of, piece = ''] of comments)
    if (Number(of) === count && !pieces.has(Number(number))) pieces.set(Number(number), piece);
  // The count is what the file says; only comments that are there are counted up to.
  for (let k = 1; k <= Math.min(count, pieces.size + 1); k++)
    if (!pieces.has(k)) return broken(`comment ${k} of ${plain(count, 0)} is missing`);
  return parsed(Array.from({ length: count }, (_, i) => pieces.get(i + 1) ?? '').join(''));
}

/** An embedded file of ours, or null: written on one line, never compressed by us. */
function attached(stream: string): string | null {
  const text = stream.trim();
  return text.startsWith('{') && text.endsWith('}') && text.includes(SCHEMA_KEY) ? text : null;
}

const STREAM = /stream\r?\n/g;
/** Streams that are inflated; ours has a handful, and each may be made to swell to the limit. */
const MOST_INFLATED = 200;
const MOST_INFLATED_BYTES = 10_000_000;

/**
 * The inputs that a PDF of ours carries as an attached file, parsed but not yet checked. Fails with `INPUTS_MISSING` or `INPUTS_BROKEN`.
 * @param inflate undoes the compression that another program may have given the file; returns null for what is not compressed so
 */
export function inputsFromPdf(pdf: Uint8Array, inflate: (bytes: Uint8Array) => Uint8Array | null = () => null): Result<unknown> {
  const file = latin1(pdf);
  let tried = 0;
  let swollen = 0;
  for (const [start, end] of streamsIn(file)) {
    const plain = attached(file.slice(start, end));
    if (plain !== null) return parsed(plain);
    // Only what might be ours is inflated: fonts and pictures are larger.
    if (end - start > LARGEST_ATTACHMENT || swollen > MOST_INFLATED_BYTES || ++tried > MOST_INFLATED) continue;
    const inflated = inflate(pdf.subarray(start, end));
    swollen += inflated?.length ?? 0;
    const packed = inflated ? attached(latin1(inflated)) : null;
    if (packed !== null) return parsed(packed);
  }
  return file.includes(SCHEMA_KEY)
    ? broken('the attached file is cut short')
    : missing(
        'no attached file with inputs: this PDF was not written by knucklewright, or was printed or saved again by a program that dropped them',
      );
}

/** Where each stream of a PDF begins and ends. The next one is looked for behind the last: else a file of nothing but beginnings takes the square of its length. */
function* streamsIn(file: string): Generator<readonly [start: number, end: number]> {
  const begin = new RegExp(STREAM);
  for (let match = begin.exec(file); match !== null; match = begin.exec(file)) {
    const end = file.indexOf('endstream', begin.lastIndex);
    if (end < 0) return;
    yield [begin.lastIndex, end];
    begin.lastIndex = end + 'endstream'.length;
  }
}

const LARGEST_ATTACHMENT = 1_000_000;

/** One character for each byte; ours are ASCII, and of others only the number counts. */
function latin1(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}

function parsed(text: string): Result<unknown> {
  const json = parseJsonText(text);
  return json.ok ? json : broken(json.problems.map((p) => p.message).join('; '));
}

function missing(message: string): Result<unknown> {
  return failure({ code: 'INPUTS_MISSING', where: '', message, kind: 'input' });
}

function broken(detail: string): Result<unknown> {
  const message = `the inputs in this file are damaged (${detail}); draw the pattern again from the hand file`;
  return failure({ code: 'INPUTS_BROKEN', where: '', message, kind: 'input' });
}
