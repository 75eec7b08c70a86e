import { widestSpan } from '../../geometry/inside.ts';
import { type Point, polyline } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import { plain } from '../../units/number.ts';
import type { Label, Mark } from '../pattern.ts';
import type { FaceFrame } from './plate-frame.ts';
import type { DrawnMidline, FaceMarks } from './plate-marks.ts';
import type { PlateOutline } from './plate-outline.ts';

/** Capital heights tried in turn, mm: the smaller ones only where a small hand leaves no room. */
const HEIGHTS = [3, 2.5, 2, 1.6, 1.25];
const PITCH = 1.75;
const MARGIN = 3;
const SMALL = 1.8;
const ARROW = { longest: 14, head: 1.6, shortest: 6 } as const;

export interface FaceLettering {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
  /** Words that must be on the plate but found no room; they stand beside it instead. */
  readonly left: readonly string[];
}

/** All words on one face and its distal arrow, in the frame's coordinates. `at` is the middle of each label's baseline, or of its height where it reads upward: see `placeFaceLabel`. */
export function faceLettering(
  frame: FaceFrame,
  outline: PlateOutline,
  polygon: readonly Point[],
  drawn: FaceMarks,
  words: { readonly side: string; readonly code: string },
): FaceLettering {
  const labels: Label[] = [];
  const left: string[] = [];
  const face = `${frame.face.toUpperCase()} PLATE`;
  const title = titleLines(frame, polygon, drawn, [`${words.side} HAND`, face, 'SKIN SIDE DOWN', words.code]);
  if (title) labels.push(...title);
  else left.push(`${words.side} HAND, ${face}, SKIN SIDE DOWN`);
  for (const midline of drawn.midlines) {
    const name = digitName(midline);
    if (name) labels.push(name);
    else left.push(`${midline.digit.toUpperCase()} midline`);
  }
  labels.push(
    ...bendLabel(frame, drawn.midlines),
    ...drawn.pads.map((pad) => centred(pad.strap, (pad.from.x + pad.to.x) / 2, (pad.from.y + pad.to.y) / 2 - 1, 2)),
  );
  labels.push(...edgeWords(frame, outline, polygon));
  const arrow = distalArrow(frame, drawn.midlines);
  if (arrow) labels.push(arrow.label);
  else left.push('distal edge up');
  return { marks: arrow ? [arrow.mark] : [], labels, left };
}

/** Side, face, skin side and code, one under the other or side by side, at the largest height that fits the hand part; null when none does. */
function titleLines(frame: FaceFrame, polygon: readonly Point[], drawn: FaceMarks, words: readonly string[]): readonly Label[] | null {
  const tails = drawn.midlines.map(({ points: [tail] }) => tail.y);
  const free = frame.columns.filter((c) => !c.held).map((c) => c.edge);
  const top = Math.min(...tails, ...free) - 2;
  const bottom = frame.proximal + 8;
  const [side = '', face = '', skin = '', code = ''] = words;
  const settings = [words, [`${side}, ${face}`, `${skin}, ${code}`], [`${side}, ${face}, ${skin}`]];
  for (const height of HEIGHTS) {
    for (const lines of settings) {
      const depth = height + (lines.length - 1) * height * PITCH;
      if (depth > top - bottom) continue;
      const first = (top + bottom + depth) / 2 - height;
      const placed = lines.flatMap((text, k): Label[] => {
        const y = first - k * height * PITCH;
        const span = freeSpan(polygon, drawn, y, y + height);
        const fits = span !== null && span.to - span.from >= textWidth(text, height);
        return fits ? [centred(text, (span.from + span.to) / 2, y, height)] : [];
      });
      if (placed.length === lines.length) return placed;
    }
  }
  return null;
}

/** The stretch of x that is free between two heights: inside the outline and clear of the hooks. */
function freeSpan(polygon: readonly Point[], drawn: FaceMarks, low: number, high: number): { from: number; to: number } | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const y of [low, (low + high) / 2, high]) {
    const span = widestSpan(polygon, y);
    if (!span) return null;
    [from, to] = [Math.max(from, span.from + MARGIN), Math.min(to, span.to - MARGIN)];
  }
  for (const pad of drawn.pads) {
    if (pad.to.y < low - 1 || pad.from.y > high + 1) continue;
    if (pad.to.x < 0) from = Math.max(from, pad.to.x + 2);
    else to = Math.min(to, pad.from.x - 2);
  }
  return to > from ? { from, to } : null;
}

