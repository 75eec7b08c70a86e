import { describe, expect, it } from 'vitest';
import { DIGITS } from '../hand/digits.ts';
import { type Block, blockProblems, PLACES, placedDigits } from './block.ts';
import { blocks } from './library.ts';
import { readBlock } from './read-block.ts';

/** Every way to give each of the four digits a place or none: 4^4. */
const everyBlock: Block[] = Array.from({ length: 256 }, (_, n) => {
  const choice = (k: number) => [undefined, ...PLACES][Math.floor(n / 4 ** k) % 4];
  const places = Object.fromEntries(DIGITS.map((d, k) => [d, choice(k)]).filter(([, p]) => p !== undefined));
  return { id: `n${n}`, title: `n${n}`, places };
});

const key = (block: Block) => JSON.stringify(placedDigits(block));

describe('blocks', () => {
  it('are exactly the ones that the rules allow: ten', () => {
    const allowed = everyBlock.filter((b) => blockProblems(b).length === 0).map(key);
    expect(allowed).toHaveLength(10);
    expect(new Set(blocks().map(key))).toEqual(new Set(allowed));
  });

  it('have ids that say their places', () => {
    for (const block of blocks()) {
      const held = placedDigits(block).filter((d) => d.place !== 'enclosed');
      const count = placedDigits(block).length === 3 ? 'three' : 'four';
      expect(block.id).toBe(`${held.map((d) => d.digit).join('-and-')}-${held[0]?.place}-in-${count}`);
    }
  });

  it.each([
    [{ index: 'enclosed', long: 'raised' }, ['BLOCK_COUNT', 'BLOCK_BORDER']],
    [{ index: 'enclosed', long: 'raised', little: 'enclosed' }, ['BLOCK_NEIGHBOURS']],
    [{ index: 'raised', long: 'enclosed', ring: 'enclosed' }, ['BLOCK_BORDER']],
    [{ index: 'enclosed', long: 'enclosed', ring: 'enclosed' }, ['BLOCK_HOLDS_NONE']],
    [{ index: 'enclosed', long: 'raised', ring: 'lowered', little: 'enclosed' }, ['BLOCK_MIXED']],
    [{}, ['BLOCK_COUNT', 'BLOCK_HOLDS_NONE']],
  ])('refuses %o with its rule', (places, codes) => {
    const read = readBlock({ schema: 'knucklewright/block@1', id: 'own', places }, 'own.json');
    expect(read.ok ? [] : read.problems.map((p) => p.code)).toEqual(codes);
    expect(read.ok || read.problems.every((p) => p.kind === 'refused')).toBe(true);
  });

  it('refuses a file of another form as bad input', () => {
    const read = readBlock({ schema: 'knucklewright/block@1', id: 'Own Block', places: { thumb: 'raised' } }, 'own.json');
    expect(read.ok ? [] : read.problems.map((p) => p.kind)).toEqual(['input', 'input']);
  });

  it('says what is wrong in words of its own, however many or hostile the keys', () => {
    const keys = Object.fromEntries(Array.from({ length: 50_000 }, (_, k) => [`\u001b[31m${k}`, 1]));
    const read = readBlock({ ...keys, id: '\u001b[31m', places: 7 }, 'own.json');
    const messages = read.ok ? [] : read.problems.map((p) => p.message);
    expect(messages.join('\n')).toContain('and 49995 more');
    for (const message of messages) {
      expect(message.length).toBeLessThan(600);
      expect(message).not.toMatch(/\p{Cc}|undefined/u);
    }
  });
});
