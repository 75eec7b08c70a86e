import type { Block } from '../../block/block.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';

const LIFT = { enclosed: 0, raised: -3.5, lowered: 3.5 } as const;

/** The fingers end-on as small rings, higher or lower as they are held, the treated one filled; words stand beside it. */
export function ArrangementSketch({
  places,
  side,
  treated,
}: {
  readonly places: Block['places'];
  readonly side: 'left' | 'right' | '';
  readonly treated: DigitName | '';
}) {
  const order = side === 'right' ? DIGITS.toReversed() : DIGITS;
  return (
    <svg class="sketch" viewBox="0 0 60 24" aria-hidden="true">
      {order.map((digit, k) => {
        const place = places[digit];
        const look = place === undefined ? 'out' : digit === treated ? 'treated' : 'in';
        return <circle key={digit} class={look} cx={9 + 14 * k} cy={12 + (place ? LIFT[place] : 0)} r="6.4" />;
      })}
    </svg>
  );
}