/** The digit's name along its midline in the finger part, on the ulnar side of the line. */
function digitName({ digit, points: [, , bendEnd, tip] }: DrawnMidline): Label | null {
  const text = digit.toUpperCase();
  const room = tip.y - bendEnd.y - 3;
  const height = [2.5, 2, 1.6, 1.25].find((h) => textWidth(text, h) <= room);
  if (height === undefined) return null;
  return { layer: 'MARK', text, at: { x: tip.x + 1 + height / 2, y: (bendEnd.y + tip.y) / 2 }, height, align: 'center', angle: 90 };
}

function bendLabel(frame: FaceFrame, midlines: readonly DrawnMidline[]): readonly Label[] {
  const text = `MP BEND ${plain(frame.bend.angle, 1)}`;
  const [first, second] = midlines;
  if (!first) return [];
  const middle = (line: DrawnMidline) => ({ x: (line.points[1].x + line.points[2].x) / 2, y: (line.points[1].y + line.points[2].y) / 2 });
  const here = middle(first);
  const next = second ? middle(second) : { x: here.x + textWidth(text, SMALL) + 5, y: here.y };
  const height = Math.min(SMALL, (SMALL * Math.max(4, next.x - here.x - 4)) / textWidth(text, SMALL));
  return [centred(text, (here.x + next.x) / 2, Math.max(here.y, next.y) + 0.9, height)];
}

/** Which border is which, where the thumb goes, and what the flare line is for. */
function edgeWords(frame: FaceFrame, outline: PlateOutline, polygon: readonly Point[]): readonly Label[] {
  const labels: Label[] = [];
  const corner = frame.midLateralProximal + frame.wing - 6;
  labels.push(centred('ULNAR', corner - 6.5 - textWidth('ULNAR', SMALL) / 2, frame.proximal + 6, SMALL));
  const y = outline.bar.low - (frame.face === 'dorsal' ? 0.55 : 0.5) * (outline.bar.low - frame.proximal);
  const span = widestSpan(polygon, y);
  if (span) labels.push(centred('THUMB', span.from + 2.5 + textWidth('THUMB', SMALL) / 2, y - SMALL / 2, SMALL));
  const proximal = widestSpan(polygon, frame.proximal + 2);
  const text = 'WRIST: FLARE';
  if (proximal && proximal.to - proximal.from > textWidth(text, SMALL) + 4)
    labels.push(centred(text, (proximal.from + proximal.to) / 2, frame.proximal + 1.2, SMALL));
  return labels;
}

/** An arrow to the distal edge in the finger part: in the first web, or beside the midline of a single digit. */
function distalArrow(frame: FaceFrame, midlines: readonly DrawnMidline[]): { readonly mark: Mark; readonly label: Label } | null {
  const [first, second] = midlines;
  if (!first) return null;
  const row = frame.columns.find((c) => c.digit === first.digit)?.held;
  if (!row) return null;
  const low = Math.max(first.points[2].y, second?.points[2].y ?? Number.NEGATIVE_INFINITY) + 2;
  const high = Math.min(first.points[3].y, second?.points[3].y ?? Number.POSITIVE_INFINITY) - 2;
  const length = Math.min(ARROW.longest, high - low);
  if (length < ARROW.shortest) return null;
  const height = Math.min(2, (2 * length) / textWidth('DISTAL', 2));
  const x = (second ? (first.points[3].x + second.points[3].x) / 2 : first.points[3].x - 0.62 * row.halfWidth) - height / 2;
  const top = (low + high + length) / 2;
  const shaft = [
    { x, y: top - length },
    { x, y: top },
  ];
  const head = [
    { x: x - ARROW.head, y: top - ARROW.head },
    { x, y: top },
    { x: x + ARROW.head, y: top - ARROW.head },
  ];
  const paths = [polyline(shaft), polyline(head)];
  return {
    mark: { layer: 'MARK', role: 'distal-arrow', title: 'arrow to the distal edge', paths, circles: [] },
    label: { layer: 'MARK', text: 'DISTAL', at: { x: x + 1 + height / 2, y: top - length / 2 - 0.5 }, height, align: 'center', angle: 90 },
  };
}

function centred(text: string, x: number, y: number, height: number): Label {
  return { layer: 'MARK', text, at: { x, y }, height, align: 'center', angle: 0 };
}

/** A label where it lies on the sheet. One that reads upward stands left of its baseline, mirrored or not. */
export function placeFaceLabel(label: Label, mirrored: boolean): Label {
  const x = mirrored ? -label.at.x : label.at.x;
  return { ...label, at: { x: label.angle === 90 ? x + label.height / 2 : x, y: label.at.y } };
}
