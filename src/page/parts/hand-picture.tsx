import { DIGITS, type DigitName } from '../../hand/digits.ts';
import { averageDigit } from '../../hand/estimate.ts';
import type { DigitFieldId } from '../../hand/fields.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';

export interface HandPictureProps {
  /** With the measures that were typed; null draws an average hand. */
  readonly hand: Hand | null;
  readonly side: 'left' | 'right';
  readonly face: 'palm' | 'back';
  readonly treated: DigitName | null;
  readonly unused: readonly DigitName[];
  readonly marked: { readonly digit: DigitName; readonly field: DigitFieldId } | null;
  readonly title: string;
  readonly thumb: string;
}

/** Room of one finger in the drawing, mm. */
const PITCH = 26;
const TALL = 92;
/** Lengths of middle and distal phalanx with the pulp over the proximal one: Buryanov & Kotiuk 2010, second-hand. */
const BEYOND_PIP: Readonly<Record<DigitName, number>> = { index: 1.06, long: 1.07, ring: 1.13, little: 1.15 };

/** The fingers side by side over their columns of fields, in the proportions of what was entered; the place of the focused field is marked. */
export function HandPicture({ hand, side, face, treated, unused, marked, title, thumb }: HandPictureProps) {
  const columns = columnsFor(side);
  return (
    <svg class="hand-picture" viewBox={`0 0 ${PITCH * 4} ${TALL + 6}`} preserveAspectRatio="xMidYMax meet" role="img" aria-label={title}>
      <g {...(face === 'back' ? { transform: `translate(0 ${TALL + 6}) scale(1 -1)` } : {})}>
        {columns.map((digit, k) => (
          <Finger
            key={digit}
            x={(k + 0.5) * PITCH}
            digit={digit}
            hand={hand}
            face={face}
            look={digit === treated ? 'finger treated' : unused.includes(digit) ? 'finger unused' : 'finger'}
            marked={marked?.digit === digit ? marked.field : null}
          />
        ))}
        <path class="web" d={`M2 ${TALL} H${PITCH * 4 - 2} V${TALL + 6} H2 Z`} />
      </g>
      <text
        class="thumb"
        x={columns[0] === 'index' ? 3 : PITCH * 4 - 3}
        y={face === 'back' ? 4.6 : TALL + 4.6}
        text-anchor={columns[0] === 'index' ? 'start' : 'end'}
      >
        {columns[0] === 'index' ? `◂ ${thumb}` : `${thumb} ▸`}
      </text>
    </svg>
  );
}

/**
 * From left to right over the columns of fields. The palm is seen with the fingertips up, the back with the fingertips down: so the hand is turned
 * over and the fingers keep their columns, the thumb of a left hand on the left both times.
 */
export function columnsFor(side: 'left' | 'right'): readonly DigitName[] {
  return side === 'left' ? DIGITS : DIGITS.toReversed();
}

function Finger({
  x,
  digit,
  hand,
  face,
  look,
  marked,
}: {
  readonly x: number;
  readonly digit: DigitName;
  readonly hand: Hand | null;
  readonly face: 'palm' | 'back';
  readonly look: string;
  readonly marked: DigitFieldId | null;
}) {
  const measures = hand?.digits[digit];
  const average = averageDigit(digit);
  const width = Math.min(PITCH - 3, measures?.width ?? average.circumference / Math.PI);
  const proximal = measures?.dorsalLength ?? average.dorsalLength;
  const room = measures?.palmarRoom ?? average.palmarRoom;
  const whole = Math.min(TALL - 2, room + proximal * BEYOND_PIP[digit]);
  const [left, right, half] = [x - width / 2, x + width / 2, width / 2];
  const top = TALL - whole;
  const pip = TALL - room;
  const n = (value: number) => plain(value, 2);
  const bar = (y: number) => `M${n(left - 2.5)} ${n(y)} H${n(right + 2.5)}`;
  const along = (from: number, to: number) => `M${n(x)} ${n(from)} V${n(to)} M${n(x - 3)} ${n(from)} h6 M${n(x - 3)} ${n(to)} h6`;
  const marks: Record<DigitFieldId, string> = {
    width: `M${n(left)} ${n(TALL - room / 2)} H${n(right)} M${n(left)} ${n(TALL - room / 2 - 3)} v6 M${n(right)} ${n(TALL - room / 2 - 3)} v6`,
    circumference: `${bar(TALL - room / 2 - 1)} ${bar(TALL - room / 2 + 1)}`,
    palmarRoom: along(TALL, pip),
    dorsalLength: along(TALL + 4, pip - 2.5),
    pipCircumference: `${bar(pip - 3.5)} ${bar(pip - 1.5)}`,
    rootCircumference: `${bar(TALL - 2)} ${bar(TALL)}`,
    mpSetback: along(TALL + 5, TALL),
  };
  return (
    <g>
      <path class={look} d={`M${n(left)} ${TALL} V${n(top + half)} A${n(half)} ${n(half)} 0 0 1 ${n(right)} ${n(top + half)} V${TALL} Z`} />
      {face === 'palm' ? (
        <path class="crease" d={`M${n(left)} ${n(pip)} H${n(right)} M${n(left)} ${n(pip - (whole - room) / 2)} H${n(right)}`} />
      ) : (
        <path
          class="crease"
          d={`M${n(x - half / 2)} ${n(pip - 3)} q${n(half / 2)} 2 ${n(half)} 0 M${n(x - half * 0.55)} ${n(top + half * 1.5)} v${n(-half * 0.7)} q${n(half * 0.55)} ${n(-half * 0.6)} ${n(half * 1.1)} 0 v${n(half * 0.7)} z`}
        />
      )}
      {marked ? <path class="marked" d={marks[marked]} /> : null}
    </g>
  );
}
