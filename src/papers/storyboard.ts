import { heldDigits } from '../block/block.ts';
import { type Box, type Point, polyline, unionBox } from '../geometry/path.ts';
import { placePath } from '../geometry/transform.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import type { MadeDevice } from '../pattern/making-notes.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import { helpingHand } from '../picture/helping-hand.ts';
import type { DrawnMoulded, ShownBand, Viewpoint } from '../picture/moulded-hand.ts';
import type { HandPose } from '../picture/posed-hand.ts';
import { add, minus } from '../picture/vec.ts';
import { joined, type Measure, type PageLayer } from '../sheet/paper/page.ts';
import { plain } from '../units/number.ts';
import { capital, listed } from '../words/hand-words.ts';
import { devicePicture, treatedDigit } from './device-pictures.ts';
import { named, nameHeight } from './finger-names.ts';
import { type Items, label, moved, overTheCrease, shape, strike, twisted } from './glyphs.ts';
import { frame, picture, words } from './layout.ts';
import { type StoryWords, sectionStep } from './section-step.ts';

type MadeStrip = MadeDevice & { readonly kind: 'strip' };

/** One step: its words, and two pictures side by side. */
export interface StoryStep {
  readonly title: string;
  readonly view: string;
  readonly text: string;
  readonly pictures: readonly { readonly items: Items; readonly share: number }[];
}

const REST: HandPose = { mp: 25, pip: 15 };
const STRAIGHT: HandPose = { mp: 25, pip: 5 };

/** The steps of making a strip, in their order: nine; ten where it runs round four fingers. Pictures are drawn when they are asked for. */
export function stripSteps(made: MadeStrip, w: StoryWords): readonly StoryStep[] {
  const { figures: f, hand } = made;
  const treated = treatedDigit(made);
  const lowered = f.path.held === 'lowered';
  const held = listed(
    heldDigits(f.block).map((digit) => w.finger[digit]),
    w.and,
  );
  const whole = f.path.pathLength;
  const section = (shown: readonly ShownBand[], palmUp: boolean, more?: 'scale' | 'thumb', share = 0.46) => ({
    items: sectionStep(f, { shown, palmUp, side: hand.side, treated, share, ...(more ? { more } : {}) }, w),
    share,
  });
  const onHand = (shown: readonly ShownBand[], palmUp: boolean, view: Viewpoint = { up: 74 }, share = 0.54) => ({
    items: named(devicePicture(made, { pose: REST, view: palmUp ? { roll: 180, up: 74 } : view, shown }), w.short, treated, share),
    share,
  });
  const stages = stagesOf(f);
  const walk = stages.map(({ kind, from, to, digits, part = 'whole' as const }): StoryStep => {
    const shown: readonly ShownBand[] = [...(from > 0 ? [{ from: 0, to: from, tone: 'done' } as const] : []), { from, to, tone: 'strip' }];
    const names = listed(
      digits.map((digit) => w.finger[digit]),
      w.and,
    );
    const outerPalmar = !lowered;
    if (kind === 'first') {
      const step = w.step.first[outerPalmar ? 'palmar' : 'dorsal'];
      const view = outerPalmar ? w.view.palmUp : w.view.fingertips;
      return {
        title: step.title(names),
        view,
        text: step.text(names),
        pictures: [onHand(shown, outerPalmar, { up: 40 }), section(shown, outerPalmar)],
      };
    }
    if (kind === 'through') {
      const way = lowered ? 'over' : 'under';
      const { through } = w.step;
      const step = (part === 'whole' ? through : through[part])[way];
      const pictures = [section(shown, false, undefined, 0.72), { items: twisted(w.wrong.twisted), share: 0.28 }];
      return { title: step.title(names), view: w.view.large, text: step.text(names), pictures };
    }
    if (kind === 'beside') {
      const text = w.step.beside[lowered ? 'palmar' : 'dorsal'](names);
      return { title: w.step.beside.title(names), view: w.view.large, text, pictures: [section(shown, false, undefined, 1)] };
    }
    if (kind === 'second') {
      const step = w.step.second[lowered ? 'palmar' : 'dorsal'];
      const view = lowered ? w.view.palmUp : w.view.above;
      const wrong = lowered ? [{ items: overTheCrease(w.wrong.crease), share: 0.28 }] : [];
      const pictures = [
        onHand(shown, lowered, undefined, lowered ? 0.36 : 0.54),
        section(shown, lowered, undefined, lowered ? 0.36 : 0.46),
        ...wrong,
      ];
      return { title: step.title(names), view, text: step.text(names), pictures };
    }
    const step = w.step.back[f.options.closure];
    const view = outerPalmar ? w.view.palmUp : w.view.fingertips;
    return {
      title: step.title,
      view,
      text: step.text(names, held),
      pictures: [onHand(shown, outerPalmar, { up: 40 }), section(shown, outerPalmar, f.options.closure === 'tacked' ? 'thumb' : undefined)],
    };
  });
  const all: readonly ShownBand[] = [{ from: 0, to: whole, tone: 'done' }];
  const start: readonly ShownBand[] = [{ from: whole - 9, to: whole + 9, tone: 'strip' }];
  const { paper, position, warm, check, close } = w.step;
  const how = w.mp[f.path.held];
  const across = hand.side === 'right' ? 90 : -90;
  const fromSide = devicePicture(made, { pose: STRAIGHT, view: { across, up: 0 }, shown: [] });
  return [
    {
      title: paper.title,
      view: w.view.fingertips,
      text: paper.text(held),
      pictures: [onHand(all, false, { up: 40 }), section(all, false, 'scale')],
    },
    {
      title: position.title,
      view: w.view.side,
      text: position.text(capital(held), plain(f.options.differential, 0), how),
      pictures: [{ items: positionPicture(made, w, fromSide, treated), share: 1 }],
    },
    {
      title: warm.title,
      view: lowered ? w.view.above : w.view.palmUp,
      text: warm.text(held),
      pictures: [onHand(start, !lowered), section(start, !lowered)],
    },
    ...walk,
    { title: check.title, view: w.view.side, text: check.text, pictures: checkPictures(made, w) },
    {
      title: close.title,
      view: lowered ? w.view.flat : w.view.flatPalmUp,
      text: close.text[f.options.seam],
      pictures: [onHand([{ from: 0, to: whole, tone: 'strip' }], !lowered), { items: flatStrip(f, hand.side), share: 0.46 }],
    },
  ];
}

