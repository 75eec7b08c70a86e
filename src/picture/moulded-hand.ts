import { type Box, type LineArcPath, type Point, polyline } from '../geometry/path.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import { type Drawing, type DrawnShape, PICTURE_TONES, type PictureTone, type Tone } from '../pattern/drawing.ts';
import type { PlateFigures } from '../pattern/plate/plate-report.ts';
import type { StripFigures } from '../pattern/strip/strip-report.ts';
import { radians } from '../units/angle.ts';
import { bandSurface, standingFingers } from './band-surface.ts';
import { type Border, evenTones, withoutCrumbs } from './crumbs.ts';
import { type DrawableHand, handShape } from './hand-shape.ts';
import { handSolid, type Solid } from './hand-solid.ts';
import { evenLight, JUMP, lightOn } from './light.ts';
import { NAIL, partOfHand } from './part-of-hand.ts';
import { plateOnHand } from './plate-surface.ts';
import { type HandPose, type PosedFinger, type PosedHand, posedHand } from './posed-hand.ts';
import { copyOf, type Projection, type Raster, screenFor, show } from './raster.ts';
import { skinFolds } from './skin-folds.ts';
import { strapsOnHand } from './strap-surface.ts';
import { type Mesh, surfaceMesh } from './surface-mesh.ts';
import { traceAreas } from './trace-areas.ts';
import { add, minus, type Vec } from './vec.ts';

/** A part of the strip that is shown: mm along its path from the seam; `done` is what lay there before. */
export interface ShownBand {
  readonly from: number;
  readonly to: number;
  readonly tone: 'strip' | 'done';
}

export interface MouldedInput {
  readonly hand: DrawableHand;
  readonly side: Side;
  /** The strip round the fingers, or none. */
  readonly strip?: StripFigures;
  /** What of it is shown; usual: all. */
  readonly shown?: readonly ShownBand[];
  /** A plate on the hand, whose MP joints then stand at its angle unless a pose is given; with its straps closed unless they are left away. */
  readonly plate?: PlateFigures;
  readonly straps?: boolean;
  /** A sheet instead, in the frame of the posed hand (`Mesh` of its faces, of its cut edges). */
  readonly sheets?: readonly { readonly faces: Mesh; readonly edges: Mesh; readonly tone: 'strip' | 'done' }[];
  readonly treated?: DigitName | null;
  /** Usual: MP 25, PIP 15. */
  readonly pose?: HandPose;
  /** Where the hand ends behind the wrist, mm at average size; negative: before it. Usual: in the forearm. */
  readonly cutOff?: number;
  /** Only what would lie on the hand: a sheet on the table. */
  readonly bare?: boolean;
  /** Side of a facet, mm: smaller is smoother and slower. Usual: 1.7. */
  readonly step?: number;
}

/** A modelled hand with what lies on it; drawn from any side by `drawMoulded`. Keep it while only the viewpoint changes. */
export interface MouldedScene {
  readonly posed: PosedHand;
  readonly side: Side;
  readonly treated: DigitName | null;
  readonly skin: Mesh;
  /** What a picture has room for, whatever of it is shown. */
  readonly frame: readonly Mesh[];
  readonly bands: readonly { readonly faces: Mesh; readonly edges: Mesh; readonly tone: 'strip' | 'done' }[];
}

/** Where the viewer stands, degrees: the hand is rolled about the fingers' axis, turned about the upright axis, then its near end tipped down. All 0: from the fingertips, back up. */
export interface Viewpoint {
  readonly roll?: number;
  readonly across?: number;
  readonly up?: number;
  /** Turn of the finished picture in its own plane, counter-clockwise: 180 puts the fingertips up. */
  readonly spin?: number;
  /** Squares of the screen that the picture is found on along its longer side: fewer are quicker and coarser. Usual: 620; while it is being turned 260 do. */
  readonly squares?: number;
}

/** Named viewpoints of pictures; `thumbSide` and `littleSide` are from that border, the fingers to one side. */
export const VIEWPOINTS = {
  fingertips: { up: 14 },
  above: { up: 82 },
  palm: { roll: 180, up: 82 },
  lowFingertips: { up: 0 },
} as const satisfies Record<string, Viewpoint>;

export interface DrawnMoulded {
  readonly drawing: Drawing;
  /** Where each finger's tip, its PIP joint and the middle of its proximal phalanx are on the drawing, and whether the spot is in sight. */
  readonly fingers: ReadonlyMap<
    DigitName,
    { readonly tip: Point; readonly pip: Point; readonly middle: Point; readonly root: Point; readonly back: Point }
  >;
  readonly thumbTip: Point;
  readonly wrist: Point;
  /** Any point of the posed hand's frame on the drawing. */
  readonly at: (p: Vec) => Point;
  readonly posed: PosedHand;
}

