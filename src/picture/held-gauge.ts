import { heldDigits } from '../block/block.ts';
import { DIGITS } from '../hand/digits.ts';
import type { MadeDevice } from '../pattern/making-notes.ts';
import { WEDGE_LEG } from '../pattern/strip/differential-wedge.ts';
import { flatMesh } from './flat-mesh.ts';
import { type DrawnMoulded, drawMoulded, type MouldedScene, mouldedScene } from './moulded-hand.ts';
import { platePictures } from './plate-pictures.ts';
import { type SheetSurface, sheetSurface } from './plate-surface.ts';
import type { PosedHand } from './posed-hand.ts';
import { add, mix, type Vec } from './vec.ts';

/** Of a picture a few centimetres wide. */
const SMALL = { step: 2.8, squares: 200 } as const;
const PAPER = 0.6;
/** How far beside the finger the paper is held, mm. */
const BESIDE = 4;

const drawn = new WeakMap<object, DrawnMoulded>();

/** How the paper gauge that goes with a device is held: a plate's against the MP joint, a strip's wedge beside the held finger and its neighbour. */
export function heldGaugePicture({ kind, figures, hand }: MadeDevice): DrawnMoulded {
  const before = drawn.get(figures);
  if (before) return before;
  const { side } = hand;
  const treated = hand.target?.digit ?? null;
  const made =
    kind === 'plate'
      ? platePictures({ figures, hand, side, treated, ...SMALL })('hold')
      : drawMoulded(
          withWedge(
            mouldedScene({ hand, side, treated, strip: figures, shown: [], pose: { mp: 25, pip: 8 }, step: SMALL.step }),
            heldDigits(figures.block),
          ),
          { across: side === 'right' ? 90 : -90, up: 8, squares: SMALL.squares },
        );
  drawn.set(figures, made);
  return made;
}

/** The scene with the wedge on the ulnar side of the fingers, its legs along a held finger and one beside it, its point at their MP joints. */
function withWedge(scene: MouldedScene, held: readonly string[]): MouldedScene {
  const { posed } = scene;
  const wedge = wedgeBeside(posed, held);
  return wedge ? { ...scene, frame: [...scene.frame, wedge.faces], bands: [{ ...wedge, tone: 'done' }] } : scene;
}

function wedgeBeside({ fingers }: PosedHand, held: readonly string[]): SheetSurface | null {
  const one = fingers.findLast((f) => held.includes(f.shape.digit));
  const at = one ? fingers.indexOf(one) : -1;
  const other = [fingers[at + 1], fingers[at - 1]].find((f) => f && !held.includes(f.shape.digit));
  const outer = fingers.reduce((a, b) => (DIGITS.indexOf(b.shape.digit) > DIGITS.indexOf(a.shape.digit) ? b : a));
  if (!one || !other) return null;
  const middle = mix(one.joints[0], other.joints[0], 0.5);
  const point: Vec = [outer.joints[0][0] + outer.shape.width / 2 + BESIDE, middle[1], middle[2]];
  const ends = [one, other].map(({ joints: [mp, pip], shape }) => {
    const way: Vec = [0, (pip[1] - mp[1]) / shape.proximal, (pip[2] - mp[2]) / shape.proximal];
    return add(point, way, WEDGE_LEG);
  });
  const corners = [point, ...ends].map((p) => ({ x: p[2], y: p[1] }));
  const area = corners.reduce((sum, p, k) => {
    const q = corners[(k + 1) % 3] ?? p;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  const flat = flatMesh(area > 0 ? corners : corners.toReversed(), 1.4);
  return sheetSurface(
    flat,
    flat.points.map(({ x, y }): Vec => [point[0], y, x]),
    PAPER,
    1,
  );
}
