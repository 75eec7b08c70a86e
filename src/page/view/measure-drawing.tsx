import type { DigitFieldId } from '../../hand/fields.ts';
import type { View } from './view.ts';

/** The place of each measurement on a simple finger; user units, y down. The arrow's tip lies on it. */
const PLACES: Readonly<
  Record<DigitFieldId, { readonly path: string; readonly arrow: readonly [number, number]; readonly number: number }>
> = {
  width: { path: 'M 30 104 H 82 M 30 97 V 111 M 82 97 V 111', arrow: [88, 104], number: 1 },
  circumference: { path: 'M 262 58 a 38 40 0 1 0 0.01 0', arrow: [306, 98], number: 2 },
  palmarRoom: { path: 'M 56 132 V 78 M 47 132 H 65 M 47 78 H 65', arrow: [66, 90], number: 3 },
  dorsalLength: { path: 'M 160 152 V 78 M 151 152 H 169 M 151 78 H 169', arrow: [170, 118], number: 4 },
  pipCircumference: { path: 'M 130 73 C 142 84 178 84 190 73 M 130 83 C 142 94 178 94 190 83', arrow: [194, 79], number: 5 },
  mpSetback: { path: 'M 184 142 V 152 M 168 142 H 204 M 168 152 H 204', arrow: [206, 147], number: 6 },
};

/** A finger from the palm, from the back and end-on, with the places to measure; the one of the field in focus is bold and has an arrow. */
export function MeasureDrawing({ view, lit }: { readonly view: View; readonly lit: DigitFieldId | null }) {
  const { texts } = view;
  return (
    <svg class="measure" viewBox="0 0 330 200" role="img" aria-labelledby="measure-title">
      <title id="measure-title">{texts.hand.picture(lit ? texts.field[lit].label : texts.hand.nothing)}</title>
      <g class="skin">
        <path d="M 8 196 C 8 160 20 150 30 140 V 38 C 30 4 82 4 82 38 V 140 C 92 150 104 160 104 196 Z" />
        <path d="M 112 196 C 112 160 124 150 134 140 V 38 C 134 4 186 4 186 38 V 140 C 196 150 208 160 208 196 Z" />
        <ellipse cx="262" cy="98" rx="31" ry="33" />
      </g>
      <g class="crease">
        <path d="M 33 132 C 44 136 68 136 79 132 M 32 78 C 44 82 68 82 80 78 M 33 46 C 44 49 68 49 79 46" />
        <path d="M 146 150 C 152 158 168 158 174 150 M 147 76 C 153 84 167 84 173 76 M 150 24 C 150 10 170 10 170 24 V 32 H 150 Z" />
        <path d="M 250 74 C 256 68 268 68 274 74" />
      </g>
      {(Object.keys(PLACES) as DigitFieldId[]).map((id) => {
        const { path, arrow, number } = PLACES[id];
        const [x, y] = arrow;
        const isLit = id === lit;
        if (number > 4 && !isLit) return null;
        return (
          <g class={isLit ? 'place lit' : 'place'} key={id}>
            <path d={path} />
            {isLit ? <path class="arrow" d={`M ${x + 1} ${y} l 9 -6 v 4 h 8 v 4 h -8 v 4 Z`} /> : null}
            <text x={x + (isLit ? 21 : 3)} y={y + 4.5}>
              {number}
            </text>
          </g>
        );
      })}
      <g class="caption">
        <text x="56" y="192">
          {texts.hand.palmView}
        </text>
        <text x="160" y="192">
          {texts.hand.backView}
        </text>
        <text x="262" y="192">
          {texts.hand.endView}
        </text>
      </g>
    </svg>
  );
}
