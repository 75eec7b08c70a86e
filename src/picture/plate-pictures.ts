import { chordPoints } from '../geometry/inside.ts';
import type { DigitName, Side } from '../hand/digits.ts';
import { gaugeOutline } from '../pattern/plate/angle-gauge.ts';
import type { PlateFigures } from '../pattern/plate/plate-report.ts';
import { type FlatMesh, flatMesh } from './flat-mesh.ts';
import type { DrawableHand } from './hand-shape.ts';
import { type DrawnMoulded, drawMoulded, type MouldedInput, type MouldedScene, mouldedScene, type Viewpoint } from './moulded-hand.ts';
import { loosePlate, type SheetSurface, sheetSurface } from './plate-surface.ts';
import type { PosedHand } from './posed-hand.ts';
import { add, type Vec } from './vec.ts';

/** Making a plate in pictures: the paper tried on the hand, its outline on the sheet, the MP joints held by the gauge, the bend over an edge, the fit, the straps. */
export const PLATE_PICTURES = ['place', 'outline', 'hold', 'bend', 'fit', 'strap'] as const;
export type PlatePictureName = (typeof PLATE_PICTURES)[number];

export interface PlatePictureInput {
  readonly figures: PlateFigures;
  readonly hand: DrawableHand;
  readonly side: Side;
  readonly treated?: DigitName | null;
  /** As `MouldedInput.step` and `Viewpoint.squares`. */
  readonly step?: number;
  readonly squares?: number;
}

/**
 * The pictures of a plate, each drawn when it is asked for; all of one hand share its skin. Viewed from the plate's own side unless a viewpoint
 * is given: `strap` from the other side, `hold` from the ulnar border or, where that digit is not held, from the thumb's.
 *
 * @example
 * const pictures = platePictures({ figures, hand, side: hand.side });
 * const { drawing, at } = pictures('fit');
 * const fromTheSide = pictures('fit', { across: 90 });
 */
export function platePictures(input: PlatePictureInput): (name: PlatePictureName, view?: Viewpoint) => DrawnMoulded {
  const { figures, hand, side } = input;
  const shared: Pick<MouldedInput, 'hand' | 'side' | 'treated' | 'plate' | 'step'> = {
    hand,
    side,
    plate: figures,
    treated: input.treated ?? null,
    ...(input.step === undefined ? {} : { step: input.step }),
  };
  const scenes = new Map<PlatePictureName, MouldedScene>();
  let skin: MouldedScene | undefined;
  const onHand = (more: Partial<MouldedInput>): MouldedScene => {
    skin = mouldedScene({ ...shared, ...more }, skin);
    return skin;
  };
  const make: Readonly<Record<PlatePictureName, () => MouldedScene>> = {
    place: () => {
      const fit = sceneOf('fit');
      return { ...fit, bands: fit.bands.map((band) => ({ ...band, tone: 'done' as const })) };
    },
    outline: () => mouldedScene({ hand, side, bare: true, sheets: traced(figures) }),
    hold: () => {
      const fit = sceneOf('fit');
      const gauge = heldGauge(figures, fit.posed);
      return { ...fit, frame: [fit.skin, gauge.faces], bands: [{ ...gauge, tone: 'done' as const }] };
    },
    bend: () => mouldedScene({ hand, side, bare: true, sheets: overTheEdge(figures) }),
    fit: () => onHand({ straps: false }),
    strap: () => onHand({ straps: true }),
  };
  const sceneOf = (name: PlatePictureName): MouldedScene => {
    const before = scenes.get(name);
    if (before) return before;
    const made = make[name]();
    scenes.set(name, made);
    return made;
  };
  return (name, view = usualView(name, figures, side)) =>
    drawMoulded(sceneOf(name), { ...(input.squares === undefined ? {} : { squares: input.squares }), ...view });
}

/** From where a step is best seen, degrees. */
export function usualView(name: PlatePictureName, figures: PlateFigures, side: Side): Viewpoint {
  const mirror = side === 'right' ? -1 : 1;
  const back = figures.frame.faces[0]?.face === 'dorsal';
  const over = { across: 24 * mirror, up: 52 };
  const under = { roll: 180, across: -20 * mirror, up: 62 };
  if (name === 'hold') return { across: (gaugeIsUlnar(figures) ? -90 : 90) * mirror, up: 12 };
  if (name === 'outline') return { up: 64, spin: 180 };
  if (name === 'bend') return { across: 40 * mirror, up: 34 };
  // The more the MP joints are bent, the further the back of the hand, over which the strap runs, turns away.
  if (name === 'strap') return back ? under : { ...over, up: over.up + 0.6 * figures.design.angle };
  return back ? over : under;
}

/** Room round the outline on the sheet, and how far the table reaches. mm */
const SHEET_ROOM = 9;
const TABLE = { beside: 16, behind: 12, thick: 12 } as const;
const PAPER = 0.6;

type Sheet = NonNullable<MouldedInput['sheets']>[number];

