import { DIGITS, type DigitName } from '../../src/hand/digits.ts';
import { normHands } from '../../src/hand/norm-hands.ts';
import { seeded, seededNormal } from '../../src/units/seeded.ts';

const FIELDS = ['width', 'circumference', 'palmarRoom', 'dorsalLength'] as const;
const SEED = 9;
/** Palmar room that a strip needs: with it every row is made and none is cheap. mm */
const LEAST_LITTLE_ROOM = 16;

/** The text of a CSV table of so many hands, drawn from the norms with one seed, for batches. */
export function handsTable(rows: number): string {
  const header = ['code', 'side', ...DIGITS.flatMap((digit) => FIELDS.map((field) => `${digit}.${field}`))].join(',');
  const { hands } = normHands('mixed', rows, seededNormal(seeded(SEED)));
  const lines = hands.map(({ hand }, i) => {
    const measure = (digit: DigitName, field: (typeof FIELDS)[number]) => {
      const mm = hand.digits[digit]?.[field] ?? 0;
      return digit === 'little' && field === 'palmarRoom' ? Math.max(LEAST_LITTLE_ROOM, mm) : mm;
    };
    const cells = DIGITS.flatMap((digit) => FIELDS.map((field) => measure(digit, field).toFixed(1)));
    return [`B-${i + 1}`, i % 2 ? 'left' : 'right', ...cells].join(',');
  });
  return `${[header, ...lines].join('\n')}\n`;
}
