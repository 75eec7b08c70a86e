import { type Point, polyline } from '../geometry/path.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import type { DrawnShape, DrawnText } from '../pattern/drawing.ts';
import { bodyEdge } from '../pattern/strip/band-drawing.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import { type Sample, samplesBetween } from '../picture/band-surface.ts';
import type { ShownBand } from '../picture/moulded-hand.ts';
import type { Translations } from '../words/language.ts';
import type { storyEnglish } from '../words/papers/story-english.ts';
import { nameHeight } from './finger-names.ts';
import { type Items, label, shape, THUMB_LENGTH, thumbEnd } from './glyphs.ts';

export type StoryWords = Translations<typeof storyEnglish>;

/** How a section is shown: which parts of the strip lie, and whether the hand is turned palm up. */
export interface SectionStep {
  readonly shown: readonly ShownBand[];
  readonly palmUp: boolean;
  readonly side: Side;
  readonly treated: DigitName | null;
  /** Of a panel's breadth that it has. */
  readonly share: number;
  /** The paper's scale at its end, or a thumb that presses the tack. */
  readonly more?: 'scale' | 'thumb';
}

/** Free space between the digits and the words round them, mm. */
const APART = 6;

/** The digits end-on with the strip as far as it lies: grey what is done, blue what comes, an arrow at its end. True size, mm. */
export function sectionStep(f: StripFigures, { shown, palmUp, side, treated, share, more }: SectionStep, w: StoryWords): Items {
  const left = Math.min(...f.path.hand.sections.map((s) => s.x - s.halfWidth));
  const right = Math.max(...f.path.hand.sections.map((s) => s.x + s.halfWidth));
  const letters = nameHeight({ minX: left - APART, maxX: right + APART, minY: 0, maxY: 1 }, share);
  const flip = (side === 'right') !== palmUp ? -1 : 1;
  const up = palmUp ? -1 : 1;
  const place = (p: Point): Point => ({ x: flip * p.x, y: up * p.y });
  const items: (DrawnShape | DrawnText)[] = [];
  const { sections } = f.path.hand;
  for (const s of sections) {
    const { vertices } = bodyEdge({ center: { x: s.x, y: s.y }, a: s.halfWidth, b: s.standingHalfDepth, offset: 0 });
    const isTreated = s.digit === treated;
    items.push(
      shape('digit', [polyline(vertices.map(place), true)], isTreated ? 'heavy' : 'medium', 'ink', isTreated ? 'treated' : 'skin'),
    );
  }
  for (const band of shown) {
    const line = samplesBetween(f, band.from, band.to);
    items.push(shape('strip', [polyline(bandOutline(line, f.options.thickness / 2).map(place), true)], 'fine', 'ink', band.tone));
    if (band.tone === 'strip') items.push(...arrow(line, f.options.thickness, place));
  }
  for (const s of sections) {
    const name = w.short[s.digit];
    const height = Math.min(1.1 * letters, (1.7 * s.halfWidth) / textWidth(name, 1));
    items.push(label(name, { ...place({ x: s.x, y: s.y }) }, height, s.digit === treated, -height / 2));
  }
  // The scale's name stands between the strip and the word on its side.
  const beyondScale = more === 'scale' ? scaleNameAt(f).y + scaleOutward(f) * 1.5 * letters : middleOf(f);
  const top = Math.max(...sections.map((s) => s.y + s.standingHalfDepth + APART), beyondScale);
  const low = Math.min(...sections.map((s) => s.y - s.standingHalfDepth - APART), beyondScale);
  const middle = (left + right) / 2;
  // The thumb comes from the side on which the strip ends: its word stands there instead.
  const dorsalEnd = f.path.held === 'lowered';
  if (more !== 'thumb' || !dorsalEnd) items.push(label(w.back, place({ x: middle, y: top }), letters, false, up > 0 ? 0.4 : -letters));
  if (more !== 'thumb' || dorsalEnd) items.push(label(w.palm, place({ x: middle, y: low }), letters, false, up > 0 ? -letters : 0.4));
  if (more === 'scale') items.push(...paperScale(f, place, w, letters));
  if (more === 'thumb') items.push(...pressingThumb(f, place, w, letters));
  // On a line of its own, away from a thumb: two long words do not fit beside each other.
  const onBack = more === 'thumb' && !dorsalEnd;
  const edge = place({ x: left - APART, y: onBack ? top + 1.7 * letters : low - 1.7 * letters });
  const isAbove = onBack === up > 0;
  items.push({ ...label(w.thumbSide, edge, letters, false, isAbove ? 0.4 : -letters), align: flip > 0 ? 'left' : 'right' });
  return items;
}

