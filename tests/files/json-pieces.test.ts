import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonPieces } from '../../src/files/json-pieces.js';

test('the pieces joined are what JSON.stringify gives', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.option(fc.jsonValue(), { nil: undefined })), (value) => {
      expect([...jsonPieces(value)].join('')).toBe(JSON.stringify(value));
    }),
  );
});

test('a long list comes in pieces', () => {
  const value = { zones: Array.from({ length: 1000 }, (_, i) => ({ zone: `Zone ${i}`, trace: 'x'.repeat(2000) })) };
  const pieces = [...jsonPieces(value)];
  expect(pieces.length).toBeGreaterThan(3);
  expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(300_000);
  expect(pieces.join('')).toBe(JSON.stringify(value));
});
