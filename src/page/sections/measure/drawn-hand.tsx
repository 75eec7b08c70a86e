import { useRef } from 'preact/hooks';
import { PALM_FIELDS } from '../../../hand/fields.ts';
import type { DrawableHand } from '../../../picture/hand-shape.ts';
import type { MeasurePlace } from '../../../picture/measure-places.ts';
import { capital } from '../../../words/hand-words.ts';
import { GRID_ROWS, gridRowOf } from '../../parts/focus.ts';
import { columnsFor, HandPicture } from '../../parts/hand-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import type { Store } from '../../store.ts';
import { elementId, fieldName } from '../../translate-messages.ts';

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

/** The row of fingers that the focus is in, or the one that is shown on a narrow screen; of what lies between fingers the first. */
function rowInFocus({ focus, row }: Store): string {
  const id = gridRowOf(focus.peek()) ?? GRID_ROWS[row.peek()];
  return id === undefined || id === 'webSetback' ? 'width' : id;
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
        onFinger={(digit) => document.getElementById(elementId(`digits.${digit}.${rowInFocus(store)}`))?.focus()}
        title={texts.measure.picture(
          capital(texts.hand.handOf[side || 'left']),
          view,
          seen.map((d) => texts.hand.button[d]).join(', '),
          marked ? fieldName(store.focus.value, texts) : texts.measure.nothingMarked,
        )}
      />
    </div>
  );
}