/**
 * Models a hand in space with its strip. Takes some tenths of a second; `drawMoulded` then draws it from any side in some hundredths.
 * @param sameSkin a scene of the same hand, strip and pose, whose skin is taken over: only what is shown of the strip differs
 *
 * @example the strip of a hand, from the fingertips and from above
 * const scene = mouldedScene({ hand, side: hand.side, strip: figures, treated: hand.target?.digit ?? null });
 * const { drawing, fingers } = drawMoulded(scene, VIEWPOINTS.fingertips);
 * const turned = drawMoulded(scene, { across: 30, up: 40 });
 * // drawing.items: shapes with a fill tone (`skin`, `treated`, `strip` ..., lit, half, shadow) and lines with a pen, in the order of drawing
 */
export function mouldedScene(input: MouldedInput, sameSkin?: MouldedScene): MouldedScene {
  const shape = handShape(input.hand);
  const standing = input.strip ? standingFingers(input.strip, shape) : undefined;
  const { strip, plate } = input;
  const posed = posedHand(shape, input.pose ?? (plate ? platePose(plate) : { mp: 25, pip: 15 }), standing);
  const solid = handSolid(posed, input.cutOff);
  const whole: ShownBand | null = strip ? { from: 0, to: strip.path.pathLength, tone: 'strip' } : null;
  const surfaceOf = (band: ShownBand) => bandSurface(strip as StripFigures, shape, posed.shift, band);
  const bands = whole ? (input.shown ?? [whole]).map((band) => ({ ...surfaceOf(band), tone: band.tone })) : [];
  const skin = input.bare ? NO_SKIN : (sameSkin?.skin ?? surfaceMesh(solid, input.step ?? 1.7));
  const sheets = [...(plate ? plateSheets(input, plate, posed, solid) : []), ...(input.sheets ?? [])];
  const framed = [skin, ...(whole ? [surfaceOf(whole).faces] : []), ...sheets.map((sheet) => sheet.faces)];
  return {
    posed,
    side: input.side,
    treated: input.treated ?? null,
    skin,
    frame: plate || input.bare ? framed : (sameSkin?.frame ?? framed),
    bands: [...bands, ...sheets],
  };
}

const NO_SKIN: Mesh = { points: [], normals: [], triangles: [] };

/** The hand as a plate holds it, its PIP joints a little bent as at rest. */
export function platePose({ design, frame }: PlateFigures): HandPose {
  return { mp: design.angle, pip: 12, setbacks: frame.palm.setbacks };
}

/** A sheet is finer than skin, so that its edge is smooth; at most this. mm */
const COARSEST_SHEET = 2;

function plateSheets(
  { straps = true, step = 1.7 }: MouldedInput,
  plate: PlateFigures,
  posed: PosedHand,
  solid: Solid,
): MouldedScene['bands'] {
  const fine = Math.min(COARSEST_SHEET, 0.8 * step);
  const faces = plate.frame.faces.map((_, k) => ({ ...plateOnHand(plate, k, posed, solid, fine), tone: 'strip' as const }));
  return [...faces, ...(straps ? strapsOnHand(plate, posed, solid, faces).map((s) => ({ ...s, tone: 'done' as const })) : [])];
}

const MARGIN = 2;
/** Squares of the screen that the picture is found on, along its longer side. */
const USUAL_SQUARES = 620;
/** Light at which a tone becomes the next darker one. */
const SHADOWS = [0.6, 0.28] as const;

/** The bare hand from a viewpoint, on the screen of its picture: the same for every state of the strip. */
export interface SkinView {
  readonly raster: Raster;
  readonly part: Uint8Array;
  readonly light: Float32Array;
}

export function skinView(scene: MouldedScene, view: Viewpoint): SkinView {
  const project = projection(scene.side, view);
  const raster = screenFor(scene.frame, project, view.squares ?? USUAL_SQUARES);
  show(raster, [scene.skin], project, 1);
  return { raster, part: partsOf(scene, raster, project), light: evenLight(raster) };
}

/**
 * Draws the modelled hand from a viewpoint: what is hidden is left out, areas in three tones, lines where one thing ends before another. mm at true
 * size, y up.
 * @param skin of a scene with the same skin, from the same viewpoint
 */
