import { widestSpan } from '../../geometry/inside.ts';
import { type Point, polyline } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import type { Side } from '../../hand/digits.ts';
import { degrees, radians } from '../../units/angle.ts';
import type { Speech } from '../../words/speech.ts';
import type { Label, Mark } from '../pattern.ts';
import { type FaceFrame, heldColumns } from './plate-frame.ts';
import { CORNER_MARK, type DrawnMidline, type FaceMarks } from './plate-marks.ts';
import type { PlateOutline } from './plate-outline.ts';

/** Capital heights tried in turn, mm: the smaller ones only where a small hand leaves no room. */
const HEIGHTS = [3, 2.5, 2, 1.6, 1.25];
const PITCH = 1.75;
const MARGIN = 3;
/** Heights at which the room for a block of words is measured. */
const LEVELS = 8;
const SMALL = 1.8;
/** A bend from this length on holds its words in its distal half. mm */
const ROOMY_BEND = 7;
const ARROW = { longest: 14, head: 1.6, shortest: 4, beside: 9 } as const;

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
  words: { readonly side: Side; readonly code: string },
  speech: Speech,
): FaceLettering {
  const labels: Label[] = [];
  const left: string[] = [];
  const { lettering } = speech.plate;
  const side = speech.strip.lettering.hand[words.side];
  const face = lettering.face[frame.face];
  const ulnar = ulnarWord(frame, outline, lettering.ulnar);
  const title = titleLines(frame, polygon, drawn, ulnar, [side, face, lettering.skin, words.code]);
  if (title) labels.push(...title);
  else left.push(`${side}, ${face}, ${lettering.skin}`);
  const names: Label[] = [];
  for (const [k, midline] of drawn.midlines.entries()) {
    // Toward the middle of the plate, away from the hooks.
    const name = digitName(midline, speech.strip.lettering.digit[midline.digit], k > 0 && k === drawn.midlines.length - 1 ? -1 : 1);
    if (name) names.push(name);
    else left.push(speech.plate.midlineOf(speech.strip.lettering.digit[midline.digit]));
  }
  const bend = bendLabel(frame, drawn.midlines, names, speech);
  if (!bend) left.push(lettering.bend(speech.number(frame.angle, 1)));
  labels.push(
    ...names,
    ...(bend ? [bend] : []),
    ...drawn.pads.map((pad) => centred(pad.strap, (pad.from.x + pad.to.x) / 2, (pad.from.y + pad.to.y) / 2 - 1, 2)),
  );
  labels.push(ulnar, ...edgeWords(frame, outline, polygon, lettering, title ?? []));
  const arrow = distalArrow(drawn.midlines, names, speech.strip);
  if (arrow) labels.push(arrow.label);
  else left.push(speech.strip.distalUp);
  return { marks: arrow ? [arrow.mark] : [], labels, left };
}

/** Side, face, skin side and code, one under the other or side by side, at the largest height that fits the hand part, clear of its side lines where they leave room; null when none does. */
function titleLines(
  frame: FaceFrame,
  polygon: readonly Point[],
  drawn: FaceMarks,
  ulnar: Label,
  words: readonly string[],
): readonly Label[] | null {
  const tails = drawn.midlines.map(({ points }) => points[0]?.y ?? 0);
  const free = frame.columns.filter((c) => !c.held).map((c) => c.edge);
  const top = Math.min(...tails, ...free) - 2;
  const bottom = frame.proximal + 8;
  const [side = '', face = '', skin = '', code = ''] = words;
  const settings = [words, [`${side}, ${face}`, `${skin}, ${code}`], [`${side}, ${face}, ${skin}`]];
  const folds = drawn.marks.filter(({ role }) => role === 'fold').flatMap(({ paths }) => paths.flatMap(({ vertices }) => vertices));
  for (const clearOf of [folds, []]) {
    for (const height of HEIGHTS) {
      for (const lines of settings) {
        const depth = height + (lines.length - 1) * height * PITCH;
        if (depth > top - bottom) continue;
        const first = (top + bottom + depth) / 2 - height;
        const span = freeSpan(polygon, drawn, ulnar, clearOf, first - (lines.length - 1) * height * PITCH, first + height);
        if (!span || lines.some((text) => textWidth(text, height) > span.to - span.from)) continue;
        return lines.map((text, k) => centred(text, (span.from + span.to) / 2, first - k * height * PITCH, height));
      }
    }
  }
  return null;
}