interface Stage {
  readonly kind: 'first' | 'through' | 'beside' | 'second' | 'back';
  readonly from: number;
  readonly to: number;
  readonly digits: readonly DigitName[];
  /** Of two held fingers side by side, which are two steps; usual: whole. */
  readonly part?: 'first' | 'second';
}

/** The strip's way in stages, from the seam round the thumb side's border, through the webs, round the other border and back. u in mm. */
function stagesOf({ path }: StripFigures): readonly Stage[] {
  const { sections } = path.hand;
  const inner = (digit: DigitName) => path.passes.find((p) => p.digit === digit && p.layer === 'inner')?.u ?? 0;
  const outer = (digit: DigitName) => path.passes.find((p) => p.digit === digit && p.layer === 'outer')?.u ?? path.pathLength;
  const [first, last] = [sections[0]?.digit as DigitName, sections.at(-1)?.digit as DigitName];
  const stages: Stage[] = [{ kind: 'first', from: 0, to: inner(first), digits: [first] }];
  // Held fingers side by side are one run; one that is not held is passed by itself.
  const runs: { kind: 'through' | 'beside'; digits: DigitName[] }[] = [];
  for (const s of sections.slice(1, -1)) {
    const kind = s.place === 'enclosed' ? 'beside' : 'through';
    const before = runs.at(-1);
    if (before?.kind === kind) before.digits.push(s.digit);
    else runs.push({ kind, digits: [s.digit] });
  }
  let from = inner(first);
  for (const [k, { kind, digits }] of runs.entries()) {
    const end = digits.at(-1);
    const web = path.webCrossings.find((c) => c.layer === 'inner' && c.between[0] === end)?.u;
    const to = k === runs.length - 1 ? inner(last) : (web ?? inner(last));
    const [one, other] = digits;
    if (kind === 'through' && one && other) {
      const half = (inner(one) + inner(other)) / 2;
      stages.push({ kind, from, to: half, digits: [one], part: 'first' }, { kind, from: half, to, digits: [other], part: 'second' });
    } else stages.push({ kind, from, to, digits });
    from = to;
  }
  stages.push(
    { kind: 'second', from, to: outer(last), digits: [last] },
    { kind: 'back', from: outer(last), to: path.pathLength, digits: [last] },
  );
  return stages;
}

