import { type Point, polyline } from '../geometry/path.ts';
import { textWidth } from '../geometry/stroke-letters.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import type { DrawnShape, DrawnText, Tone } from '../pattern/drawing.ts';
import { bodyEdge } from '../pattern/strip/band-drawing.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import { type Sample, samplesBetween } from '../picture/band-surface.ts';
import type { ShownBand } from '../picture/moulded-hand.ts';
import type { Translations } from '../words/language.ts';
import type { storyEnglish } from '../words/papers/story-english.ts';

export type StoryWords = Translations<typeof storyEnglish>;
export type Items = readonly (DrawnShape | DrawnText)[];

/** How a section is shown: which parts of the strip lie, and whether the hand is turned palm up. */
export interface SectionStep {
  readonly shown: readonly ShownBand[];
  readonly palmUp: boolean;
  readonly side: Side;
  readonly treated: DigitName | null;
}

const NAME = 3.4;
const AROUND = 3;
/** Free space between the digits and the words round them, mm. */
const APART = 6;

/** The digits end-on with the strip as far as it lies: grey what is done, blue what comes, an arrow at its end. True size, mm. */
export function sectionStep(f: StripFigures, { shown, palmUp, side, treated }: SectionStep, w: StoryWords): Items {
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
    const height = Math.min(NAME, (1.7 * s.halfWidth) / textWidth(name, 1));
    items.push(label(name, { ...place({ x: s.x, y: s.y }) }, height, s.digit === treated, -height / 2));
  }
  const left = Math.min(...sections.map((s) => s.x - s.halfWidth));
  const right = Math.max(...sections.map((s) => s.x + s.halfWidth));
  const top = Math.max(...sections.map((s) => s.y + s.standingHalfDepth)) + APART;
  const low = Math.min(...sections.map((s) => s.y - s.standingHalfDepth)) - APART;
  const middle = (left + right) / 2;
  items.push(label(w.back, place({ x: middle, y: top }), AROUND, false, up > 0 ? 0.4 : -AROUND));
  items.push(label(w.palm, place({ x: middle, y: low }), AROUND, false, up > 0 ? -AROUND : 0.4));
  // On a line of its own: two long words do not fit beside each other.
  const edge = place({ x: left - APART, y: low - 1.7 * AROUND });
  items.push({ ...label(w.thumbSide, edge, AROUND, false, up > 0 ? -AROUND : 0.4), align: flip > 0 ? 'left' : 'right' });
  return items;
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

export function shape(role: string, paths: DrawnShape['paths'], pen: DrawnShape['pen'], tone: Tone, fill: Tone | null): DrawnShape {
  return { kind: 'shape', role, title: '', paths, circles: [], pen, tone, fill };
}

export function label(text: string, at: Point, height: number, strong = false, rise = 0): DrawnText {
  return { kind: 'text', role: 'name', text, at: { x: at.x, y: at.y + rise }, height, align: 'center', tone: 'ink', strong };
}