/** The stretch of x that is free between two heights: inside the outline, clear of the hooks, of the word at the ulnar corner and of the points of upright lines. */
function freeSpan(
  polygon: readonly Point[],
  drawn: FaceMarks,
  ulnar: Label,
  lines: readonly Point[],
  low: number,
  high: number,
): { from: number; to: number } | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let k = 0; k <= LEVELS; k++) {
    const y = low + ((high - low) * k) / LEVELS;
    const span = widestSpan(polygon, y);
    if (!span) return null;
    [from, to] = [Math.max(from, span.from + MARGIN), Math.min(to, span.to - MARGIN)];
  }
  for (const pad of drawn.pads) {
    if (pad.to.y < low - 1 || pad.from.y > high + 1) continue;
    if (pad.to.x < 0) from = Math.max(from, pad.to.x + 2);
    else to = Math.min(to, pad.from.x - 2);
  }
  const middle = (from + to) / 2;
  for (const { x, y } of lines) {
    if (y < low - 1 || y > high + 1) continue;
    if (x < middle) from = Math.max(from, x + 1);
    else to = Math.min(to, x - 1);
  }
  if (ulnar.at.y + ulnar.height > low - 1 && ulnar.at.y < high + 1)
    to = Math.min(to, ulnar.at.x - textWidth(ulnar.text, ulnar.height) / 2 - 2);
  return to > from ? { from, to } : null;
}

/** The digit's name along its midline in the finger part, on the ulnar (1) or radial (-1) side of the line. */
function digitName({ bendEnd, tip, heading }: DrawnMidline, text: string, way: 1 | -1): Label | null {
  const length = Math.hypot(tip.x - bendEnd.x, tip.y - bendEnd.y);
  const height = [2.5, 2, 1.6, 1.25].find((h) => textWidth(text, h) <= length - 3);
  if (height === undefined) return null;
  const half = textWidth(text, height) / 2;
  // In the distal half, where the line runs straight, as far as the word is short enough: so far back from the tip.
  const back = Math.max(half + 1.5, Math.min(length / 2, length / 2 - half));
  const aside = way * (1 + height / 2);
  const [s, c] = [Math.sin(heading), Math.cos(heading)];
  const at = { x: tip.x - back * s + aside * c, y: tip.y - back * c - aside * s };
  return { layer: 'MARK', text, at, height, align: 'center', angle: 90 - degrees(heading) };
}

/**
 * Between two midlines, the first two where they leave room: in the bend where it is long enough, else distal of it, else proximal; clear of the digits' names.
 * Null where there is no such place.
 */
function bendLabel(frame: FaceFrame, midlines: readonly DrawnMidline[], names: readonly Label[], { plate, number }: Speech): Label | null {
  const degrees = number(frame.angle, 1);
  const { bend, bendShort } = plate.lettering;
  const [first] = midlines;
  const [held] = heldColumns(frame);
  if (!first || !held) return null;
  const inside = held.held.part.bend.length >= ROOMY_BEND;
  // A single digit's neck has no room for more than the short words, beside its midline.
  const beyond = { x: first.bendEnd.x + 1.1 * held.held.row.halfWidth, y: first.bendEnd.y };
  const pairs =
    midlines.length > 1 ? midlines.slice(1).map((next, k) => [midlines[k] as DrawnMidline, next] as const) : [[first, null] as const];
  const between = (text: string, from: Point, to: Point, up: boolean): Label => {
    const height = Math.min(SMALL, (SMALL * Math.max(4, to.x - from.x - 3)) / textWidth(text, SMALL));
    const y = up ? Math.max(from.y, to.y) + 0.9 : Math.min(from.y, to.y) - 0.9 - height;
    return centred(text, (from.x + to.x) / 2, y, height);
  };
  const middle = ({ begin, bendEnd }: DrawnMidline) => ({ x: (begin.x + bendEnd.x) / 2, y: (begin.y + bendEnd.y) / 2 });
  const places = (text: string): readonly Label[] => [
    ...pairs.map(([one, next]) => {
      const at = (line: DrawnMidline) => (inside ? middle(line) : line.bendEnd);
      return between(text, at(one), next ? at(next) : { ...beyond, y: at(one).y }, true);
    }),
    ...pairs.map(([one, next]) => between(text, one.begin, next ? next.begin : { ...beyond, y: one.begin.y }, false)),
  ];
  const all = [...(midlines.length > 1 ? places(bend(degrees)) : []), ...places(bendShort(degrees))];
  return all.find((label) => names.every((name) => isClear(label, name))) ?? null;
}

