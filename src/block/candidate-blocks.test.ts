import { describe, expect, it } from 'vitest';
import { DIGITS } from '../hand/digits.ts';
import { candidateBlocks, targetEffect } from './candidate-blocks.ts';
import type { StripNeed } from './deficit-kind.ts';
import { blockById, blocks } from './library.ts';

const ids = (digit: (typeof DIGITS)[number], need: StripNeed) =>
  candidateBlocks(digit, need)
    .map((b) => b.id)
    .sort();
const NEEDS: readonly StripNeed[] = ['pipFlexion', 'pipExtension'];
const twin = (id: string) => (id.includes('raised') ? id.replace('raised', 'lowered') : id.replace('lowered', 'raised'));

// docs/model.md rule 1 (trade facts row 33): common practice, no source; direction NCT06985459.
describe('candidateBlocks(digit, need)', () => {
  it.each([
    ['long', 'pipFlexion', ['long-and-ring-raised-in-four', 'long-raised-in-four', 'long-raised-in-three']],
    ['ring', 'pipExtension', ['long-and-ring-lowered-in-four', 'ring-lowered-in-four', 'ring-lowered-in-three']],
    ['index', 'pipFlexion', ['long-and-ring-lowered-in-four', 'long-lowered-in-four', 'long-lowered-in-three', 'ring-lowered-in-four']],
    ['little', 'pipExtension', ['long-and-ring-raised-in-four', 'long-raised-in-four', 'ring-raised-in-four', 'ring-raised-in-three']],
  ] as const)('%s, %s', (digit, need, expected) => {
    expect(ids(digit, need)).toEqual(expected);
  });

  it('turns into the raised or lowered twins when the other motion is lacking', () => {
    for (const digit of DIGITS) expect(ids(digit, 'pipExtension')).toEqual(ids(digit, 'pipFlexion').map(twin).sort());
  });

  it('are all blocks that set the target apart the way it needs, but for those that only hold its neighbours', () => {
    for (const digit of DIGITS) {
      for (const need of NEEDS) {
        const served = new Set(ids(digit, need));
        for (const block of blocks()) {
          const apart = targetEffect(block, digit, need).others;
          const heldItself = block.places[digit] !== 'enclosed';
          const border = digit === 'index' || digit === 'little';
          expect(served.has(block.id), `${block.id} for ${digit}, ${need}`).toBe(apart > 0 && (border || heldItself));
        }
      }
    }
  });
});

describe('targetEffect(block, digit, need)', () => {
  // Hand-worked from the angles of docs/model.md rule 3: raised -1, enclosed 0, lowered +1 differential.
  it.each([
    ['ring-raised-in-three', 'ring', 'pipFlexion', 1, 1],
    ['ring-raised-in-three', 'ring', 'pipExtension', -1, -1],
    ['long-and-ring-raised-in-four', 'ring', 'pipFlexion', 2 / 3, 1 / 2],
    ['long-and-ring-raised-in-four', 'little', 'pipExtension', 2 / 3, 1],
    ['long-raised-in-four', 'little', 'pipExtension', 1 / 3, 0],
    ['ring-lowered-in-three', 'little', 'pipFlexion', 1 / 2, 1],
    ['ring-lowered-in-three', 'index', 'pipFlexion', 0, 0],
  ] as const)('%s for %s, %s', (id, digit, need, others, neighbours) => {
    const block = blockById(id);
    if (!block) throw new Error(id);
    const effect = targetEffect(block, digit, need);
    expect(effect.others).toBeCloseTo(others, 12);
    expect(effect.neighbours).toBeCloseTo(neighbours, 12);
  });
});