export function drawMoulded(scene: MouldedScene, view: Viewpoint, skin: SkinView = skinView(scene, view)): DrawnMoulded {
  const project = projection(scene.side, view);
  const raster = copyOf(skin.raster);
  show(
    raster,
    scene.bands.flatMap((b) => [b.faces, b.edges]),
    project,
    2,
  );
  const { posed } = scene;
  const marks = classify(scene, raster, skin);
  const { areas, lines } = traceAreas(raster.width, raster.height, marks.tone, withoutCrumbs(raster, marks.tone, bordersOf(raster, marks)));
  const at = (p: Point): Point => ({ x: p.x * raster.pixel + MARGIN, y: p.y * raster.pixel + MARGIN });
  const path = (points: readonly Point[], closed: boolean): LineArcPath => polyline(points.map(at), closed);
  const items: DrawnShape[] = [...areas].map(([k, loops]) => {
    const tone = PICTURE_TONES[k - 1] as Tone;
    // A thin line of its own tone closes the hair's breadth between neighbouring areas.
    return shapeOf(
      tone,
      loops.map((loop) => path(loop, true)),
      'fine',
      tone,
      tone,
    );
  });
  const toPage = (p: Vec): Point => {
    const q = project(p);
    return { x: q[0] - raster.minX + MARGIN, y: q[1] - raster.minY + MARGIN };
  };
  const folds = (scene.skin.triangles.length > 0 ? skinFolds(posed) : []).flatMap((line) => visibleRuns(line, project, raster));
  items.push(
    shapeOf(
      'fold',
      folds.map((run) => polyline(run.map(toPage))),
      'fine',
      'grey',
      null,
    ),
  );
  const linesOf = (kind: 'fine' | 'strong') =>
    lines.filter((l) => l.kind === kind && l.points.length > 1).map((l) => path(l.points, l.closed));
  items.push(shapeOf('edge', linesOf('fine'), 'fine', 'ink', null), shapeOf('outline', linesOf('strong'), 'medium', 'ink', null));
  const extents: Box = {
    minX: 0,
    minY: 0,
    maxX: raster.width * raster.pixel + 2 * MARGIN,
    maxY: raster.height * raster.pixel + 2 * MARGIN,
  };
  return {
    drawing: { title: '', description: '', items: items.filter((item) => item.paths.length > 0), extents },
    fingers: new Map(posed.fingers.map((f) => [f.shape.digit, fingerPlaces(f, toPage)])),
    thumbTip: toPage(posed.thumb[3]),
    wrist: toPage(posed.wrist),
    at: toPage,
    posed,
  };
}

function fingerPlaces({ shape, joints: [mp, pip, , tip], dorsal }: PosedFinger, toPage: (p: Vec) => Point) {
  const along = (share: number): Vec => add(mp, minus(pip, mp), share);
  return {
    tip: toPage(tip),
    pip: toPage(pip),
    middle: toPage(along(0.6)),
    root: toPage(along((shape.root - shape.mp) / shape.proximal)),
    back: toPage(add(along(0.6), dorsal[0], shape.halfDepth)),
  };
}

function shapeOf(role: string, paths: readonly LineArcPath[], pen: DrawnShape['pen'], tone: Tone, fill: Tone | null): DrawnShape {
  return { kind: 'shape', role, title: '', paths, circles: [], pen, tone, fill };
}

/** Right hands are modelled as left ones and seen in a mirror. */
function projection(side: Side, { roll = 0, across = 0, up = 0, spin = 0 }: Viewpoint): Projection {
  const mirror = side === 'right' ? -1 : 1;
  const [cr, sr] = [Math.cos(radians(roll)), Math.sin(radians(roll))];
  const [ca, sa] = [Math.cos(radians(across)), Math.sin(radians(across))];
  const [cu, su] = [Math.cos(radians(up)), Math.sin(radians(up))];
  const [cs, ss] = [Math.cos(radians(spin)), Math.sin(radians(spin))];
  return ([x0, y0, z0]) => {
    const [x, y] = [mirror * x0 * cr - y0 * sr, mirror * x0 * sr + y0 * cr];
    const [tx, tz] = [x * ca + z0 * sa, -x * sa + z0 * ca];
    const [sx, sy] = [tx, y * cu - tz * su];
    return [sx * cs - sy * ss, sx * ss + sy * cs, y * su + tz * cu];
  };
}

interface Marks {
  /** 1 + place in `PICTURE_TONES`; 0 is nothing. */
  readonly tone: Uint8Array;
  /** 0 palm and thumb, 1 to 4 fingers, 9 a nail; 20 and more the bands. */
  readonly part: Uint8Array;
}

