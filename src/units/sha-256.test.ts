import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyCharacter } from '../../tests/any-character.ts';
import { sha256 } from './sha-256.ts';

describe('sha256(text)', () => {
  it.each([
    // The two worked examples that NIST publishes with FIPS 180-4.
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
  ])('of %s is as NIST worked it out', (text, digest) => {
    expect(sha256(text)).toBe(digest);
  });

  it('is what OpenSSL makes of any text, of any length about the edges of a block', () => {
    const texts = fc.oneof(
      fc.string({ unit: anyCharacter, maxLength: 200 }),
      fc.nat(300).map((n) => 'x'.repeat(n)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        expect(sha256(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
      }),
    );
  });
});
