import fc from 'fast-check';
import { expect, test } from 'vitest';
import { putNumber } from '../../src/read/rows/number-bytes.js';

const into = new Float64Array(3);

function put(text: string, decimal = '.'): { end: number; value: number } {
  into.fill(7);
  const end = putNumber(Buffer.from(`;${text};\n`), 1, decimal.charCodeAt(0), into, 1);
  expect([into[0], into[2]]).toEqual([7, 7]);
  return { end: end - 1, value: into[1]! };
}

test('a plain number is the double that Number gives', () => {
  const texts = fc
    .tuple(
      fc.constantFrom('', '-'),
      fc.stringMatching(/^\d{0,8}$/),
      fc.constantFrom('', '.'),
      fc.stringMatching(/^\d{0,7}$/),
    )
    .filter(([, whole, mark, rest]) => (mark === '.' ? whole + rest !== '' : whole !== '' && rest === ''))
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(texts, fc.constantFrom('.', ','), (text, decimal) => {
      const { end, value } = put(text.replace('.', decimal), decimal);
      expect(end).toBe(text.length);
      expect(Object.is(value, Number(text))).toBe(true); // minus zero, too
    }),
    { numRuns: 2000 },
  );
});

test.each(['', '-', '.', '-.', 'OL', '+7', '1234567890123456', '0.123456789012345'])('%j is not read', (text) => {
  expect(put(text).end).toBeLessThan(0);
});

test.each([
  ['21.5 °C', 4],
  ['1e2', 1],
  ['1.2.3', 3],
  ['21,5', 2],
])('of %j only what is plain, so that the caller sees what stands behind', (text, end) => {
  expect(put(text).end).toBe(end);
});
