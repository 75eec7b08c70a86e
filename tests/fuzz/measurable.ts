import * as fc from 'fast-check';
import { DIGITS, WEBS } from '../../src/hand/digits.ts';
import { DIGIT_FIELDS, WEB_FIELDS } from '../../src/hand/fields.ts';
import type { OptionTable } from '../../src/pattern/option-entries.ts';

/** Mostly anything between two numbers, and now and then an end of the range itself. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.oneof({ weight: 8, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: fc.constantFrom(min, max) });
}

const within = (value: number, { from, to }: { readonly from: number; readonly to: number }) => Math.min(to, Math.max(from, value));
const { width: WIDTH, circumference: ROUND, palmarRoom: ROOM, dorsalLength: BACK, rootCircumference: ROOT } = DIGIT_FIELDS;

/** A finger from its width, its depth over its width, its lengths, mm, and the angle by which it tapers to each side, each brought into the range that is read. */
function finger(width: number, depth: number, palmarRoom: number, beyond: number, taper: number | null) {
  const room = within(palmarRoom, ROOM.refuse);
  const circumference = within((Math.PI / 2) * within(width, WIDTH.refuse) * (1 + depth), ROUND.refuse);
  return {
    width: within(width, WIDTH.refuse),
    circumference,
    palmarRoom: room,
    dorsalLength: within(room + beyond, BACK.refuse),
    ...(taper === null ? {} : { rootCircumference: within(circumference + Math.PI * room * Math.tan(taper), ROOT.refuse) }),
  };
}

/** Depth over width that a section may have; at the lower end the circumference above would be too small for it. */
const depth = between(0.55, 1.6);
/** Angle by which a finger narrows to each side, up to the steepest that is read; of half the fingers not measured. radians */
const taper = fc.option(between(-0.2093, 0.2093), { freq: 2, nil: null });
/** Each finger by itself, as no hand has them. */
const strangers = fc.tuple(
  ...DIGITS.map(() => fc.tuple(between(8, 35), depth, between(8, 50), between(1, 40), taper).map((parts) => finger(...parts))),
);
/** Width, palmar room and dorsal length beyond it of an invented adult's fingers, mm, from the index to the little one. */
const ADULT = [
  [17.5, 25, 19],
  [17.5, 27, 21],
  [16.5, 25, 20],
  [14.5, 19, 17],
] as const;
/** Fingers of one hand, of any size, each measure off by itself more than any tape is. */
const siblings = fc
  .tuple(
    between(0.55, 1.5),
    fc.array(fc.tuple(between(0.8, 1.2), between(0.7, 1.25), between(0.75, 1.3), between(0.6, 1.4), taper), { minLength: 4, maxLength: 4 }),
  )
  .map(([size, off]) =>
    ADULT.map(([width, room, beyond], k) => {
      const [wide, deep, long, far, tapers] = off[k] ?? [1, 1, 1, 1, null];
      return finger(width * size * wide, deep, room * size * long, beyond * size * far, tapers);
    }),
  );

/** Four fingers as a hand file has them, all within what is read; most of them hang together as those of a hand do. */
export const fingers: fc.Arbitrary<Readonly<Record<string, object>>> = fc
  .oneof({ weight: 1, arbitrary: strangers }, { weight: 3, arbitrary: siblings })
  .map((list) => Object.fromEntries(DIGITS.map((digit, k) => [digit, list[k] ?? {}])));

/** How far each web lies behind the foremost one as a hand file has it, mm; of half the hands not measured, then of some webs alone. */
export const webSetbacks: fc.Arbitrary<Readonly<Record<string, object>>> = fc.oneof(
  fc.constant({}),
  fc
    .record(Object.fromEntries(WEBS.map((web) => [web, between(WEB_FIELDS.webSetback.refuse.from, WEB_FIELDS.webSetback.refuse.to)])), {
      requiredKeys: [],
    })
    .map((webSetback) => ({ webSetback })),
);

/** Some of the options of a table, each within its range. */
export function someOptions({ numbers, choices }: OptionTable): fc.Arbitrary<object> {
  return fc.record(
    Object.fromEntries([
      ...numbers.map((o) => [o.key, between(o.low, o.high)] as const),
      ...choices.map((o) => [o.key, fc.constantFrom(...o.choices)] as const),
    ]),
    { requiredKeys: [] },
  );
}
