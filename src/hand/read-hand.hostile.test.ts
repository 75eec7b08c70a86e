import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import demoFile from '../../fixtures/demo-hand.json' with { type: 'json' };
import { anyCharacter } from '../../tests/any-character.ts';
import { times } from '../../tests/by-night.ts';
import { readHand } from './read-hand.ts';

/** A fresh copy of the demo hand, to be damaged. */
function demo(): Record<string, unknown> {
  return structuredClone(demoFile);
}
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('whatever comes in, readHand', () => {
  const anything = fc.oneof(
    fc.jsonValue({ maxDepth: 4 }),
    fc.double(),
    fc.string({ unit: anyCharacter }),
    fc.constantFrom('mm', 'ring 54', '3 5/16 in', 'US 7', 'left', 'ring', '1e5', '-1'),
    fc.integer({ min: 0, max: 120 }),
    fc.constant(undefined),
  );
  const key = fc.oneof(
    fc.constantFrom(
      'schema',
      'code',
      'units',
      'digits',
      'target',
      'flags',
      'note',
      'width',
      'circumference',
      'palmarRoom',
      'dorsalLength',
      '__proto__',
      'digit',
    ),
    fc.string(),
  );
  const path = fc.array(fc.oneof(fc.constantFrom('digits', 'index', 'ring', 'little', 'target', 'flags', 'hypermobile'), key), {
    minLength: 1,
    maxLength: 3,
  });

  function checked(json: unknown): void {
    const result = readHand(json);
    if (result.ok) {
      const { source: _, ...read } = result.value;
      for (const value of numbersIn(read)) expect(Number.isFinite(value)).toBe(true);
      for (const measures of Object.values(read.digits)) for (const mm of Object.values(measures)) expect(mm).toBeGreaterThanOrEqual(0);
      for (const { message } of result.warnings) expect(message).not.toMatch(/NaN|Infinity|undefined/);
    } else {
      expect(result.problems.length).toBeGreaterThan(0);
      for (const problem of result.problems) {
        expect(problem.message.length).toBeGreaterThan(10);
        expect(problem.message).not.toMatch(/[\p{Cc}\p{Cs}]/u);
      }
    }
  }

  it('returns a finite hand or a message, for arbitrary JSON', () => {
    fc.assert(fc.property(anything, checked));
  });

  it('returns a finite hand or a message, for a hand damaged anywhere', () => {
    const damage = fc.array(fc.tuple(path, anything), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(damage, (damages) => {
        const file = demo();
        for (const [keys, value] of damages) {
          let at: Record<string, unknown> = file;
          for (const k of keys.slice(0, -1)) {
            const next = Object.hasOwn(at, k) ? at[k] : undefined;
            if (typeof next !== 'object' || next === null) break;
            at = next as Record<string, unknown>;
          }
          Object.defineProperty(at, keys.at(-1) ?? '', { value, enumerable: true, configurable: true, writable: true });
        }
        checked(file);
      }),
      { numRuns: times(100, 500) },
    );
  });

  it('returns a finite hand or a message, for any measurements near the allowed ranges', () => {
    const measures = fc.record(
      {
        width: fc.double({ min: 7, max: 36, noNaN: true }),
        circumference: fc.double({ min: 24, max: 111, noNaN: true }),
        palmarRoom: fc.double({ min: 7, max: 51, noNaN: true }),
        dorsalLength: fc.double({ min: 15, max: 76, noNaN: true }),
        pipCircumference: fc.double({ min: 27, max: 121, noNaN: true }),
      },
      { requiredKeys: ['width', 'circumference'] },
    );
    fc.assert(
      fc.property(fc.record({ index: measures, long: measures, ring: measures, little: measures }), (digits) => {
        checked({ ...demo(), digits });
      }),
      { numRuns: times(100, 500) },
    );
  });
});