/** Space that words keep from each other, mm. */
const BETWEEN_WORDS = 0.5;

/** Whether level words stand clear of words that read upward, of which `at` is the middle. */
function isClear(level: Label, upward: Label): boolean {
  const half = textWidth(upward.text, upward.height) / 2;
  const [c, s] = [Math.cos(radians(upward.angle)), Math.sin(radians(upward.angle))];
  const reach = upward.height / 2 + BETWEEN_WORDS;
  const wide = textWidth(level.text, level.height) / 2 + reach;
  const [low, high] = [level.at.y - reach, level.at.y + level.height + reach];
  // Looked at along the words' middle, in steps shorter than they are high.
  const steps = Math.ceil((2 * half) / reach);
  return Array.from({ length: steps + 1 }, (_, k) => half * ((2 * k) / steps - 1)).every((along) => {
    const [x, y] = [upward.at.x + along * c, upward.at.y + along * s];
    return Math.abs(x - level.at.x) > wide || y < low || y > high;
  });
}

/** Which border is the ulnar one, beside the corner's mark. */
function ulnarWord(frame: FaceFrame, outline: PlateOutline, ulnar: string): Label {
  const corner = outline.ulnar.out - CORNER_MARK.in - CORNER_MARK.side;
  return centred(ulnar, corner - 1.5 - textWidth(ulnar, SMALL) / 2, frame.proximal + CORNER_MARK.in, SMALL);
}

/** Where the thumb goes, and what the flare line is for. */
function edgeWords(
  frame: FaceFrame,
  outline: PlateOutline,
  polygon: readonly Point[],
  { thumb, wrist }: Speech['plate']['lettering'],
  title: readonly Label[],
): readonly Label[] {
  const labels: Label[] = [];
  const wide = textWidth(thumb, SMALL);
  const usual = frame.face === 'dorsal' ? 0.55 : 0.5;
  const places = [0, 0.15, -0.15, 0.3, -0.3].flatMap((aside) => {
    const y = outline.bar.low - (usual + aside) * (outline.bar.low - frame.proximal);
    const spans = [y - SMALL / 2 - 1, y + SMALL / 2 + 1].map((level) => widestSpan(polygon, level));
    const edge = Math.max(...spans.map((span) => span?.from ?? Number.NEGATIVE_INFINITY));
    return Number.isFinite(edge) ? [centred(thumb, edge + 1.5 + wide / 2, y - SMALL / 2, SMALL)] : [];
  });
  // Beside the lines of the title where they leave room.
  const clear = places.find((place) =>
    title.every(
      ({ text, at, height }) =>
        Math.abs(at.x - place.at.x) > (textWidth(text, height) + wide) / 2 + 1 ||
        at.y > place.at.y + SMALL + 0.5 ||
        at.y + height < place.at.y - 0.5,
    ),
  );
  const thumbLabel = clear ?? places[0];
  if (thumbLabel) labels.push(thumbLabel);
  const proximal = widestSpan(polygon, frame.proximal + 2);
  if (proximal && proximal.to - proximal.from > textWidth(wrist, SMALL) + 4)
    labels.push(centred(wrist, (proximal.from + proximal.to) / 2, frame.proximal + 1.2, SMALL));
  return labels;
}