/** Letters of the angle, mm. */
const ANGLE_HEIGHT = 7;

/** From the side: the held finger against its neighbour, with the angle between their backs. */
function positionPicture({ figures: f, hand }: MadeStrip, w: StoryWords, drawn: DrawnMoulded, treated: DigitName | null): Items {
  const mirror = hand.side === 'right' ? -1 : 1;
  const held = heldDigits(f.block)[0] as DigitName;
  const beside = f.path.hand.sections.at(-1)?.digit as DigitName;
  const items: Items[number][] = [...drawn.drawing.items];
  const lines = [held, beside].flatMap((digit) => {
    const finger = drawn.posed.fingers.find((p) => p.shape.digit === digit);
    if (!finger) return [];
    const [mp, pip] = finger.joints;
    const over = add(mp, finger.dorsal[0], 1.3 * finger.shape.halfDepth);
    return [polyline([over, add(over, minus(pip, mp), 1.5)].map(drawn.at))];
  });
  const ends = lines.map((line) => line.vertices.at(-1)?.y ?? 0);
  const far = lines[0]?.vertices.at(-1)?.x ?? 0;
  const angleAt = Math.max(...ends) + 7;
  const tips = [held, beside].flatMap((digit) => {
    const finger = drawn.posed.fingers.find((p) => p.shape.digit === digit);
    return finger ? [{ digit, at: drawn.at(finger.joints[3]) }] : [];
  });
  const [high, low] = tips.toSorted((a, b) => b.at.y - a.at.y);
  if (high && low) {
    const helper = helpedAt(hand.side, high.at);
    const { minX, maxX, minY, maxY } = helper.box;
    items.unshift(...helper.items);
    // Names above and below the hands, each with a line to its fingertip; whoever helps on a line below.
    const letters = nameHeight(unionBox([helper.box, drawn.drawing.extents]), 1);
    // A letter may reach under its line.
    const [above, below] = [Math.max(maxY + 4, angleAt + ANGLE_HEIGHT + letters / 2), Math.min(minY, low.at.y - 12) - 2];
    const leaders = [
      [high.at, { x: high.at.x, y: above }],
      [low.at, { x: low.at.x, y: below }],
    ].map((ends) => polyline(ends));
    items.push(shape('leader', leaders, 'fine', 'ink', null));
    items.push(label(w.short[high.digit], { x: high.at.x, y: above + 1.5 }, letters, high.digit === treated));
    items.push(label(w.short[low.digit], { x: low.at.x, y: below - letters - 1.5 }, letters, low.digit === treated));
    const name = label(w.helper, { x: mirror > 0 ? minX : maxX, y: below - 2.8 * letters }, letters);
    items.push({ ...name, align: mirror > 0 ? 'left' : 'right' });
  }
  items.push(shape('angle', lines, 'heavy', 'ink', null));
  items.push(label(`${plain(f.options.differential, 0)}\u00b0`, { x: far + mirror * 18, y: angleAt }, ANGLE_HEIGHT, true));
  return items;
}

