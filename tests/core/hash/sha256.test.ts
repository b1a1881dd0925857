import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { sha256 } from '../../../src/core/hash/sha256';
import { utf8 } from '../../../src/core/hash/utf8';

test.each([
  // FIPS 180-2, appendix B.1 and B.2 (the examples that belong to the standard)
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('SHA-256 of "%s" is as published', (text, expected) => {
  expect(sha256(utf8(text))).toBe(expected);
});

test('agrees with the platform at every length around the block ends', () => {
  for (let length = 0; length < 200; length++) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 37 + length) & 255);
    expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
  }
});

test('texts are encoded as TextEncoder does it, lone surrogates included', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), fc.integer({ min: 0xd800, max: 0xdfff }), (text, lone) => {
      const odd = text + String.fromCharCode(lone);
      expect([...utf8(odd)]).toEqual([...new TextEncoder().encode(odd)]);
    }),
  );
});
