import { heldDigits, placedDigits } from '../block/block.ts';
import { type Box, polyline } from '../geometry/path.ts';
import type { DigitName } from '../hand/digits.ts';
import type { MadeDevice, MakingNotes } from '../pattern/making-notes.ts';
import type { HandPose } from '../picture/posed-hand.ts';
import { joined, type Measure, type PageLayer, placeLayer, scaleLayer, text } from '../sheet/paper/page.ts';
import type { PageContent, PaperRoom } from '../sheet/paper/pattern-pages.ts';
import { listed } from '../words/hand-words.ts';
import type { Translations } from '../words/language.ts';
import { paperWords } from '../words/papers/paper-words.ts';
import type { patientEnglish } from '../words/papers/patient-english.ts';
import { devicePicture, treatedDigit } from './device-pictures.ts';
import { blank, frame, type Laid, picture, tickBox, words } from './layout.ts';

type Words = Translations<typeof patientEnglish>;

/** Capitals of 13 pt (718 of 1000 of the size), of headings and of small print. mm */
const TEXT = 3.29;
const HEADING = 3.9;
const TITLE = 5;
const SMALL = 2.6;
const LINE = TEXT * 1.72;
const GAP = 3;
/** A row of the diary, and its days. */
const ROW = 8;
const DAYS = 7;
const PICTURE = 34;

/** What the sheet says, told from what was made. */
interface Said {
  readonly title: string;
  readonly does: readonly string[];
  /** The motion that the middle joint lacks most; null where no deficit is known. */
  readonly motion: 'extension' | 'flexion' | null;
}

/**
 * The patient's sheet: one page at 13 pt with the treated finger first, its picture, blanks for hours and doses that the clinician fills in, exercise in
 * the direction that the orthosis is made for, skin, heat, a stop box, a diary of two weeks. Nothing is prescribed and no box is ticked. On paper under
 * its size all of it is smaller.
 */
export function patientSheet(notes: MakingNotes, room: PaperRoom): readonly PageContent[] | null {
  for (const spare of SPARED) {
    const page = sheetWith(notes, room, spare);
    if (page) return [page];
  }
  // On paper that is too small at 13 pt, all of it smaller: one page is still one page.
  const { box } = room;
  const factor = Math.min((box.maxX - box.minX) / WHOLE.width, (box.maxY - box.minY) / WHOLE.height);
  const whole = { minX: 0, minY: 0, maxX: WHOLE.width, maxY: WHOLE.height };
  const page = sheetWith(notes, { ...room, box: whole }, TIGHTEST);
  if (!page) return null;
  const shift = { dx: box.minX, dy: box.maxY - factor * WHOLE.height };
  return [{ ...page, layers: page.layers.map((layer) => placeLayer(scaleLayer(layer, factor), shift)) }];
}

/** Room in which the sheet fits at its size in every language: A4 within usual margins. mm */
const WHOLE = { width: 190, height: 277 } as const;

/** What a shorter paper or a longer language takes from gaps, from the picture and from a diary's row; what is left over goes to the gaps. mm */
interface Spared {
  readonly gap: number;
  readonly picture: number;
  readonly row: number;
}

const TIGHTEST: Spared = { gap: 1.6, picture: 20, row: 1 };
/** In the order of trying. */
const SPARED: readonly Spared[] = [
  { gap: -2, picture: 0, row: 0 },
  { gap: -1, picture: 0, row: 0 },
  { gap: 0, picture: 0, row: 0 },
  { gap: 0, picture: 12, row: 0 },
  { gap: 1.2, picture: 12, row: 0 },
  { gap: 0.4, picture: 20, row: 0.6 },
  TIGHTEST,
];

