import type { Box, LineArcPath, Point } from '../../geometry/path.ts';
import { placePath, placePoint } from '../../geometry/transform.ts';
import type { Pen as DrawingPen, Tone } from '../../pattern/drawing.ts';
import type { Circle, Label, Layer } from '../../pattern/pattern.ts';
import type { Drawn } from '../../pattern/place-marks.ts';
import { radians } from '../../units/angle.ts';
import type { Language } from '../../words/language.ts';

/** How a stroke is drawn: the three layers of a pattern, a heavy `bar` for scales, a fine `rule`, or an area of light grey. */
export type Pen = Layer | 'bar' | 'rule' | 'shade';

/** How a shape of a picture is drawn: its line or none, its area or none; `factor` makes the line thinner with a smaller picture. */
export interface PicturePen {
  readonly line: DrawingPen | null;
  readonly tone: Tone;
  readonly fill: Tone | null;
  readonly factor: number;
}

export interface PageStroke {
  readonly pen: Pen | PicturePen;
  readonly role: string;
  readonly paths: readonly LineArcPath[];
  readonly circles: readonly Circle[];
}

/** A line of text; `at` on its baseline, `height` of capitals in mm, `angle` in degrees counter-clockwise. */
export interface PageText {
  readonly text: string;
  readonly at: Point;
  readonly height: number;
  readonly align: 'left' | 'center' | 'right';
  readonly angle: number;
  readonly bold: boolean;
  /** Set in the room that the pattern's stroke letters take, narrowed where the font is wider. */
  readonly asStrokes: boolean;
  /** Black where it is not given. */
  readonly tone?: Tone;
}

/** Things that are drawn together, all in mm from the page's lower left corner, y up. `clip` cuts off what lies outside. */
export interface PageLayer {
  readonly clip: Box | null;
  readonly strokes: readonly PageStroke[];
  readonly texts: readonly PageText[];
}

/** What a page is for. */
export type PageKind = 'pattern' | 'story' | 'making' | 'handout' | 'plan';

/** One printed page, free of any format. */
export interface Page {
  readonly title: string;
  /** Of the pages of a pattern. */
  readonly kind?: PageKind;
  readonly width: number;
  readonly height: number;
  readonly layers: readonly PageLayer[];
}

/** Pages of one paper and one orientation. All lengths are those on the printed page; the file is drawn larger by `scale`, against the printer's error. */
export interface PrintedSheet {
  readonly title: string;
  /** Usual: English. */
  readonly language?: Language;
  readonly pages: readonly Page[];
  readonly scale: { readonly x: number; readonly y: number };
}

/** Width in mm of a text in the font of the page, at a capital height in mm. */
export type Measure = (text: string, height: number, bold: boolean) => number;

export const NOTHING: PageLayer = { clip: null, strokes: [], texts: [] };

export function text(words: string, x: number, y: number, height: number, rest: Partial<PageText> = {}): PageText {
  return { text: words, at: { x, y }, height, align: 'left', angle: 0, bold: false, asStrokes: false, ...rest };
}

export function joined(...layers: readonly PageLayer[]): PageLayer {
  return { clip: null, strokes: layers.flatMap((l) => l.strokes), texts: layers.flatMap((l) => l.texts) };
}

/** A turn by `angle` degrees about the origin, then a shift; sizes stay. */
interface PagePlace {
  readonly angle?: number;
  readonly dx: number;
  readonly dy: number;
}

export function placeLayer(layer: PageLayer, place: PagePlace): PageLayer {
  const placement = { angle: radians(place.angle ?? 0), dx: place.dx, dy: place.dy };
  return {
    clip: null,
    strokes: layer.strokes.map((s) => ({
      ...s,
      paths: s.paths.map((p) => placePath(p, placement)),
      circles: s.circles.map((c) => ({ ...c, center: placePoint(c.center, placement) })),
    })),
    texts: layer.texts.map((t) => ({ ...t, at: placePoint(t.at, placement), angle: t.angle + (place.angle ?? 0) })),
  };
}

/** Everything larger by one factor about the origin, letters and the lines of pictures too. */
export function scaleLayer(layer: PageLayer, factor: number): PageLayer {
  const scaled = <P extends Point>(p: P): P => ({ ...p, x: p.x * factor, y: p.y * factor });
  return {
    clip: null,
    strokes: layer.strokes.map((s) => ({
      ...s,
      pen: typeof s.pen === 'string' ? s.pen : { ...s.pen, factor: s.pen.factor * factor },
      paths: s.paths.map((p) => ({ ...p, vertices: p.vertices.map(scaled) })),
      circles: s.circles.map((c) => ({ center: scaled(c.center), radius: c.radius * factor })),
    })),
    texts: layer.texts.map((t) => ({ ...t, at: scaled(t.at), height: t.height * factor })),
  };
}

/** Marks and labels of a pattern, or of anything else that is drawn in them, as they come onto a page. */
export function drawnLayer(drawn: Drawn): PageLayer {
  return {
    clip: null,
    strokes: drawn.marks.map((m) => ({ pen: m.layer, role: m.role, paths: m.paths, circles: m.circles })),
    texts: drawn.labels.map(labelText),
  };
}

function labelText(label: Label): PageText {
  const { text: words, at, height, align, angle } = label;
  return { text: words, at, height, align, angle, bold: false, asStrokes: true };
}

/**
 * Breaks text at spaces so that each line is at most `width` mm at the capital height in the page's font. A word that is longer by itself
 * is broken inside, so that no line is wider.
 */
export function wrapWords(text: string, width: number, height: number, bold: boolean, measure: Measure): readonly string[] {
  const lines: string[] = [];
  const fits = (line: string) => measure(line, height, bold) <= width;
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    // Wide spaces part what stands on one line; they do not begin the next.
    if (word === '' && last !== undefined && !fits(`${last} `)) continue;
    if (last !== undefined && fits(`${last} ${word}`)) {
      lines[lines.length - 1] = `${last} ${word}`;
      continue;
    }
    let rest = word;
    while (rest.length > 1 && !fits(rest)) {
      let cut = rest.length - 1;
      while (cut > 1 && !fits(rest.slice(0, cut))) cut--;
      lines.push(rest.slice(0, cut));
      rest = rest.slice(cut);
    }
    lines.push(rest);
  }
  return lines;
}
