import * as library from 'pdfkit';
import Helvetica from 'pdfkit/standard-fonts/Helvetica';
import HelveticaBold from 'pdfkit/standard-fonts/HelveticaBold';

/** A value of a PDF dictionary; a plain string becomes a name. */
type PdfValue = string | boolean | number | object;

/** The part of the library that is used, in the form that it has in a page; its own types describe the one for Node. */
export interface PdfDocument {
  readonly _root: { readonly data: Record<string, PdfValue> };
  /** Whether streams that begin from now on are deflated. */
  compress: boolean;
  ref(data: Readonly<Record<string, PdfValue>>): PdfValue;
  addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): void;
  file(
    data: Uint8Array,
    options: { name: string; type: string; description: string; relationship: string; creationDate: Date; modifiedDate: Date },
  ): void;
  save(): void;
  restore(): void;
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void;
  rect(x: number, y: number, width: number, height: number): void;
  clip(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  closePath(): void;
  stroke(): void;
  fill(rule?: 'even-odd'): void;
  fillAndStroke(fill: string, stroke: string, rule: 'even-odd'): void;
  lineWidth(width: number): void;
  lineCap(cap: 'butt' | 'round'): void;
  lineJoin(join: 'miter' | 'round'): void;
  strokeColor(colour: string): void;
  fillColor(colour: string): void;
  font(name: 'Helvetica' | 'Helvetica-Bold', size: number): void;
  text(text: string, x: number, y: number, options: Readonly<Record<string, string | number | boolean>>): void;
  widthOfString(text: string): number;
  end(): void;
}

interface PdfOptions {
  readonly autoFirstPage: false;
  readonly compress: true;
  readonly pdfVersion: '1.7';
  readonly lang: string;
  readonly info: Readonly<Record<string, string | Date>>;
}

interface PdfLibrary {
  readonly PDFDocument: new (options: PdfOptions) => PdfDocument;
  registerStdFonts(...metrics: readonly object[]): void;
}

// The same build of the library in Node and in a page (see the build and test configuration), so that both give the same bytes.
const { PDFDocument, registerStdFonts } = library as unknown as PdfLibrary;
registerStdFonts(Helvetica, HelveticaBold);

/** A document that keeps what it writes, so that the bytes are there as soon as it ends, without a stream. Deflated by the build's own deflater, the same in Node and in a page. */
class KeptDocument extends PDFDocument {
  // Set on first use: the library writes before its constructor returns.
  declare private chunks?: Uint8Array[];

  push(chunk: Uint8Array | null): boolean {
    this.chunks ??= [];
    if (chunk !== null) this.chunks.push(chunk);
    return true;
  }

  bytes(): Uint8Array {
    const chunks = this.chunks ?? [];
    const all = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
    let at = 0;
    for (const chunk of chunks) {
      all.set(chunk, at);
      at += chunk.length;
    }
    return all;
  }
}

/** An empty PDF 1.7 with fixed dates, its language (BCP 47), real text in standard fonts; `draw` fills it. Returns the whole file. */
export function pdfBytes(
  info: Readonly<Record<string, string>>,
  date: Date,
  language: string,
  draw: (document: PdfDocument) => void,
): Uint8Array {
  const document = newDocument({ ...info, CreationDate: date, ModDate: date }, language);
  draw(document);
  document.end();
  return document.bytes();
}

function newDocument(info: Readonly<Record<string, string | Date>>, lang: string): KeptDocument {
  return new KeptDocument({ autoFirstPage: false, compress: true, pdfVersion: '1.7', lang, info });
}

/** Capital height of Helvetica and Helvetica-Bold as a share of the font size (their published metrics: 718 of 1000). */
export const CAPITAL_SHARE = 0.718;

let ruler: KeptDocument | null = null;
/** Widths at a capital height of 1 mm: breaking lines asks for the same words again and again. */
const measured = new Map<string, number>();
const MOST_MEASURED = 20_000;

/** Width of a text in mm at a capital height in mm, kerning included. */
export function helveticaWidth(text: string, height: number, bold: boolean): number {
  const key = `${bold ? 'bold' : 'plain'} ${text}`;
  const known = measured.get(key);
  if (known !== undefined) return known * height;
  ruler ??= newDocument({ CreationDate: new Date(0) }, 'en');
  ruler.font(bold ? 'Helvetica-Bold' : 'Helvetica', 1);
  const width = ruler.widthOfString(text) / CAPITAL_SHARE;
  if (measured.size >= MOST_MEASURED) measured.clear();
  measured.set(key, width);
  return width * height;
}
