import { type LineArcPath, type Point, type Vertex, vertex } from './path.ts';
import { ACCENTED, ACCENTS, type AccentName, type AccentPlace, ANCHORS, GLYPHS, LOW_LETTERS } from './stroke-alphabet.ts';

/** Highest ink above the baseline, accents on capitals included, as a fraction of the capital height; the pen's own width not counted. */
export const LETTER_ASCENT = 1.45;
/** Deepest ink below the baseline, as a positive fraction of the capital height; the pen's own width not counted. */
export const LETTER_DESCENT = 0.35;

export interface StrokeTextOptions {
  /** Where the baseline starts (`left`), has its middle (`center`) or ends (`right`). */
  readonly at: Point;
  /** Capital height in mm, above 0. */
  readonly height: number;
  /** Default `left`. */
  readonly align?: 'left' | 'center' | 'right';
  /** Direction of the baseline in radians, counter-clockwise about `at`; default 0. */
  readonly angle?: number;
}

export interface StrokeText {
  /** Open paths in mm, one a stroke, in reading order; no segment has length zero. */
  readonly paths: readonly LineArcPath[];
  /** As `textWidth`; all ink lies within it. */
  readonly width: number;
  /** Each character that has no glyph and was left out, once, in order of appearance; one that cannot be seen is named like U+000A. */
  readonly unknown: readonly string[];
}

/** Lengths in grid units; `strokes` start at the left edge of the ink. */
interface Glyph {
  readonly left: number;
  readonly width: number;
  readonly right: number;
  readonly strokes: readonly (readonly Vertex[])[];
}

const UNITS_PER_CAPITAL = 20;
const LOW_TOP = 14;
const ACCENT_GAP = 3;
/** Least bearing beside an accent that stands out, so that accents of neighbours do not meet. */
const ACCENT_BEARING = 1.25;
/** Control, format, unassigned and surrogate code points, lone combining marks, and spaces: nothing to show by itself. */
const INVISIBLE = /[\p{C}\p{M}\p{Z}]/u;
const NO_BREAK_SPACES = ['\u00a0', '\u202f'];

/**
 * Text as single strokes for a machine that draws or engraves. Composes the text first (Unicode NFC).
 * A character without a glyph takes no room and is listed in `unknown`: the caller must refuse or warn, never ignore it.
 * @throws RangeError when the height is not above 0 or a number is not finite
 */
export function strokeText(text: string, options: StrokeTextOptions): StrokeText {
  const { at, height, align = 'left', angle = 0 } = options;
  checkHeight(height);
  if (![at.x, at.y, angle].every(Number.isFinite)) throw new RangeError(`cannot letter at ${at.x}, ${at.y}, angle ${angle}: not finite`);
  const { glyphs, unknown } = setGlyphs(text);
  const units = widthUnits(glyphs);
  // The first letter's bearing is room, not ink: the middle of a centred text is the middle of what is seen.
  const start = { left: 0, center: -(units + (glyphs[0]?.left ?? 0)) / 2, right: -units }[align];
  const scale = height / UNITS_PER_CAPITAL;
  const ux = scale * Math.cos(angle);
  const uy = scale * Math.sin(angle);
  const paths: LineArcPath[] = [];
  let cursor = start;
  for (const glyph of glyphs) {
    const origin = cursor + glyph.left;
    for (const stroke of glyph.strokes) {
      const vertices = stroke.map(({ x, y, bulge }) => {
        const along = origin + x;
        return vertex(at.x + along * ux - y * uy, at.y + along * uy + y * ux, bulge);
      });
      paths.push({ closed: false, vertices });
    }
    cursor = origin + glyph.width + glyph.right;
  }
  return { paths, width: units * scale, unknown };
}

/**
 * Width in mm of the text at this capital height: from the start of the first letter's cell to the last letter's right edge (the bearing
 * after it is not counted). 0 when nothing has a glyph.
 * @throws RangeError when the height is not above 0 or not finite
 */
export function textWidth(text: string, height: number): number {
  checkHeight(height);
  return widthUnits(setGlyphs(text).glyphs) * (height / UNITS_PER_CAPITAL);
}

function checkHeight(height: number): void {
  if (!(height > 0 && height < Number.POSITIVE_INFINITY)) throw new RangeError(`letter height ${height} mm: must be above 0 and finite`);
}