/** The hand of whoever helps, holding a fingertip, which lies at a point of a picture from the little finger's side, between thumb and fingers. */
export function helpedAt(side: Side, tip: Point): { readonly items: Items; readonly box: Box } {
  const { drawing, thumbTip } = helpingHand(side);
  const dx = tip.x + (side === 'right' ? -1 : 1) * 8 - thumbTip.x;
  const dy = tip.y + 11 - thumbTip.y;
  const { minX, maxX, minY, maxY } = drawing.extents;
  return { items: moved(drawing.items, dx, dy), box: { minX: minX + dx, maxX: maxX + dx, minY: minY + dy, maxY: maxY + dy } };
}

/** PIP straight, PIP bent, and the nails end on: right, and struck out. */
function checkPictures(made: MadeStrip, w: StoryWords): StoryStep['pictures'] {
  const mirror = made.hand.side === 'right' ? -1 : 1;
  const view = { across: -70 * mirror, up: 10 };
  const straight = devicePicture(made, { pose: STRAIGHT, view });
  const bent = devicePicture(made, { pose: { mp: 25, pip: 85 }, view });
  return [
    { items: [...moved(straight.drawing.items, 0, bent.drawing.extents.maxY + 6), ...bent.drawing.items], share: 0.62 },
    { items: nails(w), share: 0.38 },
  ];
}

/** Three fingertips end on: nails side by side, and below them one that crosses, struck out. */
function nails(w: StoryWords): Items {
  const tip = (x: number, y: number, turn: number): Items => {
    const round = Array.from({ length: 24 }, (_, k) => ({
      x: x + 8 * Math.cos((k * Math.PI) / 12),
      y: y + 7 * Math.sin((k * Math.PI) / 12),
    }));
    const nail = Array.from({ length: 9 }, (_, k) => {
      const t = Math.PI / 2 + turn + ((k - 4) * Math.PI) / 13;
      return { x: x + 7.2 * Math.cos(t), y: y + 6.2 * Math.sin(t) };
    });
    return [shape('fingertip', [polyline(round, true)], 'medium', 'ink', 'skin'), shape('nail', [polyline(nail)], 'heavy', 'grey', null)];
  };
  const right = [tip(0, 44, 0), tip(18, 40, 0), tip(36, 44, 0)].flat();
  const wrong = [tip(0, 12, 0), tip(13, 6, 0.9), tip(36, 12, 0)].flat();
  return [...right, ...wrong, strike({ x: -9, y: -3 }, { x: 45, y: 21 }), label(w.wrong.crossing, { x: 18, y: -12 }, 4)];
}

/** The flat strip as it lies in the pattern, its outside up. */
function flatStrip({ flat, path }: StripFigures, side: Side): Items {
  const mirrorX = (side === 'right') !== (path.held === 'raised');
  return [shape('flat-strip', [placePath(flat.outline, { mirrorX, dx: 0, dy: 0 })], 'medium', 'ink', 'strip')];
}

const TITLE = 2.9;
const VIEW = 1.9;
const TEXT = 2.2;
const INSET = 2.5;

/** A step in its panel: title and viewpoint over the pictures, one sentence or a few under them. Null where they leave no room for pictures. */
export function storyPanel(step: StoryStep, number: number, box: Box, measure: Measure): PageLayer | null {
  const width = box.maxX - box.minX - 2 * INSET;
  const x = box.minX + INSET;
  const title = words(`${number}  ${step.title}`, { x, top: box.maxY - INSET, width, height: TITLE }, measure, { bold: true });
  const view = words(step.view, { x, top: title.bottom, width, height: VIEW }, measure, { tone: 'grey' });
  const text = words(step.text, { x, top: 0, width, height: TEXT }, measure);
  const bottom = box.minY + INSET - text.bottom - 0.6;
  const moved = words(step.text, { x, top: bottom, width, height: TEXT }, measure);
  const top = view.bottom - 1;
  if (top - bottom < 22) return null;
  let left = x;
  const pictures = step.pictures.map(({ items, share }) => {
    const room = { minX: left + 1.2, maxX: left + share * width - 1.2, minY: bottom + 1.5, maxY: top };
    left += share * width;
    return picture({ items }, room, 1.1).layer;
  });
  return joined(frame(box, 'rule', 'panel'), title.layer, view.layer, ...pictures, moved.layer);
}
