import { circlePath, type LineArcPath, type Point, segmentsOf } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import { PAPERS_OF_A_PATTERN } from '../../papers/papers.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { type LaidSheet, layOutSheet } from '../../sheet/paper/lay-out-sheet.ts';
import type { Page, PageLayer, PageStroke, PageText, Pen, PicturePen, PrintedSheet } from '../../sheet/paper/page.ts';
import type { SheetSettings } from '../../sheet/paper/sheet-settings.ts';
import { radians } from '../../units/angle.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { cleanText, notWinAnsi } from '../clean-text.ts';
import { drawOrder } from '../draw-order.ts';
import { PEN_WIDTHS, TONES } from '../drawing-style.ts';
import { embeddedText } from '../inputs-text.ts';
import { withoutLetters } from '../unknown-characters.ts';
import type { PagesOfFile, PatternWriter } from '../writer.ts';
import { CAPITAL_SHARE, helveticaWidth, type PdfDocument, pdfBytes } from './pdf-document.ts';
import { arcCubics } from './pdf-path.ts';

/** ISO 32000: a user space unit is 1/72 in; 1 in = 25.4 mm. */
const POINTS_PER_MM = 72 / 25.4;

/** Dates of a file whose inputs have none: the clock is never read. */
const NO_DATE = '2000-01-01';

export const INPUTS_ATTACHMENT = 'knucklewright-inputs.json';

interface PenStyle {
  readonly colour: string;
  /** mm; 0 fills instead. */
  readonly width: number;
}

/** Black and two greys as in the other formats, wide enough for office printers. */
export const PENS: Readonly<Record<Pen, PenStyle>> = {
  CUT: { colour: '#000000', width: 0.25 },
  MARK: { colour: '#404040', width: 0.18 },
  INFO: { colour: '#767676', width: 0.18 },
  bar: { colour: '#000000', width: 0.3 },
  rule: { colour: '#404040', width: 0.15 },
  shade: { colour: '#d0d0d0', width: 0 },
};

/** PDF at true size on paper: page 1 the pattern, then what the settings ask for. */
export function pdfWriter(settings: SheetSettings): PatternWriter {
  return {
    format: 'pdf',
    extension: 'pdf',
    write(pattern: Pattern): Result<Uint8Array> {
      // The same numbers are proved for every format; letters are this format's own.
      const order = drawOrder({
        ...pattern,
        parts: pattern.parts.map((part) => ({ ...part, labels: [] })),
        beside: { marks: pattern.beside.marks, labels: [] },
      });
      const sheet = layOutForPdf(pattern, settings);
      if (!order.ok || !sheet.ok) return failure(...(order.ok ? [] : order.problems), ...(sheet.ok ? [] : sheet.problems));
      const date = new Date(`${pattern.inputs.date ?? NO_DATE}T00:00:00Z`);
      const bytes = writeSheet(sheet.value, date, { name: INPUTS_ATTACHMENT, text: embeddedText(pattern.inputs) });
      return bytes.ok ? success(bytes.value, sheet.warnings) : bytes;
    },
    pages(pattern: Pattern): PagesOfFile | null {
      const sheet = layOutForPdf(pattern, settings);
      if (!sheet.ok) return null;
      const { pages, orientation, tiled } = sheet.value;
      return { count: pages.length, paper: settings.paper.name, orientation, tiled };
    },
  };
}

/** The pages that the PDF of a pattern has. */
export function layOutForPdf(pattern: Pattern, settings: SheetSettings): Result<LaidSheet> {
  return layOutSheet(pattern, settings, helveticaWidth, PAPERS_OF_A_PATTERN);
}

/**
 * Any laid-out pages as a PDF: page sizes true, vectors only, text as text, `PrintScaling` none; the same bytes for the same pages. Fails
 * with every character named that the font cannot show (`LABEL_CHARACTERS_UNKNOWN`), and for numbers without a value (`NUMBER_NOT_WRITABLE`).
 * @param attached a text that travels in the file, one line of ASCII
 */
export function writeSheet(
  sheet: PrintedSheet,
  date: Date,
  attached: { readonly name: string; readonly text: string } | null,
): Result<Uint8Array> {
  const problems = sheet.pages.flatMap((page, k) => page.layers.flatMap((layer) => layerProblems(layer, `page ${k + 1}`)));
  // The head stands on every page; what is wrong with it is said once.
  const once = problems.filter(
    (p, k) => problems.findIndex((q) => q.message.replace(q.where, '') === p.message.replace(p.where, '')) === k,
  );
  if (once.length > 0) return failure(...once);
  const title = cleanText(sheet.title);
  const info = { Title: title, Creator: 'Knucklewright', Producer: 'Knucklewright' };
  return success(
    pdfBytes(info, date, sheet.language === undefined || sheet.language === 'en' ? 'en-GB' : sheet.language, (document) => {
      // Actual size, also where a viewer would fit to the page; paper tray by page size, since the pages are true.
      document._root.data.ViewerPreferences = document.ref({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true });
      for (const page of sheet.pages) drawPage(document, page, sheet.scale);
      if (attached) {
        const data = Uint8Array.from(attached.text, (c) => c.charCodeAt(0));
        const dates = { creationDate: date, modifiedDate: date };
        // Plain, so that any program can read what the drawing was made from.
        document.compress = false;
        document.file(data, {
          name: attached.name,
          type: 'application/json',
          description: 'the inputs of this drawing',
          relationship: 'Source',
          ...dates,
        });
      }
    }),
  );
}

/** From mm on the printed page, y up, to points in the file, y down. */
type ToPoints = (p: Point) => readonly [number, number];