/** What each square shows: which finger, a nail, the strip, and how it is lit. */
function classify(scene: MouldedScene, raster: Raster, skin: SkinView): Marks {
  const { width, height, mesh, normal } = raster;
  const tone = new Uint8Array(width * height);
  const part = new Uint8Array(width * height);
  const treated = scene.posed.fingers.findIndex((f) => f.shape.digit === scene.treated) + 1;
  const first = (name: PictureTone) => 1 + PICTURE_TONES.indexOf(name);
  const [ofNail, ofTreated, ofSkin] = [first('nail'), first('treated'), first('skin')];
  const ofBand = scene.bands.map((band) => first(band.tone));
  for (let at = 0; at < tone.length; at++) {
    const id = mesh[at] as number;
    if (id === 0) continue;
    const light = id > 1 ? lightOn(normal, at) : (skin.light[at] as number);
    const shade = light > SHADOWS[0] ? 0 : light > SHADOWS[1] ? 1 : 2;
    if (id > 1) {
      part[at] = 18 + id;
      tone[at] = (ofBand[(id - 2) >> 1] as number) + ((id & 1) === 1 ? 2 : shade);
      continue;
    }
    const found = skin.part[at] as number;
    part[at] = found;
    tone[at] = found === NAIL ? ofNail : (found === treated && treated > 0 ? ofTreated : ofSkin) + shade;
  }
  return { tone: evenTones(raster, tone), part };
}

/** Which part of the hand each square of its skin shows. */
function partsOf({ posed }: MouldedScene, { width, height, mesh, depth, pixel, minX, minY }: Raster, project: Projection): Uint8Array {
  const part = new Uint8Array(width * height);
  const partAt = partOfHand(posed);
  // A turn and a mirror: the inverse is the transpose.
  const [ox, oy, oz] = [project([1, 0, 0]), project([0, 1, 0]), project([0, 0, 1])];
  for (let at = 0; at < part.length; at++) {
    if (mesh[at] === 0) continue;
    const x = ((at % width) + 0.5) * pixel + minX;
    const y = (Math.floor(at / width) + 0.5) * pixel + minY;
    const z = depth[at] as number;
    part[at] = partAt(ox[0] * x + ox[1] * y + ox[2] * z, oy[0] * x + oy[1] * y + oy[2] * z, oz[0] * x + oz[1] * y + oz[2] * z);
  }
  return part;
}

/** Where a line is drawn between two neighbouring squares: round everything, where one thing stands before another, between fingers. */
function bordersOf(raster: Raster, { tone, part }: Marks): Border {
  const { depth, mesh, normal, pixel } = raster;
  const steep = (at: number) => {
    const nz = Math.max(0.06, Math.abs(normal[3 * at + 2] as number));
    return Math.sqrt(Math.max(0, 1 - nz * nz)) / nz;
  };
  return (p, q) => {
    const mp = mesh[p] as number;
    const mq = mesh[q] as number;
    if (mp === 0 && mq === 0) return null;
    if (mp === 0 || mq === 0) return 'strong';
    const step = Math.abs((depth[p] as number) - (depth[q] as number));
    const jump = step > JUMP && step > JUMP + 2 * pixel * Math.min(steep(p), steep(q));
    if (jump || (mp === 1) !== (mq === 1)) return 'strong';
    const a = part[p] as number;
    const b = part[q] as number;
    if (a !== b) {
      if (a > 0 && b > 0 && a < NAIL && b < NAIL) return 'strong';
      if (a === NAIL || b === NAIL || a > NAIL) return 'fine';
    }
    return tone[p] === tone[q] ? null : 'none';
  };
}

/** The runs of a line on the skin that nothing hides. */
function visibleRuns(line: readonly Vec[], project: Projection, raster: Raster): readonly (readonly Vec[])[] {
  const runs: Vec[][] = [];
  let run: Vec[] = [];
  for (const p of line) {
    const [x, y, z] = project(p);
    const [i, j] = [Math.floor((x - raster.minX) / raster.pixel), Math.floor((y - raster.minY) / raster.pixel)];
    const at = j * raster.width + i;
    const seen =
      i >= 0 && i < raster.width && j >= 0 && j < raster.height && raster.mesh[at] === 1 && z > (raster.depth[at] as number) - 1.6;
    if (seen) run.push(p);
    else {
      if (run.length > 1) runs.push(run);
      run = [];
    }
  }
  if (run.length > 1) runs.push(run);
  return runs;
}
