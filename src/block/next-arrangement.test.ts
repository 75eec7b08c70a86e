import { describe, expect, it } from 'vitest';
import type { DigitName } from '../hand/digits.ts';
import type { StripNeed } from './deficit-kind.ts';
import { blockById } from './library.ts';
import { nextArrangement, type Tried } from './next-arrangement.ts';
import type { NextArrangement, Plan } from './plan.ts';

function block(id: string) {
  const found = blockById(id);
  if (!found) throw new Error(id);
  return found;
}
type Given = Parameters<typeof nextArrangement>[0];
const plan = (digit: DigitName, stripNeed: StripNeed, ids: readonly string[], change: Partial<Given> = {}): Given => ({
  target: { digit, pipExtensionDeficit: 30, pipFlexionDeficit: 30 },
  order: ['strip'],
  stripNeed,
  plate: null,
  suggestions: ids.map((id) => ({ block: block(id), differential: 20 }) as Plan['suggestions'][number]),
  ...change,
});
const strip = (id: string, differential: number): Tried => ({ kind: 'strip', block: block(id), differential });
const short = (step: NextArrangement) =>
  step.kind === 'block' ? `${step.block.id} ${step.differential}` : step.kind === 'differential' ? `to ${step.to}` : step.kind;

const RING = plan('ring', 'pipExtension', ['ring-lowered-in-three', 'ring-lowered-in-four', 'long-and-ring-lowered-in-four']);

// The steps and their order: common practice, no source; 30 is the most in surveyed use (Yates et al. 2023).
describe('nextArrangement(plan, tried)', () => {
  it('begins with what the plan puts first', () => {
    expect(short(nextArrangement(RING, []))).toBe('ring-lowered-in-three 20');
  });

  it('goes once to a larger differential, then to the next block at that differential', () => {
    expect(short(nextArrangement(RING, [strip('ring-lowered-in-three', 20)]))).toBe('to 25');
    const twice = [strip('ring-lowered-in-three', 20), strip('ring-lowered-in-three', 25)];
    expect(short(nextArrangement(RING, twice))).toBe('ring-lowered-in-four 25');
  });

  it('never takes a block that holds less than the last, but a larger differential up to 30, then refers', () => {
    // Long and ring lowered together hold the ring's MP joint two thirds as far against the others as ring alone.
    const tried = [
      strip('ring-lowered-in-three', 20),
      strip('ring-lowered-in-three', 25),
      strip('ring-lowered-in-four', 25),
      strip('ring-lowered-in-four', 30),
    ];
    expect(short(nextArrangement(RING, tried))).toBe('refer');
    expect(short(nextArrangement(RING, tried.slice(0, 3)))).toBe('to 30');
  });

  it('goes up from a block that holds less', () => {
    const tried = [strip('long-and-ring-lowered-in-four', 30)];
    expect(short(nextArrangement(RING, tried))).toBe('ring-lowered-in-three 30');
  });

  it('does not count a remake for size as another try', () => {
    const twice = [strip('ring-lowered-in-three', 20), strip('ring-lowered-in-three', 20)];
    expect(short(nextArrangement(RING, twice))).toBe('to 25');
  });

  it('does not go past 30', () => {
    expect(short(nextArrangement(RING, [strip('ring-lowered-in-three', 28)]))).toBe('to 30');
    expect(short(nextArrangement(RING, [strip('ring-lowered-in-three', 30)]))).toBe('ring-lowered-in-four 30');
  });

  it('comes to the other device before it refers', () => {
    const both = plan('ring', 'pipExtension', ['ring-lowered-in-three'], {
      order: ['strip', 'plate'],
      plate: { degrees: 55, range: [45, 90], wanted: 55 },
    });
    const tried = [strip('ring-lowered-in-three', 30)];
    expect(nextArrangement(both, tried)).toEqual({ kind: 'plate', degrees: 55 });
    expect(short(nextArrangement(both, [...tried, { kind: 'plate', degrees: 55 }]))).toBe('refer');
    const plateFirst = { ...both, order: ['plate', 'strip'] } as const;
    expect(short(nextArrangement(plateFirst, []))).toBe('plate');
    expect(short(nextArrangement(plateFirst, [{ kind: 'plate', degrees: 55 }]))).toBe('ring-lowered-in-three 20');
  });

  it('refers where the plan names nothing', () => {
    expect(short(nextArrangement(plan('ring', 'pipExtension', [], { order: [] }), []))).toBe('refer');
  });
});
