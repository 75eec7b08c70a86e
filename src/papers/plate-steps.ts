import type { MadeDevice } from '../pattern/making-notes.ts';
import type { DrawnMoulded } from '../picture/moulded-hand.ts';
import { PLATE_PICTURES, type PlatePictureName, platePictures } from '../picture/plate-pictures.ts';
import { plain } from '../units/number.ts';
import { treatedDigit } from './device-pictures.ts';
import type { StoryWords } from './section-step.ts';
import { named, type StoryStep } from './storyboard.ts';

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
    const items = onHand.includes(name) ? named(picture, w, treatedDigit(made)) : picture.drawing.items;
    const words = w.plate[name];
    return {
      title: name === 'hold' ? w.plate.hold.title(plain(angle, 0)) : (words.title as string),
      view: words.view,
      text: name === 'bend' && angle < FLAT ? w.plate.bend.flat : words.text,
      pictures: [{ items, share: 1 }],
    };
  });
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