function drawPage(document: PdfDocument, page: Page, scale: PrintedSheet['scale']): void {
  const [kx, ky] = [POINTS_PER_MM * scale.x, POINTS_PER_MM * scale.y];
  document.addPage({ size: [page.width * kx, page.height * ky], margin: 0 });
  const at: ToPoints = (p) => [p.x * kx, (page.height - p.y) * ky];
  for (const layer of page.layers) {
    document.save();
    if (layer.clip) {
      const { minX, minY, maxX, maxY } = layer.clip;
      document.rect(...at({ x: minX, y: maxY }), (maxX - minX) * kx, (maxY - minY) * ky);
      document.clip();
    }
    for (const stroke of layer.strokes) drawStroke(document, stroke, at);
    for (const words of layer.texts) drawText(document, words, at, scale);
    document.restore();
  }
}

function drawStroke(document: PdfDocument, stroke: PageStroke, at: ToPoints): void {
  const paths = [...stroke.paths, ...stroke.circles.map(circlePath)];
  if (typeof stroke.pen !== 'string') {
    drawShape(document, paths, stroke.pen, at);
    return;
  }
  const pen = PENS[stroke.pen];
  for (const path of paths) tracePath(document, path, at);
  if (pen.width === 0) {
    document.fillColor(pen.colour);
    document.fill();
    return;
  }
  document.lineWidth(pen.width * POINTS_PER_MM);
  document.lineCap('butt');
  document.lineJoin('miter');
  document.strokeColor(pen.colour);
  document.stroke();
}

/** Area first, its line over it, as in the SVG of the same picture. */
function drawShape(document: PdfDocument, paths: readonly LineArcPath[], pen: PicturePen, exact: ToPoints): void {
  if (paths.length === 0) return;
  // A picture is only looked at: a 250th of a millimetre is enough for it and halves the file.
  const at: ToPoints = (p) => {
    const [x, y] = exact(p);
    return [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
  };
  for (const path of paths) tracePath(document, path, at);
  if (pen.fill !== null) document.fillColor(TONES[pen.fill]);
  if (pen.line === null) {
    document.fill('even-odd');
    return;
  }
  document.lineWidth(Math.max(THINNEST, PEN_WIDTHS[pen.line] * pen.factor) * POINTS_PER_MM);
  document.lineCap('butt');
  document.lineJoin('round');
  document.strokeColor(TONES[pen.tone]);
  if (pen.fill === null) document.stroke();
  else document.fillAndStroke(TONES[pen.fill], TONES[pen.tone], 'even-odd');
}

/** Thinner lines break up on office printers (common practice, no source). mm */
const THINNEST = 0.12;

function tracePath(document: PdfDocument, path: LineArcPath, at: ToPoints): void {
  const segments = segmentsOf(path);
  const first = segments[0];
  if (!first) return;
  document.moveTo(...at(first.from));
  for (const segment of segments) {
    const cubics = arcCubics(segment);
    if (cubics) for (const [a, b, end] of cubics) document.bezierCurveTo(...at(a), ...at(b), ...at(end));
    else document.lineTo(...at(segment.to));
  }
  if (path.closed) document.closePath();
}

function drawText(document: PdfDocument, words: PageText, at: ToPoints, scale: PrintedSheet['scale']): void {
  const text = fileText(words.text);
  if (text.trim() === '') return;
  const natural = helveticaWidth(text, words.height, words.bold);
  const room = words.asStrokes ? Math.min(natural, textWidth(words.text, words.height)) : natural;
  const shift = { left: 0, center: -room / 2, right: -room }[words.align];
  const angle = radians(words.angle);
  const [x, y] = at({ x: words.at.x + shift * Math.cos(angle), y: words.at.y + shift * Math.sin(angle) });
  document.save();
  // Turned in mm, then scaled by axis: a correction for a printer keeps slanted words in their place.
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  document.transform(c * scale.x, -s * scale.y, s * scale.x, c * scale.y, x, y);
  document.font(words.bold ? 'Helvetica-Bold' : 'Helvetica', (words.height * POINTS_PER_MM) / CAPITAL_SHARE);
  document.fillColor(words.tone === undefined ? '#000000' : TONES[words.tone]);
  // In thousandths of a percent, like every number of the file: a last digit more would differ between the command and the page.
  const horizontalScaling = natural > 0 ? Math.round((100_000 * room) / natural) / 1000 : 100;
  document.text(text, 0, 0, { lineBreak: false, baseline: 'alphabetic', horizontalScaling });
  document.restore();
}

/** Composed, no-break spaces as they are: what the font's encoding has. */
function fileText(text: string): string {
  return text.normalize('NFC');
}

function layerProblems(layer: PageLayer, where: string): readonly Problem[] {
  const letters = layer.texts.flatMap(({ text }) => withoutLetters(text, notWinAnsi(text), where));
  const numbers = [
    ...layer.texts.flatMap((t) => [t.at.x, t.at.y, t.height, t.angle]),
    ...layer.strokes.flatMap((s) => s.paths.flatMap((p) => p.vertices.flatMap((v) => [v.x, v.y, v.bulge]))),
    ...layer.strokes.flatMap((s) => s.circles.flatMap((c) => [c.center.x, c.center.y, c.radius])),
  ];
  if (numbers.every((n) => Number.isFinite(n) && Math.abs(n) < LARGEST_COORDINATE)) return letters;
  const message = `${where} has a number that is not finite or too large; nothing was written`;
  return [...letters, { code: 'NUMBER_NOT_WRITABLE', where, message, kind: 'refused' }];
}

/** Beyond this nothing lies on paper. mm */
const LARGEST_COORDINATE = 1e5;
