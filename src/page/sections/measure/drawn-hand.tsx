import { useRef } from 'preact/hooks';
import { PALM_FIELDS } from '../../../hand/fields.ts';
import type { DrawableHand } from '../../../picture/hand-shape.ts';
import type { MeasurePlace } from '../../../picture/measure-places.ts';
import { columnsFor, HandPicture } from '../../parts/hand-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import { fieldName } from '../../translate-messages.ts';

/** The hand that is drawn: the one that was measured, or while something typed cannot be used the last that could be drawn. */
function useDrawable(): DrawableHand {
  const store = useStore();
  const last = useRef<DrawableHand>({ digits: {} });
  const { pictured } = store.derived.value;
  if (pictured) last.current = { ...pictured, webSetback: pictured.webs?.webSetback ?? {} };
  return last.current;
}

/** Where on the drawn hand the measure of a field is taken; null for a field that is no measure. */
export function placeOf(where: string): MeasurePlace | null {
  if (where.startsWith('digits.')) return where.slice('digits.'.length) as MeasurePlace;
  return where.startsWith('webSetback.') || Object.hasOwn(PALM_FIELDS, where) ? (where as MeasurePlace) : null;
}

/** The drawn hand as it is measured, with the place of the focused measure marked. */
export function DrawnHandPicture({ shown }: { readonly shown: 'fingers' | 'hand' }) {
  const store = useStore();
  const texts = store.texts.value;
  const hand = useDrawable();
  const { asked } = store.derived.value;
  const { side, target } = store.entries.value;
  const marked = placeOf(store.focus.value);
  const seen = columnsFor(side || 'left');
  const view = store.aspect.value === 'palm' ? texts.measure.palmUp : texts.measure.backUp;
  return (
    <div class="picture-room">
      <HandPicture
        hand={hand}
        side={side || 'left'}
        face={store.aspect.value}
        shown={shown}
        treated={target || null}
        unused={seen.filter((d) => !asked.includes(d))}
        marked={marked}
        thumb={texts.measure.thumb}
        title={texts.measure.picture(
          texts.handOf[side || 'left'],
          view,
          seen.map((d) => texts.finger.choice[d]).join(', '),
          marked ? fieldName(store.focus.value, texts) : texts.measure.nothingMarked,
        )}
      />
    </div>
  );
}
