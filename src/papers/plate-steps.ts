import type { MadeDevice } from '../pattern/making-notes.ts';
import type { DrawnMoulded } from '../picture/moulded-hand.ts';
import { PLATE_PICTURES, type PlatePictureName, platePictures } from '../picture/plate-pictures.ts';
import { plain } from '../units/number.ts';
import { treatedDigit } from './device-pictures.ts';
import { named } from './finger-names.ts';
import { type Items, label } from './glyphs.ts';
import type { StoryWords } from './section-step.ts';
import { helpedAt, type StoryStep } from './storyboard.ts';

type MadePlate = MadeDevice & { readonly kind: 'plate' };

/** Of a picture a few centimetres wide. */
const PAPER = { step: 2.8, squares: 260 } as const;

/** A page is laid out in more than one language: its pictures are drawn once for each plate. */
const drawn = new WeakMap<object, ReadonlyMap<PlatePictureName, DrawnMoulded>>();

/** The six steps of making a plate: paper tried, outline, hold, bend, fit, straps. */
export function plateSteps(made: MadePlate, w: StoryWords): readonly StoryStep[] {
  const pictures = picturesOf(made);
  const { angle } = made.figures.design;
  const onHand: readonly PlatePictureName[] = ['place', 'fit', 'strap'];
  return PLATE_PICTURES.map((name): StoryStep => {
    const picture = pictures.get(name) as DrawnMoulded;
    const items = onHand.includes(name)
      ? named(picture, w.short, treatedDigit(made))
      : name === 'hold'
        ? held(picture, w)
        : picture.drawing.items;
    const words = w.plate[name];
    return {
      title: name === 'hold' ? w.plate.hold.title(plain(angle, 0)) : (words.title as string),
      view: words.view,
      text: name === 'bend' && angle < FLAT ? w.plate.bend.flat : words.text,
      pictures: [{ items, share: 1 }],
    };
  });
}

/** Letters of a name beside the helping hand, mm of the hand. */
const NAME = 5.4;

/** The hand with the gauge, and the hand of whoever helps at its fingertips. */
function held(picture: DrawnMoulded, w: StoryWords): Items {
  const tips = [...picture.fingers.values()].map(({ tip }) => tip);
  const [high] = tips.toSorted((a, b) => b.y - a.y);
  if (!high) return picture.drawing.items;
  const pointsLeft = high.x < picture.wrist.x;
  const helper = helpedAt(pointsLeft ? 'left' : 'right', high);
  const name = label(w.helper, { x: pointsLeft ? helper.box.minX : helper.box.maxX, y: helper.box.minY - 8 }, NAME);
  return [...helper.items, ...picture.drawing.items, { ...name, align: pointsLeft ? 'left' : 'right' }];
}

/** Under this a plate is not bent at its joints. degrees */
const FLAT = 3;

function picturesOf({ figures, hand }: MadePlate): ReadonlyMap<PlatePictureName, DrawnMoulded> {
  const before = drawn.get(figures);
  if (before) return before;
  const draw = platePictures({ figures, hand, side: hand.side, treated: hand.target?.digit ?? null, ...PAPER });
  const made = new Map(PLATE_PICTURES.map((name) => [name, draw(name)]));
  drawn.set(figures, made);
  return made;
}