function sheetWith(notes: MakingNotes, room: PaperRoom, spare: Spared): PageContent | null {
  const gap = GAP - spare.gap;
  const w = paperWords(room.language).patient;
  const said = sayings(notes.made, w);
  const { box, measure, clinic } = room;
  const layers: PageLayer[] = [];
  let y = box.maxY;
  const add = (laid: Laid) => {
    layers.push(laid.layer);
    y = laid.bottom;
  };
  const width = box.maxX - box.minX;
  for (const line of clinic.letterhead) add(words(line, { x: box.minX, top: y, width, height: SMALL }, measure));
  const side = notes.invented ? `${w.hand[notes.side]}. ${w.invented}` : w.hand[notes.side];
  add(words(side, { x: box.minX, top: y, width, height: SMALL }, measure, { bold: notes.invented }));
  add(words(said.title, { x: box.minX, top: y - 1, width, height: TITLE }, measure, { bold: true }));
  const shown = Math.min(72, 0.4 * width);
  const top = wearBlock(
    notes.made,
    said,
    { minX: box.minX, maxX: box.maxX, minY: box.minY, maxY: y - gap },
    shown - 1.1 * spare.picture,
    w,
    measure,
  );
  layers.push(top.layer);
  y = top.bottom - gap;
  if (said.motion) {
    const exercise = exerciseBlock(notes.made, said.motion, { ...box, maxY: y }, w, measure);
    layers.push(exercise.layer);
    y = exercise.bottom - gap;
  }
  const half = (width - 6) / 2;
  const left = list(w.skin.heading, w.skin.lines, box.minX, y, half, measure);
  const cool = list(w.heat.heading, w.heat.lines, box.minX, left.bottom - 0.6 * gap, half, measure);
  const stop = stopBox({ minX: box.minX + half + 6, maxX: box.maxX, minY: box.minY, maxY: y }, w, clinic.telephone, measure);
  layers.push(left.layer, cool.layer, stop.layer);
  y = Math.min(cool.bottom, stop.bottom) - 0.6 * gap;
  add(words(w.drive, { x: box.minX, top: y, width, height: TEXT }, measure, { bold: true }));
  const diaryTop = y - 0.6 * gap;
  const diaryHeight = HEADING * 1.72 + (DAYS + 1) * (ROW - spare.row);
  if (diaryTop - diaryHeight < box.minY) return null;
  layers.push(diary({ ...box, maxY: diaryTop }, ROW - spare.row, w.diary.heading[notes.made.kind], w, measure));
  return { title: 'for the patient', kind: 'handout', frame: 'none', layers };
}

function sayings(made: MadeDevice, w: Words): Said {
  const { target } = made.hand;
  const treated = treatedDigit(made);
  const motion = target === null ? null : target.pipExtensionDeficit >= target.pipFlexionDeficit ? 'extension' : 'flexion';
  const helps = motion === null ? [] : [w.does[motion]];
  const title = treated === null ? w.titleNoFinger : w.title[made.kind](w.finger[treated]);
  if (made.kind === 'plate') return { title, motion, does: [w.does.plate, w.does.use] };
  const held = heldDigits(made.figures.block);
  const lower = made.figures.path.held === 'lowered';
  const borders = placedDigits(made.figures.block).filter(({ place }) => place === 'enclosed');
  // Fingers held the other way tell of a treated one beside them; without a treated one the held ones are told.
  const others = treated !== null && !held.includes(treated) && borders.some(({ digit }) => digit === treated);
  const named = others
    ? w.finger[treated]
    : listed(
        held.map((digit) => w.finger[digit]),
        w.and,
      );
  const how = others ? (lower ? w.does.othersLower : w.does.othersHigher) : lower ? w.does.heldLower : w.does.heldHigher;
  return { title, motion, does: [how(named), ...helps, w.does.use] };
}

