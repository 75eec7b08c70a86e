import { polyline } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Side } from '../../hand/digits.ts';
import type { PatternWords } from '../../words/pattern/pattern-words.ts';
import { dashed } from '../dashes.ts';
import type { Label, Mark } from '../pattern.ts';
import type { UprightMark } from './upright-marks.ts';

/** Capital heights of the words on the strip that are tried in turn, mm: smaller ones only where a small hand leaves no room. */
const WORD_HEIGHTS = [1.8, 1.5, 1.25];
/** Free space between a line and the words along it, and between words. mm */
const WORD_GAP = 0.6;
/** Words keep this far from the edges of the strip. mm */
const EDGE_GAP = 0.8;
const TICK_LENGTH = 3;
const ARROW_WIDTH = 2.2;
const CORNER_MARK = 3;

/** The strip as it lies on the sheet: x from its left end, y along the digits, distal positive. mm */
export interface LaidStrip {
  readonly length: number;
  readonly xOf: (v: number) => number;
  /** The y that is free between the two edges all the way from one x to another. */
  readonly edgesBetween: (from: number, to: number) => { readonly bottom: number; readonly top: number };
  /** x of the corner at the starting end, and the direction into the strip. */
  readonly startX: number;
  readonly inward: 1 | -1;
}

export interface Placed {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
  /** Words that must be on the strip but found no room, even small; they stand beside it instead. */
  readonly left: readonly string[];
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Lines across the strip and every word on it, at the largest height at which all that must be said finds room. */
export function placeOnStrip(strip: LaidStrip, uprights: readonly UprightMark[], side: Side, code: string, words: PatternWords): Placed {
  let placed: Placed = { marks: [], labels: [], left: [] };
  for (const height of WORD_HEIGHTS) {
    placed = new StripLettering(strip, height, words).place(uprights, side, code);
    if (placed.left.length === 0) break;
  }
  return placed;
}

/** Puts lines and words on one strip at one height, each where the earlier ones left room: first what must be said, then the rest. */
class StripLettering {
  private readonly marks: Mark[] = [];
  private readonly labels: Label[] = [];
  private readonly left: string[] = [];
  private readonly taken: Span[] = [];
  private readonly strip: LaidStrip;
  private readonly height: number;
  private readonly words: PatternWords;

  constructor(strip: LaidStrip, height: number, words: PatternWords) {
    this.strip = strip;
    this.height = height;
    this.words = words;
  }

  place(uprights: readonly UprightMark[], side: Side, code: string): Placed {
    const { lettering, corner, distalUp } = this.words;
    const { mark, span } = cornerMark(this.strip, corner);
    this.marks.push(mark);
    this.taken.push(span);
    for (const upright of uprights) {
      const x = this.strip.xOf(upright.v);
      this.marks.push(lineAcross(this.strip, upright, x));
      this.taken.push({ from: x, to: x });
    }
    for (const upright of uprights) if (isMidline(upright) && !this.beside(upright)) this.left.push(upright.title);
    if (!this.arrow()) this.left.push(distalUp);
    const [whole, short] = [lettering.hand[side], lettering.handShort[side]];
    if (!this.free(whole) && !this.free(short)) this.left.push(whole);
    const outsideUp = `${lettering.outside} ${lettering.up}`;
    if (!this.free(outsideUp) && !this.free(lettering.outside, lettering.up)) this.left.push(outsideUp);
    for (const upright of uprights) if (!isMidline(upright) && upright.role !== 'web-crossing') this.beside(upright);
    this.free(code);
    for (const upright of uprights) if (upright.role === 'web-crossing') this.beside(upright);
    return { marks: this.marks, labels: this.labels, left: this.left };
  }

  /** Words along a line, each on its side of it or, where that is taken, on the other; false when one found no room. */
  private beside(mark: UprightMark): boolean {
    const x = this.strip.xOf(mark.v);
    let all = true;
    for (const [k, word] of mark.words.entries()) {
      if (word === '') continue;
      // Two words are read from left to right; a single one stands on its side of the line along v.
      const own = (k === 0 ? -1 : 1) * (mark.words.includes('') ? this.strip.inward : 1);
      const columns = [1, 2].flatMap((place) => [this.columnAt(x, own, place), this.columnAt(x, -own, place)]);
      const span = columns.find((column) => this.isFree(column, x) && this.fits(word, column) && !this.lineBetween(x, column));
      if (span) this.write(word, span);
      else all = false;
    }
    return all;
  }

  /** Words in neighbouring columns in the middle of the widest free space where they fit; false when there is none. */
  private free(...words: readonly string[]): boolean {
    const needed = words.length * this.height + (words.length - 1) * WORD_GAP;
    for (const gap of this.gaps()) {
      if (gap.to - gap.from < needed + 2 * WORD_GAP) return false;
      const start = (gap.from + gap.to - needed) / 2;
      const spans = words.map((word, k) => {
        const from = start + k * (this.height + WORD_GAP);
        return { word, from, to: from + this.height };
      });
      if (!spans.every((span) => this.fits(span.word, span))) continue;
      for (const span of spans) this.write(span.word, span);
      return true;
    }
    return false;
  }