function setGlyphs(text: string): { glyphs: Glyph[]; unknown: string[] } {
  const glyphs: Glyph[] = [];
  const unknown = new Set<string>();
  for (const character of text.normalize('NFC')) {
    const glyph = glyphOf(character);
    if (glyph) glyphs.push(glyph);
    else unknown.add(INVISIBLE.test(character) ? codePointName(character) : character);
  }
  return { glyphs, unknown: [...unknown] };
}

function codePointName(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}

function widthUnits(glyphs: readonly Glyph[]): number {
  const advance = glyphs.reduce((sum, glyph) => sum + glyph.left + glyph.width + glyph.right, 0);
  return advance - (glyphs.at(-1)?.right ?? 0);
}

/** Glyphs read so far. Read when first needed: a label uses a few of the hundreds. */
const read = new Map<string, Glyph>();
let accentedLetters: ReadonlyMap<string, readonly [base: string, accent: AccentName]> | undefined;

function glyphOf(character: string): Glyph | undefined {
  const known = read.get(character);
  if (known) return known;
  accentedLetters ??= listAccentedLetters();
  const composition = accentedLetters.get(character);
  const drawn = NO_BREAK_SPACES.includes(character) ? ' ' : character;
  const glyph = composition ? accented(...composition) : Object.hasOwn(GLYPHS, drawn) ? readGlyph(drawn) : undefined;
  if (glyph) read.set(character, glyph);
  return glyph;
}

function listAccentedLetters(): ReadonlyMap<string, readonly [string, AccentName]> {
  const letters = new Map<string, readonly [string, AccentName]>();
  for (const name of Object.keys(ACCENTED) as AccentName[]) {
    for (const [letter = '', base = ''] of ACCENTED[name].split(' ').map((pair) => [...pair])) letters.set(letter, [base, name]);
  }
  return letters;
}

function readGlyph(character: string): Glyph {
  const [metrics = '', ...strokes] = (GLYPHS[character] ?? '').split('; ');
  const [left, width, right] = metrics.split(' ').map(number);
  if (left === undefined || width === undefined || right === undefined) throw new Error(`the alphabet has no letter ${character}`);
  return { left, width, right, strokes: strokes.flatMap(readStroke) };
}

/** One stroke, or those of another glyph scaled and moved (`=c scale x,y`). */
function readStroke(stroke: string): Vertex[][] {
  if (!stroke.startsWith('=')) return [readPoints(stroke)];
  const [other = '', scale = '1', place = '0,0'] = stroke.slice(1).split(' ');
  const [dx = 0, dy = 0] = place.split(',').map(number);
  return moved(readGlyph(other).strokes, dx, dy, number(scale));
}

function readPoints(stroke: string): Vertex[] {
  const points = stroke.split(' ').map((point) => {
    const [place = '', sweep = '0'] = point.split('@');
    const [x = Number.NaN, y = Number.NaN] = place.split(',').map(number);
    return { x, y, arriving: Math.tan((number(sweep) * Math.PI) / 180 / 4) };
  });
  // The alphabet gives each arc with the point it reaches, a path with the point it leaves.
  return points.map(({ x, y }, index) => vertex(x, y, points[index + 1]?.arriving ?? 0));
}

function number(text: string): number {
  const value = Number(text);
  if (!Number.isFinite(value)) throw new Error(`the alphabet has a broken number: ${text}`);
  return value;
}

function moved(strokes: readonly (readonly Vertex[])[], dx: number, dy: number, scale = 1): Vertex[][] {
  return strokes.map((stroke) => stroke.map(({ x, y, bulge }) => vertex(x * scale + dx, y * scale + dy, bulge)));
}

function accented(base: string, name: AccentName): Glyph {
  const letter = readGlyph(base);
  const [place, ...accent] = ACCENTS[name].split('; ') as [AccentPlace, ...string[]];
  const anchor = ANCHORS[place][base] ?? letter.width / 2;
  const top = LOW_LETTERS.includes(base) ? LOW_TOP : UNITS_PER_CAPITAL;
  const mark = moved(accent.flatMap(readStroke), anchor, place === 'above' ? top + ACCENT_GAP : 0);
  const marked = mark.flat().map(({ x }) => x);
  // An accent that stands out beside its letter (as on i) takes of the bearing and widens the cell only for what the bearing cannot give.
  const start = Math.min(0, ...marked);
  const end = Math.max(letter.width, ...marked);
  return {
    left: Math.max(letter.left + start, ACCENT_BEARING),
    width: end - start,
    right: Math.max(letter.right + letter.width - end, ACCENT_BEARING),
    strokes: moved([...letter.strokes, ...mark], -start, 0),
  };
}