/** What it does, how long it is worn, on and off; beside them the hand with it, as its owner sees it. */
function wearBlock(made: MadeDevice, said: Said, box: Box, shown: number, w: Words, measure: Measure): Laid {
  const layers: PageLayer[] = [];
  const width = box.maxX - box.minX - shown - 5;
  let y = box.maxY;
  const add = (line: string, bold = false, gap = 0) => {
    const laid = words(line, { x: box.minX, top: y - gap, width, height: TEXT }, measure, { bold });
    layers.push(laid.layer);
    y = laid.bottom;
  };
  add(said.does.join(' '));
  add(w.wear.hours, true, 1.6);
  const line = y - TEXT;
  layers.push(blank(box.minX, line, 30));
  layers.push({ clip: null, strokes: [], texts: [text(w.wear.unit, box.minX + 33, line, TEXT)] });
  y -= LINE + 1;
  for (const night of [w.wear.nightOn, w.wear.nightOff]) {
    layers.push(tickBox(box.minX, y - TEXT, TEXT));
    const laid = words(night, { x: box.minX + 2 * TEXT, top: y, width: width - 2 * TEXT, height: TEXT }, measure);
    layers.push(laid.layer);
    y = laid.bottom;
  }
  add(`${w.on.heading}: ${w.on[made.kind]}`, false, 1.6);
  add(`${w.off.heading}: ${w.off[made.kind]}`);
  const back = devicePicture(made, { pose: { mp: 18, pip: 12 }, view: { up: 84, spin: 180 } });
  const room = { minX: box.maxX - shown, maxX: box.maxX, minY: Math.min(y, box.maxY - 0.83 * shown), maxY: box.maxY };
  layers.push(picture(back.drawing, room).layer);
  return { layer: joined(...layers), bottom: Math.min(y, room.minY) };
}

/** From the side on which nothing stands before the treated finger. */
const SIDE_VIEW: Readonly<Record<DigitName, number>> = { index: 62, long: -62, ring: -72, little: -78 };

/** Three pictures of the exercise, and lines for the dose. */
function exerciseBlock(made: MadeDevice, motion: 'extension' | 'flexion', box: Box, w: Words, measure: Measure): Laid {
  const layers: PageLayer[] = [];
  const head = words(w.exercise.heading, { x: box.minX, top: box.maxY, width: box.maxX - box.minX, height: HEADING }, measure, {
    bold: true,
  });
  layers.push(head.layer);
  const treated = treatedDigit(made) ?? 'ring';
  const loose: HandPose = { mp: 30, pip: 42 };
  const straight: HandPose = { mp: 30, pip: 4 };
  const bent: HandPose = { mp: 14, pip: 82 };
  const open: HandPose = { mp: 14, pip: 6 };
  const poses = motion === 'extension' ? [loose, straight, loose] : [open, bent, open];
  // From the little finger's side a left hand is turned to the left, a right one is its mirror image.
  const across = (made.hand.side === 'right' ? -1 : 1) * SIDE_VIEW[treated];
  const top = head.bottom;
  let bottom = top - PICTURE;
  const pitch = PICTURE + 6;
  for (const [k, pose] of poses.entries()) {
    const x = box.minX + k * pitch;
    const drawn = devicePicture(made, { pose, view: { across, up: 8 } });
    layers.push(picture(drawn.drawing, { minX: x, maxX: x + PICTURE, minY: top - PICTURE * 0.72, maxY: top }).layer);
    const caption = words(
      w.exercise[motion][k as 0 | 1 | 2] ?? '',
      { x, top: top - PICTURE * 0.72 - 1, width: PICTURE + 3, height: TEXT * 0.86 },
      measure,
    );
    layers.push(caption.layer);
    bottom = Math.min(bottom, caption.bottom);
  }
  const x = box.minX + 3 * pitch;
  let y = top;
  for (const words of [w.exercise.times, w.exercise.seconds, w.exercise.aDay]) {
    layers.push(tickBox(x, y - TEXT, TEXT), blank(x + 6, y - TEXT, 16), {
      clip: null,
      strokes: [],
      texts: [text(words, x + 24, y - TEXT, TEXT)],
    });
    y -= LINE + 2.2;
  }
  const hurts = words(w.exercise.hurts, { x, top: y, width: box.maxX - x, height: TEXT }, measure, { bold: true });
  layers.push(hurts.layer);
  return { layer: joined(...layers), bottom: Math.min(bottom, hurts.bottom) };
}