/** 1 where the strip ends on the back of the hand, -1 where it ends in the palm. */
const scaleOutward = (f: StripFigures) => (f.path.held === 'lowered' ? 1 : -1);

function scaleNameAt(f: StripFigures): Point {
  return { x: f.path.seam.x, y: f.path.seam.y + scaleOutward(f) * 6.5 };
}

/** Height of the digits' middle, mm: beyond no edge of them. */
function middleOf(f: StripFigures): number {
  return f.path.hand.sections[0]?.y ?? 0;
}

/** Ticks of the paper's scale outside the end of the strip, and its name. */
function paperScale(f: StripFigures, place: (p: Point) => Point, w: StoryWords, letters: number): Items {
  const whole = f.path.pathLength;
  const outward = scaleOutward(f);
  const ticks = [0, 3, 6, 9, 12].flatMap((back) => {
    const at = samplesBetween(f, whole - back - 0.1, whole - back)[0];
    if (!at) return [];
    const sign = Math.sign(at.ny * outward) || 1;
    const reach = (d: number) => place({ x: at.x + sign * d * at.nx, y: at.y + sign * d * at.ny });
    const from = f.options.thickness / 2;
    return [polyline([reach(from), reach(from + (back % 6 === 0 ? 3.4 : 2.2))])];
  });
  const name = place(scaleNameAt(f));
  const up = place({ x: 0, y: outward }).y > 0;
  return [shape('paper-scale', ticks, 'medium', 'ink', null), label(w.scale, name, letters, false, up ? 0 : -letters)];
}

/** The therapist's thumb on both layers, in the middle of the held finger. */
function pressingThumb(f: StripFigures, place: (p: Point) => Point, w: StoryWords, letters: number): Items {
  const outward = scaleOutward(f);
  const { seam } = f.path;
  const tip = place({ x: seam.x, y: seam.y + outward * 1.6 * f.options.thickness });
  const up = place({ x: 0, y: outward }).y > 0 ? 1 : -1;
  const end = { x: tip.x, y: tip.y + up * (THUMB_LENGTH + 2.5) };
  return [...thumbEnd(tip, (up * Math.PI) / 2), label(w.thumb, end, letters, false, up > 0 ? 0 : -letters)];
}

/** Both faces of the strip along a line, as one outline. */
function bandOutline(line: readonly Sample[], half: number): readonly Point[] {
  const face = (side: number) => line.map((p) => ({ x: p.x + side * half * p.nx, y: p.y + side * half * p.ny }));
  return [...face(1), ...face(-1).toReversed()];
}

/** A head at the end of the strip, as broad as two of it. */
function arrow(line: readonly Sample[], thickness: number, place: (p: Point) => Point): readonly DrawnShape[] {
  const end = line.at(-1);
  if (!end) return [];
  const at = (along: number, across: number) =>
    place({ x: end.x + along * end.ny + across * end.nx, y: end.y - along * end.nx + across * end.ny });
  return [
    shape('arrow', [polyline([at(0, 1.5 * thickness), at(2.4 * thickness, 0), at(0, -1.5 * thickness)], true)], 'fine', 'ink', 'ink'),
  ];
}