  /** The arrow to the distal edge with its word beside it, in the widest space. */
  private arrow(): boolean {
    const { lettering, distalArrow } = this.words;
    const needed = ARROW_WIDTH + WORD_GAP + this.height;
    const gap = this.gaps().find((g) => g.to - g.from >= needed + 2 * WORD_GAP && this.fits(lettering.distal, g));
    if (!gap) return false;
    const from = (gap.from + gap.to - needed) / 2;
    const edges = this.strip.edgesBetween(from, from + needed);
    const top = edges.top - 2;
    const middle = from + ARROW_WIDTH / 2;
    const head = [
      { x: from, y: top - ARROW_WIDTH },
      { x: middle, y: top },
      { x: from + ARROW_WIDTH, y: top - ARROW_WIDTH },
    ];
    const shaft = [
      { x: middle, y: edges.bottom + 2 },
      { x: middle, y: top },
    ];
    this.marks.push({
      layer: 'MARK',
      role: 'distal-arrow',
      title: distalArrow,
      paths: [polyline(shaft), polyline(head)],
      circles: [],
    });
    this.write(lettering.distal, { from: from + ARROW_WIDTH + WORD_GAP, to: from + needed });
    this.taken.push({ from, to: from + ARROW_WIDTH });
    return true;
  }

  /** A word reading upward in its column, in the middle of the strip's width there; capitals have no descenders. */
  private write(text: string, span: Span): void {
    const { bottom, top } = this.strip.edgesBetween(span.from, span.to);
    this.labels.push({ layer: 'MARK', text, at: { x: span.to, y: (bottom + top) / 2 }, height: this.height, align: 'center', angle: 90 });
    this.taken.push({ from: span.from, to: span.to });
  }

  /** The first or second column beside a line. */
  private columnAt(x: number, way: number, place: number): Span {
    const near = place * WORD_GAP + (place - 1) * this.height;
    return way > 0 ? { from: x + near, to: x + near + this.height } : { from: x - near - this.height, to: x - near };
  }

  /** Whether another line stands between a line and a column, so that the word would seem to be the other's. */
  private lineBetween(x: number, column: Span): boolean {
    return this.taken.some((t) => t.from === t.to && t.from !== x && (t.from - x) * (t.from - column.from) < 0);
  }

  private isFree(span: Span, except: number): boolean {
    const gap = WORD_GAP * 0.75;
    return this.taken.every((t) => (t.from === except && t.to === except) || t.to <= span.from - gap || t.from >= span.to + gap);
  }

  private fits(word: string, span: Span): boolean {
    const inside = span.from >= WORD_GAP && span.to <= this.strip.length - WORD_GAP;
    const { bottom, top } = this.strip.edgesBetween(span.from, span.to);
    return inside && textWidth(word, this.height) <= top - bottom - 2 * EDGE_GAP;
  }

  /** Free spans of the strip, widest first. */
  private gaps(): readonly Span[] {
    const free: Span[] = [];
    let from = 0;
    for (const t of [...this.taken, { from: this.strip.length, to: this.strip.length }].sort((a, b) => a.from - b.from)) {
      if (t.from > from) free.push({ from, to: t.from });
      from = Math.max(from, t.to);
    }
    // Of two as wide to a thousandth of a millimetre the left one is first, whatever the last digit says.
    const width = ({ from, to }: Span) => Math.round(1000 * (to - from));
    return free.sort((a, b) => width(b) - width(a));
  }
}

function isMidline(mark: UprightMark): boolean {
  return mark.role.startsWith('midline');
}

function lineAcross(strip: LaidStrip, mark: UprightMark, x: number): Mark {
  const { bottom, top } = strip.edgesBetween(x, x);
  const paths =
    mark.reach === 'across'
      ? dashed({ x, y: bottom }, { x, y: top }, mark.dashes)
      : [
          polyline([
            { x, y: bottom },
            { x, y: bottom + TICK_LENGTH },
          ]),
          polyline([
            { x, y: top - TICK_LENGTH },
            { x, y: top },
          ]),
        ];
  return { layer: 'MARK', role: mark.role, title: mark.title, paths, circles: [] };
}

function cornerMark(strip: LaidStrip, title: string): { mark: Mark; span: Span } {
  const near = strip.startX + strip.inward * 1.5;
  const far = near + strip.inward * CORNER_MARK;
  const span = { from: Math.min(near, far), to: Math.max(near, far) };
  const top = strip.edgesBetween(span.from, span.to).top - 1.5;
  const corner = [
    { x: near, y: top },
    { x: far, y: top },
    { x: near, y: top - CORNER_MARK },
  ];
  return { mark: { layer: 'MARK', role: 'corner', title, paths: [polyline(corner, true)], circles: [] }, span };
}