function list(heading: string, lines: readonly string[], x: number, top: number, width: number, measure: Measure): Laid {
  const head = words(heading, { x, top, width, height: HEADING }, measure, { bold: true });
  const body = words(lines.join(' '), { x, top: head.bottom, width, height: TEXT }, measure);
  return { layer: joined(head.layer, body.layer), bottom: body.bottom };
}

function stopBox(box: Box, w: Words, telephone: string, measure: Measure): Laid {
  const inset = 3;
  const width = box.maxX - box.minX - 2 * inset;
  const x = box.minX + inset;
  const head = words(w.stop.heading, { x, top: box.maxY - inset, width, height: HEADING }, measure, { bold: true });
  const layers = [head.layer];
  let y = head.bottom;
  for (const line of w.stop.lines) {
    const laid = words(line, { x, top: y, width, height: TEXT }, measure);
    layers.push(laid.layer);
    y = laid.bottom;
  }
  const call = words(`${w.stop.telephone}: ${telephone}`, { x, top: y - 1.5, width, height: TEXT }, measure, { bold: true });
  layers.push(call.layer);
  const label = measure(`${w.stop.telephone}: `, TEXT, true);
  if (telephone === '') layers.push(blank(x + label, y - 1.5 - TEXT, width - label));
  const bottom = call.bottom - 1;
  return { layer: joined(frame({ ...box, minY: bottom }, 'bar', 'stop-box'), ...layers), bottom };
}

/** Free space on each side of a heading in the diary, mm. */
const INSET = 1.2;

/**
 * Where the diary's columns begin and end, mm from the week's beginning, and what share of their size its headings have, all the same: each column has its
 * heading's breadth, and what is left is shared out alike.
 * @param headings breadths at full size, mm
 */
function diaryColumns(headings: readonly number[], each: number): { readonly edges: readonly number[]; readonly fit: number } {
  const free = each - 2 * INSET * headings.length;
  const sum = headings.reduce((a, b) => a + b, 0);
  const fit = Math.min(1, free / sum);
  const breadths = headings.map((width) => width * fit + 2 * INSET + (free - sum * fit) / headings.length);
  return { edges: [0, ...breadths].map((_, k) => breadths.slice(0, k).reduce((a, b) => a + b, 0)), fit };
}

/** Two weeks side by side, a row a day, wide enough to write in. */
function diary(box: Box, row: number, heading: string, w: Words, measure: Measure): PageLayer {
  const head = words(heading, { x: box.minX, top: box.maxY, width: box.maxX - box.minX, height: HEADING }, measure, { bold: true });
  const gap = 5;
  const each = (box.maxX - box.minX - gap) / 2;
  const columns = diaryColumns(
    w.diary.columns.map((title) => measure(title, SMALL, true)),
    each,
  );
  const layers: PageLayer[] = [head.layer];
  const top = head.bottom;
  for (const week of [0, 1]) {
    const x0 = box.minX + week * (each + gap);
    const edges = columns.edges.map((x) => x0 + x);
    const bottom = top - (DAYS + 1) * row;
    const paths = [
      ...Array.from({ length: DAYS + 2 }, (_, k) =>
        polyline([
          { x: x0, y: top - k * row },
          { x: x0 + each, y: top - k * row },
        ]),
      ),
      ...edges.map((x) =>
        polyline([
          { x, y: top },
          { x, y: bottom },
        ]),
      ),
    ];
    layers.push({ clip: null, strokes: [{ pen: 'rule', role: 'diary', paths, circles: [] }], texts: [] });
    for (const [k, title] of w.diary.columns.entries()) {
      const from = edges[k] ?? x0;
      const height = SMALL * columns.fit;
      layers.push({ clip: null, strokes: [], texts: [text(title, from + INSET, top - row / 2 - height / 2, height, { bold: true })] });
    }
    for (let day = 0; day < DAYS; day++) {
      const y = top - (day + 1.5) * row - TEXT / 2;
      layers.push({ clip: null, strokes: [], texts: [text(`${week * DAYS + day + 1}`, x0 + 1.5, y, TEXT)] });
    }
  }
  return joined(...layers);
}