/** An arrow to the distal edge in the finger part: in the web with the most room under the digits' names, or beside the midline of a single digit. */
function distalArrow(
  midlines: readonly DrawnMidline[],
  names: readonly Label[],
  { distalArrow: title, lettering: { distal } }: Speech['strip'],
): { readonly mark: Mark; readonly label: Label } | null {
  const places = midlines.map((line, k) => {
    const next = midlines[k + 1];
    const low = next ? Math.max(line.bendEnd.y, next.bendEnd.y) + 3 : (line.bendEnd.y + line.tip.y) / 2;
    const middle = next ? (line.tip.x + next.tip.x) / 2 + 1 : line.tip.x - 3.2;
    const under = names.filter((name) => Math.abs(name.at.x - middle) < ARROW.beside).map((n) => n.at.y - textWidth(n.text, n.height) / 2);
    const tips = Math.min(line.tip.y, next?.tip.y ?? Number.POSITIVE_INFINITY) - 2;
    // One name leaves room beside it, two do not.
    return { low, tips: under.length > 1 ? Math.min(...under) - 1.5 : tips, under: Math.min(tips, ...under.map((y) => y - 1.5)), middle };
  });
  const webs = midlines.length > 1 ? places.slice(0, -1) : places;
  const drawn = (high: 'tips' | 'under') =>
    arrowIn(
      webs.map((web) => ({ ...web, high: web[high] })),
      title,
      distal,
    );
  const usual = drawn('tips');
  return usual && names.some((name) => !isClearUpward(usual.label, name)) ? drawn('under') : usual;
}

/** Whether two words that read upward stand clear of each other; the second may lean. */
function isClearUpward(upright: Label, leaning: Label): boolean {
  const half = textWidth(leaning.text, leaning.height) / 2;
  const [c, s] = [Math.cos(radians(leaning.angle)), Math.sin(radians(leaning.angle))];
  const reach = leaning.height / 2 + BETWEEN_WORDS;
  const [wide, long] = [upright.height / 2 + reach, textWidth(upright.text, upright.height) / 2 + reach];
  const steps = Math.ceil((2 * half) / reach);
  return Array.from({ length: steps + 1 }, (_, k) => half * ((2 * k) / steps - 1)).every(
    (along) => Math.abs(leaning.at.x + along * c - upright.at.x) > wide || Math.abs(leaning.at.y + along * s - upright.at.y) > long,
  );
}

/** An arrow in the first place if it has room enough for a long one, else in the one with the most. */
function arrowIn(
  webs: readonly { readonly low: number; readonly high: number; readonly middle: number }[],
  title: string,
  distal: string,
): { readonly mark: Mark; readonly label: Label } | null {
  const [first, ...others] = webs;
  if (!first) return null;
  const roomy = first.high - first.low >= ARROW.longest ? first : others.reduce((a, b) => (b.high - b.low > a.high - a.low ? b : a), first);
  const { low, high } = roomy;
  const length = Math.min(ARROW.longest, high - low);
  if (length < ARROW.shortest) return null;
  const height = Math.min(2, (2 * length) / textWidth(distal, 2));
  const x = roomy.middle - height / 2;
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
    mark: { layer: 'MARK', role: 'distal-arrow', title, paths, circles: [] },
    label: {
      layer: 'MARK',
      text: distal,
      // Clear of the head where it can be, and never under the arrow's foot, where the bend's words stand.
      at: { x: x + 1.2 + height / 2, y: Math.max(top - (length + ARROW.head) / 2, top - length + textWidth(distal, height) / 2) },
      height,
      align: 'center',
      angle: 90,
    },
  };
}

function centred(text: string, x: number, y: number, height: number): Label {
  return { layer: 'MARK', text, at: { x, y }, height, align: 'center', angle: 0 };
}

/** A label where it lies on the sheet. One that reads upward is given by the middle of its height, and stands left of its baseline, mirrored or not. */
export function placeFaceLabel(label: Label, mirrored: boolean): Label {
  const x = mirrored ? -label.at.x : label.at.x;
  if (label.angle === 0) return { ...label, at: { x, y: label.at.y } };
  const angle = mirrored ? 180 - label.angle : label.angle;
  const half = label.height / 2;
  return { ...label, angle, at: { x: x + half * Math.sin(radians(angle)), y: label.at.y - half * Math.cos(radians(angle)) } };
}
