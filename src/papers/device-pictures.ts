import type { DigitName } from '../hand/digits.ts';
import type { MadeDevice } from '../pattern/making-notes.ts';
import {
  type DrawnMoulded,
  drawMoulded,
  type MouldedInput,
  type MouldedScene,
  mouldedScene,
  platePose,
  type ShownBand,
  type SkinView,
  skinView,
  type Viewpoint,
} from '../picture/moulded-hand.ts';
import type { HandPose } from '../picture/posed-hand.ts';

/** Of a picture a few centimetres wide. */
const PAPER = { step: 2.8, squares: 230 } as const;

export interface PictureOf {
  readonly pose: HandPose;
  readonly view: Viewpoint;
  /** Usual: all of the strip. */
  readonly shown?: readonly ShownBand[];
}

/** A page is laid out more than once, and in more than one language: the pictures of a device are drawn once, and kept of the last few. */
const MOST_DEVICES = 4;
const drawn = new Map<string, DrawnDevice>();
const known = new WeakMap<object, DrawnDevice>();
const seen = new WeakMap<object, Map<string, SkinView>>();

interface DrawnDevice {
  readonly pictures: Map<string, DrawnMoulded>;
  readonly scenes: Map<string, MouldedScene>;
}

/** The hand with its device, as the papers show it. A plate's MP joints stand as it holds them, whatever the pose. */
export function devicePicture(made: MadeDevice, { pose: asked, view, shown }: PictureOf): DrawnMoulded {
  const { mp: _, ...others } = asked;
  const pose = made.kind === 'plate' ? { ...platePose(made.figures), ...others } : asked;
  const key = JSON.stringify([pose, view, shown ?? null]);
  const { pictures, scenes } = drawnOf(made);
  const before = pictures.get(key);
  if (before) return before;
  const poseKey = JSON.stringify(pose);
  const input: MouldedInput = {
    hand: made.hand,
    side: made.hand.side,
    treated: treatedDigit(made),
    pose,
    step: PAPER.step,
    ...(made.kind === 'strip' ? { strip: made.figures } : { plate: made.figures }),
    ...(shown ? { shown } : {}),
  };
  const scene = scenes.get(poseKey);
  const model = mouldedScene(input, scene);
  scenes.set(poseKey, model);
  const from = { squares: PAPER.squares, ...view };
  const skins = kept(seen, model.skin);
  const fromKey = JSON.stringify(from);
  const skin = skins.get(fromKey) ?? skinView(model, from);
  skins.set(fromKey, skin);
  const picture = drawMoulded(model, from, skin);
  pictures.set(key, picture);
  return picture;
}

/** What has been drawn of a device: the same one, made again, is known by what it is made from. */
function drawnOf(made: MadeDevice): DrawnDevice {
  const before = known.get(made.figures);
  if (before) return before;
  const from =
    made.kind === 'strip'
      ? [made.figures.block, made.figures.options, made.figures.asked, made.figures.geometryVersion]
      : [made.figures.design, made.figures.options];
  const key = JSON.stringify([made.hand, from]);
  const device = drawn.get(key) ?? { pictures: new Map(), scenes: new Map() };
  drawn.delete(key);
  drawn.set(key, device);
  for (const oldest of drawn.keys()) if (drawn.size > MOST_DEVICES) drawn.delete(oldest);
  known.set(made.figures, device);
  return device;
}

function kept<V>(all: WeakMap<object, Map<string, V>>, key: object): Map<string, V> {
  const found = all.get(key) ?? new Map<string, V>();
  all.set(key, found);
  return found;
}

export function treatedDigit({ hand }: MadeDevice): DigitName | null {
  return hand.target?.digit ?? null;
}