/** The paper on the flat sheet of plastic. */
function traced(figures: PlateFigures): readonly Sheet[] {
  const flat = figures.frame.faces.map((_, k) => loosePlate(figures, k, 0));
  // Two faces lie side by side.
  let from = 0;
  return flat.flatMap((face): readonly Sheet[] => {
    const xs = face.faces.points.map((p) => p[0]);
    const zs = face.faces.points.map((p) => p[2]);
    const [minX, maxX] = [Math.min(...xs), Math.max(...xs)];
    const move = from - minX;
    from += maxX - minX + 3 * SHEET_ROOM;
    const shift = (p: Vec): Vec => add(p, [move, figures.options.thickness / 2 + PAPER, 0]);
    const box: readonly [Vec, Vec] = [
      [minX - SHEET_ROOM + move, -figures.options.thickness / 2, Math.min(...zs) - SHEET_ROOM],
      [maxX + SHEET_ROOM + move, figures.options.thickness / 2, Math.max(...zs) + SHEET_ROOM],
    ];
    return [
      { ...boxSurface(...box), tone: 'strip' },
      {
        faces: { ...face.faces, points: face.faces.points.map(shift) },
        edges: { ...face.edges, points: face.edges.points.map(shift) },
        tone: 'done',
      },
    ];
  });
}

/** The warm plate on a table, its bend line along the edge, the finger part hanging down. */
function overTheEdge(figures: PlateFigures): readonly Sheet[] {
  const plate = loosePlate(figures, 0, 1);
  const [part] = figures.frame.faces[0]?.parts ?? [];
  if (!part) return [];
  const xs = plate.faces.points.map((p) => p[0]);
  const zs = plate.faces.points.map((p) => p[2]);
  const [minX, maxX] = [Math.min(...xs) - TABLE.beside, Math.max(...xs) + TABLE.beside];
  const slope = part.kinked ? 0 : part.bend.slope;
  const top = -figures.options.thickness / 2 - 0.2;
  const edge = (x: number) => part.beginAt(0) + slope * x - 1;
  const back = Math.min(...zs) - TABLE.behind;
  const table = prism(
    [
      [minX, back],
      [maxX, back],
      [maxX, edge(maxX)],
      [minX, edge(minX)],
    ],
    top - TABLE.thick,
    top,
  );
  return [
    { ...table, tone: 'done' },
    { ...plate, tone: 'strip' },
  ];
}

/** Where the thumb is not in the way, if the finger there is held. */
function gaugeIsUlnar({ frame }: PlateFigures): boolean {
  return frame.digits.at(-1) === 'little';
}

/** The paper gauge against the border of the hand, its ring on the MP joint, its arms along metacarpal and finger. */
function heldGauge(figures: PlateFigures, posed: PosedHand): SheetSurface {
  const ulnar = gaugeIsUlnar(figures);
  const finger = ulnar ? posed.fingers.at(-1) : posed.fingers[0];
  const [joint] = finger?.joints ?? [[0, 0, 0] as Vec];
  const side = ulnar ? 1 : -1;
  const off = (finger?.shape.width ?? 0) / 2 + 4;
  const flat: FlatMesh = flatMesh(chordPoints(gaugeOutline(figures.design.angle)), 1.4);
  const points = flat.points.map(({ x, y }): Vec => add(add(add(joint, [side, 0, 0], off), posed.along, y), posed.dorsal, -x));
  return sheetSurface(flat, points, PAPER, 1);
}

/** A block between two corners. */
function boxSurface(low: Vec, high: Vec): SheetSurface {
  return prism(
    [
      [low[0], low[2]],
      [high[0], low[2]],
      [high[0], high[2]],
      [low[0], high[2]],
    ],
    low[1],
    high[1],
  );
}

/** A block over four corners (x, z), counter-clockwise seen with x to the right and z up, from y `low` to `high`. */
function prism(corners: readonly (readonly [number, number])[], low: number, high: number): SheetSurface {
  const points: Vec[] = [];
  const normals: Vec[] = [];
  const triangles: (readonly [number, number, number])[] = [];
  const quad = (quads: readonly Vec[], normal: Vec) => {
    const at = points.length;
    points.push(...quads);
    normals.push(normal, normal, normal, normal);
    triangles.push([at, at + 1, at + 2], [at, at + 2, at + 3]);
  };
  const level = (y: number) => corners.map(([x, z]): Vec => [x, y, z]);
  quad(level(high), [0, 1, 0]);
  quad(level(low), [0, -1, 0]);
  const sides = { points: [] as Vec[], normals: [] as Vec[], triangles: [] as (readonly [number, number, number])[] };
  for (const [k, [x, z]] of corners.entries()) {
    const [nx, nz] = corners[(k + 1) % corners.length] as readonly [number, number];
    const at = sides.points.length;
    const size = Math.hypot(nz - z, x - nx) || 1;
    const normal: Vec = [(nz - z) / size, 0, (x - nx) / size];
    sides.points.push([x, low, z], [nx, low, nz], [nx, high, nz], [x, high, z]);
    sides.normals.push(normal, normal, normal, normal);
    sides.triangles.push([at, at + 1, at + 2], [at, at + 2, at + 3]);
  }
  return { faces: { points, normals, triangles }, edges: sides };
}
